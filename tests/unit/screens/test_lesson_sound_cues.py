"""What is to be heard, and when."""

from dataclasses import replace
from pathlib import Path

import pytest

from lab.lesson import LockIn, Set, Sure, read_lesson, start, step
from lab.screens.screen import BuildModel, LessonsModel, QuestionModel, Setting
from lab.screens.sound_cues import cues
from lab.simulation import Hang, HoldStill, LetGo, Session
from lab.simulation.benches.bar_builds import workshop_bar
from lab.simulation.benches.catalogue import BENCHES
from lab.simulation.benches.finger_builds import finger_from_build
from lab.simulation.part_commands import Copy, Tie

LESSON = Path(__file__).parents[3] / "lessons" / "early" / "lopsided-tool.toml"


def build_with(bench) -> BuildModel:
    return BuildModel(setting=Setting(), bench=bench, previous=bench)


def question_with(run, bench) -> QuestionModel:
    return QuestionModel(setting=Setting(), run=run, bench=bench, previous=bench)


def heard_until_rest(bench, model_with) -> list[str]:
    heard: list[str] = []
    bench = bench.released()
    for _ in range(4000):
        if not bench.moving:
            break
        following = bench.ticked()
        heard += cues(model_with(bench), model_with(following))
        bench = following
    return heard


def test_brass_clinks_when_it_is_hung_and_not_when_it_is_moved():
    session = Session(workshop_bar())
    before = build_with(session.state)
    session.do(Hang(0.05, 0.5))
    after = build_with(session.state)
    assert cues(before, after) == ("clink",)
    assert cues(after, before) == ()
    moved = replace(after.bench, weights=(replace(after.bench.weights[0], at_m=0.2), *after.bench.weights[1:]))
    assert cues(after, build_with(moved)) == ()


def test_a_copy_of_two_that_are_tied_clinks_once():
    session = Session(workshop_bar())
    first, second = (weight.id for weight in session.state.weights[:2])
    assert session.do(Tie(first, second)) is None
    before = build_with(session.state)
    assert session.do(Copy(first)) is None
    assert cues(before, build_with(session.state)) == ("clink",)


def test_wood_knocks_when_a_bar_meets_its_stop():
    bench = workshop_bar()
    assert set(heard_until_rest(bench, build_with)) <= {"knock"}
    steep = replace(bench, pivot=replace(bench.pivot, stop_rad=0.05))
    assert "knock" in heard_until_rest(steep, build_with)


@pytest.mark.parametrize("name", ["bar", "tool", "plate", "mobile"])
def test_wood_creaks_once_as_it_is_let_go_and_not_where_it_stays(name):
    session = Session(BENCHES[name].start())
    heard: list[str] = []
    for command in (LetGo(), HoldStill(), LetGo(at_once=True)):
        before = session.state
        session.do(command)
        heard += cues(build_with(before), build_with(session.state))
        before = session.state
        if isinstance(command, LetGo):
            session.advance(5_000_000)
            heard += cues(build_with(before), build_with(session.state))
    assert heard.count("creak") == 1


def test_an_empty_bar_does_not_creak():
    bench = replace(workshop_bar(), weights=(), pivot=replace(workshop_bar().pivot, at_m=0.3))
    assert bench.released().moving
    assert cues(build_with(bench), build_with(bench.released())) == ()


def test_a_tool_knocks_once_when_it_lands():
    run = start(read_lesson(LESSON), seed=1)
    tool = finger_from_build(run.asked.build, finger_at_m=0.1, pad_half_m=0.003)
    assert heard_until_rest(tool, lambda bench: question_with(run, bench)) == ["knock"]


def test_a_pencil_scratches_when_an_answer_is_locked_in():
    run = start(read_lesson(LESSON), seed=1)
    run, _ = step(run, Set(value=0.1, given="10.0 cm"))
    run, _ = step(run, Sure(how="guess"))
    locked, _ = step(run, LockIn())
    tool = finger_from_build(run.asked.build, finger_at_m=0.1, pad_half_m=0.003)
    assert cues(question_with(run, tool), question_with(locked, tool)) == ("scratch",)
    assert cues(question_with(locked, tool), question_with(locked, tool)) == ()


def test_going_to_another_place_is_silent():
    assert cues(LessonsModel(setting=Setting(), lessons=()), build_with(workshop_bar())) == ()
    assert cues(None, build_with(workshop_bar())) == ()
