"""Turning areas: arm wide, weight high; level means equal area."""

from typing import Any

import pytest

from lab.scenes.hanging_view import stage_for
from lab.scenes.turning_areas import (
    draw_turning_areas,
    plot_of,
    side_sums_kg_m,
    stacked_rects,
    turning_areas,
    turning_view,
)
from lab.simulation import Hang, MovePivot, MoveReference
from lab.ui.geometry import Rect
from lab.ui.list_canvas import ListCanvas

BODY = Rect(20, 40, 840, 110)
PICTURE = Rect(0, 0, 880, 478)


def test_each_part_turns_by_its_weight_times_its_arm(hanging_view: Any):
    areas = turning_areas(hanging_view().bench)
    # By hand, about 40 cm: bar 150 g x 10, brass 200 g x 25 to the left, 100 g x 32, 50 g x 50.
    told = [(area.name, area.left, round(area.moment_kg_m * 1e5, 6)) for area in areas]
    assert told == [
        ("bar", False, 1500.0),
        ("brass 200", True, 5000.0),
        ("brass 100", False, 3200.0),
        ("brass 50", False, 2500.0),
    ]


def test_the_sides_add_up_to_what_turns_the_bar(hanging_view: Any):
    bench = hanging_view(Hang(0.5, 0.0), Hang(0.1, 1.0)).bench
    left, right = side_sums_kg_m(bench)
    # The same terms in another order: round-off only.
    assert left - right == pytest.approx(bench.turn.moment_kg_m, abs=1e-15)


def test_what_hangs_at_the_pivot_has_no_area(hanging_view: Any):
    names = [area.name for area in turning_areas(hanging_view(MovePivot(0.72)).bench)]
    assert "brass 100" not in names


def test_the_reference_line_changes_no_area(hanging_view: Any):
    assert turning_areas(hanging_view(MoveReference(0.3)).bench) == turning_areas(hanging_view().bench)


def test_drawn_areas_are_to_each_other_as_the_moments(hanging_view: Any):
    view = turning_view(hanging_view())
    per_moment = [box.area / area.moment_kg_m for area, box in stacked_rects(view, plot_of(view, BODY, None))]
    # One scale along and one up: products of floats, nothing else.
    assert per_moment == pytest.approx([per_moment[0]] * len(per_moment), rel=1e-9)


def test_under_the_bar_each_rectangle_ends_below_its_weight(hanging_view: Any):
    hanging = hanging_view()
    view, camera = turning_view(hanging), stage_for(hanging.bench, PICTURE, hanging.look).camera
    placed = {area.name: box for area, box in stacked_rects(view, plot_of(view, BODY, camera))}
    assert placed["brass 200"].x == pytest.approx(camera.x_px(0.15), abs=1e-6)
    assert placed["brass 50"].right == pytest.approx(camera.x_px(0.90), abs=1e-6)


def test_no_rectangle_lies_on_another(hanging_view: Any):
    view = turning_view(hanging_view(*(Hang(0.05, place / 100) for place in range(0, 100, 7))))
    boxes = [box.inset(1e-6) for _, box in stacked_rects(view, plot_of(view, BODY, None))]
    assert not any(one.intersects(other) for i, one in enumerate(boxes) for other in boxes[:i])


def test_sides_are_told_apart_by_word_and_hatch(hanging_view: Any):
    canvas = ListCanvas((880, 178))
    draw_turning_areas(canvas, Rect(0, 0, 880, 178), turning_view(hanging_view()))
    assert {"anticlockwise", "clockwise"} <= set(canvas.text_lines())
    assert {op.rising for op in canvas.ops if type(op).__name__ == "HatchOp"} == {True, False}
