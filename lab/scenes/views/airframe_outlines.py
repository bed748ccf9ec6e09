"""How an airframe's fuselage, wings and fins are outlined in each face, in metres."""

from __future__ import annotations

from math import cos, pi, sin, sqrt, tan

from lab.mechanics import Surface, Vector
from lab.scenes.views.projections import Face, Flat, flat_m
from lab.scenes.views.solids import Rings

WING_THICK, TAIL_THICK = 0.10, 0.06
"""Of the chord: how thick a lifting surface is drawn, and one that only steadies."""

NOSE_SHARE, TAIL_END = 0.34, 0.30
"""Where a fuselage is at its thickest, as a share of its length; how thick its tail end is, of that."""
STEPS = 18


def fuselage_m(face: Face, centre_m: Vector, size_m: Vector) -> Rings:
    """A hull with an eased nose and a long taper, as long, wide and high as the part it stands for."""
    middle = flat_m(face, centre_m)
    if face == "front":
        turns = (2.0 * pi * step / (2 * STEPS) for step in range(2 * STEPS))
        return (tuple((middle[0] + size_m[1] / 2 * cos(t), middle[1] + size_m[2] / 2 * sin(t)) for t in turns),)
    half = (size_m[2] if face == "side" else size_m[1]) / 2.0
    nose = middle[0] - size_m[0] / 2.0
    # The nose is stepped by the square, so that it is round where it turns fastest.
    shares = [NOSE_SHARE * (step / STEPS) ** 2 for step in range(STEPS)]
    shares += [NOSE_SHARE + (1.0 - NOSE_SHARE) * step / STEPS for step in range(STEPS + 1)]
    upper = [(nose + share * size_m[0], middle[1] + half * _fullness(share)) for share in shares]
    lower = [(x, 2.0 * middle[1] - y) for x, y in reversed(upper)]
    return (tuple(upper + lower),)


def _fullness(share: float) -> float:
    """The half height of a fuselage at a share of its length, of the largest."""
    if share < NOSE_SHARE:
        ahead = 1.0 - share / NOSE_SHARE
        return float(sqrt(max(0.0, 1.0 - ahead**1.8)) ** 1.15)
    back = (share - NOSE_SHARE) / (1.0 - NOSE_SHARE)
    return float(1.0 - (1.0 - TAIL_END) * back**1.35)


def surface_m(surface: Surface, face: Face) -> tuple[Rings, ...]:
    """A surface in a face, one outline after the other: farther ones first."""
    if surface.vertical:
        return _fin_m(surface, face)
    if face == "top":
        return ((_plan_m(surface),),)
    if face == "front":
        return ((_from_ahead_m(surface),),)
    return _from_beside_m(surface)


def thickness_m(surface: Surface, chord_m: float, *, main: bool) -> float:
    """How thick a surface is drawn where its chord is so long."""
    share = WING_THICK if main and not surface.vertical else TAIL_THICK
    return share * chord_m


def _plan_m(surface: Surface) -> tuple[Flat, ...]:
    x, y, _ = surface.at_m
    half = surface.half_span_m
    aft = half * tan(surface.sweep_rad)
    root, tip = surface.root_chord_m, surface.tip_chord_m
    return (
        (x, y), (x + aft, y + half), (x + aft + tip, y + half),
        (x + root, y), (x + aft + tip, y - half), (x + aft, y - half),
    )  # fmt: skip


def _from_ahead_m(surface: Surface) -> tuple[Flat, ...]:
    """A long lens, thick at the root."""
    x, y, z = surface.at_m
    half = surface.half_span_m
    root = thickness_m(surface, surface.root_chord_m, main=True) / 2.0
    tip = max(thickness_m(surface, surface.tip_chord_m, main=True) / 2.0, 0.35 * root)
    corners = ((-half, z - tip), (0.0, z - root), (half, z - tip), (half, z + tip), (0.0, z + root), (-half, z + tip))
    return tuple((flat_m("front", (x, y + across, up))[0], up) for across, up in corners)


def _from_beside_m(surface: Surface) -> tuple[Rings, ...]:
    """The root's section and, where it is swept or tapered, the near tip's over it."""
    x, _, z = surface.at_m
    aft = surface.half_span_m * tan(surface.sweep_rad)
    root = _section_m((x, z), surface.root_chord_m)
    if surface.tip_chord_m <= 0.0:
        return ((root,),)
    return ((root,), (_section_m((x + aft, z), surface.tip_chord_m),))


def _section_m(lead_m: Flat, chord_m: float) -> tuple[Flat, ...]:
    """A wing's section, flat below: leading edge at a place."""
    x, z = lead_m
    thick = WING_THICK * chord_m
    shares = [(step / STEPS) ** 1.6 for step in range(STEPS + 1)]
    # Rises fast, thickest at about a third, straight to the trailing edge.
    upper = [(x + share * chord_m, z + thick * _camber(share)) for share in shares]
    return (*upper, (x + 0.02 * chord_m, z - 0.12 * thick))


def _camber(share: float) -> float:
    return 2.6 * (sqrt(share) - share) * (1.0 - 0.25 * share)


def _fin_m(surface: Surface, face: Face) -> tuple[Rings, ...]:
    x, y, z = surface.at_m
    up = surface.span_m
    aft = up * tan(surface.sweep_rad)
    root, tip = surface.root_chord_m, surface.tip_chord_m
    if face == "side":
        return ((((x, z), (x + aft, z + up), (x + aft + tip, z + up), (x + root, z)),),)
    half = thickness_m(surface, root, main=False) / 2.0
    if face == "front":
        middle = flat_m("front", surface.at_m)[0]
        return (
            (((middle - half, z), (middle - half * 0.7, z + up), (middle + half * 0.7, z + up), (middle + half, z)),),
        )
    back = max(root, aft + tip)
    lens = ((x, y), (x + 0.3 * back, y + half), (x + back, y), (x + 0.3 * back, y - half))
    return ((lens,),)
