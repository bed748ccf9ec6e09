"""Every widget in every theme, text size, language and window: nothing clipped, overlapping, faint or too small."""

import pytest

from lab.outline import Words, walk
from lab.ui import THEMES, Desk, ListCanvas, Look, Rect, Sizes
from lab.ui.events import Key, Text
from lab.ui.layout_check import faults_on
from lab.ui.widgets import (
    Button,
    ChoiceRow,
    Column,
    Dialog,
    Label,
    NumberField,
    Panel,
    Picture,
    Progress,
    Row,
    Scroll,
    Sized,
    Slider,
    Steps,
    Table,
    TableColumn,
    TableRow,
    Toast,
    Tray,
    TrayItem,
    header,
)

WINDOWS = ((1280, 720), (1024, 600), (3840, 2160), (1080, 1920))
SCALES = (1.0, 1.5, 2.0)
LANGUAGES = ("en", "xx", "xr")


def look_of(theme, window, scale, language, **sizes):
    words = Words(language)
    return Look(THEMES[theme], Sizes(*window, scale, mirrored=words.mirrored, **sizes), words)


def moments(say):
    columns = (
        TableColumn(say("part"), "start"),
        TableColumn(say("weight g")),
        TableColumn(say("arm cm")),
        TableColumn(say("moment g·cm")),
    )
    rows = (
        TableRow("pole", (say("pole"), "120", "20.0", "2\u202f400"), picked=True),
        TableRow("hook", (say("hook"), "480", "2.0", "960")),
        TableRow("sum", (say("sum"), "600", "", "3\u202f360"), kind="sum"),
    )
    return Table("table", columns, rows, name=say("Moment table"))


def brass(look):
    def draw(canvas, rect):
        canvas.box(rect.inset(rect.w / 3, 4), fill=look.theme.brass, outline=look.theme.brass_edge, width=2)

    return draw


def side(look):
    say = look.words.say
    items = tuple(TrayItem(f"w{g}", say("{g} g", g=str(g)), brass(look)) for g in (50, 100, 200, 500))
    result = Row(
        (
            Label("a", "3\u202f360 ÷ 600", middle=True),
            Label("b", say("balances at {x} cm", x="5.6"), style="strong", align="end", middle=True),
        ),
        weights=(0, 1),
    )
    return Panel(
        "side",
        title=say("Moment table"),
        note=say("from the reference line"),
        edge="left",
        children=(
            moments(say),
            Panel("result", children=(result,), fill="paper", pad=12, round=True),
            Steps("steps", (say("Predict"), say("Let go"), say("Explain")), 1),
            Label("text", say("The pole weighs {w} g and is {l} cm long.", w="120", l="40")),
            ChoiceRow("sure", say("How sure are you?"), tuple((v, say(v)) for v in ("guess", "fairly", "certain"))),
            Button("go", say("Lock it in"), kind="main"),
            Row((Button("undo", say("Undo"), icon="undo"), Button("redo", say("Redo"), icon="redo", enabled=False))),
            NumberField("place", say("Pivot at"), 9.6, "cm", -10.0, 100.0, 0.1, 1),
            Slider("time", say("Since take-off"), 0, 30, 1, 18, say("{n} min", n="18"), "0", "30"),
            Tray("tray", say("Hang"), say("drag, or tap it and tap the bar"), items),
            Progress("progress", ("right", "wrong", "now", "open"), say("question {a} of {b}", a="3", b="4")),
        ),
    )


def page(look):
    say = look.words.say
    quiet = [Button(key, say(text), kind="quiet") for key, text in (("aa", "Aa"), ("sound", "Sound on"), ("help", "?"))]
    top = header(look, title=say("Hanging bar"), trail=say("Free build"), actions=tuple(quiet))
    picture = Picture("picture", say("bench"), lambda canvas, rect: canvas.box(rect, fill=look.theme.paper))
    if look.sizes.portrait:
        body = Column((picture, Scroll("scroll", side(look))), gap=0, weights=(1, 2))
    else:
        body = Row((picture, Sized(Scroll("scroll", side(look)), width=440)), gap=0, weights=(1, 0))
    return Column((top, body), gap=0, weights=(0, 1))


def faults_of(desk):
    canvas = ListCanvas((int(desk.look.sizes.width), int(desk.look.sizes.height)))
    desk.draw(canvas)
    return faults_on(canvas.ops, desk.outline(), desk.look)


@pytest.mark.parametrize("scale", SCALES)
@pytest.mark.parametrize("window", WINDOWS)
@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("theme", THEMES)
def test_the_widgets_fit_at_every_size_in_every_language(theme, language, window, scale):
    look = look_of(theme, window, scale, language)
    desk = Desk(look)
    desk.show(page(look))
    faults = faults_of(desk)
    for _ in range(12):
        desk.handle(Key("page down"))
        faults += faults_of(desk)
    assert faults == []


@pytest.mark.parametrize("scale", SCALES)
@pytest.mark.parametrize("window", WINDOWS)
@pytest.mark.parametrize("language", LANGUAGES)
def test_dialog_keypad_and_toast_fit_too(language, window, scale):
    look = look_of("paper", window, scale, language)
    say = look.words.say
    desk = Desk(look)
    question = Dialog(
        "leave",
        say("Leave the build?"),
        say("It is not saved yet. What you hung will be gone."),
        buttons=(Button("stay", say("Stay here")), Button("leave", say("Leave"), kind="main")),
    )
    desk.show(page(look), dialog=question)
    faults = faults_of(desk)
    desk.show(page(look), toast=Toast("toast", say("Saved as {name}.", name="boat hook"), kind="warning"))
    faults += faults_of(desk)
    desk.show(page(look))
    desk.focus("place")
    desk.handle(Text("-12.5"))
    faults += faults_of(desk)
    assert faults == []


def test_on_a_kiosk_every_target_is_fifteen_millimetres():
    look = look_of("paper", (1280, 800), 1.0, "en", px_per_mm=5.88, touch=True, kiosk=True)
    desk = Desk(look)
    desk.show(page(look))
    sides = [min(node.bounds[2:]) for node in walk(desk.outline()) if node.role in ("button", "option", "item")]
    assert min(sides) >= 15 * 5.88 - 1
    assert faults_of(desk) == []


def test_a_screen_is_read_out_in_the_order_in_which_it_is_seen():
    look = look_of("paper", (1280, 720), 1.0, "en")
    desk = Desk(look)
    desk.show(page(look))
    names = [node.name for node in walk(desk.outline()) if node.role in ("button", "heading", "choice")]
    assert names[:3] == ["Back", "Hanging bar", "Aa"]
    assert names.index("How sure are you?") < names.index("Lock it in") < names.index("Undo")


def test_the_ring_round_the_focus_lies_within_the_window_on_every_stop():
    look = look_of("paper", (1024, 600), 2.0, "xx")
    desk = Desk(look)
    desk.show(page(look))
    window = Rect(0, 0, 1024, 600)
    for _ in range(24):
        desk.handle(Key("tab"))
        assert desk.rect(desk.focused).common(window).h >= 40
