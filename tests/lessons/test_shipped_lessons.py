"""The lessons that ship: sound, fit for their age, and able to tell ways of thinking apart."""

import re
import tomllib
from functools import cache
from itertools import groupby
from pathlib import Path

import pytest

from lab.lesson import (
    Answered,
    Give,
    LockIn,
    Next,
    Sure,
    Watched,
    ask,
    check_lesson,
    explain,
    lesson_files,
    read_lesson,
    render,
    start,
    step,
)
from lab.lesson.forms import same
from lab.lesson.kinds import kind_of
from lab.lesson.matching import blurs, fits, predictions
from lab.outline.words import Words

COURSE = (
    *("one-finger", "lopsided-tool", "far-end-clip", "heavy-near-light-far"),
    *("weight-times-arm", "bar-weighs-too", "any-reference-line", "two-scales", "hang-it", "two-fingers", "how-sure"),
    *("three-axes", "off-centre-motor", "little-way-long-way", "burn-and-pump", "limits", "trim-the-glider"),
)
LESSONS = lesson_files([Path(__file__).parents[2] / "lessons"])
WORDS = Words()
SEEDS = range(4)
UNIT_WORDS = {
    "g": "grams",
    "cm": "centimetres",
    "kg": "kilograms",
    "m": "metres",
    "s": "seconds",
    "cm³": "cubic centimetres",
    "lb": "pounds",
    "in": "inches",
}
UNIT = re.compile(r"(?<=\d)[ \u00a0\u202f](cm³|cm|kg|g|m|s|lb|in)(?![\w³])")
AIRFRAME_CAUTION = "for learning only; a real aircraft is loaded by its approved data, local rules and licensed people."
AIRFRAME = re.compile(r"\b(drone|glider|wing|airframe|tailplane)s?\b", re.IGNORECASE)


@pytest.fixture(params=LESSONS, ids=[path.stem for path in LESSONS])
def path(request):
    return request.param


@cache
def read(path):
    return read_lesson(path)


@pytest.fixture
def lesson(path):
    return read(path)


@cache
def askings(path, index):
    """One question with the numbers of some seeds, at its first asking and again."""
    return tuple(ask(read(path), index, seed=seed, round=seed % 3) for seed in SEEDS)


@pytest.fixture
def asked_once(path, lesson):
    """Every question of a lesson with one set of numbers."""
    return tuple(askings(path, index)[0] for index in range(len(lesson.questions)))


@pytest.fixture
def asked_often(path, lesson):
    """Every question of a lesson with every set of numbers that is looked at."""
    return tuple(asked for index in range(len(lesson.questions)) for asked in askings(path, index))


def claimed(asked):
    """What each claimed way of thinking answers."""
    return [fit for fit in predictions(asked.task) if any(fit.claimed_by(claim) for claim in asked.claims)]


def shown(asked, *sentences):
    return " ".join(render(each, WORDS, asked.units) for each in sentences)


def syllables(word):
    """Count groups of vowels, a silent final e left out: the usual rough rule."""
    word = re.sub(r"e$", "", word) if not word.endswith("le") else word
    return max(1, len(re.findall(r"[aeiouy]+", word)))


def grade(text):
    """Flesch-Kincaid: 0.39 words/sentences + 11.8 syllables/words − 15.59.

    A figure counts as a word of one syllable; a colon or semicolon ends a sentence, as it does when read aloud.
    """
    sentences = [part for part in re.split(r"[.?!:;]", re.sub(r"(?<=\d)\.(?=\d)", "", text)) if part.strip()]
    words = re.findall(r"[A-Za-z'-]+|\d[\d\u202f,]*", text)
    count = sum(syllables(word.lower()) if word[0].isalpha() else 1 for word in words)
    return 0.39 * len(words) / len(sentences) + 11.8 * count / len(words) - 15.59


@pytest.mark.parametrize(
    ("text", "expected"),
    # Kincaid et al. 1975, the formula: 6 words, 1 sentence, 6 syllables give −1.45.
    [("The cat sat on the mat.", -1.45)],
)
def test_the_reading_grade_is_that_of_the_formula(text, expected):
    assert grade(text) == pytest.approx(expected, abs=0.005)


def test_the_course_comes_in_its_order():
    assert tuple(path.stem for path in LESSONS) == COURSE


def test_every_lesson_says_where_it_stands_in_the_course(path):
    assert tomllib.loads(path.read_text(encoding="utf-8"))["order"] == COURSE.index(path.stem) + 1


def test_it_has_neither_faults_nor_warnings(path):
    assert check_lesson(path) == ((), ())


def test_it_mixes_six_to_eight_questions_of_two_kinds_or_more_at_least_two_of_them_varied(lesson):
    assert 6 <= len(lesson.questions) <= 8
    assert len({question.ask for question in lesson.questions}) >= 2
    assert sum(bool(question.ranges) for question in lesson.questions) >= 2


def test_no_kind_comes_four_times_in_a_row(lesson):
    assert max(len(list(run)) for _, run in groupby(question.ask for question in lesson.questions)) <= 3


def test_at_least_three_ways_of_thinking_are_told_apart(lesson):
    claims = {claim.partition(":")[0] for question in lesson.questions for claim in question.claims}
    assert len(claims) >= 3


def test_no_claimed_way_is_mixed_up_with_any_numbers(asked_often):
    for asked in asked_often:
        assert blurs(asked.task, asked.claims) == (), (asked.question_name, asked.seed)


def test_no_claimed_way_is_near_the_truth_with_any_numbers(asked_often):
    for asked in asked_often:
        for fit in claimed(asked):
            where = (asked.question_name, asked.seed, fit.name)
            if isinstance(asked.truth, str):
                assert fit.answer != asked.truth, where
                continue
            truth, answer = (each if isinstance(each, tuple) else (each,) for each in (asked.truth, fit.answer))
            # Places: 3 % of the body and twice the tolerance.  Amounts: 3 % of the truth, its largest where several.
            along = asked.kind in ("place", "arm")
            size = asked.right_m - asked.left_m if along else max(abs(each) for each in truth)
            away = max(abs(one - other) for one, other in zip(answer, truth, strict=True))
            assert away > max(0.03 * size, 2 * asked.tolerance if along else 0.0), where


def play(lesson, seed, answer):
    """Go through a lesson; `answer` says what is typed to each question.  Returns what was recorded."""
    run, records = start(lesson, seed=seed), []
    while run.phase != "finished":
        for action in (Give(text=answer(run.asked)), Sure(how="fairly"), LockIn(seconds=5), Watched(), Next()):
            run, events = step(run, action)
            assert all(isinstance(event, Answered) for event in events), (answer(run.asked), events)
            records += events
    return run, records


def test_one_script_answers_every_question_right(lesson):
    for seed in SEEDS:
        run, records = play(lesson, seed, lambda asked: asked.form.recorded(asked.truth, asked.units))
        assert run.marks == ("right",) * len(lesson.questions)
        assert all(record.right and record.locked and not record.ways for record in records)


def test_a_learner_of_each_claimed_way_is_off_and_the_record_shows_the_way(lesson):
    for way in {claim for question in lesson.questions for claim in question.claims}:

        def thinks_so(asked, way=way):
            mine = [fit for fit in predictions(asked.task) if fit.claimed_by(way) and way in asked.claims]
            return asked.form.recorded(mine[0].answer if mine else asked.truth, asked.units)

        _, records = play(lesson, 1, thinks_so)
        for question, record in zip(lesson.questions, records, strict=True):
            assert record.right == (way not in question.claims)
            assert (way.partition(":")[0] in record.ways) == (way in question.claims)


def test_the_answer_of_a_claimed_way_is_explained_with_its_sentence_or_with_none(asked_often):
    for asked in asked_often:
        for fit in claimed(asked):
            told, found = explain(asked, fit.answer), fits(asked, fit.answer)
            assert fit.way in told.ways
            if told.idea is None:
                assert len(found) > 1, (asked.question_name, asked.seed, fit.name)
            else:
                assert shown(asked, told.idea) == shown(asked, kind_of(asked.task).idea(asked, fit))


def test_every_claimed_way_is_named_somewhere_in_its_lesson(asked_often):
    names = {claim.partition(":")[0] for asked in asked_often for claim in asked.claims}
    told = {fit.way for asked in asked_often for fit in claimed(asked) if explain(asked, fit.answer).idea is not None}
    assert told == names


def test_text_is_short_enough_before_a_learner_can_act(asked_once):
    for asked in asked_once:
        # 40 words on the screen; a number with its unit is one.
        text = UNIT.sub(r"\1", shown(asked, asked.title, asked.text, asked.prompt))
        assert len(text.split()) <= 40, text


def test_text_is_at_the_reading_age_of_its_level(lesson, asked_once):
    limit = {"early": 5.0, "middle": 8.0, "later": 10.0}[lesson.level]
    for asked in asked_once:
        for parts in ((asked.text, asked.prompt), asked.hints):
            text = UNIT.sub(lambda unit: " " + UNIT_WORDS[unit.group(1)], shown(asked, *parts))
            assert not text or grade(text) <= limit, (round(grade(text), 2), text)


def test_there_are_hints_in_steps_and_none_of_them_gives_the_number(asked_often):
    for asked in asked_often:
        assert asked.hints
        truth = asked.form.recorded(asked.truth, asked.units).split()
        figures = re.findall(r"\d+(?:\.\d+)?", shown(asked, *asked.hints))
        assert isinstance(asked.truth, str) or not set(figures) & set(truth), asked.question_name


def test_every_answer_of_every_way_is_explained_without_a_gap(asked_once):
    for asked in asked_once:
        for value in {fit.answer for fit in predictions(asked.task)} | {asked.truth}:
            told = explain(asked, value)
            sentences = [told.headline, told.going, told.happened, told.said, told.quotient, told.why, *told.working]
            sentences += [each for each in (told.idea,) if each is not None]
            assert told.contrast is not None, asked.question_name
            sentences += [told.contrast.label, told.contrast.happened]
            assert "{" not in shown(asked, *sentences)
            assert told.right == same(value, asked.truth, within=asked.tolerance or 0.0)


def test_what_is_chosen_is_not_always_the_same(path, asked_once):
    for kind in {asked.kind for asked in asked_once}:
        chosen = [asked.truth for asked in asked_once if asked.kind == kind and isinstance(asked.truth, str)]
        assert len(chosen) < 2 or len(set(chosen)) > 1, kind


def test_side_scenes_hang_from_a_pin_or_rest_on_a_finger(asked_once):
    for asked in asked_once:
        if asked.kind == "side":
            pivot = asked.build.pivot
            assert pivot.pad_m > 0 or (asked.build.bar is not None and pivot.up_m > 0)


def test_the_teachers_page_has_something_under_every_key(path):
    teacher = tomllib.loads(path.read_text(encoding="utf-8"))["teacher"]
    assert set(teacher) == {"minutes", "have", "do", "expect", "cautions"}
    # A class hour holds a lesson with its talk; less than ten minutes holds no six questions.
    assert 10 <= teacher["minutes"] <= 60
    for key in ("have", "do", "expect", "cautions"):
        assert teacher[key], key
        assert all(line.strip() for line in teacher[key]), key


def test_a_lesson_about_airframes_carries_their_caution(path, asked_once):
    texts = " ".join(shown(asked, asked.title, asked.text) for asked in asked_once)
    if AIRFRAME.search(texts) or any(asked.build.surfaces or asked.build.tanks for asked in asked_once):
        cautions = tomllib.loads(path.read_text(encoding="utf-8"))["teacher"]["cautions"]
        assert any(AIRFRAME_CAUTION in caution[:1].lower() + caution[1:] for caution in cautions)


def test_the_boat_hook_is_the_one_of_the_pictures():
    path = next(path for path in LESSONS if path.stem == "lopsided-tool")
    asked = ask(read(path), 0, seed=4711)
    assert shown(asked, asked.text) == (
        "A boat hook: pole 120 g, 40 cm long; hook 480 g, its middle 2 cm from the left end."
    )
    # 3360 / 600, to float64.
    assert asked.truth == pytest.approx(0.056, rel=1e-12)
    assert asked.tolerance_m == pytest.approx(0.003, rel=1e-12)
