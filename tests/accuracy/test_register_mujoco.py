"""Bodies that swing, hang, tip, slide and fall, against mujoco: a rigid-body engine in generalised coordinates.

It solves a hinge exactly, so there what is left is its step (fourth order at 1 ms) and ours.  Its contacts are
springs, which give way a little before they hold: there a stated slop is allowed.  pymunk beside it elsewhere.
"""

from collections.abc import Callable
from math import asin, atan2, cos, pi, radians, sin, sqrt, tan
from typing import Any

import numpy as np
import pymunk
import pytest
from scipy.optimize import minimize

from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    Box,
    HungBar,
    MobileBar,
    PadBody,
    PadMotion,
    Part,
    Pivot,
    Pivoted,
    Rod,
    Swing,
    Vector,
    footing,
    hanging_attitude,
    inertia_about_kg_m2,
    large_swing_period_s,
    mobile_sum,
    moment_sum,
    pad_tick,
    pivoted,
    slide_or_tip,
    swing_tick,
)

mujoco = pytest.importorskip("mujoco", reason="no wheels for this Python yet")

BAR = Part("bar", 0.150, (0.0, 0.0, 0.0), Rod(1.0))
#: Builds on a pin, with the way they are let go: level and askew, clamped and hung, damped, and over the top.
SWINGS = {
    "three clamped": (
        (BAR, Part("a", 0.1, (-0.3, 0.0, 0.0)), Part("b", 0.15, (0.2, 0.0, 0.0)), Part("c", 0.05, (0.4, 0.0, -0.02))),
        Pivot(0.0, up_m=0.02, stop_rad=pi),
        radians(15.0),
    ),
    "one hung": (
        (BAR, Part("a", 0.1, (-0.3, 0.0, -0.05), hold="hung"), Part("b", 0.1, (0.2, 0.0, 0.0))),
        Pivot(0.0, up_m=0.1, stop_rad=pi),
        radians(40.0),
    ),
    "damped": (
        (BAR, Part("a", 0.1, (0.1, 0.0, -0.2))),
        Pivot(0.0, up_m=0.1, stop_rad=pi, damping_kg_m2_s=0.005),
        radians(80.0),
    ),
    "nearly over the top": ((Part("bob", 1.0, (0.0, 0.0, -0.3)), BAR), Pivot(0.0, stop_rad=pi), radians(170.0)),
}
#: Angles are anticlockwise as seen with along to the right, which is a turn about the axis that points at the viewer.
AXIS = "0 -1 0"


def engine(bodies: str, *, step_s: float, integrator: str = "RK4", more: str = "") -> tuple[Any, Any]:
    """A model and its state.  bodies: MJCF below the world."""
    model = mujoco.MjModel.from_xml_string(
        f'<mujoco><compiler angle="radian"/><option timestep="{step_s}" integrator="{integrator}" {more} '
        f'gravity="0 0 -{STANDARD_GRAVITY_M_S2}"/><worldbody>{bodies}</worldbody></mujoco>'
    )
    return model, mujoco.MjData(model)


def inertial(mass_kg: float, at_m: Vector, inertia_kg_m2: float) -> str:
    """A mass that only ever turns about the axis across, so the other two inertias do not matter."""
    at = " ".join(map(repr, map(float, at_m)))
    return (
        f'<inertial mass="{mass_kg!r}" pos="{at}" diaginertia="{inertia_kg_m2!r} {inertia_kg_m2!r} {inertia_kg_m2!r}"/>'
    )


def pendulum(body: Pivoted, damping_kg_m2_s: float) -> str:
    along, up = body.lever_kg_m / body.mass_kg, -body.drop_kg_m / body.mass_kg
    own = body.inertia_kg_m2 - body.mass_kg * (along**2 + up**2)
    return (
        f'<body><joint type="hinge" axis="{AXIS}" damping="{damping_kg_m2_s}"/>'
        f"{inertial(body.mass_kg, (along, 0.0, up), max(own, 1e-12))}</body>"
    )


@pytest.mark.parametrize("name", SWINGS)
def test_a_build_on_a_pin_swings_as_a_hinge_does(name: str) -> None:
    parts, pivot, angle = SWINGS[name]
    body = pivoted(parts, pivot)
    model, data = engine(pendulum(body, pivot.damping_kg_m2_s), step_s=0.001)
    data.qpos[0] = angle
    swing = Swing(angle)
    for tick in range(1, 1001):
        swing = swing_tick(body, pivot, swing)
        mujoco.mj_step(model, data, nstep=5)
        if tick % 200 == 0:
            # Theirs: a pace of 15 /s at steps of 1 ms leaves (0.015)⁴ / 120 a radian, 4e-10, over some 60 radians.
            assert swing.angle_rad == pytest.approx(data.qpos[0], abs=1e-6)
            assert swing.rate_rad_s == pytest.approx(data.qvel[0], abs=1e-5)


def test_half_mujocos_step_leaves_a_sixteenth_of_what_is_between_us() -> None:
    """So what is between us is its error and not ours."""
    parts, pivot, angle = SWINGS["one hung"]
    body = pivoted(parts, pivot)
    swing = Swing(angle)
    for _ in range(1000):
        swing = swing_tick(body, pivot, swing)
    off = []
    for steps in (500, 1000):
        model, data = engine(pendulum(body, 0.0), step_s=5.0 / steps)
        data.qpos[0] = angle
        mujoco.mj_step(model, data, nstep=steps)
        off.append(abs(data.qpos[0] - swing.angle_rad))
    assert off[0] / off[1] == pytest.approx(16.0, rel=0.1)


def test_a_large_swing_comes_back_in_the_engine_when_the_elliptic_integral_says() -> None:
    parts, pivot, angle = SWINGS["nearly over the top"]
    body = pivoted(parts, pivot)
    period = large_swing_period_s(body, angle)
    assert period is not None
    model, data = engine(pendulum(body, 0.0), step_s=period / 4000)
    data.qpos[0] = angle
    mujoco.mj_step(model, data, nstep=2000)
    # Half-way it stands still at the other side; there an error in time counts by its square.
    assert data.qpos[0] == pytest.approx(-angle, abs=1e-8)
    assert data.qvel[0] == pytest.approx(0.0, abs=1e-6)


@pytest.mark.parametrize("seed", range(6))
def test_a_body_hung_by_a_point_comes_to_rest_at_our_attitude(seed: int) -> None:
    random = np.random.default_rng(seed)
    parts = [
        Part(
            f"part {n}",
            float(random.uniform(0.1, 1.0)),
            tuple(random.uniform(-0.3, 0.3, 3)),
            Box(tuple(random.uniform(0.02, 0.2, 3))),
        )
        for n in range(4)
    ]
    hook = tuple(random.uniform(-0.3, 0.3, 3))
    found = hanging_attitude(parts, hook)
    assert found is not None
    total = moment_sum(parts)
    inertia = inertia_about_kg_m2(parts, total.balance_point_m)
    at = " ".join(repr(float(a - b)) for a, b in zip(total.balance_point_m, hook, strict=True))
    spread = " ".join(repr(float(inertia[i, j])) for i, j in ((0, 0), (1, 1), (2, 2), (0, 1), (0, 2), (1, 2)))
    hardest = float(np.linalg.eigvalsh(inertia_about_kg_m2(parts, hook))[2])
    damping = sqrt(hardest * total.mass_kg * STANDARD_GRAVITY_M_S2 * found.drop_m)
    model, data = engine(
        f'<body><joint type="ball" damping="{damping}"/>'
        f'<inertial mass="{total.mass_kg!r}" pos="{at}" fullinertia="{spread}"/></body>',
        step_s=0.002,
        integrator="implicitfast",
    )
    mujoco.mj_step(model, data, nstep=15_000)
    turn = data.xmat[1].reshape(3, 3)  # body to world, after half a minute
    nose, wing, top = turn @ (-1.0, 0.0, 0.0), turn @ (0.0, 1.0, 0.0), turn @ (0.0, 0.0, 1.0)
    # The slowest of them still halves its distance from rest every second; a pace of 1e-7 rad/s is left at most.
    assert np.abs(data.qvel).max() < 1e-7
    assert found.pitch_rad == pytest.approx(asin(nose[2]), abs=1e-6)
    assert found.roll_rad == pytest.approx(atan2(-wing[2], top[2]), abs=1e-6)


CORD_KG = 1e-7


def mobile() -> MobileBar:
    """Three bars, none of them level."""
    low = MobileBar(
        "low",
        (Part("low rod", 0.03, (0.0, 0.0, 0.0), Rod(0.2)), Part("fish", 0.04, (0.08, 0.0, -0.03))),
        Pivot(0.03, up_m=0.02, stop_rad=1.5),
    )
    side = MobileBar(
        "side",
        (Part("side rod", 0.02, (0.0, 0.0, 0.0), Rod(0.2)), Part("crab", 0.05, (-0.05, 0.0, -0.04))),
        Pivot(-0.02, up_m=0.015, stop_rad=1.5),
    )
    return MobileBar(
        "top",
        (Part("top rod", 0.05, (0.0, 0.0, 0.0), Rod(0.4)),),
        Pivot(0.0, up_m=0.03, stop_rad=1.5),
        below=(HungBar(low, (0.18, 0.0, -0.01), 0.15), HungBar(side, (-0.16, 0.0, -0.01), 0.25)),
    )  # fmt: skip


def mobile_body(bar: MobileBar) -> str:
    """A bar on its hinge, and its cords each on two: the world is at the bar's own pin."""
    pin = (bar.pivot.at_m, 0.0, bar.pivot.up_m)
    body = pivoted(bar.parts, bar.pivot)
    along, up = body.lever_kg_m / body.mass_kg, -body.drop_kg_m / body.mass_kg
    own = body.inertia_kg_m2 - body.mass_kg * (along**2 + up**2)
    cords = "".join(
        f'<body pos="{hung.at_m[0] - pin[0]} 0 {hung.at_m[2] - pin[2]}"><joint type="hinge" axis="{AXIS}" '
        f'damping="0.003"/>{inertial(CORD_KG, (0.0, 0.0, -hung.cord_m / 2), CORD_KG * hung.cord_m**2)}'
        f'<body pos="0 0 {-hung.cord_m}">{mobile_body(hung.bar)}</body></body>'
        for hung in bar.below
    )
    joint = f'<joint type="hinge" axis="{AXIS}" damping="0.003"/>'
    return f'{joint}{inertial(body.mass_kg, (along, 0.0, up), own)}<site name="{bar.name}"/>{cords}'


def test_a_mobile_comes_to_rest_in_the_engine_with_every_bar_where_we_say() -> None:
    found = {level.name: level for level in mobile_sum(mobile()).levels}
    model, data = engine(f"<body>{mobile_body(mobile())}</body>", step_s=0.002, integrator="implicitfast")
    mujoco.mj_step(model, data, nstep=40_000)
    assert np.abs(data.qvel).max() < 1e-8
    for name, level in found.items():
        site = data.site(name)
        turn = site.xmat.reshape(3, 3)
        # Their cords weigh a ten-millionth of a kilogram, some 1e-6 of what they hold.
        assert level.tilt_rad == pytest.approx(atan2(turn[2, 0], turn[0, 0]), abs=1e-5)
        assert level.pin_m == pytest.approx((site.xpos[0], site.xpos[2]), abs=1e-5)


def test_a_mobile_rests_where_its_potential_energy_is_least() -> None:
    top = mobile()
    found = {level.name: level for level in mobile_sum(top).levels}

    def energy(angles: np.ndarray) -> float:
        tilts, leans = dict(zip(("top", "low", "side"), angles[:3], strict=True)), angles[3:]

        def height(bar: MobileBar, at: Vector) -> float:
            along, up = at[0] - bar.pivot.at_m, at[2] - bar.pivot.up_m
            return along * sin(tilts[bar.name]) + up * cos(tilts[bar.name])

        total = sum(part.mass_kg * height(top, part.at_m) for part in top.parts)
        for hung, lean in zip(top.below, leans, strict=True):
            pin = height(top, hung.at_m) - hung.cord_m * cos(lean)
            total += sum(part.mass_kg * (pin + height(hung.bar, part.at_m)) for part in hung.bar.parts)
        return float(total)

    least = minimize(energy, np.zeros(5), method="BFGS", options={"gtol": 1e-9})
    for name, angle in zip(("top", "low", "side"), least.x[:3], strict=True):
        # A minimum of a double-precision energy is flat to the root of its round-off.
        assert found[name].tilt_rad == pytest.approx(angle, abs=1e-6)
    assert least.x[3:] == pytest.approx((0.0, 0.0), abs=1e-6)  # cords hang upright


LENGTH_M, THICK_M, HALF_PAD_M = 0.4, 0.02, 0.003
#: A free body in the plane: along, up, turn.
PLANE = f'<joint type="slide" axis="1 0 0"/><joint type="slide" axis="0 0 1"/><joint type="hinge" axis="{AXIS}"/>'


@pytest.mark.parametrize("finger_m", [0.06, 0.12, 0.17, 0.23, 0.3])
def test_a_bar_tips_off_the_edge_of_a_pad_to_the_same_side_as_far(finger_m: float) -> None:
    mass, balance = 0.2, (0.2, THICK_M / 2)
    body = PadBody(
        mass_kg=mass,
        inertia_kg_m2=mass * (LENGTH_M**2 + THICK_M**2) / 12,
        cg_m=balance,
        underside_m=0.0,
        left_m=0.0,
        right_m=LENGTH_M,
        friction=5.0,
    )
    motion = PadMotion()
    for _ in range(40):
        motion = pad_tick(body, finger_m, HALF_PAD_M, -1.0, motion, 0.005)
    contact = 'friction="5 0 0" solref="0.002 1" condim="3"'
    model, data = engine(
        f'<geom type="box" size="{HALF_PAD_M} 0.1 0.05" pos="{finger_m} 0 -0.05" {contact}/>'
        f'<body pos="{balance[0]} 0 {balance[1]}">{PLANE}{inertial(mass, (0.0, 0.0, 0.0), body.inertia_kg_m2)}'
        f'<geom type="box" size="{LENGTH_M / 2} 0.05 {THICK_M / 2}" {contact}/></body>',
        step_s=0.0002,
        integrator="implicitfast",
        more='cone="elliptic" impratio="10"',
    )
    mujoco.mj_step(model, data, nstep=1000)
    assert abs(motion.angle_rad) > radians(5.0)
    # A contact there is a stiff spring of 2 ms: it lags by about as much in 200 ms.
    assert motion.angle_rad == pytest.approx(data.qpos[2], rel=0.02)


WIDE_M = 0.1


def box_on_slope(height_m: float) -> list[Part]:
    return [Part("box", 1.0, (0.0, 0.0, height_m / 2), Box((WIDE_M, WIDE_M, height_m)))]


def in_mujoco(height_m: float, friction: float, slope_rad: float) -> tuple[float, float]:
    """How far a box slid downhill and turned in a second, m and rad."""
    inertia = (WIDE_M**2 + height_m**2) / 12
    contact = f'friction="{friction} 0 0" solref="0.004 1" condim="3"'
    model, data = engine(
        f'<geom type="plane" size="9 9 1" {contact}/><body pos="0 0 {height_m / 2}">{PLANE}'
        f"{inertial(1.0, (0.0, 0.0, 0.0), inertia)}"
        f'<geom type="box" size="{WIDE_M / 2} {WIDE_M / 2} {height_m / 2}" {contact}/></body>',
        step_s=0.001,
        integrator="implicitfast",
        more='cone="elliptic" impratio="100"',
    )
    model.opt.gravity[:] = STANDARD_GRAVITY_M_S2 * sin(slope_rad), 0.0, -STANDARD_GRAVITY_M_S2 * cos(slope_rad)
    mujoco.mj_step(model, data, nstep=1000)
    return float(data.qpos[0]), float(-data.qpos[2])


def in_pymunk(height_m: float, friction: float, slope_rad: float) -> tuple[float, float]:
    """The same there, with places in millimetres: its slop is a length of its own."""
    space = pymunk.Space()
    space.gravity = (
        1000.0 * STANDARD_GRAVITY_M_S2 * sin(slope_rad),
        -1000.0 * STANDARD_GRAVITY_M_S2 * cos(slope_rad),
    )
    space.collision_slop, space.iterations = 0.01, 50
    body = pymunk.Body(1.0, 1e6 * (WIDE_M**2 + height_m**2) / 12)
    body.position = (0.0, 500.0 * height_m)
    half, tall = 500.0 * WIDE_M, 500.0 * height_m
    box = pymunk.Poly(body, [(-half, -tall), (half, -tall), (half, tall), (-half, tall)])
    ground = pymunk.Segment(space.static_body, (-9000.0, -1.0), (9000.0, -1.0), 1.0)
    box.friction, ground.friction = friction, 1.0  # their product counts
    space.add(body, box, ground)
    for _ in range(1000):
        space.step(0.001)
    return body.position.x / 1000.0, -body.angle


@pytest.mark.parametrize("engine_of", [in_mujoco, in_pymunk], ids=["mujoco", "pymunk"])
@pytest.mark.parametrize(("height_m", "friction"), [(0.1, 0.3), (0.1, 0.6), (0.3, 0.2), (0.3, 0.7), (0.2, 1.2)])
def test_a_box_on_a_slope_slides_or_tips_where_we_say(
    engine_of: Callable[[float, float, float], tuple[float, float]], height_m: float, friction: float
) -> None:
    half = WIDE_M / 2
    body = footing(box_on_slope(height_m), [(-half, -half), (half, -half), (half, half), (-half, half)])
    found = slide_or_tip(body, friction)
    gives_way = min(found.slides_at_rad, found.tips_at_rad)
    # Ten per cent to either side of the tangent: engines' contacts creep and give.
    slid, turned = engine_of(height_m, friction, np.arctan(0.9 * tan(gives_way)))
    assert abs(slid) < 0.02
    assert abs(turned) < 0.05
    slid, turned = engine_of(height_m, friction, np.arctan(1.1 * tan(gives_way)))
    if found.first == "tips":
        assert turned > 0.3
    else:
        assert found.first == "slides"
        assert slid > 0.05
        assert abs(turned) < 0.05
