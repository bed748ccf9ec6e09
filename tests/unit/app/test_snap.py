from pathlib import Path

import pytest

from lab.app.main import main
from lab.screens.gallery import GALLERY

PNG = b"\x89PNG\r\n\x1a\n"


def _size(path: Path) -> tuple[int, int]:
    """Width and height stand in the first chunk of a PNG file."""
    head = path.read_bytes()[:24]
    assert head.startswith(PNG)
    return int.from_bytes(head[16:20], "big"), int.from_bytes(head[20:24], "big")


def test_the_list_has_one_screen_a_line_its_name_first(capsys: pytest.CaptureFixture[str]):
    assert main(["snap", "--list"]) == 0
    names = [line.split()[0] for line in capsys.readouterr().out.splitlines()]
    assert names == list(GALLERY)
    assert "start" in names


def test_a_screen_is_drawn_at_the_size_asked_for(tmp_path: Path):
    target = tmp_path / "start.png"
    words = ["snap", "start", "-o", str(target), "--size", "1024x600", "--theme", "contrast", "--scale", "1.5"]
    assert main(words) == 0
    assert _size(target) == (1024, 600)


def test_the_same_screen_in_a_made_up_language_looks_different(tmp_path: Path):
    for language in ("en", "xx", "xr"):
        assert main(["snap", "start", "-o", str(tmp_path / f"{language}.png"), "--lang", language]) == 0
    pictures = {(tmp_path / f"{language}.png").read_bytes() for language in ("en", "xx", "xr")}
    assert len(pictures) == 3


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        (["snap", "strat", "-o", "x.png"], 1, "the nearest is start"),
        (["snap", "start", "-o", "x.png", "--lang", "tlh"], 1, "there are en"),
        (["snap", "start"], 2, "-o"),
        (["snap"], 2, "-o"),
    ],
)
def test_what_cannot_be_drawn_is_said_in_one_line(
    words: list[str], code: int, says: str, capsys: pytest.CaptureFixture[str]
):
    assert main(words) == code
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("\n") == 1
    assert says in said.err


def test_a_picture_that_cannot_be_written_is_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]):
    assert main(["snap", "start", "-o", str(tmp_path / "no" / "such" / "x.png")]) == 1
    assert "cannot be written" in capsys.readouterr().err
