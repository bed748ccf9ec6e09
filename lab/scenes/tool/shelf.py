"""Parts of a tool by themselves, as they lie in a tray or come along at a pointer: at their true relative sizes."""

from __future__ import annotations

from lab.mechanics import Part, extent_m
from lab.scenes.finger_parts import FLAT_RING
from lab.scenes.finger_shapes import PartDrawing, draw_part
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look

POLE_M = 0.025
"""How thick the pole is that heads are made for."""

BRASS_KG_M3 = 8500.0

LEAST_PX = 5.0
"""Thinner than that a pole could not be seen."""


def drawn_size_m(part: Part, look: str) -> tuple[float, float]:
    """How long and how high a part is drawn."""
    along_m, _, up_m = extent_m(part.shape)
    if look == "ring":
        # A hoop lies flat; drawn from straight beside it would be a stick.
        return along_m, max(up_m, FLAT_RING * along_m)
    if along_m and up_m:
        return along_m, up_m
    side_m = float((part.mass_kg / BRASS_KG_M3) ** (1 / 3))
    return along_m or side_m, up_m or side_m


def draw_alone(canvas: Canvas, look: Look, part: Part, picture: str, at: Point, *, px_per_m: float) -> None:
    """One part, its middle at a point.  picture: the look that it is drawn with."""
    wide, high = (max(side * px_per_m, look.sizes.px(LEAST_PX)) for side in drawn_size_m(part, picture))
    rect = Rect(at[0] - wide / 2, at[1] - high / 2, wide, high)
    drawing = PartDrawing(
        theme=look.theme, rect=rect, outward=1, pole_px=POLE_M * px_per_m, pole_y=at[1],
        stroke=look.sizes.stroke * 0.8, stamp="", text_px=1.0,
    )  # fmt: skip
    draw_part(canvas, picture, drawing)
