"""The neutral point, and what the balance point's place ahead of it means: steady, neutral or running away.

The neutral point is where the lift acts that a little more angle adds.  Balanced ahead of it, an airframe that
is turned nose up lifts behind its balance point and comes back; balanced behind it, it goes on turning.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from math import erf, hypot, sqrt
from typing import Literal

from lab.mechanics.checks import MechanicsError, finite, not_negative, positive
from lab.mechanics.surfaces import MeanChord, Surface, airframe_surfaces, main_surface, mean_chord
from lab.mechanics.vortex_lattice import PitchSlopes, SurfaceLift, pitch_slopes

Goes = Literal["steady", "neutral", "runs away"]
Sureness = Literal["sure", "likely", "open"]

MODEL_DOUBT_SHARE = 0.03
"""One standard uncertainty of a computed neutral point, in mean chords: lattices agree to 0.01 or better, the
rest stands for the slim body and the thick air that they leave out.  A choice, not a measurement."""

NEUTRAL_SHARE = 0.005
"""Margins up to this, in mean chords, count as neutral: half a millimetre on a chord of a hand.  A choice."""

USUAL_MARGIN = (0.05, 0.15)
"""Margins that designers usually ask for, in mean chords: a band to compare with, no verdict.  Source: S-63."""

SURE_CHANCE = 0.977
"""Chance from which a verdict is sure: two standard uncertainties on its side of the line."""

LIKELY_CHANCE = 0.841
"""Chance from which it is likely: one standard uncertainty."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NeutralPoint:
    """at_m: along.  share: of the wing's mean chord, from its leading edge.  chord: that mean chord.
    lift_slope: of the whole, per radian.  surfaces: what each does.  closed_at_m, closed_share: the same place
    by the teaching formula."""

    at_m: float
    share: float
    chord: MeanChord
    lift_slope: float
    surfaces: tuple[SurfaceLift, ...]
    closed_at_m: float
    closed_share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PitchMargin:
    """margin: (neutral point − balance point) / mean chord.  balance_share: the balance point's share of the
    mean chord.  doubt: one standard uncertainty of the margin.  goes: what it means.  chance: that the margin
    lies where `goes` says, were its doubt normal.  sureness: that chance in a word."""

    margin: float
    balance_share: float
    doubt: float
    goes: Goes
    chance: float
    sureness: Sureness


def neutral_point(surfaces: Iterable[Surface]) -> NeutralPoint:
    """Where an airframe's added lift acts, by the vortex lattice, with the teaching formula's answer beside it.

    Its limits are those of `lab.mechanics.vortex_lattice`.  Raises MechanicsError.  Source: S-62.
    """
    given = airframe_surfaces(surfaces)
    chord = mean_chord(main_surface(given))
    slopes: PitchSlopes = pitch_slopes(given, chord.quarter_m)
    closed = closed_neutral_share(given)
    return NeutralPoint(
        at_m=slopes.neutral_m,
        share=chord.share(slopes.neutral_m),
        chord=chord,
        lift_slope=slopes.lift_slope,
        surfaces=slopes.surfaces,
        closed_at_m=chord.along_m(closed),
        closed_share=closed,
    )


def neutral_point_m(lift_slope: float, moment_slope: float, chord_m: float, about_m: float = 0.0) -> float:
    """The neutral point along from how lift and nose-up moment grow: about − chord × moment / lift.

    lift_slope, moment_slope: by the same measure of angle, the moment about about_m over chord_m.
    Raises MechanicsError where added angle adds no lift: then it is nowhere.  Source: S-60.
    """
    lift = finite("lift slope", lift_slope, "")
    if lift == 0.0:
        raise MechanicsError("lift slope is 0; without added lift there is no neutral point")
    moment = finite("moment slope", moment_slope, "")
    return finite("reference", about_m, "m") - moment / lift * positive("mean chord", chord_m, "m")


def balance_for_margin_m(neutral_m: float, chord_m: float, margin: float) -> float:
    """Where an airframe must balance, along, to have a margin.  Raises MechanicsError.  Source: S-60."""
    neutral = finite("neutral point", neutral_m, "m")
    return neutral - finite("margin", margin, "") * positive("mean chord", chord_m, "m")


def pitch_margin(neutral: NeutralPoint, balance_m: float, balance_doubt_m: float = 0.0) -> PitchMargin:
    """What a balance point along means in pitch, and how sure that is.

    balance_doubt_m: one standard uncertainty of the balance point; the model's own is added.  A verdict of
    neutral is never sure: its band is narrower than the model's doubt.  Raises MechanicsError.  Source: S-60.
    """
    share = neutral.chord.share(balance_m)
    margin = neutral.share - share
    doubt_share = not_negative("doubt of the balance point", balance_doubt_m, "m") / neutral.chord.length_m
    doubt = hypot(MODEL_DOUBT_SHARE, doubt_share)
    below, above = (_chance_under(edge, margin, doubt) for edge in (-NEUTRAL_SHARE, NEUTRAL_SHARE))
    goes: Goes
    if margin > NEUTRAL_SHARE:
        goes, chance = "steady", 1.0 - above
    elif margin < -NEUTRAL_SHARE:
        goes, chance = "runs away", below
    else:
        goes, chance = "neutral", above - below
    return PitchMargin(
        margin=margin,
        balance_share=share,
        doubt=doubt,
        goes=goes,
        chance=chance,
        sureness=_in_a_word(chance),
    )


def _chance_under(edge: float, middle: float, doubt: float) -> float:
    return (1.0 + erf((edge - middle) / (doubt * sqrt(2.0)))) / 2.0


def _in_a_word(chance: float) -> Sureness:
    if chance >= SURE_CHANCE:
        return "sure"
    return "likely" if chance >= LIKELY_CHANCE else "open"


def closed_neutral_share(surfaces: Iterable[Surface]) -> float:
    """The teaching formula: the neutral point as a share of the wing's mean chord.

    ¼ + Σ (1 + 2/A) / (1 + 2/A_h) (1 − 4/(A + 2)) V_h over the other flat surfaces, with A the wing's aspect
    ratio, A_h theirs, V_h = area × arm over the wing's area × mean chord, arms from quarter to quarter chord.
    A foreplane has a negative arm and no downwash to lose: the bracket is left out.  It knows no sweep beyond
    that of the mean chords, no wake's height, and forgets the others' lift in the total: good for a first
    guess, several per cent of the chord off.  Raises MechanicsError.  Source: S-64.
    """
    given = airframe_surfaces(surfaces)
    wing = main_surface(given)
    chord = mean_chord(wing)
    share = 0.25
    for other in given:
        if other.vertical or other is wing:
            continue
        arm = mean_chord(other).quarter_m - chord.quarter_m
        volume = other.area_m2 * arm / (wing.area_m2 * chord.length_m)
        share += closed_shift(wing.aspect, other.aspect, volume)
    return share


def closed_shift(wing_aspect: float, other_aspect: float, volume: float) -> float:
    """How far another surface shifts the neutral point aft, in mean chords, by the teaching formula.

    volume: the other's area × arm over the wing's area × mean chord; below 0 ahead of the wing, where no
    downwash is taken off.  Raises MechanicsError.  Source: S-64.
    """
    wing = positive("aspect ratio of the wing", wing_aspect, "")
    other = positive("aspect ratio of the other surface", other_aspect, "")
    kept = 1.0 - 4.0 / (wing + 2.0) if finite("tail volume", volume, "") >= 0.0 else 1.0
    return (1.0 + 2.0 / wing) / (1.0 + 2.0 / other) * kept * volume
