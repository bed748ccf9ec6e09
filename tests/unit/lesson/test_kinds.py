"""Every kind of question: a small lesson of each, answered right, by each idea it claims, and in plain text."""

import io
from pathlib import Path

import pytest

from lab.lesson import (
    Choice,
    Give,
    LockIn,
    Sure,
    Understood,
    ask,
    check_lesson,
    explain,
    read_lesson,
    render,
    start,
    step,
    understand,
)
from lab.lesson.kinds import KINDS
from lab.lesson.matching import blurs, fits, predictions
from lab.lesson.run import as_recorded
from lab.outline.words import Words
from lab.terminal.lesson_text import play

LESSONS = sorted((Path(__file__).parent / "kinds").glob("*.toml"))
WORDS = Words()


@pytest.fixture(params=LESSONS, ids=[path.stem for path in LESSONS])
def path(request):
    return request.param


@pytest.fixture
def lesson(path):
    return read_lesson(path)


def each_asked(lesson):
    for index, question in enumerate(lesson.questions):
        for seed in range(4 if question.ranges else 1):
            yield question, ask(lesson, index, seed=seed, round=seed % 2)


def test_every_kind_has_a_lesson_here():
    assert {question.ask for path in LESSONS for question in read_lesson(path).questions} == set(KINDS)


def test_it_has_neither_faults_nor_warnings(path):
    assert check_lesson(path) == ((), ())


def test_the_truth_is_of_the_questions_own_form_and_right(lesson):
    for _, asked in each_asked(lesson):
        assert asked.form.takes(asked.truth)
        told = explain(asked, asked.truth)
        assert told.right
        assert told.ways == ()
        assert told.idea == told.why


def test_every_claimed_idea_is_told_apart_named_and_told(lesson):
    for question, asked in each_asked(lesson):
        assert blurs(asked.task, question.claims) == ()
        assert question.claims
        for fit in predictions(asked.task):
            if not any(fit.claimed_by(claim) for claim in question.claims):
                continue
            told = explain(asked, fit.answer)
            assert not told.right
            assert fit.way in told.ways
            if not isinstance(asked.form, Choice):
                assert told.ways == (fit.way,)
                assert told.idea is not None
                # Said in the figures that the learner gave, wherever the sentence names them.
                assert render(told.idea, WORDS, asked.units)


def test_every_answer_of_every_idea_is_explained_without_a_gap(lesson):
    for _, asked in each_asked(lesson):
        for value in [asked.truth, *(fit.answer for fit in predictions(asked.task))]:
            told = explain(asked, value)
            assert told.contrast is not None
            said = [told.headline, told.going, told.happened, told.said, told.quotient, told.why, *told.working]
            said += [told.contrast.label, told.contrast.happened, *([told.idea] if told.idea else [])]
            for sentence in said:
                text = render(sentence, WORDS, asked.units)
                assert text
                assert "{" not in text
            assert told.deciding in [row.name for row in told.sum.rows]


def test_what_is_recorded_is_understood_again_as_the_same_answer(lesson):
    for _, asked in each_asked(lesson):
        heard = understand(asked, as_recorded(asked, asked.truth))
        assert isinstance(heard, Understood)
        assert fits(asked, heard.value) == ()
        assert explain(asked, heard.value).right


def test_it_is_played_from_question_to_record(lesson):
    run = start(lesson, seed=3)
    typed = as_recorded(run.asked, run.asked.truth)
    for action in (Give(text=typed), Sure(how="fairly"), LockIn(seconds=2.0)):
        run, events = step(run, action)
    (answered,) = events
    assert answered.right
    assert answered.kind == lesson.questions[0].ask
    assert answered.understood == as_recorded(run.asked, run.value)
    assert (answered.tolerance is None) == isinstance(run.asked.form, Choice)


@pytest.mark.parametrize("odd", ["", "-", "five", "😀", "1e999", "?!", "9" * 400, "1.2.3", "left and right and"])
def test_what_is_no_answer_is_asked_again_and_never_taken_for_one(lesson, odd):
    for _, asked in each_asked(lesson):
        heard = understand(asked, odd)
        assert not isinstance(heard, Understood)
        assert render(heard.message, WORDS, asked.units)


def test_it_is_played_in_plain_text_with_the_table_a_hint_and_the_sum(path):
    lesson = read_lesson(path)
    run = start(lesson, seed=3)
    out = io.StringIO()
    play(
        lesson,
        seed=3,
        stdin=io.StringIO(f"table\nhint\n{as_recorded(run.asked, run.asked.truth)}\ng\n"),
        stdout=out,
        words=WORDS,
        keep=lambda answered: None,
    )
    text = out.getvalue()
    assert "Type " in text
    assert "You said" in text
    assert "You and the sum agreed on: 1." in text
    assert "{" not in text
