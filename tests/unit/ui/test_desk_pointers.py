"""Fingers and the mouse on a desk: acting on release, two at a time, dragging, scrolling."""

import pytest

from lab.outline import find
from lab.ui import Rect
from lab.ui.events import FocusLost, Key, PointerCancel, PointerDown, PointerMove, PointerUp, Wheel
from lab.ui.outcomes import (
    Changed,
    Chosen,
    DragBegan,
    DragCancelled,
    Dragged,
    Dropped,
    Pressed,
    Scrolled,
    Tapped,
)
from lab.ui.widgets import (
    Button,
    ChoiceRow,
    Column,
    Handle,
    NumberField,
    Picture,
    Row,
    Scroll,
    Sized,
    Slider,
    Table,
    TableColumn,
    TableRow,
    Tray,
    TrayItem,
)

HOOK = Rect(300, 200, 20, 20)
POLE = Rect(500, 200, 200, 30)


def tree(**changes):
    """A picture with two bodies, beside it one widget of each kind that is pressed."""
    picture = Picture(
        "picture",
        "bench",
        lambda canvas, rect: None,
        lambda rect: (
            Handle("pole", "pole", "20 cm", POLE),
            Handle("hook", "hook", "2 cm", HOOK, ("move", "remove", "press")),
        ),
    )
    value = changes.get("value", 3.0)
    side = Column(
        (
            Button("go", changes.get("go", "Let go"), kind="main"),
            Button("off", "Undo", enabled=False),
            ChoiceRow("guess", "Which end?", (("left", "left"), ("right", "right")), "left"),
            Slider("time", "Time", 0.0, 10.0, 1.0, value, "3 min"),
            NumberField("place", "Place", 4.0, "cm", 0.0, 40.0, 0.5, 1),
            Table(
                "sum",
                (TableColumn("part", "start"), TableColumn("g")),
                (TableRow("bar", ("bar", "150")),),
                pickable=True,
            ),
            Tray(
                "tray",
                "Hang",
                items=(
                    TrayItem("w50", "50 g", lambda canvas, rect: None),
                    TrayItem("w100", "100 g", lambda canvas, rect: None),
                ),
            ),
        )
    )
    return Row((picture, Sized(side, width=400)), weights=(1, 0))


@pytest.fixture
def bench(desk):
    desk.show(tree())
    return desk


def tap(desk, at, pointer=0, time_ms=None):
    desk.handle(PointerDown(pointer, *at, time_ms=time_ms))
    return desk.handle(PointerUp(pointer, *at, time_ms=time_ms))


@pytest.mark.parametrize(
    ("key", "event"),
    [
        ("go", Pressed("go")),
        ("guess.right", Chosen("guess", "right")),
        ("place.more", Changed("place", 4.5)),
        ("place.less", Changed("place", 3.5)),
        ("time.more", Changed("time", 4.0)),
        ("bar", Chosen("sum", "bar")),
        ("w50", Pressed("w50")),
        ("hook", Pressed("hook")),
    ],
)
def test_a_tap_reports_what_was_tapped(bench, key, event):
    assert tap(bench, bench.rect(key).center) == (event,)


def test_nothing_happens_before_the_release(bench):
    assert bench.handle(PointerDown(0, *bench.rect("go").center)) == ()
    assert bench.consumed


def test_sliding_off_a_button_cancels_the_press(bench):
    bench.handle(PointerDown(0, *bench.rect("go").center))
    bench.handle(PointerMove(0, 10, 600))
    assert bench.handle(PointerUp(0, 10, 600)) == ()


def test_sliding_off_and_back_presses_after_all(bench):
    at = bench.rect("go").center
    bench.handle(PointerDown(0, *at))
    bench.handle(PointerMove(0, 10, 600))
    bench.handle(PointerMove(0, *at))
    assert bench.handle(PointerUp(0, *at)) == (Pressed("go"),)


def test_a_disabled_button_swallows_the_tap(bench):
    assert tap(bench, bench.rect("off").center) == ()


def test_a_small_body_is_hit_within_a_whole_target_round_it(bench):
    # 20 px wide, a target is 48: 14 px beyond its edge still hit.
    assert tap(bench, (HOOK.right + 12, HOOK.center[1])) == (Pressed("hook"),)
    missed = (HOOK.right + 20, HOOK.center[1])
    assert tap(bench, missed) == (Tapped("picture", missed),)


def test_a_bare_place_of_a_picture_reports_where(bench):
    assert tap(bench, (100, 600)) == (Tapped("picture", (100, 600)),)


def test_a_body_is_dragged_beyond_the_threshold_only(bench):
    x, y = HOOK.center
    bench.handle(PointerDown(0, x, y))
    assert bench.handle(PointerMove(0, x + 5, y)) == ()
    assert bench.handle(PointerMove(0, x + 30, y)) == (DragBegan("hook", (x + 30, y), 0, "picture"),)
    assert bench.handle(PointerMove(0, x + 60, y)) == (Dragged("hook", (x + 60, y), 0, "picture"),)
    assert bench.handle(PointerUp(0, x + 60, y)) == (Dropped("hook", (x + 60, y), 0, "picture"),)


def test_two_fingers_hold_two_bodies_and_both_move(bench):
    bench.handle(PointerDown(1, *HOOK.center))
    bench.handle(PointerDown(2, *POLE.center))
    assert bench.handle(PointerMove(1, 100, 210))[0].key == "hook"
    assert bench.handle(PointerMove(2, 650, 300))[0].key == "pole"
    assert bench.handle(PointerUp(1, 100, 210)) == (Dropped("hook", (100, 210), 1, "picture"),)
    assert bench.handle(PointerUp(2, 650, 300)) == (Dropped("pole", (650, 300), 2, "picture"),)


def test_a_second_finger_on_the_same_thing_does_nothing(bench):
    at = bench.rect("go").center
    bench.handle(PointerDown(1, *at))
    assert tap(bench, at, pointer=2) == ()
    assert bench.handle(PointerUp(1, *at)) == (Pressed("go"),)


def test_a_tray_item_comes_along_out_of_its_tray(bench):
    bench.handle(PointerDown(0, *bench.rect("w50").center))
    assert bench.handle(PointerMove(0, 300, 300)) == (DragBegan("w50", (300, 300), 0, "tray"),)
    assert bench.handle(PointerUp(0, 310, 300)) == (Dropped("w50", (310, 300), 0, "tray"),)


@pytest.mark.parametrize("lost", [PointerCancel(0), FocusLost(), Key("escape")])
def test_a_lost_pointer_or_escape_sends_a_dragged_body_back(bench, lost):
    bench.handle(PointerDown(0, *HOOK.center))
    bench.handle(PointerMove(0, 100, 300))
    assert bench.handle(lost) == (DragCancelled("hook", (100, 300), 0, "picture"),)
    assert bench.handle(PointerUp(0, 100, 300)) == ()


def test_a_drag_goes_on_when_a_new_tree_is_shown_under_it(bench):
    bench.handle(PointerDown(0, *HOOK.center))
    bench.handle(PointerMove(0, 100, 300))
    bench.show(tree(go="Hold still"))
    assert bench.handle(PointerUp(0, 120, 300)) == (Dropped("hook", (120, 300), 0, "picture"),)


def test_a_slider_follows_the_pointer_on_its_steps(bench):
    track = bench.rect("time")
    bench.handle(PointerDown(0, *track.center))
    moved = bench.handle(PointerMove(0, track.right, track.center[1]))
    assert moved == (Changed("time", 10.0),)
    assert bench.handle(PointerMove(0, track.x - 500, track.center[1])) == (Changed("time", 0.0),)


def test_a_tap_on_a_slider_goes_there(bench):
    track = bench.rect("time")
    assert tap(bench, track.center) == (Changed("time", 5.0),)


def test_a_double_tap_does_not_press_what_has_just_appeared(desk):
    desk.show(Button("lock", "Lock it in"))
    at = (640, 360)
    assert tap(desk, at, time_ms=1000) == (Pressed("lock"),)
    desk.show(Button("next", "Next"))
    assert tap(desk, at, time_ms=1200) == ()
    assert tap(desk, at, time_ms=2000) == (Pressed("next"),)


def test_tapping_the_same_button_quickly_counts_each_time(desk):
    desk.show(Button("more", "More"))
    assert tap(desk, (640, 360), time_ms=1000) == (Pressed("more"),)
    assert tap(desk, (640, 360), time_ms=1100) == (Pressed("more"),)


def long_column(count=30):
    return Scroll("list", Column(tuple(Button(f"b{n}", f"Lesson {n}") for n in range(count))))


def test_the_wheel_and_a_finger_scroll_within_the_ends(desk):
    desk.show(long_column())
    assert desk.handle(Wheel(640, 360, -1.0)) == (Scrolled("list", 64.0),)
    assert desk.handle(Wheel(640, 360, 99.0)) == (Scrolled("list", 0.0),)
    desk.handle(PointerDown(0, 640, 500))
    assert desk.handle(PointerMove(0, 640, 300)) == (Scrolled("list", 200.0),)
    assert desk.handle(PointerUp(0, 640, 300)) == ()
    assert desk.handle(Wheel(640, 360, 99.0)) == (Scrolled("list", 0.0),)


def test_a_button_scrolled_out_of_sight_cannot_be_hit(desk):
    desk.show(Column((Button("top", "Top"), long_column()), weights=(0, 1)))
    desk.handle(Wheel(640, 360, -2.0))
    covered = desk.rect("b1")
    assert covered.y < desk.rect("list").y
    assert tap(desk, desk.rect("top").center) == (Pressed("top"),)


def test_the_mouse_moving_without_a_button_does_nothing(bench):
    assert bench.handle(PointerMove(0, 300, 300)) == ()
    assert not bench.consumed


def moving(x, name="Let go"):
    """A tree in which only a body of the picture moves."""
    body = Rect(x, 300, 20, 20)
    picture = Picture(
        "picture",
        "bench",
        lambda canvas, rect: canvas.box(body, fill="#C9A24B"),
        lambda rect: (Handle("hook", "hook", f"{x}", body),),
        value=f"hook at {x}",
    )
    return Row((picture, Button("go", name)), weights=(1, 0))


def test_a_body_that_moved_is_hit_drawn_and_told_where_it_is_now(desk, canvas):
    desk.show(moving(100))
    button = desk.rect("go")
    desk.show(moving(400))
    assert desk.rect("go") == button
    assert tap(desk, (410, 310)) == (Pressed("hook"),)
    assert tap(desk, (110, 310)) == (Tapped("picture", (110, 310)),)
    desk.draw(canvas)
    assert Rect(400, 300, 20, 20) in [op.bounds for op in canvas.ops]
    assert find(desk.outline(), "hook").value == "400"
    assert find(desk.outline(), "picture").value == "hook at 400"


def test_a_changed_word_beside_a_picture_is_laid_out_anew(desk):
    desk.show(moving(100))
    narrow = desk.rect("go").w
    desk.show(moving(100, "Hold it still until it has settled"))
    assert desk.rect("go").w > narrow
