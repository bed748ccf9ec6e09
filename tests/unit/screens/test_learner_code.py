"""The learner's code: shown, picked again, typed by keys and by touch, a new one."""

import pytest

from lab.outline import Words, find, spoken_lines
from lab.screens.intents import Back, ChangeSetting, NewLearner
from lab.screens.learner import LearnerScreen
from lab.screens.screen import LearnerModel, Setting, UsedCode
from lab.ui.events import Key, PointerDown, PointerUp, Text
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

MINE, OTHER, STRANGE = "K7M4T9X3", "R3WNJH74", "PT4C9MK6"


@pytest.fixture
def screen() -> LearnerScreen:
    screen = LearnerScreen(Look(theme=THEMES["paper"], sizes=Sizes(1280, 720), words=Words()))
    used = tuple(UsedCode(code=code, when="a day or two ago") for code in (MINE, OTHER))
    screen.show(LearnerModel(setting=Setting(), learner=MINE, used=used, known=(MINE, OTHER)))
    return screen


def press(screen, key):
    node = find(screen.outline(), key)
    assert node is not None, key
    x, y, w, h = node.bounds
    screen.handle(PointerDown(0, x + w / 2, y + h / 2))
    return screen.handle(PointerUp(0, x + w / 2, y + h / 2)).intents


def test_the_code_in_force_is_shown_and_the_others_with_when_they_were_used(screen):
    spoken = spoken_lines(screen.outline())
    assert "K7M4-T9X3, heading" in spoken
    assert "R3WN-JH74 · a day or two ago, button" in spoken
    assert find(screen.outline(), f"pick-{MINE}") is None


def test_one_is_picked_again_with_a_press(screen):
    assert press(screen, f"pick-{OTHER}") == (ChangeSetting(name="learner", value=OTHER),)


def test_a_new_one_can_be_had(screen):
    assert press(screen, "new-code") == (NewLearner(),)


def test_one_is_typed_by_touch(screen):
    for letter in "R3WX":
        press(screen, f"code.{letter}")
    press(screen, "code.rub-out")
    for letter in "NJH74":
        press(screen, f"code.{letter}")
    assert press(screen, "use-code") == (ChangeSetting(name="learner", value=OTHER),)


def test_one_is_typed_by_keys_alone_in_small_letters_with_a_dash(screen):
    for letter in "r3wn-jh7x":
        screen.handle(Text(letter))
    screen.handle(Key("backspace"))
    screen.handle(Text("4"))
    for _ in range(40):
        if screen._page.desk.focused == "use-code":
            break
        screen.handle(Key("tab"))
    assert screen.handle(Key("enter")).intents == (ChangeSetting(name="learner", value=OTHER),)
    assert screen.handle(Key("escape")).intents == (Back(),)


def test_a_wrong_letter_is_said_kindly_with_the_nearest_known_one(screen):
    for letter in "R3WNJH79":
        screen.handle(Text(letter))
    assert press(screen, "use-code") == ()
    assert "One letter of it must be another: that is no code as it stands." in spoken_lines(screen.outline())
    assert find(screen.outline(), "near-code").name == "Was it R3WN-JH74?"
    assert press(screen, "near-code") == (ChangeSetting(name="learner", value=OTHER),)


def test_a_code_that_is_too_short_is_said_so(screen):
    screen.handle(Text("R3W"))
    press(screen, "use-code")
    assert any("8 letters and figures" in line for line in spoken_lines(screen.outline()))


def test_a_code_of_another_machine_is_taken_only_when_asked_for(screen):
    screen.handle(Text(STRANGE))
    assert press(screen, "use-code") == ()
    assert press(screen, "use-anyway") == (ChangeSetting(name="learner", value=STRANGE),)
