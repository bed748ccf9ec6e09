"""The swing of a build on its pivot, in ticks.

A pure function takes one state to the next.  Between events a tick is a step of a sixth-order symplectic
composition, which keeps the energy for as long as anyone watches; a stop is met at the instant it is reached.
"""

from dataclasses import dataclass
from math import atan, atan2, ceil, copysign, cos, exp, hypot, pi, remainder, sin, sqrt, tan
from typing import Literal

from lab.mechanics.checks import STANDARD_GRAVITY_M_S2
from lab.mechanics.composition import turned
from lab.mechanics.pivots import LEVEL_SHARE, Pivot, Pivoted, on_edge

TICK_S = 0.005
"""The lab's tick, s.  Shorter costs time; longer would show in the angle after ten seconds."""

STOP_RESTITUTION = 0.25
"""Share of the rate that a stop gives back: a wooden bar on a felt-covered peg.  0 would look glued, 1 never
come to rest.  A choice, not a measurement."""

LARGEST_PHASE = 0.1
"""Largest turn of phase in one step, rad; a tick of a faster or more damped body is divided.  At 0.1 the
energy is kept to some 1e-9; a 5 ms tick of any body with a period over 0.32 s is one step."""

MOST_STEPS = 4096
"""Most steps in one tick.  Only reached by bodies smaller than grains."""

BISECTIONS = 48
"""Halvings to the instant a stop is met: a tick over 2⁴⁸ is round-off beside any time.  Rare, so plain."""

CREEP_RATIO = 50.0
"""Drag over natural pace from where a body only creeps: its inertia then matters to 1/50² of the motion."""

REST_RAD = 4.5e-5
"""A damped swing under this counts as still: a fiftieth of a pixel at the end of a bar as wide as a screen.
"""

REST_PACE_S = 1e-3
"""Pace that measures rest where the weight gives none, 1/s: such a bar counts as still when it would need an
hour for ten degrees."""


@dataclass(frozen=True, slots=True)
class Swing:
    """angle_rad: tilt, anticlockwise positive.  rate_rad_s: how fast it grows.  stop: the stop it rests
    against, -1 right end down, 1 left end down, 0 none.  settled: at rest, and it will stay."""

    angle_rad: float = 0.0
    rate_rad_s: float = 0.0
    stop: Literal[-1, 0, 1] = 0
    settled: bool = False


@dataclass(frozen=True, slots=True)
class _Pull:
    """θ̈ = −lever cos θ − drop sin θ − drag θ̇, and the pace (lever² + drop²)^¼ of its small swings."""

    lever_s2: float
    drop_s2: float
    drag_s: float
    pace_s: float
    stop_rad: float

    def push_s2(self, angle_rad: float) -> float:
        """The acceleration, anticlockwise positive, that the weight gives there."""
        return -(self.lever_s2 * cos(angle_rad) + self.drop_s2 * sin(angle_rad))

    @property
    def rest_rad(self) -> float:
        """Where the balance point hangs straight below."""
        return atan2(-self.lever_s2, self.drop_s2) + 0.0  # −0.0 would be shown as such


def swing_energy_j(body: Pivoted, swing: Swing) -> float:
    """Energy of motion and of height, J, from the height of the pivot.  Source: S-05."""
    motion = body.inertia_kg_m2 * swing.rate_rad_s**2 / 2.0
    height = body.lever_kg_m * sin(swing.angle_rad) - body.drop_kg_m * cos(swing.angle_rad)
    return motion + STANDARD_GRAVITY_M_S2 * height


def swing_tick(body: Pivoted, pivot: Pivot, swing: Swing, dt_s: float = TICK_S) -> Swing:
    """The swing one tick later; the very same object where it is settled and stays so.

    body: from `pivoted(parts, pivot)`.  On a pad the build turns about the edge it tips over, and lands flat
    without a bounce.  dt_s: above 0.  Accuracy: see tests/accuracy/test_swing_accuracy.py.  Source: S-06.
    """
    if pivot.pad_m > 0.0:
        return _pad_swing(body, pivot, swing, dt_s)
    return _tick(_pull(body, pivot), swing, dt_s)


def _pull(body: Pivoted, pivot: Pivot) -> _Pull | None:
    """None where there is nothing to turn: every part a point on the pivot itself."""
    inertia = body.inertia_kg_m2
    if inertia <= 0.0:
        return None
    lever = STANDARD_GRAVITY_M_S2 * body.lever_kg_m / inertia
    drop = STANDARD_GRAVITY_M_S2 * body.drop_kg_m / inertia
    return _Pull(lever, drop, pivot.damping_kg_m2_s / inertia, sqrt(hypot(lever, drop)), pivot.stop_rad)


def _tick(pull: _Pull | None, swing: Swing, dt_s: float) -> Swing:
    if pull is None:
        return swing if swing.settled else Swing(swing.angle_rad, 0.0, settled=True)
    if swing.rate_rad_s == 0.0:
        resting = _at_rest(pull, swing)
        if resting is not None:
            return resting
    phase = max(pull.pace_s, pull.drag_s) * dt_s
    if phase <= LARGEST_PHASE:
        return _step(pull, swing, dt_s)
    if pull.drag_s * dt_s > 1.0 and pull.drag_s > CREEP_RATIO * pull.pace_s:
        return _crept(pull, swing, dt_s)
    steps = min(ceil(phase / LARGEST_PHASE), MOST_STEPS)
    for _ in range(steps):
        swing = _step(pull, swing, dt_s / steps)
        if swing.settled:
            break
    return swing


def _at_rest(pull: _Pull, swing: Swing) -> Swing | None:
    """The swing at rest where nothing moves it: against a stop, or where the weight gives no push."""
    angle = swing.angle_rad
    push = pull.push_s2(angle)
    stop: Literal[-1, 0, 1] = 0
    if abs(angle) >= pull.stop_rad and push * angle >= 0.0:
        stop = 1 if angle > 0.0 else -1
        angle = stop * pull.stop_rad
    elif abs(push) > LEVEL_SHARE * pull.pace_s**2:
        return None
    if swing.settled and swing.stop == stop and swing.angle_rad == angle:
        return swing
    return Swing(angle, 0.0, stop, settled=True)


def _step(pull: _Pull, swing: Swing, step_s: float) -> Swing:
    """One step, with the stops it meets on its way."""
    angle, rate = swing.angle_rad, swing.rate_rad_s
    if abs(angle) > pull.stop_rad:  # The stop was moved in while the bar was out: it meets it here.
        angle = copysign(pull.stop_rad, angle)
    left_s = step_s
    # Each bounce keeps a quarter of the rate, and one too low to outlast the step ends in rest: few rounds.
    while True:
        end_angle, end_rate = _free(pull, angle, rate, left_s)
        if abs(end_angle) <= pull.stop_rad:
            return _slowed(pull, end_angle, end_rate)
        side: Literal[-1, 1] = 1 if end_angle > 0.0 else -1
        used_s, hit_rate = _hit(pull, angle, rate, left_s)
        angle, rate, left_s = side * pull.stop_rad, -STOP_RESTITUTION * hit_rate, left_s - used_s
        outward = side * pull.push_s2(angle)
        if outward >= 0.0 and -2.0 * side * rate <= outward * step_s:
            return Swing(angle, 0.0, side, settled=True)


def _free(pull: _Pull, angle: float, rate: float, step_s: float) -> tuple[float, float]:
    return turned(angle, rate, lever_s2=pull.lever_s2, drop_s2=pull.drop_s2, drag_s=pull.drag_s, step_s=step_s)


def _hit(pull: _Pull, angle: float, rate: float, step_s: float) -> tuple[float, float]:
    """When a step that ends beyond a stop reaches it, s, and how fast it then turns."""
    inside_s, beyond_s, beyond_rate = 0.0, step_s, rate
    for _ in range(BISECTIONS):
        middle_s = (inside_s + beyond_s) / 2.0
        end_angle, end_rate = _free(pull, angle, rate, middle_s)
        if abs(end_angle) <= pull.stop_rad:
            inside_s = middle_s
        else:
            beyond_s, beyond_rate = middle_s, end_rate
    return beyond_s, beyond_rate


def _slowed(pull: _Pull, angle: float, rate: float) -> Swing:
    """The state, or its rest position where what is left of a damped swing is too little to see."""
    if abs(rate) > REST_RAD * max(pull.pace_s, REST_PACE_S):
        return Swing(angle, rate)
    if pull.pace_s == 0.0:
        return Swing(angle, 0.0, settled=True)
    near = abs(pull.push_s2(angle)) <= REST_RAD * pull.pace_s**2
    stable = pull.drop_s2 * cos(angle) > pull.lever_s2 * sin(angle)
    if pull.drag_s > 0.0 and near and stable:
        return Swing(pull.rest_rad, 0.0, settled=True)
    return Swing(angle, rate)


def _crept(pull: _Pull, swing: Swing, dt_s: float) -> Swing:
    """A tick so damped that push and drag are always even: tan ((θ − rest) / 2) then dies exponentially."""
    rest = pull.rest_rad
    shrunk = exp(-(pull.pace_s**2) / pull.drag_s * dt_s)
    # What is left of a rate from before dies within the tick.
    coasted = (swing.rate_rad_s - pull.push_s2(swing.angle_rad) / pull.drag_s) / pull.drag_s
    off = remainder(swing.angle_rad + coasted - rest, 2.0 * pi)
    angle = swing.angle_rad + coasted + 2.0 * atan(shrunk * tan(off / 2.0)) - off
    if abs(angle) >= pull.stop_rad:
        side: Literal[-1, 1] = 1 if angle > 0.0 else -1
        return Swing(side * pull.stop_rad, 0.0, side, settled=side * pull.push_s2(side * pull.stop_rad) >= 0.0)
    return _slowed(pull, angle, pull.push_s2(angle) / pull.drag_s)


def _pad_swing(body: Pivoted, pivot: Pivot, swing: Swing, dt_s: float) -> Swing:
    """On a pad: about the edge it tips over, flat again without a bounce, still while it is over the pad."""
    lean = swing.angle_rad or swing.rate_rad_s
    if lean == 0.0:
        if abs(body.lever_kg_m) <= pivot.pad_m * body.mass_kg:
            return swing if swing.settled else Swing(settled=True)
        lean = -body.lever_kg_m
    edged = on_edge(body, pivot, side="left" if lean > 0.0 else "right")
    after = _tick(_pull(edged, pivot), swing, dt_s)
    if after.angle_rad * lean > 0.0:
        return after
    return Swing(settled=abs(body.lever_kg_m) <= pivot.pad_m * body.mass_kg)
