"""Scenes of questions that hang and are weighed: held, let go, at rest where the mechanics say."""

from math import atan2

import pytest

from lab.mechanics import Box, Part, hanging_attitude
from lab.simulation import LetGo, Session
from lab.simulation.benches import HungScene, WeighedScene
from lab.simulation.benches.airframe_hanging import AirframeHanging
from lab.simulation.benches.scales import SETTLES_S
from lab.simulation.clock import TICK_NS

PARTS = (
    Part("handle", 0.2, (0.5, 0.0, 0.0), Box((1.0, 0.02, 0.02))),
    Part("ring", 0.3, (0.9, 0.01, 0.0), Box((0.2, 0.2, 0.02))),
)
HOOK = (0.45, 0.0, 0.03)


def hung() -> HungScene:
    return HungScene(parts=PARTS, hanging=AirframeHanging(hook_m=HOOK))


def ticks_to_rest(session: Session) -> int:
    ticks = 0
    while session.moving and ticks < 12_000:
        ticks += session.advance(TICK_NS)
    return ticks


def test_a_body_that_is_let_go_swings_to_where_it_hangs() -> None:
    session = Session(hung())
    assert session.state.held
    session.do(LetGo())
    ticks = ticks_to_rest(session)
    rest = hanging_attitude(PARTS, HOOK)
    assert rest is not None
    assert session.state.swing.pitch_rad == pytest.approx(rest.pitch_rad, abs=1e-12)
    # A second and more of swinging, and no class waits longer than ten.
    assert 200 < ticks < 2000
    assert session.state.ticked() is session.state
    assert session.state.at_end() is session.state


def test_it_swings_out_beyond_its_rest_before_it_comes_back() -> None:
    def nose_up(state: HungScene) -> float:
        """As seen from its side; beyond straight up too, where pitch comes back."""
        return atan2(state.swing.down[0], -state.swing.down[2])

    state, most = hung().released(), 0.0
    while state.moving:
        state = state.ticked()
        most = max(most, nose_up(state))
    assert most > nose_up(state) + 0.1


def test_the_end_at_once_is_the_end_of_the_swing() -> None:
    watched, at_once = Session(hung()), Session(hung())
    watched.do(LetGo())
    ticks_to_rest(watched)
    at_once.do(LetGo(at_once=True))
    assert at_once.state.swing == watched.state.swing


def test_what_is_held_again_hangs_level() -> None:
    assert hung().released().at_end().stilled() == hung()


def test_windows_show_nothing_on_the_way_down_and_then_come_to_what_the_scales_bear() -> None:
    state = WeighedScene().released()
    while state.raised:
        assert state.share == 0.0
        state = state.ticked()
    ticks = 0
    while state.moving:
        state, ticks = state.ticked(), ticks + 1
    assert state.share == 1.0
    # From all to a ten-thousandth is 9.2 times their time constant.
    assert ticks * 0.005 == pytest.approx(9.21 * SETTLES_S, abs=0.01)
    assert WeighedScene().released().at_end() == state
    assert state.stilled() == WeighedScene()
