"""A learner's course: what is done, what comes back and when, mixed, and what has changed."""

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from scipy.stats import beta

from lab.lesson import Lesson, read_lesson, start
from lab.lesson.course import Row, course
from lab.lesson.course_gain import ShareGain, gain, probes
from lab.lesson.course_mixed import mixed
from lab.lesson.course_telling import gain_lines, how_long_ago
from lab.lesson.probe.items import situation_of_item, truth_of_item
from lab.lesson.probe.probe import answered, start_probe
from lab.lesson.ways.side import weight_only

MONDAY = 1_772_445_600.0
HOUR, DAY = 3600.0, 86400.0
BAR = """
[[question]]
name = "{name}"
ask = "side"
title = "Which end drops?"
say = "Leads."
[question.vary]
"near.weight" = {{ from = 200, to = 400, step = 10 }}
[question.scene.bar]
length = 100
weight = 200
[[question.scene.part]]
name = "near"
weight = 300
at = 20
hold = "hung"
[question.scene.pivot]
at = 40
up = 1
"""
ROD = """
[[question]]
name = "{name}"
ask = "place"
title = "Where?"
say = "A rod."
tolerance = 1
[question.scene.bar]
length = 40
weight = 100
[[question.scene.part]]
name = "lead"
weight = 50
at = 5
"""


def at(when: float, lesson: str, question: str, **more: Any) -> Row:
    usual = Row(
        lesson=lesson, question=question, kind="side", understood="left", round=0, right=True, sure="fairly", hints=0,
        ways=(), locked=True, at_s=when,
    )  # fmt: skip
    return replace(usual, **more)


@pytest.fixture
def lessons(tmp_path: Path) -> tuple[Lesson, ...]:
    def made(name: str) -> Lesson:
        text = 'format = 1\ntitle = "T"\nlevel = "early"\naim = "A"\n'
        questions = [BAR.format(name="b1"), ROD.format(name="r1"), BAR.format(name="b2"), ROD.format(name="r2")]
        path = tmp_path / f"{name}.toml"
        path.write_text(text + "".join(questions), encoding="utf-8")
        return read_lesson(path)

    return tuple(made(name) for name in ("one", "two", "three"))


def all_of(lesson: Lesson, when: float) -> list[Row]:
    return [at(when, lesson.name, question.name, kind=question.ask) for question in lesson.questions]


def test_it_counts_questions_once_and_right_ones_at_the_first_try(lessons):
    rows = [
        at(MONDAY + HOUR, "one", "b1", right=True),
        at(MONDAY, "one", "b1", right=False, ways=("weight_only",)),
        at(MONDAY, "one", "r1"),
        at(MONDAY, "one", "b2", locked=False),
        at(MONDAY, "one", "b1+contrast", kind="contrast"),
        at(MONDAY, "probe", "1x1-2x2", kind="probe"),
        at(MONDAY, "one", "taken out of the lesson since"),
    ]
    done, *_ = course(lessons, rows, now_s=MONDAY).done
    assert (done.answered, done.right_first, done.ways) == (2, 1, ("weight_only",))
    assert not done.complete


def test_the_next_lesson_is_the_first_with_questions_left(lessons):
    assert course(lessons, [], now_s=MONDAY).next == "one"
    rows = all_of(lessons[0], MONDAY) + all_of(lessons[2], MONDAY)
    assert course(lessons, rows, now_s=MONDAY).next == "two"
    assert course(lessons, rows + all_of(lessons[1], MONDAY), now_s=MONDAY).next is None


def test_a_lesson_comes_back_after_a_day_a_week_and_a_month(lessons):
    rows = [at(MONDAY, "one", "b1")]
    times = [MONDAY]
    for days in (1, 7, 30, 30):
        met = times[-1]
        assert course(lessons, rows, now_s=met + days * DAY - 5 * HOUR).due == ()
        assert course(lessons, rows, now_s=met + days * DAY).due == ("one",)
        times.append(met + days * DAY)
        rows.append(at(times[-1], "one", "b1"))


def test_meeting_it_again_the_same_day_puts_off_the_first_return_and_counts_for_none(lessons):
    rows = [at(MONDAY, "one", "b1"), at(MONDAY + 3 * HOUR, "one", "r1")]
    assert course(lessons, rows, now_s=MONDAY + 21 * HOUR).due == ()
    assert course(lessons, rows, now_s=MONDAY + 24 * HOUR).due == ("one",)


def test_nothing_is_mixed_before_something_has_come_back(lessons):
    rows = all_of(lessons[0], MONDAY)
    assert mixed(lessons, rows, course(lessons, rows, now_s=MONDAY + HOUR)) is None


def test_what_has_come_back_is_mixed_kind_after_kind_lesson_after_lesson(lessons):
    rows = [row for lesson in lessons for row in all_of(lesson, MONDAY)]
    again = mixed(lessons, rows, course(lessons, rows, now_s=MONDAY + 2 * DAY))
    assert len(again.questions) == 5
    kinds = [question.ask for question in again.questions]
    assert all(one != next_one for one, next_one in pairwise(kinds))
    assert {question.borrowed.lesson for question in again.questions} == {"one", "two", "three"}


def test_what_was_sure_and_wrong_comes_first_then_what_was_wrong(lessons):
    rows = all_of(lessons[0], MONDAY) + all_of(lessons[1], MONDAY)
    rows[2] = replace(rows[2], right=False, sure="guess")
    rows[5] = replace(rows[5], right=False, sure="certain")
    again = mixed(lessons, rows, course(lessons, rows, now_s=MONDAY + 2 * DAY))
    asked = [(question.borrowed.lesson, question.name) for question in again.questions]
    assert asked[:2] == [("two", "r1"), ("one", "b2")]


def test_one_lesson_alone_brings_three_and_only_questions_that_were_met(lessons):
    rows = all_of(lessons[0], MONDAY)
    assert len(mixed(lessons, rows, course(lessons, rows, now_s=MONDAY + 2 * DAY)).questions) == 3
    again = mixed(lessons, rows[:1], course(lessons, rows[:1], now_s=MONDAY + 2 * DAY))
    assert [question.name for question in again.questions] == ["b1"]


def test_a_mixed_question_has_its_own_lessons_name_and_fresh_numbers(lessons):
    rows = all_of(lessons[0], MONDAY)
    again = mixed(lessons, rows, course(lessons, rows, now_s=MONDAY + 2 * DAY))
    run = start(again, seed=4711)
    assert (run.asked.lesson, run.asked.question_name, run.asked.round) == ("one", "b1", 1)
    first = start(lessons[0], seed=4711)
    assert run.asked.build != first.asked.build


def probe_rows(when: float, rule: Callable[..., str]) -> list[Row]:
    probe, rows = start_probe(seed=4711), []
    while probe.item is not None:
        side = rule(probe.item)
        rows.append(
            at(
                when + len(rows) * 8.0,
                "probe",
                probe.item.name,
                kind="probe",
                understood=side,
                round=len(rows),
            )
        )
        probe = answered(probe, side)
    return rows


def by_weight(item) -> str:
    return weight_only(situation_of_item(item))


def test_the_gain_is_from_the_first_probe_to_the_last_and_says_how_sure():
    rows = probe_rows(MONDAY, by_weight) + probe_rows(MONDAY + DAY, by_weight)
    rows += probe_rows(MONDAY + 9 * DAY, truth_of_item)
    found = gain(rows).rule
    assert (found.before.fit.rule.name, found.after.fit.rule.name) == ("weight_only", "moment")
    # Both probes stop at 0.95 or above, so two different rules are at least 0.95 * 0.95 likely.
    assert found.chance_changed > 0.9
    assert "two rules" in gain_lines(gain(rows))[-1].template


def test_the_same_rule_twice_is_no_change():
    found = gain(probe_rows(MONDAY, by_weight) + probe_rows(MONDAY + DAY, by_weight)).rule
    assert not found.changed
    assert found.chance_changed < 0.1


def test_a_probe_that_was_left_early_does_not_count():
    rows = probe_rows(MONDAY, by_weight)
    assert len(probes(rows + probe_rows(MONDAY + DAY, truth_of_item)[:2])) == 1
    assert gain(rows + probe_rows(MONDAY + DAY, truth_of_item)[:2]).rule is None


def test_first_answers_are_compared_only_with_those_of_a_later_day():
    rows = [
        at(MONDAY, "one", "b1", right=False),
        at(MONDAY + HOUR, "one", "b1", right=True),
        at(MONDAY, "one", "r1", right=False),
        at(MONDAY + 2 * DAY, "one", "r1", right=True),
        at(MONDAY + 2 * DAY + HOUR, "one", "r1", right=False),
        at(MONDAY, "one", "b2", right=True),
        at(MONDAY + 2 * DAY, "one", "b2", right=True),
    ]
    assert gain(rows).share == ShareGain(questions=2, right_first=1, right_later=2, gained=1, lost=0)
    assert gain(rows[:3]).share is None


@pytest.mark.parametrize(("gained", "lost"), [(0, 0), (1, 0), (5, 0), (3, 2), (2, 7), (12, 3)])
def test_how_sure_a_gain_is_is_the_tail_of_the_beta_distribution(gained, lost):
    share = ShareGain(questions=20, right_first=0, right_later=0, gained=gained, lost=lost)
    # A sum of at most 16 exact terms: round-off only.
    assert share.chance_better == pytest.approx(beta.sf(0.5, gained + 1, lost + 1), abs=1e-12)


def test_few_answers_are_not_called_a_gain():
    one = ShareGain(questions=1, right_first=0, right_later=1, gained=1, lost=0)
    (_, said) = gain_lines(type(gain([]))(rule=None, share=one))
    assert said.template.startswith("Too few")


def test_no_rows_have_nothing_to_say():
    assert gain_lines(gain([])) == ()


def test_how_long_ago_is_said_roughly():
    assert how_long_ago(None) == "not yet used"
    assert how_long_ago(30 * HOUR) == "a day or two ago"
    assert how_long_ago(90 * DAY) == "more than a month ago"
