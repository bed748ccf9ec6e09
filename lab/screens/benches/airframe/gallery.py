"""The states of the airframe bench that are looked over: every one a picture of free build."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from math import radians

from lab.files import Build
from lab.mechanics import Box, Cylinder, Limits, Part, Surface, Tank
from lab.outline.words import msg
from lab.screens.benches.gallery_parts import after, pressed_entry, state_entries
from lab.screens.gallery_parts import Entry
from lab.simulation import Guess, LetGo, Measure
from lab.simulation.airframe_commands import DoWith, GuessAttitude, HangBy, PlacePart, RaiseNose, ShowAxis
from lab.simulation.benches.airframe import AirframeBench
from lab.simulation.benches.airframe_builds import airframe_from_build
from lab.simulation.plate_commands import DrawPlumbLine
from lab.simulation.scales_commands import GuessReading, MoveScale

END = LetGo(at_once=True)
PART_WAY_TICKS = 90


def entries() -> Iterator[tuple[str, Entry]]:
    """Name and entry of each state."""
    yield from state_entries("airframe", STATES)
    for name, key, says, made in PRESSED:
        yield f"build-airframe-{name}", pressed_entry(says, made, key)


def drone() -> AirframeBench:
    """A twin-tank survey drone whose left tank is the fuller."""
    tanks = tuple(
        Tank(name=name, at_m=(0.425, across, 0.03), capacity_m3=2e-4, contents_m3=held, density_kg_m3=800.0)
        for name, across, held in (("left tank", -0.16, 1.5e-4), ("right tank", 0.16, 7.5e-5))
    )
    surfaces = (
        Surface(name="wing", root_chord_m=0.2, tip_chord_m=0.1, span_m=0.54, sweep_rad=0.175, at_m=(0.32, 0.0, 0.035)),
        Surface(name="tail", root_chord_m=0.1, tip_chord_m=0.06, span_m=0.18, at_m=(0.87, 0.0, 0.02)),
        Surface(name="fin", root_chord_m=0.1, tip_chord_m=0.08, span_m=0.1, at_m=(0.88, 0.0, 0.03), vertical=True),
    )
    parts = (
        Part("fuselage", 0.42, (0.44, 0.0, 0.0), Cylinder(radius_m=0.042, length_m=0.88)),
        Part("wing", 0.38, (0.425, 0.0, 0.035), Box((0.15, 0.54, 0.015))),
        Part("tail", 0.09, (0.92, 0.0, 0.04)),
        Part("battery", 0.30, (0.085, 0.0, 0.0), Box((0.06, 0.04, 0.04))),
        Part("camera", 0.16, (0.29, 0.0, 0.0), Box((0.07, 0.05, 0.04))),
    )
    looks = {"fuselage": "fuselage", "battery": "battery", "camera": "camera"}
    outline = ((0.36, 1.3), (0.40, 1.3), (0.40, 1.7), (0.36, 1.7))
    build = Build(
        title="Survey drone",
        view="numbers",
        parts=parts,
        tanks=tanks,
        surfaces=surfaces,
        limits=Limits(outline=outline, across_m=(-0.01, 0.01)),
        looks=looks,
    )
    return airframe_from_build(build)


def hung(*, view: str = "numbers") -> AirframeBench:
    """Held level by its first hook, with both guesses made."""
    bench = replace(drone(), view="plain" if view == "plain" else "numbers")
    return after(bench, DoWith("hang"), GuessAttitude("down", "level"))


def crossed() -> AirframeBench:
    """Hung by two places, with the line of each drawn."""
    return after(hung(), END, DrawPlumbLine(), HangBy(0.08, 0.0, 0.03), END, DrawPlumbLine())


def weighed() -> AirframeBench:
    """Held over its scales, with the first reading guessed."""
    return after(drone(), DoWith("weigh"), GuessReading(0.5))


STATES: Mapping[str, tuple[str, Callable[[], AirframeBench]]] = {
    "build-held": (msg("an airframe that is built, a guess made"), lambda: after(drone(), Guess("left"))),
    "build-found": (msg("an airframe, and where it balances"), lambda: after(drone(), Guess("right"), END)),
    "build-plain": (
        msg("an airframe and what follows, no numbers"),
        lambda: after(replace(drone(), view="plain"), END),
    ),
    "build-all": (msg("an airframe with all numbers"), lambda: replace(drone(), view="all")),
    "build-across": (
        msg("an airframe and its moments across"),
        lambda: after(replace(drone(), view="all"), ShowAxis("across"), Measure(0.001, 0.003)),
    ),
    "build-behind": (
        msg("an airframe that runs away"),
        lambda: after(replace(drone(), view="all"), PlacePart(4, 0.8, 0.0, 0.0), PlacePart(5, 0.7, 0.0, 0.0)),
    ),
    "hang-held": (msg("an airframe held level by its hook"), hung),
    "hang-swinging": (msg("an airframe that swings"), lambda: after(hung(), LetGo(), ticks=PART_WAY_TICKS)),
    "hang-rest": (msg("an airframe that hangs still"), lambda: after(hung(), END)),
    "hang-plain": (msg("an airframe that hangs still, no numbers"), lambda: after(hung(view="plain"), END)),
    "hang-crossed": (msg("an airframe with two plumb lines"), crossed),
    "hang-wing": (msg("an airframe hung by a wing"), lambda: after(hung(), HangBy(0.4, 0.22, 0.04), END)),
    "weigh-held": (msg("an airframe over its scales"), weighed),
    "weigh-settling": (msg("an airframe whose scales settle"), lambda: after(weighed(), LetGo(), ticks=PART_WAY_TICKS)),
    "weigh-steady": (msg("an airframe that stands on its scales"), lambda: after(weighed(), END)),
    "weigh-raised": (
        msg("an airframe with its nose raised"),
        lambda: after(weighed(), END, RaiseNose(radians(10.0)), ticks=1200),
    ),
    "weigh-tipped": (
        msg("an airframe that tipped off its scales"),
        lambda: after(weighed(), MoveScale(1, 0.45, 0.0), LetGo(), ticks=1200),
    ),
}
"""What is shown, by name."""

PRESSED = (
    ("part-picked", "part-4@side", msg("a part picked"), drone),
    ("tank-picked", "tank-0@top", msg("a tank picked"), drone),
    ("fitting", "fit-battery", msg("a battery taken up"), drone),
    ("hook-picked", "hook-side", msg("the hook picked"), hung),
    ("scale-picked", "scale-1-top", msg("a scale picked"), weighed),
    ("help", "help", msg("what to do with an airframe"), drone),
)
"""Name, key that is pressed, what is then shown, and of what."""
