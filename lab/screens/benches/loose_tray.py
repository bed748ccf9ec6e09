"""The shelf of a tray with a tin, beads, a rod and a plate, at their true relative sizes."""

from __future__ import annotations

from collections.abc import Iterator

from lab.scenes.tool.shelf import draw_alone, drawn_size_m
from lab.simulation.benches.tool_parts import LOOSE, ToolKind
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.widgets.tray import TrayItem


def loose_items(look: Look, prefix: str, armed: str) -> Iterator[TrayItem]:
    """An item each.  prefix: of the keys of the tray.  armed: the key of what was taken up."""
    sizes_m = [drawn_size_m(kind.part(kind.called, 0.0), kind.look or "") for kind in LOOSE.values()]
    largest = max(wide for wide, _ in sizes_m), max(high for _, high in sizes_m)
    for name, kind in LOOSE.items():
        key = f"{prefix}{name}"
        yield _item(look, key, kind, largest, picked=key == armed)


def _item(look: Look, key: str, kind: ToolKind, largest_m: tuple[float, float], *, picked: bool) -> TrayItem:
    def draw(canvas: Canvas, rect: Rect) -> None:
        scale = min(0.92 * rect.w / largest_m[0], 0.92 * rect.h / largest_m[1])
        draw_alone(canvas, look, kind.part(kind.called, 0.0), kind.look or "", rect.center, px_per_m=scale)

    return TrayItem(key, look.words.say(kind.title), draw, picked=picked)
