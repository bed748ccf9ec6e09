"""What a learner is told of a doubt: where it comes from, and what would make it smaller."""

import pytest

from lab.lesson import ask, explain, read_lesson, render
from lab.lesson.amounts import amounts_of
from lab.outline.words import Words

LESSON = """format = 1
title = "Doubts"
level = "middle"
aim = "What counts is its share."
[[question]]
name = "net"
ask = "doubt"
title = "How far off?"
say = "A landing net."
tolerance = 0.05
ways = []
[question.scene]
title = "Net"
[[question.scene.part]]
name = "handle"
weight = 200
at = 50
shape = { kind = "rod", length = 100 }
HANDLE
[[question.scene.part]]
name = "ring"
weight = 300
at = 90
RING
"""


@pytest.fixture
def told(tmp_path):
    def explained(*, handle="", ring=""):
        path = tmp_path / "net.toml"
        path.write_text(LESSON.replace("HANDLE", handle).replace("RING", ring), encoding="utf-8")
        asked = ask(read_lesson(path), 0, seed=1)
        words, told = Words(), explain(asked, asked.truth)
        return asked, lambda name: render(getattr(told, name), words, asked.units), told

    return explained


def test_one_doubtful_place_counts_by_its_share(told):
    _, said, _ = told(ring="at_doubt = 1")
    # 300 of 500 g.
    assert said("why").endswith("its share of the weight, 300 / 500, times 1 cm is 0.60 cm.")
    # 10 000 + 27 000 of 500 g.
    assert said("happened") == "It balances at 74.00 ± 0.60 cm."


def test_one_doubtful_weight_counts_by_its_distance(told):
    _, said, _ = told(ring="weight_doubt = 30")
    assert said("why") == "All the doubt comes from the ring's weight, by how far out it sits."


def test_several_doubts_are_squared_and_the_largest_is_named(told):
    _, said, _ = told(handle="at_doubt = 2", ring="at_doubt = 1")
    assert said("why").startswith("Most of the doubt comes from the handle.")


def test_one_tape_for_all_goes_wrong_for_all_at_once_and_is_bettered_as_one(told):
    asked, said, whole = told(handle='at_doubt = 1\nset = "tape"', ring='at_doubt = 1\nset = "tape"')
    # Every part off by the same centimetre is the balance point off by that centimetre; to round-off.
    assert asked.truth == pytest.approx(0.01, rel=1e-12)
    assert said("why") == "One tape for all parts: they are off together, so their doubts add up."
    assert render(whole.contrast.label, Words(), asked.units) == "What if the tape were ten times as good?"
    assert render(whole.contrast.happened, Words(), asked.units) == "Then it would be plus or minus 0.10 cm."


def test_a_text_may_name_the_doubts(told):
    asked, _, _ = told(ring="at_doubt = 1\nweight_doubt = 30")
    named = amounts_of(asked.task)
    assert (named["ring.at_doubt"].value, named["ring.weight_doubt"].value) == (0.01, 0.03)
    assert "handle.at_doubt" not in named
