"""The switch that says how well things were measured."""

from typing import Any

import pytest

from lab.mechanics import balance_point_doubt_m


def _bench(pilot: Any) -> Any:
    return pilot.lab._room._bench.session.state


def test_it_says_how_far_off_the_balance_point_may_be_and_can_be_taken_back(pilot: Any):
    pilot.press("to-build")
    pilot.press("view.all")
    assert not pilot.has("doubt.told")
    pilot.press("doubt")
    # Weights 200, 100 and 50 g at 15, 72 and 90 cm, a bar of 150 g at 50: 44.4 cm. By hand, in cm, each part's two
    # rows ((x − 44.4) / 500 × 1 g, and m / 500 × 0.1 cm), squared and added, the root taken.
    rows = [(x - 44.4) / 500 for x in (15, 72, 90)] + [m / 500 * 0.1 for m in (200, 100, 50)]
    by_hand_cm = sum(row**2 for row in rows) ** 0.5
    doubt_m = balance_point_doubt_m(_bench(pilot).parts)
    assert doubt_m is not None
    assert doubt_m[0] == pytest.approx(by_hand_cm / 100, rel=1e-12)
    assert pilot.says(f"44.40 ± {by_hand_cm:.2f} cm")
    pilot.press("doubt")
    assert not pilot.has("doubt.told")
    pilot.press("undo")
    assert pilot.has("doubt.told")


def test_it_is_reached_and_worked_by_keys_alone(pilot: Any):
    pilot.press("to-build")
    pilot.tab_to("doubt")
    pilot.key("enter")
    assert "selected" in pilot.node("doubt").state
