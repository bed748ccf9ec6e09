"""Ways of thinking about what is chosen, held to sums done by hand."""

import pytest

from lab.lesson.ways.attitude import ATTITUDE_WAYS, FromHook, HungLoad
from lab.lesson.ways.ballast import BALLAST_PLACE_WAYS, BALLAST_WEIGHT_WAYS, OutOfLimits, Spot
from lab.lesson.ways.steady import STEADY_WAYS, AlongAirframe
from lab.lesson.ways.tank import TANK_FIRST_WAYS, TANK_INSTANT_WAYS, TANK_PUMP_WAYS, PumpSeen, TankSeen, TanksSeen


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


# 900 balances at 45 and must come to 40 or 42: 3 too far, so 900 x 3 = 2700 of moment are missing.
BOXES = (Spot(name="nose", at=12), Spot(name="wing", at=41), Spot(name="tail", at=80))
OUT = OutOfLimits(weight=900, balance=45, low=40, high=42, reference=0, spots=BOXES, chosen=BOXES[0])


def test_places_for_ballast_are_as_worked_out():
    assert said(BALLAST_PLACE_WAYS, OUT) == {
        "nearest_to_limit": "wing",
        "nearest_to_balance": "wing",
        "heavy_side": "tail",
    }


def test_weights_of_ballast_are_as_worked_out():
    worked_out = {
        # The arm from the limit, 30; from where it balances, 33; from the line, 12; to the middle, 3600 / 29.
        "moment": 90,
        "arm_from_balance": 2700 / 33,
        "arm_from_line": 225,
        "to_the_middle": 900 * 4 / 29,
        "all_the_way": 2700 / 42,
    }
    assert said(BALLAST_WEIGHT_WAYS, OUT) == pytest.approx(worked_out)


def test_two_spots_as_near_leave_nothing_to_choose():
    twins = (Spot(name="a", at=40), Spot(name="b", at=44))
    out = OutOfLimits(weight=900, balance=45, low=40, high=42, reference=0, spots=twins)
    assert said(BALLAST_PLACE_WAYS, out)["nearest_to_limit"] is None


NOSE, TAIL = TankSeen(name="nose", at=20, weight=120, drawn=2), TankSeen(name="tail", at=70, weight=160)
PUMPS = (
    PumpSeen(name="back", source=20, target=70, source_weight=120),
    PumpSeen(name="forward", source=70, target=20, source_weight=160),
)


def tanks(**changed):
    values = {"weight": 1000, "balance": 45, "low": 43, "high": 46, "tanks": (NOSE, TAIL), "pumps": PUMPS}
    return TanksSeen(**values | changed)


def test_tanks_are_chosen_as_worked_out():
    assert said(TANK_FIRST_WAYS, tanks()) == {
        "fullest": "tail",
        "emptiest": "nose",
        # 25 from both, so that neither is nearer.
        "nearest": None,
        "farthest": None,
    }
    assert said(TANK_FIRST_WAYS, tanks(balance=40))["nearest"] == "nose"


def test_pumps_are_chosen_as_worked_out():
    assert said(TANK_PUMP_WAYS, tanks()) == {"out_of_fullest": "forward", "to_heavy_side": None}
    assert said(TANK_PUMP_WAYS, tanks(balance=48))["to_heavy_side"] == "back"
    assert said(TANK_PUMP_WAYS, tanks(balance=40))["to_heavy_side"] == "forward"


def test_instants_are_as_worked_out():
    # 2 a second at 25 ahead of the balance point of 1000: 0.05 a second aft, and 1 to go.
    assert said(TANK_INSTANT_WAYS, tanks(all_burned=60)) == {
        "weight_stays": pytest.approx(20),
        "when_empty": 60,
        "halfway": 30,
    }
    assert said(TANK_INSTANT_WAYS, tanks(tanks=(TAIL,))) == {
        "weight_stays": None,
        "when_empty": None,
        "halfway": None,
    }
