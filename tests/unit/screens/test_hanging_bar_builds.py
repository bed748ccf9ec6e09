"""Saving and opening builds, and how the lab looks, from the hanging bar's screen."""

from typing import Any

import pytest

from lab.files import read_build
from lab.outline.node import walk
from lab.screens.benches.dialogs import file_named
from lab.ui.events import Key, Text


@pytest.fixture
def at_bar(pilot: Any) -> Any:
    pilot.press("to-build")
    return pilot


def test_a_build_is_saved_under_the_name_that_is_typed(at_bar: Any):
    at_bar.press("builds")
    at_bar.press("build-name")
    for _ in range(40):
        at_bar.lab.handle(Key("backspace"))
    for letter in "Tern mast":
        at_bar.lab.handle(Text(letter))
    assert at_bar.node("build-name").value == "Tern mast"
    at_bar.press("build-save")
    (saved,) = at_bar.paths.builds.glob("*.toml")
    assert saved.name == "tern-mast.toml"
    build = read_build(saved)
    assert [part.name for part in build.parts] == ["brass 200", "brass 100", "brass 50"]


def test_the_name_stands_there_already(at_bar: Any):
    at_bar.press("builds")
    assert at_bar.node("build-name").value == "Hanging bar"
    at_bar.press("build-save")
    assert len(list(at_bar.paths.builds.glob("*.toml"))) == 1


def test_a_build_without_a_name_is_not_saved(at_bar: Any):
    at_bar.press("builds")
    at_bar.press("build-name")
    for _ in range(40):
        at_bar.lab.handle(Key("backspace"))
    assert "disabled" in at_bar.node("build-save").state


def test_a_shipped_build_can_be_opened_and_the_change_undone(at_bar: Any):
    at_bar.press("builds")
    key = next(node.key for node in walk(at_bar.outline) if node.name == "Kite spar")
    at_bar.press(key)
    assert at_bar.says("Kite spar")
    assert any(node.name == "camera cradle" for node in walk(at_bar.outline))
    at_bar.press("undo")
    assert at_bar.says("brass 200")


def test_names_become_file_names_that_every_system_takes():
    assert str(file_named("Tern / mast: no. 2")) == "tern-mast-no-2.toml"
    assert str(file_named("../../etc")) == "etc.toml"
    assert str(file_named("...")) == "build.toml"


def test_escape_closes_the_dialog_first_then_puts_down_then_goes_back(at_bar: Any):
    at_bar.press("weight-1")
    at_bar.press("builds")
    at_bar.key("escape")
    assert not at_bar.has("builds-dialog")
    assert at_bar.has("picked-place")
    at_bar.key("escape")
    assert not at_bar.has("picked-place")
    at_bar.key("escape")
    assert at_bar.has("to-build")


def test_text_size_colours_and_motion_are_chosen_behind_aa(at_bar: Any):
    at_bar.press("looks")
    at_bar.press("setting-text_scale.1.5")
    at_bar.press("setting-theme.contrast")
    at_bar.press("setting-reduced_motion.True")
    at_bar.press("looks-done")
    settings = at_bar.lab.house.settings
    assert (settings.text_scale, settings.theme, settings.reduced_motion) == (1.5, "contrast", True)


def test_with_reduced_motion_the_end_is_shown_at_once(at_bar: Any):
    at_bar.press("looks")
    at_bar.press("setting-reduced_motion.True")
    at_bar.press("looks-done")
    at_bar.press("let-go")
    assert at_bar.node("happened").name == "The right end dropped."
