"""What is said of an airframe that is built: what follows from where its balance point lies."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from lab.outline.words import msg
from lab.screens.benches.airframe.build_view import BuildView
from lab.screens.benches.doubts import is_doubtful
from lab.simulation.benches.airframe_balance import drops, fuller_tank
from lab.simulation.commands import Side

END_NAMES: Mapping[Side, str] = MappingProxyType({"left": msg("nose"), "level": msg("neither"), "right": msg("tail")})
HAPPENED: Mapping[Side, str] = MappingProxyType(
    {"left": msg("The nose drops."), "level": msg("It stays level."), "right": msg("The tail drops.")}
)
SAID: Mapping[Side, str] = MappingProxyType(
    {"left": msg("You said the nose."), "level": msg("You said neither."), "right": msg("You said the tail.")}
)
PITCH: Mapping[str, str] = MappingProxyType(
    {
        "steady": msg("Ahead of the neutral point: steady in pitch."),
        "neutral": msg("At the neutral point: its nose stays where it is turned."),
        "runs away": msg("Behind the neutral point: its nose runs away."),
    }
)
SURE: Mapping[str, str] = MappingProxyType(
    {
        "sure": msg("With its doubts that is sure."),
        "likely": msg("With its doubts that is likely, not sure."),
        "open": msg("Its doubts leave that open."),
    }
)
MOST_NAMED = 4
SAME_M = 5e-6
"""Nearer to the plane than this, no number that is shown tells."""


def follows(view: BuildView) -> Iterator[str]:
    """What follows, a sentence each: in pitch, in roll, against its limits."""
    say, margin = view.look.words.say, view.margin
    if margin is not None:
        yield say(PITCH[margin.goes])
        if is_doubtful(view.bench.parts):
            yield say(SURE[margin.sureness])
    yield from _in_roll(view)
    yield from _in_limits(view)


def _in_roll(view: BuildView) -> Iterator[str]:
    say, off_m = view.look.words.say, off_plane_m(view)
    if abs(off_m) < SAME_M:
        return
    left = off_m < 0.0
    tank = fuller_tank(view.bench, left=left)
    if tank is not None:
        name = view.look.words.content(tank.name)
        yield (
            say("The left wing is heavy: {tank} is fuller.", tank=name)
            if left
            else say("The right wing is heavy: {tank} is fuller.", tank=name)
        )
    else:
        yield say("The left wing is heavy.") if left else say("The right wing is heavy.")


def _in_limits(view: BuildView) -> Iterator[str]:
    say, found, readings = view.look.words.say, view.standing, view.readings
    if found is None:
        return
    if found.inside:
        yield say("The CG is within its limits.")
        return
    if found.mass_out_kg:
        weight = readings.weight_with_unit(abs(found.mass_out_kg))
        heavy = found.mass_out_kg > 0.0
        yield (
            say("It is {weight} too heavy for its limits.", weight=weight)
            if heavy
            else say("It is {weight} too light for its limits.", weight=weight)
        )
    if found.along_out_m:
        far = readings.length_with_unit(abs(found.along_out_m))
        ahead = found.along_out_m < 0.0
        yield (
            say("The CG is {far} ahead of its limits.", far=far)
            if ahead
            else say("The CG is {far} behind its limits.", far=far)
        )
    if found.across_out_m:
        far = readings.length_with_unit(abs(found.across_out_m))
        yield say("The CG is {far} too far to one side.", far=far)


def off_plane_m(view: BuildView) -> float:
    """How far right of the plane of symmetry the balance point lies; of the middle, where there is none."""
    plane, across_m = view.plane, view.bench.sum.balance_point_m[1]
    return across_m if plane is None else across_m - plane.offset_m * (1.0 if plane.normal[1] > 0.0 else -1.0)


def symmetry_said(view: BuildView) -> str:
    """Whether there is a plane of symmetry, and by how much it is missed."""
    words, off_m = view.look.words, off_plane_m(view)
    say, plane = words.say, view.plane
    far = view.readings.length_with_unit(abs(off_m))
    if plane is None:
        if abs(off_m) < SAME_M:
            return say("No plane of symmetry: yet the CG is in the middle.")
        return (
            say("No plane of symmetry: the CG is {far} left of the middle.", far=far)
            if off_m < 0.0
            else say("No plane of symmetry: the CG is {far} right of the middle.", far=far)
        )
    if plane.exact:
        return say("Plane of symmetry: along and up. The CG lies in it.")
    if abs(off_m) < SAME_M:
        return say("Nearly a plane of symmetry. The CG lies in it.")
    return (
        say("CG {far} left of the plane of symmetry", far=far)
        if off_m < 0.0
        else say("CG {far} right of the plane of symmetry", far=far)
    )


def symmetry_lines(view: BuildView) -> tuple[str, ...]:
    """The plane of symmetry as the picture tells it: whether there is one, what has no twin, how far the CG is off."""
    words, plane = view.look.words, view.plane
    first = words.say("no plane of symmetry")
    if plane is not None:
        first = words.say("plane of symmetry") if plane.exact else words.say("nearly a plane of symmetry")
    lines = [first]
    if plane is not None and plane.odd:
        names = ", ".join(words.content(name) for name in plane.odd[:MOST_NAMED])
        lines.append(words.say("without a twin: {names}", names=names))
    if view.told and (plane is None or not plane.exact):
        lines.append(symmetry_said(view))
    return tuple(lines)


def margin_said(view: BuildView) -> str:
    """The margin as a share of the mean chord; "" where there is none."""
    words = view.look.words
    if view.margin is None or view.neutral is None:
        return ""
    return words.say(
        "margin {percent} % of the mean chord, {chord}",
        percent=words.number(100.0 * view.margin.margin, 1),
        chord=view.readings.length_with_unit(view.neutral.chord.length_m),
    )


def compared(view: BuildView) -> str:
    """What was guessed, beside what is so; "" where nothing was."""
    say, guess, side = view.look.words.say, view.bench.guess, drops(view.bench)
    if guess is None or side is None:
        return ""
    return say("So you said.") if guess == side else say(SAID[guess])
