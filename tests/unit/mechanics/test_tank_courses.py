"""Tanks: burn plans and pumps, event by event; what is burned and what is left is what there was."""

import pytest

from lab.mechanics import Burn, MechanicsError, Part, Pump, Tank, balance_path, moment_sum, tank_course, tank_parts


def tank(name: str, contents: float, *, at: float = 0.0, capacity: float = 2.0) -> Tank:
    return Tank(name=name, at_m=(at, 0.0, 0.0), capacity_m3=capacity, contents_m3=contents, density_kg_m3=800.0)


TWINS = (tank("left", 1.0), tank("right", 1.5))


def happened(course: object) -> list[tuple[float, str, str]]:
    return [(event.at_s, event.kind, event.name) for event in course.events]  # type: ignore[attr-defined]


def test_together_each_gives_the_same_and_the_last_gives_all() -> None:
    course = tank_course(TWINS, [Burn(rate_m3_s=0.1, tanks=("left", "right"))])
    assert [leg.flow_m3_s for leg in course.legs] == [(-0.05, -0.05), (0.0, -0.1)]
    assert happened(course) == [
        (20.0, "empty", "left"),
        (25.0, "empty", "right"),
        (25.0, "runs dry", ""),
        (25.0, "end", ""),
    ]
    assert course.dry_s == 25.0
    assert course.contents_m3 == (0.0, 0.0)
    assert course.burned_m3 == 2.5


def test_in_order_one_is_emptied_after_the_other() -> None:
    course = tank_course(TWINS, [Burn(rate_m3_s=0.1, tanks=("right", "left"), order="in order")])
    assert [leg.flow_m3_s for leg in course.legs] == [(0.0, -0.1), (-0.1, 0.0)]
    assert course.dry_s == pytest.approx(25.0, rel=1e-15)


def test_a_schedule_goes_from_burn_to_burn() -> None:
    plan = [Burn(rate_m3_s=0.1, tanks=("left",), for_s=5.0), Burn(rate_m3_s=0.0, for_s=2.0)]
    course = tank_course(TWINS, [*plan, Burn(rate_m3_s=0.2, tanks=("right",), for_s=1.0)])
    assert [(leg.start_s, leg.end_s, leg.burn_m3_s) for leg in course.legs] == [
        (0.0, 5.0, 0.1),
        (5.0, 7.0, 0.0),
        (7.0, 8.0, 0.2),
    ]
    assert course.dry_s is None
    assert course.contents_m3 == pytest.approx((0.5, 1.3), abs=1e-15)
    assert course.contents_at(6.0) == (0.5, 1.5)


def test_a_plan_of_too_many_legs_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    # 10 000 legs take seconds: the rule is the same for ten.
    monkeypatch.setattr("lab.mechanics.tank_courses.MOST_LEGS", 10)
    burn = Burn(rate_m3_s=0.01, tanks=("left",), for_s=1.0)
    assert len(tank_course(TWINS, [burn] * 10).legs) == 10
    with pytest.raises(MechanicsError, match="the burn plan has not settled after 10 legs; give fewer burns and pumps"):
        tank_course(TWINS, [burn] * 11)


def test_until_stops_the_plan_early() -> None:
    course = tank_course(TWINS, [Burn(rate_m3_s=0.1, tanks=("left",))], until_s=4.0)
    assert happened(course) == [(4.0, "end", "")]
    assert course.contents_m3[0] == pytest.approx(0.6, abs=1e-15)


def test_a_pump_moves_across_and_stops_with_its_source() -> None:
    pump = Pump(source="left", target="right", rate_m3_s=0.25, from_s=1.0, until_s=9.0)
    course = tank_course((TWINS[0], tank("right", 0.5)), [Burn(rate_m3_s=0.0, for_s=10.0)], pumps=[pump])
    assert happened(course) == [
        (1.0, "pump starts", "left to right"),
        (5.0, "empty", "left"),
        (9.0, "pump stops", "left to right"),
        (10.0, "end", ""),
    ]
    assert [leg.pump_m3_s for leg in course.legs] == [(0.0,), (0.25,), (0.0,), (0.0,)]
    assert course.contents_m3 == (0.0, 1.5)


def test_a_full_tank_takes_no_more_than_is_drawn_from_it() -> None:
    pump = Pump(source="right", target="left", rate_m3_s=0.3)
    course = tank_course(
        (tank("left", 0.9, capacity=1.0), TWINS[1]), [Burn(rate_m3_s=0.1, tanks=("left",))], pumps=[pump]
    )
    full = course.legs[1]
    assert full.start_s == pytest.approx(0.5, rel=1e-14)
    assert full.flow_m3_s == pytest.approx((0.0, -0.1), abs=1e-16)
    assert full.flow_m3_s[0] == 0.0
    assert full.pump_m3_s == pytest.approx((0.1,), rel=1e-14)
    assert course.burned_m3 == pytest.approx(2.4, rel=1e-14)


def test_an_empty_collector_passes_on_what_comes_in() -> None:
    collector = tank("collector", 0.0, capacity=0.1)
    pump = Pump(source="right", target="collector", rate_m3_s=0.05)
    plan = [Burn(rate_m3_s=0.1, tanks=("collector", "left"))]
    course = tank_course((*TWINS, collector), plan, pumps=[pump])
    first = course.legs[0]
    assert first.flow_m3_s == pytest.approx((-0.05, -0.05, 0.0), abs=1e-16)
    assert first.burn_m3_s == pytest.approx(0.1, rel=1e-15)
    # Alone, the collector passes on too little: the burn runs dry with the right tank half full.
    assert course.dry_s == pytest.approx(20.0, rel=1e-14)
    assert course.contents_m3[1] == pytest.approx(0.5, rel=1e-13)


def test_pumps_through_an_empty_tank_pass_it_by_share() -> None:
    tanks = (tank("a", 1.0), tank("b", 0.0), tank("c", 0.0), tank("d", 0.0))
    pumps = [
        Pump(source="a", target="b", rate_m3_s=0.03),
        Pump(source="b", target="c", rate_m3_s=0.04),
        Pump(source="b", target="d", rate_m3_s=0.02),
    ]
    course = tank_course(tanks, [Burn(rate_m3_s=0.0, for_s=10.0)], pumps=pumps)
    assert course.legs[0].pump_m3_s == pytest.approx((0.03, 0.02, 0.01), rel=1e-14)
    assert course.contents_m3 == pytest.approx((0.7, 0.0, 0.2, 0.1), abs=1e-15)


def test_a_plan_that_is_dry_from_the_start_is_one_instant() -> None:
    course = tank_course([tank("left", 0.0)], [Burn(rate_m3_s=0.1, tanks=("left",))])
    assert course.dry_s == 0.0
    assert [(leg.start_s, leg.end_s) for leg in course.legs] == [(0.0, 0.0)]
    path = balance_path([Part("hull", 1.0, (0.3, 0, 0))], course)
    assert path.point_at(0.0).balance_point_m[0] == 0.3


def test_the_path_is_the_moment_sum_at_every_instant() -> None:
    tanks = (tank("left", 1.0, at=2.0), tank("right", 1.5, at=-1.0))
    hull = Part("hull", 900.0, (0.3, 0.1, -0.2))
    course = tank_course(tanks, [Burn(rate_m3_s=0.1, tanks=("left", "right"))])
    path = balance_path([hull], course)
    for at_s in (0.0, 7.0, 20.0, 23.0):
        held = zip(tanks, course.contents_at(at_s), strict=True)
        now = [Part(each.name, contents * 800.0, each.at_m) for each, contents in held if contents > 0.0]
        table = moment_sum([hull, *now])
        point = path.point_at(at_s)
        assert point.mass_kg == pytest.approx(table.mass_kg, rel=1e-14)
        assert point.balance_point_m == pytest.approx(table.balance_point_m, abs=1e-14)


def test_the_points_to_draw_go_through_every_leg_end() -> None:
    course = tank_course(TWINS, [Burn(rate_m3_s=0.1, tanks=("left", "right"))])
    points = balance_path([Part("hull", 900.0, (0.3, 0, 0))], course).points(each_leg=4)
    assert [point.at_s for point in points] == [0.0, 5.0, 10.0, 15.0, 20.0, 21.25, 22.5, 23.75, 25.0]


def test_contents_are_parts_and_an_empty_tank_is_none() -> None:
    (part,) = tank_parts([tank("left", 0.5, at=1.0), tank("right", 0.0)])
    assert (part.name, part.mass_kg, part.at_m) == ("left", 400.0, (1.0, 0.0, 0.0))


def test_what_a_tank_a_burn_or_a_pump_cannot_be_is_refused() -> None:
    with pytest.raises(MechanicsError, match=r"contents of tank 'left' are 3\.0 m³; they must be at most its"):
        tank("left", 3.0)
    with pytest.raises(MechanicsError, match=r"contents of tank 'left' is -1\.0 m³"):
        tank("left", -1.0)
    with pytest.raises(MechanicsError, match=r"density of tank 't' is 0\.0 kg/m³"):
        Tank(name="t", at_m=(0, 0, 0), capacity_m3=1.0, contents_m3=0.0, density_kg_m3=0.0)
    with pytest.raises(MechanicsError, match=r"a burn of 0\.1 m³/s names no tank"):
        Burn(rate_m3_s=0.1)
    with pytest.raises(MechanicsError, match="a burn draws from left, left; each tank may be named once"):
        Burn(rate_m3_s=0.1, tanks=("left", "left"))
    with pytest.raises(MechanicsError, match="order of a burn is 'last'; it must be one of together, in order"):
        Burn(rate_m3_s=0.1, tanks=("left",), order="last")  # type: ignore[arg-type]
    with pytest.raises(MechanicsError, match=r"runs from 5\.0 s until 5\.0 s; it must end later"):
        Pump(source="left", target="right", rate_m3_s=0.1, from_s=5.0, until_s=5.0)
    with pytest.raises(MechanicsError, match="the pump from 'left' to 'left' goes nowhere"):
        Pump(source="left", target="left", rate_m3_s=0.1)


def test_what_a_plan_cannot_be_is_refused() -> None:
    burn = Burn(rate_m3_s=0.1, tanks=("left",))
    with pytest.raises(MechanicsError, match="there is no tank 'tail'; there are left, right"):
        tank_course(TWINS, [Burn(rate_m3_s=0.1, tanks=("tail",))])
    with pytest.raises(MechanicsError, match="the name 'left' is used twice; each tank needs its own"):
        tank_course([TWINS[0], TWINS[0]], [burn])
    with pytest.raises(MechanicsError, match="the burn plan is empty"):
        tank_course(TWINS, [])
    with pytest.raises(MechanicsError, match="a burn without a duration is followed by another"):
        tank_course(TWINS, [burn, burn])
    with pytest.raises(MechanicsError, match="nothing ends the burn plan; give its last burn a duration"):
        tank_course(TWINS, [Burn(rate_m3_s=0.0)])
    ring = [
        Pump(source="left", target="right", rate_m3_s=0.1),
        Pump(source="right", target="left", rate_m3_s=0.2),
    ]
    with pytest.raises(MechanicsError, match="pumps that run at the same time go round in a ring"):
        tank_course(TWINS, [Burn(rate_m3_s=0.0, for_s=1.0)], pumps=ring)
    course = tank_course(TWINS, [burn])
    with pytest.raises(MechanicsError, match=r"instant is 11\.0 s; the course runs from 0\.0 s to 10\.0 s"):
        course.contents_at(11.0)
    hull = Part("left", 1.0, (0, 0, 0))
    with pytest.raises(MechanicsError, match="the name 'left' is a part's and a tank's; each needs its own"):
        balance_path([hull], course)
    path = balance_path([Part("hull", 1.0, (0, 0, 0))], course)
    with pytest.raises(MechanicsError, match=r"instant is -1\.0 s; the path runs from 0\.0 s to 10\.0 s"):
        path.point_at(-1.0)
