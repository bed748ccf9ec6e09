"""A body on two or three scales: what they read, when it tips, how it comes down, and back out of a file."""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from lab.files import build_text, read_build_text
from lab.mechanics import ScaleReading, Weighing, inertia_about_kg_m2, weighed_level_m
from lab.simulation import HoldStill, LetGo, Refused, Remove, Session, Undo, UnfitBuildError, settle
from lab.simulation.benches.scales import SETTLES_S
from lab.simulation.benches.scales_builds import build_from_scales, scales_from_build, workshop_scales
from lab.simulation.clock import TICK_NS, TICK_S
from lab.simulation.part_commands import Rename, Reweigh
from lab.simulation.scales_commands import GuessReading, MoveScale, PutOn, Shift, StandOn

G = 9.80665
FRAME = """
format = 1
title = "Kite frame"
units = "kg-m"
part = [
    { name = "frame", weight = 3.2, at = [0.6, 0, 0.02], shape = { kind = "box", size = [1.2, 0.8, 0.04] } },
    { name = "reel", weight = 1.1, at = [0.4, 0.1, 0.1], shape = { kind = "cylinder", radius = 0.08, length = 0.1 } },
    { name = "battery", weight = 0.7, at = [0.8, -0.2, 0.08], shape = { kind = "box", size = [0.12, 0.07, 0.06] } },
]
support = [
    { name = "bow scale", at = [0.1, 0, 0] },
    { name = "left scale", at = [1.1, -0.35, 0] },
    { name = "right scale", at = [1.1, 0.35, 0] },
]
"""
HOLE = """
format = 1
title = "Gusset"
units = "g-cm"
part = [
    { name = "plate", weight = 90, at = 0, shape = { kind = "rectangle", length = 20, width = 10 } },
    { name = "hole", weight = 5, at = 3, cut = true },
]
"""


def frame():
    return scales_from_build(read_build_text(FRAME, file="frame.toml"))


def on_the_table(state):
    """A session with the body let down and steady."""
    session = Session(state)
    session.do(LetGo())
    run(session, 2.0)
    return session


def run(session, seconds):
    for _ in range(round(seconds / TICK_S)):
        session.advance(TICK_NS)


def shares(state):
    """What each scale carries, by solving for it: forces add up to the weight, moments about zero to its."""
    masses = np.array([part.mass_kg for part in state.parts])
    places = np.array([part.at_m for part in state.parts])
    along, across, _ = masses @ places
    at = np.array([scale.at_m for scale in state.scales])
    if len(at) == 2:
        return np.linalg.solve([[1.0, 1.0], at[:, 0]], [masses.sum(), along])
    return np.linalg.solve([np.ones(3), at[:, 0], at[:, 1]], [masses.sum(), along, across])


@pytest.mark.parametrize("start", [workshop_scales, frame], ids=["two", "three"])
def test_scales_come_to_read_what_statics_says(start):
    state = on_the_table(start()).state
    assert not state.moving
    # Two ways of solving three equations agree but for round-off.
    assert state.readings_kg == pytest.approx(shares(state), rel=1e-12)


@pytest.mark.parametrize("start", [workshop_scales, frame], ids=["two", "three"])
def test_in_every_tick_the_scales_bear_the_whole_weight_and_none_pulls(start):
    session = on_the_table(start())
    number = session.state.loads[-1].id
    steps = 200
    for step in range(steps):
        assert session.do(Shift(number, 0.75 - 0.5 * step / steps, -0.2 + 0.4 * step / steps, joins=True)) is None
        session.advance(TICK_NS)
        state = session.state
        assert state.tipping is None
        assert min(state.readings_kg) >= 0.0
        # A sum of a few rounded numbers of its size.
        assert sum(state.readings_kg) == pytest.approx(state.sum.mass_kg, rel=1e-14)
        assert state.readings_kg == pytest.approx(shares(state), abs=1e-12 * state.sum.mass_kg)


def test_readings_rise_as_a_damped_spring_lets_them_and_all_by_one_share():
    session = Session(workshop_scales())
    session.do(LetGo())
    while session.state.raised:
        assert session.state.readings_kg == (0.0, 0.0)
        session.advance(TICK_NS)
    after = 40
    for _ in range(after):
        session.advance(TICK_NS)
    share = 1.0 - math.exp(-after * TICK_S / SETTLES_S)
    # Forty products of one factor against one exponential.
    assert session.state.readings_kg == pytest.approx(share * shares(session.state), rel=1e-13)
    assert session.state.borne_kg == pytest.approx(shares(session.state), rel=1e-13)


@pytest.mark.parametrize("start", [workshop_scales, frame], ids=["two", "three"])
def test_the_balance_point_is_read_back_from_the_readings(start):
    state = on_the_table(start()).state
    readings = tuple(
        ScaleReading(name=scale.name, mass_kg=mass_kg, at_m=scale.at_m)
        for scale, mass_kg in zip(state.scales, state.readings_kg, strict=True)
    )
    along, across = weighed_level_m(Weighing(readings=readings))
    balance = state.sum.balance_point_m
    assert along == pytest.approx(balance[0], abs=1e-12)
    if len(readings) == 3:
        assert across == pytest.approx(balance[1], abs=1e-12)


def test_it_tips_in_the_very_step_that_carries_the_balance_point_over_a_support():
    session = on_the_table(workshop_scales())
    session.do(MoveScale(2, 0.55, 0.0))
    session.do(PutOn(0.5, 0.5))
    number = session.state.next_id - 1
    masses = [(part.mass_kg, part.at_m[0]) for part in session.state.parts if part.name != "brass"]
    # Where the weight brings the balance point over 0.55: weight times arm on both sides is the same.
    over_m = 0.55 + sum(mass * (0.55 - at) for mass, at in masses) / 0.5
    assert 0.6 < over_m < 0.98
    session.do(Shift(number, over_m - 1e-6, 0.0))
    assert session.state.tipping is None
    left, right = session.state.readings_kg
    # A millionth of a metre short of it, a weight of 0.5 kg leaves the other scale, 0.35 m away, next to nothing.
    assert 0.0 < left < 2e-6
    session.do(Shift(number, over_m + 1e-6, 0.0))
    assert session.state.tipping is not None
    assert session.state.readings_kg[0] == 0.0
    assert session.state.outcome is None
    assert right > 1.3


def test_it_turns_about_the_support_that_is_left_as_a_pendulum_upside_down():
    session = on_the_table(workshop_scales())
    session.do(MoveScale(2, 0.5, 0.0))
    session.do(PutOn(0.5, 0.95))
    state = session.state
    assert state.tipping is not None
    balance = state.sum.balance_point_m
    edge = (0.5, 0.0, state.underside_m)
    about = inertia_about_kg_m2(state.parts, edge)[1, 1]
    mass, lever, rise = state.sum.mass_kg, balance[0] - 0.5, balance[2] - state.underside_m

    def rates(_, now):
        angle, rate = now
        # Clockwise positive: the lever shortens and the height adds to it.
        return rate, mass * G * (lever * math.cos(angle) + rise * math.sin(angle)) / about

    ticks = 40
    run(session, ticks * TICK_S)
    truth = solve_ivp(rates, (0.0, ticks * TICK_S), (0.0, 0.0), rtol=1e-11, atol=1e-13).y[:, -1]
    assert session.state.motion.phase == "tips"
    # The bench's own steps are good to some 1e-9; the solver to 1e-10.
    assert -session.state.motion.angle_rad == pytest.approx(truth[0], abs=1e-8)
    assert -session.state.motion.rate_rad_s == pytest.approx(truth[1], abs=1e-7)


def test_a_support_that_begins_to_be_tipped_over_bears_less_than_the_weight():
    session = on_the_table(workshop_scales())
    session.do(MoveScale(2, 0.5, 0.0))
    session.do(PutOn(0.5, 0.95))
    run(session, TICK_S)
    state = session.state
    lever = state.sum.balance_point_m[0] - 0.5
    about = inertia_about_kg_m2(state.parts, (0.5, 0.0, state.underside_m))[1, 1]
    mass = state.sum.mass_kg
    # N = m (g − lever α), α = m g lever / I, at the start; within a tick it turns by a ten-thousandth.
    assert state.readings_kg[1] == pytest.approx(mass * (1.0 - mass * lever**2 / about), rel=1e-3)


def test_tipped_it_leans_on_scale_and_table_which_bear_the_weight_by_the_lever():
    session = on_the_table(workshop_scales())
    session.do(MoveScale(2, 0.4, 0.0))
    session.do(PutOn(0.5, 0.95))
    run(session, 3.0)
    state = session.state
    assert state.motion.phase == "down"
    assert state.outcome == "right"
    # From the support to the end that meets the table it is 0.6 m, and the table lies a stand's height lower.
    drop = state.underside_m - state.floor_m
    tilt = math.asin(drop / 0.6)
    assert -state.motion.angle_rad == pytest.approx(tilt, abs=1e-9)
    balance = state.sum.balance_point_m
    rise = balance[2] - state.underside_m
    off = (balance[0] - 0.4) * math.cos(tilt) + rise * math.sin(tilt)
    assert state.readings_kg[0] == 0.0
    assert state.readings_kg[1] == pytest.approx(state.sum.mass_kg * (1.0 - off / (0.6 * math.cos(tilt))), rel=1e-8)


def test_three_scales_are_tipped_over_a_side_square_to_it_and_over_a_corner_straight_out():
    session = on_the_table(frame())
    session.do(PutOn(4.0, 0.3, -0.4))
    state = session.state
    assert state.tipping is not None
    # The side from the bow scale (0.1, 0) to the left one (1.1, −0.35).
    square = np.array((-0.35, -1.0)) / math.hypot(0.35, 1.0)
    assert state.tipping.way == pytest.approx(tuple(square), abs=1e-12)
    assert state.tipping.bears[2] == 0.0
    assert sum(state.tipping.bears) == pytest.approx(1.0, abs=1e-15)
    over = Session(frame())
    over.do(PutOn(12.0, 0.0, 0.0))
    over.do(Reweigh(1, 0.4))
    over.do(LetGo())
    run(over, 0.5)
    tipping = over.state.tipping
    assert tipping is not None
    assert tipping.bears == (1.0, 0.0, 0.0)
    balance = over.state.sum.balance_point_m
    out = np.array((balance[0] - 0.1, balance[1])) / math.hypot(balance[0] - 0.1, balance[1])
    assert tipping.way == pytest.approx(tuple(out), abs=1e-12)
    assert settle(over.state).motion.phase == "down"


def test_a_body_that_cannot_stand_tips_when_it_is_let_down_and_is_set_back():
    session = Session(workshop_scales())
    session.do(PutOn(0.5, 1.0))
    session.do(MoveScale(2, 0.6, 0.0))
    session.do(PutOn(0.5, 0.98))
    before = session.state
    session.do(LetGo())
    run(session, 0.2)
    assert session.state.tipping is None
    run(session, 2.8)
    assert session.state.tipping is not None
    refused = session.do(Shift(1, 0.4, 0.0))
    assert isinstance(refused, Refused)
    session.do(HoldStill())
    assert session.state == before
    assert session.do(Shift(1, 0.4, 0.0)) is None


def test_guesses_are_about_the_body_as_it_was():
    session = Session(workshop_scales())
    session.do(GuessReading(0.5))
    assert session.do(GuessReading(-0.1)) is not None
    assert session.state.guessed_kg == 0.5
    session.do(Rename(1, "  wide  camera "))
    assert session.state.guessed_kg == 0.5
    assert session.state.loads[0].name == "wide camera"
    session.do(Shift(1, 0.4, 0.0))
    assert session.state.guessed_kg is None
    session.do(Undo())
    assert session.state.guessed_kg == 0.5


def test_scales_stay_apart_and_out_of_line():
    session = Session(workshop_scales())
    session.do(MoveScale(1, 2.0, 0.0))
    first, second = session.state.scales
    assert first.at_m[0] == pytest.approx(second.at_m[0] - 0.02, abs=1e-12)
    assert session.do(StandOn(3)) is not None
    three = Session(frame())
    assert three.do(MoveScale(1, 1.1, 0.0)) is not None
    assert three.do(StandOn(2)) is None
    assert [scale.name for scale in three.state.scales] == ["bow scale", "left scale"]
    assert three.do(StandOn(3)) is None
    assert len(settle(three.state.released()).readings_kg) == 3


def test_what_carries_everything_stays():
    session = Session(frame())
    assert session.do(Shift(1, 0.7, 0.0)) is not None
    assert session.do(Remove(1)) is not None
    assert session.do(Remove(2)) is None


@pytest.mark.parametrize("start", [workshop_scales, frame], ids=["two", "three"])
def test_a_saved_body_comes_back_as_it_was(start):
    session = Session(start())
    session.do(PutOn(0.2, 0.61))
    session.do(MoveScale(2, 1.0, 0.3))
    build = build_from_scales(session.state)
    again = scales_from_build(read_build_text(build_text(build), file="again.toml"))
    assert again == session.state


def test_a_hole_is_not_put_on_scales():
    with pytest.raises(UnfitBuildError, match="hole"):
        scales_from_build(read_build_text(HOLE, file="hole.toml"))
