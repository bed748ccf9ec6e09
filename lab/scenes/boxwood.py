"""A boxwood rule: brass caps, its marks along the upper edge, numbers under them."""

from __future__ import annotations

from collections.abc import Callable
from math import ceil, floor

from lab.scenes.rail import nice_step
from lab.scenes.readings import Units
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look

CAP_PX = 7.0


def draw_boxwood(
    canvas: Canvas, look: Look, rule: Rect, units: Units, *, x_px: Callable[[float], float], span_m: tuple[float, float]
) -> None:
    """Draw a rule.  x_px: the x of a place, m.  span_m: from the first place it has a mark for to the last."""
    theme, sizes = look.theme, look.sizes
    canvas.box(rule, fill=theme.wood, outline=theme.wood_edge, width=sizes.stroke, radius=sizes.px(3))
    cap = sizes.px(CAP_PX)
    for x in (rule.x, rule.right - cap):
        canvas.box(
            Rect(x, rule.y, cap, rule.h), fill=theme.brass, outline=theme.brass_edge, width=sizes.px(1.5), radius=2
        )
    _draw_marks(canvas, look, rule, units, x_px, span_m)


def _draw_marks(
    canvas: Canvas, look: Look, rule: Rect, units: Units, x_px: Callable[[float], float], span_m: tuple[float, float]
) -> None:
    sizes, words = look.sizes, look.words
    size = sizes.text("small")
    first, last = units.from_m(span_m[0]), units.from_m(span_m[1])
    px_per_unit = abs(x_px(units.to_m(1.0)) - x_px(0.0))
    decimals = 0 if last - first >= 4 else 1
    widest = max(canvas.text_size(words.number(end, decimals), size=size)[0] for end in (first, last))
    major = nice_step((widest + sizes.px(40)) / px_per_unit)
    minor = max(nice_step(sizes.px(7) / px_per_unit), major / 10)
    for index in range(ceil(first / minor - 1e-9), floor(last / minor + 1e-9) + 1):
        value = index * minor
        x = x_px(units.to_m(value))
        is_major = abs(value / major - round(value / major)) < 1e-6
        is_half = abs(2 * value / major - round(2 * value / major)) < 1e-6
        tick = sizes.px(11 if is_major else 8 if is_half else 5)
        canvas.line(((x, rule.y + 2), (x, rule.y + tick)), look.theme.on_material, width=sizes.px(2 if is_major else 1))
        if is_major:
            text = words.number(value, 0 if major >= 1 else 1)
            at = (x, rule.y + sizes.px(11) + (rule.h - sizes.px(11)) / 2)
            canvas.text(text, at, size=size, color=look.theme.on_material, anchor="center middle")
