"""What is told of tanks beside the answer: the start, and a contrast that comes out another way where one does."""

from pathlib import Path

from lab.lesson import ask, explain, read_lesson, render
from lab.outline.words import Words

LESSON = read_lesson(Path(__file__).parent / "kinds" / "drone-tanks.toml")
WORDS = Words()


def told_of(name):
    index = next(index for index, each in enumerate(LESSON.questions) if each.name == name)
    asked = ask(LESSON, index, seed=1)
    told = explain(asked, asked.truth)
    return [render(each, WORDS, asked.units) for each in (told.quotient, told.contrast.label, told.contrast.happened)]


def test_the_sum_is_that_of_the_start_and_not_of_full_tanks():
    # 800 g at 44, 120 g at 20 and 160 g at 70 make 48 800 g cm; the tanks hold 400 mL each, so neither is full.
    assert told_of("first")[0] == "at the start, 1\u202f080 g: it balances at 45.2 cm"


def test_an_answer_that_a_half_empty_tank_does_not_change_is_told_as_the_same():
    # Half as much in either tank leaves the answer as it is, and that is what is said.
    assert told_of("first")[1:] == ["What if the nose tank were half as full?", "The answer would still be: nose tank."]
