"""What can be done to an airframe that is hung or weighed, and what is refused with a reason."""

from dataclasses import dataclass, replace
from math import dist, nan, radians

import pytest

from lab.mechanics import Box, Part, Surface, moment_sum
from lab.simulation.airframe_commands import GuessAttitude, HangBy, RaiseNose
from lab.simulation.benches.airframe_hanging import AirframeHanging
from lab.simulation.benches.airframe_hanging_edits import (
    ANY_WAY,
    DRAWN_ALREADY,
    FULL_OF_LINES,
    HANG_EDITS,
    NOT_AN_ANGLE,
    NOT_HELD_UP,
    NOT_STEADY,
    NOTHING_DRAWN,
    WEIGH_EDITS,
    WOULD_TIP,
    hanging_of,
    weighing_of,
)
from lab.simulation.benches.airframe_weighing import AirframeWeighing
from lab.simulation.benches.scales_edits import NO_SUCH_SCALE, NOT_A_READING, ONE_LINE
from lab.simulation.benches.shared_edits import NOT_A_PLACE, NOT_A_SIDE
from lab.simulation.plate_commands import DrawPlumbLine, RubOutLines
from lab.simulation.refused import Refused
from lab.simulation.scales_commands import GuessReading, MoveScale

PARTS = (
    Part("fuselage", 0.4, (0.5, 0.0, 0.0), Box((1.0, 0.08, 0.08))),
    Part("wing", 0.4, (0.42, 0.0, 0.05), Box((0.2, 1.2, 0.02))),
    Part("battery", 0.3, (0.1, 0.02, 0.0), Box((0.08, 0.05, 0.04))),
)
WING = Surface(name="wing", root_chord_m=0.2, tip_chord_m=0.2, span_m=1.2, at_m=(0.32, 0.0, 0.05))
BALANCE = moment_sum(PARTS).balance_point_m


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """As much of an airframe as these edits know."""

    parts: tuple[Part, ...] = PARTS
    surfaces: tuple[Surface, ...] = (WING,)
    hang: AirframeHanging | None = None
    weighing: AirframeWeighing | None = None


def done(state: Frame, *commands: object) -> Frame:
    for command in commands:
        after = ({**HANG_EDITS, **WEIGH_EDITS})[type(command)](state, command)
        assert isinstance(after, Frame), after
        state = after
    return state


def refused(state: Frame, command: object) -> Refused:
    after = ({**HANG_EDITS, **WEIGH_EDITS})[type(command)](state, command)
    assert isinstance(after, Refused)
    return after


def hung(state: Frame) -> Frame:
    return replace(state, hang=hanging_of(state).stilled().released(state.parts).at_end())


def stood(state: Frame) -> Frame:
    return replace(state, weighing=weighing_of(state).stilled().released(state.parts).at_end())


def test_it_is_first_hung_a_little_ahead_of_its_balance_point_and_over_it() -> None:
    hook = hanging_of(Frame()).hook_m
    assert hook[0] < BALANCE[0]
    assert hook[2] > BALANCE[2]
    assert hung(Frame()).hang.nose == "up"


def test_the_hook_stops_at_the_box_round_the_airframe() -> None:
    state = done(Frame(), HangBy(-5.0, 9.0, -9.0))
    assert state.hang.hook_m == pytest.approx((0.0, 0.6, -0.04))


def test_a_hook_that_goes_elsewhere_takes_back_the_guess_and_holds_it_level_but_keeps_the_lines() -> None:
    state = done(hung(done(Frame(), GuessAttitude("up", "left"))), DrawPlumbLine())
    assert (state.hang.guess_nose, state.hang.guess_wing) == ("up", "left")
    moved = done(state, HangBy(0.2, 0.0, 0.04))
    assert moved.hang.held
    assert moved.hang.lines == state.hang.lines
    assert (moved.hang.guess_nose, moved.hang.guess_wing) == (None, None)
    assert done(moved, HangBy(*moved.hang.hook_m)) is moved


def test_a_hook_that_is_no_place_and_a_guess_that_is_none_are_refused() -> None:
    assert refused(Frame(), HangBy(nan, 0.0, 0.0)) is NOT_A_PLACE
    assert refused(Frame(), GuessAttitude("sideways", None)) is NOT_A_SIDE  # type: ignore[arg-type]


def test_lines_are_drawn_once_a_hook_and_cross_at_the_balance_point() -> None:
    state = Frame()
    assert refused(state, DrawPlumbLine()) is NOT_HELD_UP
    assert refused(state, RubOutLines()) is NOTHING_DRAWN
    for hook in ((0.2, 0.0, 0.04), (0.4, 0.5, 0.05), (0.8, 0.0, 0.04)):
        state = done(hung(done(state, HangBy(*hook))), DrawPlumbLine())
        assert refused(state, DrawPlumbLine()) is DRAWN_ALREADY
    assert dist(state.hang.crossing.at_m, BALANCE) < 1e-9  # what the bench promises
    assert done(state, RubOutLines()).hang.lines == ()


def test_there_is_room_for_eight_lines() -> None:
    state = Frame()
    for number in range(8):
        state = done(hung(done(state, HangBy(0.1 * number, 0.0, 0.04))), DrawPlumbLine())
    state = hung(done(state, HangBy(0.95, 0.1, 0.04)))
    assert refused(state, DrawPlumbLine()) is FULL_OF_LINES


def test_hung_by_its_balance_point_it_stays_and_has_no_line() -> None:
    state = hung(done(Frame(), HangBy(*BALANCE)))
    assert state.hang.hangs_any_way
    assert (state.hang.nose, state.hang.wing) == (None, None)
    assert state.hang.swing.down == (0.0, 0.0, -1.0)
    assert refused(state, DrawPlumbLine()) is ANY_WAY


def test_hung_right_below_its_balance_point_it_falls_over_and_hangs_upside_down() -> None:
    state = hung(done(Frame(), HangBy(BALANCE[0], BALANCE[1], -0.04)))
    moved = state.hang.stilled().released(PARTS)
    for _ in range(3000):
        moved = moved.ticked()
    assert moved.at_rest
    assert moved.upside_down
    assert moved.swing == state.hang.swing


def test_a_scale_is_placed_and_stops_at_the_box_and_never_in_one_line() -> None:
    state = done(Frame(), MoveScale(1, -3.0, 0.1))
    assert state.weighing.scales[0].at_m[:2] == (0.0, 0.1)
    second, third = state.weighing.scales[1:]
    assert refused(state, MoveScale(1, second.at_m[0], 0.0)) is ONE_LINE
    assert refused(state, MoveScale(4, 0.1, 0.0)) is NO_SUCH_SCALE
    assert refused(state, MoveScale(1, nan, 0.0)) is NOT_A_PLACE
    assert second.at_m[0] == third.at_m[0]


def test_a_scale_that_moves_under_a_standing_airframe_reads_anew() -> None:
    state = stood(Frame())
    moved = done(state, MoveScale(1, 0.2, 0.0))
    assert moved.weighing.moving
    read = moved.weighing.at_end().read_m
    assert read[:2] == pytest.approx(BALANCE[:2], abs=1e-9)  # what the bench promises


def test_it_tips_off_its_scales_when_they_no_longer_hold_it_and_another_place_lifts_it_off() -> None:
    state = done(stood(Frame()), MoveScale(1, 0.4, 0.0))  # now all three stand behind its balance point
    assert state.weighing.tipped
    after = state.weighing
    while after.moving:
        after = after.ticked()
    assert after.motion.phase == "down"
    assert abs(after.motion.angle_rad) > radians(5.0)
    assert after.read_m is None
    assert done(state, MoveScale(1, 0.1, 0.0)).weighing.held


def test_the_nose_is_raised_only_from_steady_readings_and_the_second_weighing_finds_the_height() -> None:
    assert refused(Frame(), RaiseNose(radians(10.0))) is NOT_STEADY
    state = stood(Frame())
    assert refused(state, RaiseNose(radians(1.0))) is NOT_AN_ANGLE
    assert refused(state, RaiseNose(nan)) is NOT_AN_ANGLE
    raised = done(state, RaiseNose(radians(12.0))).weighing
    assert raised.moving
    assert raised.read_m is None or raised.read_m[2] is None
    raised = raised.at_end()
    assert raised.pitch_rad == radians(12.0)
    assert dist(raised.read_m, BALANCE) < 1e-9  # what the bench promises
    lowered = done(replace(state, weighing=raised), RaiseNose(0.0)).weighing.at_end()
    assert lowered.shown_kg == pytest.approx(state.weighing.shown_kg, rel=1e-12)


def test_a_nose_that_would_tip_it_off_stays_where_it_is() -> None:
    (_, _, low) = weighing_of(Frame()).scales[0].at_m
    tall = (*PARTS, Part("mast", 2.0, (0.44, 0.0, 0.9), Box((0.02, 0.02, 0.02))))
    state = stood(Frame(parts=tall))
    assert state.weighing.steady
    assert low < 0.0
    assert refused(state, RaiseNose(radians(20.0))) is WOULD_TIP


def test_a_guess_of_the_first_reading_is_kept_until_a_scale_moves() -> None:
    state = done(Frame(), GuessReading(0.2))
    assert state.weighing.guessed_kg == 0.2
    assert refused(state, GuessReading(-1.0)) is NOT_A_READING
    assert done(state, MoveScale(1, 0.15, 0.0)).weighing.guessed_kg is None
    assert stood(state).weighing.stilled().guessed_kg == 0.2
    assert stood(state).weighing.touched().guessed_kg is None
