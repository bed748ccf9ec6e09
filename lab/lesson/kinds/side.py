"""Which end goes down, or does it stay level?"""

from __future__ import annotations

from collections.abc import Iterator
from typing import ClassVar

from lab.files import Build
from lab.lesson.asked import Asked, Side
from lab.lesson.ends import end_dropped, end_drops
from lab.lesson.explanation import Explanation
from lab.lesson.forms import Answer, Choice, Option
from lab.lesson.kinds.kind import Fit, Found, Kind
from lab.lesson.kinds.side_contrast import side_contrast
from lab.lesson.kinds.sums import FROM_ORIGIN_M, pulls, short_moment, turning
from lab.lesson.messages import Message, message, msg
from lab.lesson.resting import goes_at, pivot_of
from lab.lesson.task import Task
from lab.lesson.ways.side import SIDE_WAYS
from lab.mechanics import MomentSum, moment_sum, turn_about

CLEAR_SHARE = 0.03
"""A side must drop by at least this share of all that pulls, or it is a tie by accident."""

LEVEL_WORDS = frozenset(
    ("stay", "stays", "balance", "balances", "balanced", "neither", "even", "equal", "same", "flat", "straight")
)
_FILLERS = frozenset(("the", "it", "a", "side", "end", "goes", "go", "down", "drops", "drop", "i", "think", "is"))

SIDE_FORM = Choice(
    options=(
        # One letter is left, which a learner means far more often than level.
        Option(key="left", text=msg("left"), spoken=frozenset(("l",))),
        Option(key="level", text=msg("level"), spoken=LEVEL_WORDS),
        Option(key="right", text=msg("right")),
    ),
    fillers=_FILLERS,
    again=message(msg("I could not read that. Say left, right or level: l, r or lev will do.")),
)


class SideKind(Kind):
    """The end that goes down on the scene's pivot."""

    name = "side"
    ways: ClassVar = tuple(way.name for way in SIDE_WAYS[1:])
    mute: ClassVar = frozenset(("swapped",))

    def scene_faults(self, build: Build) -> Iterator[Found]:
        if build.pivot is None:
            yield ("scene",), "a side question without a pivot", "add `[question.scene.pivot]` with `at`"

    def truth(self, task: Task) -> Answer:
        return turn_about(task.parts, pivot_of(task.build)).goes

    def predictions(self, task: Task) -> tuple[Fit, ...]:
        seen = task.seen
        names = {"beam": seen.beam.name if seen.beam else "", "heaviest": seen.heaviest.name if seen.heaviest else ""}
        said = ((way, way.predict(seen)) for way in SIDE_WAYS[1:])
        return tuple(
            Fit(way=way.name, answer=side, sentence=way.sentence, values=names)
            for way, side in said
            if side is not None
        )

    def is_sound(self, task: Task, truth: Answer, *, written: Answer) -> bool:
        if written == "level":
            return truth == "level"
        build, pivot = task.build, pivot_of(task.build)
        turn = turn_about(build.all_parts, pivot)
        if truth == "level" or abs(turn.moment_kg_m) < CLEAR_SHARE * turn.scale_kg_m:
            return False
        # On a pad a near miss rests on its edge: it must drop just as clearly with the pad twice as wide.
        return pivot.pad_m == 0 or goes_at(build, pivot.at_m, pad_half_m=2 * pivot.pad_m) == truth

    def form(self, task: Task) -> Choice:
        return SIDE_FORM

    def prompt(self, task: Task) -> Message:
        return message(msg("Which end drops when you let go, or does it stay level?"))

    def what_to_type(self, asked: Asked) -> Message:
        return message(msg("Type left, right or level."))

    def explain(self, asked: Asked, value: Answer, fit: Fit | None, ways: tuple[str, ...]) -> Explanation:
        pivot = pivot_of(asked.build)
        summed = moment_sum(asked.build.all_parts, (pivot.at_m, 0.0, 0.0))
        truth = side_of(asked.truth)
        right = value == truth
        deciding = deciding_side(truth, summed)
        why = _why(asked, truth, summed)
        return Explanation(
            right=right,
            goes=truth,
            headline=message((_AS_SAID if right else _NOT_AS_SAID)[truth]),
            going=end_drops(asked, truth, pivot.at_m),
            happened=end_dropped(asked, truth, pivot.at_m),
            said=message(_SAID[side_of(value)]),
            sum=summed,
            quotient=two_sides(asked, summed),
            deciding=deciding,
            idea=why if right else self.idea(asked, fit),
            why=why,
            ways=ways,
            contrast=side_contrast(asked, deciding=deciding),
            arms_from="pivot",
        )


def side_of(value: Answer) -> Side:
    """Return an answer as the side that it is.  Raises TypeError for another."""
    for side in _SAID:
        if side == value:
            return side
    raise TypeError(f"a side is left, right or level, not {value!r}")


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
_SAID: dict[Side, str] = {
    "left": msg("You said left."),
    "right": msg("You said right."),
    "level": msg("You said level."),
}
_WHY: dict[Side, str] = {
    "left": msg("Weight × arm is {left} on the left and {right} on the right. The left pulls harder."),
    "right": msg("Weight × arm is {left} on the left and {right} on the right. The right pulls harder."),
    "level": msg("Weight × arm is {left} on the left and {right} on the right. Neither side wins."),
}


def two_sides(asked: Asked, summed: MomentSum) -> Message:
    """Return what pulls on either side of the pivot."""
    left, right = pulls(summed)
    return message(
        msg("left {left}, right {right}"), left=short_moment(left, asked.units), right=short_moment(right, asked.units)
    )


def deciding_side(truth: Side, summed: MomentSum) -> str:
    """Return the row that pulls most on the side that went down; of all, where it stayed level."""
    sense = {"left": 1.0, "right": -1.0, "level": 0.0}[truth]
    return max(summed.rows, key=lambda row: sense * turning(row) or abs(turning(row)) * (sense == 0)).name


def _why(asked: Asked, truth: Side, summed: MomentSum) -> Message:
    left, right = pulls(summed)
    if truth == "level" and asked.pad_half_m > 0 and abs(left - right) > FROM_ORIGIN_M * max(left, right):
        return message(msg("Its balance point lies over the finger, so the finger holds it."))
    return message(_WHY[truth], left=short_moment(left, asked.units), right=short_moment(right, asked.units))


KIND = SideKind()
