"""Ballast: at one place, its curve, the lightest over all places, and beside moving a part."""

from itertools import combinations, pairwise

import numpy as np
import pytest

from lab.mechanics import (
    BallastPlace,
    CannotBeDone,
    LightestBallast,
    MechanicsError,
    Part,
    balancing_ways,
    ballast_curve,
    ballast_kg,
    lightest_ballast,
    moment_sum,
)

GLIDER = [Part("wing", 0.3, (0.31, 0.01, 0.0)), Part("battery", 0.2, (0.1, -0.02, 0.0))]


def answer(parts: list[Part], places: list[BallastPlace], **target_m: object) -> LightestBallast:
    found = lightest_ballast(parts, places, target_m=target_m)  # type: ignore[arg-type]
    assert isinstance(found, LightestBallast), found
    return found


def refusal(parts: list[Part], places: list[BallastPlace], **target_m: object) -> CannotBeDone:
    found = lightest_ballast(parts, places, target_m=target_m)  # type: ignore[arg-type]
    assert isinstance(found, CannotBeDone), found
    return found


def test_ballast_at_a_place_balances_there() -> None:
    ballast = ballast_kg(whole_kg=0.5, now_m=0.226, target_m=0.2, at_m=0.02)
    assert ballast == pytest.approx(0.5 * 0.026 / 0.18, rel=1e-13)
    assert ballast_kg(whole_kg=0.5, now_m=0.2, target_m=0.2, at_m=0.02) == 0.0
    # Round-off past the target, with the place on the wrong side for it: there already.
    assert ballast_kg(whole_kg=0.5, now_m=0.1 + 0.2, target_m=0.3, at_m=0.9) == 0.0


def test_ballast_on_the_wrong_side_or_at_the_target_cannot_be_done_and_says_why() -> None:
    for at_m in (0.3, 0.2):
        found = ballast_kg(whole_kg=0.5, now_m=0.226, target_m=0.2, at_m=at_m)
        assert isinstance(found, CannotBeDone)
        assert found.reason == "side"
        assert found.why == (
            f"ballast at {at_m} m cannot bring the balance point from 0.226 m to 0.2 m; it must be below 0.2 m"
        )
    endless = ballast_kg(whole_kg=1e300, now_m=1e5, target_m=0.0, at_m=-1e-5)
    assert isinstance(endless, CannotBeDone)
    assert endless.reason == "too heavy"


def test_the_curve_runs_from_the_far_end_to_exactly_the_most_allowed() -> None:
    curve = ballast_curve(whole_kg=0.5, now_m=0.226, target_m=0.2, from_m=0.3, to_m=0.0, most_kg=0.5, count=9)
    assert not isinstance(curve, CannotBeDone)
    assert len(curve) == 9
    assert curve[0].at_m == 0.0
    assert curve[-1].mass_kg == pytest.approx(0.5, rel=1e-12)
    assert all(a.mass_kg < b.mass_kg for a, b in pairwise(curve))
    for point in curve:
        balanced = moment_sum([Part("all", 0.5, (0.226, 0, 0)), Part("lead", point.mass_kg, (point.at_m, 0, 0))])
        assert balanced.balance_point_m[0] == pytest.approx(0.2, abs=1e-15)


def test_a_curve_that_cannot_be_says_why() -> None:
    short = ballast_curve(whole_kg=0.5, now_m=0.226, target_m=0.2, from_m=0.1, to_m=0.15, most_kg=0.01)
    assert isinstance(short, CannotBeDone)
    assert short.reason == "room"
    assert "even at 0.1 m it takes" in short.why
    wrong = ballast_curve(whole_kg=0.5, now_m=0.226, target_m=0.2, from_m=0.3, to_m=0.4, most_kg=1.0)
    assert isinstance(wrong, CannotBeDone)
    assert wrong.reason == "side"
    level = ballast_curve(whole_kg=0.5, now_m=0.2, target_m=0.2, from_m=0.3, to_m=0.4, most_kg=1.0)
    assert not isinstance(level, CannotBeDone)
    assert [point.mass_kg for point in level] == [0.0, 0.0]
    with pytest.raises(MechanicsError, match="the curve has 1 points"):
        ballast_curve(whole_kg=0.5, now_m=0.2, target_m=0.2, from_m=0.3, to_m=0.4, most_kg=1.0, count=1)


def test_on_one_axis_the_farthest_place_is_the_lightest() -> None:
    found = answer(GLIDER, [BallastPlace("near", (0.1, 0, 0)), BallastPlace("nose", (0.02, 0, 0))], along=0.2)
    assert [load.place for load in found.loads] == ["nose"]
    assert found.mass_kg == pytest.approx(0.5 * 0.026 / 0.18, rel=1e-13)
    assert found.balance_point_m[0] == pytest.approx(0.2, abs=1e-15)
    assert found.whole_kg == pytest.approx(0.5 + found.mass_kg, rel=1e-15)
    assert not found.tied


def test_a_full_place_hands_on_to_the_next() -> None:
    nose = BallastPlace("nose", (0.0, 0, 0), most_kg=0.03)
    found = answer(GLIDER, [BallastPlace("near", (0.1, 0, 0)), nose], along=0.2)
    assert [load.place for load in found.loads] == ["near", "nose"]
    assert found.loads[1].mass_kg == pytest.approx(0.03, rel=1e-15)
    assert found.loads[0].mass_kg == pytest.approx((0.5 * 0.026 - 0.03 * 0.2) / 0.1, rel=1e-12)


def test_a_strip_takes_one_load_anywhere_on_it() -> None:
    found = answer(GLIDER, [BallastPlace("spar", (0.0, -0.5, 0), (0.0, 0.5, 0))], along=0.2, across=0.0)
    (load,) = found.loads
    assert load.at_m[0] == 0.0
    assert load.mass_kg == pytest.approx(0.5 * 0.026 / 0.2, rel=1e-12)
    # 0.3 kg × 1 cm − 0.2 kg × 2 cm = −1 g m, so the load sits as much to the right.
    assert load.mass_kg * load.at_m[1] == pytest.approx(0.001, rel=1e-12)


def test_ties_are_said_also_where_round_off_hides_them() -> None:
    places = [BallastPlace("left", (0.1 + 0.2, 0.1, 0)), BallastPlace("right", (0.3, -0.1, 0))]
    found = answer([Part("plank", 2.0, (0.1, 0, 0))], places, along=0.15)
    assert found.tied
    assert found.all_found
    assert {found.loads[0].place, found.as_light[0][0].place} == {"left", "right"}


def test_a_target_range_is_entered_at_its_nearest_edge() -> None:
    found = answer(GLIDER, [BallastPlace("nose", (0.02, 0, 0))], along=(0.15, 0.21))
    assert found.balance_point_m[0] == pytest.approx(0.21, abs=1e-15)
    assert answer(GLIDER, [BallastPlace("nose", (0.02, 0, 0))], along=(0.15, 0.23)).loads == ()


def test_what_balances_already_needs_nothing() -> None:
    found = answer([Part("rod", 1.0, (0.1 + 0.2, 0, 0))], [BallastPlace("end", (0.5, 0, 0))], along=0.3)
    assert found.loads == ()
    assert found.mass_kg == 0.0


def test_places_on_one_line_with_the_target_to_the_last_bit_do() -> None:
    """Off the line by round-off only: as if on it, and the farther place is the lighter one."""
    places = [BallastPlace("near", (-0.1, -0.3, 0)), BallastPlace("far", (-0.3, -0.9, 0))]
    found = answer([Part("body", 1.0, (0.1, 0.1 + 0.2, 0))], places, along=0.0, across=0.0)
    assert [load.place for load in found.loads] == ["far"]
    assert found.mass_kg == pytest.approx(1 / 3, rel=1e-9)


def test_what_cannot_be_done_says_the_side_the_axes_or_the_room() -> None:
    assert refusal(GLIDER, [BallastPlace("tail", (0.9, 0, 0))], along=0.2).why == (
        "no ballast place lies below 0.2 m along; only from beyond it can ballast bring the balance point there "
        "from 0.226 m"
    )
    crossed = [BallastPlace("one", (0.1, 0.3, 0)), BallastPlace("two", (0.3, -0.1, 0))]
    both = refusal(GLIDER, crossed, along=0.2, across=0.0)
    assert both.reason == "together"
    assert both.why == "the places can bring each of along and across right, but not all of them at once"
    room = refusal(GLIDER, [BallastPlace("n", (0.1, 0, 0), most_kg=0.01)], along=0.2)
    assert room.reason == "room"
    assert room.why == "the places hold too little; if they held any amount, 0.13 kg would do"
    assert refusal(GLIDER, [], along=0.2).reason == "side"


def test_what_the_search_cannot_use_is_refused() -> None:
    place = BallastPlace("nose", (0.0, 0, 0))
    with pytest.raises(MechanicsError, match="the name 'nose' is used twice; each ballast place needs its own"):
        lightest_ballast(GLIDER, [place, place], target_m={"along": 0.2})
    with pytest.raises(MechanicsError, match="targets are for no axis; give some of along, across, up"):
        lightest_ballast(GLIDER, [place], target_m={})
    with pytest.raises(MechanicsError, match=r"target along runs from 0\.3 m to 0\.2 m; the lower end must come first"):
        lightest_ballast(GLIDER, [place], target_m={"along": (0.3, 0.2)})
    with pytest.raises(MechanicsError, match=r"most mass of ballast place 'n' is 0\.0 kg"):
        BallastPlace("n", (0, 0, 0), most_kg=0.0)


def test_no_grid_of_allowed_loads_is_lighter() -> None:
    """All pairs of points of the strips, each pair's two masses solved: none beats the programme's answer."""
    rng = np.random.default_rng(12)
    for _ in range(20):
        ends = rng.uniform(-0.5, 0.5, (4, 2, 2))
        places = [
            BallastPlace(f"strip {n}", (*first.tolist(), 0.0), (*second.tolist(), 0.0))
            for n, (first, second) in enumerate(ends)
        ]
        body = Part("body", 1.0, (*rng.uniform(-0.1, 0.1, 2).tolist(), 0.0))
        found = lightest_ballast([body], places, target_m={"along": 0.0, "across": 0.0})
        points = np.concatenate([np.linspace(first, second, 9) for first, second in ends])
        least = np.inf
        for one, two in combinations(range(len(points)), 2):
            matrix = points[[one, two]].T
            if abs(np.linalg.det(matrix)) > 1e-9:
                masses = np.linalg.solve(matrix, -np.array(body.at_m[:2]))
                if (masses >= 0.0).all():
                    least = min(least, float(masses.sum()))
        if isinstance(found, CannotBeDone):
            assert least == np.inf
        else:
            # The ends are on the grid, so the grid does as well, to the round-off of its solver.
            assert found.mass_kg == pytest.approx(least, rel=1e-9)


def test_a_heavy_part_moved_a_little_stands_beside_a_light_one_added_far_out() -> None:
    ways = balancing_ways(
        GLIDER,
        target_m=0.2,
        movable={"wing": (0.3, 0.4), "battery": (0.0, 0.2)},
        places=[
            BallastPlace("near", (0.1, 0, 0)),
            BallastPlace("nose", (0.02, 0, 0)),
            BallastPlace("tail", (0.9, 0, 0)),
        ],
    )
    kinds = [(way.name, getattr(way, "kind", "cannot")) for way in ways]
    assert kinds == [("battery", "move"), ("nose", "add"), ("near", "add"), ("wing", "cannot"), ("tail", "cannot")]
    battery, nose, near = (way for way in ways if not isinstance(way, CannotBeDone))
    assert battery.by_m == pytest.approx(-0.5 * 0.026 / 0.2, rel=1e-12)
    assert battery.added_kg == 0.0
    assert nose.added_kg < near.added_kg
    wing = ways[3]
    assert isinstance(wing, CannotBeDone)
    assert wing.why.startswith("wing would have to go to 0.266")
    assert wing.why.endswith("it can be moved from 0.3 m to 0.4 m")


def test_a_hole_is_moved_the_other_way() -> None:
    plate = [Part("plate", 2.0, (0.0, 0, 0)), Part("hole", 0.5, (0.2, 0, 0), cut=True)]
    (way,) = balancing_ways(plate, target_m=0.0, movable={"hole": None})
    assert not isinstance(way, CannotBeDone)
    assert way.at_m[0] == pytest.approx(0.0, abs=1e-15)
