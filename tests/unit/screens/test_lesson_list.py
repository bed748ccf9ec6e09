"""The list of lessons."""

from lab.outline import Words, find, spoken_lines
from lab.screens.intents import Back, Go
from lab.screens.lessons import LessonsScreen
from lab.screens.screen import LessonEntry, LessonsModel, Notice, Setting
from lab.ui.events import Key, PointerDown, PointerUp
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

ENTRIES = (
    LessonEntry(name="one", title="One finger", level="early", aim="It balances.", questions=6),
    LessonEntry(name="two", title="A tool", level="middle", aim="It does not.", questions=7, answered=3),
    LessonEntry(name="three", title="A net", level="later", aim="It may.", questions=1, answered=1),
)


def screen_with(entries=ENTRIES, notice=None) -> LessonsScreen:
    screen = LessonsScreen(Look(theme=THEMES["paper"], sizes=Sizes(1280, 720), words=Words()))
    screen.show(LessonsModel(setting=Setting(), lessons=entries, notice=notice))
    return screen


def test_each_lesson_says_its_title_aim_level_and_how_far_one_is():
    spoken = spoken_lines(screen_with().outline())
    assert "One finger, It balances. to begin with · 6 questions, button" in spoken
    assert "A tool, It does not. further on · 7 questions · 3 answered, button" in spoken
    assert "A net, It may. for those who know moments · 1 question · all answered, button" in spoken


def test_the_whole_row_is_the_target():
    screen = screen_with()
    node = find(screen.outline(), "lesson-two")
    assert node is not None
    x, y, w, h = node.bounds
    assert w > 700
    for at in ((x + 6, y + 6), (x + w - 6, y + h - 6), (x + w / 2, y + h / 2)):
        screen.handle(PointerDown(0, *at))
        assert screen.handle(PointerUp(0, *at)).intents == (Go(place="lesson", name="two"),)


def test_a_lesson_is_chosen_by_keys():
    screen = screen_with()
    for _ in range(10):
        if screen._page.desk.focused == "lesson-one":
            break
        screen.handle(Key("tab"))
    assert screen.handle(Key("enter")).intents == (Go(place="lesson", name="one"),)
    assert screen.handle(Key("escape")).intents == (Back(),)


def test_an_empty_shelf_says_so():
    assert any("no lessons" in line for line in spoken_lines(screen_with(()).outline()))


def test_a_toast_tells_what_happened():
    spoken = spoken_lines(screen_with(notice=Notice(template="Everything is saved.")).outline())
    assert "Everything is saved." in spoken
