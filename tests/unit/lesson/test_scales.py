"""What scales would read with one thing changed: a scene that still stands on them."""

import pytest

from lab.lesson import ask, explain, read_lesson, render
from lab.outline.words import Words

LESSON = """format = 1
title = "Scales"
level = "middle"
aim = "They share the weight."
[[question]]
name = "scales"
ask = "reading"
title = "What do they read?"
say = "A bar of {bar.weight} on two scales."
tolerance = 5
ways = []
[question.scene]
units = "g-cm"
[question.scene.bar]
length = 100
weight = 400
[[question.scene.support]]
name = "left scale"
at = 20
[[question.scene.support]]
name = "right scale"
at = 100
"""
LEAD = """
[[question.scene.part]]
name = "lead"
weight = WEIGHT
at = 10
"""


@pytest.mark.parametrize(
    ("parts", "asks", "shows"),
    [
        # 400 g at 50: the right scale has 30/80 of it, 150 g; doubled, 300 g.
        ("", "weighed twice as much?", "500 g and 300 g"),
        # 200 g more right over the left scale.
        (LEAD.replace("WEIGHT", "200"), "lay right over the left scale?", "450 g and 150 g"),
    ],
)
def test_one_change_shows_what_the_scales_would_read_then(tmp_path, parts, asks, shows):
    path, words = tmp_path / "scales.toml", Words()
    path.write_text(LESSON + parts, encoding="utf-8")
    asked = ask(read_lesson(path), 0, seed=1)
    contrast = explain(asked, asked.truth).contrast
    assert render(contrast.label, words, asked.units).endswith(asks)
    assert render(contrast.happened, words, asked.units) == f"Then the scales would read {shows}."
