"""Real time becomes whole ticks of 5 ms, and nothing is rounded away."""

import pytest

from lab.simulation import TICK_NS, TICK_S, TICKS_A_FRAME, Clock, Session, workshop_bar


def test_a_tick_is_five_milliseconds_exactly():
    assert TICK_NS == 5_000_000
    assert TICK_S == 0.005


@pytest.mark.parametrize("frame_ns", [16_666_667, 7_777_777, 1, 4_999_999, 39_999_999])
def test_frames_of_any_length_make_the_same_ticks_as_the_whole_time(frame_ns):
    clock, done = Clock(), 0
    frames = 1000
    for _ in range(frames):
        clock, ticks = clock.after(frame_ns)
        done += ticks
    assert done == frames * frame_ns // TICK_NS
    assert clock.remainder_ns == frames * frame_ns % TICK_NS
    assert clock.dropped_ticks == 0


def test_at_most_eight_ticks_a_frame_and_the_surplus_is_counted():
    clock, ticks = Clock().after(100 * TICK_NS + 7)
    assert ticks == TICKS_A_FRAME == 8
    assert clock.dropped_ticks == 92
    assert clock.remainder_ns == 7


def test_a_clock_that_jumps_back_makes_no_ticks_and_loses_none():
    clock, _ = Clock().after(3_000_000)
    clock, ticks = clock.after(-(10**15))
    assert ticks == 0
    clock, ticks = clock.after(2_000_000)
    assert ticks == 1


def test_a_computer_that_slept_all_night_goes_on_as_if_nothing_had_passed():
    session = Session(workshop_bar())
    assert session.advance(8 * 3600 * 10**9) == 8
    assert session.dropped_ticks == 8 * 3600 * 200 - 8


def test_the_fraction_says_how_far_to_draw_into_the_tick():
    clock, _ = Clock().after(12_500_000)
    assert clock.fraction == 0.5
