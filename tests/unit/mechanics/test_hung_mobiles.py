"""Mobiles: level when each bar is; every bar feels the whole below it at its hook."""

from math import radians, sin

import pytest

from lab.mechanics import HungBar, MechanicsError, MobileBar, Part, Pivot, Rod, mobile_sum


def twig(name: str, left_kg: float, right_kg: float, pin_m: float, **options: object) -> MobileBar:
    parts = (
        Part(f"{name} rod", 0.02, (0.1, 0.0, 0.0), Rod(0.2)),
        Part(f"{name} left", left_kg, (0.0, 0.0, 0.0), hold="hung"),
        Part(f"{name} right", right_kg, (0.2, 0.0, 0.0), hold="hung"),
    )
    return MobileBar(name, parts, Pivot(pin_m, up_m=0.01), **options)  # type: ignore[arg-type]


def branch(*, hook_m: float = 0.1, weight_kg: float = 0.08) -> MobileBar:
    parts = (Part("branch rod", 0.04, (0.2, 0, 0), Rod(0.4)), Part("fish", weight_kg, (0.3, 0, 0), hold="hung"))
    low = twig("twig", 0.03, 0.03, 0.1)
    return MobileBar("branch", parts, Pivot(0.2, up_m=0.01), below=(HungBar(low, (hook_m, 0, 0), 0.15),))


def test_a_mobile_is_level_when_each_bar_is_and_its_cord_holds_it_all() -> None:
    found = mobile_sum(branch())
    assert found.is_level
    assert found.askew == ()
    assert [(level.name, level.above, level.depth) for level in found.levels] == [
        ("branch", None, 0),
        ("twig", "branch", 1),
    ]
    assert found.mass_kg == pytest.approx(0.04 + 0.08 + 0.08, rel=1e-15)
    top, low = found.levels
    assert top.sum.rows[-1].name == "twig"
    assert top.sum.rows[-1].mass_kg == pytest.approx(low.carried_kg, rel=1e-15)
    assert top.sum.rows[-1].arm_m[0] == pytest.approx(-0.1, abs=1e-15)
    assert top.sum.moment_kg_m[0] == pytest.approx(0.0, abs=1e-15)


def test_where_weights_hang_inside_the_bar_below_does_not_matter_above() -> None:
    skewed = twig("twig", 0.05, 0.01, 0.1)
    below = (HungBar(skewed, (0.1, 0, 0)),)
    found = mobile_sum(MobileBar("branch", branch().parts, Pivot(0.2, up_m=0.01), below=below))
    assert not found.is_level
    assert found.askew == ("twig",)
    assert found.levels[1].turn.goes == "left"


def test_a_bar_that_tilts_takes_the_pins_below_it_along() -> None:
    found = mobile_sum(branch(weight_kg=0.5))
    top, low = found.levels
    assert top.turn.goes == "right"
    assert top.turn.tilt_rad is None
    assert top.tilt_rad == -radians(20.0)
    # The hook, 0.1 left of the pin and 1 cm below it, rises as the right end drops; then a cord of 0.15.
    assert low.pin_m[1] == pytest.approx(0.1 * sin(radians(20.0)) - 0.01 * 0.9396926207859084 - 0.15, abs=1e-12)
    assert low.tilt_rad == 0.0


def test_a_mobile_may_be_deeper_than_the_stack() -> None:
    bar = twig("twig", 0.03, 0.03, 0.1)
    for number in range(3000):
        rod = Part(f"rod {number}", 0.01, (0.2, 0, 0), Rod(0.4))
        bar = MobileBar(f"bar {number}", (rod,), Pivot(0.2), below=(HungBar(bar, (0.2, 0, 0)),))
    found = mobile_sum(bar)
    assert found.is_level
    assert len(found.levels) == 3001
    assert found.mass_kg == pytest.approx(0.08 + 30.0, rel=1e-12)


def test_what_no_mobile_can_be_is_refused() -> None:
    low = twig("twig", 0.03, 0.03, 0.1)
    with pytest.raises(MechanicsError, match="the name 'twig' is used twice in the mobile; each bar needs its own"):
        mobile_sum(MobileBar("top", low.parts, Pivot(0.1), below=(HungBar(low, (0, 0, 0)), HungBar(low, (0.2, 0, 0)))))
    with pytest.raises(MechanicsError, match="there is no part"):
        mobile_sum(MobileBar("top", (), Pivot(0.1), below=(HungBar(low, (0.1, 0, 0)),)))
    with pytest.raises(MechanicsError, match="part 'hole' of bar 'top' is a cut-out"):
        MobileBar("top", (Part("hole", 0.1, (0, 0, 0), cut=True),), Pivot(0.0))
    with pytest.raises(MechanicsError, match=r"cord of bar 'twig' is -1\.0 m"):
        HungBar(low, (0.0, 0.0, 0.0), -1.0)
