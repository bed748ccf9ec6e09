"""What can be wrong with a question beyond its keys: its scene, its text, its ranges, what it expects."""

from __future__ import annotations

import re
from collections.abc import Iterator

from lab.files import UNITS, Build, Fault, FileFaults, KeyPath, build_from_table, shown
from lab.lesson.amounts import amounts_of
from lab.lesson.asked import Answer
from lab.lesson.fault_places import FaultPlaces, nearest_of
from lab.lesson.lesson import Question, Range
from lab.lesson.matching import PART_NAMES, PLACE_NAMES, SIDE_NAMES
from lab.lesson.messages import decimals_needed, placeholders
from lab.lesson.situation import situation_of
from lab.lesson.truth import truth_of
from lab.lesson.variation import value_names
from lab.mechanics import MechanicsError

MOST_STEPS = 100_000
"""Of one range: no ruler or scale has as many, and drawing from more would be a slip of the writer's."""

MOST_PARTS = 20
"""In one scene: a learner cannot weigh up more, and every way of thinking looks at every part."""

NARROWEST = 0.002
"""The least tolerance, as a share of the body's length: about one pixel of the narrowest screen."""

WIDEST = 0.2
"""The largest: with more, a finger's pad would be nearly half as wide as the body."""

_NUMBER = re.compile(r"\d+(?:[.,]\d+)?")


Found = tuple[KeyPath, str, str]


def question_faults(
    question: Question, *, index: int, units: str, places: FaultPlaces, unread: frozenset[str]
) -> list[Fault]:
    """Return everything wrong with a question's scene, and with what its other keys say about that scene.

    index: counted from 0.  unread: keys of the question that could not be read, so that it has stand-ins for them or
    nothing; of these nothing is said here.
    """
    build, faults = (None, []) if "scene" in unread else _build_of(question, index, units, places)
    found: list[Found] = []
    # Without knowing what is asked, nothing can be said about the answer.
    if "ask" not in unread:
        found += [*_tolerance_faults(question), *_claim_faults(question, build)]
    if build is not None:
        found += [*_text_faults(question, build), *_range_faults(question)]
        found += [] if "ask" in unread else _truth_faults(question, build)
    faults += [
        places.fault(("question", index, *path), what, cure) for path, what, cure in found if path[0] not in unread
    ]
    return faults


def _build_of(question: Question, index: int, units: str, places: FaultPlaces) -> tuple[Build | None, list[Fault]]:
    """Return the build of a question's scene, or None and what is wrong with it."""
    scene, title = question.scene, question.title[:100]
    try:
        build = build_from_table(
            dict(scene.table), scene.lines, scene.file, at=scene.at, title=title, units=units
        ).loose()
    except FileFaults as unsound:
        return None, list(unsound.faults)
    if len(build.parts) > MOST_PARTS:
        what = f"a scene of {len(build.parts)} parts"
        return None, [places.fault(("question", index, "scene"), what, f"show at most {MOST_PARTS} at a time")]
    return build, []


def _tolerance_faults(question: Question) -> Iterator[Found]:
    if question.ask == "place" and question.tolerance is None:
        yield ("tolerance",), "missing", "add `tolerance = 0.3`: how far off still counts"
    if question.ask == "side" and question.tolerance is not None:
        yield ("tolerance",), "a side has no tolerance", "leave it out; a finger's width is the pivot's `pad`"


def _claim_faults(question: Question, build: Build | None) -> Iterator[Found]:
    known = SIDE_NAMES if question.ask == "side" else PLACE_NAMES
    names = None if build is None else [part.name for part in build.all_parts]
    for place, claim in enumerate(question.claims):
        way, colon, part = claim.partition(":")
        if way not in known:
            yield (
                ("ways", place),
                f"{shown(claim)} is no way of thinking about a {question.ask}",
                nearest_of(way, known),
            )
        elif colon and way not in PART_NAMES:
            yield ("ways", place), f"{shown(part)} is no part that {way} could be about", f'write "{way}" alone'
        elif colon and names is not None and part not in names:
            yield ("ways", place), f"{shown(part)} is no part that {way} could be about", nearest_of(part, names)


def _text_faults(question: Question, build: Build) -> Iterator[Found]:
    texts: list[tuple[KeyPath, str]] = [(("title",), question.title), (("say",), question.say)]
    texts += [(("hints", place), hint) for place, hint in enumerate(question.hints)]
    known = tuple(amounts_of(build))
    for path, text in texts:
        for name in placeholders(text):
            if name not in known:
                near_name = nearest_of(name, known).replace('"', "")
                yield path, f"{{{name}}} names nothing in the scene", near_name
        without = re.sub(r"\{[^{}]*\}", "", text)
        if "{" in without or "}" in without:
            yield path, "a brace without its partner", "write {part.weight} in a pair of braces"


def _range_faults(question: Question) -> Iterator[Found]:
    known = value_names(question.scene.table)
    named = [name for each in question.ranges for name in each.keys]
    for each in question.ranges:
        path: KeyPath = ("vary", ", ".join(each.keys))
        for name in each.keys:
            if name not in known:
                yield path, f"{shown(name)} is nothing that can vary here", nearest_of(name, known)
            elif named.count(name) > 1:
                yield path, f"{shown(name)} varies twice", "name it in one range only"
        yield from _step_faults(each, path)
    if question.as_written_first and not question.ranges:
        yield ("as_written_first",), "nothing varies", "add `vary`, or leave this out"


def _step_faults(each: Range, path: KeyPath) -> Iterator[Found]:
    if each.high < each.low:
        yield (*path, "to"), f"{each.high:g} is below {each.low:g}", "write a number above `from`"
    elif each.count < 2:
        yield (*path, "step"), "the range holds one number only", "write a smaller step or a larger `to`"
    elif each.count > MOST_STEPS:
        yield (*path, "step"), f"a range of {each.count} numbers", f"write a step that makes at most {MOST_STEPS}"


def _truth_faults(question: Question, build: Build) -> Iterator[Found]:
    if question.ask == "side" and build.pivot is None:
        yield ("scene",), "a side question without a pivot", "add `[question.scene.pivot]` with `at`"
        return
    try:
        truth = truth_of(question.ask, build)
    except MechanicsError as unsound:
        what, _, cure = str(unsound).partition("; ")
        yield ("scene",), what, cure or "write values that a real body has"
        return
    seen = situation_of(build)
    if seen.right <= seen.left:
        yield ("scene",), "the scene has no length", "add a bar, or give a part a shape with a length"
    else:
        yield from _width_faults(question, seen.right - seen.left)
    yield from _expect_faults(question, build, truth)
    yield from _hint_faults(question, build, truth)


def _width_faults(question: Question, body: float) -> Iterator[Found]:
    """Yield what is wrong with a tolerance beside the length of the body, both in the scene's unit."""
    if question.tolerance is None:
        return
    if question.tolerance < NARROWEST * body:
        cure = f"write at least {NARROWEST * body:g}, for a body of {body:g}"
        yield ("tolerance",), f"{question.tolerance:g} is finer than a screen can show", cure
    elif question.tolerance > WIDEST * body:
        cure = f"write at most {WIDEST * body:g}, for a body of {body:g}"
        yield ("tolerance",), f"with {question.tolerance:g} nearly every place would be right", cure


def _expect_faults(question: Question, build: Build, truth: Answer) -> Iterator[Found]:
    expected = question.expect
    if expected is None:
        return
    if isinstance(truth, str):
        if expected != truth:
            yield (
                ("expect",),
                f"{shown(expected)} is expected, but the sum says {truth}",
                "see which of the two is meant",
            )
        return
    place = UNITS[build.units].from_m(truth)
    if isinstance(expected, str):
        yield ("expect",), f"{shown(expected)} is no place", f"write a number; the sum says {place:.6g}"
        return
    # As many figures as the writer gave, and never more slack than a learner has.
    slack = min(0.5 * 10.0 ** -decimals_needed(expected, most=9), question.tolerance or 0.0)
    if abs(expected - place) > slack + 1e-9:
        what = f"{expected:g} is expected, but the sum says {place:.6g}"
        yield ("expect",), what, "see which of the two is meant"


def _hint_faults(question: Question, build: Build, truth: Answer) -> Iterator[Found]:
    if isinstance(truth, str):
        return
    place = UNITS[build.units].from_m(truth)
    for index, hint in enumerate(question.hints):
        for figures in _NUMBER.findall(hint):
            if abs(float(figures.replace(",", ".")) - place) <= (question.tolerance or 0.0):
                yield ("hints", index), f"the hint gives the answer away: {figures}", "say how to find it instead"
