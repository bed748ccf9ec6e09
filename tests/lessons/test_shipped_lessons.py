"""The lessons that ship: sound, fit for their age, and able to tell ways of thinking apart."""

import re
from pathlib import Path

import pytest

from lab.lesson import ask, check_lesson, explain, lesson_files, read_lesson, render
from lab.lesson.matching import blurs, fits, predictions
from lab.outline.words import Words

LESSONS = lesson_files([Path(__file__).parents[2] / "lessons"])
NAMES = [path.stem for path in LESSONS]
WORDS = Words()
UNIT_WORDS = {"g": "grams", "cm": "centimetres", "kg": "kilograms", "m": "metres"}


@pytest.fixture(params=LESSONS, ids=NAMES)
def path(request):
    return request.param


@pytest.fixture
def lesson(path):
    return read_lesson(path)


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
    assert NAMES == ["one-finger", "lopsided-tool", "bar-weighs-too"]


def test_it_has_neither_faults_nor_warnings(path):
    assert check_lesson(path) == ((), ())


def test_it_mixes_six_to_eight_questions_of_both_kinds_at_least_two_of_them_varied(lesson):
    assert 6 <= len(lesson.questions) <= 8
    assert {question.ask for question in lesson.questions} == {"side", "place"}
    assert sum(bool(question.ranges) for question in lesson.questions) >= 2


def test_at_least_three_ways_of_thinking_are_told_apart(lesson):
    claims = {claim.partition(":")[0] for question in lesson.questions for claim in question.claims}
    assert len(claims) >= 3


def test_no_claimed_way_is_near_the_truth_with_any_numbers(lesson):
    for index, question in enumerate(lesson.questions):
        for seed in range(25):
            asked = ask(lesson, index, seed=seed, round=seed % 3)
            assert blurs(asked.task, question.claims) == ()


def test_the_exact_answer_of_a_claimed_place_names_that_way_and_no_other(lesson):
    for index, question in enumerate(lesson.questions):
        for seed in range(10):
            asked = ask(lesson, index, seed=seed)
            if asked.kind != "place":
                continue
            for fit in predictions(asked.task):
                if any(fit.claimed_by(claim) for claim in question.claims):
                    assert {found.way for found in fits(asked, fit.answer)} == {fit.way}


def test_text_is_short_enough_before_a_learner_can_act(lesson):
    for index in range(len(lesson.questions)):
        asked = ask(lesson, index, seed=1)
        text = " ".join(render(each, WORDS, asked.units) for each in (asked.title, asked.text, asked.prompt))
        # 40 words on the screen; a number with its unit is one.
        assert len(re.sub(r"(\d) (g|cm)\b", r"\1\2", text).split()) <= 40


def test_text_is_at_the_reading_age_of_its_level(lesson):
    limit = {"early": 5.0, "middle": 8.0, "later": 10.0}[lesson.level]
    for index in range(len(lesson.questions)):
        asked = ask(lesson, index, seed=1)
        for parts in ([asked.text, asked.prompt], list(asked.hints)):
            text = " ".join(render(each, WORDS, asked.units) for each in parts)
            text = re.sub(r"(?<=\d) (g|cm)\b", lambda unit: " " + UNIT_WORDS[unit.group(1)], text)
            assert grade(text) <= limit, (grade(text), text)


def test_every_answer_of_every_way_is_explained_without_a_gap(lesson):
    for index in range(len(lesson.questions)):
        asked = ask(lesson, index, seed=7)
        for value in {fit.answer for fit in predictions(asked.task)} | {asked.truth}:
            told = explain(asked, value)
            sentences = [told.headline, told.going, told.happened, told.said, told.quotient, told.why]
            sentences += [each for each in (told.idea,) if each is not None]
            sentences += [told.contrast.label, told.contrast.happened] if told.contrast else []
            for sentence in sentences:
                assert "{" not in render(sentence, WORDS, asked.units)
            assert told.contrast is not None
            assert told.right == (told.goes == "level" if asked.kind == "place" else value == asked.truth)


def test_sides_do_not_always_fall_the_same_way(lesson):
    truths = {ask(lesson, index, seed=3).truth for index, each in enumerate(lesson.questions) if each.ask == "side"}
    assert len(truths) > 1


def test_side_scenes_hang_from_a_pin_or_rest_on_a_finger(lesson):
    for index, question in enumerate(lesson.questions):
        build = ask(lesson, index, seed=1).build
        if question.ask == "side":
            assert build.pivot.pad_m > 0 or (build.bar is not None and build.pivot.up_m > 0)


def test_the_boat_hook_is_the_one_of_the_pictures():
    asked = ask(read_lesson(LESSONS[1]), 0, seed=4711)
    assert render(asked.text, WORDS, asked.units) == (
        "A boat hook: pole 120 g, 40 cm long; hook 480 g, its middle 2 cm from the left end."
    )
    # 3360 / 600, to float64.
    assert asked.truth == pytest.approx(0.056, rel=1e-12)
    assert asked.tolerance_m == pytest.approx(0.003, rel=1e-12)
