"""Surfaces, their mean chord, and what is refused of them."""

from math import radians, tan

import numpy as np
import pytest

from lab.mechanics import (
    MechanicsError,
    Surface,
    main_surface,
    mean_chord,
    mean_chord_percent,
    neutral_point,
    pitch_slopes,
)

WING = Surface(name="wing", root_chord_m=0.16, tip_chord_m=0.10, span_m=1.0, sweep_rad=radians(5))
TAIL = Surface(name="tail", root_chord_m=0.09, tip_chord_m=0.07, span_m=0.32, at_m=(0.52, 0.0, 0.0))
FIN = Surface(name="fin", root_chord_m=0.1, tip_chord_m=0.05, span_m=0.12, at_m=(0.55, 0.0, 0.0), vertical=True)


def changed(**values: object) -> Surface:
    given = {"name": "wing", "root_chord_m": 0.16, "tip_chord_m": 0.10, "span_m": 1.0, **values}
    return Surface(**given)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"root_chord_m": 0.0}, "root chord of surface 'wing' is 0.0 m; it must be a finite number above 0"),
        ({"tip_chord_m": -0.1}, "tip chord of surface 'wing' is -0.1 m; it must be a finite number, 0 or above"),
        ({"span_m": float("nan")}, "span of surface 'wing' is nan m; it must be a finite number above 0"),
        ({"at_m": (float("inf"), 0.0, 0.0)}, "place of surface 'wing' is inf m; it must be a finite number"),
        ({"sweep_rad": radians(75)}, "sweep of surface 'wing' is 75 degrees; it must be between -60 and 60 degrees"),
        ({"sweep_rad": float("nan")}, "sweep of surface 'wing' is nan rad; it must be a finite number"),
    ],
)
def test_what_no_surface_can_be_is_refused_by_name(values: dict[str, object], said: str) -> None:
    with pytest.raises(MechanicsError) as refused:
        changed(**values)
    assert str(refused.value) == said


def test_a_name_used_twice_no_flat_surface_and_an_overlap_are_refused() -> None:
    with pytest.raises(MechanicsError, match="the name 'wing' is used twice; each surface needs its own"):
        neutral_point([WING, WING])
    with pytest.raises(MechanicsError, match="no surface lies flat; pitch needs at least one that is not vertical"):
        neutral_point([FIN])
    with pytest.raises(MechanicsError, match="no surface lies flat"):
        main_surface([])
    with pytest.raises(MechanicsError, match="surfaces 'wing' and 'tail' overlap at one height; move one along or up"):
        neutral_point([WING, changed(name="tail", root_chord_m=0.08, span_m=0.3, at_m=(0.05, 0.0, 0.0))])
    with pytest.raises(MechanicsError, match="place that the airframe turns about is nan m"):
        pitch_slopes([WING], float("nan"))


def test_surfaces_over_each_other_or_side_by_side_do_not_overlap() -> None:
    above = changed(name="upper wing", at_m=(0.0, 0.0, 0.1))
    assert neutral_point([WING, above]).lift_slope > neutral_point([WING]).lift_slope
    tails = [
        changed(name=side, root_chord_m=0.08, tip_chord_m=0.08, span_m=0.2, at_m=(0.5, across, 0.0))
        for side, across in (("left tail", -0.2), ("right tail", 0.2))
    ]
    left, right = neutral_point([WING, *tails]).surfaces[1:]
    # Mirrored: the same to round-off of a solution of some hundred equations.
    assert left.lift_slope == pytest.approx(right.lift_slope, rel=1e-10)


def test_the_mean_chord_is_the_integral_over_the_half_span() -> None:
    # Simpson's rule has a square and a cube exactly.
    out = np.array([0.0, 0.25, 0.5])
    chord = 0.16 + (0.10 - 0.16) * out / 0.5
    weights = np.array([1.0, 4.0, 1.0]) * 0.25 / 3.0
    half_area = float(weights @ chord)
    found = mean_chord(WING)
    assert WING.area_m2 == pytest.approx(2.0 * half_area, rel=1e-14)
    assert found.length_m == pytest.approx(float(weights @ chord**2) / half_area, rel=1e-14)
    assert found.across_m == pytest.approx(float(weights @ (chord * out)) / half_area, rel=1e-14)
    assert found.at_m == pytest.approx(found.across_m * tan(radians(5)), rel=1e-14)
    assert WING.aspect == pytest.approx(1.0 / 0.13)


def test_a_triangle_has_two_thirds_of_its_root_a_third_of_the_way_out() -> None:
    found = mean_chord(changed(root_chord_m=0.3, tip_chord_m=0.0))
    assert found.length_m == pytest.approx(0.2, rel=1e-14)
    assert found.across_m == pytest.approx(0.5 / 3.0, rel=1e-14)
    assert mean_chord(FIN).across_m == pytest.approx(0.12 * 0.2 / 0.45, rel=1e-14)
    assert neutral_point([changed(root_chord_m=0.3, tip_chord_m=0.0)]).lift_slope > 3.0


def test_the_balance_point_in_per_cent_of_the_mean_chord() -> None:
    chord = mean_chord(WING)
    assert mean_chord_percent([TAIL, WING], chord.quarter_m) == pytest.approx(25.0, rel=1e-12)
    assert chord.along_m(chord.share(0.3)) == pytest.approx(0.3, rel=1e-12)
    with pytest.raises(MechanicsError, match="place along is nan m"):
        mean_chord_percent([WING], float("nan"))


def test_the_wing_is_the_flat_surface_with_most_area_and_fins_carry_no_lift_in_pitch() -> None:
    huge_fin = Surface(name="huge", root_chord_m=1.0, tip_chord_m=1.0, span_m=2.0, vertical=True)
    assert main_surface([TAIL, huge_fin, WING]) is WING
    assert neutral_point([WING, TAIL, FIN]) == neutral_point([WING, TAIL])


def test_the_tail_feels_the_downwash_and_the_foreplane_the_upwash_of_the_wing() -> None:
    wing, tail = neutral_point([WING, TAIL]).surfaces
    # 4 / (A + 2), the teaching formula's downwash, is 0.41 here; at a tail's arm it is near that.
    assert 0.2 < tail.downwash < 0.5
    assert abs(wing.downwash) < 0.02
    high = neutral_point([WING, changed(name="tail", root_chord_m=0.09, tip_chord_m=0.07, span_m=0.32,
                                        at_m=(0.52, 0.0, 0.3))])  # fmt: skip
    assert high.surfaces[1].downwash < tail.downwash
    foreplane = Surface(name="foreplane", root_chord_m=0.09, tip_chord_m=0.07, span_m=0.32, at_m=(-0.4, 0.0, 0.0))
    behind, ahead = neutral_point([WING, foreplane]).surfaces
    assert ahead.downwash < 0.0 < behind.downwash
