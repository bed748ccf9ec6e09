"""The tilt that is seen, as the angle that is heard."""

import math
from dataclasses import replace

import pytest

from lab.screens.screen import BuildModel, LessonsModel, Setting
from lab.screens.tilts import LEVEL_RAD, Tilt, tilt_of
from lab.simulation.benches.bar_builds import workshop_bar
from lab.simulation.benches.catalogue import BENCHES
from lab.simulation.benches.mobile_builds import workshop_mobile
from lab.simulation.benches.scales_builds import workshop_scales


def model_with(bench) -> BuildModel:
    return BuildModel(setting=Setting(), bench=bench, previous=bench)


def tilts(bench, ticks: int = 40) -> list[Tilt]:
    bench, found = bench.released(), []
    for _ in range(ticks):
        bench = bench.ticked()
        tilt = tilt_of(model_with(bench))
        found += [tilt] if tilt else []
    return found


@pytest.mark.parametrize("name", BENCHES)
def test_what_is_held_is_silent_on_every_bench(name):
    assert tilt_of(model_with(BENCHES[name].start())) is None


@pytest.mark.parametrize("name", ["bar", "tool"])
def test_what_goes_down_on_the_right_has_a_clockwise_tilt_that_grows(name):
    found = tilts(BENCHES[name].start())
    assert found
    assert all(tilt.angle_rad < -LEVEL_RAD and tilt.moving for tilt in found)
    assert found[-1].angle_rad < found[0].angle_rad


def test_a_bar_at_rest_at_its_stop_is_tilted_by_the_stop_and_does_not_move():
    bench = workshop_bar().released().at_end()
    side = {"left": 1, "right": -1}[bench.turn.goes]
    angle_rad = bench.turn.tilt_rad or side * bench.pivot.stop_rad
    assert tilt_of(model_with(bench)) == Tilt(angle_rad=angle_rad, moving=False)


def test_level_is_silent_moving_or_at_rest():
    bench = workshop_bar().released()
    assert bench.moving
    assert tilt_of(model_with(bench)) is None
    for share, heard in ((0.99, False), (1.01, True), (-1.01, True)):
        off = replace(bench, swing=replace(bench.swing, angle_rad=share * LEVEL_RAD))
        assert (tilt_of(model_with(off)) is not None) == heard


def test_a_plate_tells_how_far_it_has_turned_from_how_it_was_cut():
    bench = BENCHES["plate"].start().released()
    end = bench.at_end()
    assert tilt_of(model_with(bench)) is None
    assert tilt_of(model_with(end)) == Tilt(angle_rad=math.remainder(end.angle_rad, math.tau), moving=False)


def test_a_tool_that_turned_over_tells_the_shortest_way_round():
    bench = BENCHES["tool"].start().released()
    over = replace(bench, motion=replace(bench.motion, angle_rad=math.radians(-350)))
    # 1e-12: a turn is taken off, and round-off stays.
    assert tilt_of(model_with(over)).angle_rad == pytest.approx(math.radians(10), abs=1e-12)


def test_of_a_mobile_the_topmost_bar_that_is_not_level_is_told():
    end = workshop_mobile().released().at_end()
    angles = [swing.angle_rad for swing in end.swings]
    assert tilt_of(model_with(end)).angle_rad == next(angle for angle in angles if abs(angle) >= LEVEL_RAD)
    top = replace(end.swings[0], angle_rad=0.0, settled=True)
    below = replace(end.swings[1], angle_rad=-0.1, settled=True)
    assert tilt_of(model_with(replace(end, swings=(top, below, *end.swings[2:])))).angle_rad == -0.1


def test_a_body_that_stands_on_its_scales_is_level_and_one_that_tips_to_the_right_falls_clockwise():
    bench = workshop_scales()
    assert tilts(bench) == []
    near = replace(
        bench, scales=tuple(replace(scale, at_m=(0.05 + 0.05 * n, 0.0, 0.0)) for n, scale in enumerate(bench.scales))
    )
    found = tilts(near, ticks=200)
    assert found
    assert all(tilt.angle_rad < 0.0 for tilt in found)


def test_a_frame_that_tips_to_the_left_or_to_the_front_is_told_as_seen_from_the_front():
    bench = workshop_scales()
    near = replace(
        bench, scales=tuple(replace(scale, at_m=(0.05 + 0.05 * n, 0.0, 0.0)) for n, scale in enumerate(bench.scales))
    )
    tipped = near.at_rest()
    motion = replace(tipped.motion, angle_rad=-0.3)
    for way, told in (((-1.0, 0.0), 0.3), ((0.6, 0.8), -math.asin(0.6 * math.sin(0.3))), ((0.0, 1.0), None)):
        seen = tilt_of(model_with(replace(tipped, motion=motion, tipping=replace(tipped.tipping, way=way))))
        # 1e-12: a sine and back.
        assert (seen and seen.angle_rad) == (told and pytest.approx(told, abs=1e-12))


def test_where_there_is_no_bench_nothing_tilts():
    assert tilt_of(LessonsModel(setting=Setting(), lessons=())) is None
    assert tilt_of(None) is None
