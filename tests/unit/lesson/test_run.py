"""Predict, lock in, watch, explain: one step at a time."""

import pytest

from lab.files import read_build_text
from lab.lesson import (
    Again,
    Answered,
    Give,
    Hint,
    Leave,
    LockIn,
    Next,
    Refusal,
    Set,
    Skip,
    Sure,
    Unclear,
    Watched,
    start,
    step,
)


def through(run, *actions):
    events = []
    for action in actions:
        run, came = step(run, action)
        events += came
    return run, events


@pytest.fixture
def run(lesson):
    return start(lesson, seed=4711)


def test_an_answer_goes_from_prediction_to_explanation(run):
    run, events = through(run, Give(text="9.6 cm"), Sure(how="fairly"), LockIn(seconds=12.5))
    assert run.phase == "watch"
    assert run.marks == ("off", "todo")
    assert [type(event) for event in events] == [Answered]
    run, _ = through(run, Watched())
    assert run.phase == "explain"
    run, _ = through(run, Next())
    assert (run.phase, run.index, run.value, run.sure, run.hints) == ("predict", 1, None, None, 0)
    run, _ = through(run, Set(value="right", given="right"), Sure(how="guess"), LockIn(), Watched(), Next())
    assert run.phase == "finished"
    assert run.marks == ("off", "right")


def test_what_is_answered_is_handed_over_in_plain_values(run):
    _, (answered,) = through(run, Hint(), Give(text="9,6"), Sure(how="fairly"), LockIn(seconds=12.5))
    assert (answered.lesson, answered.question, answered.kind) == ("a-lesson", "boat-hook", "place")
    assert (answered.seed, answered.round, answered.hints, answered.seconds) == (4711, 0, 1, 12.5)
    assert (answered.given, answered.understood, answered.truth, answered.tolerance) == ("9,6", "9.6", "5.6", 0.3)
    assert (answered.right, answered.sure, answered.ways, answered.locked) == (False, "fairly", ("far_end",), True)
    # The scene can be put on a bench again from the record alone.
    assert read_build_text(answered.scene, file="record") == run.asked.build


def test_an_answer_that_is_not_understood_is_asked_again_and_changes_nothing(run):
    after, events = through(run, Give(text="five"))
    assert after == run
    assert [type(event) for event in events] == [Unclear]


@pytest.mark.parametrize(
    "actions",
    [
        (LockIn(),),
        (Give(text="5"), LockIn()),
        (Sure(how="guess"), LockIn()),
        (Watched(),),
        (Next(),),
        (Give(text="5"), Sure(how="guess"), LockIn(), Next()),
        (Give(text="5"), Sure(how="guess"), LockIn(), Skip()),
        (Give(text="5"), Sure(how="guess"), LockIn(), Give(text="6")),
        (Give(text="5"), Sure(how="guess"), LockIn(), Set(value=0.06, given="6")),
        (Give(text="5"), Sure(how="guess"), LockIn(), Sure(how="certain")),
        (Give(text="5"), Sure(how="guess"), LockIn(), LockIn()),
        (Give(text="5"), Sure(how="guess"), LockIn(), Hint()),
    ],
)
def test_what_does_not_belong_to_the_phase_is_refused_and_changes_nothing(run, actions):
    before, _ = through(run, *actions[:-1])
    after, events = step(before, actions[-1])
    assert after == before
    assert [type(event) for event in events] == [Refusal]


def test_hints_come_in_steps_and_end_with_a_sentence(run):
    assert run.hints_shown == ()
    run, events = through(run, Hint(), Hint())
    assert not events
    assert len(run.hints_shown) == 2
    after, events = through(run, Hint())
    assert after == run
    assert [type(event) for event in events] == [Refusal]


def test_leaving_with_an_answer_that_is_not_locked_in_keeps_it(run):
    after, (answered,) = through(run, Give(text="9.6"), Leave(seconds=3.0))
    assert after.phase == "finished"
    assert (answered.locked, answered.given, answered.sure, answered.seconds) == (False, "9.6", None, 3.0)
    assert answered.ways == ("far_end",)


def test_leaving_with_nothing_given_keeps_nothing(run):
    assert through(run, Leave())[1] == []


def test_leaving_after_locking_in_keeps_it_once(run):
    _, events = through(run, Give(text="9.6"), Sure(how="guess"), LockIn(), Watched(), Leave())
    assert [event.locked for event in events] == [True]


@pytest.mark.parametrize("action", [Skip(), Again()])
def test_going_elsewhere_with_an_answer_that_is_not_locked_in_keeps_it(run, action):
    _, events = through(run, Give(text="9.6"), action)
    assert [event.locked for event in events] == [False]


def test_skipping_goes_on_and_is_marked(run):
    run, events = through(run, Skip())
    assert (run.index, run.marks, events) == (1, ("skipped", "todo"), [])
    run, _ = through(run, Skip())
    assert run.phase == "finished"


def test_again_asks_the_same_question_with_the_next_round(run):
    run, _ = through(run, Give(text="9.6"), Sure(how="guess"), LockIn(), Watched(), Again())
    assert (run.index, run.round, run.asked.round, run.value) == (0, 1, 1, None)
    assert run.marks == ("off", "todo")


def test_nothing_happens_after_the_end(run):
    run, _ = through(run, Leave())
    for action in (Give(text="1"), Set(value=0.1, given="10"), Next(), Again(), Leave()):
        after, events = step(run, action)
        assert after == run
        assert [type(event) for event in events] == [Refusal]


def test_an_answer_of_the_other_kind_is_a_programming_mistake(run):
    with pytest.raises(TypeError, match="place"):
        step(run, Set(value="left", given="left"))


def test_the_same_seed_makes_the_same_run(lesson):
    assert start(lesson, seed=3) == start(lesson, seed=3)
