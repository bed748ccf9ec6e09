"""The airframe on the bench is hung, weighed, taken back, kept and replayed by commands alone."""

from math import dist, radians
from pathlib import Path

import pytest

from lab import files
from lab.app.paths import find_paths
from lab.mechanics import hanging_attitude
from lab.simulation import HoldStill, LetGo, OpenBuild, Refused, Session, Tape, Undo
from lab.simulation.airframe_commands import DoWith, GuessAttitude, HangBy, RaiseNose
from lab.simulation.benches.airframe import AirframeBench
from lab.simulation.benches.airframe_builds import airframe_from_build, build_from_airframe
from lab.simulation.clock import TICK_NS
from lab.simulation.plate_commands import DrawPlumbLine
from lab.simulation.replaying import Same, replay
from lab.simulation.scales_commands import MoveScale
from lab.simulation.tape_reading import read_tape

BUILDS = sorted(find_paths().shipped_builds.glob("*.toml"))
AIRFRAMES = [path for path in BUILDS if files.read_build(path).is_airframe]


def bench_of(path: Path) -> AirframeBench:
    return airframe_from_build(files.read_build(path))


def drone() -> AirframeBench:
    return bench_of(next(path for path in AIRFRAMES if path.stem == "survey-drone"))


def settled(session: Session) -> Session:
    ticks = 0
    while session.moving and ticks < 12_000:
        ticks += session.advance(TICK_NS)
    assert not session.moving
    return session


def did(session: Session, *commands: object) -> Session:
    for command in commands:
        assert session.do(command) is None, command  # type: ignore[arg-type]
    return session


@pytest.mark.parametrize("path", AIRFRAMES, ids=lambda path: path.stem)
def test_hanging_and_weighing_by_commands_agree_with_the_sum_of_the_file(path: Path) -> None:
    session = Session(bench_of(path))
    build = files.read_build(path)
    balance = session.state.sum.balance_point_m
    did(session, DoWith("hang"), LetGo())
    hang = settled(session).state.hang
    rest = hanging_attitude(build.all_parts, hang.hook_m)
    # What the bench promises: a thousand millionth.
    assert hang.swing.pitch_rad == pytest.approx(rest.pitch_rad, abs=1e-9)
    did(session, DoWith("weigh"), LetGo())
    did(settled(session), RaiseNose(radians(8.0)))
    assert dist(settled(session).state.weighing.read_m, balance) < 1e-9


def test_what_is_done_is_taken_back_a_step_at_a_time_and_drags_as_one() -> None:
    session = did(Session(drone()), DoWith("hang"), GuessAttitude("up", None))
    before = session.state
    did(session, HangBy(0.2, 0.0, 0.04), HangBy(0.25, 0.0, 0.04, joins=True), HangBy(0.3, 0.0, 0.04, joins=True))
    did(session, Undo())
    assert session.state == before
    did(session, LetGo())
    settled(session)
    did(session, DrawPlumbLine(), Undo())  # back to level first
    assert session.state.held
    assert len(session.state.hang.lines) == 1
    did(session, Undo())
    assert session.state.hang.lines == ()


def test_what_is_built_is_looked_at_where_it_balances_and_nothing_moves() -> None:
    session = Session(drone())
    did(session, LetGo())
    assert session.state.found
    assert not session.state.moving
    did(session, Undo())
    assert session.state.held
    why = Session(drone()).do(DoWith("paint"))  # type: ignore[arg-type]
    assert isinstance(why, Refused)


def test_its_scales_are_kept_with_the_build_and_its_hook_is_not() -> None:
    session = did(Session(drone()), DoWith("hang"), DoWith("weigh"), MoveScale(1, 0.12, 0.01))
    text = files.build_text(build_from_airframe(session.state))
    again = airframe_from_build(files.read_build_text(text, file="build"))
    assert again.weighing.scales == session.state.weighing.scales
    assert again.hang is None
    assert again.parts == session.state.parts
    assert (again.tanks, again.surfaces, again.limits) == (
        session.state.tanks,
        session.state.surfaces,
        session.state.limits,
    )
    opened = did(Session(drone()), OpenBuild(text))
    assert opened.state == again


def test_a_recorded_session_ends_in_the_same_state_to_the_last_bit() -> None:
    tape = Tape()
    session = Session(drone(), tape=tape)
    did(session, DoWith("hang"), LetGo())
    settled(session)
    did(session, DrawPlumbLine(), HangBy(0.1, 0.02, 0.04), LetGo())
    settled(session)
    did(session, DoWith("weigh"), LetGo())
    settled(session)
    did(session, RaiseNose(radians(10.0)))
    settled(session)
    did(session, HoldStill(), MoveScale(1, 0.45, 0.0), LetGo())
    for _ in range(150):
        session.advance(TICK_NS)
    assert session.state.weighing.tipped
    again = replay(read_tape(tape.text()))
    assert isinstance(again, Same)
    assert again.exact
