"""Which ways of thinking an answer fits, and which of them a question can tell apart."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from lab.files import UNITS, Build
from lab.lesson.asked import Answer, Asked
from lab.lesson.lesson import Ask
from lab.lesson.part_ways import PART_WAYS
from lab.lesson.place_ways import PLACE_WAYS
from lab.lesson.side_ways import SIDE_WAYS
from lab.lesson.situation import Situation, situation_of
from lab.lesson.truth import truth_of

SLACK_M = 1e-9
"""A place this much beyond the tolerance still counts: it is what turning centimetres into metres may cost."""

NEAR_SHARE = 0.03
"""A claimed way nearer to the truth than this share of the body's length cannot show itself in an answer."""

SIDE_NAMES: tuple[str, ...] = tuple(way.name for way in SIDE_WAYS[1:])
PART_NAMES: tuple[str, ...] = tuple(way.name for way in PART_WAYS)
PLACE_NAMES: tuple[str, ...] = (*(way.name for way in PLACE_WAYS[1:]), *PART_NAMES)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """One way of thinking and the answer it gives here.

    part: the part it treats amiss, for ways that are about one part.  answer: a side, or a place in metres.
    sentence: the template that says what such an answer is the answer to.
    """

    way: str
    part: str | None
    answer: Answer
    sentence: str

    def claimed_by(self, claim: str) -> bool:
        """Whether a writer's claim, `far_end` or `far_end:pole`, means this."""
        way, _, part = claim.partition(":")
        return way == self.way and part in ("", self.part)


@dataclass(frozen=True, slots=True, kw_only=True)
class Blur:
    """A claimed way that the numbers cannot tell apart.  other: a way's name, "truth", or "" for no answer."""

    claim: str
    other: str


def predictions(kind: Ask, build: Build) -> tuple[Fit, ...]:
    """Return what every way of thinking but the right one would answer."""
    seen = situation_of(build)
    return _side_predictions(seen) if kind == "side" else _place_predictions(seen, build)


def _side_predictions(seen: Situation) -> tuple[Fit, ...]:
    said = ((way, way.predict(seen)) for way in SIDE_WAYS[1:])
    return tuple(
        Fit(way=way.name, part=None, answer=side, sentence=way.sentence) for way, side in said if side is not None
    )


def _place_predictions(seen: Situation, build: Build) -> tuple[Fit, ...]:
    to_m = UNITS[build.units].to_m
    whole = (
        Fit(way=way.name, part=None, answer=to_m(place), sentence=way.sentence)
        for way in PLACE_WAYS[1:]
        if (place := way.predict(seen)) is not None
    )
    by_part = (
        Fit(way=way.name, part=load.name, answer=to_m(place), sentence=way.sentence)
        for way in PART_WAYS
        for load in seen.everything
        if (place := way.predict(seen, load)) is not None
    )
    return (*whole, *by_part)


def same(left: Answer, right: Answer, *, within_m: float) -> bool:
    """Whether two answers cannot be told apart: the same side, or places within `within_m`."""
    if isinstance(left, float) and isinstance(right, float):
        return abs(left - right) <= within_m + SLACK_M
    return left == right


def fits(asked: Asked, value: Answer) -> tuple[Fit, ...]:
    """Return every way of thinking that an answer fits: within the tolerance, and not also right.

    value: a side, or a place in metres.  A right answer fits none.
    """
    within_m = asked.tolerance_m or 0.0
    if same(value, asked.truth, within_m=within_m):
        return ()
    return tuple(
        each
        for each in predictions(asked.kind, asked.build)
        if same(each.answer, value, within_m=within_m) and not same(each.answer, asked.truth, within_m=within_m)
    )


def named(asked: Asked, found: tuple[Fit, ...]) -> Fit | None:
    """Return the one way of thinking to name to the learner: where exactly one fits, else None.

    A reversed side fits every answer on the other side by its making, so beside another way it speaks for nothing.
    """
    telling = found if asked.kind == "place" else tuple(each for each in found if each.way != "swapped")
    one = telling or found
    return one[0] if len(one) == 1 else None


def way_names(found: Iterable[Fit]) -> tuple[str, ...]:
    """Return the names of the ways, each once, in order."""
    return tuple(dict.fromkeys(each.way for each in found))


def blurs(kind: Ask, build: Build, claims: tuple[str, ...], *, tolerance_m: float | None) -> tuple[Blur, ...]:
    """Return which claimed ways these numbers cannot tell apart, from the truth or from another way.

    A place must be 3 % of the body's length and twice the tolerance away from the truth, and more than the tolerance
    away from any other way; a side must be another side than the truth and than any other claimed way.
    """
    if not claims:
        return ()
    said = predictions(kind, build)
    within_m = tolerance_m or 0.0
    seen = situation_of(build)
    length_m = UNITS[build.units].to_m(seen.right - seen.left)
    clear_m = max(NEAR_SHARE * length_m, 2 * within_m)
    truth = truth_of(kind, build)
    rivals = said if kind == "place" else tuple(x for x in said if any(x.claimed_by(claim) for claim in claims))
    found: list[Blur] = []
    for claim in claims:
        mine = [each for each in said if each.claimed_by(claim)]
        if not mine:
            found.append(Blur(claim=claim, other=""))
        if any(same(each.answer, truth, within_m=clear_m) for each in mine):
            found.append(Blur(claim=claim, other="truth"))
        others = (
            other.way
            for other in rivals
            if not other.claimed_by(claim) and any(same(each.answer, other.answer, within_m=within_m) for each in mine)
        )
        found.extend(Blur(claim=claim, other=name) for name in dict.fromkeys(others))
    return tuple(found)


def never_apart(kind: Ask, drawings: Iterable[tuple[Build, float | None]]) -> tuple[tuple[str, ...], ...]:
    """Return groups of ways of thinking whose answers are the same whatever numbers are drawn.

    drawings: builds of one question, each with its tolerance in metres.  "the right answer" may be one of a group.
    """
    drawn = [(_answers(kind, build), within_m or 0.0) for build, within_m in drawings]
    names = [name for name in drawn[0][0] if all(name in answers for answers, _ in drawn)]
    groups: list[list[str]] = []
    for name in names:
        for group in groups:
            if all(same(answers[group[0]], answers[name], within_m=within_m) for answers, within_m in drawn):
                group.append(name)
                break
        else:
            groups.append([name])
    return tuple(tuple(group) for group in groups if len(group) > 1)


def _answers(kind: Ask, build: Build) -> dict[str, Answer]:
    answers: dict[str, Answer] = {"the right answer": truth_of(kind, build)}
    for each in predictions(kind, build):
        answers[each.way if each.part is None else f"{each.way}:{each.part}"] = each.answer
    return answers
