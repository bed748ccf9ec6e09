"""What is said of the changed scene before it is shown: asked, understood, kept."""

from pathlib import Path

import pytest

from lab.files import read_build_text
from lab.lesson import (
    Answered,
    Foresee,
    Give,
    LockIn,
    Next,
    Refusal,
    Set,
    Sure,
    Watched,
    ask,
    explain,
    read_lesson,
    render,
    start,
    step,
)
from lab.lesson.foretelling import foretelling
from lab.mechanics import turn_about
from lab.outline.words import Words

KINDS = Path(__file__).parent / "kinds"


def explained(lesson, *, index=0):
    run = start(lesson, seed=4711)
    if index:
        run, _ = step(run, Set(value=run.asked.truth, given=""))
        for action in (Sure(how="guess"), LockIn(), Watched(), Next()):
            run, _ = step(run, action)
    answer = Give(text="9.6") if run.asked.kind == "place" else Set(value="right", given="right")
    for action in (answer, Sure(how="guess"), LockIn(), Watched()):
        run, _ = step(run, action)
    return run


def test_the_truth_of_a_changed_bar_is_that_of_the_mechanics(lesson):
    asked = ask(lesson, 1, seed=4711)
    contrast = explain(asked, "right").contrast
    said = foretelling(asked, contrast)
    assert said.form.keys == ("left", "level", "right")
    assert said.truth == turn_about(contrast.build.all_parts, contrast.build.pivot).goes


def test_of_a_balance_point_it_is_said_which_way_it_goes(lesson):
    asked = ask(lesson, 0, seed=4711)
    contrast = explain(asked, 0.096).contrast
    said = foretelling(asked, contrast)
    moved_m = contrast.balance_point_m - asked.truth
    assert said.form.keys == ("less", "same", "more")
    assert said.truth == ("less" if moved_m < 0 else "more")


def test_nothing_is_said_where_nothing_is_changed(lesson):
    assert foretelling(ask(lesson, 1, seed=4711), None) is None


def test_it_is_kept_as_an_answer_of_its_own_beside_the_question(lesson):
    run = explained(lesson, index=1)
    after, (kept,) = step(run, Foresee(key="level", given="it stays", seconds=3.0))
    assert isinstance(kept, Answered)
    assert (kept.lesson, kept.question, kept.kind) == ("a-lesson", "two-leads+contrast", "contrast")
    assert (kept.seed, kept.round, kept.given, kept.understood) == (4711, 0, "it stays", "level")
    assert (kept.truth, kept.right) == (run.foretold.truth, run.foretold.truth == "level")
    assert (kept.seconds, kept.sure, kept.tolerance, kept.locked) == (3.0, None, None, True)
    # It can be put on a bench again from the record alone.
    assert read_build_text(kept.scene, file="record") == run.explanation.contrast.build
    assert (after.phase, after.foreseen) == ("explain", "level")


def test_it_is_said_once_and_only_while_there_is_an_explanation(lesson):
    run = explained(lesson)
    run, _ = step(run, Foresee(key="more", given="more"))
    _, (refused,) = step(run, Foresee(key="less", given="less"))
    assert isinstance(refused, Refusal)
    _, (refused,) = step(start(lesson, seed=4711), Foresee(key="more", given="more"))
    assert isinstance(refused, Refusal)


def test_the_next_question_begins_with_nothing_foreseen(lesson):
    run, _ = step(explained(lesson), Foresee(key="more", given="more"))
    run, _ = step(run, Next())
    assert (run.foreseen, run.foretold) == (None, None)


def test_what_is_no_option_is_a_mistake_of_the_program(lesson):
    with pytest.raises(TypeError, match="left"):
        step(explained(lesson), Foresee(key="left", given="left"))


@pytest.mark.parametrize(
    ("name", "prompt"),
    [
        ("hung-glider", "How would it hang then?"),
        ("drone-tanks", "Which would it be then?"),
        ("steady-glider", "What would it be then?"),
    ],
)
def test_a_choice_is_asked_for_again_in_words_of_its_kind(name, prompt):
    asked = ask(read_lesson(KINDS / f"{name}.toml"), 0, seed=1)
    said = foretelling(asked, explain(asked, asked.truth).contrast)
    assert render(said.prompt, Words(), asked.units) == prompt
