import json
import os
import stat
from pathlib import Path

import pytest

from lab.app.settings import Settings, SettingsError, changed, load_settings, save_settings
from lab.attempts import valid_code

CODE = "34679CF7"


def _settings(**changes: object) -> Settings:
    settings = load_settings(Path("no-such-file")).settings
    for name, value in changes.items():
        settings = changed(settings, name, value)
    return settings


def test_without_a_file_a_learner_gets_a_fresh_code_and_plain_settings():
    first, second = _settings(), _settings()
    assert valid_code(first.learner)
    assert first.learner != second.learner
    assert (first.theme, first.text_scale, first.language) == ("paper", 1.0, "en")
    assert (first.sound, first.balance_by_ear) == (True, False)


def test_settings_come_back_as_they_were_saved(tmp_path: Path):
    path = tmp_path / "new" / "settings.json"
    chosen = {"theme": "contrast", "text_scale": 1.5, "units": "lb-in", "sound": False, "balance_by_ear": True}
    settings = _settings(**chosen, reduced_motion=True)
    save_settings(path, settings)
    assert load_settings(path).settings == settings
    assert load_settings(path).set_aside is None
    assert list(path.parent.iterdir()) == [path], "no temporary file stays behind"


@pytest.mark.parametrize(
    "content",
    [b"{", b"[]", b'{"format": 2, "theme": "paper"}', b"\xff\xfe\x00", b"null", b"[" * 100_000, b""],
)
def test_a_file_that_cannot_be_understood_is_set_aside_and_kept(tmp_path: Path, content: bytes):
    path = tmp_path / "settings.json"
    path.write_bytes(content)
    loaded = load_settings(path)
    assert loaded.set_aside is not None
    assert loaded.set_aside.read_bytes() == content
    assert not path.exists()
    assert loaded.settings.theme == "paper"


def test_a_value_out_of_range_is_left_at_its_default_and_the_others_count(tmp_path: Path):
    path = tmp_path / "settings.json"
    held = {"format": 1, "theme": "loud", "text_scale": True, "units": ["g-cm"], "sound": False, "learner": "x"}
    path.write_text(json.dumps(held))
    settings = load_settings(path).settings
    assert (settings.theme, settings.text_scale, settings.units, settings.sound) == ("paper", 1.0, "", False)
    assert valid_code(settings.learner)


@pytest.mark.parametrize(("name", "value"), [("colour", "red"), ("text_scale", 3.0), ("language", "tlh"), ("sound", 1)])
def test_what_is_no_setting_is_refused(name: str, value: object):
    with pytest.raises(SettingsError, match=name):
        changed(_settings(), name, value)


def test_settings_that_cannot_be_written_are_said_to_be_so(tmp_path: Path):
    (tmp_path / "file").write_text("in the way")
    with pytest.raises(SettingsError, match="could not be saved"):
        save_settings(tmp_path / "file" / "settings.json", _settings())


@pytest.mark.skipif(os.name != "posix", reason="file modes mean little here")
def test_nobody_else_may_read_whose_code_is_in_use(tmp_path: Path):
    path = tmp_path / "settings.json"
    save_settings(path, _settings())
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
