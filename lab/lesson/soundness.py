"""What can be wrong with a question beyond its keys: its scene, its text, its ranges, what it expects."""

from __future__ import annotations

import re
from collections.abc import Iterator

from lab.files import Build, Fault, FileFaults, KeyPath, build_from_table, shown
from lab.lesson.amounts import amounts_of
from lab.lesson.fault_places import FaultPlaces, nearest_of
from lab.lesson.forms import Answer
from lab.lesson.kinds import KINDS, DetailRefusedError, Found
from lab.lesson.lesson import Question, Range
from lab.lesson.matching import truth_of
from lab.lesson.messages import placeholders
from lab.lesson.situation import situation_of
from lab.lesson.soundness_of_truth import expect_faults, hint_faults, width_faults
from lab.lesson.task import Task
from lab.lesson.variation import task_about
from lab.lesson.varied_values import value_names
from lab.mechanics import MechanicsError

MOST_STEPS = 100_000
"""Of one range: no ruler or scale has as many, and drawing from more would be a slip of the writer's."""

MOST_PARTS = 20
"""In one scene: a learner cannot weigh up more, and every way of thinking looks at every part."""


def question_faults(
    question: Question, build: Build | None, *, index: int, places: FaultPlaces, unread: frozenset[str]
) -> list[Fault]:
    """Return everything wrong with what a question's keys say about its scene.

    build: its scene, None where that cannot be read.  index: counted from 0.
    unread: keys of the question that could not be read, so that it has stand-ins for them or nothing; of these nothing
    is said here.
    """
    found: list[Found] = []
    # Without knowing what is asked, nothing can be said about the answer.
    if "ask" in unread:
        if build is not None:
            found += [*_text_faults(question, Task(kind=question.ask, build=build)), *_range_faults(question)]
    else:
        found += [*_key_faults(question), *_claim_faults(question, build)]
        if build is not None:
            found += [*_range_faults(question), *_task_faults(question, build, unread)]
    return [places.fault(("question", index, *path), what, cure) for path, what, cure in found if path[0] not in unread]


def build_of(question: Question, *, index: int, units: str, places: FaultPlaces) -> tuple[Build | None, list[Fault]]:
    """Return the build of a question's scene, or None and what is wrong with it."""
    scene, title = question.scene, question.title[:100]
    try:
        build = build_from_table(dict(scene.table), scene.lines, scene.file, at=scene.at, title=title, units=units)
    except FileFaults as unsound:
        return None, list(unsound.faults)
    if len(build.all_parts) > MOST_PARTS:
        what = f"a scene of {len(build.all_parts)} parts"
        return None, [places.fault(("question", index, "scene"), what, f"show at most {MOST_PARTS} at a time")]
    return build.loose() if KINDS[question.ask].holds_loose else build, []


def _key_faults(question: Question) -> Iterator[Found]:
    """Yield keys that this kind of question needs and lacks, or has and does not take."""
    kind = KINDS[question.ask]
    for key in kind.needs:
        if key not in question.keys:
            yield (key,), "missing", f"a {kind.name} question needs `{key}`"
    for key in question.keys:
        if key not in (*kind.needs, *kind.takes):
            yield (key,), f"a {kind.name} question has no `{key}`", "leave it out"
    quantity = kind.quantity_of(question.keys)
    if quantity is not None and question.tolerance is None:
        yield ("tolerance",), "missing", "add `tolerance = 0.3`: how far off still counts"
    if quantity is None and question.tolerance is not None:
        cure = "leave it out; a finger's width is the pivot's `pad`" if kind.name == "side" else "leave it out"
        yield ("tolerance",), "what is chosen has no tolerance", cure


def _claim_faults(question: Question, build: Build | None) -> Iterator[Found]:
    kind = KINDS[question.ask]
    names = None if build is None else [part.name for part in build.all_parts]
    for place, claim in enumerate(question.claims):
        way, colon, part = claim.partition(":")
        if way not in kind.ways:
            what = f"{shown(claim)} is no way of thinking about a {kind.name}"
            yield ("ways", place), what, nearest_of(way, kind.ways)
        elif colon and way not in kind.part_ways:
            yield ("ways", place), f"{shown(part)} is no part that {way} could be about", f'write "{way}" alone'
        elif colon and names is not None and part not in names:
            yield ("ways", place), f"{shown(part)} is no part that {way} could be about", nearest_of(part, names)


def _text_faults(question: Question, task: Task) -> Iterator[Found]:
    texts: list[tuple[KeyPath, str]] = [(("title",), question.title), (("say",), question.say)]
    texts += [(("hints", place), hint) for place, hint in enumerate(question.hints)]
    known = tuple(amounts_of(task))
    for path, text in texts:
        for name in placeholders(text):
            if name not in known:
                near_name = nearest_of(name, known).replace('"', "")
                yield path, f"{{{name}}} names nothing in the scene", near_name
        without = re.sub(r"\{[^{}]*\}", "", text)
        if "{" in without or "}" in without:
            yield path, "a brace without its partner", "write {part.weight} in a pair of braces"


def _range_faults(question: Question) -> Iterator[Found]:
    known = value_names(question.scene.table, question.keys)
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


def _task_faults(question: Question, build: Build, unread: frozenset[str]) -> Iterator[Found]:
    """Yield what is wrong between the scene, what is said beside it, the texts and the answer."""
    kind = KINDS[question.ask]
    bare = Task(kind=question.ask, build=build)
    lacking = list(kind.scene_faults(build))
    yield from lacking
    missing = [key for key in kind.needs if key not in question.keys]
    if lacking or missing:
        if not missing:
            yield from _text_faults(question, bare)
        return
    try:
        task = task_about(question, build, question.keys)
    except DetailRefusedError as refused:
        yield from refused.found
        return
    yield from _text_faults(question, task)
    yield from _truth_faults(question, task, unread)


def _truth_faults(question: Question, task: Task, unread: frozenset[str]) -> Iterator[Found]:
    kind = KINDS[task.kind]
    try:
        truth: Answer = truth_of(task)
    except MechanicsError as unsound:
        what, _, cure = str(unsound).partition("; ")
        yield ("scene",), what, cure or "write values that a real body has"
        return
    seen = situation_of(task.build)
    if kind.is_along and seen.right <= seen.left:
        yield ("scene",), "the scene has no length", "add a bar, or give a part a shape with a length"
    elif (size := kind.size(task, truth)) is not None:
        yield from width_faults(question, task, size=size[0], of=size[1])
    yield from kind.task_faults(task, truth)
    yield from expect_faults(question, task, truth)
    yield from hint_faults(question, task, truth)
