"""How figures are printed; what they are is for whoever reads them."""

import io
import json
import math

import pytest

from lab.app.paths import find_paths
from lab.figures.__main__ import as_json, as_line, main
from lab.figures.rows import row
from lab.figures.speed_lessons import copied_lessons
from lab.figures.timing import best_s, medians_s
from lab.lesson import lesson_files, read_lesson


def test_a_row_says_its_ratio_its_reference_and_whether_the_goal_is_met():
    line = as_line(row("busy frame", 0.003, 0.001, goal=20.0, beside="one blit"))
    assert line.startswith("busy frame: 3 x one blit (goal 20, met;")
    assert "missed" in as_line(row("busy frame", 0.03, 0.001, goal=20.0, beside="one blit"))
    assert "no goal" in as_line(row("busy frame", 0.03, 0.001, goal=math.inf, beside="a turn"))


def test_json_holds_nothing_that_is_no_number():
    values = as_json(row("x", 1.0, 0.0, goal=math.inf))
    assert values["ratio"] is None
    assert values["goal"] is None
    json.dumps(values, allow_nan=False)


def test_accuracy_is_printed_as_one_json_object():
    pytest.importorskip("aerosandbox", reason="no wheels for this Python yet")
    out = io.StringIO()
    assert main(["accuracy", "--quick", "--json"], stdout=out, stderr=io.StringIO()) == 0
    document = json.loads(out.getvalue())
    assert document["what"] == "accuracy"
    assert all(row["met"] for row in document["rows"])


def test_times_are_taken_in_turn():
    done: list[str] = []
    works = (lambda: done.append("ours"), lambda: done.append("reference"))
    assert len(medians_s(works, rounds=3)) == 2
    assert done == ["ours", "reference"] * 3
    assert all(time >= 0 for time in best_s(works, rounds=1))


@pytest.mark.parametrize("words", [[], ["weather"]])
def test_what_is_no_figure_is_wrong_usage(words: list[str]):
    with pytest.raises(SystemExit) as ended:
        main(words)
    assert ended.value.code == 2


def test_lessons_to_be_timed_are_sound_copies_each_with_a_name_and_title_of_its_own(tmp_path):
    shipped = find_paths().shipped_lessons
    shelf = lesson_files((shipped,))
    copies = copied_lessons(shipped, tmp_path, count=len(shelf) + 2)
    assert len({path.name for path in copies}) == len(copies)
    twice = [read_lesson(path) for path in (copies[0], copies[len(shelf)])]
    assert twice[0].title != twice[1].title
    assert [question.name for question in twice[0].questions] == [question.name for question in twice[1].questions]
    assert set(lesson_files((tmp_path,))) == set(copies)
