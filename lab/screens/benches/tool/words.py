"""What the tool's screen says: what happened, why, and how each thing is read out."""

from __future__ import annotations

from collections.abc import Mapping

from lab.mechanics import Part
from lab.outline import Words
from lab.outline.words import msg
from lab.scenes.readings import Readings
from lab.scenes.tool.turning import areas_of
from lab.scenes.turning_areas import sums_kg_m
from lab.simulation.benches.tool import BuiltTool

HAPPENED: Mapping[str, str] = {
    "left": msg("The left end dropped."),
    "level": msg("It stays on the finger."),
    "right": msg("The right end dropped."),
}
GOING = msg("Let go. Watch it move.")
WHY: Mapping[str, str] = {
    "left": msg("What lies left of the finger has the bigger moment: weight times distance from the finger."),
    "right": msg("What lies right of the finger has the bigger moment: weight times distance from the finger."),
    "level": msg("The balance point of the tool is over the finger's pad."),
}
WHY_IN_NUMBERS: Mapping[str, str] = {
    "left": msg("Left of the finger {left}, right of it {right}: the left is more."),
    "right": msg("Left of the finger {left}, right of it {right}: the right is more."),
    "level": msg("Left of the finger {left}, right of it {right}."),
}
FINGER_TO_BALANCE: Mapping[str, str] = {
    "left": msg("The balance point lies {distance} left of the finger."),
    "right": msg("The balance point lies {distance} right of the finger."),
    "level": msg("The balance point lies over the pad, which is {wide} wide."),
}
HELP = (
    msg("Drag a part from the tray onto the tool, or press it and then press the place."),
    msg("Drag parts, the finger and the reference line; or pick one and use − and +, or the arrow keys."),
    msg("Poles can be made longer and shorter, heads reach over the ends, and everything can be weighed anew."),
    msg("Say which end will drop, then let go: it tips, slides and falls as a real one does."),
)
CAUTION = msg("If you try this with a real tool: stand clear of where it falls, and keep your toes out from under it.")


def why(words: Words, tool: BuiltTool, readings: Readings, *, numbers: bool) -> tuple[str, ...]:
    """Why it went as it did, in sentences."""
    goes = tool.outcome or "level"
    if not numbers:
        return (words.say(WHY[goes]),)
    left, right = sums_kg_m(areas_of(tool))
    sums = words.say(WHY_IN_NUMBERS[goes], left=readings.moment_with_unit(left), right=readings.moment_with_unit(right))
    distance_m = abs(tool.sum.balance_point_m[0] - tool.finger_at_m)
    place = words.say(
        FINGER_TO_BALANCE[goes],
        distance=readings.length_with_unit(distance_m),
        wide=readings.length_with_unit(2 * tool.pad_half_m),
    )
    return sums, place


def part_said(words: Words, part: Part, readings: Readings) -> str:
    """A part as it is read out after its name: 420 g at 97.0 cm."""
    mass, place = readings.weight_with_unit(part.mass_kg), readings.length_with_unit(part.at_m[0])
    if part.hold == "hung":
        return words.say("{weight} at {place}, hung", weight=mass, place=place)
    return words.say("{weight} at {place}", weight=mass, place=place)


def picture_said(words: Words, tool: BuiltTool, readings: Readings) -> str:
    """The picture in two sentences."""
    values = {
        "count": words.plural("{n} part", "{n} parts", len(tool.parts)),
        "length": readings.length_with_unit(tool.right_m - tool.left_m),
        "finger": readings.length_with_unit(tool.finger_at_m),
    }
    if tool.held:
        return words.say("A tool of {count}, {length} long, held level; finger at {finger}.", **values)
    if tool.outcome is None:
        return words.say("A tool of {count}, {length} long, let go and moving; finger at {finger}.", **values)
    values["happened"] = words.say(HAPPENED[tool.outcome])
    return words.say("A tool of {count}, {length} long, let go; finger at {finger}. {happened}", **values)
