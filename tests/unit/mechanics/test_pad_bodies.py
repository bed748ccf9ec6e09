"""A body on a finger pad: it stays, tips, slides, falls, topples, and lies."""

from dataclasses import replace
from itertools import pairwise
from math import inf, isfinite, nan

import pytest

from lab.mechanics import (
    Box,
    Cylinder,
    MechanicsError,
    PadBody,
    PadMotion,
    Part,
    Rectangle,
    Rod,
    pad_body,
    pad_energy_j,
    pad_tick,
    rests_on,
)
from lab.mechanics.bodies import convex_outline_m
from lab.mechanics.contacts import held_course
from lab.mechanics.motions import Phase, course_of, motion_of

PARTS = (
    Part("hook", 0.480, (0.02, 0.0, 0.0), Rectangle(0.04, 0.05)),
    Part("pole", 0.120, (0.20, 0.0, 0.0), Box((0.4, 0.01, 0.012))),
)
TOOL = pad_body(PARTS, underside_m=-0.006, left_m=0.0, right_m=0.4)
HALF_M = 0.003


def run(body: PadBody, finger_m: float, *, floor_m: float = -0.5, ticks: int = 3000) -> list[PadMotion]:
    path = [PadMotion()]
    for _ in range(ticks):
        path.append(pad_tick(body, finger_m, HALF_M, floor_m, path[-1], 0.005))
        if path[-1] is path[-2]:
            break
    return path


def phases(path: list[PadMotion]) -> list[str]:
    seen = [path[1].phase]
    for motion in path[2:]:
        if motion.phase != seen[-1]:
            seen.append(motion.phase)
    return seen


@pytest.mark.parametrize("finger_m", [0.053, 0.0545, 0.056, 0.059])
def test_over_the_pad_it_stays_and_nothing_changes(finger_m: float) -> None:
    assert rests_on(PARTS, finger_m, HALF_M) == "level"
    start = PadMotion()
    assert pad_tick(TOOL, finger_m, HALF_M, -0.5, start, 0.005) is start


@pytest.mark.parametrize(("finger_m", "side", "sign"), [(0.0595, "left", 1.0), (0.0525, "right", -1.0)])
def test_just_past_the_pad_it_tips_to_that_side_slides_falls_and_lies(finger_m: float, side: str, sign: float) -> None:
    assert rests_on(PARTS, finger_m, HALF_M) == side
    path = run(TOOL, finger_m)
    assert phases(path) == ["tips", "slides", "falls", "down"]
    assert path[1].angle_rad * sign > 0.0
    last = path[-1]
    assert (last.rate_rad_s, last.vx_m_s, last.vz_m_s) == (0.0, 0.0, 0.0)


def test_down_it_touches_the_floor_and_nothing_is_under_it() -> None:
    for finger_m in (0.0595, 0.1, 0.2, 0.3, 0.02):
        for floor_m in (-0.14, -0.5, -1.0):
            last = run(TOOL, finger_m, floor_m=floor_m)[-1]
            lowest, _ = course_of(TOOL, last).lowest_m(TOOL.corners_m)
            # Each corner it rocked over may have sunk by a thousandth of a micrometre before it was met.
            assert lowest == pytest.approx(floor_m, abs=1e-7)


def test_a_slippery_pad_lets_it_slide_at_once_and_a_rough_one_late() -> None:
    slippery = run(replace(TOOL, friction=0.0), 0.1)
    assert phases(slippery)[0] == "slides"
    rough = run(replace(TOOL, friction=3.0), 0.1)
    usual = run(TOOL, 0.1)

    def turned(path: list[PadMotion]) -> float:
        return next(abs(m.angle_rad) for m in path[1:] if m.phase not in ("rests", "tips"))

    assert turned(rough) > turned(usual) > turned(slippery)


def test_a_finger_that_is_not_under_it_lets_it_drop_straight() -> None:
    path = run(TOOL, -0.2)
    assert phases(path)[0] == "falls"
    assert path[5].angle_rad == 0.0
    assert path[5].x_m == 0.0
    assert path[-1].phase == "down"


def test_an_end_that_reaches_a_near_floor_leans_there() -> None:
    last = run(TOOL, 0.3, floor_m=-0.05)[-1]
    assert last.phase == "down"
    assert last.corner is None
    assert 0.0 < last.angle_rad < 0.4


def test_a_body_that_hangs_below_the_pad_swings_there_and_comes_to_rest_tilted() -> None:
    hanging = (
        Part("bar", 0.1, (0.2, 0.0, 0.0), Box((0.4, 0.01, 0.01))),
        Part("keel", 0.5, (0.21, 0.0, -0.2), Cylinder(0.01, 0.02)),
    )
    body = pad_body(hanging, underside_m=-0.005, left_m=0.0, right_m=0.4)
    finger_m = body.cg_m[0] - 0.01
    path = run(body, finger_m, floor_m=-2.0, ticks=6000)
    last = path[-1]
    assert last.phase == "rests"
    # The CG hangs straight below the edge: tan θ = 7 mm over the drop.
    assert last.angle_rad == pytest.approx(-(0.01 - HALF_M) / (-body.rise_m), rel=1e-3)
    assert last.x_m + body.cg_m[0] == pytest.approx(finger_m + HALF_M, abs=1e-4)


def test_energy_is_never_more_than_before() -> None:
    for finger_m in (0.0595, 0.1, 0.3, 0.02):
        for friction in (0.0, 0.4, 1.0):
            body = replace(TOOL, friction=friction)
            energies = [pad_energy_j(body, motion) for motion in run(body, finger_m)]
            slack = 1e-6 * (max(energies) - min(energies))
            assert all(b <= a + slack for a, b in pairwise(energies))


def test_a_hung_part_counts_as_a_point_at_its_hook() -> None:
    hung = tuple(replace(part, hold="hung") if part.name == "hook" else part for part in PARTS)
    lighter = pad_body(hung, underside_m=-0.006, left_m=0.0, right_m=0.4)
    spared = 0.480 * (0.04**2 + 0.05**2) / 12
    assert TOOL.inertia_kg_m2 - lighter.inertia_kg_m2 == pytest.approx(spared)


def test_the_outline_is_convex_and_holds_every_part() -> None:
    assert convex_outline_m([(0, 0), (1, 0), (1, 1), (0, 1), (0.5, 0.5), (0.5, 0)]) == ((0, 0), (1, 0), (1, 1), (0, 1))
    assert convex_outline_m([(0, 0), (2, 0), (1, 0)]) == ((0, 0), (2, 0))
    assert len(TOOL.outline_m) == 6


@pytest.mark.parametrize(
    ("change", "what"),
    [
        ({"mass_kg": 0.0}, "mass"),
        ({"inertia_kg_m2": nan}, "inertia"),
        ({"friction": -0.1}, "friction"),
        ({"underside_m": inf}, "underside"),
        ({"left_m": 0.5}, "right end"),
        ({"left_m": 0.1}, "balances at"),
    ],
)
def test_a_body_that_cannot_lie_there_is_refused(change: dict[str, float], what: str) -> None:
    with pytest.raises(MechanicsError, match=what):
        replace(TOOL, **change)


def test_a_pad_that_is_no_pad_is_refused() -> None:
    with pytest.raises(MechanicsError, match="half-width of the pad"):
        rests_on(PARTS, 0.1, -0.01)
    with pytest.raises(MechanicsError, match="place of the pad"):
        rests_on(PARTS, nan, 0.01)


def test_a_gripped_end_that_reaches_a_near_floor_leans_there_too() -> None:
    last = run(replace(TOOL, friction=5.0), 0.3, floor_m=-0.04)[-1]
    assert last.phase == "down"
    assert last.rate_rad_s == 0.0


def test_a_body_that_swings_back_lands_flat_on_the_pad_without_a_bounce() -> None:
    keel = Part("keel", 0.5, (0.2, 0.0, -0.2), Cylinder(0.01, 0.02))
    body = pad_body([PARTS[1], keel], underside_m=-0.006, left_m=0.0, right_m=0.4)
    finger_m = body.cg_m[0]  # over the pad, but tipped up about its left edge
    from_tilt = pad_tick(
        body,
        finger_m,
        HALF_M,
        -1.0,
        held_at_left_edge(body, finger_m, 0.05),
        0.005,
    )
    path = [from_tilt]
    for _ in range(200):
        path.append(pad_tick(body, finger_m, HALF_M, -1.0, path[-1], 0.005))
    assert path[-1].phase == "rests"
    assert path[-1].angle_rad == 0.0
    assert path[-1].z_m == 0.0
    assert path[-1] is path[-2]


def held_at_left_edge(body: PadBody, finger_m: float, angle: float) -> PadMotion:
    edge = (finger_m - HALF_M, body.underside_m)
    return motion_of(body, held_course(body, edge, (edge[0] - body.cg_m[0], 0.0, angle, 0.0)), "tips")


def test_a_pole_dropped_on_its_end_rocks_and_stands_or_falls_over() -> None:
    pole = pad_body(
        [Part("pole", 0.2, (0.0, 0.0, 0.2), Box((0.03, 0.03, 0.4)))], underside_m=0.0, left_m=-0.015, right_m=0.015
    )
    tilted = PadMotion(phase="falls", angle_rad=0.02, z_m=-0.05)
    motion, corners = tilted, set()
    for _ in range(4000):
        motion = pad_tick(pole, 1.0, HALF_M, -0.2, motion, 0.005)
        corners.add(motion.corner)
        if motion.phase == "down":
            break
    assert motion.phase == "down"
    assert abs(motion.angle_rad) < 1e-6  # 0.02 is within the 0.075 at which its CG is over its corner
    assert {0, 1} <= corners


@pytest.mark.parametrize("spin", [399.0, 1e4, -1e27])
@pytest.mark.parametrize("speed", [0.0, 150.0, -1e29])
@pytest.mark.parametrize("phase", ["tips", "slides", "falls"])
@pytest.mark.parametrize("up_m", [-0.3, 0.05])
def test_however_wildly_it_is_flung_it_comes_to_numbers(spin: float, speed: float, phase: Phase, up_m: float) -> None:
    body = pad_body([Part("rod", 1.0, (0.5, 0.0, up_m), Rod(1.0))], underside_m=0.0, left_m=0.0, right_m=1.0)
    motion = PadMotion(phase=phase, angle_rad=0.1, rate_rad_s=spin, vx_m_s=speed)
    for _ in range(50):
        motion = pad_tick(body, 0.5, HALF_M, -0.2, motion, 0.005)
        assert all(isfinite(each) for each in (motion.angle_rad, motion.rate_rad_s, motion.x_m, motion.z_m))
