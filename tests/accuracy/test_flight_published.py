"""Published rows about neutral points and margins, each beside its source; S-05's band is compared with, no more."""

from dataclasses import dataclass
from math import sqrt

import pytest

from lab.mechanics import Surface, balance_for_margin_m, neutral_point_m
from lab.mechanics.neutral_points import USUAL_MARGIN, closed_neutral_share, closed_shift

IN_M = 0.0254


@dataclass(frozen=True)
class Published:
    """id; source (in sources.toml); mark; ours; printed, or worked out by us from printed inputs; tolerance."""

    id: str
    source: str
    mark: str
    ours: float
    printed: float
    tolerance: float


def s04_airframe() -> float:
    """Aspects 10 and 5, tail volume 0.5, by whole surfaces: an untapered wing, its tail two chords behind."""
    wing = Surface(name="wing", root_chord_m=1.0, tip_chord_m=1.0, span_m=10.0)
    area = 0.5 / 2.0 * wing.area_m2
    chord = sqrt(area / 5.0)
    tail = Surface(
        name="tail",
        root_chord_m=chord,
        tip_chord_m=chord,
        span_m=5.0 * chord,
        at_m=(0.25 + 2.0 - chord / 4.0, 0.0, 0.0),
    )
    return closed_neutral_share([wing, tail])


# S03: CL = 0.1 a + ..., CM0 = -0.02 a + ..., 1.5 m; its answers are ours from the printed inputs.
ROWS = (
    Published("S02", "S-60", "seen", (0.0 - balance_for_margin_m(0.0, 5.0 * IN_M, 0.10)) / IN_M, 0.5, 0.05),
    Published("S03", "S-60", "seen", neutral_point_m(0.1, -0.02, 1.5), 0.30, 1e-9),
    Published("S03", "S-60", "seen", balance_for_margin_m(neutral_point_m(0.1, -0.02, 1.5), 1.5, 0.04), 0.24, 1e-9),
    Published("S04", "S-64", "memory", 0.25 + closed_shift(10.0, 5.0, 0.5), 0.25 + 1.2 / 1.4 * (2 / 3) * 0.5, 1e-12),
    Published("S04", "S-64", "memory", s04_airframe(), 0.536, 0.0005),
    Published("S05", "S-63", "part", USUAL_MARGIN[0], 0.05, 1e-9),
    Published("S05", "S-63", "part", USUAL_MARGIN[1], 0.15, 1e-9),
)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.id)
def test_we_get_what_the_source_prints(row: Published) -> None:
    assert row.ours == pytest.approx(row.printed, rel=0.0, abs=row.tolerance)
