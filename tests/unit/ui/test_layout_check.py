"""The layout check finds what an eye would, and keeps quiet about what is well."""

import pytest

from lab.outline import Node
from lab.ui import Desk, ListCanvas, Rect
from lab.ui.layout_check import faults_on
from lab.ui.widgets import Button, Column, Dialog, Scroll, Toast

INK, PAPER = "#1E2A35", "#F5F1E8"
NOTHING = Node("screen", "screen", "")


def faults(look, draw, outline=NOTHING):
    canvas = ListCanvas((1280, 720))
    canvas.box(Rect(0, 0, 1280, 720), fill=PAPER)
    draw(canvas)
    return faults_on(canvas.ops, outline, look)


def text(canvas, words, at, **how):
    canvas.text(words, at, **({"size": 18, "color": INK} | how))


def test_a_sound_picture_has_no_faults(look):
    assert faults(look, lambda c: text(c, "level", (20, 20))) == []


def test_text_that_leaves_the_window_is_found(look):
    assert faults(look, lambda c: text(c, "reference line", (1250, 20))) == [
        "text 'reference line' reaches out of the window"
    ]


def test_clipped_text_is_found(look):
    def draw(canvas):
        with canvas.clipped(Rect(0, 0, 60, 100)):
            text(canvas, "reference line", (20, 20))

    assert faults(look, draw) == ["text 'reference line' is clipped"]


def test_text_cut_by_the_end_of_a_scroll_column_is_no_fault_unless_it_is_cut_at_its_side(look):
    outline = Node(
        "screen",
        "screen",
        "",
        children=(Node("list", "panel", "", bounds=(0, 0, 200, 100), actions=("scroll",)),),
    )

    def below(canvas):
        with canvas.clipped(Rect(0, 0, 200, 100)):
            text(canvas, "level", (20, 85))

    def aside(canvas):
        with canvas.clipped(Rect(0, 0, 200, 100)):
            text(canvas, "level", (180, 20))

    assert faults(look, below, outline) == []
    assert faults(look, aside, outline) == ["text 'level' is clipped"]


def test_text_on_text_is_found_unless_a_box_lies_between(look):
    def upon(canvas):
        text(canvas, "15.0", (20, 20))
        text(canvas, "50.0", (30, 22))

    def between(canvas):
        text(canvas, "15.0", (20, 20))
        canvas.box(Rect(0, 0, 200, 60), fill=PAPER)
        text(canvas, "50.0", (30, 22))

    assert faults(look, upon) == ["text '50.0' lies on text '15.0'"]
    assert faults(look, between) == []


def test_text_half_under_a_box_is_found(look):
    def draw(canvas):
        text(canvas, "reference line", (20, 20))
        canvas.box(Rect(60, 0, 200, 60), fill=PAPER)

    assert faults(look, draw) == ["text 'reference line' is covered in part by a box"]


@pytest.mark.parametrize(
    ("color", "size", "count"), [("#D9D2C3", 18, 1), ("#5A6672", 18, 0), ("#8E8778", 18, 1), ("#8A8374", 26, 0)]
)
def test_faint_text_is_found_and_large_text_may_be_fainter(look, color, size, count):
    assert len(faults(look, lambda c: text(c, "soft", (20, 20), color=color, size=size))) == count


def test_contrast_is_taken_with_what_lies_right_under_the_text(look):
    def draw(canvas):
        canvas.box(Rect(10, 10, 200, 60), fill=INK, radius=8)
        text(canvas, "Let go", (40, 25))

    (fault,) = faults(look, draw)
    assert "a contrast of 1.00; 4.5 would do" in fault


def test_text_on_a_turned_body_is_checked_against_the_body(look):
    def body(canvas):
        canvas.box(Rect(0, 0, 80, 40), fill="#D8B98A")
        canvas.text("480", (40, 20), size=15, color="#FFFDF7", anchor="center middle")

    def draw(canvas):
        canvas.turned("hook", (80, 40), body, at=(300, 300), grip=(0, 0), angle_rad=0.2)

    (fault,) = faults(look, draw)
    assert fault.startswith("text '480' in #FFFDF7 on #D8B98A")


def test_targets_too_small_outside_or_upon_each_other_are_found(look):
    def button(key, *bounds):
        return Node(key, "button", key, bounds=bounds, actions=("press",))

    outline = Node(
        "screen",
        "screen",
        "",
        children=(
            button("small", 10, 10, 30, 48),
            button("out", 1260, 100, 48, 48),
            button("one", 100, 300, 100, 48),
            button("two", 180, 300, 100, 48),
        ),
    )
    assert faults(look, lambda c: None, outline) == [
        "button 'small' is 30 x 48 px; 48 would do",
        "button 'out' reaches out of the window",
        "button 'two' lies on button 'one'",
    ]


def test_what_waits_under_a_dialog_is_left_alone(look):
    desk = Desk(look)
    page = Scroll("list", Column(tuple(Button(f"b{n}", f"Lesson {n}") for n in range(30))))
    desk.show(page, dialog=Dialog("leave", "Leave?", buttons=(Button("no", "Stay"),)))
    canvas = ListCanvas((1280, 720))
    desk.draw(canvas)
    assert faults_on(canvas.ops, desk.outline(), look) == []


def test_a_toast_may_cover_what_is_under_it(look):
    desk = Desk(look)
    page = Scroll("list", Column(tuple(Button(f"b{n}", f"Lesson {n}") for n in range(30))))
    desk.show(page, toast=Toast("saved", "Saved as boat hook."))
    canvas = ListCanvas((1280, 720))
    desk.draw(canvas)
    assert faults_on(canvas.ops, desk.outline(), look) == []
