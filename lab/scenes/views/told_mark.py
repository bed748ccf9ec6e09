"""The learner's marker: a yellow tag with a pin that points at the place they said."""

from __future__ import annotations

from lab.scenes.labels import LabelBoard
from lab.scenes.views.margins import home_of
from lab.scenes.views.stage import Panel
from lab.scenes.views.view import BodyView, LineMark
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect, bounding
from lab.ui.metrics import text_width

LINE_HIGH = 1.4
EDGE_PX = 20.0
MOST_LINES = 4


def told_lines(view: BodyView, panel: Panel, text: str) -> tuple[float, tuple[str, ...]]:
    """The text size of the tag, and its lines: one, unless the panel is too narrow for that."""
    sizes = view.look.sizes
    room = panel.frame.w - sizes.px(8 + EDGE_PX)
    for style in ("body", "small"):
        size = sizes.text(style)
        if text_width(text, size=size, bold=True) <= room:
            return size, (text,)
    size = sizes.text("small")
    lines: list[str] = []
    for word in text.split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, size=size, bold=True) <= room:
            lines[-1] = longer
        else:
            lines.append(word)
    return size, tuple(lines[:MOST_LINES])


def told_rect(view: BodyView, panel: Panel, line: LineMark) -> Rect:
    """The learner's yellow tag: under the body at its place, or at the right edge."""
    sizes = view.look.sizes
    size, lines = told_lines(view, panel, line.text)
    widest = max(text_width(text, size=size, bold=True) for text in lines)
    wide, high = max(sizes.px(34), widest + sizes.px(EDGE_PX)), LINE_HIGH * size * len(lines)
    at, frame = panel.axis_px(line.axis, line.at_m) or 0.0, panel.frame.inset(sizes.px(4))
    if panel.lies_level(line.axis):
        y = min(panel.row("told").bottom - LINE_HIGH * size, frame.bottom - high)
        return Rect(min(max(at - wide / 2, frame.x), frame.right - wide), y, wide, high)
    return Rect(frame.right - wide, min(max(at - high / 2, frame.y), frame.bottom - high), wide, high)


def draw_told(canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """The learner's marker: a yellow tag with a pin that points at the place."""
    line = view.told
    if line is None or home_of(view, line.axis) != panel.face:
        return
    theme, sizes = view.look.theme, view.look.sizes
    tag, at = told_rect(view, panel, line), panel.axis_px(line.axis, line.at_m) or 0.0
    half, stroke = sizes.px(6), sizes.px(2)
    box = panel.body_px
    if panel.lies_level(line.axis):
        top = min(panel.reach_px[0], box.y) - sizes.px(10)
        shaft: tuple[Point, Point] = ((at, top), (at, tag.y))
        base = min(max(at, tag.x + half + 2), tag.right - half - 2)
        nib = [(base - half, tag.y + 1), (base + half, tag.y + 1), (at, tag.y - sizes.px(9))]
    else:
        shaft = ((box.x - sizes.px(10), at), (tag.x, at))
        nib = [(tag.x + 1, at - half), (tag.x + 1, at + half), (tag.x - sizes.px(9), at)]
    canvas.line(shaft, theme.ink, width=sizes.px(5))
    canvas.line(shaft, theme.held, width=sizes.px(2.5))
    canvas.polygon(nib, fill=theme.held, outline=theme.ink, width=stroke)
    if view.picked == "told":
        canvas.box(tag.grown(sizes.px(4)), outline=theme.ink, width=stroke, radius=sizes.px(9))
    canvas.box(tag, fill=theme.held, outline=theme.ink, width=stroke, radius=sizes.px(6))
    board.keep_clear([tag, bounding(shaft, 3.0)])
    size, lines = told_lines(view, panel, line.text)
    for number, text in enumerate(lines):
        at_line = (tag.center[0], tag.y + (number + 0.5) * tag.h / len(lines))
        # Yellow stays yellow in every theme, so what is written on it stays dark.
        canvas.text(text, at_line, size=size, color=theme.on_material, bold=True, anchor="center middle")
