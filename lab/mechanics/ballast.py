"""Ballast at one place: how much brings the balance point to where it should be, and how that falls with the arm."""

from dataclasses import dataclass
from math import isfinite
from typing import Literal

from lab.mechanics.checks import MechanicsError, finite, positive
from lab.mechanics.pivots import LEVEL_SHARE

Reason = Literal["side", "together", "room", "too heavy"]


@dataclass(frozen=True, slots=True, kw_only=True)
class CannotBeDone:
    """There is no answer, and why.

    reason: `side`, no place lies beyond the target, seen from the balance point; `together`, each axis could be
    brought right but not all at once; `room`, the places hold too little, or end too soon; `too heavy`, it would
    take more than a number can say.  why: a sentence.  name: the place or part that it is about, "" for all.
    """

    reason: Reason
    why: str
    name: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class BallastPoint:
    """One point of the curve: ballast of this mass at this place balances it."""

    at_m: float
    mass_kg: float


def ballast_kg(*, whole_kg: float, now_m: float, target_m: float, at_m: float) -> float | CannotBeDone:
    """How much ballast at a place brings the balance point to the target, kg: W (now − target) / (target − at).

    whole_kg: before the ballast.  now_m, target_m, at_m: places on one axis.  0 where it is there already, to
    1e-9 of the arm.  Raises MechanicsError.  Source: S-03.
    """
    whole = positive("whole mass", whole_kg, "kg")
    now = finite("balance point", now_m, "m")
    target = finite("target", target_m, "m")
    at = finite("place of the ballast", at_m, "m")
    if abs(now - target) <= LEVEL_SHARE * max(abs(at - target), abs(at - now)):
        return 0.0
    if at == target or (at > target) == (now > target):
        return CannotBeDone(
            reason="side",
            why=f"ballast at {at} m cannot bring the balance point from {now} m to {target} m; "
            f"it must be {'below' if now > target else 'above'} {target} m",
        )
    ballast = whole * ((now - target) / (target - at))
    if not isfinite(ballast):
        return CannotBeDone(reason="too heavy", why=f"ballast at {at} m, so near the target, would have no end")
    return ballast


def ballast_curve(
    *,
    whole_kg: float,
    now_m: float,
    target_m: float,
    from_m: float,
    to_m: float,
    most_kg: float,
    count: int = 65,
) -> tuple[BallastPoint, ...] | CannotBeDone:
    """Ballast against its place, from the end of a range that needs least towards the target.

    from_m, to_m: the range of places, in either order.  most_kg: where the curve is cut, exactly; nearer the
    target it goes up without end.  count: points, evenly spaced along, 2 at least.
    Raises MechanicsError.  Source: S-03.
    """
    most = positive("most ballast", most_kg, "kg")
    ends = finite("one end of the range", from_m, "m"), finite("other end of the range", to_m, "m")
    if count < 2:
        raise MechanicsError(f"the curve has {count} points; it must have two at least")
    far = min(ends) if now_m > target_m else max(ends)
    near = max(ends) if far == min(ends) else min(ends)
    least = ballast_kg(whole_kg=whole_kg, now_m=now_m, target_m=target_m, at_m=far)
    if isinstance(least, CannotBeDone):
        return least
    if least > most:
        return CannotBeDone(
            reason="room", why=f"even at {far} m it takes {least} kg of ballast; at most {most} kg is allowed"
        )
    if least == 0.0:
        return BallastPoint(at_m=far, mass_kg=0.0), BallastPoint(at_m=near, mass_kg=0.0)
    cut = target_m - whole_kg * ((now_m - target_m) / most)
    near = max(near, cut) if far > target_m else min(near, cut)
    places = [far + (near - far) * step / (count - 1) for step in range(count - 1)] + [near]
    return tuple(BallastPoint(at_m=at, mass_kg=whole_kg * ((now_m - target_m) / (target_m - at))) for at in places)
