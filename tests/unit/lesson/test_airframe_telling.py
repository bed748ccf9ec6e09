"""What is told of scales under an airframe and of how it hangs: sides by name, each scale by a sum of its own."""

import re
from pathlib import Path

import pytest

from lab.lesson import ask, explain, read_lesson, render
from lab.lesson.kinds import KINDS
from lab.outline.words import Words

HERE = Path(__file__).parent / "kinds"
WORDS = Words()


def said(asked, message):
    return render(message, WORDS, asked.units)


@pytest.fixture
def scales():
    return ask(read_lesson(HERE / "three-scales.toml"), 0, seed=1)


def hung(name, *, seed=1):
    lesson = read_lesson(HERE / "hung-glider.toml")
    index = next(index for index, each in enumerate(lesson.questions) if each.name == name)
    return ask(lesson, index, seed=seed)


def test_each_of_three_scales_is_worked_out_about_the_line_through_the_two_others(scales):
    told = explain(scales, scales.truth)
    # 900 g at 33 and 300 g at 10 balance at 27.25 along; the wing scales stand at 50 along, the nose scale at 0.
    assert said(scales, told.working[1]) == "nose scale: 1\u202f200 g × 22.75 cm / 50.0 cm = 546 g"
    assert len(told.working) == 5


def test_two_scales_are_told_by_the_moment_table():
    asked = ask(read_lesson(HERE / "two-scales.toml"), 0, seed=1)
    assert explain(asked, asked.truth).working == ()


def test_scales_beside_the_middle_say_on_which_side(scales):
    lines = [said(scales, line) for line in KINDS["reading"].given(scales)]
    assert lines == [
        "nose scale   a scale at 0 cm",
        "left scale   a scale at 50 cm, 20 cm left of the middle",
        "right scale   a scale at 50 cm, 20 cm right of the middle",
    ]


def test_how_far_off_a_reading_is_shows_the_figures_of_the_readings(scales):
    nose, left, right = scales.truth
    told = explain(scales, (nose + 0.1, left, right))
    assert said(scales, told.headline) == "Too much by 100 g at the nose scale"


def test_what_lies_over_a_scale_in_the_contrast_is_something_aboard_and_not_the_hull(scales):
    told = explain(scales, scales.truth)
    assert said(scales, told.contrast.label) == "What if the camera lay right over the nose scale?"


@pytest.mark.parametrize(("name", "side"), [("pitch", "ahead of"), ("roll", "right of")])
def test_the_reason_says_on_which_side_of_the_hook_it_balances(name, side):
    asked = hung(name)
    assert f" {side} the cord." in said(asked, explain(asked, asked.truth).why)


@pytest.mark.parametrize("seed", range(8))
def test_the_figures_of_a_ballast_sum_give_what_it_says(seed):
    lesson = read_lesson(HERE / "drone-ballast.toml")
    asked = ask(lesson, 1, seed=seed, round=1)
    *_, last = explain(asked, asked.truth).working
    whole, miss, arm, weight = (float(each) for each in re.findall(r"\d+(?:\.\d+)?", said(asked, last)))
    # Half a hundredth of a centimetre in the miss is 900 g × 0.005 / 30 = 0.15 g, and the weight is shown to 0.1 g.
    assert whole * miss / arm == pytest.approx(weight, abs=0.2)
