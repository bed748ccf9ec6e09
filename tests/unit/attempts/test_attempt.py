from datetime import datetime

import pytest

from lab.attempts import attempt_of, time_now

ANSWER = {
    "lesson": "a-lopsided-tool", "question": "boat-hook", "kind": "place", "seed": 4711, "round": 0, "scene": "",
    "given": "9,6", "understood": "9.6", "truth": "5.6", "tolerance": 0.3, "right": False, "sure": "fairly",
    "seconds": 2.0, "hints": 0, "ways": ["far end"], "locked": True,
}  # fmt: skip


def test_an_answer_becomes_an_attempt_with_an_id_and_a_time_of_its_own():
    first = attempt_of(ANSWER, learner="K7MX34TC", version="0.1.0")
    second = attempt_of(ANSWER, learner="K7MX34TC", version="0.1.0")
    assert first.id != second.id
    assert first.learner == "K7MX34TC"
    assert first.ways == ("far end",)
    assert datetime.fromisoformat(first.made_at).tzinfo is not None


def test_a_place_is_kept_as_a_number_and_a_side_as_a_word():
    place = attempt_of(ANSWER, learner="K7MX34TC", version="0.1.0")
    assert (place.understood, place.truth) == (9.6, 5.6)
    side = attempt_of(
        {**ANSWER, "kind": "side", "understood": "left", "truth": "level", "tolerance": None},
        learner="K7MX34TC",
        version="0.1.0",
    )
    assert (side.understood, side.truth) == ("left", "level")


def test_seconds_are_kept_to_a_thousandth():
    attempt = attempt_of({**ANSWER, "seconds": 1.6521198380005444}, learner="K7MX34TC", version="0.1.0")
    assert attempt.seconds == 1.652


def test_an_answer_without_its_question_is_refused():
    with pytest.raises(TypeError, match="question"):
        attempt_of({k: v for k, v in ANSWER.items() if k != "question"}, learner="K7MX34TC", version="0.1.0")


def test_the_time_is_in_utc_to_the_millisecond():
    assert time_now().endswith("Z")
    assert len(time_now()) == len("2031-05-04T10:20:30.000Z")
