"""The exact instants at which a balance point on its path crosses a limit: solved, not sampled.

On a leg, mass m and moment p are linear in time.  An edge of the outline from (a, m_a) to (b, m_b) is met where
(p − a m)(m_b − m_a) = m (m − m_a)(b − a): quadratic where the edge slopes, linear where it is upright or level.
A limit across is met where p = limit × m: linear.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from math import isqrt
from typing import Literal

from lab.mechanics.axes import AXES, Axis
from lab.mechanics.balance_paths import BalancePath, PathLeg, PathPoint
from lab.mechanics.checks import finite
from lab.mechanics.limits import Corner, Limits, standing
from lab.mechanics.pivots import LEVEL_SHARE

CrossedLimit = Literal["outline", "left", "right"]
SAME_INSTANT = 1e-13
"""Share of a leg within which two instants are one: the same corner met by its two edges differs by round-off."""
ROOT_BITS = 128
"""Bits to which a square root of a fraction is taken: twice a float's, so that none is lost in the difference."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Crossing:
    """One crossing.  goes: `out` of the limits, or `in`.  point: mass and balance point there.
    limit: which one; edge: which edge of the outline, counted from 0, None across."""

    at_s: float
    goes: Literal["out", "in"]
    limit: CrossedLimit
    edge: int | None
    point: PathPoint


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """A time of the path that is all inside the limits, or all outside."""

    start_s: float
    end_s: float
    inside: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitCourse:
    """How a path stands to the limits in time: its crossings in order, and the stretches between them."""

    crossings: tuple[Crossing, ...]
    stretches: tuple[Stretch, ...]

    @property
    def stays_inside(self) -> bool:
        """Whether the path is inside all along."""
        return all(stretch.inside for stretch in self.stretches)


@dataclass(frozen=True, slots=True)
class _Meeting:
    """Where a path meets the line of a limit: a crossing, or only a touch."""

    at_s: float
    limit: CrossedLimit
    edge: int | None


@dataclass(frozen=True, slots=True)
class _Piece:
    """A time between two meetings: all inside or all outside; None where it is but the instant of a leg's end.
    met: what it starts at, where it starts at one."""

    start_s: float
    end_s: float
    inside: bool | None
    met: _Meeting | None
    point: PathPoint


def limit_crossings(path: BalancePath, limits: Limits) -> LimitCourse:
    """Every instant at which the path goes out of the limits or comes in, and the stretches between.

    A path that only touches an edge, or strays past it by under 1e-9 of the limits' size, does not cross it.
    Raises nothing.  Source: S-03.
    """
    crossings: list[Crossing] = []
    stretches: list[Stretch] = []
    met: _Meeting | None = None
    for piece in (piece for leg in path.legs for piece in _pieces(leg, limits)):
        met = piece.met or met
        if piece.inside is None:
            continue
        if stretches and stretches[-1].inside == piece.inside:
            stretches[-1] = replace(stretches[-1], end_s=piece.end_s)
            continue
        if stretches and met is not None:
            crossings.append(_crossing(piece, met))
        stretches.append(Stretch(start_s=piece.start_s, end_s=piece.end_s, inside=piece.inside))
    return LimitCourse(crossings=tuple(crossings), stretches=tuple(stretches))


def instants_at_m(path: BalancePath, place_m: float, *, axis: Axis = "along") -> tuple[float, ...]:
    """Every instant at which the balance point is exactly at a place on an axis, s; none where it stays there.

    Raises MechanicsError.  Source: S-03.
    """
    place = Fraction(finite("place", place_m, "m"))
    found: list[float] = []
    for leg in path.legs:
        for root in _within(leg, _upright(leg, AXES.index(axis), place)):
            if not found or root - found[-1] > SAME_INSTANT * leg.end_s:
                found.append(root)
    return tuple(found)


def _crossing(piece: _Piece, met: _Meeting) -> Crossing:
    return Crossing(
        at_s=piece.start_s,
        goes="in" if piece.inside else "out",
        limit=met.limit,
        edge=met.edge,
        point=piece.point,
    )


def _pieces(leg: PathLeg, limits: Limits) -> list[_Piece]:
    """The leg cut at its meetings, each piece tried at its middle."""
    cuts: list[tuple[float, _Meeting | None]] = [(leg.start_s, None)]
    for meeting in sorted(_meetings(leg, limits), key=lambda each: each.at_s):
        if meeting.at_s - cuts[-1][0] > SAME_INSTANT * (leg.end_s - leg.start_s):
            cuts.append((meeting.at_s, meeting))
        elif cuts[-1][1] is None:
            cuts[-1] = (cuts[-1][0], meeting)
    ends = [start for start, _ in cuts[1:]] + [leg.end_s]
    pieces = []
    for (start, met), end in zip(cuts, ends, strict=True):
        middle = leg.point_at(start + (end - start) / 2.0)
        # What a path meets just at the end of a leg may be where the next leg sets out from, never to meet it again.
        lasts = end > start or leg.start_s == leg.end_s
        inside = standing(limits, middle.balance_point_m, middle.mass_kg).inside if lasts else None
        pieces.append(_Piece(start, end, inside, met, leg.point_at(start)))
    return pieces


def _meetings(leg: PathLeg, limits: Limits) -> Iterator[_Meeting]:
    for number, edge in enumerate(limits.edges):
        for at in _within(leg, _sloped(leg, edge)):
            if _lies_on(edge, leg.point_at(at)):
                yield _Meeting(at, "outline", number)
    if limits.across_m is not None:
        sides: tuple[CrossedLimit, CrossedLimit] = ("left", "right")
        for side, place in zip(sides, limits.across_m, strict=True):
            for at in _within(leg, _upright(leg, AXES.index("across"), Fraction(place))):
                yield _Meeting(at, side, None)


def _lies_on(edge: tuple[Corner, Corner], point: PathPoint) -> bool:
    """Whether a point of an edge's line lies between the edge's ends, give or take a share of the edge."""
    for end, other, value in zip(*edge, (point.balance_point_m[0], point.mass_kg), strict=True):
        slack = LEVEL_SHARE * max(abs(end), abs(other))
        if not min(end, other) - slack <= value <= max(end, other) + slack:
            return False
    return True


def _upright(leg: PathLeg, axis: int, place: Fraction) -> tuple[Fraction, Fraction, Fraction]:
    """Coefficients, constant first, of the time since the leg's start: moment less place times mass."""
    constant = Fraction(leg.moment_kg_m[axis]) - place * Fraction(leg.mass_kg)
    rate = Fraction(leg.moment_rate_kg_m_s[axis]) - place * Fraction(leg.mass_rate_kg_s)
    return constant, rate, Fraction(0)


def _sloped(leg: PathLeg, edge: tuple[Corner, Corner]) -> tuple[Fraction, Fraction, Fraction]:
    """Coefficients, constant first, of the time since the leg's start, for the line of an edge."""
    (a, mass_a), (b, mass_b) = ((Fraction(along), Fraction(mass)) for along, mass in edge)
    mass, rate = Fraction(leg.mass_kg), Fraction(leg.mass_rate_kg_s)
    if mass_a == mass_b:
        return mass - mass_a, rate, Fraction(0)
    constant, gain, _ = _upright(leg, 0, a)
    rise, run = mass_b - mass_a, b - a
    return (
        constant * rise - mass * (mass - mass_a) * run,
        gain * rise - rate * (2 * mass - mass_a) * run,
        -rate * rate * run,
    )


def _within(leg: PathLeg, coefficients: tuple[Fraction, Fraction, Fraction]) -> list[float]:
    """The roots that lie in the leg, in order; those past an end by round-off at that end."""
    length = leg.end_s - leg.start_s
    found = []
    for root in sorted(_roots(*coefficients)):
        if -LEVEL_SHARE * length <= root <= length * (1.0 + LEVEL_SHARE):
            found.append(leg.start_s + min(max(root, 0.0), length))
    return found


def _roots(constant: Fraction, linear: Fraction, square: Fraction) -> tuple[float, ...]:
    """Real roots of a quadratic or less, each once.  In fractions: whether there are any is never a rounding."""
    if square == 0:
        return () if linear == 0 else (float(-constant / linear),)
    inner = linear * linear - 4 * square * constant
    if inner < 0:
        return ()
    if inner == 0:
        return (float(-linear / (2 * square)),)
    # The larger sum first, the other root from the product: their difference would lose the digits they share.
    large = -(linear + (_square_root(inner) if linear >= 0 else -_square_root(inner))) / 2
    return float(large / square), float(constant / large)


def _square_root(value: Fraction) -> Fraction:
    both = value.numerator * value.denominator
    shift = max(0, ROOT_BITS - both.bit_length() // 2)
    return Fraction(isqrt(both << 2 * shift), value.denominator << shift)
