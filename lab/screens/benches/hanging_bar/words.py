"""What the hanging bar's screen says: what happened, why, and how each thing is read out."""

from __future__ import annotations

from collections.abc import Mapping

from lab.outline import Words
from lab.outline.words import msg
from lab.scenes.readings import Readings
from lab.scenes.turning_areas import side_sums_kg_m
from lab.simulation import HangingBar, Hung, Side
from lab.simulation.benches.bar_parts import bead_count, water_kg

HAPPENED: Mapping[str, str] = {
    "left": msg("The left end dropped."),
    "level": msg("It stays level."),
    "right": msg("The right end dropped."),
}
GOING = msg("Let go. Watch it move.")
YOU_SAID: Mapping[str, str] = {
    "left": msg("You said left."),
    "level": msg("You said level."),
    "right": msg("You said right."),
}
AS_YOU_SAID: Mapping[str, str] = {
    "left": msg("You said left, and left it was."),
    "level": msg("You said level, and level it is."),
    "right": msg("You said right, and right it was."),
}
WHY: Mapping[str, str] = {
    "left": msg("What hangs left of the pivot has the bigger moment: weight times distance from the pivot."),
    "right": msg("What hangs right of the pivot has the bigger moment: weight times distance from the pivot."),
    "level": msg("Both sides of the pivot have the same moment: weight times distance from the pivot."),
}
WHY_IN_NUMBERS: Mapping[str, str] = {
    "left": msg("Left of the pivot {left}, right of it {right}: the left is more."),
    "right": msg("Right of the pivot {right}, left of it {left}: the right is more."),
    "level": msg("Left of the pivot {left}, right of it {right}: the same."),
}
PIVOT_TO_BALANCE: Mapping[str, str] = {
    "left": msg("The balance point lies {distance} left of the pivot."),
    "right": msg("The balance point lies {distance} right of the pivot."),
    "level": msg("The balance point lies at the pivot."),
}
HELP = (
    msg("Drag a weight from the tray onto the bar, or press it and then press the place."),
    msg("Drag weights, the carriage and the reference line; or pick one and use − and +, or the arrow keys."),
    msg("Say which end will drop, then let go."),
    msg("One that is picked is named, copied, mirrored or tied to another behind More."),
    msg("Colours and sizes are behind Aa; units change with the button beside it."),
)
CAUTION = msg("If you try this with real weights: keep toes and fingers out from under them.")


def guess_against_outcome(words: Words, guess: Side | None, outcome: Side) -> str:
    """What was expected, beside what happened: no word judges it. Empty where nothing was guessed."""
    if guess is None:
        return ""
    return words.say(AS_YOU_SAID[outcome] if guess == outcome else YOU_SAID[guess])


def why(words: Words, bench: HangingBar, readings: Readings, *, numbers: bool) -> tuple[str, ...]:
    """Why it went as it did, in sentences."""
    goes = bench.turn.goes
    if not numbers:
        return (words.say(WHY[goes]),)
    left, right = side_sums_kg_m(bench)
    sums = words.say(WHY_IN_NUMBERS[goes], left=readings.moment_with_unit(left), right=readings.moment_with_unit(right))
    distance_m = abs(bench.sum.balance_point_m[0] - bench.pivot.at_m)
    return sums, words.say(PIVOT_TO_BALANCE[goes], distance=readings.length_with_unit(distance_m))


def weight_said(words: Words, weight: Hung, readings: Readings) -> str:
    """A weight as it is read out after its name: 200 g at 15.0 cm, hung."""
    mass, place = readings.weight_with_unit(weight.mass_kg), readings.length_with_unit(weight.at_m)
    water, beads = water_kg(weight), bead_count(weight)
    if water is not None:
        filled = words.say("{water} mL", water=words.number(water * 1000.0, 0))
        return words.say("{weight} at {place}, {water} of water in it", weight=mass, place=place, water=filled)
    if beads is not None:
        count = words.plural("{n} bead", "{n} beads", beads)
        return words.say("{count}, {weight} at {place}", count=count, weight=mass, place=place)
    if weight.hold == "hung":
        return words.say("{weight} at {place}, hung", weight=mass, place=place)
    return words.say("{weight} at {place}, clamped", weight=mass, place=place)


def picture_said(words: Words, bench: HangingBar, readings: Readings) -> str:
    """The picture in two sentences."""
    count = words.plural("{n} weight on it", "{n} weights on it", len(bench.weights))
    values = {
        "bar": words.content(bench.bar.name),
        "length": readings.length_with_unit(bench.bar.length_m),
        "weight": readings.weight_with_unit(bench.bar.mass_kg),
        "pivot": readings.length_with_unit(bench.pivot.at_m),
        "count": count,
    }
    if bench.held:
        return words.say("{bar}, {length}, {weight}, held level; pivot at {pivot}; {count}.", **values)
    outcome = bench.outcome
    if outcome is None:
        return words.say("{bar}, {length}, {weight}, let go and moving; pivot at {pivot}; {count}.", **values)
    happened = words.say(HAPPENED[outcome])
    values["happened"] = happened
    return words.say("{bar}, {length}, {weight}, let go; pivot at {pivot}; {count}. {happened}", **values)
