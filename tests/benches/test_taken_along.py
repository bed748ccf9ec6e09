"""What is built on one bench is taken along to another, or stays where it is and it is said why."""

from itertools import permutations
from typing import Any

import pytest

from lab.files import Bench, Build, read_build
from lab.simulation.benches.catalogue import BENCHES, kind_of
from lab.simulation.benches.unfit import UnfitBuildError
from lab.ui.assets import asset_folder

PAIRS = list(permutations(BENCHES, 2))


def _take_along(pilot: Any, bench: str) -> None:
    pilot.press("benches")
    pilot.press("bench-load.comes")
    pilot.press(f"bench-{bench}")


def _state(pilot: Any) -> Any:
    return pilot.lab._screen._model.bench


def _why_not(bench: Bench, build: Build) -> str:
    """The sentence that refuses a build on a bench; "" where it is taken."""
    try:
        BENCHES[bench].take(build)
    except UnfitBuildError as unfit:
        return unfit.why.template.format(**unfit.why.values)
    return ""


def _on(pilot: Any, bench: str) -> Any:
    pilot.press("to-build")
    if bench != "bar":
        pilot.press("benches")
        pilot.press(f"bench-{bench}")
    return pilot


@pytest.mark.parametrize(("here", "there"), PAIRS)
def test_taken_along_it_balances_where_it_did_or_one_is_told_why_it_stays(pilot: Any, here: Bench, there: Bench):
    before = _state(_on(pilot, here))
    _take_along(pilot, there)
    after = _state(pilot)
    why = _why_not(there, BENCHES[here].build_of(before))
    if why:
        assert after == before
        assert pilot.says(why)
        return
    assert kind_of(after).name == there
    assert after.title == before.title
    assert sum(part.mass_kg for part in after.parts) == pytest.approx(sum(part.mass_kg for part in before.parts))
    # Places go through the file's units and back.
    assert after.sum.balance_point_m[0] == pytest.approx(before.sum.balance_point_m[0], abs=1e-12)
    pilot.press("undo")
    assert _state(pilot) == BENCHES[there].start()


@pytest.mark.parametrize("here", [name for name in BENCHES if name != "fingers"])
def test_fingers_slide_in_under_what_was_built_on_any_bench_and_meet_under_it(pilot: Any, here: str):
    balance_m = _state(_on(pilot, here)).sum.balance_point_m[0]
    _take_along(pilot, "fingers")
    pilot.press("let-go")
    pilot.press("show-end")
    left_m, right_m = _state(pilot).places_m
    assert left_m - 1e-9 <= balance_m <= right_m + 1e-9


def test_what_does_not_come_along_is_there_when_one_is_back(pilot: Any):
    _on(pilot, "scales")
    before = _state(pilot)
    pilot.press("benches")
    pilot.press("bench-fingers")
    assert _state(pilot) == BENCHES["fingers"].start()
    pilot.press("benches")
    pilot.press("bench-scales")
    assert _state(pilot) == before


def test_by_keys_alone_it_comes_along(pilot: Any):
    _on(pilot, "tool")
    pilot.tab_to("benches")
    pilot.key("enter")
    pilot.tab_to("bench-load.stays")
    pilot.key("right")
    pilot.tab_to("bench-fingers")
    pilot.key("enter")
    assert kind_of(_state(pilot)).name == "fingers"
    assert _state(pilot).title == BENCHES["tool"].start().title


@pytest.mark.parametrize("path", sorted((asset_folder() / "builds").glob("*.toml")), ids=lambda path: path.stem)
def test_every_build_that_ships_goes_over_two_fingers_or_a_sentence_says_why_not(path: Any):
    build = read_build(path)
    why = _why_not("fingers", build)
    if why:
        assert why.endswith(".")
        return
    state: Any = BENCHES["fingers"].take(build)
    end = state.released().at_end()
    left_m, right_m = end.places_m
    assert left_m - 1e-9 <= state.sum.balance_point_m[0] <= right_m + 1e-9
