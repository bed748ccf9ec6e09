"""The twelve ways of thinking about a side, held to three scenes worked out beforehand, apart from this code."""

import pytest

from lab.lesson.situation import Load, Situation
from lab.lesson.ways.side import SIDE_WAYS

MEANING = {"L": "left", "R": "right", "B": "level"}


def seen(weights, places, *, bar=0.0, middle=50.0, pivot):
    return Situation(
        loads=tuple(
            Load(name=f"load {index}", weight=weight, place=place)
            for index, (weight, place) in enumerate(zip(weights, places, strict=True))
        ),
        bar=Load(name="bar", weight=bar, place=middle, half=50.0),
        left=0.0,
        right=100.0,
        pivot=pivot,
    )


@pytest.mark.parametrize(
    ("situation", "expected"),
    [
        (seen((30, 10), (40, 90), pivot=50.0), "RRLLRLRBBLBL"),
        # As it was worked out, the heaviest of two weights of 20 is the first in the list: left.  Ours says that a
        # rule which cannot choose says level.
        (seen((20, 20), (20, 70), bar=40.0, pivot=45.0), "RBBBBBBRBBRL"),
        (seen((10, 10, 20), (10, 30, 80), bar=60.0, pivot=55.0), "LLBLLRLLLRLR"),
    ],
)
def test_each_way_says_what_was_worked_out_for_it(situation, expected):
    said = [way.predict(situation) for way in SIDE_WAYS]
    assert dict(zip((way.name for way in SIDE_WAYS), said, strict=True)) == {
        way.name: MEANING[letter] for way, letter in zip(SIDE_WAYS, expected, strict=True)
    }


def test_two_heaviest_on_one_side_still_choose_that_side():
    situation = seen((20, 20, 5), (10, 30, 90), pivot=50.0)
    assert next(way for way in SIDE_WAYS if way.name == "heaviest_wins").predict(situation) == "left"


def test_without_any_weight_the_heaviest_says_nothing():
    situation = seen((), (), bar=50.0, pivot=40.0)
    assert next(way for way in SIDE_WAYS if way.name == "heaviest_wins").predict(situation) is None


def test_a_pad_holds_level_what_balances_over_it():
    over_the_pad = Situation(
        loads=(Load(name="pole", weight=100, place=20, half=20), Load(name="hook", weight=100, place=2)),
        bar=None,
        left=0.0,
        right=40.0,
        pivot=11.4,
        pad=0.5,
    )
    assert SIDE_WAYS[0].predict(over_the_pad) == "level"
