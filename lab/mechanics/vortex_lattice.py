"""Lift on flat surfaces and the downwash of one on another: a vortex lattice.

Each surface is cut into strips and rows; each panel carries a horseshoe vortex, bound at its quarter and
trailing aft along x from there, and lets no air through at its three-quarter point.  All surfaces are solved
together, so downwash on a tail, upwash ahead of a wing and what a foreplane does to the wing come out of it.

Limits: thin, flat surfaces without camber, twist or dihedral, at small angles in slow, attached flow.  No body,
nacelle or propeller: a body ahead of the wing brings the neutral point forward, often by several per cent of
the mean chord.  The wake lies flat behind each surface and trails along x; a real one sinks and rolls up.
Where a wake runs into another surface at its own height, the lattice is true to that flat wake, not to viscous
air.  All surfaces share one set of strips, so that no control point comes to lie on another's wake line; their
edges lie by the cosine rule between the cuts, their control points half-way in angle, which converges fast.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, pi, sqrt

import numpy as np
from numpy.typing import NDArray

from lab.mechanics.checks import MechanicsError, finite
from lab.mechanics.surfaces import Surface, airframe_surfaces, main_surface, mean_chord

Floats = NDArray[np.float64]

STRIPS = 14
"""Strips along a half-span of the widest surface, before its cuts.  Four times as many move a neutral point by
less than 0.001 of the mean chord: tests/accuracy/test_flight_neutral_point.py."""

ROWS = 4
"""Rows along a chord.  A flat section has its lift and moment right from one row on; more serve low aspects."""

FEWEST_STRIPS = 3
"""Fewest strips between two cuts of the span."""

SAME_EDGE = 1e-9
"""Share of the whole width under which two strip edges count as one."""

TOUCH_SHARE = 0.01
"""Share of the mean chord under which two surfaces are at one height; overlapping there, they are one surface.
"""

ON_LINE_RAD = 1e-7
"""Angle between the views to both ends of a bound leg, under which a point lies on its line."""

FARTHEST = 1e3
"""Most that a surface's chord, its span, or its distance from the wing may be in mean chords of the wing, and one
over the least that its chord and its span may be.  Beyond, nothing acts on the other, and round-off decides."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Lattice:
    """Panels of all surfaces that lie flat; lengths in mean chords of the wing, whole airframe.

    left, right: (n, 3), ends of each bound vortex.  control: (n, 3), where no air passes.  owner: (n,), index
    of the panel's surface in `surfaces`.  surfaces: those that lie flat.  chord_m, area_m2: of the wing.
    """

    surfaces: tuple[Surface, ...]
    left: Floats
    right: Floats
    control: Floats
    owner: NDArray[np.intp]
    chord_m: float
    area_m2: float

    @property
    def width(self) -> Floats:
        """Of each panel, across: (n,)."""
        width: Floats = self.right[:, 1] - self.left[:, 1]
        return width

    @property
    def bound_along(self) -> Floats:
        """Middle of each bound vortex, along: (n,)."""
        middle: Floats = (self.left[:, 0] + self.right[:, 0]) / 2.0
        return middle


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceLift:
    """What one surface does.  lift_slope: per radian, over the wing's area.  at_m: where its lift acts, along.
    downwash: how much of the airframe's angle the other surfaces take from it; negative is upwash."""

    name: str
    lift_slope: float
    at_m: float
    downwash: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PitchSlopes:
    """How lift and moment grow, over the wing's area and mean chord, about `about_m`.

    lift_slope, moment_slope: per radian of angle of attack; nose up positive.  lift_rate, moment_rate: per
    q c / 2V of turning nose up about `about_m`.  neutral_m: where added lift acts, along.
    """

    about_m: float
    lift_slope: float
    moment_slope: float
    lift_rate: float
    moment_rate: float
    neutral_m: float
    surfaces: tuple[SurfaceLift, ...]


def pitch_slopes(surfaces: Iterable[Surface], about_m: float, *, strips: int = STRIPS, rows: int = ROWS) -> PitchSlopes:
    """Lift and moment of an airframe in pitch, to first order.

    surfaces: at least one that lies flat; fins count for nothing here.  about_m: where it turns, along.
    strips, rows: finer than usual only to see that the answer stays.  The limits are this module's.
    Raises MechanicsError: names used twice, none that lies flat, two that overlap, one out of reach.  Source: S-62.
    """
    about = finite("place that the airframe turns about", about_m, "m")
    panels = lattice(surfaces, strips=strips, rows=rows)
    turned_at = about / panels.chord_m
    wash = downwash_by_each(panels)
    # One row a motion: an angle of one radian, and q c / 2V of one (a radian turned in half a chord flown).
    upwash = np.stack([np.ones(len(panels.owner)), 2.0 * (panels.control[:, 0] - turned_at)], axis=1)
    strength: Floats = np.asarray(np.linalg.solve(wash, upwash), dtype=np.float64)
    lift = strength * (2.0 * panels.width / (panels.area_m2 / panels.chord_m**2))[:, np.newaxis]
    arm = panels.bound_along - turned_at
    lift_slope, lift_rate = (float(total) for total in lift.sum(axis=0))
    moment_slope, moment_rate = (float(total) for total in -(arm @ lift))
    return PitchSlopes(
        about_m=about,
        lift_slope=lift_slope,
        moment_slope=moment_slope,
        lift_rate=lift_rate,
        moment_rate=moment_rate,
        neutral_m=about - moment_slope / lift_slope * panels.chord_m,
        surfaces=_each(panels, wash, strength[:, 0], lift[:, 0]),
    )


def _each(panels: Lattice, wash: Floats, strength: Floats, lift: Floats) -> tuple[SurfaceLift, ...]:
    found = []
    for index, surface in enumerate(panels.surfaces):
        mine = panels.owner == index
        from_others = wash[np.ix_(mine, ~mine)] @ strength[~mine]
        total = float(lift[mine].sum())
        found.append(
            SurfaceLift(
                name=surface.name,
                lift_slope=total,
                at_m=float(lift[mine] @ panels.bound_along[mine]) / total * panels.chord_m,
                downwash=float(from_others @ panels.width[mine] / panels.width[mine].sum()),
            )
        )
    return tuple(found)


def lattice(surfaces: Iterable[Surface], *, strips: int = STRIPS, rows: int = ROWS) -> Lattice:
    """The panels of an airframe.  Raises MechanicsError as `pitch_slopes` does.  Source: S-62."""
    given = airframe_surfaces(surfaces)
    flat = tuple(surface for surface in given if not surface.vertical)
    wing = main_surface(flat)
    chord = mean_chord(wing).length_m
    _refuse_out_of_reach(flat, wing, chord)
    strips_across = _strips(flat, strips=strips)
    _refuse_overlap(flat, strips_across.middles, chord)
    cut = [_panels(surface, strips_across, rows=rows) for surface in flat]
    left, right, control = (np.concatenate([each[k] for each in cut]) / chord for k in range(3))
    owner = np.repeat(np.arange(len(flat)), [len(each[0]) for each in cut])
    return Lattice(
        surfaces=flat,
        left=left,
        right=right,
        control=control,
        owner=owner,
        chord_m=chord,
        area_m2=wing.area_m2,
    )


@dataclass(frozen=True, slots=True, eq=False)
class _Strips:
    """Strips that all surfaces share, m across: edges (n + 1,), and where control points lie, (n,)."""

    edges: Floats
    middles: Floats

    def under(self, surface: Surface) -> "_Strips":
        """Those that a surface spans."""
        within = np.flatnonzero(_within(surface, self.middles))
        return _Strips(self.edges[within[0] : within[-1] + 2], self.middles[within])


def _strips(flat: Sequence[Surface], *, strips: int) -> _Strips:
    """Closest near every root and tip, by the cosine rule between each two of them."""
    cuts = np.array(sorted(y for each in flat for y in _reach(each)))
    kept = [cuts[0]]
    for cut in cuts[1:]:
        if cut - kept[-1] > SAME_EDGE * (cuts[-1] - cuts[0]):
            kept.append(cut)
    longest = max(each.half_span_m for each in flat)
    edges, middles = [np.array(kept[:1])], []
    for near, far in pairwise(kept):
        # By the root of the share: a short cut needs its strips for the load's fall at its ends.
        # Less a trace: round-off of where the airframe stands must not add a strip to a whole half-span.
        count = max(FEWEST_STRIPS, ceil(strips * sqrt((far - near) / longest) - SAME_EDGE * strips))
        turn = np.arange(1, count + 1) * (pi / count)
        edges.append(near + (far - near) * (1.0 - np.cos(turn)) / 2.0)
        middles.append(near + (far - near) * (1.0 - np.cos(turn - pi / (2 * count))) / 2.0)
    return _Strips(np.concatenate(edges), np.concatenate(middles))


def _reach(surface: Surface) -> tuple[float, float, float]:
    """Left tip, root and right tip, m across."""
    middle = surface.at_m[1]
    return middle - surface.half_span_m, middle, middle + surface.half_span_m


def _within(surface: Surface, across: Floats) -> NDArray[np.bool_]:
    inside: NDArray[np.bool_] = np.abs(across - surface.at_m[1]) < surface.half_span_m
    return inside


def _chords(surface: Surface, across: Floats) -> tuple[Floats, Floats]:
    """Leading edge along and chord at places across, m."""
    out = np.abs(across - surface.at_m[1])
    lead = surface.at_m[0] + out * np.tan(surface.sweep_rad)
    share = np.minimum(out / surface.half_span_m, 1.0)
    return lead, surface.root_chord_m + share * (surface.tip_chord_m - surface.root_chord_m)


def _panels(surface: Surface, strips: _Strips, *, rows: int) -> tuple[Floats, Floats, Floats]:
    """Bound ends left and right, and control points, each (strips × rows, 3), m."""
    own = strips.under(surface)
    quarter = (np.arange(rows) + 0.25) / rows

    def placed(across: Floats, share: Floats) -> Floats:
        lead, chord = _chords(surface, across)
        at = np.full((len(across), rows, 3), surface.at_m[2])
        at[..., 0] = lead[:, np.newaxis] + chord[:, np.newaxis] * share
        at[..., 1] = across[:, np.newaxis]
        return at

    bound, control = placed(own.edges, quarter), placed(own.middles, quarter + 0.5 / rows)
    return bound[:-1].reshape(-1, 3), bound[1:].reshape(-1, 3), control.reshape(-1, 3)


def _refuse_out_of_reach(flat: Sequence[Surface], wing: Surface, chord: float) -> None:
    """Raises MechanicsError where a surface is of another order of size than the wing, or far from it."""
    for surface in flat:
        sizes = {"root chord": surface.root_chord_m, "span": surface.span_m}
        for what, size in sizes.items():
            if not chord / FARTHEST <= size <= chord * FARTHEST:
                raise MechanicsError(
                    f"{what} of surface {surface.name!r} is {size / chord:.4g} mean chords of the wing; "
                    f"it must be between {1.0 / FARTHEST:g} and {FARTHEST:g}"
                )
        away = max(abs(here - there) for here, there in zip(surface.at_m, wing.at_m, strict=True))
        if away > chord * FARTHEST:
            raise MechanicsError(
                f"surface {surface.name!r} is {away / chord:.4g} mean chords from the wing; "
                f"it must be within {FARTHEST:g}"
            )


def _refuse_overlap(flat: Sequence[Surface], middles: Floats, chord: float) -> None:
    """Raises MechanicsError where two surfaces at one height cover the same place."""
    for index, one in enumerate(flat):
        for other in flat[:index]:
            if abs(one.at_m[2] - other.at_m[2]) > TOUCH_SHARE * chord:
                continue
            both = _within(one, middles) & _within(other, middles)
            lead, length = _chords(one, middles[both])
            other_lead, other_length = _chords(other, middles[both])
            if np.any((lead < other_lead + other_length) & (other_lead < lead + length)):
                raise MechanicsError(
                    f"surfaces {other.name!r} and {one.name!r} overlap at one height; move one along or up"
                )


def downwash_by_each(panels: Lattice) -> Floats:
    """Air that a horseshoe of unit strength on each panel (column) sends down past each control point (row):
    (n, n), by the law of Biot and Savart.  Only the part across the flat panels counts: down, along z.
    Source: S-62."""
    from_left = panels.control[:, np.newaxis, :] - panels.left
    from_right = panels.control[:, np.newaxis, :] - panels.right
    x1, y1, z1 = (from_left[..., axis] for axis in range(3))
    x2, y2, z2 = (from_right[..., axis] for axis in range(3))
    far1 = np.sqrt(x1 * x1 + y1 * y1 + z1 * z1)
    far2 = np.sqrt(x2 * x2 + y2 * y2 + z2 * z2)
    # The bound leg runs from left to right; a point on its own line feels nothing of it.  Within a ten-millionth
    # of a radian of that line the difference of two cosines is round-off, and what it stands for is nothing.
    dx, dy = x1 - x2, y1 - y2
    lever_x, lever_y, lever_z = y1 * z2 - z1 * y2, z1 * x2 - x1 * z2, x1 * y2 - y1 * x2
    lever2 = lever_x**2 + lever_y**2 + lever_z**2
    pull = (dx * x1 + dy * y1) / far1 - (dx * x2 + dy * y2) / far2
    off_line = lever2 > (ON_LINE_RAD * far1 * far2) ** 2
    up = np.divide(lever_z * pull, lever2, out=np.zeros_like(pull), where=off_line)
    # The trailing legs: in from far aft to the left end, out from the right end to far aft.
    up += _trailing(x2, y2, z2, far2) - _trailing(x1, y1, z1, far1)
    down: Floats = up / (-4.0 * pi)
    return down


def _trailing(x: Floats, y: Floats, z: Floats, far: Floats) -> Floats:
    """Upwash, times 4π, of a unit vortex that goes out along x to far aft."""
    aside2 = y * y + z * z
    return np.divide(y * (1.0 + x / far), aside2, out=np.zeros_like(aside2), where=aside2 > 0.0)
