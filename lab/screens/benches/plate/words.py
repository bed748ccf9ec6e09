"""What the hung plate's screen says: what happened, why, and how each thing is read out."""

from __future__ import annotations

from collections.abc import Mapping

from lab.mechanics import small_swing_period_s
from lab.outline import Words
from lab.outline.words import msg
from lab.scenes.readings import Readings
from lab.simulation.benches import HungPlate

ASK = msg("Which side will drop?")
HAPPENED: Mapping[str, str] = {
    "left": msg("The left side dropped."),
    "level": msg("It hangs as it was held."),
    "right": msg("The right side dropped."),
}
GOING = msg("Let go. Watch it swing.")
WHY: Mapping[str, str] = {
    "left": msg("It swings until its balance point hangs straight below the pin."),
    "right": msg("It swings until its balance point hangs straight below the pin."),
    "level": msg("Its balance point was plumb with the pin already."),
}
PIN_TO_BALANCE: Mapping[str, str] = {
    "left": msg("Held, its balance point was {distance} left of the pin."),
    "right": msg("Held, its balance point was {distance} right of the pin."),
    "level": msg("Held, its balance point was plumb with the pin."),
}
OUTLINE_NAMES: Mapping[str, str] = {"corner": msg("corner"), "crescent": msg("crescent"), "window": msg("window")}
SHEET_NAMES: Mapping[str, str] = {
    "card": msg("card 1 mm"),
    "plywood-4": msg("plywood 4 mm"),
    "plywood-8": msg("plywood 8 mm"),
    "steel": msg("steel 1 mm"),
}
HELP = (
    msg("Drag corners; press a small ring on an edge for a new one; Delete takes a picked one away."),
    msg("Drag a hole or a weight from the tray onto the wood, or press it and then press the place."),
    msg("Drag the pin, or press the wood, to hang it by another place. Say which side will drop, then let go."),
    msg("When it hangs still, draw the plumb line. Hang it by another pin and draw again."),
)
CAUTION = msg("If you try this with real sheet: blunt its edges, and stand back until it has stopped swinging.")


def why(words: Words, bench: HungPlate, readings: Readings, *, numbers: bool) -> tuple[str, ...]:
    """Why it went as it did, in sentences."""
    goes = bench.turn.goes
    if not numbers:
        return (words.say(WHY[goes]),)
    distance_m = abs(bench.sum.balance_point_m[0] - bench.pivot.at_m)
    said = [words.say(PIN_TO_BALANCE[goes], distance=readings.length_with_unit(distance_m))]
    period_s = small_swing_period_s(bench.fall.body) if bench.fall is not None else None
    if period_s is not None:
        said.append(words.say("One small swing takes {seconds} s.", seconds=words.number(period_s, 2)))
    return tuple(said)


def piece_name(words: Words, bench: HungPlate, kind: str, number: int) -> str:
    """What a row of the sum is called."""
    if kind == "clip":
        clip = bench.clip(number)
        return words.content(clip.name) if clip is not None else ""
    if kind == "hole":
        return words.say("hole {number}", number=words.number(number, 0))
    return words.say("triangle {number}", number=words.number(number, 0))


def place_said(words: Words, readings: Readings, place_m: tuple[float, float]) -> str:
    """A place as it is read out: 13.2 cm along, 11.2 cm up."""
    along, up = (readings.length_with_unit(each) for each in place_m)
    return words.say("{along} along, {up} up", along=along, up=up)


def picture_said(words: Words, bench: HungPlate, readings: Readings) -> str:
    """The picture in two sentences."""
    values = {
        "plate": words.content(bench.name),
        "corners": words.plural("{n} corner", "{n} corners", len(bench.outline_m)),
        "holes": words.plural("{n} hole", "{n} holes", len(bench.holes_m)),
        "weight": readings.weight_with_unit(round(bench.sum.mass_kg, 6)),
        "pin": place_said(words, readings, (bench.pivot.at_m, bench.pivot.up_m)),
        "lines": words.plural("{n} line drawn", "{n} lines drawn", len(bench.lines)),
    }
    if bench.held:
        return words.say("{plate}, {corners}, {holes}, {weight}, held; pin at {pin}; {lines}.", **values)
    if bench.outcome is None:
        return words.say("{plate}, {corners}, {holes}, {weight}, swinging; pin at {pin}; {lines}.", **values)
    values["happened"] = words.say(HAPPENED[bench.outcome])
    return words.say("{plate}, {corners}, {holes}, {weight}, hanging; pin at {pin}; {lines}. {happened}", **values)
