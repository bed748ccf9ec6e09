"""Where an airframe is first hung by, where scales first stand under it, and how far both can be moved."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import product
from math import tan

from lab.mechanics import MechanicsError, Part, Surface, Vector, bounds_m, main_surface, moment_sum
from lab.simulation.benches.airframe_weighing import borne_by
from lab.simulation.benches.scales import Scale
from lab.simulation.refused import msg

SCALE_NAMES = (msg("nose scale"), msg("left scale"), msg("right scale"))
TAIL_SCALE = msg("tail scale")

HOOK_AHEAD, HOOK_OVER = 0.03, 0.02
"""How far ahead of the balance point, and at least over it, it is first hung by: shares of its length.  It then hangs
tail down, and not on end."""

OUT_SHARE = 0.4
"""Where on a half wing a scale first stands, from its root."""

CHORD_SHARES = (0.15, 0.4, 0.6, 0.85)
END_SHARES = (0.04, 0.96)
"""Where scales are tried, of the wing's chord and of the length: never at the very edge."""

Spans = tuple[tuple[float, float], tuple[float, float], tuple[float, float]]
"""The lowest and the highest place on each axis, m."""


def spans_m(parts: Iterable[Part], surfaces: Iterable[Surface] = ()) -> Spans:
    """The box round an airframe."""
    corners: list[Vector] = []
    for part in parts:
        (x, y, z) = part.at_m
        corners += [(x + a, y + b, z + c) for a, b, c in bounds_m(part.shape)]
    for surface in surfaces:
        corners += _corners(surface)
    along, across, up = zip(*corners, strict=True)
    return (min(along), max(along)), (min(across), max(across)), (min(up), max(up))


def _corners(surface: Surface) -> list[Vector]:
    x, y, z = surface.at_m
    tip = x + surface.half_span_m * tan(surface.sweep_rad)
    chords = ((x, 0.0), (x + surface.root_chord_m, 0.0), (tip, 1.0), (tip + surface.tip_chord_m, 1.0))
    if surface.vertical:
        return [(along, y, z + out * surface.span_m) for along, out in chords]
    half = surface.half_span_m
    return [(along, y + side * out * half, z) for along, out in chords for side in (-1.0, 1.0)]


def first_hook_m(parts: Sequence[Part], surfaces: Sequence[Surface] = ()) -> Vector:
    """On its top, a little ahead of its balance point."""
    (nose, tail), _, (_, top) = spans_m(parts, surfaces)
    balance = moment_sum(parts).balance_point_m
    along = max(nose, balance[0] - HOOK_AHEAD * (tail - nose))
    over = [
        part.at_m[2] + part.shape.reach_m((0.0, 0.0, 1.0))
        for part in parts
        if abs(part.at_m[1]) <= part.shape.reach_m((0.0, 1.0, 0.0))
        and -part.shape.reach_m((-1.0, 0.0, 0.0)) <= along - part.at_m[0] <= part.shape.reach_m((1.0, 0.0, 0.0))
    ]
    return along, 0.0, max(*over, balance[2] + HOOK_OVER * (tail - nose), top if nose == tail else balance[2])


def first_scales(parts: Sequence[Part], surfaces: Sequence[Surface] = ()) -> tuple[Scale, Scale, Scale]:
    """One under an end and two under the wing: of the ways tried, that in which the least of them bears most."""
    spans = spans_m(parts, surfaces)
    best, most = None, -1.0
    for ways in product(END_SHARES, CHORD_SHARES):
        places = _places(spans, surfaces, *ways)
        try:
            borne = borne_by(tuple(parts), places, 0.0)
        except MechanicsError:
            continue
        if borne is not None and min(borne) > most:
            best, most = places, min(borne)
    return _named(best or _places(spans, (), END_SHARES[0], CHORD_SHARES[-1]))


def _places(
    spans: Spans, surfaces: Sequence[Surface], end: float, chord: float
) -> tuple[Vector, Vector, Vector]:  # fmt: skip
    (nose, tail), (left, right), (bottom, _) = spans
    flat = [surface for surface in surfaces if not surface.vertical]
    end_m = nose + end * (tail - nose)
    if flat:
        wing = main_surface(flat)
        out = OUT_SHARE * wing.half_span_m
        long = wing.root_chord_m + OUT_SHARE * (wing.tip_chord_m - wing.root_chord_m)
        along = wing.at_m[0] + out * tan(wing.sweep_rad) + chord * long
        middle = wing.at_m[1]
    else:
        along, middle, out = nose + chord * (tail - nose), (left + right) / 2.0, OUT_SHARE * (right - left) / 2.0
    out = out or OUT_SHARE * (tail - nose) / 2.0
    return (end_m, middle, bottom), (along, middle - out, bottom), (along, middle + out, bottom)


def _named(places: tuple[Vector, Vector, Vector]) -> tuple[Scale, Scale, Scale]:
    ahead = places[0][0] <= places[1][0]
    first, second, third = (
        Scale(id=number, name=name, at_m=at_m)
        for number, name, at_m in zip(
            (1, 2, 3), (SCALE_NAMES[0] if ahead else TAIL_SCALE, *SCALE_NAMES[1:]), places, strict=True
        )
    )
    return first, second, third
