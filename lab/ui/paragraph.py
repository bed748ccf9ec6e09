"""Running text: breaking it into lines and drawing them. No text is ever cut off: it takes another line."""

import re
from functools import lru_cache
from typing import Literal

from lab.ui.canvas import Anchor, Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.metrics import CAP_HEIGHT, LINE_STEP, text_width
from lab.ui.sizes import is_bold

Align = Literal["start", "center", "end"]


def _broken(word: str, width: float, *, size: float, bold: bool) -> list[str]:
    """A word too long for a line, in pieces that fit; at least one letter a piece."""
    pieces, piece = [], ""
    for letter in word:
        if piece and text_width(piece + letter, size=size, bold=bold) > width:
            pieces.append(piece)
            piece = ""
        piece += letter
    return [*pieces, piece]


_UNIT = re.compile(r"[^\W\d_]{1,2}(·[^\W\d_]+)?[^\w\s]*")
_NUMBER = re.compile(r"\S*\d")


def _before_unit(line: str, word: str) -> tuple[str, str]:
    """(the line without its last number, that number) where the word looks like its unit, else (line, "")."""
    kept, _, last = line.rpartition(" ")
    return (kept, last) if kept and _UNIT.fullmatch(word) and _NUMBER.fullmatch(last) else (line, "")


@lru_cache(maxsize=2048)
def wrapped(text: str, width: float, *, size: float, bold: bool = False) -> tuple[str, ...]:
    """The lines of a text in a width in pixels: broken at spaces, within a word only if it fits no line.

    A number takes its unit along.
    """
    lines: list[str] = []
    for paragraph in text.split("\n"):
        line = ""
        for word in paragraph.split(" "):
            joined = f"{line} {word}" if line else word
            if text_width(joined, size=size, bold=bold) <= width:
                line = joined
                continue
            kept, number = _before_unit(line, word)
            if number and text_width(f"{number} {word}", size=size, bold=bold) <= width:
                line, word = kept, f"{number} {word}"
            if line:
                lines.append(line)
            line = word
            if text_width(word, size=size, bold=bold) > width:
                *full, line = _broken(word, width, size=size, bold=bold)
                lines.extend(full)
        lines.append(line)
    return tuple(lines)


def text_lines(look: Look, text: str, width: float, style: str) -> tuple[str, ...]:
    """The lines of a text set in a style."""
    return wrapped(text, width, size=look.sizes.text(style), bold=is_bold(style))


def line_step(look: Look, style: str) -> float:
    """From one baseline to the next in a style, in whole pixels."""
    return float(round(LINE_STEP * look.sizes.text(style)))


def text_height(look: Look, text: str, width: float, style: str) -> float:
    """The height that a text takes in a width."""
    return len(text_lines(look, text, width, style)) * line_step(look, style)


def natural_width(look: Look, text: str, style: str) -> float:
    """The width of a text on as few lines as it allows."""
    return _widths(text, look.sizes.text(style), bold=is_bold(style))[0]


def least_width(look: Look, text: str, style: str) -> float:
    """The width of its longest word: narrower would break it."""
    return _widths(text, look.sizes.text(style), bold=is_bold(style))[1]


@lru_cache(maxsize=4096)
def _widths(text: str, size: float, *, bold: bool) -> tuple[float, float]:
    """(the width of its widest line, of its longest word)."""
    widest = max(text_width(line, size=size, bold=bold) for line in text.split("\n"))
    longest = max((text_width(word, size=size, bold=bold) for word in text.split()), default=0.0)
    return widest, longest


def anchor_side(look: Look, align: Align) -> Literal["left", "center", "right"]:
    """Which side of its box a text keeps to, right to left languages included."""
    if align == "center":
        return "center"
    return "left" if (align == "start") is not look.sizes.mirrored else "right"


def draw_text(
    canvas: Canvas,
    look: Look,
    text: str,
    rect: Rect,
    *,
    style: str = "body",
    color: str = "ink",
    align: Align = "start",
) -> Rect:
    """Draws a text from the top of a rectangle, wrapped to its width.  Returns the rectangle it took."""
    lines, step = text_lines(look, text, rect.w, style), line_step(look, style)
    size, side = look.sizes.text(style), anchor_side(look, align)
    x = {"left": rect.x, "center": rect.center[0], "right": rect.right}[side]
    anchors: dict[str, Anchor] = {
        "left": "left baseline",
        "center": "center baseline",
        "right": "right baseline",
    }
    tint = look.theme.color(color)
    first = rect.y + step / 2 + CAP_HEIGHT * size / 2
    for number, line in enumerate(lines):
        at = (x, first + number * step)
        canvas.text(line, at, size=size, color=tint, bold=is_bold(style), anchor=anchors[side])
    return Rect(rect.x, rect.y, rect.w, len(lines) * step)


def draw_middle(
    canvas: Canvas,
    look: Look,
    text: str,
    rect: Rect,
    *,
    style: str = "body",
    color: str = "ink",
    align: Align = "center",
) -> None:
    """The same, centred in the rectangle's height."""
    taken = text_height(look, text, rect.w, style)
    top = Rect(rect.x, rect.y + (rect.h - taken) / 2, rect.w, taken)
    draw_text(canvas, look, text, top, style=style, color=color, align=align)
