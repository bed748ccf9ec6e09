"""What an answer is told: what happened, the sum that decides, the idea it fits, one bar where that idea fails."""

from __future__ import annotations

from dataclasses import dataclass

from lab.lesson.asked import Answer, Asked, Side
from lab.lesson.contrasts import Contrast, contrast_for
from lab.lesson.ends import end_dropped, end_drops
from lab.lesson.matching import Fit, fits, named, way_names
from lab.lesson.messages import Message, length, mass, message, moment, msg
from lab.lesson.situation import Load, situation_of
from lab.lesson.truth import goes_at, pivot_of
from lab.mechanics import MomentRow, MomentSum, moment_sum

FROM_ORIGIN_M = 1e-9
"""A reference line nearer to the zero of the rule than this lies on it, and the sum needs no second step."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """Everything that follows a locked answer.

    right: within what counts.  goes: which end dropped at the learner's place, or `level`.
    headline: how far off, never a verdict.  going: what is seen as it is let go, for text.
    happened: what was seen and where the sum puts it.  said: the answer beside the truth, for text.
    sum: the moment sum, from the build's reference line (place) or from the pivot (side).
    quotient: the last line of the sum.  deciding: the name of the row that decides.
    idea: what the answer is the answer to, when exactly one way of thinking fits; for a right answer, why.
    why: what decides, whatever was answered.
    ways: names of every way of thinking that fits.  contrast: one thing changed; None where nothing can be.
    """

    right: bool
    goes: Side
    headline: Message
    going: Message
    happened: Message
    said: Message
    sum: MomentSum
    quotient: Message
    deciding: str
    idea: Message | None
    why: Message
    ways: tuple[str, ...]
    contrast: Contrast | None


def explain(asked: Asked, value: Answer) -> Explanation:
    """Return what a learner is told after `value` was locked in.

    value: a side, or a place in metres.  Raises MechanicsError only if the build itself is unsound.
    """
    found = fits(asked, value)
    fit = named(asked, found)
    if isinstance(value, float):
        return _explain_place(asked, value, fit, way_names(found))
    return _explain_side(asked, value, fit, way_names(found))


# --- place ---------------------------------------------------------------------------------------------------


def _explain_place(asked: Asked, value: float, fit: Fit | None, ways: tuple[str, ...]) -> Explanation:
    summed = moment_sum(asked.build.all_parts, asked.build.reference_m)
    goes = goes_at(asked.build, value, pad_half_m=asked.pad_half_m)
    right = goes == "level"
    deciding = _deciding_place(asked, value, fit, summed)
    why = _why_place(asked, summed)
    return Explanation(
        right=right,
        goes=goes,
        headline=_miss(asked, value, goes, _HEADLINES),
        going=end_drops(asked, goes, value),
        happened=end_dropped(asked, goes, value),
        said=_miss(asked, value, goes, _SAID),
        sum=summed,
        quotient=_quotient(asked, summed),
        deciding=deciding,
        idea=why if right else _idea(asked, fit),
        why=why,
        ways=ways,
        contrast=contrast_for(asked, value, fit, deciding=deciding),
    )


_HEADLINES: dict[Side, str] = {
    "level": msg("It stays level at {place}"),
    "left": msg("Too far right by {miss}"),
    "right": msg("Too far left by {miss}"),
}
_SAID: dict[Side, str] = {
    "level": msg("You said {place}: it stays level there."),
    "left": msg("You said {place}: {miss} too far right."),
    "right": msg("You said {place}: {miss} too far left."),
}


def _miss(asked: Asked, value: float, goes: Side, sentences: dict[Side, str]) -> Message:
    place = length(value, decimals=asked.decimals)
    if goes == "level":
        return message(sentences[goes], place=place)
    # The difference of the figures that are shown, so that a learner who subtracts them agrees.
    shown = [round(asked.units.from_m(each), asked.decimals) for each in (value, float(asked.truth))]
    miss = length(asked.units.to_m(abs(shown[0] - shown[1])), decimals=asked.decimals)
    if "{place}" in sentences[goes]:
        return message(sentences[goes], place=place, miss=miss)
    return message(sentences[goes], miss=miss)


def _quotient(asked: Asked, summed: MomentSum) -> Message:
    turning, weight = moment(summed.moment_kg_m[0]), mass(summed.mass_kg, unit=False)
    place = length(summed.balance_point_m[0], decimals=asked.decimals)
    if abs(summed.reference_m[0]) < FROM_ORIGIN_M:
        return message(msg("{moment} / {weight} = {place}"), moment=turning, weight=weight, place=place)
    arm = length(summed.balance_point_m[0] - summed.reference_m[0], decimals=asked.decimals)
    return message(
        msg("{moment} / {weight} = {arm} from the line: at {place}"),
        moment=turning,
        weight=weight,
        arm=arm,
        place=place,
    )


def _deciding_place(asked: Asked, value: float, fit: Fit | None, summed: MomentSum) -> str:
    """Return the row to point at: the part the idea is about, else what turned it most where it was held."""
    seen = situation_of(asked.build)
    if fit is not None and fit.part is not None:
        return fit.part
    if fit is not None and fit.way.startswith("bar_") and seen.bar is not None:
        return seen.bar.name
    at_m = {part.name: part.at_m[0] for part in asked.build.all_parts}
    return max(summed.rows, key=lambda row: abs(row.mass_kg * (at_m[row.name] - value))).name


def _why_place(asked: Asked, summed: MomentSum) -> Message:
    """Return why it balances where it does: both sides turn it alike there."""
    if len(summed.rows) == 1:
        return message(
            msg("The {part} is the same on both sides of its middle, so it balances there."), part=summed.rows[0].name
        )
    balance_m = summed.balance_point_m[0]
    at_m = {part.name: part.at_m[0] for part in asked.build.all_parts}
    pulls = [row.mass_kg * (balance_m - at_m[row.name]) for row in summed.rows]
    left, right = sum(pull for pull in pulls if pull > 0), -sum(pull for pull in pulls if pull < 0)
    return message(
        msg("At {place} both sides pull alike: weight × arm is {left} on the left and {right} on the right."),
        place=length(balance_m, decimals=asked.decimals),
        left=moment(left, decimals=_moment_decimals(asked)),
        right=moment(right, decimals=_moment_decimals(asked)),
    )


# --- side ----------------------------------------------------------------------------------------------------


def _explain_side(asked: Asked, value: Side, fit: Fit | None, ways: tuple[str, ...]) -> Explanation:
    pivot = pivot_of(asked.build)
    summed = moment_sum(asked.build.all_parts, (pivot.at_m, 0.0, 0.0))
    truth = asked.truth if isinstance(asked.truth, str) else "level"
    right = value == truth
    deciding = _deciding_side(truth, summed)
    why = _why_side(asked, truth, summed)
    return Explanation(
        right=right,
        goes=truth,
        headline=message((_AS_SAID if right else _NOT_AS_SAID)[truth]),
        going=end_drops(asked, truth, pivot.at_m),
        happened=end_dropped(asked, truth, pivot.at_m),
        said=message(_SAID_SIDE[value]),
        sum=summed,
        quotient=_two_sides(asked, summed),
        deciding=deciding,
        idea=why if right else _idea(asked, fit),
        why=why,
        ways=ways,
        contrast=contrast_for(asked, value, fit, deciding=deciding),
    )


_AS_SAID: dict[Side, str] = {
    "left": msg("The left end went down, as you said"),
    "right": msg("The right end went down, as you said"),
    "level": msg("It stayed level, as you said"),
}
_NOT_AS_SAID: dict[Side, str] = {
    "left": msg("This time the left end went down"),
    "right": msg("This time the right end went down"),
    "level": msg("This time it stayed level"),
}
_SAID_SIDE: dict[Side, str] = {
    "left": msg("You said left."),
    "right": msg("You said right."),
    "level": msg("You said level."),
}
_WHY_SIDE: dict[Side, str] = {
    "left": msg("Weight × arm is {left} on the left and {right} on the right. The left pulls harder."),
    "right": msg("Weight × arm is {left} on the left and {right} on the right. The right pulls harder."),
    "level": msg("Weight × arm is {left} on the left and {right} on the right. Neither side wins."),
}


def _turning(row: MomentRow) -> float:
    """Return a row's moment about the pivot, anticlockwise positive: what pulls the left end down."""
    return -row.moment_kg_m[0]


def _two_sides(asked: Asked, summed: MomentSum) -> Message:
    left, right = _pulls(summed)
    decimals = _moment_decimals(asked)
    return message(
        msg("left {left}, right {right}"),
        left=moment(left, decimals=decimals),
        right=moment(right, decimals=decimals),
    )


def _pulls(summed: MomentSum) -> tuple[float, float]:
    pulls = [_turning(row) for row in summed.rows]
    return sum(pull for pull in pulls if pull > 0), -sum(pull for pull in pulls if pull < 0)


def _deciding_side(truth: Side, summed: MomentSum) -> str:
    """Return the row that pulls most on the side that went down; of all, where it stayed level."""
    sense = {"left": 1.0, "right": -1.0, "level": 0.0}[truth]
    return max(summed.rows, key=lambda row: sense * _turning(row) or abs(_turning(row)) * (sense == 0)).name


def _why_side(asked: Asked, truth: Side, summed: MomentSum) -> Message:
    left, right = _pulls(summed)
    if truth == "level" and asked.pad_half_m > 0 and abs(left - right) > FROM_ORIGIN_M * max(left, right):
        return message(msg("Its balance point lies over the finger, so the finger holds it."))
    decimals = _moment_decimals(asked)
    return message(_WHY_SIDE[truth], left=moment(left, decimals=decimals), right=moment(right, decimals=decimals))


# --- both ----------------------------------------------------------------------------------------------------


def _idea(asked: Asked, fit: Fit | None) -> Message | None:
    if fit is None:
        return None
    seen = situation_of(asked.build)
    values = {"part": fit.part or "", "beam": _name(seen.beam), "heaviest": _name(seen.heaviest)}
    if isinstance(fit.answer, float):
        return message(fit.sentence, place=length(fit.answer, decimals=asked.decimals, unit=False), **values)
    return message(fit.sentence, **values)


def _name(load: Load | None) -> str:
    return "" if load is None else load.name


def _moment_decimals(asked: Asked) -> int:
    """Return how many figures after the point a moment needs: none in grams and centimetres, three in kilograms."""
    return 0 if asked.units.name == "g-cm" else 3
