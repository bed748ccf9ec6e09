"""A toss on the bench is the mechanics' toss, ends on the floor, and remembers the one before."""

from dataclasses import replace
from pathlib import Path

import pytest

from lab.files import read_build
from lab.mechanics import Launch, MechanicsError, Part, toss
from lab.simulation.benches.airframe_toss import PATH_TICKS, TossState, tossed_airframe
from lab.simulation.records import from_record, recorded

GLIDER = read_build(Path(__file__).parents[3] / "assets/builds/glider.toml")
PARTS, SURFACES = GLIDER.all_parts, GLIDER.surfaces
THROWN = TossState(guess="glides").released(PARTS, SURFACES)


def test_the_path_is_that_of_the_mechanics_to_the_last_bit() -> None:
    flown = toss(tossed_airframe(PARTS, SURFACES), Launch(), seconds=1.0)
    state = THROWN
    while state.moving and state.ticks < 200:
        state = state.ticked()
    for number, (ahead, up, pitch) in enumerate(state.path[:-1]):
        tick = number * PATH_TICKS
        assert (ahead, up, pitch) == (flown.ahead_m[tick], flown.up_m[tick], flown.pitch_rad[tick])


def test_it_lands_in_the_first_tick_under_the_floor_and_stays() -> None:
    landed = THROWN.at_end()
    assert landed.landed
    assert not landed.moving
    assert landed.path[-1][1] <= 0.0 < landed.path[-2][1]
    assert landed.ticked() is landed


def test_only_a_toss_that_landed_is_compared_with_the_next() -> None:
    assert THROWN.ticked().stilled().last is None
    landed = THROWN.at_end()
    assert landed.flown is not None
    again = landed.released(PARTS, SURFACES)
    assert again.last is not None
    assert again.guess == "glides"
    assert (again.last.path, again.last.margin) == (landed.path, landed.flown.margin)


def test_a_weight_at_the_tail_takes_the_margin_and_the_glide() -> None:
    neutral = THROWN.flown
    assert neutral is not None
    tail = max(part.at_m[0] for part in PARTS)
    heavy = (*PARTS, Part(name="weight at the tail", mass_kg=sum(p.mass_kg for p in PARTS), at_m=(tail, 0.0, 0.0)))
    after = TossState().released(heavy, SURFACES).flown
    assert after is not None
    assert after.margin < 0.0 < neutral.margin
    assert (neutral.flight, after.flight) == ("glides", "tumbles")


def test_nothing_flies_without_surfaces() -> None:
    with pytest.raises(MechanicsError):
        TossState().released(PARTS, ())


def test_a_toss_in_the_air_is_kept_to_the_last_bit() -> None:
    state = replace(THROWN, launch=Launch(speed_m_s=7.0)).released(PARTS, SURFACES).ticked().ticked()
    assert from_record(recorded(state), TossState) == state
