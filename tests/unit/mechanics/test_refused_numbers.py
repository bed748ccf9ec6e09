"""Every number that a model asks for, given as one it cannot use: the message names it, its unit and what would do."""

import re
from collections.abc import Callable
from math import inf, nan
from typing import Any

import pytest

from lab.mechanics import (
    Airframe,
    BallastPlace,
    Burn,
    Cylinder,
    FingerSlide,
    Footing,
    Friction,
    Group,
    HungBar,
    Limits,
    MechanicsError,
    MobileBar,
    Part,
    Pivot,
    PlumbLine,
    Pump,
    Rectangle,
    ScaleReading,
    Surface,
    Tank,
    balance_for_margin_m,
    balance_path,
    balance_shift_m,
    balancing_ways,
    ballast_curve,
    ballast_kg,
    footing,
    hanging_attitude,
    lightest_ballast,
    loading_shift_m,
    mean_chord_percent,
    moment_sum,
    move_m,
    moved_mass_kg,
    neutral_point,
    neutral_point_m,
    standing,
    tank_course,
    two_finger_slide,
    two_support_reactions_n,
    with_part_moved,
)
from lab.mechanics.neutral_points import closed_shift

BUILD = (Part("pole", 2.0, (0.5, 0.0, 0.1)),)
NOWHERE = (nan, 0.0, 0.0)
WING = Surface(name="wing", root_chord_m=0.2, tip_chord_m=0.2, span_m=2.0, at_m=(0.0, 0.0, 0.0))
TANK = Tank(name="tank", at_m=(0.0, 0.0, 0.0), capacity_m3=1.0, contents_m3=1.0, density_kg_m3=800.0)
COURSE = tank_course([TANK], [Burn(rate_m3_s=0.1, tanks=("tank",))])


def tank(**given: Any) -> Tank:
    return Tank(**{"name": "t", "at_m": (0, 0, 0), "capacity_m3": 1, "contents_m3": 1, "density_kg_m3": 1} | given)


def surface(**given: Any) -> Surface:
    return Surface(
        **{"name": "far", "root_chord_m": 0.2, "tip_chord_m": 0.2, "span_m": 1.0, "at_m": (1.0, 0.0, 0.0)} | given
    )


def airframe(**given: Any) -> Airframe:
    whole = {"surfaces": (WING,), "mass_kg": 0.3, "balance_point_m": (0.0, 0.0, 0.0), "pitch_inertia_kg_m2": 0.01}
    return Airframe(**whole | given)


def ballast(**given: Any) -> object:
    return ballast_kg(**{"whole_kg": 1.0, "now_m": 0.5, "target_m": 0.4, "at_m": 0.0} | given)


def curve(**given: Any) -> object:
    asked = {"whole_kg": 1.0, "now_m": 0.5, "target_m": 0.4, "from_m": 0.0, "to_m": 0.1, "most_kg": 1.0}
    return ballast_curve(**asked | given)


def loading(**given: Any) -> float:
    return loading_shift_m(**{"mass_kg": 1.0, "at_m": 1.0, "whole_kg": 2.0, "balance_m": 0.5} | given)


def fingers(left: float = 0.1, right: float = 0.9, touch: float = 0.01) -> FingerSlide:
    slide = two_finger_slide(BUILD, left, right, left=Friction(0.5, 0.4), touch_m=touch)
    assert isinstance(slide, FingerSlide)
    return slide


def standing_body() -> Footing:
    return footing(BUILD, [(0.0, -1.0), (1.0, -1.0), (0.5, 1.0)])


CASES: list[tuple[Callable[[], object], str]] = [
    (lambda: airframe(set_lift=0.0), "set lift coefficient of the airframe is 0.0"),
    (lambda: airframe(balance_point_m=NOWHERE), "balance point of the airframe is nan m"),
    (lambda: Group(name="g", members=BUILD, at_m=NOWHERE), "place of group 'g' is nan m"),
    (lambda: Group(name="g", members=BUILD, turn_rad=NOWHERE), "turn of group 'g' is nan rad"),
    (lambda: balance_path(BUILD, COURSE).point_at(nan), "instant is nan s"),
    (lambda: COURSE.contents_at(nan), "instant is nan s"),
    (lambda: balancing_ways(BUILD, target_m=inf, movable={}), "target is inf m"),
    (lambda: ballast(whole_kg=0.0), "whole mass is 0.0 kg; it must be a finite number above 0"),
    (lambda: ballast(now_m=nan), "balance point is nan m"),
    (lambda: ballast(target_m=nan), "target is nan m"),
    (lambda: ballast(at_m=inf), "place of the ballast is inf m"),
    (lambda: curve(most_kg=0.0), "most ballast is 0.0 kg; it must be a finite number above 0"),
    (lambda: curve(from_m=nan), "one end of the range is nan m"),
    (lambda: curve(to_m=nan), "other end of the range is nan m"),
    (lambda: lightest_ballast(BUILD, [], target_m={"along": nan}), "target along is nan m"),
    (lambda: lightest_ballast(BUILD, [], target_m={"across": (0.0, inf)}), "target across is inf m"),
    (lambda: BallastPlace("nose", NOWHERE), "ballast place 'nose' is nan m"),
    (lambda: BallastPlace("nose", (0.0, 0.0, 0.0), NOWHERE), "other end of ballast place 'nose' is nan m"),
    (lambda: hanging_attitude(BUILD, NOWHERE), "hook is nan m"),
    (lambda: Limits(across_m=(nan, 1.0)), "limit across is nan m"),
    (lambda: standing(Limits(across_m=(-1.0, 1.0)), (0.0, 0.0, 0.0), 0.0), "mass is 0.0 kg"),
    (
        lambda: HungBar(MobileBar("low", BUILD, Pivot(at_m=0.5)), NOWHERE),
        "hook of bar 'low' is nan m",
    ),
    (lambda: moment_sum(BUILD, NOWHERE), "reference is nan m"),
    (lambda: neutral_point_m(nan, 0.0, 1.0), "lift slope is nan"),
    (lambda: neutral_point_m(1.0, nan, 1.0), "moment slope is nan"),
    (lambda: neutral_point_m(1.0, 1.0, 0.0), "mean chord is 0.0 m"),
    (lambda: neutral_point_m(1.0, 1.0, 1.0, inf), "reference is inf m"),
    (lambda: balance_for_margin_m(nan, 1.0, 0.1), "neutral point is nan m"),
    (lambda: balance_for_margin_m(0.5, 1.0, nan), "margin is nan"),
    (lambda: balance_for_margin_m(0.5, 0.0, 0.1), "mean chord is 0.0 m"),
    (lambda: closed_shift(0.0, 5.0, 0.5), "aspect ratio of the wing is 0.0"),
    (lambda: closed_shift(10.0, -1.0, 0.5), "aspect ratio of the other surface is -1.0"),
    (lambda: closed_shift(10.0, 5.0, nan), "tail volume is nan"),
    (lambda: mean_chord_percent([WING], 1e308), "place along is 1e+308 m; it must be within reach of the mean chord"),
    (
        lambda: neutral_point([WING, surface(at_m=(1e9, 0.0, 0.0))]),
        "surface 'far' is 5e+09 mean chords from the wing; it must be within",
    ),
    (
        lambda: neutral_point([WING, surface(root_chord_m=1e-9, tip_chord_m=1e-9)]),
        "root chord of surface 'far' is 5e-09 mean chords of the wing; it must be between",
    ),
    (lambda: Part("pole", 1.0, (0.0, 0.0, 0.0), at_doubt_m=NOWHERE), "place doubt of part 'pole' is nan m"),
    (lambda: PlumbLine(through_m=NOWHERE, down=(0.0, 0.0, -1.0)), "place of the plumb line is nan m"),
    (lambda: PlumbLine(through_m=(0.0, 0.0, 0.0), down=NOWHERE), "direction of the plumb line is nan"),
    (lambda: Rectangle(0.0, 1.0), "length of the rectangle is 0.0 m"),
    (lambda: Cylinder(1.0, -1.0), "length of the cylinder is -1.0 m"),
    (lambda: balance_shift_m(mass_kg=1.0, by_m=nan, whole_kg=2.0), "move is nan m"),
    (lambda: balance_shift_m(mass_kg=1.0, by_m=1.0, whole_kg=0.0), "whole mass is 0.0 kg"),
    (lambda: move_m(mass_kg=1.0, balance_shift_m=nan, whole_kg=2.0), "shift of the balance point is nan m"),
    (lambda: moved_mass_kg(by_m=nan, balance_shift_m=0.1, whole_kg=2.0), "move is nan m"),
    (lambda: moved_mass_kg(by_m=1.0, balance_shift_m=inf, whole_kg=2.0), "shift of the balance point is inf m"),
    (lambda: moved_mass_kg(by_m=1.0, balance_shift_m=0.1, whole_kg=-2.0), "whole mass is -2.0 kg"),
    (lambda: loading(mass_kg=nan), "mass added is nan kg"),
    (lambda: loading(at_m=nan), "place is nan m"),
    (lambda: loading(whole_kg=0.0), "whole mass is 0.0 kg"),
    (lambda: loading(balance_m=nan), "balance point is nan m"),
    (lambda: with_part_moved(BUILD, "pole", NOWHERE), "move is nan m"),
    (lambda: two_support_reactions_n(BUILD, nan, 1.0), "place of the first support is nan m"),
    (lambda: two_support_reactions_n(BUILD, 0.0, inf), "place of the second support is inf m"),
    (lambda: tank(at_m=NOWHERE), "place of tank 't' is nan m"),
    (lambda: tank(capacity_m3=0.0), "capacity of tank 't' is 0.0 m³"),
    (lambda: tank(contents_m3=-1.0), "contents of tank 't' is -1.0 m³; it must be a finite number, 0 or above"),
    (lambda: tank(density_kg_m3=0.0), "density of tank 't' is 0.0 kg/m³"),
    (lambda: Burn(rate_m3_s=-1.0), "rate of a burn is -1.0 m³/s; it must be a finite number, 0 or above"),
    (lambda: Burn(rate_m3_s=0.0, for_s=0.0), "duration of a burn is 0.0 s"),
    (lambda: Pump(source="a", target="b", rate_m3_s=0.0), "rate of the pump from 'a' to 'b' is 0.0 m³/s"),
    (lambda: Pump(source="a", target="b", rate_m3_s=1.0, from_s=-1.0), "start of the pump from 'a' to 'b' is -1.0 s"),
    (lambda: tank_course([TANK], [Burn(rate_m3_s=0.0)], until_s=0.0), "end of the course is 0.0 s"),
    (lambda: standing_body().reach_m((nan, 0.0)), "direction downhill is nan"),
    (lambda: Friction(0.0, 0.0), "static friction is 0.0 (a coefficient)"),
    (lambda: Friction(0.5, nan), "kinetic friction is nan (a coefficient)"),
    (lambda: fingers(left=nan), "place of the left finger is nan m"),
    (lambda: fingers(right=inf), "place of the right finger is inf m"),
    (lambda: fingers(touch=0.0), "distance at which the fingers touch is 0.0 m"),
    (lambda: fingers().places_m(nan), "gap between the fingers is nan m"),
    (lambda: fingers().forces_at(nan), "gap between the fingers is nan m"),
    (
        lambda: ScaleReading(name="bow", mass_kg=1.0, at_m=(0.0, 0.0, 0.0), mass_doubt_kg=-1.0),
        "mass doubt of scale 'bow' is -1.0 kg; it must be a finite number, 0 or above",
    ),
    (
        lambda: ScaleReading(name="bow", mass_kg=1.0, at_m=(0.0, 0.0, 0.0), at_doubt_m=(0.0, nan, 0.0)),
        "place doubt of scale 'bow' is nan m",
    ),
    (
        lambda: ScaleReading(name="bow", mass_kg=1.0, at_m=(0.0, 0.0, 0.0), at_doubt_m=(0.0, -1.0, 0.0)),
        "place doubt of scale 'bow' is -1.0 m; it must be a finite number, 0 or above",
    ),
    (lambda: ScaleReading(name="bow", mass_kg=1.0, at_m=NOWHERE), "place of scale 'bow' is nan m"),
]


@pytest.mark.parametrize(("asked", "message"), CASES, ids=[message for _, message in CASES])
def test_a_number_that_cannot_be_used_is_refused_by_name_unit_and_cure(
    asked: Callable[[], object], message: str
) -> None:
    with pytest.raises(MechanicsError, match=rf"^{re.escape(message)}") as refused:
        asked()
    assert "; it must be" in str(refused.value)
