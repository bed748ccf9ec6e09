"""The commands as a person at a shell meets them, run in this process."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from lab.app.main import main
from lab.app.paths import find_paths
from lab.attempts import AttemptStore, attempt_of, new_code

BUILDS = find_paths().shipped_builds
BOAT_HOOK = str(BUILDS / "boat-hook.toml")


def _run(*words: str, stdin: str = "", env: dict[str, str] | None = None) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "lab", *words], input=stdin, capture_output=True, text=True, timeout=60,
        env={**os.environ, **(env or {})},
    )  # fmt: skip


def test_the_boat_hook_balances_at_5_6_cm(capsys: pytest.CaptureFixture[str]):
    assert main(["sum", BOAT_HOOK, "--json"]) == 0
    said = capsys.readouterr()
    document = json.loads(said.out)
    assert said.err == ""
    assert document["balance_point"][0] == pytest.approx(5.6, abs=1e-12)  # round-off of a sum of two products
    assert document["parts"][0]["moment"][0] == 2400.0


@pytest.mark.parametrize("words", [["--from", "10"], ["--from", "-10,0,0"], ["--from=-10,0,0"]])
def test_another_reference_line_moves_the_arms_and_not_the_balance_point(
    words: list[str], capsys: pytest.CaptureFixture[str]
):
    assert main(["sum", BOAT_HOOK, "--json", *words]) == 0
    document = json.loads(capsys.readouterr().out)
    reference = float(words[-1].removeprefix("--from=").split(",")[0])
    assert document["reference"][0] == reference
    assert [part["arm"][0] for part in document["parts"]] == [20.0 - reference, 2.0 - reference]
    assert document["balance_point"][0] == pytest.approx(5.6, abs=1e-12)


def test_a_sum_is_printed_for_people_too(capsys: pytest.CaptureFixture[str]):
    assert main(["sum", BOAT_HOOK]) == 0
    assert "5.6 cm" in capsys.readouterr().out


def test_a_missing_file_is_one_line_with_its_cure(capsys: pytest.CaptureFixture[str]):
    assert main(["sum", "no-such.toml"]) == 1
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("\n") == 1
    assert said.err.startswith("no-such.toml:1: ")
    assert "; " in said.err


@pytest.mark.parametrize("command", ["sum", "check"])
def test_with_json_faults_go_to_standard_output_as_one_object(command: str, capsys: pytest.CaptureFixture[str]):
    assert main([command, "no-such.toml", "--json"]) == 1
    said = capsys.readouterr()
    assert said.err == ""
    (fault,) = json.loads(said.out)["faults"]
    assert fault["file"] == "no-such.toml"
    assert set(fault) == {"file", "line", "key", "what", "cure"}


def test_everything_that_ships_passes_its_own_check(capsys: pytest.CaptureFixture[str]):
    paths = find_paths()
    assert main(["check", str(paths.shipped_lessons), str(paths.shipped_builds)]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert sum("a lesson" in line for line in lines) >= 3
    assert sum("a build" in line for line in lines) >= 5


def test_a_check_tells_lessons_and_builds_apart_by_content_and_reports_all_faults(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
):
    (tmp_path / "deep").mkdir()
    (tmp_path / "deep" / "one.toml").write_text('format = 1\ntitle = "x"\naim = "y"\nlevel = "early"\n')
    (tmp_path / "two.toml").write_text('format = 1\ntitle = "x"\nunits = "g-cm"\nparts = 3\n')
    (tmp_path / "three.toml").write_text("= not toml")
    (tmp_path / "notes.txt").write_text("not looked at")
    assert main(["check", str(tmp_path)]) == 1
    lines = capsys.readouterr().err.splitlines()
    assert {Path(line.split(":")[0]).name for line in lines} == {"one.toml", "two.toml", "three.toml"}


def test_a_folder_without_files_is_a_fault(tmp_path: Path, capsys: pytest.CaptureFixture[str]):
    assert main(["check", str(tmp_path)]) == 1
    assert "no .toml files" in capsys.readouterr().err


def test_wrong_usage_is_two(capsys: pytest.CaptureFixture[str]):
    assert main(["sum"]) == 2
    assert main(["sing"]) == 2
    assert "Traceback" not in capsys.readouterr().err


def test_version_and_help_are_results(capsys: pytest.CaptureFixture[str]):
    assert main(["--version"]) == 0
    assert capsys.readouterr().out.startswith("tiltbench ")
    assert main(["--help"]) == 0
    assert "lesson" in capsys.readouterr().out


def test_a_mistake_of_ours_is_one_line_and_a_note(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]):
    def broken(*_: object) -> int:
        raise RuntimeError("the carriage jammed")

    monkeypatch.setattr("lab.app.commands.sums.run", broken)
    assert main(["sum", BOAT_HOOK]) == 1
    said = capsys.readouterr().err
    assert said.count("\n") == 1
    assert "Traceback" not in said
    (note,) = find_paths().crash_notes.iterdir()
    assert str(note) in said
    assert main(["sum", BOAT_HOOK, "--debug"]) == 1
    assert "the carriage jammed" in capsys.readouterr().err


def test_a_reader_that_goes_away_early_is_no_mistake():
    with subprocess.Popen(
        [sys.executable, "-m", "lab", "sum", BOAT_HOOK], stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as program:
        assert program.stdout is not None
        assert program.stderr is not None
        program.stdout.close()
        assert program.stderr.read() == b""
        assert program.wait(timeout=60) == 0


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device here that is always full")
@pytest.mark.parametrize("unbuffered", ["", "1"], ids=["held back", "written at once"])
def test_a_full_disk_under_the_output_is_one_sentence_and_no_note(unbuffered: str):
    with Path("/dev/full").open("w") as full:
        done = subprocess.run(
            [sys.executable, "-m", "lab", "sum", BOAT_HOOK], stdout=full, stderr=subprocess.PIPE, text=True,
            timeout=60, env={**os.environ, "PYTHONUNBUFFERED": unbuffered},
        )  # fmt: skip
    assert done.returncode == 1
    assert done.stderr.count("\n") == 1
    assert done.stderr.startswith("The output ends here: ")
    assert not find_paths().crash_notes.exists()


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device here that is always full")
def test_where_even_a_fault_cannot_be_told_the_exit_code_still_tells_it():
    with Path("/dev/full").open("w") as full:
        done = subprocess.run([sys.executable, "-m", "lab", "sum", "no-such.toml"], stderr=full, timeout=60)
    assert done.returncode == 1


@pytest.mark.parametrize(
    "words",
    [["sum", BOAT_HOOK], ["check", BOAT_HOOK], ["lesson"], ["record", "export"], ["--version"]],
    ids=lambda words: words[0],
)
def test_commands_that_draw_nothing_never_load_pygame(words: list[str]):
    program = (
        "import sys\nfrom lab.app.main import main\n"
        f"code = main({words!r})\n"
        "sys.stderr.write('PYGAME' if 'pygame' in sys.modules else '')\nsys.exit(code)"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, timeout=60)
    assert done.returncode == 0
    assert "PYGAME" not in done.stderr


def test_the_record_is_exported_and_erased(capsys: pytest.CaptureFixture[str], tmp_path: Path):
    code, other = new_code(), new_code()
    answer = {
        "lesson": "oar", "question": "first", "kind": "side", "seed": 1, "round": 0, "scene": "", "given": "=1+1",
        "understood": "left", "truth": "left", "tolerance": None, "right": True, "sure": "guess", "seconds": 1.0,
        "hints": 0, "ways": (), "locked": True,
    }  # fmt: skip
    with AttemptStore.open(find_paths().record) as store:
        for learner in (code, code, other):
            store.keep(attempt_of(answer, learner=learner, version="0.1.0"))
    assert main(["record", "export"]) == 0
    assert capsys.readouterr().out.count("'=1+1") == 3
    target = tmp_path / "answers.csv"
    assert main(["record", "export", "-o", str(target)]) == 0
    assert target.read_bytes().count(b"\r\n") == 4
    assert capsys.readouterr().out == ""
    assert main(["record", "erase", f"{code[:4].lower()}-{code[4:]}"]) == 0
    assert "2" in capsys.readouterr().out
    assert main(["record", "erase", "--all"]) == 0
    with AttemptStore.open(find_paths().record) as store:
        assert store.attempts() == ()


def test_what_is_no_code_erases_nothing_and_says_so(capsys: pytest.CaptureFixture[str]):
    assert main(["record", "erase", "everyone"]) == 1
    assert "no learner code" in capsys.readouterr().err


def test_an_export_that_cannot_be_written_says_so(tmp_path: Path, capsys: pytest.CaptureFixture[str]):
    assert main(["record", "export", "-o", str(tmp_path / "no" / "such" / "out.csv")]) == 1
    said = capsys.readouterr().err
    assert "out.csv" in said
    assert said.count("\n") == 1


def test_an_export_is_saved_through_a_link(tmp_path: Path):
    shared, link = tmp_path / "shared.csv", tmp_path / "answers.csv"
    shared.touch()
    link.symlink_to(shared)
    assert main(["record", "export", "-o", str(link)]) == 0
    assert link.is_symlink()
    assert shared.read_text(encoding="utf-8").startswith("id,learner,")


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no named pipes on this system")
def test_an_export_into_a_pipe_or_a_device_never_puts_a_file_in_its_place(tmp_path: Path):
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    # Opened for both, a named pipe waits for nobody.
    reader = os.open(pipe, os.O_RDWR)
    try:
        assert main(["record", "export", "-o", str(pipe)]) == 0
        assert os.read(reader, 4096).startswith(b"id,learner,")
    finally:
        os.close(reader)
    assert pipe.is_fifo()


def test_python_dash_m_is_the_same_program():
    done = _run("--version")
    assert done.returncode == 0
    assert done.stdout.startswith("tiltbench ")
