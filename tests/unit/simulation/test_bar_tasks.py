"""Tasks that the bar sets by itself can be done, and are done when they are."""

from dataclasses import replace
from itertools import pairwise

import pytest

from lab.mechanics import Pivot
from lab.simulation import Hang, HangingBar, LetGo, Move, Remove, Session, empty_bar, workshop_bar
from lab.simulation.benches import tasks
from lab.simulation.benches.bar_tasks import TASKS


def next_task(bar: HangingBar, after: str | None = None) -> tasks.Task[HangingBar] | None:
    """A task of the bar."""
    return tasks.next_task(TASKS, bar, after=after)


def _let_go(session: Session) -> HangingBar:
    session.do(LetGo(at_once=True))
    assert isinstance(session.state, HangingBar)
    return session.state


def test_level_with_what_is_on_it_is_done_by_moving_a_weight():
    session = Session(workshop_bar())
    task = next_task(workshop_bar())
    assert task is not None
    assert task.kind.name == "level"
    assert not task.is_done(workshop_bar().released().at_end())
    # 200 g at 15, 100 g at 72, 50 g at 90 and the bar's 150 g at 50 cm, about 40 cm: 5000 against 7200 g cm.
    # The 100 g, 22 cm further in, takes just the 2200 away.
    session.do(Move(2, 0.50))
    assert not task.is_done(session.state)  # held: nobody has seen it hang level yet
    assert task.is_done(_let_go(session))


def test_level_is_not_done_by_moving_the_pivot_or_taking_a_weight_off():
    task = next_task(workshop_bar())
    assert task is not None
    moved = replace(workshop_bar(), pivot=Pivot(at_m=0.444, up_m=0.01)).released().at_end()
    assert not task.is_done(moved)
    session = Session(workshop_bar())
    session.do(Remove(3))
    session.do(Move(2, 0.75))
    assert not task.is_done(_let_go(session))


def test_one_more_weight_makes_up_what_is_missing():
    task = next_task(workshop_bar(), after="level")
    assert task is not None
    assert task.kind.name == "one-more"
    session = Session(workshop_bar())
    # 2200 g cm are missing at the left: 100 g, 22 cm left of 40 cm.
    session.do(Hang(0.1, 0.18))
    assert task.is_done(_let_go(session))


def test_half_the_brass_keeps_the_balance_point():
    bar = workshop_bar()
    session = Session(bar)
    session.do(Remove(3))  # 300 g are left, of which half can be made
    start = session.state
    assert isinstance(start, HangingBar)
    task = next_task(start, after="one-more")
    assert task is not None
    assert task.kind.name == "half"
    # (150 x 50 + 200 x 15 + 100 x 72) / 450 = 39.33 cm; 150 g must hang at (39.33 x 300 - 7500) / 150 = 28.67 cm.
    session.do(Remove(1))
    session.do(Remove(2))
    session.do(Hang(0.1, 0.2867))
    assert not task.is_done(session.state)
    session.do(Hang(0.05, 0.2867))
    assert task.is_done(session.state)


def test_an_empty_bar_on_its_middle_sets_no_task():
    assert next_task(empty_bar()) is None


@pytest.mark.parametrize("place", [0.05, 0.3, 0.95])
def test_kinds_take_turns_and_only_those_that_can_be_done_are_set(place: float):
    bar = replace(workshop_bar(), pivot=Pivot(at_m=place, up_m=0.01))
    kinds, kind = [], None
    for _ in range(4):
        task = next_task(bar, after=kind)
        if task is None:
            break
        kind = task.kind.name
        kinds.append(kind)
    assert len(set(kinds)) in (0, 1) or all(first != second for first, second in pairwise(kinds))
