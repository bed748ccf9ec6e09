"""What the screen of the scales bench says: what happened, why, and how each thing is read out."""

from __future__ import annotations

from collections.abc import Mapping

from lab.outline import Words
from lab.outline.words import msg
from lab.scenes.readings import Readings
from lab.scenes.scales.view import ScalesView, reading
from lab.simulation import Hung
from lab.simulation.benches.scales import ScalesBench

SIDE_NAMES: Mapping[str, str] = {"left": msg("left"), "level": msg("the same"), "right": msg("right")}
READ_MORE: Mapping[str, str] = {
    "left": msg("The left one reads more."),
    "level": msg("Both read the same."),
    "right": msg("The right one reads more."),
}
STANDS = msg("It stands on all three.")
TIPS_OVER_ONE = msg("It tips over the {scale}.")
TIPS_OVER_EDGE = msg("It tips over the line from {first} to {second}.")
GOING = msg("Let down. Watch the scales.")
YOU_SAID: Mapping[str, str] = {
    "left": msg("You said left."),
    "level": msg("You said the same."),
    "right": msg("You said right."),
}
YOU_SAID_READING = msg("You said {said} on the {scale}.")
YOU_SAID_BOTH = msg("{said} And {reading} on the {scale}.")
WHY: Mapping[str, str] = {
    "left": msg("The balance point lies nearer to it: the nearer scale carries more."),
    "right": msg("The balance point lies nearer to it: the nearer scale carries more."),
    "level": msg("The balance point lies half-way between them."),
}
WHY_TIPS = msg("The balance point lies beyond what holds it up.")
WHY_TIPS_BY = msg("The balance point lies {distance} beyond what holds it up.")
WHY_STANDS = msg("The balance point lies inside the lines from scale to scale.")
SHARE = msg(
    "The balance point is {distance} from the {other}, the scales are {gap} apart: "
    "{weight} × {distance} ÷ {gap} = {reading} on the {scale}."
)
HELP = (
    msg("Drag parts along, put weights from the tray on, and slide the scales."),
    msg("Say which scale will read more, or what it will read; then let go."),
    msg("On the scales everything still moves: watch what they read. Move a load past a scale until it tips."),
    msg("Pick a thing to type its place or weight, or use the arrow keys."),
    msg("One that is picked is named, copied, mirrored or tied to another behind More."),
    msg("Colours and sizes are behind Aa; units change with the button beside it."),
)
CAUTION = msg("If you try this with real things: keep fingers out from under what may tip, and catch it low down.")


def scale_said(words: Words, view: ScalesView, number: int, shown: str) -> str:
    """A scale as it is read out after its name: reads 517 g, at 20.0 cm."""
    scale, readings = view.bench.scales[number], view.readings
    place = _place_said(words, readings, scale.at_m[0], scale.at_m[1], across=view.three)
    if shown == "?":
        return words.say("not known yet, at {place}", place=place)
    return words.say("reads {reading}, at {place}", reading=shown, place=place)


def load_said(words: Words, view: ScalesView, load: Hung) -> str:
    """A part as it is read out after its name: 200 g at 15.0 cm."""
    weight = view.readings.weight_with_unit(load.mass_kg)
    place = _place_said(words, view.readings, load.at_m, load.across_m, across=view.three)
    return words.say("{weight} at {place}", weight=weight, place=place)


def _place_said(words: Words, readings: Readings, along_m: float, across_m: float, *, across: bool) -> str:
    along = readings.length_with_unit(along_m)
    if not across:
        return along
    return words.say("{along} along, {across} across", along=along, across=readings.length_with_unit(across_m))


def happened(words: Words, bench: ScalesBench) -> str:
    """What is to be seen, of a body that has come to rest."""
    if bench.tipping is not None:
        pairs = zip(bench.scales, bench.tipping.bears, strict=True)
        over = [words.content(scale.name) for scale, share in pairs if share]
        if len(over) == 1:
            return words.say(TIPS_OVER_ONE, scale=over[0])
        return words.say(TIPS_OVER_EDGE, first=over[0], second=over[1])
    return words.say(STANDS) if len(bench.scales) == 3 else words.say(READ_MORE[bench.outcome or "level"])


def compared(words: Words, view: ScalesView, bench: ScalesBench) -> tuple[str, ...]:
    """What was expected, beside what happened: no word judges it."""
    side = "" if bench.guess is None or len(bench.scales) == 3 else words.say(YOU_SAID[bench.guess])
    if bench.guessed_kg is None:
        return (side,) if side else ()
    name, said = words.content(bench.scales[0].name), view.readings.weight_with_unit(bench.guessed_kg)
    if not side:
        return (words.say(YOU_SAID_READING, said=said, scale=name),)
    return (words.say(YOU_SAID_BOTH, said=side, reading=said, scale=name),)


def why(words: Words, view: ScalesView, bench: ScalesBench) -> tuple[str, ...]:
    """Why it came out so, in sentences."""
    if bench.tipping is not None:
        if bench.view == "plain":
            return (words.say(WHY_TIPS),)
        beyond_m = abs(bench.tipping.body.cg_m[0] - bench.tipping.edge_m)
        return (words.say(WHY_TIPS_BY, distance=view.readings.length_with_unit(beyond_m)),)
    if len(bench.scales) == 3:
        return (words.say(WHY_STANDS),)
    if bench.view == "plain":
        return (words.say(WHY[bench.outcome or "level"]),)
    first, second = bench.scales
    readings, balance_m = view.readings, bench.sum.balance_point_m[0]
    share = words.say(
        SHARE,
        scale=words.content(first.name),
        other=words.content(second.name),
        weight=readings.weight(bench.sum.mass_kg),
        distance=readings.length(second.at_m[0] - balance_m),
        gap=readings.length(second.at_m[0] - first.at_m[0]),
        reading=reading(view, bench.readings_kg[0]),
    )
    return (share,)


def picture_said(words: Words, view: ScalesView) -> str:
    """The picture in a sentence or two."""
    bench = view.bench
    count = words.plural("{n} part on it", "{n} parts on it", len(bench.loads))
    values = {"body": words.content(bench.title), "weight": view.readings.weight_with_unit(bench.sum.mass_kg)}
    if bench.held:
        return words.say("{body}, {weight}, held over its scales; {count}.", count=count, **values)
    if bench.moving:
        return words.say("{body}, {weight}, let down and moving; {count}.", count=count, **values)
    return words.say(
        "{body}, {weight}, let down; {count}. {happened}", count=count, happened=happened(words, bench), **values
    )
