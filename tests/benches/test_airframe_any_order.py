"""Whatever is asked of an airframe that is built, in whatever order: no exception, no lost step, no lost bit."""

import math
import random
from typing import Any

import pytest

from lab.files import build_text, read_build_text
from lab.screens.benches.airframe.gallery import drone
from lab.simulation import Guess, HoldStill, LetGo, OpenBuild, Redo, Remove, Session, SetUnits, SetView, Undo
from lab.simulation.airframe_commands import (
    DoWith,
    FillTank,
    FitOn,
    HangBy,
    MeasureFrom,
    PlacePart,
    PlaceTank,
    RemoveTank,
    SetFlightTime,
    ShowAxis,
)
from lab.simulation.benches.airframe_balance import drops, margin_of, plane_of, standing_of
from lab.simulation.benches.airframe_builds import airframe_from_build, build_from_airframe
from lab.simulation.benches.airframe_kinds import KINDS
from lab.simulation.commands import Measure
from lab.simulation.part_commands import Copy, Rename, Reweigh, Tie, Untie

DRONE = build_text(build_from_airframe(drone()))


def random_command(dice: random.Random) -> Any:
    """Any command, its values mostly sensible."""

    def place() -> float:
        return dice.choice((dice.uniform(-0.3, 1.2), round(dice.uniform(-0.1, 0.9), 2), 0.0, -0.0, math.nan, 1e300))

    part, joins = dice.randint(1, 9), dice.random() < 0.5
    mass_kg = dice.choice((0.05, 0.2, dice.uniform(0.001, 2.0), 0.0, -1.0, math.inf, 1e-300))
    axis = dice.choice(("along", "across", "up", "askew"))
    tank = dice.choice(("left tank", "right tank", "tank", "no tank"))
    choices: tuple[Any, ...] = (
        lambda: FitOn(dice.choice((*KINDS, "anvil")), place(), place(), place()),
        lambda: PlacePart(part, place(), place(), place(), joins=joins),
        lambda: PlacePart(part, place(), 0.0, 0.0, joins=joins),
        lambda: PlaceTank(tank, place(), place(), place(), joins=joins),
        lambda: RemoveTank(tank),
        lambda: Remove(part),
        lambda: Reweigh(part, mass_kg),
        lambda: Copy(part, mirrored=joins),
        lambda: Rename(part, dice.choice(("fin", "nose/lead", "", "wing", "battery"))),
        lambda: Tie(part, dice.randint(1, 9)),
        lambda: Untie(part),
        lambda: ShowAxis(axis),
        lambda: MeasureFrom(axis, place(), joins=joins),
        lambda: Measure(dice.choice((0.0, 0.001, -1.0)), dice.choice((0.0, 0.002, math.nan))),
        lambda: Guess(dice.choice(("left", "level", "right", None))),
        lambda: LetGo(at_once=joins),
        HoldStill,
        lambda: DoWith(dice.choice(("build", "build", "hang", "weigh", "burn"))),
        lambda: HangBy(place(), place(), place(), joins=joins),
        lambda: SetFlightTime(dice.uniform(-10.0, 4000.0), joins=joins),
        lambda: FillTank(tank, dice.choice((0.0, 1e-4, 1.0, math.nan))),
        lambda: SetView(dice.choice(("plain", "numbers", "all"))),
        lambda: SetUnits(dice.choice(("g-cm", "kg-m", "N-m", "lb-in"))),
        Undo,
        Redo,
        lambda: OpenBuild(DRONE),
    )
    return dice.choices(choices, weights=[*([4] * (len(choices) - 1)), 1])[0]()


def holds(state: Any) -> None:
    """What is so of every airframe, whatever was done to it."""
    total = state.sum
    assert all(math.isfinite(each) for each in total.balance_point_m)
    assert total.mass_kg > 0.0
    # Moments about any line divide by the weight to the same place: a rounding of each row, of a metre or so.
    for axis in range(3):
        again = total.moment_kg_m[axis] / total.mass_kg + state.reference_m[axis]
        assert again == pytest.approx(total.balance_point_m[axis], abs=1e-9)
    assert len({part.id for part in state.parts_on}) == len(state.parts_on)
    assert len(set(state.names)) == len(state.names)
    assert state.stilled().held
    assert not state.stilled().moving
    _ = plane_of(state), standing_of(state)


@pytest.mark.parametrize("seed", range(4))
def test_any_commands_in_any_order_are_taken_back_to_the_first_state_bit_for_bit(seed: int) -> None:
    dice, session = random.Random(seed), Session(drone())
    first = session.state
    for _ in range(250):
        session.do(random_command(dice))
        if session.moving and dice.random() < 0.3:
            session.advance(40_000_000)
        holds(session.state)
    for _ in range(600):
        if session.do(Undo()) is not None:
            break
    assert not session.can_undo
    assert build_text(build_from_airframe(session.state)) == build_text(build_from_airframe(first))
    assert session.state == first


@pytest.mark.parametrize("seed", range(3))
def test_what_was_built_is_saved_and_opened_again_the_same(seed: int) -> None:
    dice, session = random.Random(seed), Session(drone())
    for _ in range(120):
        session.do(random_command(dice))
    state = session.state.stilled()
    text = build_text(build_from_airframe(state))
    again = airframe_from_build(read_build_text(text, file="again"))
    # Groups go behind lone parts in a file, so the order may be another; from then on nothing changes.
    assert build_text(build_from_airframe(again)) == text
    places = {part.name: part.at_m for part in again.parts}
    assert places.keys() == {part.name for part in state.parts}
    for part in state.parts:
        # In centimetres in the file: a rounding of the last digit there and back.
        assert places[part.name] == pytest.approx(part.at_m, abs=1e-12)


def test_a_guess_is_answered_by_which_side_of_the_neutral_point_it_balances() -> None:
    session = Session(drone())
    assert (drops(session.state), margin_of(session.state).goes) == ("left", "steady")  # type: ignore[union-attr]
    assert session.do(PlacePart(4, 0.9, 0.0, 0.0)) is None
    assert (drops(session.state), margin_of(session.state).goes) == ("right", "runs away")  # type: ignore[union-attr]


def test_a_wing_that_is_moved_takes_its_plan_form_with_it_and_the_neutral_point_goes_along() -> None:
    session = Session(drone())
    before = margin_of(session.state)
    assert session.do(PlacePart(2, 0.525, 0.0, 0.035)) is None
    assert session.state.surfaces[0].at_m[0] == pytest.approx(0.42, abs=1e-12)
    # All of the wing's lift goes 10 cm aft, the tail's stays; of the weight a quarter goes.
    assert margin_of(session.state).margin > before.margin + 0.2  # type: ignore[union-attr]


def test_tied_parts_are_placed_as_one_on_all_three_axes() -> None:
    session = Session(drone())
    session.do(Tie(4, 5))
    assert session.do(PlacePart(4, 0.10, 0.02, 0.01)) is None
    battery, camera = session.state.parts_on[3], session.state.parts_on[4]
    assert battery.at_m == pytest.approx((0.10, 0.02, 0.01), abs=1e-12)
    assert camera.at_m == pytest.approx((0.305, 0.02, 0.01), abs=1e-12)
