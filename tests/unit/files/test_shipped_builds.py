"""The builds that ship are sound, and say what the workshop's people would find with a finger and a ruler."""

import pytest

from lab.app.paths import find_paths
from lab.files import UNITS, build_text, read_build, read_build_text
from lab.mechanics import moment_sum

FILES = sorted(find_paths().shipped_builds.glob("*.toml"))


def test_there_are_builds_enough_to_start_with():
    assert len(FILES) >= 6
    assert {read_build(path).units for path in FILES} == set(UNITS)


@pytest.mark.parametrize("path", FILES, ids=[path.stem for path in FILES])
def test_a_shipped_build_reads_and_comes_back_from_its_own_text(path):
    build = read_build(path)
    assert read_build_text(build_text(build), file=path.name) == build


@pytest.mark.parametrize(
    ("name", "balance"),
    [
        # Worked by hand from the numbers in the files: Σ weight × arm ÷ Σ weight.
        ("boat-hook", 3360 / 600),
        ("survey-bar", 22200 / 500),
        ("landing-net", (260 * 45 + 85 * 8 + 140 * 112 + 90 * 112) / 575),
        ("camera-pole", (640 * 120 + 310 * 236 + 420 * 14 + 75 * 125) / 1445),
        ("nest-box-pole", (2.4 * 1.6 + 1.35 * 3.05 + 0.9 * 0.1) / 4.65),
        ("oar", (4.2 * 41 + 1.6 * 93 + 0.5 * 27) / 6.3),
        ("kite-spar", 0.9),
    ],
)
def test_a_shipped_build_balances_where_the_sum_by_hand_says(name, balance):
    build = read_build(find_paths().shipped_builds / f"{name}.toml")
    place = UNITS[build.units].from_m(moment_sum(build.all_parts).balance_point_m[0])
    # Both sums round a few times, each by about 1e-16 of its size.
    assert place == pytest.approx(balance, rel=2e-15)
