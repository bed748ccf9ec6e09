"""In which row each hung weight hangs, so that no two cover each other."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from lab.scenes.camera import Camera
from lab.simulation import HangingBar, Hung

NECK, HIGH = 0.2, 0.94
"""Of a weight's side: how high its neck and its body are."""

Size = Callable[[Hung], tuple[float, float]]
"""How wide and how high a hung weight is drawn, px."""


def hung_weights(bench: HangingBar) -> list[Hung]:
    """Those that hang by a cord."""
    return [weight for weight in bench.weights if weight.hold == "hung"]


def rows_of(bench: HangingBar, camera: Camera, size_px: Size, gap_px: float) -> Mapping[int, int]:
    """The row of each hung weight by its id: 0 right under the bar, 1 below it...

    Taken from places along, never from the tilt, so that nothing jumps while the bar turns.
    """
    ends: list[float] = []
    rows: dict[int, int] = {}
    for weight in sorted(hung_weights(bench), key=lambda one: (one.at_m, one.id)):
        half = size_px(weight)[0] / 2
        x = camera.x_px(weight.at_m)
        row = next((i for i, end in enumerate(ends) if x - half >= end + gap_px), len(ends))
        if row == len(ends):
            ends.append(0.0)
        ends[row] = x + half
        rows[weight.id] = row
    return rows


def row_heights(bench: HangingBar, rows: Mapping[int, int], size_px: Size, gap_px: float) -> Mapping[int, float]:
    """The height of each row: its highest weight and the space for the next ring."""
    heights: dict[int, float] = {}
    for weight in hung_weights(bench):
        high = size_px(weight)[1] + gap_px
        heights[rows[weight.id]] = max(heights.get(rows[weight.id], 0.0), high)
    return heights
