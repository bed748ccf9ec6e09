"""A saved text is all there or not there."""

import os
import stat
import sys

import pytest

from lab.files import save_text


def test_a_text_is_saved_as_utf_8_with_plain_line_ends(tmp_path):
    save_text(tmp_path / "b.toml", "ä\nb\n")
    assert (tmp_path / "b.toml").read_bytes() == "ä\nb\n".encode()
    assert os.listdir(tmp_path) == ["b.toml"]


@pytest.mark.parametrize("step", ["fsync", "replace", "chmod"])
def test_where_saving_fails_at_any_step_the_old_text_stays_and_nothing_is_left_about(tmp_path, monkeypatch, step):
    path = tmp_path / "b.toml"
    save_text(path, "old")

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, step, full)
    with pytest.raises(OSError, match="No space left"):
        save_text(path, "new")
    assert path.read_text() == "old"
    assert os.listdir(tmp_path) == ["b.toml"]


def test_the_text_is_on_the_disk_before_it_takes_the_name(tmp_path, monkeypatch):
    steps = []
    fsync, replace = os.fsync, os.replace
    monkeypatch.setattr(os, "fsync", lambda handle: (steps.append("fsync"), fsync(handle)))
    monkeypatch.setattr(os, "replace", lambda old, new: (steps.append("replace"), replace(old, new)))
    save_text(tmp_path / "b.toml", "x")
    assert steps[:2] == ["fsync", "replace"]


def test_a_folder_that_is_not_there_is_an_oserror(tmp_path):
    with pytest.raises(OSError, match="No such file"):
        save_text(tmp_path / "none" / "b.toml", "x")


@pytest.mark.skipif(sys.platform == "win32", reason="modes mean little there")
def test_the_permissions_of_an_old_file_stay(tmp_path):
    path = tmp_path / "b.toml"
    path.write_text("old")
    path.chmod(0o640)
    save_text(path, "new")
    assert stat.S_IMODE(path.stat().st_mode) == 0o640


@pytest.mark.skipif(sys.platform == "win32", reason="links need rights there")
def test_through_a_link_the_file_it_leads_to_is_saved(tmp_path):
    (tmp_path / "real.toml").write_text("old")
    (tmp_path / "link.toml").symlink_to("real.toml")
    save_text(tmp_path / "link.toml", "new")
    assert (tmp_path / "real.toml").read_text() == "new"
    assert (tmp_path / "link.toml").is_symlink()


@pytest.mark.skipif(sys.platform == "win32", reason="folders are not opened there")
def test_a_file_system_that_cannot_sync_a_folder_is_no_failure(tmp_path, monkeypatch):
    fsync = os.fsync

    def picky(handle):
        if stat.S_ISDIR(os.fstat(handle).st_mode):
            raise OSError(22, "Invalid argument")
        fsync(handle)

    monkeypatch.setattr(os, "fsync", picky)
    save_text(tmp_path / "b.toml", "x")
    assert (tmp_path / "b.toml").read_text() == "x"
