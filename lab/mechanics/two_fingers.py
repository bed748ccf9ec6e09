"""Two fingers slid together under a body: which one moves, where it stops, and where they meet.

Slow, so that the body is always at rest but for the finger that slides; Coulomb friction, static at least as
high as kinetic.  The finger farther from the balance point carries less, so it slides first; it slides on past
the place where both would be as far, until its kinetic friction, grown with its load, is what the other can
just hold; then the other slides.  Each turn is shorter than the one before by the ratio of the frictions, and
they meet under the balance point, whatever the body weighs.

Places are on the body, along: the body's own coordinates, in which a finger that holds stays where it is.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from lab.mechanics.checks import STANDARD_GRAVITY_M_S2, MechanicsError, finite, positive
from lab.mechanics.moments import balance_of
from lab.mechanics.parts import Part, checked, total_mass_kg
from lab.mechanics.pivots import LEVEL_SHARE, Side

Finger = Literal["left", "right"]
Mover = Literal["left", "right", "both"]

MOST_LEGS = 1000
"""Legs after which a slide is refused: frictions that differ by a part in 500 take as many to halve the gap."""


@dataclass(frozen=True, slots=True)
class Friction:
    """Coefficients of a finger: static, and kinetic, above 0 and at most the static.  Raises MechanicsError."""

    static: float
    kinetic: float

    def __post_init__(self) -> None:
        positive("static friction", self.static, "(a coefficient)")
        positive("kinetic friction", self.kinetic, "(a coefficient)")
        if self.kinetic > self.static:
            raise MechanicsError(f"kinetic friction is {self.kinetic}; it must be at most the static, {self.static}")


@dataclass(frozen=True, slots=True, kw_only=True)
class FingerTips:
    """The fingers do not span the balance point: the body tips.  goes: the end that drops.
    over: the finger it turns about.  beyond_m: how far past that finger the balance point is."""

    goes: Side
    over: Finger
    beyond_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FingerForces:
    """What the fingers feel, N: how hard each is pressed, and the friction that both share, equal and opposite.
    left_holds_n, right_holds_n: the most static friction each could give."""

    left_normal_n: float
    right_normal_n: float
    friction_n: float
    left_holds_n: float
    right_holds_n: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FingerLeg:
    """One finger slides (or both creep in together), the other holds.

    from_m, to_m: places (left finger, right finger) at its start and its end.
    """

    mover: Mover
    from_m: tuple[float, float]
    to_m: tuple[float, float]

    @property
    def gap_m(self) -> tuple[float, float]:
        """The distance between the fingers at the start and at the end."""
        return self.from_m[1] - self.from_m[0], self.to_m[1] - self.to_m[0]

    def places_m(self, gap_m: float) -> tuple[float, float]:
        """Where the two fingers are when they are so far apart."""
        start, end = self.gap_m
        share = min(max((start - gap_m) / (start - end), 0.0), 1.0) if start > end else 1.0
        left, right = (a + (b - a) * share for a, b in zip(self.from_m, self.to_m, strict=True))
        return left, right


@dataclass(frozen=True, slots=True, kw_only=True)
class FingerSlide:
    """The whole slide.

    legs: in order, each beginning where the one before ends; the last ends where the fingers touch.
    tied: whether at the start neither had the lesser grip; the left is then taken to slide.
    meeting_m: the place on the body that they close in on, the balance point.
    """

    legs: tuple[FingerLeg, ...]
    tied: bool
    meeting_m: float
    weight_n: float
    left: Friction
    right: Friction

    def places_m(self, gap_m: float) -> tuple[float, float]:
        """Where the two fingers are when they are so far apart; at their ends beyond either.

        Raises MechanicsError.
        """
        gap = finite("gap between the fingers", gap_m, "m")
        leg = next((leg for leg in self.legs if gap >= leg.gap_m[1]), self.legs[-1])
        return leg.places_m(gap)

    def forces_at(self, gap_m: float) -> FingerForces:
        """What the fingers feel while they slide, so far apart.

        Where one stops and the other starts, the friction falls from what it could just hold to what slides:
        at that very gap, the force before the fall.  Raises MechanicsError.  Source: S-08, S-51.
        """
        gap = finite("gap between the fingers", gap_m, "m")
        leg = next((leg for leg in self.legs if gap >= leg.gap_m[1]), self.legs[-1])
        left, right = leg.places_m(gap)
        on_left, on_right = _normals_n(self.weight_n, self.meeting_m - left, right - self.meeting_m)
        friction = self.right.kinetic * on_right if leg.mover == "right" else self.left.kinetic * on_left
        return FingerForces(
            left_normal_n=on_left,
            right_normal_n=on_right,
            friction_n=friction,
            left_holds_n=self.left.static * on_left,
            right_holds_n=self.right.static * on_right,
        )


def two_finger_slide(
    parts: Iterable[Part],
    left_at_m: float,
    right_at_m: float,
    *,
    left: Friction,
    right: Friction | None = None,
    touch_m: float = 0.01,
) -> FingerSlide | FingerTips:
    """What happens when two fingers under a build are slid together.

    left_at_m, right_at_m: places along, the left one lower.  left, right: frictions; the right finger's are the
    left one's unless said.  touch_m: how far apart the fingers' middles are when they touch, above 0.
    Raises MechanicsError.  Source: S-08, S-51.
    """
    build = checked(parts)
    places = finite("place of the left finger", left_at_m, "m"), finite("place of the right finger", right_at_m, "m")
    touch = positive("distance at which the fingers touch", touch_m, "m")
    if places[1] - places[0] <= touch:
        raise MechanicsError(
            f"fingers are at {places[0]} m and {places[1]} m; the right one must be more than {touch} m further right"
        )
    balance = balance_of(build)[0]
    before, after = _distances_m(places, balance)
    if before < 0.0:
        return FingerTips(goes="left", over="left", beyond_m=-before)
    if after < 0.0:
        return FingerTips(goes="right", over="right", beyond_m=-after)
    grips = left, left if right is None else right
    legs, tied = _legs((before, after), grips, touch, balance)
    return FingerSlide(
        legs=tuple(legs),
        tied=tied,
        meeting_m=balance,
        weight_n=total_mass_kg(build) * STANDARD_GRAVITY_M_S2,
        left=grips[0],
        right=grips[1],
    )


def _distances_m(places: tuple[float, float], balance: float) -> tuple[float, float]:
    """How far each finger is from the balance point, outwards; 0 where it is short of it by round-off only."""
    slack = LEVEL_SHARE * (places[1] - places[0])
    before, after = balance - places[0], places[1] - balance
    return (0.0 if abs(before) <= slack else before), (0.0 if abs(after) <= slack else after)


def _normals_n(weight: float, before: float, after: float) -> tuple[float, float]:
    return weight * (after / (before + after)), weight * (before / (before + after))


def _legs(
    distances: tuple[float, float], grips: tuple[Friction, Friction], touch: float, balance: float
) -> tuple[list[FingerLeg], bool]:
    """Legs until the fingers touch, and whether the first finger to slide was a toss-up."""
    # Pressed by the other's distance: a finger at d, the other at e, holds static × e of the weight × 1 / (d + e).
    holds = grips[0].static * distances[1], grips[1].static * distances[0]
    tied = abs(holds[0] - holds[1]) <= LEVEL_SHARE * max(holds)
    mover = 0 if tied or holds[0] < holds[1] else 1
    even = all(grip.static == grip.kinetic for grip in grips)
    legs: list[FingerLeg] = []
    here, apart = distances, True
    while apart:
        if len(legs) == MOST_LEGS:
            raise MechanicsError(
                f"the fingers take more than {MOST_LEGS} turns to come within {touch} m; "
                "give frictions further apart, or a wider finger"
            )
        held = here[1 - mover]
        to = grips[mover].kinetic / grips[1 - mover].static * held
        name: Mover = "left" if mover == 0 else "right"
        if even and (tied or legs):
            # Static no higher than kinetic: neither can hold the other for any distance, and both creep in.
            share = touch / (here[0] + here[1])
            there, name, apart = (here[0] * share, here[1] * share), "both", False
        else:
            apart = to + held > touch
            to = to if apart else touch - held
            there = (to, held) if mover == 0 else (held, to)
        legs.append(FingerLeg(mover=name, from_m=_places_m(here, balance), to_m=_places_m(there, balance)))
        here, mover = there, 1 - mover
    return legs, tied


def _places_m(distances: tuple[float, float], balance: float) -> tuple[float, float]:
    return balance - distances[0], balance + distances[1]
