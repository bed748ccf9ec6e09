import gc

import pytest

from lab.app.main import main
from lab.app.window_program import NoDisplayError, ask_for_display, loading, run_safely


@pytest.mark.parametrize(
    "environment",
    [{}, {"DISPLAY": ""}, {"DISPLAY": ":0", "SDL_VIDEODRIVER": "dummy"}, {"SDL_VIDEODRIVER": "offscreen"}],
)
def test_where_nobody_could_see_a_window_none_is_opened(environment: dict[str, str]):
    with pytest.raises(NoDisplayError):
        ask_for_display(environment, "linux")


@pytest.mark.parametrize(
    ("environment", "platform"),
    [
        ({"DISPLAY": ":0"}, "linux"),
        ({"WAYLAND_DISPLAY": "wayland-0"}, "linux"),
        ({"SDL_VIDEODRIVER": "kmsdrm"}, "linux"),
        ({}, "win32"),
        ({}, "darwin"),
    ],
)
def test_where_there_may_be_a_display_a_window_is_tried(environment: dict[str, str], platform: str):
    ask_for_display(environment, platform)


@pytest.mark.parametrize("words", [[], ["lesson", "lopsided-tool"]])
def test_with_no_display_and_no_terminal_it_is_wrong_usage(
    words: list[str], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
):
    monkeypatch.delenv("DISPLAY", raising=False)
    monkeypatch.delenv("WAYLAND_DISPLAY", raising=False)
    assert main(words) == 2
    said = capsys.readouterr()
    assert said.err.count("\n") == 1
    assert "display" in said.err
    assert "--text" in said.err


def test_what_is_to_be_kept_is_kept_however_the_window_ends():
    kept = []

    def crash() -> None:
        raise RuntimeError("flip failed")

    with pytest.raises(RuntimeError):
        run_safely(crash, lambda: kept.append("answer"))
    assert kept == ["answer"]


def test_what_is_loaded_once_is_left_alone_by_the_collector_and_what_comes_later_is_not():
    before = gc.get_freeze_count()
    try:
        with loading():
            collected = gc.isenabled()
            kept = [[] for _ in range(1000)]
        assert not collected
        assert gc.isenabled()
        assert gc.get_freeze_count() >= before + len(kept)
    finally:
        gc.unfreeze()


def test_what_cannot_be_loaded_leaves_the_collector_at_work():
    def fail() -> None:
        with loading():
            raise ImportError("no such driver")

    try:
        with pytest.raises(ImportError):
            fail()
        assert gc.isenabled()
    finally:
        gc.unfreeze()
