"""Marks that belong to the thinking: names, what each cord holds, where each bar balances."""

from __future__ import annotations

from collections.abc import Set
from functools import lru_cache

from lab.mechanics import MobileSum
from lab.scenes.labels import LabelBoard, Spot
from lab.scenes.mobile.stage import MobileStage, Pose, on_bar
from lab.scenes.mobile.view import MobileView, still
from lab.simulation.benches import Mobile
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect

BALANCE_PX = 7.0


def levels_of(bench: Mobile) -> MobileSum:
    """The sum of sums, worked out once for as long as only angles change."""
    return _levels(still(bench))


@lru_cache(maxsize=16)
def _levels(bench: Mobile) -> MobileSum:
    return bench.levels


def label_loads(view: MobileView, pose: Pose, board: LabelBoard, bare: Set[int]) -> None:
    """The weight of each thing that has no room for it on itself, beside or under it.  bare: their ids."""
    look, sizes = view.look, view.look.sizes
    for beam in view.bench.beams:
        for weight in beam.weights:
            if weight.id not in bare:
                continue
            body, gap = pose.bodies[weight.id], sizes.px(3)
            x, y = body.center
            spots: list[Spot] = [
                ((x, body.bottom + gap), "center top"),
                ((body.right + gap, y), "left middle"),
                ((body.x - gap, y), "right middle"),
                ((body.right + gap, body.bottom), "left bottom"),
                ((body.x - gap, body.bottom), "right bottom"),
            ]
            stamp = view.readings.stamp(weight.mass_kg)
            board.place(stamp, spots, size=sizes.text("small"), color=look.theme.ink, bold=True)


def name_bars(view: MobileView, stage: MobileStage, pose: Pose, board: LabelBoard) -> None:
    """Each bar's name over one of its ends."""
    look, sizes = view.look, view.look.sizes
    for beam in view.bench.beams:
        ring, angle = pose.rings[beam.id], pose.angles_rad[beam.id]
        (x, y), (far_x, far_y) = (on_bar(stage, beam, ring, angle, at_m) for at_m in (0.0, beam.length_m))
        lift = stage.sizing.half_bar + sizes.px(3)
        spots: list[Spot] = [
            ((x, min(y, far_y if angle > 0 else y) - lift), "left bottom"),
            ((far_x, far_y - lift), "right bottom"),
            ((x, y - lift - sizes.px(14)), "left bottom"),
            ((far_x, far_y - lift - sizes.px(14)), "right bottom"),
            ((x, y + lift), "left top"),
            ((far_x, far_y + lift), "right top"),
            ((x - sizes.px(6), y), "right middle"),
            ((far_x + sizes.px(6), far_y), "left middle"),
        ]
        name = look.words.content(beam.name)
        board.place(name, spots, size=sizes.text("small"), color=look.theme.soft)


def say_held(view: MobileView, stage: MobileStage, board: LabelBoard) -> None:
    """Beside the topmost ring: that it may not turn."""
    sizes, (x, y) = view.look.sizes, stage.top
    gap, over = sizes.px(12), y - sizes.px(16)
    spots: list[Spot] = [
        ((x - gap, y), "right middle"),
        ((x + gap, y), "left middle"),
        ((x - gap, over), "right middle"),
    ]
    board.place(view.look.words.say("held"), spots, size=sizes.text("small"), color=view.look.theme.soft)


def write_carried(view: MobileView, pose: Pose, board: LabelBoard) -> None:
    """Beside each bar's cord, what it holds: the weight that the bar above feels there."""
    sizes = view.look.sizes
    for level in levels_of(view.bench).levels:
        beam = next(each for each in view.bench.beams if each.name == level.name)
        x, y = pose.rings[beam.id]
        gap = sizes.px(11)
        spots: list[Spot] = []
        for lift in (0.0, 9.0, 18.0):
            spots += [((x + gap, y - sizes.px(lift)), "left middle"), ((x - gap, y - sizes.px(lift)), "right middle")]
        text = view.readings.weight_with_unit(level.carried_kg)
        board.place(text, spots, size=sizes.text("small"), color=view.look.theme.ink, bold=True)


def draw_balance(canvas: Canvas, view: MobileView, stage: MobileStage, pose: Pose, board: LabelBoard) -> None:
    """Where each bar with its load balances: under its ring, and green, where it is level."""
    theme, sizes = view.look.theme, view.look.sizes
    for level in levels_of(view.bench).levels:
        beam = next(each for each in view.bench.beams if each.name == level.name)
        at_m = level.sum.balance_point_m[0]
        at = on_bar(stage, beam, pose.rings[beam.id], pose.angles_rad[beam.id], at_m)
        radius = sizes.px(BALANCE_PX)
        color = {"level": theme.settled, "left": theme.anticlockwise, "right": theme.clockwise}[level.turn.goes]
        canvas.circle(at, radius, fill=theme.panel, outline=color, width=sizes.px(3))
        canvas.circle(at, sizes.px(2.5), fill=color)
        board.keep_clear([Rect(at[0] - radius, at[1] - radius, 2 * radius, 2 * radius)])
