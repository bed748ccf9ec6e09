"""A bar that is let go tips by the mechanics, comes to rest, and only then says which end dropped."""

import math
from dataclasses import replace

import pytest

from lab.mechanics import Pivot
from lab.simulation import (
    TICK_NS,
    TICK_S,
    Hang,
    HoldStill,
    LetGo,
    MovePivot,
    Session,
    Undo,
    empty_bar,
    settle,
    workshop_bar,
)

STOP_RAD = math.radians(20)


def hung_at(at_m, up_m, **options):
    return replace(workshop_bar(), pivot=Pivot(at_m=at_m, up_m=up_m, **options))


def rest_after_s(bar):
    ticks = 0
    bar = bar.released()
    while bar.moving:
        bar = bar.ticked()
        ticks += 1
    return bar, ticks * TICK_S


def test_a_bar_that_is_held_does_not_move():
    session = Session(workshop_bar())
    first = session.state
    session.advance(40_000_000)
    assert session.state is first
    assert not session.moving


def test_the_workshop_bar_tips_to_the_right_until_the_stop_holds_it():
    bar, seconds = rest_after_s(workshop_bar())
    assert bar.outcome == "right"
    assert bar.swing.angle_rad == pytest.approx(-STOP_RAD, abs=1e-12)  # the stop, to round-off
    assert seconds < 6.0


def test_the_outcome_is_not_given_away_before_it_has_come_to_rest():
    bar = workshop_bar()
    assert bar.outcome is None
    bar = bar.released()
    while bar.moving:
        assert bar.outcome is None
        bar = bar.ticked()
    assert bar.outcome == "right"
    assert bar.stilled().outcome is None


@pytest.mark.parametrize("up_m", [0.01, 0.0, -0.02])
def test_a_bar_let_go_exactly_balanced_stays_level_wherever_its_pin(up_m):
    bar = hung_at(0.444, up_m).released()
    assert bar.outcome == "level"
    assert bar.swing.angle_rad == 0.0
    assert not bar.moving
    assert bar.ticked() is bar


@pytest.mark.parametrize("up_m", [0.1, 0.03, 0.01, 0.0, -0.02])
@pytest.mark.parametrize(("at_m", "side"), [(0.40, "right"), (0.44, "right"), (0.45, "left"), (0.60, "left")])
def test_the_end_that_the_moments_say_drops_and_a_class_need_not_wait(up_m, at_m, side):
    bar, seconds = rest_after_s(hung_at(at_m, up_m))
    assert bar.outcome == side
    assert (bar.swing.angle_rad > 0) == (side == "left")
    # About 6 s is the promise.
    assert seconds < 6.5


def test_it_comes_to_rest_at_the_tilt_of_statics():
    bar, _ = rest_after_s(hung_at(0.44, 0.03))
    # tan θ = Σ m d / Σ m h: the balance point is 0.4 cm right of the pin and 3 cm below it.
    assert bar.swing.angle_rad == pytest.approx(-math.atan2(0.004, 0.03), abs=1e-9)


def test_settling_without_a_screen_ends_as_watching_does():
    for at_m in (0.40, 0.44, 0.444, 0.45):
        for up_m in (0.0, 0.01, 0.05):
            released = hung_at(at_m, up_m).released()
            assert settle(released) == rest_after_s(hung_at(at_m, up_m))[0]


def test_a_bar_that_creeps_for_minutes_is_settled_where_it_would_end():
    # A ten-thousandth of a gram-centimetre: undamped and without a swing, half an hour to the stop.
    bar = hung_at(0.444 - 2e-9, 0.0).released()
    assert bar.moving
    ended = settle(bar)
    assert ended.outcome == "right"
    assert ended.swing.angle_rad == pytest.approx(-STOP_RAD, abs=1e-12)


def test_settling_a_bar_that_is_held_leaves_it_held():
    bar = workshop_bar()
    assert settle(bar) is bar


def test_with_reduced_motion_letting_go_shows_the_end_at_once():
    watched, at_once = Session(workshop_bar()), Session(workshop_bar())
    watched.do(LetGo())
    while watched.moving:
        watched.advance(TICK_NS)
    at_once.do(LetGo(at_once=True))
    assert at_once.state == watched.state
    assert not at_once.moving


def test_the_end_can_be_asked_for_in_the_middle_of_the_motion():
    session = Session(workshop_bar())
    session.do(LetGo())
    session.advance(8 * TICK_NS)
    assert session.do(LetGo()) is None
    assert session.moving
    session.do(LetGo(at_once=True))
    assert session.state.outcome == "right"


def test_holding_still_brings_it_back_to_level():
    session = Session(workshop_bar())
    session.do(LetGo(at_once=True))
    session.do(HoldStill())
    assert session.state == workshop_bar()


def test_what_is_drawn_lies_between_two_neighbouring_ticks():
    session = Session(workshop_bar())
    assert session.fraction == 1.0
    session.do(LetGo())
    session.advance(5 * TICK_NS + TICK_NS // 2)
    assert session.fraction == 0.5
    assert session.previous.ticked() == session.state
    session.do(MovePivot(0.5))
    assert session.previous is session.state


def test_a_command_is_seen_at_a_stroke_also_when_it_takes_one_back():
    session = Session(empty_bar())
    session.do(Hang(0.1, 0.1))
    session.do(Undo())
    assert session.previous is session.state


def test_the_damping_that_a_build_states_is_the_one_used():
    still = rest_after_s(hung_at(0.44, 0.03))[1]
    thick = rest_after_s(hung_at(0.44, 0.03, damping_kg_m2_s=0.5))[1]
    assert thick > 2 * still


def test_a_bar_on_a_pad_stays_while_its_balance_point_is_over_the_pad():
    assert hung_at(0.440, 0.0, pad_m=0.005).released().outcome == "level"
    assert rest_after_s(hung_at(0.435, 0.0, pad_m=0.005))[0].outcome == "right"


def test_clamping_a_weight_changes_how_it_swings_but_not_which_end_drops():
    hung = workshop_bar()
    clamped = replace(hung, weights=tuple(replace(weight, hold="clamped") for weight in hung.weights))
    assert rest_after_s(clamped)[0].outcome == rest_after_s(hung)[0].outcome == "right"


def test_a_bar_put_together_in_the_middle_of_its_swing_goes_on_from_there():
    watched = workshop_bar().released().ticked()
    assert replace(watched, turning=None).ticked().swing == watched.ticked().swing
    assert replace(watched, turning=None).at_end().swing == watched.at_end().swing
    assert watched.stilled().at_end() == workshop_bar()
    assert watched.released() is watched
