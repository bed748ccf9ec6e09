"""Is it steady in pitch, neutral, or does it run away?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING, ClassVar

from lab import mechanics
from lab.files import Build
from lab.lesson.asked import Asked
from lab.lesson.explanation import Explanation
from lab.lesson.forms import Answer, Choice, Option
from lab.lesson.kinds.choices import Told, choice_fits, choice_of, chosen_explanation, other_weight
from lab.lesson.kinds.kind import Fit, Found, Kind
from lab.lesson.messages import Amount, Message, length, message, msg, number
from lab.lesson.task import Task
from lab.lesson.ways.steady import STEADY_WAYS, AlongAirframe

if TYPE_CHECKING:
    # For the annotations alone: the lattice is loaded with the first airframe.
    from lab.mechanics import NeutralPoint, PitchMargin, Surface

CLEAR_MARGIN = 0.03
"""Varied numbers must leave at least this margin, in mean chords: as much as the model may be off."""

_FORM = choice_of(
    (
        Option(key="steady", text=msg("steady"), spoken=frozenset(("stable", "comes back"))),
        Option(key="neutral", text=msg("neutral"), spoken=frozenset(("neither", "stays"))),
        Option(key="runs away", text=msg("runs away"), spoken=frozenset(("unsteady", "unstable", "run away"))),
    )
)


class SteadyKind(Kind):
    """What the balance point's place ahead of the neutral point means."""

    name = "steady"
    ways: ClassVar = tuple(way.name for way in STEADY_WAYS[1:])
    mute: ClassVar = frozenset(("swapped",))
    is_along: ClassVar = False

    def scene_faults(self, build: Build) -> Iterator[Found]:
        if not any(not surface.vertical for surface in build.surfaces):
            yield ("scene",), "no wing", "add `[[question.scene.surface]]`: a wing, and a tail where there is one"

    def amounts(self, task: Task) -> Mapping[str, Amount]:
        if next(self.scene_faults(task.build), None) is not None:
            return {}
        neutral = neutral_of(task.build.surfaces)
        return {"neutral.at": length(neutral.at_m, decimals=1), "balance.at": length(task.balance_m, decimals=1)}

    def truth(self, task: Task) -> Answer:
        return _margin(task.build).goes

    def predictions(self, task: Task) -> tuple[Fit, ...]:
        return choice_fits(STEADY_WAYS[1:], _along(task), _FORM)

    def is_sound(self, task: Task, truth: Answer, *, written: Answer) -> bool:
        if written == "neutral":
            return truth == "neutral"
        return abs(_margin(task.build).margin) >= CLEAR_MARGIN

    def form(self, task: Task) -> Choice:
        return _FORM

    def prompt(self, task: Task) -> Message:
        return message(msg("In flight its nose is pushed up a little. Is it steady, neutral, or does it run away?"))

    def what_to_type(self, asked: Asked) -> Message:
        return message(msg("Type steady, neutral or runs away."))

    def given(self, asked: Asked) -> tuple[Message, ...]:
        return tuple(
            message(
                msg("{surface}   a surface, {chord} long at its root, {span} wide, from {place}"),
                surface=surface.name,
                chord=length(surface.root_chord_m),
                span=length(surface.span_m),
                place=length(surface.at_m[0]),
            )
            for surface in asked.build.surfaces
            # A fin does nothing in pitch.
            if not surface.vertical
        )

    def explain(self, asked: Asked, value: Answer, fit: Fit | None, ways: tuple[str, ...]) -> Explanation:
        return chosen_explanation(asked, value, _told(self, asked), idea=self.idea(asked, fit), ways=ways)


@lru_cache(maxsize=256)
def neutral_of(surfaces: tuple[Surface, ...]) -> NeutralPoint:
    """The neutral point; weights do not change it, so that it is worked out once for each set of surfaces."""
    return mechanics.neutral_point(surfaces)


def _margin(build: Build) -> PitchMargin:
    return mechanics.pitch_margin(neutral_of(build.surfaces), mechanics.moment_sum(build.all_parts).balance_point_m[0])


def _along(task: Task) -> AlongAirframe:
    neutral, seen, from_m = neutral_of(task.build.surfaces), task.seen, task.units.from_m
    wing = mechanics.main_surface(task.build.surfaces)
    behind = [
        surface
        for surface in task.build.surfaces
        if surface is not wing and not surface.vertical and surface.at_m[0] > wing.at_m[0]
    ]
    return AlongAirframe(
        neutral=from_m(neutral.at_m),
        balance=from_m(task.balance_m),
        quarter=from_m(neutral.chord.quarter_m),
        chord=from_m(neutral.chord.length_m),
        nose=seen.left,
        tail=seen.right,
        has_tail=bool(behind),
    )


def _told(kind: SteadyKind, asked: Asked) -> Told:
    build = asked.build
    neutral, margin = neutral_of(build.surfaces), _margin(build)
    summed = mechanics.moment_sum(build.all_parts, build.reference_m)
    balance_m = summed.balance_point_m[0]
    deciding = max(
        summed.rows, key=lambda row: abs(row.mass_kg * (row.arm_m[0] + build.reference_m[0] - balance_m))
    ).name
    places = {
        "neutral": length(neutral.at_m, decimals=1),
        "balance": length(balance_m, decimals=1),
        "chord": length(neutral.chord.length_m, decimals=1),
        "percent": number(_shown_percent(asked.task), decimals=0),
    }
    quotient = message(msg("({neutral} − {balance}) / {chord} = {percent} per cent of the mean chord"), **places)
    return Told(
        happened=message(_HAPPENED[margin.goes]),
        why=message(_WHY[margin.goes], **places),
        sum=summed,
        quotient=quotient,
        deciding=deciding,
        working=(
            message(msg("neutral point, from the surfaces: at {neutral}"), **places),
            message(msg("balance point, from the weights: at {balance}"), **places),
            quotient,
        ),
        contrast=other_weight(
            asked,
            deciding,
            truth=lambda changed: kind.truth(replace(asked.task, build=changed)),
            then=msg("Then it would be: {answer}."),
            still=msg("It would still be: {answer}."),
        ),
    )


def _shown_percent(task: Task) -> float:
    """The margin in hundredths of the chord, of the figures that are shown: a learner who divides them agrees."""
    neutral, seen = neutral_of(task.build.surfaces), _along(task)
    chord = round(task.units.from_m(neutral.chord.length_m), 1)
    return 100 * (round(seen.neutral, 1) - round(seen.balance, 1)) / chord


_HAPPENED = {
    "steady": msg("Its nose comes down again by itself."),
    "neutral": msg("Its nose stays where it was pushed."),
    "runs away": msg("Its nose goes on rising by itself."),
}
_WHY = {
    "steady": msg("It balances at {balance}, ahead of its neutral point at {neutral}. So its nose comes back."),
    "neutral": msg("It balances at {balance}, at its neutral point. So nothing turns it either way."),
    "runs away": msg("It balances at {balance}, behind its neutral point at {neutral}. So its nose goes on."),
}

KIND = SteadyKind()
