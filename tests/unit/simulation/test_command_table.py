"""One table holds every command there is, and every state and command goes on a tape and comes back."""

from dataclasses import replace
from typing import get_args

import pytest

from lab.mechanics import Box, Cylinder, Point, Rectangle, Rod
from lab.simulation import COMMANDS, Command, Hang, LetGo, Move, MovePivot, Session, Undo, workshop_bar
from lab.simulation.benches import BenchState
from lab.simulation.command_table import EDITS_OF, edits_of
from lab.simulation.records import RecordError, flat, from_record, recorded


def test_the_table_has_each_command_of_the_union_once():
    assert sorted(row.kind.__name__ for row in COMMANDS.values()) == sorted(kind.__name__ for kind in get_args(Command))


def test_every_command_but_undo_and_redo_does_something_to_some_bench():
    done = {kind for bench in EDITS_OF for kind in edits_of(bench)}
    assert {name for name, row in COMMANDS.items() if row.kind not in done} == {"undo", "redo"}


def test_every_bench_has_its_edits():
    assert set(EDITS_OF) == {state.__name__ for state in get_args(BenchState)}


@pytest.mark.parametrize("command", [Hang(0.1, 0.3, "clamped", "0x1p+0"), Move(1, 0.1, joins=True), Undo(), LetGo()])
def test_a_command_goes_on_a_tape_and_comes_back(command):
    assert from_record(recorded(command), type(command)) == command


def test_a_state_goes_on_a_tape_and_comes_back_with_its_motion_and_every_shape():
    shapes = [Box((0.1, 0.2, 0.3)), Rod(0.2, "up"), Rectangle(0.1, 0.2)]
    bar = workshop_bar()
    weights = tuple(replace(weight, shape=shape) for weight, shape in zip(bar.weights, shapes, strict=True))
    more = [Cylinder(0.02, 0.1, 0.01), Point()]
    others = tuple(
        replace(bar.weights[0], id=10 + n, name=f"odd {n}", shape=shape, inertia_kg_m2=(0.1, 0.1, 0.1))
        for n, shape in enumerate(more)
    )
    state = replace(bar, weights=weights + others, guess="left").released().ticked().ticked()
    assert from_record(recorded(state), BenchState) == state


def test_what_cannot_be_recorded_is_refused():
    with pytest.raises(RecordError, match="object"):
        recorded(object())


def test_paths_name_the_place_of_every_value():
    paths = flat(recorded(workshop_bar()))
    assert paths["weights[2].name"] == "brass 50"
    assert float.fromhex(str(paths["pivot.at_m"])) == 0.40


@pytest.mark.parametrize(
    ("earlier", "later", "steps"),
    [
        (Move(1, 0.1), Move(1, 0.2, joins=True), 1),
        (Move(1, 0.1), Move(1, 0.2), 2),
        (Move(1, 0.1), Move(2, 0.2, joins=True), 2),
        (MovePivot(0.1), MovePivot(0.2, joins=True), 1),
        (MovePivot(0.1), Move(1, 0.2, joins=True), 2),
        (Undo(), Move(1, 0.2, joins=True), 1),
        (Undo(), Undo(), 0),
    ],
)
def test_a_drag_goes_on_only_with_the_same_thing(earlier, later, steps):
    session = Session(workshop_bar())
    session.do(earlier)
    session.do(later)
    taken_back = 0
    while session.can_undo:
        session.do(Undo())
        taken_back += 1
    assert taken_back == steps
