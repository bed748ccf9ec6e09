"""Limits: where the balance point may lie, as an outline in (balance point along, mass) and a range across."""

from dataclasses import dataclass
from itertools import pairwise

from lab.mechanics.checks import MechanicsError, Vector, finite, positive, vector
from lab.mechanics.pivots import LEVEL_SHARE
from lab.mechanics.ring_crossings import meeting_sides

Corner = tuple[float, float]
Span = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """Where the balance point may lie.  The edges themselves are allowed.

    outline: corners (balance point along m, mass kg) of a simple polygon, in either sense; empty for no limit
    along.  across_m: (left, right), from the lower to the higher place across; None for no limit across.
    Raises MechanicsError.  Source: S-03.
    """

    outline: tuple[Corner, ...] = ()
    across_m: Span | None = None

    def __post_init__(self) -> None:
        if not self.outline and self.across_m is None:
            raise MechanicsError("limits say nothing; give an outline, a range across, or both")
        if self.outline:
            object.__setattr__(self, "outline", _checked_outline(self.outline))
        if self.across_m is not None:
            left, right = (finite("limit across", each, "m") for each in self.across_m)
            if not left < right:
                raise MechanicsError(f"limits across are {left} m and {right} m; the left one must be the lower")

    @property
    def edges(self) -> tuple[tuple[Corner, Corner], ...]:
        """The outline's edges, corner to corner, the last one closing it."""
        return tuple(pairwise((*self.outline, *self.outline[:1])))


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """How a balance point stands to the limits.

    inside: within all of them.  along_spans_m: what is allowed along at this mass; empty where the mass itself
    is out, or where there is no outline.  along_out_m: how far beyond the nearest of them, negative below it, 0
    inside; None where there is no span.  mass_out_kg: how far over the outline's greatest mass, negative under
    its least.  across_out_m: how far beyond the range across, negative to the left of it.
    along_margin_m, across_margin_m: inside, how far the nearest edge is at this mass; None where not inside,
    or not limited.
    """

    inside: bool
    along_spans_m: tuple[Span, ...]
    along_out_m: float | None
    mass_out_kg: float
    across_out_m: float
    along_margin_m: float | None
    across_margin_m: float | None


def standing(limits: Limits, balance_point_m: Vector, mass_kg: float) -> Standing:
    """How a balance point stands to the limits at a mass: inside, or out by how much.

    A miss under 1e-9 of the limits' own size counts as on the edge, and so as inside.
    Raises MechanicsError.  Source: S-03.
    """
    along, across, _ = vector("balance point", balance_point_m, "m")
    mass = positive("mass", mass_kg, "kg")
    mass_out = _mass_out_kg(limits, mass)
    spans = _spans_m(limits, mass) if mass_out == 0.0 else ()
    along_out = _nearest([_beyond(along, span, LEVEL_SHARE * _width_m(limits)) for span in spans])
    across_out, across_margin = 0.0, None
    if limits.across_m is not None:
        left, right = limits.across_m
        across_out = _beyond(across, limits.across_m, LEVEL_SHARE * (right - left))
        across_margin = max(min(across - left, right - across), 0.0) if across_out == 0.0 else None
    return Standing(
        inside=mass_out == 0.0 and across_out == 0.0 and (not limits.outline or along_out == 0.0),
        along_spans_m=spans,
        along_out_m=along_out,
        mass_out_kg=mass_out,
        across_out_m=across_out,
        along_margin_m=max(max(min(along - low, high - along) for low, high in spans), 0.0)
        if along_out == 0.0
        else None,
        across_margin_m=across_margin,
    )


def _beyond(value: float, span: Span, slack: float) -> float:
    """How far a value is past a span, with its sign; 0 within it and within the slack."""
    low, high = span
    if low - slack <= value <= high + slack:
        return 0.0
    return value - high if value > high else value - low


def _nearest(distances: list[float]) -> float | None:
    return min(distances, key=abs) if distances else None


def _width_m(limits: Limits) -> float:
    along = [corner[0] for corner in limits.outline]
    return max(along) - min(along)


def _mass_out_kg(limits: Limits, mass: float) -> float:
    if not limits.outline:
        return 0.0
    masses = [corner[1] for corner in limits.outline]
    low, high = min(masses), max(masses)
    return _beyond(mass, (low, high), LEVEL_SHARE * (high - low))


def _spans_m(limits: Limits, mass: float) -> tuple[Span, ...]:
    """What is allowed along at a mass: where the level line at that mass lies in the outline.

    Counted once with each edge open below and once open above, and joined, so that a line through a corner, or
    along an edge, has what lies to either side of it.
    """
    if not limits.outline:
        return ()
    masses = [corner[1] for corner in limits.outline]
    level = min(max(mass, min(masses)), max(masses))
    spans = [(min(a, b), max(a, b)) for (a, low), (b, high) in limits.edges if low == high == level]
    for open_below in (False, True):
        at = sorted(
            _along_at(edge, level)
            for edge in limits.edges
            if _meets(edge[0][1], edge[1][1], level, open_below=open_below)
        )
        spans += zip(at[::2], at[1::2], strict=True)
    return _joined(spans)


def _meets(first: float, second: float, level: float, *, open_below: bool) -> bool:
    if open_below:
        return (first < level) != (second < level)
    return (first <= level) != (second <= level)


def _along_at(edge: tuple[Corner, Corner], level: float) -> float:
    (a, low), (b, high) = edge
    if level == low:
        return a
    return b if level == high else a + (b - a) * ((level - low) / (high - low))


def _joined(spans: list[Span]) -> tuple[Span, ...]:
    joined: list[Span] = []
    for low, high in sorted(spans):
        if joined and low <= joined[-1][1]:
            joined[-1] = (joined[-1][0], max(joined[-1][1], high))
        else:
            joined.append((low, high))
    return tuple(joined)


def _checked_outline(outline: tuple[Corner, ...]) -> tuple[Corner, ...]:
    """The corners as floats, a last one that repeats the first dropped.  Raises MechanicsError."""
    corners = tuple(
        (finite("a corner of the limits", along, "m"), positive("a corner of the limits", mass, "kg"))
        for along, mass in outline
    )
    if len(corners) > 1 and corners[0] == corners[-1]:
        corners = corners[:-1]
    if len(corners) < 3:
        raise MechanicsError(f"the outline of the limits has {len(corners)} corners; it must have three or more")
    if any(corner == after for corner, after in pairwise(corners)):
        raise MechanicsError("the outline of the limits has a corner twice in a row; each must be another")
    met = meeting_sides((corners,))
    if met is not None:
        (_, first), (_, second) = met
        raise MechanicsError(
            f"the outline of the limits meets itself, edges {first + 1} and {second + 1}; "
            "give its corners in order around it"
        )
    return corners
