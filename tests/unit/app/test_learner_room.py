"""Who is here, in the whole lab: another code by pointer and by keys, and answers under it."""

from typing import Any

from lab.attempts import new_code, shown_code
from lab.ui.events import Text


def answer_one(pilot: Any) -> None:
    pilot.lab.open_probe()
    pilot.press("side.left")
    pilot.press("next")
    pilot.press("back")
    pilot.press("back")


def test_a_learner_sees_their_code_takes_another_and_picks_the_first_again(pilot: Any):
    mine = pilot.lab.house.settings.learner
    assert pilot.node("learner").name == f"Code {shown_code(mine)}"
    answer_one(pilot)
    pilot.press("learner")
    assert pilot.says(shown_code(mine))
    pilot.press("new-code")
    other = pilot.lab.house.settings.learner
    assert other != mine
    assert pilot.says(shown_code(other))
    assert pilot.says("within the last hour")
    pilot.press(f"pick-{mine}")
    assert pilot.lab.house.settings.learner == mine
    pilot.press("back")
    assert pilot.node("learner").name == f"Code {shown_code(mine)}"


def test_a_code_is_typed_by_keys_alone_and_answers_go_under_it(pilot: Any):
    pilot.tab_to("learner")
    pilot.key("enter")
    code = new_code()
    for letter in shown_code(code).lower():
        pilot.lab.handle(Text(letter))
    pilot.tab_to("use-code")
    pilot.key("enter")
    pilot.tab_to("use-anyway")
    pilot.key("enter")
    pilot.key("escape")
    answer_one(pilot)
    assert {row.learner for row in pilot.attempts()} == {code}


def test_from_the_lessons_it_leads_back_to_the_lessons(pilot: Any):
    pilot.press("to-lessons")
    pilot.tab_to("learner")
    pilot.key("enter")
    assert pilot.has("code")
    pilot.press("back")
    assert pilot.has("offer")


def test_nothing_has_come_back_is_said_and_nothing_opens(pilot: Any):
    pilot.lab.open_lesson("mixed")
    assert pilot.says("Nothing has come back yet")
    assert pilot.has("let-go")
