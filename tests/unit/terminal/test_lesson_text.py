"""A lesson in plain lines, from one stream to another."""

import io
import subprocess
import sys
from pathlib import Path

import pytest

from lab.attempts import AttemptsError
from lab.lesson import Choice, Numbers, ask, lesson_files, read_lesson
from lab.outline.words import Words
from lab.terminal.lesson_text import play, whole_word

LESSONS = Path(__file__).parents[3] / "lessons"
LOPSIDED = LESSONS / "early" / "lopsided-tool.toml"


class Seconds:
    """A clock that moves on by one second at every look."""

    def __init__(self):
        self.now = 0.0

    def __call__(self):
        self.now += 1.0
        return self.now


def played(typed, *, path=LOPSIDED, seed=4711, keep=None, words=None, code=None):
    kept = []
    out = io.StringIO()
    run = play(
        read_lesson(path),
        seed=seed,
        stdin=io.StringIO(typed),
        stdout=out,
        words=words or Words(),
        keep=keep or kept.append,
        code=code,
        clock=Seconds(),
    )
    return out.getvalue().replace("\u202f", " "), kept, run


def test_the_boat_hook_reads_as_it_was_laid_down():
    text, _, _ = played("9.6\nfairly\n")
    for line in (
        "Where will it balance?  (question 1 of 6, seed 4711)",
        "A boat hook: pole 120 g, 40 cm long; hook 480 g, its middle 2 cm from the left end.",
        "answer> 9.6",
        "how sure (guess, fairly, certain)> fairly",
        "Let go: the hook end drops.",
        "hook   480 g x  2.0 cm =    960",
        "pole   120 g x 20.0 cm =  2 400",
        "You said 9.6 cm: 4.0 cm too far right. 9.6 is where it would balance if the pole's weight sat at its far end; "
        "it sits at its middle.",
        "What if the pole had no weight? Where would it balance then? (farther left, the same place, farther right; or "
        "go on)",
    ):
        assert line in text.splitlines()
    assert "Where would one finger hold it level? Type a place in cm from the left end." in text
    (sums,) = [line for line in text.splitlines() if line.startswith("sum")]
    assert sums.split() == ["sum", "600", "g", "3", "360", "3", "360", "/", "600", "=", "5.6", "cm"]
    assert text.splitlines()[-3].startswith("again or next>")


@pytest.mark.parametrize("said", ["farther left", "left", "l"])
def test_what_the_changed_scene_will_do_is_said_kept_and_then_told(said):
    text, kept, _ = played(f"9.6\nfairly\n{said}\nnext\n")
    assert text.splitlines().count("Then it would balance at 2.0 cm.") == 1
    assert [(each.question, each.understood, each.right) for each in kept] == [
        ("boat-hook", "9.6", False),
        ("boat-hook+contrast", "less", True),
    ]
    assert (kept[1].given, kept[1].seconds) == (said, 1.0)


@pytest.mark.parametrize("said", ["next", "n"])
def test_who_goes_on_without_saying_is_told_what_the_changed_scene_does(said):
    text, kept, _ = played(f"9.6\nfairly\n{said}\n")
    assert "Then it would balance at 2.0 cm." in text.splitlines()
    assert len(kept) == 1
    assert "question 2 of 6" in text


def test_commands_keep_their_names_while_the_changed_scene_is_asked_about():
    text, kept, _ = played("9.6\nfairly\nrepeat\nskip\n")
    assert len(kept) == 1
    assert text.count("(question 1 of 6") == 2
    assert "question 2 of 6" in text


def test_the_columns_of_a_sum_line_up():
    text, _, _ = played("9.6\nfairly\n")
    hook, pole, total = (line for line in text.splitlines() if line.startswith(("hook ", "pole ", "sum ")))
    assert hook.index("=") == pole.index("=")
    assert len(hook) == len(pole) == total.index("3 360") + len("3 360")


def test_what_was_locked_in_is_handed_on_and_the_end_of_input_ends_it():
    _, kept, run = played("9.6\nfairly\n")
    assert run.phase == "finished"
    (answered,) = kept
    assert (answered.question, answered.given, answered.sure, answered.locked) == ("boat-hook", "9.6", "fairly", True)
    assert answered.ways == ("far_end",)
    assert answered.seconds == 1.0


def test_an_answer_without_how_sure_is_kept_as_not_locked_in():
    _, kept, _ = played("9.6\n")
    assert [(answered.given, answered.locked) for answered in kept] == [("9.6", False)]


def test_nothing_typed_at_all_ends_it_with_nothing_kept():
    text, kept, run = played("")
    assert kept == []
    assert run.phase == "finished"
    assert "Questions you answered: 0." in text


def guessed(asked):
    """What somebody types who has no idea: the first that can be chosen, or sevens."""
    if isinstance(asked.form, Choice):
        return "left" if asked.kind == "side" else asked.form.options[0].key
    return " ".join("7" for _ in asked.form.numbers) if isinstance(asked.form, Numbers) else "7"


@pytest.mark.parametrize("path", lesson_files([LESSONS]), ids=lambda path: path.stem)
def test_a_whole_lesson_is_played_by_guessing_and_ends_by_itself(path):
    lesson = read_lesson(path)
    count = len(lesson.questions)
    typed = "".join(f"{guessed(ask(lesson, index, seed=4711))}\ng\nn\n" for index in range(count))
    text, kept, run = played(typed, path=path)
    assert run.phase == "finished"
    assert len(kept) == len(run.marks) == count
    assert f"Questions you answered: {count}." in text


def test_help_hint_repeat_and_table_work_before_an_answer_and_give_nothing_away():
    text, kept, _ = played("?\nhint\nrepeat\ntable\nh\n")
    assert "hint, repeat (the question), table" in text
    assert "Which part is heavy?" in text
    assert "The pole pulls too." in text
    assert text.count("A boat hook:") == 2
    assert "hook   480 g   at  2.0 cm" in text
    assert "5.6" not in text
    assert "960" not in text
    assert kept == []


def test_hints_run_out_with_a_sentence():
    text, _, _ = played("hint\nhint\nhint\nhint\n")
    assert "There is no further hint." in text


def test_commands_work_at_every_prompt():
    text, kept, _ = played("9.6\nhint\n?\nrepeat\ntable\nguess\ntable\nhint\n?\nrepeat\nnonsense\nquit\n")
    assert [answered.locked for answered in kept] == [True]
    assert "Hints come before the answer is locked in." in text
    assert "Type next to go on, or again for new numbers." in text


def test_again_brings_new_numbers_and_skip_goes_on():
    text, kept, run = played("again\nskip\nquit\n")
    assert text.count("(question 1 of 6, seed 4711)") == 2
    assert "(question 2 of 6, seed 4711)" in text
    assert kept == []
    assert run.marks[0] == "skipped"


def test_an_answer_may_be_changed_until_it_is_locked_in():
    text, kept, _ = played("9.6\n56 mm\ng\nnext\nl\nright\nc\n")
    assert [(answered.given, answered.understood) for answered in kept] == [("56 mm", "5.6"), ("right", "right")]
    assert "Your answer is now 5.6 cm." in text
    assert "Your answer is now right." in text


def test_r_is_right_while_a_side_is_asked_for():
    _, kept, _ = played("skip\nr\ng\n")
    assert [answered.understood for answered in kept] == ["right"]


def test_an_answer_that_is_not_understood_is_asked_again_with_an_example():
    text, kept, _ = played("five\n\n-\n1e999\n😀\n5,6\ng\n")
    assert text.count("Type a number, for example 40 cm.") == 5
    assert [answered.right for answered in kept] == [True]
    assert "You said 5.6 cm: it stays level there." in text


def test_how_sure_is_asked_until_it_is_said():
    text, kept, _ = played("9.6\nvery\n\nc\n")
    assert text.count("Type guess, fairly or certain") == 2
    assert [answered.sure for answered in kept] == ["certain"]


@pytest.mark.parametrize("failure", [AttemptsError("the disk is full"), OSError("read-only"), RuntimeError()])
def test_a_record_that_fails_is_said_and_play_goes_on(failure):
    def keep(_answered):
        raise failure

    text, _, run = played("9.6\nf\nnext\nr\ng\n", keep=keep)
    assert text.count("could not be saved") == 2
    assert (str(failure) or "RuntimeError") in text
    assert run.marks[:2].count("todo") == 0


def test_the_code_is_said_at_the_start_and_no_name_is_asked():
    text, _, _ = played("", code="K7Q-2MX")
    assert "K7Q-2MX" in text.splitlines()[1]


def test_every_line_passes_the_words():
    text, _, _ = played("9.6\nf\nn\n?\nr\ng\n", words=Words("xx"))
    for english in ("answer>", "Let go", "Which end", "boat hook", "You said", "End of the lesson"):
        assert english not in text


def test_bytes_that_are_no_text_are_asked_again():
    stdin = io.TextIOWrapper(io.BytesIO(b"\xff\xfe\n9.6\nf\n"), encoding="utf-8")
    stdout = io.TextIOWrapper(io.BytesIO(), encoding="ascii")
    kept = []
    play(read_lesson(LOPSIDED), seed=1, stdin=stdin, stdout=stdout, words=Words(), keep=kept.append, clock=Seconds())
    assert [answered.given for answered in kept] == ["9.6"]


def test_an_interrupt_ends_it_like_the_end_of_input():
    class Interrupted(io.StringIO):
        def readline(self, *_):
            raise KeyboardInterrupt

    kept = []
    run = play(
        read_lesson(LOPSIDED),
        seed=1,
        stdin=Interrupted(),
        stdout=io.StringIO(),
        words=Words(),
        keep=kept.append,
        clock=Seconds(),
    )
    assert run.phase == "finished"


def test_a_terminal_is_not_told_again_what_was_typed():
    class Terminal(io.StringIO):
        def isatty(self):
            return True

    out = io.StringIO()
    play(
        read_lesson(LOPSIDED),
        seed=1,
        stdin=Terminal("9.6\n"),
        stdout=out,
        words=Words(),
        keep=lambda answered: None,
        clock=Seconds(),
    )
    assert "answer> how sure" in out.getvalue()


@pytest.mark.parametrize(
    ("said", "word"), [("a", "again"), ("AGAIN", "again"), ("an", None), ("", None), ("x", None), ("s", "skip")]
)
def test_a_word_may_be_shortened_while_it_means_one_thing(said, word):
    assert whole_word(said, ("again", "skip", "stay") if said == "AGAIN" else ("again", "skip")) == word


def test_it_runs_without_pygame():
    script = "import sys, lab.terminal.lesson_text; sys.exit('pygame' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", script], check=False).returncode == 0


def test_what_flies_is_said_to_be_for_learning_only_once_a_lesson():
    limits = LOPSIDED.parents[1] / "later" / "limits.toml"
    lines = played("skip\nrepeat\nskip\nquit\n", path=limits)[0].splitlines()
    assert sum("For learning only" in line for line in lines) == 1
    lines = played("skip\nskip\nquit\n")[0].splitlines()
    assert not any("For learning only" in line for line in lines)


def test_what_is_no_word_for_the_changed_scene_is_answered_with_those_that_are():
    lines = played("9.6\nf\n7\nnext\n")[0].splitlines()
    (at,) = (number for number, line in enumerate(lines) if line.startswith("again or next> 7"))
    assert lines[at + 1] == "Type next to go on, or again for new numbers."
    assert lines[at + 2].endswith("; or go on)")
    assert lines[at + 2] == lines[at - 1]
