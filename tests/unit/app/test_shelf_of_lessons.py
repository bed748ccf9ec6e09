"""Lessons off the shelf: read once, and again when a file has changed."""

import shutil
from pathlib import Path

from lab.app.paths import find_paths
from lab.app.shelf import Shelf, shelf_of


def test_lessons_are_read_again_only_when_a_file_has_changed(tmp_path: Path):
    source = shelf_of(find_paths()).file("one-finger")
    shutil.copy(source, tmp_path / "mine.toml")
    shelf = Shelf(folders=(tmp_path,))
    (first,), faults = shelf.read_all()
    assert faults == ()
    assert shelf.read_all()[0][0] is first
    text = source.read_text(encoding="utf-8")
    (tmp_path / "mine.toml").write_text(text.replace(first.title, "Another title"), encoding="utf-8")
    assert shelf.read_all()[0][0].title == "Another title"
    (tmp_path / "mine.toml").write_text("format = 1\n[[question]]\n", encoding="utf-8")
    lessons, faults = shelf.read_all()
    assert lessons == ()
    assert len(faults) == 1


def test_a_folder_that_is_not_there_holds_no_lessons(tmp_path: Path):
    assert Shelf(folders=(tmp_path / "none",)).read_all() == ((), ())
