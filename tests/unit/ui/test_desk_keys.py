"""The keyboard on a desk: everything can be reached, and done, without a pointer."""

import pytest

from lab.outline import find, walk
from lab.ui import Rect
from lab.ui.events import Key, PointerDown, PointerUp, Text
from lab.ui.outcomes import Changed, Chosen, Escaped, Nudged, Pressed, Removed, Scrolled
from lab.ui.widgets import (
    Button,
    ChoiceRow,
    Column,
    Dialog,
    Handle,
    NumberField,
    Picture,
    Scroll,
    Slider,
    Toast,
    Tray,
    TrayItem,
)


def tree(*extra):
    handle = Handle("hook", "hook", "2 cm", Rect(300, 20, 40, 40), ("move", "remove", "press"))
    return Column(
        (
            Picture("picture", "bench", lambda canvas, rect: None, lambda rect: (handle,), least=(200, 100)),
            Button("go", "Let go"),
            Button("off", "Undo", enabled=False),
            ChoiceRow("guess", "Which end?", (("l", "left"), ("e", "level"), ("r", "right")), "e"),
            Slider("time", "Time", 0.0, 10.0, 1.0, 3.0, "3 min"),
            NumberField("place", "Place", 4.0, "cm", 0.0, 40.0, 0.5, 1),
            Tray("tray", "Hang", items=tuple(TrayItem(k, k, lambda c, r: None) for k in ("w1", "w2"))),
            *extra,
        )
    )


@pytest.fixture
def bench(desk):
    desk.show(tree())
    return desk


def keys(desk, *names):
    """All that is reported for keys in a row."""
    return tuple(event for name in names for event in desk.handle(Key(name)))


def test_tab_goes_through_the_tree_in_order_and_round(bench):
    reached = []
    for _ in range(8):
        bench.handle(Key("tab"))
        reached.append(bench.focused)
    assert reached == ["hook", "go", "guess.e", "time", "place", "w1", "w2", "hook"]


def test_shift_tab_goes_back(bench):
    bench.handle(Key("tab", shift=True))
    assert bench.focused == "w2"
    bench.handle(Key("tab", shift=True))
    assert bench.focused == "w1"


@pytest.mark.parametrize("name", ["enter", "space"])
def test_enter_and_space_press_what_has_the_focus(bench, name):
    bench.focus("go")
    assert keys(bench, name) == (Pressed("go"),)


def test_a_key_held_down_presses_once(bench):
    bench.focus("go")
    assert bench.handle(Key("enter", repeat=True)) == ()


def test_arrows_choose_within_a_choice_row_and_go_round(bench):
    bench.focus("guess.e")
    assert keys(bench, "right") == (Chosen("guess", "r"),)
    assert bench.focused == "guess.r"
    assert keys(bench, "right") == (Chosen("guess", "l"),)


@pytest.mark.parametrize(
    ("key", "value"), [("right", 4.0), ("down", 2.0), ("home", 0.0), ("end", 10.0), ("page up", 10.0)]
)
def test_arrows_step_a_slider(bench, key, value):
    bench.focus("time")
    assert keys(bench, key) == (Changed("time", value),)


def test_arrows_nudge_a_body_along_its_axis_only(bench):
    bench.focus("hook")
    assert keys(bench, "left") == (Nudged("hook", -1, 0),)
    assert bench.handle(Key("right", shift=True)) == (Nudged("hook", 1, 0, large=True),)
    assert keys(bench, "up") == ()
    assert keys(bench, "delete") == (Removed("hook"),)
    assert keys(bench, "enter") == (Pressed("hook"),)


def test_escape_leaves_the_screen(bench):
    assert keys(bench, "escape") == (Escaped(""),)


def test_a_key_that_means_nothing_is_left_to_the_screen(bench):
    assert bench.handle(Key("z", ctrl=True)) == ()
    assert not bench.consumed


def test_the_focus_is_seen_only_after_the_keyboard_was_used(bench):
    bench.focus("go")
    assert "focused" not in find(bench.outline(), "go").state
    bench.handle(Key("tab"))
    assert bench.by_keyboard
    assert "focused" in find(bench.outline(), "guess.e").state
    bench.handle(PointerDown(0, 5, 715))
    bench.handle(PointerUp(0, 5, 715))
    assert not any("focused" in node.state for node in walk(bench.outline()))


def test_the_ring_is_drawn_outside_the_control_in_the_focus_colour(bench, canvas, look):
    bench.focus("go")
    bench.handle(Key("tab", shift=True))
    bench.handle(Key("tab"))
    bench.draw(canvas)
    ring = canvas.ops[-1]
    assert ring.outline == look.theme.focus
    assert ring.width >= 2
    assert ring.bounds.holds(bench.rect("go"))


def test_the_focus_is_kept_by_key_when_the_tree_changes(bench):
    bench.focus("time")
    bench.show(tree(Button("more", "More")))
    assert bench.focused == "time"


def test_a_vanished_control_hands_the_focus_to_what_took_its_place(desk):
    desk.show(Column((Button("a", "A"), Button("lock", "Lock it in"), Button("z", "Z"))))
    desk.handle(Key("tab"))
    desk.handle(Key("tab"))
    desk.show(Column((Button("a", "A"), Button("next", "Next"), Button("z", "Z"))))
    assert desk.focused == "next"


def test_a_dialog_keeps_focus_and_pointer_until_it_is_left(bench):
    bench.focus("time")
    bench.handle(Key("tab"))
    dialog = Dialog("leave", "Leave?", "Not saved.", buttons=(Button("no", "Stay"), Button("yes", "Leave")))
    go = bench.rect("go").center
    bench.show(tree(), dialog=dialog)
    assert bench.focused == "no"
    reached = set()
    for _ in range(4):
        bench.handle(Key("tab"))
        reached.add(bench.focused)
    assert reached == {"no", "yes"}
    bench.handle(PointerDown(0, *go))
    assert bench.handle(PointerUp(0, *go)) == ()
    assert keys(bench, "escape") == (Escaped("leave"),)
    bench.show(tree())
    assert bench.focused == "place"


def test_the_buttons_of_a_dialog_higher_than_the_window_stay_in_sight(bench):
    lines = tuple(Button(f"line-{number}", "A line") for number in range(40))
    bench.show(tree(), dialog=Dialog("long", "All of it", children=lines, buttons=(Button("done", "Done"),)))
    below = bench.rect("done")
    assert Rect(*find(bench.outline(), "long").bounds).holds(below)
    # Nothing that scrolls passes under it, and the focus still reaches all of it, the button last.
    reached = []
    for _ in range(len(lines)):
        bench.handle(Key("tab"))
        reached.append(bench.focused)
        assert bench.rect("done") == below
        assert bench.focused == "done" or bench.rect(bench.focused).bottom <= below.y
    assert reached[-1] == "done"


def test_buttons_that_take_most_of_the_window_scroll_with_the_rest(bench):
    buttons = tuple(Button(f"way-{number}", "a way to go " * 12) for number in range(30))
    bench.show(tree(), dialog=Dialog("many", "Where to?", buttons=buttons))
    scroll = find(bench.outline(), "many.scroll")
    assert find(scroll, "way-29") is not None


def test_a_toast_takes_no_focus_and_is_read_out(bench):
    bench.show(tree(), toast=Toast("saved", "Saved."))
    assert find(bench.outline(), "saved").role == "toast"
    bench.handle(Key("tab"))
    assert bench.focused == "hook"


def test_a_number_is_typed_with_comma_or_point(bench):
    for text in ("12,5", "12.5"):
        bench.focus("place")
        bench.handle(Text(text))
        assert find(bench.outline(), "keypad.typed").name == "12.5 cm"
        assert keys(bench, "enter") == (Changed("place", 12.5),)
        assert find(bench.outline(), "keypad") is None
        assert bench.focused == "place"


def test_the_keypad_opens_by_a_press_and_works_by_taps(bench):
    at = bench.rect("place").center
    bench.handle(PointerDown(0, *at))
    assert bench.handle(PointerUp(0, *at)) == ()
    events = []
    for name in ("keypad.1", "keypad.2", "keypad.rub out", "keypad..", "keypad.5", "keypad.done"):
        at = bench.rect(name).center
        bench.handle(PointerDown(0, *at))
        events.extend(bench.handle(PointerUp(0, *at)))
    assert events == [Changed("place", 1.5)]


@pytest.mark.parametrize("typed", ["", "400", "."])
def test_what_is_no_number_within_the_limits_stays_in_the_keypad(bench, typed):
    bench.focus("place")
    bench.handle(Key("enter"))
    bench.handle(Text(typed))
    bench.focus("keypad.done")
    assert keys(bench, "enter") == ()
    assert find(bench.outline(), "keypad") is not None
    assert keys(bench, "escape") == ()
    assert find(bench.outline(), "keypad") is None


def test_a_sign_is_taken_only_where_the_field_goes_below_nought(desk):
    for low, shown in ((0.0, "5 cm"), (-10.0, "\N{MINUS SIGN}5 cm")):
        desk.show(NumberField("x", "x", None, "cm", low, 10.0, 1.0))
        desk.focus("x")
        desk.handle(Text("-5"))
        assert find(desk.outline(), "keypad.typed").name == shown
        desk.handle(Key("escape"))


def test_an_unanswered_number_starts_at_its_lower_end(desk):
    desk.show(NumberField("x", "x", None, "cm", 0.0, 40.0, 0.5, 1))
    assert find(desk.outline(), "x").value == "? cm"
    desk.focus("x")
    assert keys(desk, "right") == (Changed("x", 0.5),)


def test_the_focus_scrolls_what_it_reaches_into_view(desk):
    desk.show(Scroll("list", Column(tuple(Button(f"b{n}", f"Lesson {n}") for n in range(40)))))
    desk.handle(Key("tab", shift=True))
    assert desk.focused == "b39"
    assert 0 <= desk.rect("b39").y <= 720 - 48
    desk.handle(Key("tab"))
    assert desk.rect("b0").y >= 0


def test_page_keys_scroll_where_nothing_else_wants_them(desk):
    desk.show(Scroll("list", Column(tuple(Button(f"b{n}", f"Lesson {n}") for n in range(40)))))
    assert keys(desk, "page down") == (Scrolled("list", 576.0),)
    assert keys(desk, "home") == (Scrolled("list", 0.0),)
