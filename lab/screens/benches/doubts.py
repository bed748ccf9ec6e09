"""Doubt, on any bench: how well things were measured, and what that leaves of the balance point."""

from __future__ import annotations

from collections.abc import Iterable

from lab.mechanics import Part, balance_point_doubt_m
from lab.scenes.readings import Readings
from lab.simulation import Measure
from lab.ui.look import Look
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.widget import Widget

DOUBT = "doubt"
"""Key of the switch."""

SCALE_KG, RULER_M = 0.001, 0.001
"""One standard uncertainty each of a kitchen scale that shows grams, and of a place read from a ruler by eye."""


def is_doubtful(parts: Iterable[Part]) -> bool:
    """Whether any part says how well it was measured."""
    return any(part.mass_doubt_kg > 0.0 or any(part.at_doubt_m) for part in parts)


def doubt_switch(look: Look, parts: Iterable[Part]) -> Widget:
    """A button that says how well things were measured, or forgets it."""
    return Button(DOUBT, look.words.say("±"), kind="plain", selected=is_doubtful(parts))


def switched(parts: Iterable[Part]) -> Measure:
    """What pressing the switch asks for."""
    return Measure(0.0, 0.0) if is_doubtful(parts) else Measure(SCALE_KG, RULER_M)


def place_with_doubt(look: Look, readings: Readings, parts: tuple[Part, ...], at_m: float, *, axis: int = 0) -> str:
    """A balance point, with how far off it may be where parts say how they were measured.  axis: 0 along, 2 up."""
    doubt_m = balance_point_doubt_m(parts)
    if doubt_m is None:
        return readings.length_with_unit(at_m)
    words, units, decimals = look.words, readings.units, readings.fineness.length
    return words.say(
        "{place} ± {doubt} {unit}",
        place=words.number(units.from_m(at_m), decimals + 1),
        doubt=words.number(units.from_m(doubt_m[axis]), decimals + 1),
        unit=units.length_word,
    )


def doubt_lines(look: Look, parts: Iterable[Part]) -> tuple[Widget, ...]:
    """What ± means; nothing where no part says how it was measured."""
    if not is_doubtful(parts):
        return ()
    return (Label("doubt.told", look.words.say("± is one standard uncertainty"), style="small", color="soft"),)
