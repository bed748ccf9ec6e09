"""Bodies that tip off two or three supports: over what, which way, as which body, and what still presses there."""

import math
from dataclasses import replace

import pytest

from lab.mechanics import Box, Group, PadMotion, Part, Rod, flattened, pad_body, pad_tick, pressed_kg, toppling_of

G = 9.80665
POLE = Part("pole", 0.4, (0.5, 0.0, 0.0), shape=Rod(1.0))
BOX = Part("box", 0.6, (0.9, 0.0, 0.06), shape=Box((0.1, 0.08, 0.1)))
SLAB = Part("slab", 3.0, (0.5, 0.1, 0.0), shape=Box((1.0, 0.7, 0.04)))
LEAD = Part("lead", 4.0, (0.3, -0.3, 0.05), shape=Box((0.1, 0.1, 0.06)))
HUNG = Part("lamp", 0.3, (0.8, 0.2, -0.02), shape=Box((0.1, 0.1, 0.1)), hold="hung")
THREE = ((0.1, 0.0, 0.0), (0.9, -0.25, 0.0), (0.9, 0.3, 0.0))


def two(parts=(POLE, BOX), at=(0.2, 0.6)):
    return toppling_of(parts, [(along, 0.0, 0.0) for along in at], underside_m=-0.01, floor_m=-0.2)


def three(parts=(SLAB, LEAD), supports=THREE):
    return toppling_of(parts, supports, underside_m=-0.02, floor_m=-0.2)


def test_off_two_supports_it_is_the_very_body_that_lies_on_a_pad():
    found = two()
    usual = pad_body((POLE, BOX), underside_m=-0.01, left_m=0.0, right_m=1.0)
    assert found.way == (1.0, 0.0)
    assert found.edge_m == 0.6
    assert found.bears == (0.0, 1.0)
    assert found.body.mass_kg == usual.mass_kg
    assert found.body.cg_m == pytest.approx(usual.cg_m, abs=1e-15)
    assert found.body.inertia_kg_m2 == pytest.approx(usual.inertia_kg_m2, rel=1e-13)
    for ours, usually in zip(found.body.outline_m, usual.outline_m, strict=True):
        assert ours == pytest.approx(usually, abs=1e-15)


def test_it_tips_over_the_support_that_is_nearer_to_the_balance_point():
    light = replace(BOX, at_m=(0.02, 0.0, 0.06))
    assert two((POLE, light), at=(0.4, 0.9)).bears == (1.0, 0.0)


def test_over_a_side_it_tips_square_to_it_and_both_ends_share_by_the_lever():
    found = three()
    (x0, y0, _), (x1, y1, _) = THREE[:2]
    long = math.hypot(x1 - x0, y1 - y0)
    assert found.way == pytest.approx(((y1 - y0) / long, -(x1 - x0) / long), abs=1e-15)
    mass = SLAB.mass_kg + LEAD.mass_kg
    balance = [(SLAB.mass_kg * SLAB.at_m[n] + LEAD.mass_kg * LEAD.at_m[n]) / mass for n in (0, 1)]
    share = ((balance[0] - x0) * (x1 - x0) + (balance[1] - y0) * (y1 - y0)) / long**2
    assert found.bears == pytest.approx((1.0 - share, share, 0.0), abs=1e-14)
    beyond = (balance[0] - x0) * found.way[0] + (balance[1] - y0) * found.way[1]
    assert found.body.cg_m[0] - found.edge_m == pytest.approx(beyond, abs=1e-14)


def test_a_balance_point_hardly_past_a_side_still_tips_square_to_it():
    (x0, y0, _), (x1, y1, _) = THREE[:2]
    square = ((y1 - y0) / math.hypot(x1 - x0, y1 - y0), -(x1 - x0) / math.hypot(x1 - x0, y1 - y0))
    middle = ((x0 + x1) / 2 + 1e-13 * square[0], (y0 + y1) / 2 + 1e-13 * square[1], 0.0)
    found = three((replace(SLAB, at_m=middle),))
    assert found.way == pytest.approx(square, abs=1e-12)


@pytest.mark.parametrize("yaw", [0.3, 1.7, -2.4])
def test_it_tips_the_same_whichever_way_the_bench_stands(yaw):
    parts = (SLAB, LEAD, HUNG)
    straight = three(parts)
    turned = flattened([Group(name="g", members=parts, turn_rad=(0.0, 0.0, yaw))])
    c, s = math.cos(yaw), math.sin(yaw)
    supports = [(c * x + s * y, -s * x + c * y, z) for x, y, z in THREE]
    found = three(turned, supports)
    # The same sums in turned numbers.
    assert found.bears == pytest.approx(straight.bears, abs=1e-12)
    assert found.body.inertia_kg_m2 == pytest.approx(straight.body.inertia_kg_m2, rel=1e-12)
    assert found.body.cg_m[0] - found.edge_m == pytest.approx(straight.body.cg_m[0] - straight.edge_m, abs=1e-12)
    motions = []
    for tipping in (straight, found):
        motion = PadMotion()
        for _ in range(120):
            motion = pad_tick(tipping.body, tipping.edge_m, 0.0, tipping.floor_m, motion, 0.005)
        motions.append(motion)
    assert motions[0].angle_rad == pytest.approx(motions[1].angle_rad, abs=1e-9)
    assert motions[0].phase == motions[1].phase


def test_what_presses_on_the_edge_is_the_weight_and_what_speeds_it_upwards():
    found, motion, dt_s = two(), PadMotion(), 0.005
    mass = found.body.mass_kg
    pushed = 0.0
    for _ in range(30):
        after = pad_tick(found.body, found.edge_m, 0.0, found.floor_m, motion, dt_s)
        pushed += pressed_kg(found, motion, after, dt_s) * G * dt_s
        motion = after
    assert motion.phase == "tips"
    # Push less weight, over the time, is the momentum that it has upwards.
    assert pushed - mass * G * 30 * dt_s == pytest.approx(mass * motion.vz_m_s, abs=1e-12)


def test_nothing_presses_on_the_edge_once_it_falls_free_or_lies_on_the_table_beside_it():
    found = two()
    assert pressed_kg(found, PadMotion(phase="falls"), PadMotion(phase="falls"), 0.005) == 0.0
    beside = PadMotion(phase="down", x_m=2.0, z_m=-0.19)
    assert pressed_kg(found, beside, beside, 0.005) == 0.0


def test_a_body_that_hangs_on_the_edge_and_touches_nothing_else_presses_with_all_its_weight():
    found = two()
    still = PadMotion(phase="down")
    assert pressed_kg(found, still, still, 0.005) == found.body.mass_kg
