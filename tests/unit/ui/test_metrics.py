"""Text is measured from a table; the font itself must agree, for what is drawn is the font."""

import json
import random
import string

import pygame
import pytest

from lab.ui.assets import font_file, width_table_file
from lab.ui.metrics import read_width_table, text_width
from lab.ui.pygame_metrics import measured_table
from lab.ui.pygame_text import unjoined

LETTERS = string.ascii_letters + string.digits + " .,:;-+=/()?!\u2212\u202f·×÷éèüÅç°±'\"ɱåñ"


def drawn_width(text, size, *, bold):
    """What pygame's own font reports; spaces keep the overhang of the first and last letter out."""
    pygame.font.init()
    font = pygame.font.Font(str(font_file(bold=bold)), size)
    return font.size(f" {unjoined(text)} ")[0]


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize("size", [12, 15, 18, 20, 21, 27, 28, 36, 42, 56, 63])
def test_the_table_agrees_with_the_font_to_the_pixel(size, bold):
    random.seed(size)
    texts = ["".join(random.choices(LETTERS, k=40)) for _ in range(15)]
    texts += ["from the reference line", "first office waffle", "22\u202f200 ÷ 500 = 44.4 cm", "AVATAR To. Yes"]
    off = [abs(drawn_width(text, size, bold=bold) - text_width(f" {text} ", size=size, bold=bold)) for text in texts]
    # One pixel of forty letters: pygame-ce's text engine may round one position otherwise.
    assert max(off) <= 1.0


def test_the_shipped_table_is_the_one_measured_from_the_shipped_fonts():
    assert json.loads(width_table_file().read_text("utf-8")) == measured_table()


def test_figures_are_all_of_one_width():
    assert len({text_width(figure, size=18) for figure in "0123456789"}) == 1


def test_a_damaged_table_is_told_and_a_missing_one_too(tmp_path):
    damaged = tmp_path / "widths.json"
    damaged.write_text('{"units_per_em": 2048}')
    with pytest.raises(KeyError):
        read_width_table(damaged)
    with pytest.raises(OSError, match="none"):
        read_width_table(tmp_path / "none.json")
