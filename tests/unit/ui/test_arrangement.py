"""Where widgets lie: sharing room, wrapping, mirroring, growing with the text."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lab.outline import Words, find
from lab.ui import THEMES, Desk, ListCanvas, Look, Rect, Sizes
from lab.ui.metrics import text_width
from lab.ui.paragraph import wrapped
from lab.ui.widgets import (
    Button,
    Column,
    Label,
    Picture,
    Row,
    Scroll,
    Sized,
    Steady,
    Table,
    TableColumn,
    TableRow,
    Tray,
    TrayItem,
)
from lab.ui.widgets.arrange import shared
from lab.ui.widgets.stepping import on_step


def look_of(width=1280, height=720, scale=1.0, language="en"):
    words = Words(language)
    return Look(THEMES["paper"], Sizes(width, height, scale, mirrored=words.mirrored), words)


def laid(widget, look):
    desk = Desk(look)
    desk.show(widget)
    return desk


@given(st.text(alphabet="abc defgh\n", max_size=80), st.integers(30, 300))
def test_wrapping_loses_no_letter_and_keeps_to_its_width(text, width):
    lines = wrapped(text, float(width), size=18)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "").replace("\n", "")
    assert all(text_width(line, size=18) <= width or len(line.strip()) <= 1 for line in lines)


@given(
    st.floats(0, 2000),
    st.lists(st.tuples(st.floats(0, 300), st.sampled_from([0.0, 1.0, 2.0])), min_size=1, max_size=6),
)
def test_shared_room_is_used_up_where_anything_has_a_weight(room, parts):
    wants, weights = [want for want, _ in parts], [weight for _, weight in parts]
    lengths = shared(room, wants, weights)
    assert all(length >= 0 for length in lengths)
    if any(weights) and room >= sum(wants):
        # Floats of a few thousand pixels added a few times.
        assert sum(lengths) == pytest.approx(room, abs=1e-6)
        assert all(length >= want - 1e-6 for length, want in zip(lengths, wants, strict=True))


@given(st.floats(-5, 50), st.sampled_from([0.1, 0.5, 1.0, 3.0]))
def test_a_stepped_value_lies_within_its_limits_on_a_step(value, step):
    stepped = on_step(value, 0.0, 40.0, step)
    assert 0.0 <= stepped <= 40.0
    assert stepped == 40.0 or abs(stepped / step - round(stepped / step)) < 1e-6


def test_a_row_goes_below_itself_where_it_is_too_narrow():
    row = Row((Button("a", "Anticlockwise"), Button("b", "Clockwise")))
    wide, narrow = laid(row, look_of()), laid(Sized(row, width=150), look_of(width=150))
    assert wide.rect("a").y == wide.rect("b").y
    assert narrow.rect("b").y >= narrow.rect("a").bottom


def test_buttons_of_a_row_are_eight_design_pixels_apart():
    desk = laid(Row((Button("a", "A"), Button("b", "B"))), look_of(2560, 1440))
    assert desk.rect("b").x - desk.rect("a").right == 16


def test_reading_from_right_to_left_mirrors_the_order():
    row = Row((Button("a", "A"), Button("b", "B")))
    plain, mirrored = laid(row, look_of()), laid(row, look_of(language="xr"))
    assert mirrored.rect("a") == plain.rect("a").mirrored_in(Rect(0, 0, 1280, 720))


def test_text_in_the_mirrored_language_starts_at_the_right():
    canvas = ListCanvas((1280, 720))
    laid(Label("l", "level"), look_of(language="xr")).draw(canvas)
    assert canvas.ops[-1].box.right == pytest.approx(1280, abs=1)


def test_a_button_grows_with_its_text():
    words = "Put the finger where it would hold the boat hook level"
    heights = [Button("b", words).height(look_of(scale=scale), 200) for scale in (1.0, 1.5, 2.0)]
    assert heights == sorted(heights)
    assert heights[0] > 48


def test_left_over_height_goes_to_the_weighted_child():
    desk = laid(Column((Button("a", "A"), Label("fill", ""), Button("z", "Z")), weights=(0, 1, 0)), look_of())
    assert desk.rect("z").bottom == 720


def table(kind="sum"):
    columns = (TableColumn("part", "start"), TableColumn("weight g"), TableColumn("moment g·cm"))
    rows = (TableRow("bar", ("bar", "150", "7\u202f500")), TableRow("sum", ("sum", "500", ""), kind=kind))
    return Table("t", columns, rows)


def test_a_table_too_narrow_for_its_columns_becomes_a_list_with_every_figure():
    canvas = ListCanvas((140, 720))
    laid(table(), look_of(width=140)).draw(canvas)
    assert canvas.text_lines() == ["bar", "weight g", "150", "moment g·cm", "7\u202f500", "sum", "weight g", "500"]


def test_headings_of_a_narrow_table_break_before_it_becomes_a_list():
    canvas = ListCanvas((180, 720))
    laid(table(), look_of(width=180)).draw(canvas)
    assert canvas.text_lines()[:5] == ["part", "weight g", "moment", "g·cm", "bar"]


def test_something_steady_keeps_the_height_of_what_takes_turns_with_it():
    short, long = Label("short", "bar"), Label("long", "a bar that hangs by a pin")
    look = look_of(width=90)
    assert Steady(short, (long,)).height(look, 90.0) == long.height(look, 90.0) > short.height(look, 90.0)


def test_a_number_takes_its_unit_to_the_next_line():
    room = text_width("A bar is 40", size=18.0, bold=False) + 4
    assert wrapped("A bar is 40 cm long.", room, size=18.0) == ("A bar is", "40 cm", "long.")


def test_figures_of_a_column_end_on_one_line():
    canvas = ListCanvas((400, 720))
    laid(table(), look_of(width=400)).draw(canvas)
    ends = {op.box.right for op in canvas.ops if getattr(op, "text", "") in ("150", "500")}
    assert len(ends) == 1


def test_a_row_of_a_table_is_read_out_with_its_headings():
    outline = laid(table(), look_of()).outline()
    assert [cell.name for cell in find(outline, "bar").children] == ["bar", "weight g 150", "moment g·cm 7\u202f500"]


def test_a_tray_breaks_into_rows_where_it_is_narrow():
    items = tuple(TrayItem(f"w{n}", f"{n} g", lambda canvas, rect: None) for n in (50, 100, 200, 500))
    desk = laid(Tray("tray", "Hang", items=items), look_of(width=150))
    assert desk.rect("w200").y > desk.rect("w50").y


def test_the_same_picture_is_recorded_once_and_looks_the_same_again():
    desk = laid(table(), look_of())
    first, second = ListCanvas((1280, 720)), ListCanvas((1280, 720))
    desk.draw(first)
    desk.draw(second)
    assert first.ops == second.ops


def test_a_scroll_column_leaves_its_share_to_the_picture_above_it():
    picture = Picture("picture", "bench", lambda canvas, rect: None, least=(200, 160))
    rows = Column(tuple(Button(f"b{n}", f"Lesson {n}") for n in range(60)))
    desk = laid(Column((picture, Scroll("list", rows)), gap=0, weights=(1, 2)), look_of())
    assert desk.rect("picture").h == 240
    assert desk.rect("list").h == 480


def test_where_room_is_short_everything_weighted_gives_way_alike():
    assert shared(100, [50, 100, 100], [0, 1, 1]) == [50, 25, 25]
    assert shared(0, [0, 1], [1, 0]) == [0, 1]
