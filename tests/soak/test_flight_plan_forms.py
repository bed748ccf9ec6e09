"""Aerosandbox asked again about every one of the 200 plan-forms whose answers are recorded."""

import csv
from pathlib import Path

import pytest

from lab.figures.plan_forms import plan_forms, theirs_m
from lab.mechanics import neutral_point

RECORD = Path(__file__).parents[1] / "accuracy" / "neutral_points.csv"


@pytest.mark.soak
def test_all_200_neutral_points_stand_as_recorded_and_within_two_per_cent() -> None:
    pytest.importorskip("aerosandbox", reason="no wheels for this Python yet")
    lines = [line for line in RECORD.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    for form, row in zip(plan_forms(), csv.DictReader(lines), strict=True):
        whole = theirs_m(form)
        assert whole == pytest.approx(float(row["whole_m"]), abs=1e-8), row
        assert theirs_m(form, spanwise=12) == pytest.approx(float(row["half_m"]), abs=1e-8), row
        assert abs(neutral_point(form.surfaces).at_m - whole) < 0.02 * form.chord_m, row
