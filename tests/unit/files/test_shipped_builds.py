"""The builds that ship are sound, and say what the workshop's people would find with a finger and a ruler."""

from math import cos, radians, sin

import pytest

from lab.app.paths import find_paths
from lab.files import UNITS, build_text, read_build, read_build_text
from lab.mechanics import moment_sum
from lab.terminal.sums import sum_document

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
        ("survey-drone", 57750 / 1530),
        ("glider", (18 * 32 + 22 * 21 + 4 * 60 + 2 * 61 + 26 * 2) / 72),
        ("foreplane", (30 * 36 + 8 * 8 + 40 * 56 + 6 * 66 + 46 * 46) / 130),
        ("one-motor", (350 * 45 + 290 * 40 + 120 * 6 + 280 * 45) / 1040),
        ("survey-kite", (0.9 * 0.5 + 0.5 * 0.6 + 0.4 * 0.3 + 0.2 * 1.5) / 2),
        ("gusset-plate", (640 * 12.886 + 60 * 15 + 45 * 10) / 745),
        ("net-frame", (380 * 40 + 275 * 102 + 110 * 104) / 765),
        ("boat-cradle", (46 * 1.45 + 5.7 * 1.6 + 6 * 0.35 + 1.2 * 1.2) / 58.9),
        # Panels at 20 + 5 cos 22° + 32 sin 22° along, both halves alike.
        ("tailless-wing", (60 * 20 + 120 * 5 + 190 * (20 + 5 * cos(radians(22)) + 32 * sin(radians(22)))) / 370),
        # The arm rises 30°; the head, square to it and level again, looks out to the side: all of it at the arm's end.
        ("camera-boom", (240 * 45 - 700 * 18 + 350 * 90) * cos(radians(30)) / 2190),
    ],
)
def test_a_shipped_build_balances_where_the_sum_by_hand_says(name, balance):
    build = read_build(find_paths().shipped_builds / f"{name}.toml")
    place = UNITS[build.units].from_m(moment_sum(build.all_parts).balance_point_m[0])
    # Both sums round a few times, each by about 1e-16 of its size.
    # Turning adds a few roundings of the largest arm more.
    assert place == pytest.approx(balance, rel=1e-14, abs=1e-15)


def test_the_mobile_hangs_level():
    assert sum_document(read_build(find_paths().shipped_builds / "mobile-branch.toml"))["pivot"]["goes"] == "level"


def test_the_plates_place_is_the_middle_of_its_own_area():
    build = read_build(find_paths().shipped_builds / "gusset-plate.toml")
    plate = build.parts[0]
    # The file gives it to a hundredth of a millimetre.
    assert plate.at_m == pytest.approx(plate.shape.centre_m, abs=5e-6)
