"""Footing bodies: the polygon they stand on, how far they are from tipping, and whether they slide first."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import atan, atan2, hypot, inf, pi
from typing import Literal

from lab.mechanics.checks import MechanicsError, finite, not_negative
from lab.mechanics.moments import balance_of
from lab.mechanics.parts import Part, checked
from lab.mechanics.pivots import LEVEL_SHARE

Spot = tuple[float, float]
"""A place on the ground: along and across, m."""

GivesWay = Literal["slides", "tips", "both"]
OnSlope = Literal["stands", "slides", "tips"]


@dataclass(frozen=True, slots=True, kw_only=True)
class TippingEdge:
    """One side of the polygon that a body stands on.

    start_m, end_m: its ends, anticlockwise seen from above.  margin_m: how far inside it the balance point
    lies, below 0 outside.  tip_rad: how far the body must be tilted over it until it tips; 0 where it tips
    at once, over a quarter turn where the balance point hangs under the ground.
    """

    start_m: Spot
    end_m: Spot
    margin_m: float
    tip_rad: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Footing:
    """A body on its feet.  edges: anticlockwise.  balance_m: along and across.  height_m: of the balance point
    over the ground.  stands: whether it does, on level ground; just over an edge it still does."""

    edges: tuple[TippingEdge, ...]
    balance_m: Spot
    height_m: float
    stands: bool

    @property
    def margin_m(self) -> float:
        """The least of its edges' margins."""
        return min(edge.margin_m for edge in self.edges)

    @property
    def tip_rad(self) -> float:
        """The least of its edges' angles."""
        return min(edge.tip_rad for edge in self.edges)

    @property
    def first_edge(self) -> TippingEdge:
        """The edge over which it tips first; the first of equals."""
        return min(self.edges, key=lambda edge: (edge.tip_rad, edge.margin_m))

    def reach_m(self, downhill: Spot) -> float:
        """How far the balance point's upright may move downhill until it leaves the polygon, m.

        downhill: a direction along and across, of any length.  0 where it has left.  Raises MechanicsError.
        """
        along, across = _direction(downhill)
        if not self.stands:
            return 0.0
        found = inf
        for edge in self.edges:
            out = _outward(edge)
            towards = along * out[0] + across * out[1]
            if towards > 0.0:
                found = min(found, max(0.0, edge.margin_m) / towards)
        return found


@dataclass(frozen=True, slots=True, kw_only=True)
class SlideOrTip:
    """What a body on a slope that is raised slowly does first.

    slides_at_rad: where friction gives way.  tips_at_rad: where it tips over its lowest edge; π where it
    never does.  first: which comes first, `both` where they come together.
    """

    slides_at_rad: float
    tips_at_rad: float
    first: GivesWay

    def at(self, slope_rad: float) -> OnSlope:
        """Whether the body still stands on a slope, or what it has done by then.

        slope_rad: from 0 to under a quarter turn.  Raises MechanicsError.
        """
        if not 0.0 <= slope_rad < pi / 2.0:
            raise MechanicsError(f"slope is {slope_rad} rad; it must be from 0 to under a quarter turn, π/2")
        if slope_rad <= min(self.slides_at_rad, self.tips_at_rad):
            return "stands"
        return "slides" if self.first == "slides" else "tips"


def support_polygon_m(feet_m: Sequence[Spot]) -> tuple[Spot, ...]:
    """The convex polygon round the places where a body touches level ground, anticlockwise from above.

    feet_m: along and across of each.  Places inside it or on its sides are left out.
    Raises MechanicsError where they do not enclose any ground.  Source: S-47.
    """
    feet = sorted({(finite("place of a foot", x, "m"), finite("place of a foot", y, "m")) for x, y in feet_m})
    lower, upper = _chain(feet), _chain(feet[::-1])
    hull = tuple(lower[:-1] + upper[:-1])
    if len(hull) < 3:
        raise MechanicsError(
            f"the {len(feet_m)} feet enclose no ground; a body stands on three or more that are not in line"
        )
    return hull


def _chain(spots: list[Spot]) -> list[Spot]:
    chain: list[Spot] = []
    for spot in spots:
        while len(chain) >= 2 and _left_turn(chain[-2], chain[-1], spot) <= 0:
            chain.pop()
        chain.append(spot)
    return chain


def _left_turn(first: Spot, second: Spot, third: Spot) -> Fraction:
    """Above 0 for a turn to the left, without round-off."""
    x, y = Fraction(first[0]), Fraction(first[1])
    return (Fraction(second[0]) - x) * (Fraction(third[1]) - y) - (Fraction(second[1]) - y) * (Fraction(third[0]) - x)


def footing(parts: Iterable[Part], feet_m: Sequence[Spot], *, ground_m: float = 0.0) -> Footing:
    """Whether a body stands on its feet, and how far it is from tipping over each side.

    feet_m: along and across of every place that touches the ground.  ground_m: how high the ground is.
    Raises MechanicsError.  Source: S-47.
    """
    build = checked(parts)
    ground = finite("height of the ground", ground_m, "m")
    along, across, up = balance_of(build)
    hull = support_polygon_m(feet_m)
    reach = max(hypot(part.at_m[0] - along, part.at_m[1] - across) for part in build)
    slack = LEVEL_SHARE * (reach + max(hypot(x - along, y - across) for x, y in hull))
    edges = tuple(
        _edge(start, end, (along, across), up - ground, slack)
        for start, end in zip(hull, (*hull[1:], hull[0]), strict=True)
    )
    return Footing(
        edges=edges,
        balance_m=(along, across),
        height_m=up - ground,
        stands=all(edge.margin_m >= 0.0 for edge in edges),
    )


def _edge(start: Spot, end: Spot, balance: Spot, height_m: float, slack_m: float) -> TippingEdge:
    along, across = end[0] - start[0], end[1] - start[1]
    inside = (along * (balance[1] - start[1]) - across * (balance[0] - start[0])) / hypot(along, across)
    # Just over the edge, but for round-off, is over the edge: there it still stands.
    margin = 0.0 if abs(inside) <= slack_m else inside
    tip = 0.0 if margin < 0.0 else atan2(margin, height_m)
    return TippingEdge(start_m=start, end_m=end, margin_m=margin, tip_rad=tip)


def _outward(edge: TippingEdge) -> Spot:
    """The direction of length one that leaves the polygon over an edge."""
    along, across = edge.end_m[0] - edge.start_m[0], edge.end_m[1] - edge.start_m[1]
    length = hypot(along, across)
    return across / length, -along / length


def _direction(downhill: Spot) -> Spot:
    along, across = (finite("direction downhill", value, "(no unit)") for value in downhill)
    length = hypot(along, across)
    if length == 0.0:
        raise MechanicsError("direction downhill is (0, 0); it must point somewhere")
    return along / length, across / length


def slide_or_tip(body: Footing, friction: float, downhill: Spot = (1.0, 0.0)) -> SlideOrTip:
    """Whether a standing body slides or tips first when its ground is raised slowly.

    friction: Coulomb's coefficient at rest, 0 or above.  downhill: direction along and across, in the body's
    own axes.  It slides once tan(slope) is over the friction, and tips once it is over reach / height.
    Raises MechanicsError, also where it does not stand on level ground.  Source: S-47.
    """
    grip = not_negative("friction", friction, "(no unit)")
    if not body.stands:
        raise MechanicsError("the body tips on level ground already; stand it over its feet first")
    reach, height = body.reach_m(downhill), body.height_m
    # A balance point on the ground or under it stays over its feet on any slope.
    steep = reach / height if height > 0.0 else inf
    if abs(grip - steep) <= LEVEL_SHARE * grip:
        first: GivesWay = "both"
    else:
        first = "slides" if grip < steep else "tips"
    return SlideOrTip(slides_at_rad=atan(grip), tips_at_rad=atan2(reach, height) if height > 0.0 else pi, first=first)
