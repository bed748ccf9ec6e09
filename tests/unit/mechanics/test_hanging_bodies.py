"""Bodies hung by one point, and the plumb lines through them."""

from math import inf, nan, pi, radians, tan

import pytest

from lab.mechanics import (
    MechanicsError,
    Part,
    PlumbLine,
    hanging_attitude,
    plumb_crossing,
    plumb_line,
)

LEAD = Part("lead", 1.0, (0.2, 0.1, -0.4))


def pitch_and_roll(*hook_m: float) -> tuple[float, float | None]:
    found = hanging_attitude([LEAD], (hook_m[0], hook_m[1], hook_m[2]))
    assert found is not None
    return found.pitch_rad, found.roll_rad


def test_hung_from_straight_above_it_stays_level() -> None:
    assert pitch_and_roll(0.2, 0.1, 0.5) == pytest.approx((0.0, 0.0), abs=1e-15)


def test_a_tail_heavy_body_hangs_nose_up_and_a_right_heavy_one_right_wing_down() -> None:
    pitch, roll = pitch_and_roll(0.1, 0.1, 0.0)
    assert pitch == pytest.approx(0.24497866312686414)  # atan(0.1 / 0.4)
    assert roll == pytest.approx(0.0, abs=1e-15)
    pitch, roll = pitch_and_roll(0.2, 0.0, 0.0)
    assert pitch == pytest.approx(0.0, abs=1e-15)
    assert roll == pytest.approx(0.24497866312686414)


def test_hung_from_under_its_balance_point_it_hangs_upside_down() -> None:
    pitch, roll = pitch_and_roll(0.2, 0.1, -1.0)
    assert pitch == pytest.approx(0.0, abs=1e-15)
    assert abs(roll or 0.0) == pytest.approx(pi)


@pytest.mark.parametrize(("along", "pitch"), [(-0.3, pi / 2), (0.7, -pi / 2)])
def test_hung_by_the_nose_or_tail_roll_means_nothing(along: float, pitch: float) -> None:
    found = hanging_attitude([LEAD], (along, 0.1, -0.4))
    assert found is not None
    assert found.pitch_rad == pytest.approx(pitch)
    assert found.roll_rad is None
    assert found.drop_m == pytest.approx(0.5)


def test_hung_at_its_balance_point_it_rests_any_way_and_there_is_no_answer() -> None:
    build = [LEAD, Part("other", 3.0, (0.7, 0.3, 0.1))]
    balance = (0.575, 0.25, -0.025)
    assert hanging_attitude(build, balance) is None
    assert plumb_line(build, balance) is None
    assert hanging_attitude(build, (0.575, 0.25, -0.024)) is not None


def test_the_plumb_line_runs_from_the_hook_through_the_balance_point() -> None:
    found = plumb_line([LEAD], (0.0, 0.0, 0.0))
    assert found is not None
    line, drop = found
    assert line.through_m == (0.0, 0.0, 0.0)
    assert [drop * value for value in line.down] == pytest.approx(LEAD.at_m)
    assert line.distance_m(LEAD.at_m) == pytest.approx(0.0, abs=1e-16)


def test_a_hook_that_is_no_place_is_refused() -> None:
    with pytest.raises(MechanicsError, match=r"hook is nan m; it must be a finite number"):
        hanging_attitude([LEAD], (0.0, nan, 0.0))


def test_plumb_lines_of_one_body_cross_in_its_balance_point() -> None:
    build = [LEAD, Part("other", 3.0, (0.7, 0.3, 0.1))]
    found = [plumb_line(build, hook) for hook in ((0.0, 0.0, 0.0), (1.0, 0.2, 0.1), (0.5, 0.3, 0.8))]
    crossing = plumb_crossing(line for each in found if each is not None for line in each[:1])
    assert crossing.at_m == pytest.approx((0.575, 0.25, -0.025), abs=1e-14)
    assert crossing.scatter_m == pytest.approx(0.0, abs=1e-14)
    assert crossing.doubt_m == pytest.approx((0.0, 0.0, 0.0), abs=1e-14)


def test_lines_that_miss_each_other_cross_midway_and_say_how_far_they_scatter() -> None:
    lines = [
        PlumbLine(through_m=(0.0, 0.0, 0.0), down=(0.0, 0.0, -2.0)),
        PlumbLine(through_m=(0.0, 0.02, 0.0), down=(5.0, 0.0, 0.0)),
    ]
    crossing = plumb_crossing(lines)
    assert crossing.at_m == pytest.approx((0.0, 0.01, 0.0), abs=1e-16)
    assert crossing.distances_m == pytest.approx((0.01, 0.01))
    assert crossing.scatter_m == pytest.approx(0.01)
    # Two lines, one number over: s² = 2 × 0.01²; across, both lines speak, along and up one each.
    assert crossing.doubt_m == pytest.approx((0.01 * 2**0.5, 0.01, 0.01 * 2**0.5))


def test_a_crossing_of_what_does_not_cross_is_refused() -> None:
    down = PlumbLine(through_m=(0.0, 0.0, 0.0), down=(0.0, 0.0, -1.0))
    with pytest.raises(MechanicsError, match="there is no plumb line; a crossing needs two or more"):
        plumb_crossing([])
    with pytest.raises(MechanicsError, match="there is 1 plumb line; a crossing needs two or more"):
        plumb_crossing([down])
    with pytest.raises(MechanicsError, match="the plumb lines all run the same way; hang the body from a place off"):
        plumb_crossing([down, PlumbLine(through_m=(0.1, 0.0, 0.0), down=(0.0, 0.0, -3.0))])
    # 0.05 degrees apart is the same way; 0.1 is not.
    for degrees, crosses in ((0.05, False), (0.1, True)):
        other = PlumbLine(through_m=(0.0, 0.0, 0.0), down=(tan(radians(degrees)), 0.0, -1.0))
        if crosses:
            assert plumb_crossing([down, other]).at_m == pytest.approx((0.0, 0.0, 0.0), abs=1e-12)
        else:
            with pytest.raises(MechanicsError, match="all run the same way"):
                plumb_crossing([down, other])


def test_a_line_that_points_nowhere_is_refused() -> None:
    with pytest.raises(MechanicsError, match=r"direction of the plumb line is \(0, 0, 0\); it must point somewhere"):
        PlumbLine(through_m=(0.0, 0.0, 0.0), down=(0.0, 0.0, 0.0))
    with pytest.raises(MechanicsError, match="direction of the plumb line is inf"):
        PlumbLine(through_m=(0.0, 0.0, 0.0), down=(inf, 0.0, 0.0))
    tiny = PlumbLine(through_m=(0.0, 0.0, 0.0), down=(0.0, 0.0, -1e-300))
    assert tiny.down == (0.0, 0.0, -1.0)
