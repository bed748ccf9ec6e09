"""The course: the next best thing to do, the lessons in their groups, what has changed."""

import pytest

from lab.lesson.messages import message
from lab.outline import Words, find, spoken_lines
from lab.screens.intents import Back, Go
from lab.screens.lessons import LessonsScreen
from lab.screens.screen import LessonEntry, LessonsModel, Notice, Setting
from lab.ui.events import Key, PointerDown, PointerUp
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

ENTRIES = (
    LessonEntry(name="one", title="One finger", level="early", aim="It balances.", questions=6, is_next=True),
    LessonEntry(
        name="two",
        title="A tool",
        level="middle",
        aim="It does not.",
        questions=7,
        answered=3,
        right_first=2,
        has_page=True,
    ),
    LessonEntry(name="three", title="A net", level="later", aim="It may.", questions=1, answered=1),
)


def screen_with(entries=ENTRIES, **more) -> LessonsScreen:
    screen = LessonsScreen(Look(theme=THEMES["paper"], sizes=Sizes(1280, 720), words=Words()))
    screen.show(LessonsModel(setting=Setting(), lessons=entries, **more))
    return screen


def pressed(screen, key):
    node = find(screen.outline(), key)
    assert node is not None
    x, y, w, h = node.bounds
    screen.handle(PointerDown(0, x + w / 2, y + h / 2))
    return screen.handle(PointerUp(0, x + w / 2, y + h / 2)).intents


def test_each_lesson_says_its_title_aim_and_how_far_one_is_below_its_group():
    spoken = spoken_lines(screen_with().outline())
    assert "One finger, It balances. 6 questions, button" in spoken
    assert "A tool, It does not. 3 of 7 answered, 2 right at once, button" in spoken
    assert "A net, It may. all 1 answered, 0 right at once, button" in spoken
    groups = [find(screen_with().outline(), f"group-{number}").name for number in range(3)]
    assert groups == ["To begin with", "Further on", "For those who know moments"]


def test_the_whole_row_is_the_target():
    screen = screen_with()
    node = find(screen.outline(), "lesson-two")
    assert node is not None
    x, y, w, h = node.bounds
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


@pytest.mark.parametrize(
    ("offer", "leads"),
    [
        ("first probe", Go(place="probe")),
        ("last probe", Go(place="probe")),
        ("again", Go(place="lesson", name="mixed")),
        ("next", Go(place="lesson", name="one")),
    ],
)
def test_the_one_dark_action_is_the_next_best_thing_to_do(offer, leads):
    assert pressed(screen_with(offer=offer, again=4), "offer") == (leads,)


def test_where_everything_is_done_nothing_is_urged():
    assert find(screen_with(offer="nothing").outline(), "offer") is None


def test_a_teacher_gets_to_the_page_of_a_lesson_that_has_one():
    screen = screen_with()
    assert pressed(screen, "page-two") == (Go(place="page", name="two"),)
    assert find(screen.outline(), "page-one") is None


def test_what_has_changed_is_said_sentence_by_sentence():
    outline = screen_with(gain=(message("Now they fit: more."), message("Quite sure."))).outline()
    assert find(outline, "gain").name == "What has changed"
    assert {"Now they fit: more.", "Quite sure."} <= set(spoken_lines(outline))


def test_the_code_stands_there_and_leads_to_where_it_is_changed():
    screen = screen_with(learner="K7M4T9X3")
    assert find(screen.outline(), "learner").name == "Code K7M4-T9X3"
    assert pressed(screen, "learner") == (Go(place="learner", name="lessons"),)


def test_an_empty_shelf_says_so():
    assert any("no lessons" in line for line in spoken_lines(screen_with(()).outline()))


def test_a_toast_tells_what_happened():
    spoken = spoken_lines(screen_with(notice=Notice(template="Everything is saved.")).outline())
    assert "Everything is saved." in spoken
