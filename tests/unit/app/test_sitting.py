"""A lesson taken without a window: the bench follows the run, and every answer is handed over once."""

import pytest

from lab.app.paths import find_paths
from lab.app.shelf import UnknownLessonError, shelf_of
from lab.app.sitting import NS, Sitting
from lab.lesson import Again, Answered, Asked, Give, Leave, LockIn, Next, Set, Skip, Sure, read_lesson
from lab.lesson.forms import Answer, Choice, Numbers
from lab.simulation import FingerTool

FRAME_NS = NS // 60
SHELF = shelf_of(find_paths())


class Played:
    """A sitting, the answers that it handed over, and a clock that the test moves."""

    def __init__(self, name: str, *, seed: int = 4711) -> None:
        self.answers: list[Answered] = []
        self.now_ns = 5 * NS
        self.sitting = Sitting(read_lesson(SHELF.file(name)), seed=seed, now_ns=self.now_ns, keep=self.answers.append)

    def wait(self, seconds: float) -> None:
        until_ns = self.now_ns + round(seconds * NS)
        while self.now_ns < until_ns:
            self.now_ns += FRAME_NS
            self.sitting.turn(self.now_ns)

    def lock_in(self, at_m: float) -> None:
        self.sitting.act(Set(value=at_m, given="here"))
        self.sitting.act(Sure(how="fairly"))
        self.sitting.act(LockIn())


def _tool(sitting: Sitting) -> FingerTool:
    assert isinstance(sitting.session.state, FingerTool)
    return sitting.session.state


def test_the_finger_goes_where_the_learner_says():
    played = Played("lopsided-tool")
    played.sitting.act(Set(value=0.096, given="9.6 cm"))
    assert _tool(played.sitting).finger_at_m == pytest.approx(0.096, abs=1e-15)
    assert _tool(played.sitting).held
    played.sitting.act(Give(text="5,6 cm"))
    assert _tool(played.sitting).finger_at_m == pytest.approx(0.056, abs=1e-15)


def test_a_wrong_place_lets_the_tool_fall_and_then_explains():
    played = Played("lopsided-tool")
    played.lock_in(0.096)
    assert played.sitting.run.phase == "watch"
    assert played.sitting.moving
    played.wait(10.0)
    assert played.sitting.run.phase == "explain"
    assert not played.sitting.moving
    assert _tool(played.sitting).outcome == "left"
    (answer,) = played.answers
    assert (answer.right, answer.locked, answer.understood, answer.ways) == (False, True, "9.6", ("far_end",))


def test_a_right_place_is_seen_to_stay_before_it_is_explained():
    played = Played("lopsided-tool")
    played.lock_in(0.056)
    played.wait(0.5)
    assert played.sitting.run.phase == "watch"
    assert _tool(played.sitting).outcome == "level"
    played.wait(1.0)
    assert played.sitting.run.phase == "explain"


def test_with_reduced_motion_the_end_is_shown_at_once():
    played = Played("lopsided-tool")
    played.sitting.reduced_motion = True
    played.lock_in(0.096)
    played.wait(0.05)
    assert played.sitting.run.phase == "explain"


def test_the_seconds_are_those_that_the_learner_took():
    played = Played("lopsided-tool")
    played.wait(7.5)
    played.lock_in(0.096)
    # Time is seen once a frame, so up to one frame is added to what was waited.
    assert played.answers[0].seconds == pytest.approx(7.5, abs=0.02)


def test_each_question_starts_its_own_clock():
    played = Played("lopsided-tool")
    played.lock_in(0.096)
    played.wait(10.0)
    played.sitting.act(Next())
    played.wait(2.0)
    played.sitting.act(Give(text="left"))
    played.sitting.act(Sure(how="guess"))
    played.sitting.act(LockIn())
    assert played.answers[1].seconds == pytest.approx(2.0, abs=0.02)


def test_leaving_in_the_middle_hands_over_what_was_said_so_far():
    played = Played("lopsided-tool")
    played.sitting.act(Set(value=0.07, given="7 cm"))
    played.wait(3.0)
    played.sitting.act(Leave())
    (answer,) = played.answers
    assert (answer.locked, answer.given, answer.sure) == (False, "7 cm", None)
    assert answer.seconds == pytest.approx(3.0, abs=0.02)


def test_leaving_before_anything_was_said_hands_over_nothing():
    played = Played("lopsided-tool")
    played.sitting.act(Leave())
    assert played.answers == []


def test_again_brings_new_numbers_on_a_held_bench():
    played = Played("lopsided-tool")
    first = played.sitting.run.asked
    played.lock_in(0.096)
    played.wait(10.0)
    played.sitting.act(Again())
    assert played.sitting.run.round == 1
    assert played.sitting.run.asked is not first
    assert _tool(played.sitting).held


def test_the_contrast_is_another_bench_and_leaves_the_first_as_it_is():
    played = Played("lopsided-tool")
    played.lock_in(0.096)
    played.wait(10.0)
    fallen = played.sitting.session.state
    played.sitting.show_contrast(shown=True)
    assert played.sitting.contrast
    assert played.sitting.session.state is not fallen
    played.wait(10.0)
    played.sitting.show_contrast(shown=False)
    assert played.sitting.session.state == fallen


def test_there_is_no_contrast_before_the_explanation():
    played = Played("lopsided-tool")
    played.sitting.show_contrast(shown=True)
    assert not played.sitting.contrast


def test_what_is_not_understood_is_asked_again():
    played = Played("lopsided-tool")
    assert played.sitting.act(Give(text="somewhere over there")) is not None
    assert played.sitting.act(LockIn()) is not None
    assert played.answers == []


def _some_answer(asked: Asked) -> Answer:
    """Whatever can be said, and is no truth."""
    if isinstance(asked.form, Choice):
        return asked.form.keys[0]
    if isinstance(asked.form, Numbers):
        return tuple(number.high for number in asked.form.numbers)
    return asked.form.low


@pytest.mark.parametrize("name", [path.stem for path in SHELF.files()])
def test_every_question_of_every_lesson_has_a_bench_and_comes_to_rest(name: str):
    played = Played(name)
    questions = len(played.sitting.run.lesson.questions)
    for _ in range(questions):
        asked = played.sitting.run.asked
        played.sitting.act(Set(value=_some_answer(asked), given="so"))
        played.sitting.act(Sure(how="guess"))
        played.sitting.act(LockIn())
        played.wait(20.0)
        assert played.sitting.run.phase == "explain", asked.question_name
        played.sitting.show_contrast(shown=True)
        played.wait(1.0)
        played.sitting.act(Next())
    assert played.sitting.run.phase == "finished"
    assert len(played.answers) == questions


def test_a_skipped_question_leaves_nothing_but_a_mark():
    played = Played("lopsided-tool")
    played.sitting.act(Skip())
    assert played.sitting.run.index == 1
    assert played.answers == []


def test_an_unknown_lesson_is_answered_with_the_nearest_name():
    with pytest.raises(UnknownLessonError) as unknown:
        SHELF.file("lopsided-tol")
    assert unknown.value.near == "lopsided-tool"
