"""The probe in plain lines, from one stream to another."""

import io
import re

from lab.attempts import AttemptsError
from lab.lesson.probe.items import item_named, situation_of_item
from lab.lesson.probe.probe import answered, start_probe
from lab.lesson.ways.side import weight_only
from lab.outline.words import Words
from lab.terminal.probe_text import play_probe


def by_weight(seed: int) -> list[str]:
    """What somebody types who looks at the weights alone."""
    probe, typed = start_probe(seed=seed), []
    while probe.item is not None:
        side = weight_only(situation_of_item(probe.item))
        typed.append(side)
        probe = answered(probe, side)
    return typed


def played(typed, *, seed=4711, keep=None, words=None):
    kept = []
    out = io.StringIO()
    probe = play_probe(
        seed=seed,
        stdin=io.StringIO(typed),
        stdout=out,
        words=words or Words(),
        keep=keep or kept.append,
        code="K7M4QXRA",
        clock=iter(range(10_000)).__next__,
    )
    return out.getvalue(), kept, probe


def test_it_says_at_the_end_what_the_answers_fit_and_the_runner_up_and_never_wrong():
    text, kept, probe = played("\n".join([*by_weight(4711), "done", ""]))
    assert "How do you think?  (seed 4711)" in text
    assert "Your answers fit: the side with more weight goes down." in text
    assert re.search(r"How sure that is: \d\d %\.", text)
    assert re.search(r"Next nearest \(\d+ %\): ", text)
    assert not re.search(r"\b(wrong|right answer|mistake|correct)\b", text)
    assert [row.kind for row in kept] == ["probe"] * len(probe.given)
    assert [item_named(row.question) for row in kept] == [item for item, _ in probe.given]


def test_each_question_gives_both_weights_and_arms_and_nothing_is_told_in_between():
    text, kept, _ = played("right\nleft\n")
    item = item_named(kept[0].question)
    given = (
        f"On the left {item.left_weight} g hangs {item.left_arm} cm from the middle; "
        f"on the right {item.right_weight} g hangs {item.right_arm} cm from it."
    )
    lines = text.splitlines()
    place = lines.index("answer> right")
    assert given in lines
    assert lines[place + 1 : place + 3] == ["", "Question 2, of 24 at most"]


def test_words_may_be_short_and_what_is_not_understood_is_asked_again():
    text, kept, probe = played("r\npurple\n?\nrepeat\nlev\n1e999\nquit\n")
    assert [row.understood for row in kept] == ["right", "level"]
    assert text.count("Say left, right or level") == 2
    assert text.count("Question 2, of 24 at most") == 2
    assert "Left before the end" in text
    assert len(probe.given) == 2


def test_the_end_of_input_ends_it_and_what_was_answered_is_kept():
    text, kept, _ = played("left\n")
    assert len(kept) == 1
    assert "Left before the end" in text


def test_more_goes_on_after_an_early_stop():
    typed = by_weight(4711)
    text, kept, probe = played("\n".join([*typed, "maybe", "more", "left", ""]))
    assert len(kept) == len(typed) + 1
    assert probe.to_the_end
    assert f"Question {len(typed) + 1}, of 24 at most" in text


def test_an_answer_that_cannot_be_saved_is_said_and_the_questions_go_on():
    def keep(row):
        raise AttemptsError("the disk is full")

    text, _, probe = played("left\nleft\n", keep=keep)
    assert text.count("could not be saved (the disk is full)") == 2
    assert len(probe.given) == 2


def test_every_sentence_passes_the_words():
    text, _, _ = played("\n".join([*by_weight(4711), "done", ""]), words=Words("xx"))
    for line in text.splitlines():
        said = line.split("> ")[0] if "> " in line else line
        assert not said.strip() or "[" in said or said in ("answer",), line
