"""What is due and who one is, as commands."""

import io
from datetime import UTC, datetime, timedelta

import pytest

from lab.app.main import main
from lab.app.paths import find_paths
from lab.attempts import AttemptStore, new_code
from lab.lesson.probe.items import situation_of_item, truth_of_item
from lab.lesson.probe.probe import answered, start_probe
from lab.lesson.ways.side import weight_only


@pytest.fixture
def said(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]):
    """Runs a command with lines typed; returns exit code, output, talk."""

    def run(*words: str, typed: str = "") -> tuple[int, str, str]:
        monkeypatch.setattr("sys.stdin", io.StringIO(typed))
        code = main(words)
        told = capsys.readouterr()
        return code, told.out, told.err

    return run


@pytest.fixture
def some_days_ago(monkeypatch: pytest.MonkeyPatch):
    """Lets what is answered from now on have been answered two days ago."""
    then = (datetime.now(UTC) - timedelta(days=2)).isoformat()
    monkeypatch.setattr("lab.attempts.attempt.time_now", lambda: then)


def codes() -> list[str]:
    with AttemptStore.open(find_paths().record) as store:
        return [used.code for used in store.codes()]


def test_nothing_is_due_before_anything_was_answered(said):
    code, out, err = said("lesson")
    assert (code, err) == (0, "")
    assert out
    assert not find_paths().record.exists()
    code, _, err = said("lesson", "mixed", "--text")
    assert code == 1
    assert "nothing has come back yet" in err


@pytest.mark.usefixtures("some_days_ago")
def test_what_has_come_back_is_named_beside_the_list_and_played_under_its_own_lessons_name(said):
    said("lesson", "one-finger", "--text", "--seed", "5", typed="2\ncertain\nnext\nleft\nguess\nnext\n")
    code, out, err = said("lesson")
    assert code == 0
    assert "mixed" not in out
    assert "2 questions have come back: `tiltbench lesson mixed --text` asks them" in err
    code, out, _ = said("lesson", "mixed", "--text", "--seed", "6", typed="quit\n")
    assert code == 0
    assert "A few from before" in out
    assert "(question 1 of 2, seed 6)" in out


@pytest.mark.usefixtures("some_days_ago")
def test_another_learner_is_named_by_code_in_small_letters_with_a_dash(said):
    said("lesson", "one-finger", "--text", "--seed", "5", typed="2\ncertain\n")
    (mine,) = codes()
    find_paths().settings.unlink()
    dashed = f"{mine[:4]}-{mine[4:]}".lower()
    code, _, err = said("lesson", "--learner", dashed)
    assert code == 0
    assert "1 question has come back" in err
    code, out, _ = said("probe", "--text", "--seed", "5", "--learner", dashed, typed="left\nquit\n")
    assert code == 0
    assert dashed.upper() in out
    assert codes() == [mine]


def test_an_unknown_or_malformed_code_ends_with_1_and_the_cure(said):
    said("lesson", "one-finger", "--text", "--seed", "5", typed="2\ncertain\n")
    (mine,) = codes()
    wrong = mine[:-1] + ("3" if mine[-1] != "3" else "4")
    for words in (("lesson", "one-finger", "--text"), ("probe", "--text"), ("lesson",), ("lesson", "mixed", "--text")):
        code, out, err = said(*words, "--learner", wrong)
        assert code == 1
        assert f"{wrong} is no code; the nearest is {mine[:4]}-{mine[4:]}" in err
        assert "answer>" not in out
        strange = new_code()
        code, _, err = said(*words, "--learner", strange)
        assert code == 1
        assert f"nothing is kept here under {strange[:4]}-{strange[4:]}" in err


def test_in_the_window_the_code_is_chosen_there(said):
    for words in (("lesson", "one-finger"), ("probe",), ("lesson", "mixed")):
        code, _, err = said(*words, "--learner", new_code())
        assert code == 2
        assert "start screen" in err


def test_a_second_probe_says_what_has_changed_and_how_sure(said):
    def typed(rule, seed: int) -> str:
        probe, lines = start_probe(seed=seed), []
        while probe.item is not None:
            lines.append(rule(probe.item))
            probe = answered(probe, lines[-1])
        return "\n".join(lines) + "\ndone\n"

    first = typed(lambda item: weight_only(situation_of_item(item)), 5)
    assert "At first" not in said("probe", "--text", "--seed", "5", typed=first)[1]
    _, out, _ = said("probe", "--text", "--seed", "6", typed=typed(truth_of_item, 6))
    told = out.splitlines()[-3:]
    assert told[0] == "At first your answers fitted: the side with more weight goes down."
    assert told[1] == "Now they fit: weight times distance, and the larger product goes down."
    assert told[2].startswith("How sure it is that these are two rules: 9")
