"""The picture of the hanging bar."""

import math
from dataclasses import replace
from typing import Any

import pytest

from lab.scenes.hanging_scene import draw_hanging_bar, grab_bounds, place_at_m
from lab.scenes.hanging_view import Ghost, angle_between, stage_for
from lab.scenes.weights import hung_places
from lab.simulation import Hang, LetGo, MovePivot, MoveReference, SetHold
from lab.ui.geometry import Rect
from lab.ui.list_canvas import ListCanvas
from lab.ui.ops import ArcOp, TextOp, TurnedOp

PICTURE = Rect(0, 0, 880, 478)


def lines(view: Any, rect: Rect = PICTURE) -> list[str]:
    canvas = ListCanvas((880, 656))
    draw_hanging_bar(canvas, rect, view)
    return canvas.text_lines()


def drawn(view: Any) -> list[Any]:
    canvas = ListCanvas((880, 656))
    draw_hanging_bar(canvas, PICTURE, view)
    return canvas.ops


def places(view: Any) -> Any:
    return hung_places(view, stage_for(view.bench, PICTURE, view.look))


def test_a_plain_view_shows_things_only(hanging_view: Any):
    told = " ".join(lines(hanging_view()))
    assert "200" in told
    assert "balances" not in told
    assert "pivot" not in told
    assert "reference" not in told


def test_with_everything_shown_the_balance_point_is_written_as_the_sum_gives_it(hanging_view: Any):
    told = lines(hanging_view(numbers=True, outcome_shown=True, lines=True))
    # 22 200 g·cm over 500 g.
    assert "balances at 44.4 cm" in told
    assert "pivot 40.0 cm" in told
    assert {"15.0", "50.0 bar", "72.0", "90.0"} <= set(told)


def test_dragging_the_reference_line_changes_arms_but_not_the_balance_point(hanging_view: Any):
    shown = {"numbers": True, "outcome_shown": True, "lines": True}
    told = lines(hanging_view(MoveReference(0.10), **shown))
    assert "balances at 44.4 cm" in told
    assert {"5.0", "40.0 bar", "62.0", "80.0"} <= set(told)


def test_cords_hang_straight_down_whatever_the_tilt(hanging_view: Any):
    for angle in (-0.3, -0.1, 0.0, 0.2):
        view = replace(hanging_view(), angle_rad=angle)
        for place in places(view).values():
            assert place.body.center[0] == pytest.approx(place.hook[0], abs=1e-9)
            assert place.body.y > place.hook[1]


def test_hooks_turn_about_the_pin(hanging_view: Any):
    view = hanging_view()
    turned = replace(view, angle_rad=0.25)
    stage = stage_for(view.bench, PICTURE, view.look)
    pin = stage.camera.at(view.bench.pivot.at_m, view.bench.pivot.up_m)
    for key, place in places(view).items():
        # Turning keeps distances; 1e-6 px is far below what is drawn.
        assert math.dist(places(turned)[key].hook, pin) == pytest.approx(math.dist(place.hook, pin), abs=1e-6)


def test_weights_are_as_large_to_each_other_as_true_brass(hanging_view: Any):
    view = hanging_view(Hang(0.4, 0.3))
    stage = stage_for(view.bench, PICTURE, view.look)
    # Eight times the mass is twice the side.
    assert stage.side_px(0.4) == pytest.approx(2 * stage.side_px(0.05))


def test_weights_at_one_place_hang_below_each_other(hanging_view: Any):
    view = hanging_view(Hang(0.1, 0.72), Hang(0.05, 0.725), Hang(0.2, 0.715))
    bodies = [place.body for place in places(view).values()]
    assert not any(one.intersects(other) for i, one in enumerate(bodies) for other in bodies[:i])
    assert all(PICTURE.holds(body, 1.0) for body in bodies)


def test_rows_stay_as_they_are_while_the_bar_turns(hanging_view: Any):
    view = hanging_view(Hang(0.1, 0.72), Hang(0.05, 0.725))
    level, tilted = places(view), places(replace(view, angle_rad=-0.1))
    # Lengths of cords in pixels: a ten-thousandth is round-off of coordinates of some hundred.
    cords = {key: round(level[key].body.y - level[key].hook[1], 4) for key in level}
    assert len(set(cords.values())) > 1
    assert cords == {key: round(tilted[key].body.y - tilted[key].hook[1], 4) for key in tilted}


def test_nothing_hangs_out_of_the_picture_even_at_the_stop(hanging_view: Any):
    view = hanging_view(MovePivot(0.05), LetGo(at_once=True))
    assert abs(view.angle_rad) > 0.3
    assert all(PICTURE.holds(place.body, 1.0) for place in places(view).values())


def test_clamped_weights_turn_with_the_bar_and_hung_ones_do_not(hanging_view: Any):
    view = replace(hanging_view(SetHold(1, "clamped")), angle_rad=0.2)
    canvas = ListCanvas((880, 656))
    draw_hanging_bar(canvas, PICTURE, view)
    angles = {op.body.name[0]: op.angle_rad for op in canvas.ops if isinstance(op, TurnedOp)}
    assert angles == {"bar": 0.2, "clamped": 0.2, "brass": 0.0}


def test_a_weight_on_its_way_is_shown_where_it_would_hang(hanging_view: Any):
    told = lines(hanging_view(ghost=Ghost(mass_kg=0.5, at_m=0.33)))
    assert "33.0 cm" in told
    assert "500" in told


def test_everything_that_moves_can_be_grabbed_by_a_finger(hanging_view: Any):
    view = hanging_view(numbers=True, outcome_shown=True, lines=True)
    bounds = grab_bounds(view, PICTURE)
    assert set(bounds) == {"pivot", "reference", "weight-1", "weight-2", "weight-3"}
    assert all(min(box.w, box.h) >= view.look.sizes.target for box in bounds.values())


def test_a_point_by_the_bar_means_a_place_and_one_beside_the_picture_none(hanging_view: Any):
    view = hanging_view()
    camera = stage_for(view.bench, PICTURE, view.look).camera
    assert place_at_m(view, PICTURE, (camera.x_px(0.6), 300)) == pytest.approx(0.6)
    assert place_at_m(view, PICTURE, (camera.x_px(1.001), 300)) == 1.0
    assert place_at_m(view, PICTURE, (camera.x_px(1.2), 300)) is None
    assert place_at_m(view, PICTURE, (camera.x_px(0.6), 600)) is None


def test_between_two_ticks_the_bar_is_drawn_between_two_angles(hanging_view: Any):
    bench = hanging_view(LetGo()).bench
    later = bench
    for _ in range(40):
        later = later.ticked()
    halfway = angle_between(bench, later, 0.5)
    assert halfway == pytest.approx(0.5 * (bench.swing.angle_rad + later.swing.angle_rad))
    assert angle_between(bench, later.stilled(), 0.5) == 0.0


def test_while_it_swings_no_words_hop_about(hanging_view: Any):
    shown = {"numbers": True, "outcome_shown": True, "lines": True}
    view = hanging_view(LetGo(), **shown)
    texts = [
        {(op.text, op.x, op.baseline) for op in drawn(replace(view, angle_rad=angle)) if isinstance(op, TextOp)}
        for angle in (0.0, -0.1, -0.2, -0.3)
    ]
    assert all(text == texts[0] for text in texts)


def test_the_arrow_of_the_turn_has_the_colour_of_its_sense(hanging_view: Any):
    for pivot_m, color in ((0.40, "clockwise"), (0.60, "anticlockwise")):
        view = hanging_view(MovePivot(pivot_m), LetGo(at_once=True), outcome_shown=True)
        (arrow,) = [op for op in drawn(view) if isinstance(op, ArcOp)]
        assert arrow.color == view.look.theme.color(color)
        assert (arrow.sweep_rad > 0) == (color == "anticlockwise")


@pytest.mark.parametrize("at_m", [0.02, 0.25, 0.5, 0.8, 0.98])
@pytest.mark.parametrize("high_px", [280.0, 400.0, 700.0])
def test_the_whole_bar_stays_in_the_picture_at_the_stop(hanging_view: Any, at_m: float, high_px: float):
    view = hanging_view(MovePivot(at_m), LetGo(at_once=True))
    frame = Rect(0.0, 64.0, 700.0, high_px)
    stage = stage_for(view.bench, frame, view.look)
    for end_m in (view.bench.bar.left_m, view.bench.bar.right_m):
        x, y = stage.hook_px(view, end_m)
        assert frame.x <= x <= frame.right
        assert y + stage.bar.h / 2 <= frame.bottom


@pytest.mark.parametrize("text_scale", [1.0, 1.5, 2.0])
def test_the_unit_stands_after_the_last_number_of_the_rule(hanging_view: Any, text_scale: float):
    canvas = ListCanvas((500, 400))
    draw_hanging_bar(canvas, Rect(0.0, 0.0, 500.0, 400.0), hanging_view(text_scale=text_scale))
    boxes = {op.text: op.box for op in canvas.ops if isinstance(op, TextOp)}
    assert boxes["cm"].x > boxes["100"].right
    assert boxes["cm"].y == boxes["100"].y
