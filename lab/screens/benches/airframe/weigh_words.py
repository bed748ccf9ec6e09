"""What is said of an airframe on its scales: what they read, what that gives back, and which way it tips."""

from __future__ import annotations

from math import degrees

from lab.outline import Words
from lab.outline.words import msg
from lab.screens.benches.airframe.weigh_view import WeighView, reading, window
from lab.simulation.benches.airframe_weighing import AirframeWeighing

GOING = msg("Let down. Watch the windows settle.")
RAISING = msg("The nose goes up. Watch the windows follow.")
LOWERING = msg("The nose comes down again.")
STANDS = msg("It stands on all three.")
RAISED = msg("It stands with its nose raised by {angle}°.")
TIPS_OVER_ONE = msg("It tips over the {scale}.")
TIPS_OVER_EDGE = msg("It tips over the line from {first} to {second}.")
WHY_TIPS = msg("Its CG lies outside the lines from scale to scale.")
WHY_TIPS_BY = msg("Its CG lies {distance} outside the lines from scale to scale.")
WHY_LEVEL = msg("Raise its nose to find how high its CG is.")
WHY_RAISED = msg("The higher its CG, the more of the weight went aft.")
YOU_SAID = msg("You said {said} on the {scale}.")
NOT_YET = msg("Let it down: the readings give the CG back.")


def happened(words: Words, view: WeighView, weighing: AirframeWeighing) -> str:
    """What is to be seen, of an airframe that has come to rest."""
    if weighing.tipping is not None:
        pairs = zip(weighing.scales, weighing.tipping.bears, strict=True)
        over = [words.content(scale.name) for scale, share in pairs if share]
        if len(over) == 1:
            return words.say(TIPS_OVER_ONE, scale=over[0])
        return words.say(TIPS_OVER_EDGE, first=over[0], second=over[1])
    if weighing.pitch_rad:
        return words.say(RAISED, angle=words.number(degrees(weighing.pitch_rad), 0))
    return words.say(STANDS)


def going(words: Words, weighing: AirframeWeighing) -> str:
    """What is just happening."""
    if weighing.raised or weighing.pitch_rad == weighing.raise_rad or weighing.tipping is not None:
        return words.say(GOING)
    return words.say(RAISING if weighing.raise_rad > weighing.pitch_rad else LOWERING)


def why(words: Words, view: WeighView, weighing: AirframeWeighing) -> str:
    """Why it came out so, and what to do next."""
    tipping = weighing.tipping
    if tipping is None:
        return words.say(WHY_RAISED if weighing.pitch_rad else WHY_LEVEL)
    if not view.told:
        return words.say(WHY_TIPS)
    beyond_m = abs(tipping.body.cg_m[0] - tipping.edge_m)
    return words.say(WHY_TIPS_BY, distance=view.readings.length_with_unit(beyond_m))


def compared(words: Words, view: WeighView, weighing: AirframeWeighing) -> str:
    """What was expected: no word judges it."""
    if weighing.guessed_kg is None:
        return ""
    return words.say(YOU_SAID, said=reading(view, weighing.guessed_kg), scale=words.content(weighing.scales[0].name))


def scale_said(words: Words, view: WeighView, number: int) -> str:
    """A scale as it is read out after its name."""
    scale, shown = view.weighing.scales[number], window(view, number)
    along, across = (view.readings.length_with_unit(each) for each in scale.at_m[:2])
    if view.weighing.held:
        return words.say("not known yet, at {along} along, {across} across", along=along, across=across)
    return words.say("reads {reading}, at {along} along, {across} across", reading=shown, along=along, across=across)


def stands_said(words: Words, view: WeighView) -> str:
    """The picture in a sentence or two."""
    weighing = view.weighing
    if weighing.held:
        return words.say("Held over three scales.")
    if weighing.moving:
        return going(words, weighing)
    return happened(words, view, weighing)
