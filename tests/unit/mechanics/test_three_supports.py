"""Three supports, and what statics cannot tell."""

import pytest

from lab.mechanics import STANDARD_GRAVITY_M_S2, MechanicsError, Part, support_reactions_n, two_support_reactions_n

TRIPOD = ((0.0, 0.0, 0.0), (1.0, 0.0, 0.0), (0.0, 1.0, 0.0))


def lead(*at_m: float, mass_kg: float = 2.0) -> list[Part]:
    return [Part("lead", mass_kg, (at_m[0], at_m[1], 0.5))]


def test_each_of_three_carries_by_how_near_the_load_is() -> None:
    assert support_reactions_n(lead(0.5, 0.2), TRIPOD) == pytest.approx(
        [2.0 * STANDARD_GRAVITY_M_S2 * share for share in (0.3, 0.5, 0.2)]
    )


def test_over_one_of_them_it_carries_all_and_the_others_nothing_at_all() -> None:
    assert support_reactions_n(lead(1.0, 0.0), TRIPOD) == (0.0, pytest.approx(2.0 * STANDARD_GRAVITY_M_S2), 0.0)


def test_on_the_line_between_two_it_stands_and_a_little_past_it_tips() -> None:
    assert support_reactions_n(lead(0.5, 0.0), TRIPOD) is not None
    assert support_reactions_n(lead(0.5, 0.5), TRIPOD) is not None
    assert support_reactions_n(lead(0.5, -1e-6), TRIPOD) is None
    assert support_reactions_n(lead(0.500001, 0.500001), TRIPOD) is None


def test_the_order_of_supports_is_the_order_of_answers() -> None:
    first = support_reactions_n(lead(0.5, 0.2), TRIPOD)
    turned = support_reactions_n(lead(0.5, 0.2), (TRIPOD[2], TRIPOD[1], TRIPOD[0]))
    assert first is not None
    assert turned == pytest.approx(first[::-1])


def test_two_are_edges_across_wherever_the_load_lies_across() -> None:
    load = lead(0.25, 7.0)
    assert support_reactions_n(load, TRIPOD[:2]) == two_support_reactions_n(load, 0.0, 1.0)


def test_what_statics_cannot_tell_is_refused() -> None:
    four = (*TRIPOD, (1.0, 1.0, 0.0))
    with pytest.raises(MechanicsError, match="there are 4 supports; statics can tell what two carry, or three not in"):
        support_reactions_n(lead(0.5, 0.5), four)
    for number in (0, 1):
        with pytest.raises(
            MechanicsError, match=f"the number of supports is {number}; it must be two, or three not in"
        ):
            support_reactions_n(lead(0.5, 0.5), TRIPOD[:number])
    with pytest.raises(MechanicsError, match="the three supports are in one line; move one of them out of it"):
        support_reactions_n(lead(0.5, 0.5), ((0.0, 0.0, 0.0), (0.1, 0.1, 0.0), (0.3, 0.3, 5.0)))
    with pytest.raises(MechanicsError, match="the three supports are in one line"):
        support_reactions_n(lead(0.5, 0.5), ((1.0, 1.0, 0.0),) * 3)
    with pytest.raises(MechanicsError, match=r"both supports are at 0\.0 m; they must be apart"):
        support_reactions_n(lead(0.5, 0.5), (TRIPOD[0], TRIPOD[2]))
    with pytest.raises(MechanicsError, match=r"place of support 2 is nan m"):
        support_reactions_n(lead(0.5, 0.5), (TRIPOD[0], (float("nan"), 0.0, 0.0)))
