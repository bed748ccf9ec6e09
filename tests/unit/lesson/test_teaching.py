"""The teacher's page: what the writer says, and every answer worked out."""

from dataclasses import replace

from lab.files import UNITS
from lab.lesson import TeachersPage, ask, read_lesson, render
from lab.lesson.teaching import teaching_sheet
from lab.outline import Words

TABLE = TeachersPage(
    minutes=20, have=("A broom.",), do=("Lay it down.", "Let go."), expect=("So.",), cautions=("Mind!",)
)
VARIED = """
[[question]]
name = "net"
ask = "place"
title = "Where will it balance?"
say = "Handle {handle.weight}, ring {ring.weight}."
tolerance = 1
ways = []
vary = { "ring.weight" = { from = 100, to = 500, step = 20 } }
[question.scene]
[[question.scene.part]]
name = "ring"
weight = 200
at = 90
[[question.scene.part]]
name = "handle"
weight = 300
at = 50
shape = { kind = "rod", length = 100 }
"""


def said(sentence) -> str:
    return render(sentence, Words(), UNITS["g-cm"])


def test_the_sections_stand_in_the_order_of_a_lesson(lesson):
    sheet = teaching_sheet(replace(lesson, teacher=TABLE), seed=0)
    assert [section.key for section in (*sheet.before, *sheet.after)] == [
        "aim", "time", "have", "do", "expect", "cautions",
    ]  # fmt: skip
    assert [said(line) for line in sheet.before[1].lines] == ["20 minutes, talk included."]
    assert [said(line) for line in sheet.before[3].lines] == ["Lay it down.", "Let go."]
    assert sheet.before[3].numbered


def test_a_lesson_that_says_nothing_to_the_teacher_still_has_its_answers(lesson):
    sheet = teaching_sheet(lesson, seed=0)
    assert [section.key for section in (*sheet.before, *sheet.after)] == ["aim", "missing"]
    assert "[teacher]" in said(sheet.before[1].lines[0])
    # By hand: (480 × 2 + 120 × 20) / 600 = 5.6; and 300 × 20 against 100 × 60 + 200 × 10.
    assert [said(question.answer) for question in sheet.questions] == ["5.6 cm", "right"]
    assert "6 000 on the left and 8 000 on the right" in said(sheet.questions[1].why).replace("\u202f", " ")


def test_each_claimed_way_has_its_own_answer_and_the_sentence_a_learner_is_told(lesson):
    hook, leads = lesson.questions
    claiming = replace(lesson, questions=(replace(hook, claims=("middle", "far_end")), leads))
    question = teaching_sheet(claiming, seed=0).questions[0]
    # By hand: the middle of 40 cm; the pole's 120 g at 40 cm: (480 × 2 + 120 × 40) / 600; the hook, 4 cm long, at 4 cm:
    # (480 × 4 + 120 × 20) / 600.
    assert [(thought.way, said(thought.answer)) for thought in question.thoughts] == [
        ("middle", "20.0 cm"), ("far_end:hook", "7.2 cm"), ("far_end:pole", "9.6 cm"),
    ]  # fmt: skip
    assert (
        said(question.thoughts[0].told) == "20.0 is the middle of its length. That would do if both sides were alike."
    )
    assert said(question.thoughts[2].told).startswith(
        "9.6 is where it would balance if the pole's weight sat at its far"
    )


def test_where_several_ways_say_the_same_the_page_says_that_none_is_named(lesson):
    _, leads = lesson.questions
    claiming = replace(lesson, questions=(replace(leads, claims=("no_bar",)),))
    (thought,) = teaching_sheet(claiming, seed=0).questions[0].thoughts
    # Without the bar 300 × 20 = 100 × 60: level; so say those who count pieces, one on each side.
    assert said(thought.answer) == "level"
    assert said(thought.told).endswith("so none is named.")
    assert "counts_pieces" in said(thought.told)


def test_a_way_whose_answer_is_right_here_says_so(lesson):
    _, leads = lesson.questions
    claiming = replace(lesson, questions=(replace(leads, claims=("longer_side_down",)),))
    (thought,) = teaching_sheet(claiming, seed=0).questions[0].thoughts
    assert said(thought.told) == "With these numbers that is right."


def test_the_page_of_a_seed_has_the_numbers_that_the_lesson_asks_with_that_seed(write):
    path = write()
    path.write_text(path.read_text(encoding="utf-8") + VARIED, encoding="utf-8")
    varied = read_lesson(path)
    for seed in (0, 7):
        sheet = teaching_sheet(varied, seed=seed)
        assert sheet.note is not None
        assert f"seed {seed}" in said(sheet.note)
        asked = ask(varied, 0, seed=seed)
        assert said(sheet.questions[0].answer) == said(asked.form.shown(asked.truth))
        assert said(sheet.questions[0].lines[0]) == said(asked.text)
    assert len({said(teaching_sheet(varied, seed=seed).questions[0].answer) for seed in range(8)}) > 2
