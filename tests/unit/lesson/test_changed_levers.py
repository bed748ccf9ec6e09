"""One thing changed where something is to be hung, or where a part is cut out: what is seen and told of it."""

import pytest

from lab.lesson import ask, explain, read_lesson, render
from lab.lesson.foretelling import foretelling
from lab.outline.words import Words

WORDS = Words()

CANE = """
[[question]]
name = "cane"
ask = "{ask}"
title = "A bell"
say = "A cane of {{cane.weight}}."
tolerance = 1
hang = {hang}
[question.scene.bar]
name = "cane"
length = 100
weight = 100
[question.scene.pivot]
at = 60
up = 1
"""
WHERE = CANE.format(ask="arm", hang='{ name = "bell", weight = 50 }')
HOW_HEAVY = CANE.format(ask="weight", hang='{ name = "bell", at = 80 }')

BOARD = """
[[question]]
name = "board"
ask = "place"
title = "A window"
say = "A board of {board.weight}."
tolerance = 0.5
[question.scene]
[[question.scene.part]]
name = "board"
weight = 1200
at = 30
shape = { kind = "rectangle", length = 60, width = 40 }
[[question.scene.part]]
name = "window"
weight = 200
at = 44
cut = true
shape = { kind = "rectangle", length = 20, width = 20 }
"""

LINE_FAR_OFF = """
[[question]]
name = "line"
ask = "shift"
title = "A line"
say = "The line goes to {change.at}."
tolerance = 2
change = { reference = 25 }
[question.scene]
reference = 300
[[question.scene.part]]
name = "loom"
weight = 500
at = 100
shape = { kind = "rod", length = 200 }
"""


def told(asked, value):
    contrast = explain(asked, value).contrast
    return render(contrast.label, WORDS, asked.units), render(contrast.happened, WORDS, asked.units), contrast


@pytest.mark.parametrize(
    ("text", "value", "label", "happened"),
    # By hand: the cane's 100 g at 50 pull 1000 left of the pin at 60.
    [
        # 100 g at 80 pull 2000; then 10 cm from the pin would do.
        (
            WHERE,
            0.80,
            "What if the bell weighed twice as much?",
            "Then the right end would go down. To stay level it would have to hang at 70.0 cm.",
        ),
        # 100 g at 70 pull 1000.
        (WHERE, 0.70, "What if the bell weighed twice as much?", "Then it would stay level."),
        # At the pin it does nothing.  A cane of 200 g pulls 2000, and 50 g would have to hang at 100, its very end.
        (
            WHERE,
            0.60,
            "What if the cane weighed twice as much?",
            "Then the left end would go down. To stay level it would have to hang at 100.0 cm.",
        ),
        # A bell of 20 g at 70 pulls 200; 1000 / 10 = 100 g.
        (
            HOW_HEAVY,
            0.020,
            "What if the bell hung half as far out?",
            "Then the left end would go down. It would take 100 g to keep it level.",
        ),
    ],
)
def test_a_changed_bar_says_which_end_goes_down_and_what_would_do(write, text, value, label, happened):
    asked = ask(read_lesson(write(text)), 0, seed=1)
    assert told(asked, value)[:2] == (label, happened)


def test_no_place_off_the_bar_is_said_to_do(write):
    # By hand: twice the cane pulls 2000, and 40 g would have to hang 50 cm from the pin, at 110.
    light = WHERE.replace("weight = 50", "weight = 40")
    asked = ask(read_lesson(write(light)), 0, seed=1)
    _, happened, _ = told(asked, 0.60)
    assert happened == "Then the left end would go down. Nowhere along it could the bell keep it level."


def test_what_is_foretold_of_it_is_the_end_that_is_told(write):
    asked = ask(read_lesson(write(WHERE)), 0, seed=1)
    contrast = told(asked, 0.80)[2]
    foretold = foretelling(asked, contrast)
    assert render(foretold.prompt, WORDS, asked.units) == "Which end goes down then, if any?"
    assert foretold.truth == "right"


@pytest.mark.parametrize(
    ("place_m", "way", "sentence"),
    # By hand: 1200 · 30 − 200 · 44 = 27 200 g cm; by 1200 g, 22.67 cm.
    [
        (
            0.2267,
            "not_all_weight",
            "22.7 comes out when you divide by the weight from before. Divide by what is left.",
        ),
    ],
)
def test_a_cut_part_is_spoken_of_as_one_that_is_gone(write, place_m, way, sentence):
    asked = ask(read_lesson(write(BOARD)), 0, seed=1)
    explained = explain(asked, place_m)
    assert explained.ways == (way,)
    assert render(explained.idea, WORDS, asked.units) == sentence


def test_a_field_reaches_as_far_as_a_line_that_comes_from_far_off(write):
    form = ask(read_lesson(write(LINE_FAR_OFF)), 0, seed=1).form
    # The line moves by 275 cm; the loom is 200 cm long.
    assert (form.low, form.high) == pytest.approx((-2.75, 2.75))
