"""Balance points from scale readings."""

from math import inf, nan, pi, radians

import pytest

from lab.mechanics import (
    MechanicsError,
    ScaleReading,
    Weighing,
    balance_point_doubt_m,
    weighed_balance_point,
    weighed_level_m,
)


def reading(name: str, mass_kg: float, *at_m: float) -> ScaleReading:
    return ScaleReading(name=name, mass_kg=mass_kg, at_m=(at_m[0], at_m[1], at_m[2] if len(at_m) > 2 else 0.0))


LEVEL = Weighing(
    readings=(reading("left", 2.0, 1.0, -0.5), reading("right", 2.0, 1.0, 0.5), reading("nose", 1.0, 0.0, 0.0))
)


def test_three_scales_give_along_and_across() -> None:
    assert LEVEL.mass_kg == 5.0
    assert weighed_level_m(LEVEL) == pytest.approx((0.8, 0.0), abs=1e-16)


def test_any_number_of_scales_will_do_and_one_that_reads_nothing_counts_nothing() -> None:
    five = (*LEVEL.readings, reading("tail", 0.0, 3.0, 0.0), reading("spare", 5.0, 0.0, 0.0))
    assert weighed_level_m(Weighing(readings=five)) == pytest.approx((0.4, 0.0), abs=1e-16)
    assert weighed_level_m(Weighing(readings=(reading("one", 3.0, 0.2, 0.1),))) == pytest.approx((0.2, 0.1))


def test_the_doubts_of_scales_become_the_balance_points() -> None:
    exact = ScaleReading(name="nose", mass_kg=1.0, at_m=(0.0, 0.0, 0.0))
    rough = ScaleReading(name="main", mass_kg=3.0, at_m=(1.0, 0.0, 0.0), mass_doubt_kg=0.04)
    doubt = balance_point_doubt_m(Weighing(readings=(exact, rough)).parts)
    assert doubt == pytest.approx((0.25 / 4 * 0.04, 0.0, 0.0))


def test_a_second_weighing_nose_up_gives_the_height() -> None:
    # A body that balances 0.3 above the line of its feet: pitched up by θ its upright moves aft by 0.3 tan θ.
    tilt = radians(20.0)
    moved = 0.3 * 0.36397023426620234  # tan 20 degrees
    nose = 5.0 * (1.0 - (0.8 + moved))
    tilted = Weighing(readings=(reading("main", 5.0 - nose, 1.0, 0.0), reading("nose", nose, 0.0, 0.0)), pitch_rad=tilt)
    found = weighed_balance_point([LEVEL, tilted])
    assert found.at_m == pytest.approx((0.8, 0.0, 0.3), abs=1e-14)


def test_a_second_weighing_on_its_side_does_too() -> None:
    tilt = radians(-15.0)
    moved = -0.2 * 0.2679491924311227  # tan 15 degrees; left wing down moves it to the left
    over = 5.0 * moved  # ± over at ± 0.5 m moves five kilograms by as much
    sides = (reading("left", 2.0 - over, 1.0, -0.5), reading("right", 2.0 + over, 1.0, 0.5), reading("nose", 1.0, 0, 0))
    tilted = Weighing(readings=sides, roll_rad=tilt)
    assert weighed_balance_point([LEVEL, tilted]).at_m == pytest.approx((0.8, 0.0, 0.2), abs=1e-14)


def test_weighings_that_cannot_answer_are_refused() -> None:
    tilted = Weighing(readings=LEVEL.readings, pitch_rad=0.2)
    with pytest.raises(
        MechanicsError, match=r"weighed at a pitch of 0\.2 rad and a roll of 0\.0 rad; a single weighing"
    ):
        weighed_level_m(tilted)
    with pytest.raises(MechanicsError, match="how high it balances takes two weighings or more, at different tilts"):
        weighed_balance_point([LEVEL])
    with pytest.raises(MechanicsError, match="the weighings are all at one tilt; tilt the body for one of them"):
        weighed_balance_point([LEVEL, LEVEL])
    other = Weighing(readings=(reading("one", 6.0, 0.8, 0.0),), pitch_rad=0.2)
    with pytest.raises(MechanicsError, match="weighing 1 comes to 5 kg and weighing 2 to 6 kg; weigh the same body"):
        weighed_balance_point([LEVEL, other])


def test_readings_that_no_scale_gives_are_refused_by_name() -> None:
    with pytest.raises(MechanicsError, match=r"reading of scale 'nose' is -1.0 kg; it must be a finite number, 0 or"):
        reading("nose", -1.0, 0.0, 0.0)
    with pytest.raises(MechanicsError, match=r"place of scale 'nose' is inf m"):
        reading("nose", 1.0, inf, 0.0)
    with pytest.raises(MechanicsError, match="no scale reads above 0 kg; at least one must carry the body"):
        Weighing(readings=(reading("nose", 0.0, 0.0, 0.0),))
    with pytest.raises(MechanicsError, match="no scale reads above 0 kg"):
        Weighing(readings=())
    with pytest.raises(MechanicsError, match="the name 'nose' is used twice; each scale needs its own"):
        Weighing(readings=(reading("nose", 1.0, 0.0, 0.0), reading("nose", 1.0, 1.0, 0.0)))
    with pytest.raises(MechanicsError, match=r"pitch of the weighing is nan rad"):
        Weighing(readings=LEVEL.readings, pitch_rad=nan)
    with pytest.raises(MechanicsError, match=r"roll of the weighing is 1\.57.* rad; it must be under a quarter turn"):
        Weighing(readings=LEVEL.readings, roll_rad=pi / 2)
    with pytest.raises(MechanicsError, match="mass doubt of scale 'nose'"):
        ScaleReading(name="nose", mass_kg=1.0, at_m=(0.0, 0.0, 0.0), mass_doubt_kg=-1.0)


def test_the_doubt_of_a_weighing_is_that_of_its_parts_and_a_scale_at_nothing_counts_too() -> None:
    def scale(name: str, mass_kg: float, along_m: float, at_doubt_m: float = 0.0) -> ScaleReading:
        return ScaleReading(
            name=name,
            mass_kg=mass_kg,
            at_m=(along_m, 0.0, 0.0),
            mass_doubt_kg=0.1,
            at_doubt_m=(at_doubt_m, 0.0, 0.0),
        )

    both = Weighing(readings=(scale("nose", 2.0, 0.0, 0.01), scale("tail", 3.0, 1.0)))
    assert both.doubt_m == pytest.approx(balance_point_doubt_m(both.parts), rel=1e-14)  # the same few products
    # 0.1 kg more or less under the nose, 1 m from the balance point, of 5 kg.
    lifted = Weighing(readings=(scale("nose", 0.0, 0.0), scale("tail", 5.0, 1.0)))
    assert lifted.doubt_m == pytest.approx((0.02, 0.0, 0.0), rel=1e-14)
    assert LEVEL.doubt_m is None
