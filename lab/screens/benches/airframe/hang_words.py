"""What is said of an airframe that hangs: how, why, and where it hangs by."""

from __future__ import annotations

from collections.abc import Mapping
from math import degrees

from lab.mechanics import Vector
from lab.outline import Words
from lab.outline.words import msg
from lab.scenes.readings import Readings
from lab.simulation.airframe_commands import Nose
from lab.simulation.benches.airframe_hanging import AirframeHanging
from lab.simulation.commands import Side

NOSES: tuple[Nose, ...] = ("down", "level", "up")
NOSE_NAMES: Mapping[Nose, str] = {"down": msg("nose down"), "level": msg("level"), "up": msg("tail down")}
WING_NAMES: Mapping[Side, str] = {"left": msg("left low"), "level": msg("level"), "right": msg("right low")}

HANGS: Mapping[Nose, Mapping[Side, str]] = {
    "down": {
        "left": msg("Nose down, left wing low."),
        "level": msg("Nose down, wings level."),
        "right": msg("Nose down, right wing low."),
    },
    "level": {
        "left": msg("Level along, left wing low."),
        "level": msg("It hangs level."),
        "right": msg("Level along, right wing low."),
    },
    "up": {
        "left": msg("Tail down, left wing low."),
        "level": msg("Tail down, wings level."),
        "right": msg("Tail down, right wing low."),
    },
}
YOU_SAID_NOSE: Mapping[Nose, str] = {
    "down": msg("You said nose down."),
    "level": msg("You said level along."),
    "up": msg("You said tail down."),
}
YOU_SAID_WING: Mapping[Side, str] = {
    "left": msg("You said left wing low."),
    "level": msg("You said wings level."),
    "right": msg("You said right wing low."),
}
UPSIDE_DOWN = msg("It hangs upside down: its CG was above the hook.")
ANY_WAY = msg("It hangs by its CG: it stays however it is held.")
WHY = msg("Its CG has come to lie right below the hook.")
GOING = msg("Let go. Watch how it swings.")
SAME = msg("The lines cross where the sum has the CG.")
SCATTER = msg("They miss each other by {distance}.")
TWO_LINES = msg("Hang it by two places and draw the line at each: they cross at the CG.")
ONE_LINE = msg("One line is drawn. Hang it by another place, off that line.")


def happened(words: Words, hanging: AirframeHanging) -> str:
    """How it hangs, of what hangs still."""
    if hanging.nose is None or hanging.wing is None:
        return words.say(ANY_WAY)
    return words.say(HANGS[hanging.nose][hanging.wing])


def why(words: Words, hanging: AirframeHanging) -> str:
    """Why it hangs so; nothing more where it hangs any way."""
    if hanging.hangs_any_way:
        return ""
    return words.say(UPSIDE_DOWN if hanging.upside_down else WHY)


def compared(words: Words, hanging: AirframeHanging) -> str:
    """What was expected, beside what happened: no word judges it."""
    found = []
    if hanging.guess_nose is not None:
        found.append(words.say(YOU_SAID_NOSE[hanging.guess_nose]))
    if hanging.guess_wing is not None:
        found.append(words.say(YOU_SAID_WING[hanging.guess_wing]))
    return words.say("{first} {second}", first=found[0], second=found[1]) if len(found) == 2 else "".join(found)


def lines_said(words: Words, readings: Readings, hanging: AirframeHanging) -> str:
    """What the lines drawn so far say, or what to do for them to say something."""
    crossing = hanging.crossing
    if crossing is None:
        return words.say(ONE_LINE if hanging.lines else TWO_LINES)
    if len(hanging.lines) > 2 and crossing.scatter_m > 1e-9:
        return words.say(SCATTER, distance=readings.length_with_unit(crossing.scatter_m))
    return words.say(SAME)


def angle_said(words: Words, angle_rad: float | None) -> str:
    """An angle in degrees; a dash where there is none."""
    return words.say("–") if angle_rad is None else words.say("{angle}°", angle=words.number(degrees(angle_rad), 1))


def place_said(words: Words, readings: Readings, at_m: Vector) -> str:
    """A place on three axes."""
    along, across, up = (readings.length_with_unit(each) for each in at_m)
    return words.say("{along} along, {across} across, {up} up", along=along, across=across, up=up)


def hangs_said(words: Words, readings: Readings, hanging: AirframeHanging) -> str:
    """The picture in a sentence or two."""
    place = place_said(words, readings, hanging.hook_m)
    if hanging.held:
        return words.say("Held level by a cord at {place}.", place=place)
    if hanging.moving:
        return words.say("Swinging on its cord at {place}.", place=place)
    pitch, roll = (angle_said(words, angle) for angle in (hanging.swing.pitch_rad, hanging.swing.roll_rad))
    return words.say(
        "It hangs still by a cord at {place}: pitch {pitch}, roll {roll}.", place=place, pitch=pitch, roll=roll
    )
