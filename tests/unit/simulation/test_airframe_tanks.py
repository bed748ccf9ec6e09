"""A flight on its tanks: time in ticks, what is left in them, and when the balance point leaves its limits."""

from dataclasses import replace
from pathlib import Path

import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from lab.files import read_build
from lab.mechanics import Limits
from lab.simulation.airframe_commands import BurnFrom, DoWith, FillTank, PumpAcross, SetFlightTime
from lab.simulation.benches.airframe import AirframeBench
from lab.simulation.benches.airframe_builds import airframe_from_build
from lab.simulation.benches.airframe_tanks import TankFlight, first_flight
from lab.simulation.commands import HoldStill, LetGo, Undo
from lab.simulation.session import Session

DRONE = read_build(Path(__file__).parents[3] / "assets" / "builds" / "survey-drone.toml")
TANKS = tuple(DRONE.tanks)
PARTS = tuple(part for part in DRONE.all_parts if part.name not in {tank.name for tank in TANKS})
LEFT, RIGHT = "left tank", "right tank"
ML = 1e-6


def ticked(flight: TankFlight, times: int) -> TankFlight:
    for _ in range(times):
        flight = flight.ticked()
    return flight


def contents_ml(flight: TankFlight, at_s: float | None = None) -> list[float]:
    return [tank.contents_m3 / ML for tank in flight.tanks_at(TANKS, at_s)]


def test_a_second_of_ticks_is_a_minute_of_flight() -> None:
    flight = ticked(first_flight(TANKS).released(TANKS), 200)
    # Times are counted, not added up: only the product rounds.
    assert flight.at_s == pytest.approx(60.0, abs=1e-12)
    # 225 mL in half an hour is 7.5 mL in a minute, half of it from each.
    assert contents_ml(flight) == pytest.approx([146.25, 71.25], abs=1e-9)


def test_stopped_it_stays_where_it_is_and_goes_on_from_there() -> None:
    flight = ticked(first_flight(TANKS).released(TANKS), 333)
    stopped = flight.stilled()
    assert stopped.held
    assert not stopped.moving
    assert stopped.at_s == flight.at_s == ticked(stopped, 10).at_s
    assert stopped.released(TANKS).ticked().at_s == pytest.approx(flight.ticked().at_s, abs=1e-9)


def test_it_ends_when_there_is_nothing_left() -> None:
    flight = ticked(first_flight(TANKS).released(TANKS), 7000)
    assert not flight.moving
    assert flight.at_s == pytest.approx(1800.0, rel=1e-12)
    assert contents_ml(flight) == [0.0, 0.0]
    assert first_flight(TANKS).released(TANKS).at_end().at_s == flight.at_s


def test_the_timeline_stops_at_take_off_and_at_the_end() -> None:
    flight = first_flight(TANKS)
    assert flight.set_to(-5.0, TANKS).at_s == 0.0
    assert flight.set_to(1e9, TANKS).at_s == pytest.approx(1800.0, rel=1e-12)


def test_contents_agree_with_an_independent_integration() -> None:
    flight = first_flight(TANKS).set_to(120.0, TANKS).burning(0.2 * ML, (RIGHT, LEFT), "in order")
    flight = flight.set_to(200.0, TANKS).pumping(LEFT, RIGHT, 0.1 * ML).set_to(400.0, TANKS)
    flight = flight.pumping(LEFT, RIGHT, None)

    def rates(at_s: float) -> list[float]:
        if at_s < 120.0:
            return [-0.0625, -0.0625]
        pumped = 0.1 if 200.0 <= at_s < 400.0 else 0.0
        return [-pumped, pumped - 0.2]

    held = [150.0, 75.0]
    for start, end in ((0.0, 120.0), (120.0, 200.0), (200.0, 400.0), (400.0, 430.0)):
        middle = (start + end) / 2.0
        held = list(solve_ivp(lambda _, __, middle=middle: rates(middle), (start, end), held, rtol=1e-12).y[:, -1])
        # Rates are constant between the instants, where the integrator is exact to round-off.
        assert contents_ml(flight, end) == pytest.approx(held, abs=1e-9)


def test_pumping_across_neither_makes_nor_loses_any() -> None:
    flight = first_flight(TANKS).burning(0.0, ()).pumping(RIGHT, LEFT, 0.5 * ML)
    for at_s in (0.0, 17.3, 99.9, 100.0, 150.0, 1800.0):
        # A tank holds 200 mL: the left one takes only 50 more.
        assert sum(contents_ml(flight, at_s)) == pytest.approx(225.0, abs=1e-10)
    assert contents_ml(flight, 1800.0) == pytest.approx([200.0, 25.0], abs=1e-10)


def test_pumping_back_ends_what_was_pumped_there() -> None:
    flight = first_flight(TANKS).burning(0.0, ()).pumping(LEFT, RIGHT, 0.5 * ML).set_to(60.0, TANKS)
    flight = flight.pumping(RIGHT, LEFT, 0.5 * ML)
    assert [(run.source, run.runs_at(70.0)) for run in flight.pumps] == [(LEFT, False), (RIGHT, True)]
    assert contents_ml(flight, 120.0) == pytest.approx([150.0, 75.0], abs=1e-9)


def test_a_choice_in_flight_leaves_what_is_burned() -> None:
    before = first_flight(TANKS).set_to(300.0, TANKS)
    after = before.burning(0.125 * ML, (LEFT, RIGHT), "in order")
    assert contents_ml(after, 300.0) == contents_ml(before, 300.0)
    assert contents_ml(after.set_to(0.0, TANKS), 300.0) == contents_ml(before, 300.0)


def test_it_leaves_its_limits_when_an_independent_sum_says_so() -> None:
    tanks = (TANKS[0], replace(TANKS[1], contents_m3=150 * ML))
    flight = first_flight(tanks).burning(0.125 * ML, (LEFT, RIGHT), "in order")
    limits = Limits(across_m=(-0.01, 0.01))

    def across_m(at_s: float) -> float:
        left, right = max(150.0 - 0.125 * at_s, 0.0), 150.0 - max(0.125 * at_s - 150.0, 0.0)
        mass_g = 420.0 + 380.0 + 90.0 + 300.0 + 160.0 + 0.8 * (left + right)
        return 0.16 * 0.8 * (right - left) / mass_g

    course = flight.limit_course(PARTS, tanks, limits)
    out, back = course.crossings
    assert (out.goes, out.limit, back.goes) == ("out", "right", "in")
    # brentq is asked for 1e-12 s; the mechanics solve in closed form.
    assert out.at_s == pytest.approx(brentq(lambda at: across_m(at) - 0.01, 0.0, 1200.0, xtol=1e-12), abs=1e-9)
    assert back.at_s == pytest.approx(brentq(lambda at: across_m(at) - 0.01, 1200.0, 2400.0, xtol=1e-12), abs=1e-9)


def bench() -> AirframeBench:
    return airframe_from_build(DRONE)


def test_a_flight_is_run_stopped_dragged_and_taken_back() -> None:
    session = Session(bench())
    assert session.do(DoWith("burn")) is None
    assert session.do(LetGo()) is None
    for _ in range(50):
        session.advance(40_000_000)
    # 400 ticks of 5 ms, a minute of flight a second.
    assert session.state.flight.at_s == pytest.approx(120.0, abs=1e-9)
    assert session.do(HoldStill()) is None
    stopped = session.state
    session.advance(40_000_000)
    assert session.state == stopped
    assert session.do(SetFlightTime(600.0)) is None
    assert session.do(SetFlightTime(900.0, joins=True)) is None
    assert session.state.flight.at_s == 900.0
    # The parts are those of the airframe with what is left: 225 mL less 15 min at 7.5 mL a minute.
    assert session.state.sum.mass_kg == pytest.approx(1.35 + 0.8e-3 * (225.0 - 112.5), rel=1e-12)
    session.do(Undo())
    assert session.state == stopped


def test_choices_are_carried_out_and_wrong_ones_are_refused() -> None:
    session = Session(bench())
    assert session.do(PumpAcross(LEFT, RIGHT, 0.5 * ML)) is None
    assert session.do(SetFlightTime(60.0)) is None
    assert session.do(BurnFrom(first=LEFT)) is None
    assert session.do(PumpAcross(LEFT, RIGHT, None)) is None
    before = session.state
    for wrong in (
        SetFlightTime(float("nan")),
        BurnFrom(rate_m3_s=-1.0),
        BurnFrom(first="middle tank"),
        PumpAcross(LEFT, LEFT, ML),
        PumpAcross(LEFT, RIGHT, 0.0),
        FillTank(LEFT, 201 * ML),
    ):
        assert session.do(wrong) is not None
        assert session.state == before


def test_filled_up_it_takes_off_again_with_what_is_in_the_others() -> None:
    session = Session(bench())
    session.do(SetFlightTime(600.0))
    right = session.state.tanks_now[1].contents_m3
    assert session.do(FillTank(LEFT, 200 * ML)) is None
    assert session.state.flight.at_s == 0.0
    assert [tank.contents_m3 for tank in session.state.tanks_now] == [200 * ML, right]
