"""The list canvas: everything drawn is kept with its bounds and its clip; nothing that is no number gets in."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lab.ui import ListCanvas, Rect
from lab.ui.damage import changed_rects, first_needed
from lab.ui.list_canvas import turned_corners
from lab.ui.ops import BoxOp, TextOp

WINDOW = Rect(0, 0, 400, 300)


def drawn(*boxes):
    canvas = ListCanvas((400, 300))
    canvas.box(WINDOW, fill="#F5F1E8")
    for box in boxes:
        canvas.box(Rect(*box), fill="#1E2A35")
    return canvas.ops


def test_text_is_kept_line_by_line_with_that_on_turned_bodies():
    canvas = ListCanvas((400, 300))
    canvas.text("Moment table", (10, 10), size=18, color="#1E2A35")
    canvas.turned(
        "hook",
        (80, 40),
        lambda body: body.text("480", (40, 20), size=15, color="#1E2A35"),
        at=(200, 150),
        grip=(0, 0),
        angle_rad=0.3,
    )
    assert canvas.text_lines() == ["Moment table", "480"]


@pytest.mark.parametrize(
    ("anchor", "left", "baseline"),
    [("left baseline", 100, 50), ("right baseline", 100 - 22, 50), ("center baseline", 89, 50)],
)
def test_text_is_anchored_where_it_was_asked_for(anchor, left, baseline):
    canvas = ListCanvas((400, 300))
    width, _ = canvas.text_size("44", size=18)
    assert width == 22
    canvas.text("44", (100, 50), size=18, color="#000000", anchor=anchor)
    assert (canvas.ops[0].x, canvas.ops[0].baseline) == (left, baseline)


def test_middle_centres_figures_on_the_point():
    canvas = ListCanvas((400, 300))
    canvas.text("44", (100, 50), size=40, color="#000000", anchor="center middle")
    # Figures are 0.713 of the size high; half a pixel of rounding.
    assert canvas.ops[0].baseline - 0.713 * 40 / 2 == pytest.approx(50, abs=0.5)


def test_what_lies_outside_the_clip_is_not_kept_and_clips_nest():
    canvas = ListCanvas((400, 300))
    with canvas.clipped(Rect(0, 0, 100, 100)), canvas.clipped(Rect(50, 50, 100, 100)):
        canvas.box(Rect(0, 0, 40, 40), fill="#000000")
        canvas.box(Rect(60, 60, 40, 40), fill="#000000")
    assert [op.clip for op in canvas.ops] == [Rect(50, 50, 50, 50)]
    canvas.box(Rect(0, 0, 40, 40), fill="#000000")
    assert canvas.ops[-1].clip is None


@pytest.mark.parametrize("bad", [math.nan, math.inf])
def test_a_place_that_is_no_number_is_refused(bad):
    canvas = ListCanvas((400, 300))
    for draw in (
        lambda: canvas.box(Rect(bad, 0, 10, 10), fill="#000000"),
        lambda: canvas.line([(0, 0), (bad, 0)], "#000000"),
        lambda: canvas.circle((bad, 0), 4, fill="#000000"),
        lambda: canvas.text("x", (0, bad), size=18, color="#000000"),
        lambda: canvas.turned("b", (1, 1), lambda c: None, at=(0, 0), grip=(0, 0), angle_rad=bad),
    ):
        with pytest.raises(ValueError, match="finite"):
            draw()
    assert canvas.ops == []


def test_turning_is_anticlockwise_as_seen_and_keeps_the_grip_in_place():
    corners = turned_corners((100, 0), (200, 150), (0, 0), math.pi / 6)
    assert corners[0] == (200, 150)
    # Screens count y downwards: anticlockwise lifts the right end.
    assert corners[1] == pytest.approx((200 + 86.6025, 150 - 50), abs=1e-4)


def test_nothing_is_repainted_where_nothing_changed():
    assert changed_rects(drawn((10, 10, 40, 40)), drawn((10, 10, 40, 40)), WINDOW) == []


def test_a_moved_box_damages_where_it_was_and_where_it_is():
    rects = changed_rects(drawn((0, 0, 20, 20)), drawn((300, 250, 20, 20)), WINDOW)
    assert sum(rect.area for rect in rects) < 0.1 * WINDOW.area
    for place in (Rect(0, 0, 20, 20), Rect(300, 250, 20, 20)):
        assert any(rect.holds(place) for rect in rects)


def test_two_boxes_that_change_places_in_the_order_are_repainted():
    one, two = (0, 0, 60, 60), (30, 30, 60, 60)
    assert changed_rects(drawn(one, two), drawn(two, one), WINDOW) != []


BOXES = st.lists(
    st.tuples(st.integers(0, 380), st.integers(0, 280), st.integers(1, 90), st.integers(1, 90)), max_size=12
)


@given(BOXES, BOXES)
def test_every_box_that_is_in_one_list_only_is_damaged(before, after):
    old, new = drawn(*before), drawn(*after)
    rects = changed_rects(old, new, WINDOW)
    for op in set(old) ^ set(new):
        seen = op.bounds.common(WINDOW)
        points = [(x, y) for x in (seen.x, seen.right - 1) for y in (seen.y, seen.bottom - 1)]
        assert all(any(rect.contains(point) for rect in rects) for point in points)


def test_drawing_starts_at_the_last_box_that_hides_the_rest():
    ops = drawn((0, 0, 50, 50), (200, 100, 100, 100))
    assert first_needed(ops, Rect(210, 110, 20, 20)) == 2
    assert first_needed(ops, Rect(190, 110, 20, 20)) == 0
    assert isinstance(ops[2], BoxOp)
    assert not isinstance(ops[2], TextOp)
