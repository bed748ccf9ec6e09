"""Standing, tipping, sliding."""

from math import atan, inf, nan, pi, radians, sqrt

import pytest

from lab.mechanics import MechanicsError, Part, footing, slide_or_tip, support_polygon_m

FEET = ((0.0, 0.0), (0.4, 0.0), (0.4, 0.2), (0.0, 0.2))


def lead(*at_m: float) -> list[Part]:
    return [Part("lead", 2.0, (at_m[0], at_m[1], at_m[2]))]


def test_the_polygon_goes_round_the_outermost_feet_only() -> None:
    feet = [*FEET[::-1], (0.2, 0.1), (0.2, 0.0), (0.4, 0.2)]
    assert support_polygon_m(feet) == FEET


def test_how_far_it_is_from_each_edge_and_how_far_it_may_be_tilted_over_it() -> None:
    body = footing(lead(0.1, 0.1, 0.3), FEET)
    assert body.stands
    assert [edge.margin_m for edge in body.edges] == pytest.approx([0.1, 0.3, 0.1, 0.1])
    assert [edge.tip_rad for edge in body.edges] == pytest.approx([atan(1 / 3), atan(1.0), atan(1 / 3), atan(1 / 3)])
    assert body.margin_m == pytest.approx(0.1)
    assert body.tip_rad == pytest.approx(atan(1 / 3))
    assert body.first_edge.margin_m == pytest.approx(0.1)


def test_a_higher_ground_brings_the_balance_point_nearer_to_it() -> None:
    assert footing(lead(0.1, 0.1, 0.3), FEET, ground_m=0.2).height_m == pytest.approx(0.1)
    assert footing(lead(0.1, 0.1, 0.3), FEET, ground_m=0.2).tip_rad == pytest.approx(radians(45.0))


def test_just_over_an_edge_it_stands_and_any_tilt_tips_it() -> None:
    body = footing(lead(0.4, 0.1, 0.3), FEET)
    assert body.stands
    assert body.margin_m == 0.0
    assert body.tip_rad == 0.0


def test_beyond_an_edge_it_tips_at_once() -> None:
    body = footing(lead(0.401, 0.1, 0.3), FEET)
    assert not body.stands
    assert body.margin_m == pytest.approx(-0.001)
    assert body.first_edge.start_m == (0.4, 0.0)
    assert body.tip_rad == 0.0
    assert body.reach_m((1.0, 0.0)) == 0.0


def test_a_balance_point_that_hangs_under_the_ground_takes_more_than_a_quarter_turn() -> None:
    body = footing(lead(0.2, 0.1, -0.1), FEET)
    # From as far under the ground as half the way to its farther edges.
    assert body.tip_rad == pytest.approx(pi / 2 + atan(0.5))
    never = slide_or_tip(body, 0.5)
    assert never.tips_at_rad == pi
    assert never.first == "slides"


def test_a_block_slides_where_friction_is_less_than_its_base_over_its_height() -> None:
    body = footing(lead(0.2, 0.1, 0.4), FEET)  # 0.2 to its lower edge, 0.4 high: tan = 0.5
    slides = slide_or_tip(body, 0.4)
    assert (slides.first, slides.slides_at_rad) == ("slides", pytest.approx(atan(0.4)))
    assert slides.tips_at_rad == pytest.approx(atan(0.5))
    assert slide_or_tip(body, 0.6).first == "tips"
    assert slide_or_tip(body, 0.5).first == "both"
    assert [slides.at(slope) for slope in (0.0, 0.3, 0.4, 0.6)] == ["stands", "stands", "slides", "slides"]
    tips = slide_or_tip(body, 0.6)
    assert [tips.at(slope) for slope in (0.4, 0.5, 0.6)] == ["stands", "tips", "tips"]


def test_which_way_is_downhill_matters() -> None:
    body = footing(lead(0.1, 0.1, 0.4), FEET)
    assert body.reach_m((1.0, 0.0)) == pytest.approx(0.3)
    assert body.reach_m((-2.0, 0.0)) == pytest.approx(0.1)
    assert body.reach_m((1.0, 1.0)) == pytest.approx(0.1 * sqrt(2.0))
    assert slide_or_tip(body, 0.5, (1.0, 0.0)).first == "slides"
    assert slide_or_tip(body, 0.5, (0.0, -1.0)).first == "tips"


def test_without_friction_it_slides_on_any_slope() -> None:
    found = slide_or_tip(footing(lead(0.2, 0.1, 0.4), FEET), 0.0)
    assert (found.first, found.at(0.0), found.at(0.001)) == ("slides", "stands", "slides")


def test_feet_that_enclose_no_ground_are_refused() -> None:
    for feet in ((), FEET[:1], FEET[:2], ((0.0, 0.0), (1.0, 1.0), (3.0, 3.0))):
        with pytest.raises(MechanicsError, match=f"the {len(feet)} feet enclose no ground; a body stands on three or"):
            support_polygon_m(feet)
    with pytest.raises(MechanicsError, match=r"place of a foot is nan m"):
        support_polygon_m([*FEET, (nan, 0.0)])
    with pytest.raises(MechanicsError, match=r"height of the ground is inf m"):
        footing(lead(0.2, 0.1, 0.3), FEET, ground_m=inf)


def test_slopes_and_grips_that_are_none_are_refused() -> None:
    body = footing(lead(0.2, 0.1, 0.4), FEET)
    with pytest.raises(MechanicsError, match=r"friction is -0\.1 \(no unit\); it must be a finite number, 0 or above"):
        slide_or_tip(body, -0.1)
    with pytest.raises(MechanicsError, match=r"direction downhill is \(0, 0\); it must point somewhere"):
        slide_or_tip(body, 0.4, (0.0, 0.0))
    with pytest.raises(MechanicsError, match="the body tips on level ground already; stand it over its feet first"):
        slide_or_tip(footing(lead(1.0, 0.1, 0.4), FEET), 0.4)
    for slope in (-0.1, pi / 2, nan):
        with pytest.raises(MechanicsError, match=r"slope is .* rad; it must be from 0 to under a quarter turn"):
            slide_or_tip(body, 0.4).at(slope)
