"""Two supports under a build."""

import pytest

from lab.mechanics import STANDARD_GRAVITY_M_S2, MechanicsError, Part, Rod, two_support_reactions_n

PLANK = Part("camera pole", 2.0, (1.0, 0.0, 0.0), Rod(2.0))


def test_a_load_at_a_third_is_carried_two_to_one() -> None:
    reactions = two_support_reactions_n([Part("load", 3.0, (1.0, 0.0, 0.0))], 0.0, 3.0)
    assert reactions == pytest.approx((2.0 * STANDARD_GRAVITY_M_S2, 1.0 * STANDARD_GRAVITY_M_S2))


def test_the_supports_may_come_in_either_order() -> None:
    build = [PLANK, Part("load", 1.0, (0.2, 0.0, 0.0))]
    one = two_support_reactions_n(build, 0.1, 1.9)
    assert one is not None
    assert two_support_reactions_n(build, 1.9, 0.1) == (one[1], one[0])


def test_over_one_support_the_other_carries_nothing_and_beyond_it_tips() -> None:
    assert two_support_reactions_n([PLANK], 1.0, 1.8) == pytest.approx((2.0 * STANDARD_GRAVITY_M_S2, 0.0))
    assert two_support_reactions_n([PLANK], 1.001, 1.8) is None
    assert two_support_reactions_n([PLANK], 0.1, 0.999) is None


def test_an_overhanging_load_that_just_tips_it() -> None:
    plank = Part("plank", 30.0, (3.0, 0.0, 0.0), Rod(6.0))
    edge_m = 4.2
    for mass, tips in ((19.999, False), (20.0, False), (20.001, True)):
        load = Part("load", mass, (6.0, 0.0, 0.0))
        assert (two_support_reactions_n([plank, load], 0.0, edge_m) is None) is tips


def test_two_supports_at_one_place_are_refused() -> None:
    with pytest.raises(MechanicsError, match="they must be apart"):
        two_support_reactions_n([PLANK], 0.5, 0.5)
