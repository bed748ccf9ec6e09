"""The swing of a body hung by one point that it may turn about freely, three ways at once, in ticks.

What hangs by a short cord turns about the cord's end as on a ball joint.  Which way its nose looks, the weight does
not feel: all of the motion is where down lies in the body, and how fast the body turns.  Between ticks turns about the
body's three principal axes, each exact, take turns with pushes of the weight (Lie and Poisson's splitting), composed
to sixth order: so the energy is kept for as long as anyone watches.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import ceil, cos, expm1, hypot, sin, sqrt

import numpy as np
from numpy.typing import NDArray

from lab.mechanics.axes import Tensor, as_vector
from lab.mechanics.checks import STANDARD_GRAVITY_M_S2, MechanicsError, Vector, not_negative, positive, vector
from lab.mechanics.composition import FIRST_DRIFT, KICKS_AND_DRIFTS
from lab.mechanics.hanging import attitude_of, plumb_line
from lab.mechanics.inertia import principal_inertia
from lab.mechanics.parts import Part, checked, total_mass_kg
from lab.mechanics.pivots import LEVEL_SHARE
from lab.mechanics.shapes import Point
from lab.mechanics.swing import LARGEST_PHASE, REST_PACE_S, REST_RAD, TICK_S

THIN_SHARE = 1e-9
"""A principal inertia under this share of the largest is none: all of the body lies on a line through the hook, about
which nothing can turn it.  Above round-off, far below any thread."""

MOST_STEPS = 256
"""Most steps in one tick.  Only reached by bodies that turn a hundred times a second."""

UNIT_SHARE = 1e-15
"""How far the length of a direction is from one by round-off alone."""

LEVEL_DOWN: Vector = (0.0, 0.0, -1.0)
"""Where down lies in a body that is held level."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HungBody:
    """What decides how a body swings about its hook; made by `hung_body`.

    moments_kg_m2: principal, about the hook.  axes: their directions in the body's own axes, three rows.
    pull_n_m: weight times the way from the hook to the balance point, in those axes.
    rest: the direction from the hook to the balance point in the body's own axes, of length one; None where the hook
    is the balance point.  paces_s: of its two small swings about that rest, the slower first, 1/s; 0 for one that it
    does not have.  drag_s: the air slows every bit of it by this share of its own speed in a second, 1/s.
    """

    moments_kg_m2: Vector
    axes: Tensor
    pull_n_m: Vector
    rest: Vector | None
    paces_s: tuple[float, float]
    drag_s: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SpatialSwing:
    """One moment of it, in the body's own axes.

    down: the direction of the plumb line in the body; kept as length one.  rates_rad_s: how fast it turns about along,
    across and up, as the right hand turns.  settled: at rest, and it will stay.  Raises MechanicsError.
    """

    down: Vector = LEVEL_DOWN
    rates_rad_s: Vector = (0.0, 0.0, 0.0)
    settled: bool = False

    def __post_init__(self) -> None:
        x, y, z = vector("direction of down", self.down, "(no unit)")
        size = hypot(x, y, z)
        if size == 0.0:
            raise MechanicsError("direction of down is (0, 0, 0); it must point somewhere")
        # One of length one to the last digit stays as it is: what is read back from a tape is what was written.
        if abs(size - 1.0) > UNIT_SHARE:
            x, y, z = x / size, y / size, z / size
        object.__setattr__(self, "down", (x, y, z))
        object.__setattr__(self, "rates_rad_s", vector("rate of turning", self.rates_rad_s, "rad/s"))

    @property
    def pitch_rad(self) -> float:
        """Nose up positive, from −π/2 to π/2, as `hanging_attitude` has it."""
        return attitude_of(self.down)[0]

    @property
    def roll_rad(self) -> float | None:
        """Right wing down positive; None where the nose looks straight up or down."""
        return attitude_of(self.down)[1]


def hung_body(parts: Iterable[Part], hook_m: Vector, *, drag_s: float = 0.0) -> HungBody:
    """A body as its hook feels it.

    hook_m: along, across, up, in the body's own coordinates.  Its own hung parts act at their hooks.
    drag_s: 0 or above, 1/s.  Raises MechanicsError.  Source: S-43, S-44.
    """
    build = checked(parts)
    hook = vector("hook", hook_m, "m")
    drag = not_negative("drag", drag_s, "1/s")
    moments, axes = _principal(build, hook)
    line = plumb_line(build, hook)
    if line is None:
        return HungBody(
            moments_kg_m2=moments, axes=axes, pull_n_m=(0.0, 0.0, 0.0), rest=None, paces_s=(0.0, 0.0), drag_s=drag
        )
    down, drop_m = line
    strength = total_mass_kg(build) * STANDARD_GRAVITY_M_S2 * drop_m
    pull = strength * (np.array(axes) @ np.array(down.down))
    return HungBody(
        moments_kg_m2=moments,
        axes=axes,
        pull_n_m=as_vector(pull),
        rest=down.down,
        paces_s=_paces_s(moments, pull),
        drag_s=drag,
    )


def _principal(parts: tuple[Part, ...], hook: Vector) -> tuple[Vector, Tensor]:
    # A part on a cord stays as it is while the body turns, so that its shape adds nothing.
    turning = [replace(part, shape=Point(), inertia_kg_m2=None) if part.hold == "hung" else part for part in parts]
    found = principal_inertia(turning, hook)
    least = THIN_SHARE * max(found.moments_kg_m2)
    first, second, third = (moment if moment > least else 0.0 for moment in found.moments_kg_m2)
    return (first, second, third), found.axes


def _paces_s(moments: Vector, pull: NDArray[np.float64]) -> tuple[float, float]:
    """Of the small swings about rest: roots of the weight's stiffness over the inertia."""
    strength = float(np.linalg.norm(pull))
    ease = np.array([0.0 if moment == 0.0 else 1.0 / sqrt(moment) for moment in moments])
    stiff = strength * np.eye(3) - np.outer(pull, pull) / strength
    slow, fast = np.linalg.eigvalsh(ease[:, None] * stiff * ease)[1:]
    return sqrt(max(0.0, float(slow))), sqrt(max(0.0, float(fast)))


def spatial_energy_j(body: HungBody, swing: SpatialSwing) -> float:
    """Energy of motion and of height, J, from the height of the hook.  Source: S-43, S-05."""
    rates, down = _inward(body.axes, swing.rates_rad_s), _inward(body.axes, swing.down)
    motion = sum(moment * rate**2 for moment, rate in zip(body.moments_kg_m2, rates, strict=True)) / 2.0
    return motion - sum(pull * way for pull, way in zip(body.pull_n_m, down, strict=True))


def spatial_tick(body: HungBody, swing: SpatialSwing, dt_s: float = TICK_S) -> SpatialSwing:
    """The swing one tick later; the very same object where it is settled and stays so.

    dt_s: above 0.  A body that stands on its hook without a push stays there: nothing says which way it would go.
    For swings of 0.4 s and longer the energy stays within 1e-6 of its range, and the direction within 1e-6 rad of
    an adaptive solution for ten seconds: tests/accuracy/test_spatial_swing.py.  Raises MechanicsError.
    Source: S-06, S-68.
    """
    tick = positive("tick", dt_s, "s")
    if not any(swing.rates_rad_s) and _pushes_little(body, swing.down):
        return swing if swing.settled else SpatialSwing(down=swing.down, settled=True)
    ease = tuple(0.0 if moment == 0.0 else 1.0 / moment for moment in body.moments_kg_m2)
    down = list(_inward(body.axes, swing.down))
    momentum = [
        moment * rate
        for moment, rate in zip(body.moments_kg_m2, _inward(body.axes, swing.rates_rad_s), strict=True)
    ]  # fmt: skip
    rate = max(abs(part * easy) for part, easy in zip(momentum, ease, strict=True))
    phase = max(body.paces_s[1], rate, body.drag_s) * tick
    steps = min(max(1, ceil(phase / LARGEST_PHASE)), MOST_STEPS)
    for _ in range(steps):
        _step(body, ease, down, momentum, tick / steps)
    rates = [part * easy for part, easy in zip(momentum, ease, strict=True)]
    return _slowed(body, _outward(body.axes, down), _outward(body.axes, rates))


def _step(body: HungBody, ease: tuple[float, ...], down: list[float], momentum: list[float], step_s: float) -> None:
    """One step of the composition: pushes with whole turns between them; down and momentum, in principal axes."""
    _push(body, down, momentum, FIRST_DRIFT * step_s)
    for turn, push in KICKS_AND_DRIFTS:
        half = turn * step_s / 2.0
        for axis, share in ((0, half), (1, half), (2, 2.0 * half), (1, half), (0, half)):
            _turn(axis, share * momentum[axis] * ease[axis], down, momentum)
        _push(body, down, momentum, push * step_s)


def _push(body: HungBody, down: list[float], momentum: list[float], step_s: float) -> None:
    """The weight's moment, pull × down, for a while; against the drag its exact flow, so that the order stays."""
    (px, py, pz), (x, y, z) = body.pull_n_m, down
    kept, given = 1.0, step_s
    if body.drag_s > 0.0:
        lost = -expm1(-body.drag_s * step_s)
        kept, given = 1.0 - lost, lost / body.drag_s
    momentum[0] = kept * momentum[0] + given * (py * z - pz * y)
    momentum[1] = kept * momentum[1] + given * (pz * x - px * z)
    momentum[2] = kept * momentum[2] + given * (px * y - py * x)


def _turn(axis: int, angle_rad: float, *fixed: list[float]) -> None:
    """The body turned about one of its axes: what is fixed in space turns back in it."""
    if angle_rad == 0.0:
        return
    after, last = (axis + 1) % 3, (axis + 2) % 3
    c, s = cos(angle_rad), sin(angle_rad)
    for each in fixed:
        a, b = each[after], each[last]
        each[after], each[last] = a * c + b * s, b * c - a * s


def _pushes_little(body: HungBody, down: Vector) -> bool:
    if body.rest is None:
        return True
    (x, y, z), (u, v, w) = body.rest, down
    return hypot(y * w - z * v, z * u - x * w, x * v - y * u) <= LEVEL_SHARE


def _slowed(body: HungBody, down: Vector, rates: Vector) -> SpatialSwing:
    """The state, or its rest where what is left of a damped swing is too little to see."""
    slowest = max(body.paces_s[0] or body.paces_s[1], REST_PACE_S)
    if body.drag_s > 0.0 and hypot(*rates) <= REST_RAD * slowest:
        if body.rest is None:
            return SpatialSwing(down=down, settled=True)
        if hypot(*(a - b for a, b in zip(down, body.rest, strict=True))) <= REST_RAD:
            return SpatialSwing(down=body.rest, settled=True)
    return SpatialSwing(down=down, rates_rad_s=rates)


def _inward(axes: Tensor, own: Vector) -> Vector:
    """In principal axes, of a vector in the body's own."""
    x, y, z = own
    first, second, third = (row[0] * x + row[1] * y + row[2] * z for row in axes)
    return first, second, third


def _outward(axes: Tensor, principal: list[float]) -> Vector:
    (a, b, c), (x, y, z) = axes, principal
    return (
        a[0] * x + b[0] * y + c[0] * z,
        a[1] * x + b[1] * y + c[1] * z,
        a[2] * x + b[2] * y + c[2] * z,
    )
