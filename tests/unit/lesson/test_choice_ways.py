"""Ways of thinking about what is chosen, held to sums done by hand."""

import pytest

from lab.lesson.ways.attitude import ATTITUDE_WAYS, FromHook, HungLoad
from lab.lesson.ways.steady import STEADY_WAYS, AlongAirframe


def said(ways, seen):
    return {way.name: way.predict(seen) for way in ways}


def hung(*loads):
    return FromHook(loads=tuple(HungLoad(weight=weight, offset=offset) for weight, offset in loads))


@pytest.mark.parametrize(
    ("loads", "expected"),
    [
        # 30 x 10 = 300 against 20 x 20 + 5 x 2 = 410; 30 against 25; one piece against two; 10 against 20.
        (((30, -10), (20, 20), (5, 2)), ("far", "level", "near", "far", "far", "near")),
        # 40 x 10 = 400 against 10 x 30 = 300.
        (((40, -10), (10, 30)), ("near", "level", "near", "level", "far", "far")),
        # 30 x 10 against 10 x 30: as much on both sides.
        (((30, -10), (10, 30)), ("level", "level", "near", "level", "far", "level")),
    ],
)
def test_attitudes_are_as_worked_out(loads, expected):
    assert tuple(said(ATTITUDE_WAYS, hung(*loads)).values()) == expected


def airframe(balance, **changed):
    values = {"neutral": 30, "quarter": 25, "chord": 10, "nose": 0, "tail": 80, "has_tail": True}
    return AlongAirframe(balance=balance, **values | changed)


def test_steadiness_is_as_worked_out():
    # Ahead of the neutral point at 30 and behind the quarter chord at 25; the middle of the body is at 40.
    assert said(STEADY_WAYS, airframe(28)) == {
        "margin": "steady",
        "wing_alone": "runs away",
        "middle_decides": "steady",
        "tail_does_it": "steady",
        "swapped": "runs away",
    }
    assert said(STEADY_WAYS, airframe(35, has_tail=False)) == {
        "margin": "runs away",
        "wing_alone": "runs away",
        "middle_decides": "steady",
        "tail_does_it": "runs away",
        "swapped": "steady",
    }
    # Within 0.005 of a chord of 10.
    assert said(STEADY_WAYS, airframe(30.04))["margin"] == "neutral"


def test_a_body_without_a_length_has_no_middle():
    assert said(STEADY_WAYS, airframe(35, nose=0, tail=0))["middle_decides"] is None
