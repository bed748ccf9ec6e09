"""What a check says of each question: which ways of thinking its answers tell apart."""

import json

import pytest

from lab.app.main import main
from lab.lesson import lesson_report

NET = """
[[question]]
name = "net"
ask = "place"
title = "Where will it balance?"
say = "Handle {handle.weight}, ring {ring.weight}."
tolerance = 1
ways = ["middle"]
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
VARY = 'ways = ["middle"]\nvary = { "ring.weight" = { from = 100, to = 600, step = 20 } }'
LEVER = """
[[question]]
name = "lever"
ask = "weight"
title = "How heavy?"
say = "A stone of {stone.weight} at {stone.at}."
tolerance = 20
ways = ["equal_weights"]
hang = { name = "float", at = 90 }
[question.scene.bar]
length = 100
weight = 100
[[question.scene.part]]
name = "stone"
weight = 300
at = 10
hold = "hung"
[question.scene.pivot]
at = 50
up = 1
"""


def apart_in(path):
    report = lesson_report(path)
    assert report.faults == ()
    (apart,) = report.apart
    return apart


def test_a_way_with_an_answer_of_its_own_is_told_apart_and_those_alike_are_named_together(write):
    apart = apart_in(write(NET))
    # By hand, cm: right (200 × 90 + 300 × 50) / 500 = 66; middle 50; mean of the places (90 + 50) / 2 = 70, which is
    # half-way between the outer ones too; the heaviest's own place 50, the middle again.
    assert any({"plain_mean", "outer_middle"} <= set(group) for group in apart.never)
    assert any({"middle", "at_heaviest"} <= set(group) for group in apart.never)
    # The handle's weight at its far end: (200 × 90 + 300 × 100) / 500 = 96; nobody else says so.
    assert "far_end:handle" in apart.always
    assert apart.sometimes == apart.mixed == ()


def test_every_way_stands_in_one_place(write):
    for text in (NET, NET.replace('ways = ["middle"]', VARY)):
        apart = apart_in(write(text))
        named = [*apart.always, *apart.sometimes, *apart.mixed, *(name for group in apart.never for name in group)]
        assert len(set(named)) == len(named)


def test_drawn_numbers_tell_some_ways_apart_that_the_written_ones_do_not(write):
    apart = apart_in(write(NET.replace('ways = ["middle"]', VARY)))
    # A claimed way is drawn clear of every other; the heaviest is the handle with some numbers, the ring with others.
    assert "middle" in apart.always
    assert "far_end:handle" in (*apart.always, *apart.sometimes)
    assert any({"plain_mean", "outer_middle"} <= set(group) for group in apart.never)


def test_what_falls_within_the_tolerance_of_the_truth_is_said_to_be_like_it(write):
    apart = apart_in(write(LEVER))
    # By hand: 300 × 40 = w × 40, the bar level on its middle: 300 is right, and is what equal weights say too.
    assert any({"the right answer", "equal_weights"} <= set(group) for group in apart.never)


def test_a_lesson_with_faults_has_no_such_report(write):
    report = lesson_report(write(NET.replace("tolerance = 1", "tolerance = -1")))
    assert report.faults
    assert report.apart == ()


def test_the_command_prints_a_line_a_question_and_the_same_as_json(write, capsys: pytest.CaptureFixture[str]):
    path = write(NET)
    assert main(["check", str(path)]) == 0
    first, second = capsys.readouterr().out.splitlines()
    assert first == f"{path}: a lesson, no faults"
    assert second.startswith("  net: tells apart: ")
    assert "; never apart: " in second
    assert main(["check", str(path), "--json"]) == 0
    (said,) = json.loads(capsys.readouterr().out)["apart"][str(path)]
    assert said["question"] == "net"
    assert "far_end:handle" in said["always"]
