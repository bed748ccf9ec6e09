"""How wide text is, known without opening a font: from a table of widths shipped beside it."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from lab.ui.assets import width_table_file
from lab.ui.geometry import Rect

LINE_ASCENT = 1.0
"""Of the size: from the baseline to the top of a line box; accented capitals reach no higher."""
LINE_DESCENT = 0.3
LINE_STEP = 1.5
"""Of the size: from one baseline to the next in running text, as WCAG 1.4.8 asks."""
CAP_HEIGHT = 0.713
"""Of the size: Andika's capitals and figures (1460 of 2048 units)."""


@dataclass(frozen=True, slots=True)
class Face:
    """One face: units_per_em, widths of characters in those units, and the width of any other character."""

    units_per_em: int
    widths: Mapping[str, int]
    other: int

    def width(self, text: str, size: float) -> float:
        """Pixels; each character is rounded as FreeType does it: to 1/64 pixel, then to whole ones."""
        scale = ((round(size) << 22) + self.units_per_em // 2) // self.units_per_em
        units = (self.widths.get(letter, self.other) for letter in text)
        return float(sum((((unit * scale + 0x8000) >> 16) + 32) >> 6 for unit in units))


@dataclass(frozen=True, slots=True)
class WidthTable:
    """The two faces that the lab is set in."""

    regular: Face
    bold: Face


# Wide enough for most letters: where the table is missing nothing may overlap, gaps do not matter.
_ESTIMATE = Face(2048, {}, 1300)


def read_width_table(file: Path) -> WidthTable:
    """The table in a file.  Raises OSError where it is missing, ValueError, KeyError where damaged."""
    data = json.loads(file.read_text("utf-8"))
    faces = {
        name: Face(
            data["units_per_em"],
            {chr(int(code, 16)): width for code, width in data[name]["widths"].items()},
            data[name]["other"],
        )
        for name in ("regular", "bold")
    }
    return WidthTable(**faces)


@lru_cache(maxsize=1)
def width_table() -> WidthTable:
    """The shipped table, read once; an estimate where it is missing, for the lab must still open."""
    try:
        return read_width_table(width_table_file())
    except (OSError, ValueError, KeyError):
        return WidthTable(_ESTIMATE, _ESTIMATE)


# As many as a few screens hold; a figure that changes for hours must not grow the memory.
@lru_cache(maxsize=8192)
def text_width(text: str, *, size: float, bold: bool = False) -> float:
    """The width of one line in pixels at a size in pixels."""
    table = width_table()
    return (table.bold if bold else table.regular).width(text, size)


def line_box(x: float, baseline: float, width: float, size: float) -> Rect:
    """The box of one line of text that starts at x on a baseline."""
    return Rect(x, baseline - LINE_ASCENT * size, width, (LINE_ASCENT + LINE_DESCENT) * size)
