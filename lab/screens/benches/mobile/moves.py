"""Where things of a mobile are, and the commands that move them."""

from __future__ import annotations

from lab.files import UNITS
from lab.scenes.mobile.view import BAR, HOOK, REFERENCE, WEIGHT, MobileView, number_of
from lab.screens.benches import snapping
from lab.screens.benches.filling import refilled
from lab.screens.benches.mobile.keys import RING, TrayThing
from lab.screens.benches.snapping import MARK_PULL_PX
from lab.screens.benches.strip_keys import BEADS, PLACE, WATER, WEIGHT_FIELD
from lab.simulation import Command, MoveReference
from lab.simulation.benches import Hung, Mobile
from lab.simulation.mobile_commands import HangBar, HangOn, Rehang, SlideBar
from lab.simulation.part_commands import Reweigh
from lab.ui.outcomes import Changed


def snapped_m(place_m: float, view: MobileView, px_per_m: float) -> float:
    """The place that a pointer means: a whole unit where it is near one, else to the last shown decimal."""
    pull_m = MARK_PULL_PX * view.look.sizes.unit / px_per_m
    return snapping.snapped_m(place_m, view.readings, pull_m=pull_m)


def thing_of(key: str) -> int | None:
    """The id of the weight, or of the bar by its hook, that a key means; None for others."""
    number = number_of(key, WEIGHT)
    return number_of(key, HOOK) if number is None else number


def picked_bar(key: str) -> int | None:
    """The id of the bar that a key means, by its wood or by its hook."""
    number = number_of(key, BAR)
    return number_of(key, HOOK) if number is None else number


def name_of(bench: Mobile, key: str) -> str | None:
    """What the bar or the weight of a key is called; None for others."""
    thing = bench.beam(picked_bar(key)) or weight_of(bench, key)
    return None if thing is None else thing.name


def weight_of(bench: Mobile, key: str) -> Hung | None:
    """The weight of a key; None for others."""
    number = number_of(key, WEIGHT)
    carrier = None if number is None else bench.carrier(number)
    return None if carrier is None or number is None else carrier.weight(number)


def hangs_at(key: str, view: MobileView) -> tuple[int, float] | None:
    """From which bar a thing hangs, and at which place of it."""
    number, bench = thing_of(key), view.bench
    if number is None:
        return None
    beam = bench.beam(number)
    if beam is not None:
        return None if beam.above is None else (beam.above, beam.hook_m)
    carrier = bench.carrier(number)
    weight = None if carrier is None else carrier.weight(number)
    return None if carrier is None or weight is None else (carrier.id, weight.at_m)


def moved(key: str, step_m: float, view: MobileView) -> tuple[Command, ...]:
    """The command that moves a thing a step to the right as seen, never past the ends of its bar."""
    bench = view.bench
    if key == REFERENCE:
        return (MoveReference(round(bench.reference_m + step_m, 9)),)
    bar = bench.beam(number_of(key, BAR))
    if bar is not None:
        # Its ring stays where it is, so the bar goes right when the ring comes to lie further left on it.
        return (SlideBar(bar.id, round(min(max(bar.pin_m - step_m, 0.0), bar.length_m), 9)),)
    hangs = hangs_at(key, view)
    return () if hangs is None else tied(key, hangs[0], hangs[1] + step_m, view)


def tied(key: str, bar: int, at_m: float, view: MobileView, *, joins: bool = False) -> tuple[Command, ...]:
    """The command that ties a thing to a place of a bar, never past its ends."""
    number, beam = thing_of(key), view.bench.beam(bar)
    if number is None or beam is None:
        return ()
    return (Rehang(number, bar, round(min(max(at_m, 0.0), beam.length_m), 9), joins=joins),)


def hanging(thing: TrayThing, bar: int, at_m: float) -> Command:
    """The command that hangs something from the tray."""
    if thing.length_m is not None:
        return HangBar(bar, thing.length_m, thing.mass_kg, at_m)
    return HangOn(bar, thing.mass_kg, at_m, look=thing.look, name=thing.name)


def typed(event: Changed, picked: str, view: MobileView) -> tuple[Command, ...]:
    """The command that a number typed in the strip for what is picked comes to."""
    units, key = UNITS[view.readings.units.name], picked
    bar = view.bench.beam(picked_bar(key))
    if event.key == WEIGHT_FIELD:
        number = bar.id if bar is not None else thing_of(key)
        return () if number is None else (Reweigh(number, units.to_kg(event.value)),)
    if event.key in (WATER, BEADS):
        return refilled(event, weight_of(view.bench, key))
    place_m = units.to_m(event.value)
    if event.key == RING and bar is not None:
        return (SlideBar(bar.id, place_m),)
    if event.key != PLACE:
        return ()
    if key == REFERENCE:
        return (MoveReference(place_m),)
    if bar is not None:
        return () if bar.above is None else (Rehang(bar.id, bar.above, place_m),)
    hangs = hangs_at(key, view)
    return () if hangs is None else tied(key, hangs[0], place_m, view)
