"""What the two-fingers screen says: what happened, why, and how each thing is read out."""

from __future__ import annotations

from collections.abc import Mapping

from lab.mechanics import STANDARD_GRAVITY_M_S2
from lab.outline import Words
from lab.outline.words import msg
from lab.scenes.readings import Readings
from lab.scenes.two_fingers.slipping import grip_name, rounded_kg
from lab.scenes.two_fingers.view import TwoFingersView
from lab.simulation import Side
from lab.simulation.benches.two_fingers import Piece, TwoFingers

WHICH = msg("Which finger slips first?")
CHOICES: Mapping[str, str] = {"left": msg("left"), "level": msg("both alike"), "right": msg("right")}
MEET = msg("They meet under the balance point.")
GOING = msg("One slips, one sticks.")
STOPPED = msg("The hands stand still.")
FIRST: Mapping[str, str] = {
    "left": msg("The left finger slipped first."),
    "level": msg("Neither finger had the lesser grip."),
    "right": msg("The right finger slipped first."),
}
YOU_SAID: Mapping[str, str] = {
    "left": msg("You said left."),
    "level": msg("You said both alike."),
    "right": msg("You said right."),
}
AS_YOU_SAID: Mapping[str, str] = {
    "left": msg("You said left, and left it was."),
    "level": msg("You said both alike, and so it was."),
    "right": msg("You said right, and right it was."),
}
WHY = msg("The one that carries less slips, until it is so near that it carries more and sticks.")
WHY_UNLIKE = msg("A slippery finger takes longer steps, and they meet at the same place.")
TIPS: Mapping[str, str] = {
    "left": msg("It tipped off the left finger."),
    "right": msg("It tipped off the right finger."),
}
TIPPING = msg("It tips.")
WHY_TIPS: Mapping[str, str] = {
    "left": msg("No finger is left of the balance point, so nothing held that side up."),
    "right": msg("No finger is right of the balance point, so nothing held that side up."),
}
BEYOND: Mapping[str, str] = {
    "left": msg("The balance point lies {distance} left of the left finger."),
    "right": msg("The balance point lies {distance} right of the right finger."),
}
HELP = (
    msg("Drag each finger where you like, both at once if you can. Then let them slide in."),
    msg("Press a finger to soap it or dry it."),
    msg("Drag a weight from the tray onto the body, or press it and then press the place."),
    msg("The flag under the rule is for saying where they will meet."),
    msg("Arrow keys move what is picked, with Shift in large steps; Delete takes a weight off."),
)
CAUTION = msg("If you try this with a broom: mind lamps and heads, and keep feet from under it.")


def first_against_guess(words: Words, guess: Side | None, outcome: Side) -> str:
    """Which slipped first, beside what was expected: no word judges it."""
    if guess == outcome:
        return words.say(AS_YOU_SAID[outcome])
    first = words.say(FIRST[outcome])
    return first if guess is None else words.say("{first} {said}", first=first, said=words.say(YOU_SAID[guess]))


def meeting_against_guess(words: Words, bench: TwoFingers, readings: Readings) -> str:
    """Where they were said to meet, beside where they do. Empty where nothing was said."""
    if bench.meeting_guess_m is None or bench.slide is None:
        return ""
    off_m = abs(bench.meeting_guess_m - bench.slide.meeting_m)
    return words.say(
        "You said they meet at {place}: {distance} off.",
        place=readings.length_with_unit(bench.meeting_guess_m),
        distance=readings.length_with_unit(off_m),
    )


def why_they_meet(words: Words, bench: TwoFingers, view: TwoFingersView) -> tuple[str, ...]:
    """Why they slid as they did, in sentences."""
    slide = bench.slide
    if slide is None:
        return ()
    reasons = [words.say(WHY if slide.left == slide.right else WHY_UNLIKE)]
    if view.numbers:
        start = slide.forces_at(slide.legs[0].gap_m[0])
        left, right = (
            view.readings.weight_with_unit(rounded_kg(view, load_n))
            for load_n in (start.left_normal_n, start.right_normal_n)
        )
        reasons.insert(0, words.say("At first left carried {left}, right {right}.", left=left, right=right))
    return tuple(reasons)


def finger_said(words: Words, view: TwoFingersView, number: int) -> str:
    """A finger as it is read out after its name: at 6.0 cm, dry, sticks."""
    bench = view.bench
    grip = bench.left if number == 0 else bench.right
    place = view.readings.length_with_unit(bench.places_m[number])
    if bench.leg is None or not bench.moving:
        return words.say("at {place}, {grip}", place=place, grip=grip_name(words, grip))
    side = ("left", "right")[number]
    does = words.say("slips") if bench.leg.mover in (side, "both") else words.say("sticks")
    return words.say("at {place}, {grip}, {does}", place=place, grip=grip_name(words, grip), does=does)


def piece_said(words: Words, piece: Piece, readings: Readings) -> str:
    """A piece as it is read out after its name: 200 g at 25.0 cm."""
    mass, place = readings.weight_with_unit(piece.part.mass_kg), readings.length_with_unit(piece.part.at_m[0])
    return words.say("{weight} at {place}", weight=mass, place=place)


def picture_said(words: Words, bench: TwoFingers, readings: Readings) -> str:
    """The picture in two sentences."""
    left, right = (readings.length_with_unit(at_m) for at_m in bench.places_m)
    values = {"title": words.content(bench.title), "left": left, "right": right}
    where = words.say("{title}; fingers at {left} and {right}.", **values)
    if bench.held:
        what = words.say("It is held.")
    elif bench.tipping is not None:
        what = words.say(TIPPING if bench.moving else TIPS[bench.tipping.over])
    elif bench.outcome is not None:
        what = words.say(MEET)
    else:
        what = words.say(STOPPED if bench.stopped else GOING)
    return words.say("{where} {what}", where=where, what=what)


def strip_said(words: Words, bench: TwoFingers, readings: Readings) -> str:
    """What both fingers feel just now, for the strip's node."""
    forces = bench.forces
    if forces is None:
        return words.say("nothing yet")
    left, right, friction = (
        readings.weight_with_unit(round(force_n / STANDARD_GRAVITY_M_S2, 4))
        for force_n in (forces.left_normal_n, forces.right_normal_n, forces.friction_n)
    )
    return words.say(
        "left load {left}, right load {right}, friction {friction}", left=left, right=right, friction=friction
    )
