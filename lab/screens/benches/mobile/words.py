"""What the mobile's screen says: what happened, why, and how each thing is read out."""

from __future__ import annotations

from collections.abc import Mapping

from lab.mechanics import MobileLevel
from lab.outline import Words
from lab.outline.words import msg
from lab.scenes.mobile.marks import levels_of
from lab.scenes.readings import Readings
from lab.simulation import Hung, Side
from lab.simulation.benches import Beam, Mobile

ALL_LEVEL = msg("Every bar stays level.")
GOING = msg("Let go. Watch it move.")
YOU_SAID: Mapping[str, str] = {
    "left": msg("You said left."),
    "level": msg("You said level."),
    "right": msg("You said right."),
}
TOP_BAR: Mapping[str, str] = {
    "left": msg("Top bar: left end down."),
    "level": msg("Top bar: level."),
    "right": msg("Top bar: right end down."),
}
WHY: Mapping[str, str] = {
    "left": msg("{bar}: what hangs left has the bigger moment."),
    "right": msg("{bar}: what hangs right has the bigger moment."),
}
WHY_IN_NUMBERS: Mapping[str, str] = {
    "left": msg("{bar}: {moment} more on the left."),
    "right": msg("{bar}: {moment} more on the right."),
}
OUT_LONGEST = 3
"""So many bars are told of in words; the table has them all."""
HELP = (
    msg("Drag bars, gulls, floats and weights from the tray under a bar, or press one and then the place."),
    msg("Drag a weight, or a bar by its hook, along a bar or to another one."),
    msg("Drag a bar by its wood to slide it through its ring."),
    msg("Say what the top bar will do, then let go. The whole is level when every bar is: begin at the bottom."),
)
CAUTION = msg("If you build this with real things: tie cords well, and keep faces out from under it.")


def side_moments_kg_m(level: MobileLevel) -> tuple[float, float]:
    """The moments left and right of a bar's ring, both counted up."""
    turn = level.turn
    return (turn.scale_kg_m + turn.moment_kg_m) / 2, (turn.scale_kg_m - turn.moment_kg_m) / 2


def headline(words: Words, bench: Mobile) -> str:
    """What happened, in a sentence."""
    out = len(levels_of(bench).askew)
    if not out:
        return words.say(ALL_LEVEL)
    return words.plural("{n} bar is not level.", "{n} bars are not level.", out)


def guess_against_outcome(words: Words, guess: Side | None, outcome: Side) -> str:
    """What was expected of the topmost bar, beside what it did: no word judges it."""
    happened = words.say(TOP_BAR[outcome])
    if guess is None:
        return happened
    return words.say("{said} {happened}", said=words.say(YOU_SAID[guess]), happened=happened)


def why(words: Words, bench: Mobile, readings: Readings, *, numbers: bool) -> tuple[str, ...]:
    """Which bars are out and to which side, from the lowest up: there one begins to tune."""
    out = [level for level in reversed(levels_of(bench).levels) if level.turn.goes != "level"]
    lines = []
    for level in out[:OUT_LONGEST]:
        bar, goes = words.content(level.name), level.turn.goes
        moment = readings.moment_with_unit(abs(level.turn.moment_kg_m))
        lines.append(
            words.say(WHY_IN_NUMBERS[goes], bar=bar, moment=moment) if numbers else words.say(WHY[goes], bar=bar)
        )
    return tuple(lines)


def weight_said(words: Words, weight: Hung, beam: Beam, readings: Readings) -> str:
    """A weight as it is read out after its name: 50 g at 22.0 cm of short bar."""
    mass, place = readings.weight_with_unit(weight.mass_kg), readings.length_with_unit(weight.at_m)
    return words.say("{weight} at {place} of {bar}", weight=mass, place=place, bar=words.content(beam.name))


def ring_said(words: Words, beam: Beam, readings: Readings) -> str:
    """A bar as it is read out after its name: 36.0 cm, 30 g, its ring at 15.0 cm."""
    return words.say(
        "{length}, {weight}, its ring at {place}",
        length=readings.length_with_unit(beam.length_m),
        weight=readings.weight_with_unit(beam.mass_kg),
        place=readings.length_with_unit(beam.pin_m),
    )


def hook_said(words: Words, beam: Beam, above: Beam, readings: Readings) -> str:
    """Where a bar hangs: at 6.0 cm of long bar."""
    return words.say("at {place} of {bar}", place=readings.length_with_unit(beam.hook_m), bar=words.content(above.name))


def picture_said(words: Words, bench: Mobile) -> str:
    """The picture in two sentences."""
    bars = words.plural("{n} bar", "{n} bars", len(bench.beams))
    weights = words.plural("{n} weight", "{n} weights", sum(len(beam.weights) for beam in bench.beams))
    if bench.held:
        return words.say("{bars} with {weights}, held level.", bars=bars, weights=weights)
    if bench.outcome is None:
        return words.say("{bars} with {weights}, let go and moving.", bars=bars, weights=weights)
    told = headline(words, bench)
    return words.say("{bars} with {weights}, let go. {told}", bars=bars, weights=weights, told=told)
