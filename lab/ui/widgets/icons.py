"""The few signs that buttons carry, drawn from lines. Each fits a square and takes one colour."""

import math
from collections.abc import Callable, Mapping

from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect

Icon = Callable[[Canvas, Rect, str, float], None]


def _at(rect: Rect, x: float, y: float) -> Point:
    return (rect.x + x * rect.w, rect.y + y * rect.h)


def _back(canvas: Canvas, rect: Rect, color: str, width: float) -> None:
    canvas.line([_at(rect, 0.68, 0.08), _at(rect, 0.26, 0.5), _at(rect, 0.68, 0.92)], color, width=width * 1.5)


def _on(canvas: Canvas, rect: Rect, color: str, width: float) -> None:
    canvas.line([_at(rect, 0.32, 0.08), _at(rect, 0.74, 0.5), _at(rect, 0.32, 0.92)], color, width=width * 1.5)


def _turn_back(canvas: Canvas, rect: Rect, color: str, width: float) -> None:
    _turn(canvas, rect, color, width, side=1)


def _turn_on(canvas: Canvas, rect: Rect, color: str, width: float) -> None:
    _turn(canvas, rect, color, width, side=-1)


def _turn(canvas: Canvas, rect: Rect, color: str, width: float, *, side: int) -> None:
    def at(x: float, y: float) -> Point:
        return _at(rect, x if side > 0 else 1 - x, y)

    canvas.line([at(0.3, 0.06), at(0.06, 0.3), at(0.3, 0.54)], color, width=width)
    middle = at(0.64, 0.58)
    canvas.line([at(0.08, 0.3), at(0.64, 0.3)], color, width=width)
    canvas.arc(middle, 0.28 * rect.w, math.pi / 2, -side * math.pi, color, width=width)
    canvas.line([at(0.64, 0.86), at(0.38, 0.86)], color, width=width)


def _check(canvas: Canvas, rect: Rect, color: str, width: float) -> None:
    points = [_at(rect, 0.12, 0.52), _at(rect, 0.4, 0.82), _at(rect, 0.9, 0.14)]
    canvas.line(points, color, width=width * 1.3)


def _less(canvas: Canvas, rect: Rect, color: str, width: float) -> None:
    canvas.line([_at(rect, 0.1, 0.5), _at(rect, 0.9, 0.5)], color, width=width)


def _more(canvas: Canvas, rect: Rect, color: str, width: float) -> None:
    _less(canvas, rect, color, width)
    canvas.line([_at(rect, 0.5, 0.1), _at(rect, 0.5, 0.9)], color, width=width)


def _close(canvas: Canvas, rect: Rect, color: str, width: float) -> None:
    canvas.line([_at(rect, 0.14, 0.14), _at(rect, 0.86, 0.86)], color, width=width)
    canvas.line([_at(rect, 0.86, 0.14), _at(rect, 0.14, 0.86)], color, width=width)


def _rub_out(canvas: Canvas, rect: Rect, color: str, width: float) -> None:
    frame = [_at(rect, *p) for p in ((0.0, 0.5), (0.28, 0.14), (1.0, 0.14), (1.0, 0.86), (0.28, 0.86))]
    canvas.polygon(frame, outline=color, width=width)
    canvas.line([_at(rect, 0.46, 0.34), _at(rect, 0.78, 0.66)], color, width=width)
    canvas.line([_at(rect, 0.78, 0.34), _at(rect, 0.46, 0.66)], color, width=width)


def _speak(canvas: Canvas, rect: Rect, color: str, width: float) -> None:
    horn = ((0.02, 0.36), (0.22, 0.36), (0.46, 0.12), (0.46, 0.88), (0.22, 0.64), (0.02, 0.64))
    canvas.polygon([_at(rect, *p) for p in horn], outline=color, fill=color, width=width / 2)
    for reach in (0.2, 0.42):
        canvas.arc(_at(rect, 0.5, 0.5), reach * rect.w, -math.pi / 4, math.pi / 2, color, width=width)


def _page(canvas: Canvas, rect: Rect, color: str, width: float) -> None:
    sheet = [_at(rect, *p) for p in ((0.16, 0.02), (0.84, 0.02), (0.84, 0.98), (0.16, 0.98))]
    canvas.polygon(sheet, outline=color, width=width)
    for down, right in ((0.28, 0.68), (0.5, 0.68), (0.72, 0.5)):
        canvas.line([_at(rect, 0.32, down), _at(rect, right, down)], color, width=width)


ICONS: Mapping[str, Icon] = {
    "back": _back,
    "on": _on,
    "undo": _turn_back,
    "redo": _turn_on,
    "check": _check,
    "less": _less,
    "more": _more,
    "close": _close,
    "rub out": _rub_out,
    "speak": _speak,
    "page": _page,
}
_DIRECTED: Mapping[str, str] = {"back": "on", "on": "back", "undo": "redo", "redo": "undo"}


def draw_icon(canvas: Canvas, name: str, rect: Rect, color: str, *, width: float, mirrored: bool = False) -> None:
    """Draws a sign into a square.  mirrored: those that point somewhere point the other way.

    Raises KeyError if there is none of that name.
    """
    ICONS[_DIRECTED.get(name, name) if mirrored else name](canvas, rect, color, width)
