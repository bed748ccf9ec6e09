"""Two fingers slid together: which one moves, where it stops, and that they meet under the balance point."""

from itertools import pairwise

import pytest

from lab.mechanics import FingerSlide, FingerTips, Friction, MechanicsError, Part, two_finger_slide

OAR = [Part("loom", 0.8, (0.6, 0.0, 0.0)), Part("blade", 0.4, (0.9, 0.0, 0.0))]  # balances at 0.7
WOOD = Friction(0.5, 0.3)


def slide(parts: list[Part] = OAR, first: float = 0.0, second: float = 1.0, **options: Friction | float) -> FingerSlide:
    found = two_finger_slide(parts, first, second, **{"left": WOOD, **options})  # type: ignore[arg-type]
    assert isinstance(found, FingerSlide)
    return found


def test_the_farther_finger_slides_first_and_past_the_even_place() -> None:
    first, second, *_ = slide().legs
    assert (first.mover, second.mover) == ("left", "right")
    # Left stops 0.3 / 0.5 of the right one's distance from the balance point: 0.7 − 0.6 × 0.3.
    assert first.to_m == pytest.approx((0.52, 1.0), abs=1e-15)
    assert second.to_m == pytest.approx((0.52, 0.7 + 0.6 * 0.18), abs=1e-15)


def test_legs_follow_each_other_in_turn_until_the_fingers_touch_about_the_balance_point() -> None:
    found = slide(touch_m=1e-6)
    for before, after in pairwise(found.legs):
        assert before.to_m == after.from_m
        assert before.mover != after.mover
    left, right = found.legs[-1].to_m
    assert right - left == pytest.approx(1e-6, rel=1e-9)
    assert left < found.meeting_m < right
    assert found.meeting_m == pytest.approx(0.7, abs=1e-15)


def test_a_leg_ends_where_the_sliding_friction_is_what_the_other_can_just_hold() -> None:
    found = slide()
    for leg in found.legs[:-1]:
        end = found.forces_at(leg.gap_m[1])
        holds = end.right_holds_n if leg.mover == "left" else end.left_holds_n
        assert end.friction_n == pytest.approx(holds, rel=1e-12)
        start = found.forces_at(leg.gap_m[0] * (1 - 1e-12))
        held = start.right_holds_n if leg.mover == "left" else start.left_holds_n
        assert start.friction_n < held
        assert start.left_normal_n + start.right_normal_n == pytest.approx(found.weight_n, rel=1e-12)


def test_the_weight_changes_no_place() -> None:
    heavy = [Part(part.name, part.mass_kg * 1000.0, part.at_m) for part in OAR]
    ours, theirs = slide(), slide(heavy)
    for one, other in zip(ours.legs, theirs.legs, strict=True):
        # Round-off of a weighted mean of places under 1 m.
        assert one.to_m == pytest.approx(other.to_m, abs=1e-14)


def test_with_static_no_higher_than_kinetic_both_creep_in_once_even() -> None:
    even = slide(left=Friction(0.4, 0.4))
    assert [leg.mover for leg in even.legs] == ["left", "both"]
    assert even.legs[0].to_m == pytest.approx((0.4, 1.0), abs=1e-15)
    assert even.legs[1].to_m == pytest.approx((0.695, 0.705), abs=1e-12)
    assert even.places_m(0.3) == pytest.approx((0.55, 0.85), abs=1e-12)
    forces = even.forces_at(0.3)
    assert forces.friction_n == pytest.approx(forces.left_holds_n, rel=1e-12)


def test_a_smoother_finger_slides_first_although_it_is_nearer() -> None:
    found = slide(right=Friction(0.1, 0.05))
    assert found.legs[0].mover == "right"


def test_a_toss_up_is_said() -> None:
    found = slide([Part("rod", 1.0, (0.1 + 0.2, 0, 0))], 0.0, 0.6)
    assert found.tied
    assert found.legs[0].mover == "left"
    assert not slide().tied


def test_a_finger_under_the_balance_point_carries_all_and_holds() -> None:
    found = slide([Part("rod", 1.0, (0.1 + 0.2, 0, 0))], 0.3, 0.6)
    (leg,) = found.legs
    assert leg.mover == "right"
    assert leg.to_m == pytest.approx((0.3, 0.31), abs=1e-12)
    assert found.forces_at(0.2).friction_n == pytest.approx(0.0, abs=1e-12)


def test_places_follow_from_the_gap_and_stay_at_their_ends() -> None:
    found = slide()
    assert found.places_m(2.0) == (pytest.approx(0.0, abs=1e-15), 1.0)
    assert found.places_m(0.9) == pytest.approx((0.1, 1.0), abs=1e-14)
    assert found.places_m(0.0) == pytest.approx(found.legs[-1].to_m, abs=1e-14)
    with pytest.raises(MechanicsError, match="gap between the fingers is nan m"):
        found.places_m(float("nan"))


@pytest.mark.parametrize(
    ("left", "right", "tips"),
    [
        (0.0, 0.6, FingerTips(goes="right", over="right", beyond_m=0.1)),
        (0.8, 1.0, FingerTips(goes="left", over="left", beyond_m=0.1)),
    ],
)
def test_fingers_that_do_not_span_the_balance_point_let_it_tip(left: float, right: float, tips: FingerTips) -> None:
    found = two_finger_slide(OAR, left, right, left=WOOD)
    assert isinstance(found, FingerTips)
    assert (found.goes, found.over) == (tips.goes, tips.over)
    assert found.beyond_m == pytest.approx(tips.beyond_m, abs=1e-15)


def test_what_fingers_cannot_be_is_refused() -> None:
    with pytest.raises(MechanicsError, match=r"kinetic friction is 0\.6; it must be at most the static, 0\.5"):
        Friction(0.5, 0.6)
    with pytest.raises(MechanicsError, match=r"kinetic friction is 0\.0"):
        Friction(0.5, 0.0)
    with pytest.raises(MechanicsError, match=r"fingers are at 0\.5 m and 0\.5 m; the right one must be"):
        two_finger_slide(OAR, 0.5, 0.5, left=WOOD)
    with pytest.raises(MechanicsError, match="the fingers take more than 1000 turns"):
        two_finger_slide(OAR, 0.0, 1.0, left=Friction(0.5, 0.4999), touch_m=1e-6)
