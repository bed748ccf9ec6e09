from pathlib import Path

import pytest

from lab.app.crash_notes import MOST_NOTES, write_crash_note
from lab.app.paths import find_paths


def test_what_ships_is_found():
    paths = find_paths()
    assert any(paths.shipped_lessons.rglob("*.toml"))
    assert any(paths.shipped_builds.glob("*.toml"))


def test_the_data_folder_can_be_chosen(tmp_path: Path):
    paths = find_paths({"TILTBENCH_HOME": str(tmp_path)})
    assert paths.home == tmp_path
    assert {paths.record.parent, paths.settings.parent, paths.builds.parent} == {tmp_path}


def test_otherwise_it_is_where_the_system_keeps_a_users_data():
    home = find_paths({}).home
    assert home.is_absolute()
    assert "tiltbench" in home.name.lower()


def test_looking_for_places_makes_none(tmp_path: Path):
    home = tmp_path / "nowhere"
    find_paths({"TILTBENCH_HOME": str(home)})
    assert not home.exists()


def _error(text: str) -> Exception:
    try:
        raise RuntimeError(text)
    except RuntimeError as error:
        return error


def test_a_crash_note_says_what_and_where(tmp_path: Path):
    note = write_crash_note(tmp_path / "crashes", _error("the carriage jammed"))
    assert note is not None
    text = note.read_text()
    assert "RuntimeError: the carriage jammed" in text
    assert Path(__file__).name in text


def test_old_crash_notes_are_removed(tmp_path: Path):
    notes = [write_crash_note(tmp_path, _error(str(number))) for number in range(MOST_NOTES + 3)]
    assert len(list(tmp_path.iterdir())) == MOST_NOTES
    assert notes[-1] is not None
    assert notes[-1].exists()


def test_a_crash_note_that_cannot_be_written_is_no_second_crash(tmp_path: Path):
    (tmp_path / "file").write_text("in the way")
    assert write_crash_note(tmp_path / "file", _error("x")) is None


@pytest.mark.parametrize("name", ["record", "settings", "crash_notes", "builds", "lessons"])
def test_everything_the_lab_writes_is_below_one_folder(name: str, tmp_path: Path):
    paths = find_paths({"TILTBENCH_HOME": str(tmp_path)})
    assert getattr(paths, name).parent == tmp_path
