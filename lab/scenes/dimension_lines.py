"""Dimension lines: the arm of each part from the reference line, as on a drawing."""

from __future__ import annotations

from dataclasses import dataclass

from lab.scenes.camera import Camera
from lab.scenes.hanging_view import HangingView, Stage, weight_key
from lab.scenes.labels import LabelBoard, Spot, label_box
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point
from lab.ui.look import Look

BAR_KEY = "bar"
LINE = 1.34
"""Of the text size: from one arm to the next, a little more than a line box."""


@dataclass(frozen=True, slots=True)
class Arm:
    """One arm to be drawn: where it ends along, what is written, and the weight's lower end."""

    key: str
    at_m: float
    text: str
    foot_px: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ArmSheet:
    """What arms are drawn on. reference_m: where they begin, along.  picked: key of the arm that stands out."""

    look: Look
    camera: Camera
    reference_m: float
    picked: str = ""


def arms_to_draw(view: HangingView, stage: Stage, feet: dict[str, float], *, most: int) -> tuple[Arm, ...]:
    """At most so many arms, shortest first; the picked weight's is never left out."""
    bench = view.bench
    rows = bench.sum.rows
    words = view.look.words
    arm = view.readings.length(rows[0].arm_m[0])
    text = words.say("{arm} {part}", arm=arm, part=words.content(bench.bar.name))
    centre_m = bench.bar.left_m + bench.bar.length_m / 2
    arms = [Arm(BAR_KEY, centre_m, text, stage.bar.bottom)]
    for weight, row in zip(bench.weights, rows[1:], strict=True):
        key = weight_key(weight)
        arms.append(Arm(key, weight.at_m, view.readings.length(row.arm_m[0]), feet.get(key, stage.bar.bottom)))
    picked = [arm for arm in arms if arm.key == view.picked]
    chosen = (picked + [arm for arm in arms if arm.key != view.picked])[: max(most, 0)]
    return tuple(sorted(chosen, key=lambda arm: abs(arm.at_m - bench.reference_m)))


def draw_dimension_lines(
    canvas: Canvas, view: HangingView, stage: Stage, board: LabelBoard, feet: dict[str, float], bottom: float
) -> None:
    """As many arms as there is room for between the lowest weight and `bottom`."""
    sizes = view.look.sizes
    top = max([stage.bar.bottom, *feet.values()]) + sizes.px(8)
    arms = arms_to_draw(view, stage, feet, most=most_arms(view.look, top, bottom))
    sheet = ArmSheet(look=view.look, camera=stage.camera, reference_m=view.bench.reference_m, picked=view.picked)
    draw_arms(canvas, sheet, board, arms, top, bottom)


def most_arms(look: Look, top: float, bottom: float) -> int:
    """For how many arms there is room."""
    return int((bottom - top) / (look.sizes.text("small") * LINE))


def draw_arms(
    canvas: Canvas, sheet: ArmSheet, board: LabelBoard, arms: tuple[Arm, ...], top: float, bottom: float
) -> None:
    """Arms below each other, from top to bottom."""
    if not arms:
        return
    row_h = min((bottom - top) / len(arms), sheet.look.sizes.text("small") * LINE * 1.4)
    for index, arm in enumerate(arms):
        _draw_arm(canvas, sheet, board, arm, top + (index + 0.5) * row_h)


def _draw_arm(canvas: Canvas, view: ArmSheet, board: LabelBoard, arm: Arm, y: float) -> None:
    theme, sizes = view.look.theme, view.look.sizes
    size = sizes.text("small")
    picked = arm.key == view.picked
    start, end = view.camera.x_px(view.reference_m), view.camera.x_px(arm.at_m)
    canvas.line([(end, arm.foot_px + sizes.px(3)), (end, y + sizes.px(5))], theme.hair, width=sizes.px(1))
    if picked:
        canvas.line([(start, y), (end, y)], theme.held, width=sizes.px(7))
    middle: Point = ((start + end) / 2, y)
    wide = canvas.text_size(arm.text, size=size, bold=picked)[0] + sizes.px(16)
    if abs(end - start) >= wide + sizes.px(24):
        box = label_box(canvas, arm.text, (middle, "center middle"), size=size, bold=picked)
        half = wide / 2 if end > start else -wide / 2
        if board.free(box):
            _line(canvas, view, (start, y), (middle[0] - half, y), tip_at_start=True)
            _line(canvas, view, (end, y), (middle[0] + half, y), tip_at_start=True)
            spot: Spot = (middle, "center middle")
            board.place(arm.text, [spot], size=size, color=theme.ink, bold=picked, ground=theme.paper)
            return
    _line(canvas, view, (start, y), (end, y), tip_at_start=abs(end - start) > sizes.px(16))
    gap = sizes.px(8)
    low, high = min(start, end), max(start, end)
    spots: list[Spot] = [((high + gap, y), "left middle"), ((low - gap, y), "right middle")]
    if end < start:
        spots.reverse()
    board.place(arm.text, spots, size=size, color=theme.ink, bold=picked, ground=theme.paper)


def _line(canvas: Canvas, view: ArmSheet, tip: Point, end: Point, *, tip_at_start: bool) -> None:
    """A line that ends in an arrow at `tip`."""
    theme, sizes = view.look.theme, view.look.sizes
    canvas.line([tip, end], theme.ink, width=sizes.px(1))
    if not tip_at_start or tip[0] == end[0]:
        return
    way = sizes.px(8) if end[0] > tip[0] else -sizes.px(8)
    half = sizes.px(3)
    canvas.polygon([tip, (tip[0] + way, tip[1] - half), (tip[0] + way, tip[1] + half)], fill=theme.ink)
