"""The twine between parts that are tied together: it shows which of them move as one."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

from lab.simulation.benches.groups import group_of
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look

KNOT_PX, TWINE_PX, DASH_PX = 5.0, 2.5, (7.0, 4.0)
SAG, MOST_SAG_PX = 0.08, 12.0
"""How far twine hangs through, as a share of its length, and at most."""


def draw_ties(canvas: Canvas, look: Look, spots: Mapping[str, Point]) -> list[Rect]:
    """Twine from each tied part to the next one beside it.  spots: where each is tied, by the part's name.

    Returns what it covers, for labels to keep clear of.
    """
    covered: list[Rect] = []
    groups: dict[str, list[Point]] = {}
    for name, spot in spots.items():
        group = group_of(name)
        if group is not None:
            groups.setdefault(group, []).append(spot)
    for tied in groups.values():
        row = sorted(tied)
        for left, right in pairwise(row):
            covered += _draw_twine(canvas, look, left, right)
        for spot in row:
            width = look.sizes.px(1)
            canvas.circle(
                spot, look.sizes.px(KNOT_PX), fill=look.theme.brass, outline=look.theme.brass_edge, width=width
            )
    return covered


def _draw_twine(canvas: Canvas, look: Look, left: Point, right: Point) -> list[Rect]:
    sizes = look.sizes
    sag = min(SAG * (abs(right[0] - left[0]) + abs(right[1] - left[1])), sizes.px(MOST_SAG_PX))
    steps = 8
    points = [
        (
            left[0] + (right[0] - left[0]) * step / steps,
            left[1] + (right[1] - left[1]) * step / steps + 4 * sag * step * (steps - step) / steps**2,
        )
        for step in range(steps + 1)
    ]
    dash = tuple(sizes.px(length) for length in DASH_PX)
    canvas.line(points, look.theme.ink, width=sizes.px(TWINE_PX), dash=dash)
    half = sizes.px(TWINE_PX)
    return [
        Rect(min(x, next_x), min(y, next_y) - half, abs(next_x - x), abs(next_y - y) + 2 * half)
        for (x, y), (next_x, next_y) in pairwise(points)
    ]
