"""The wooden bar, its pin, and the cord that holds it level until it is let go."""

from __future__ import annotations

from collections.abc import Sequence

from lab.scenes.hanging_view import HangingView, Stage
from lab.scenes.labels import LabelBoard
from lab.scenes.tones import between
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect

GRAIN_SHARE, SHINE_SHARE = 0.28, 0.35
"""How far the grain goes from the wood towards its edge, and the lit upper edge towards white."""
MARGIN_PX = 3.0
HOLDING_SHARE = 0.03
"""How far inside its end the bar is held, as a share of its length; further in where something is clamped there."""
HOLDING_TRIES = 12


def draw_bar(canvas: Canvas, view: HangingView, stage: Stage) -> None:
    """The plain bar, turned about its pin."""
    theme, sizes = view.look.theme, view.look.sizes
    wide, high = stage.bar.w, stage.bar.h
    pivot = view.bench.pivot

    grain = between(theme.wood, theme.wood_edge, GRAIN_SHARE)
    shine = between(theme.wood, "#FFFFFF", SHINE_SHARE)

    def make(body: Canvas) -> None:
        plank = Rect(MARGIN_PX, MARGIN_PX, wide, high)
        body.box(plank, fill=theme.wood, radius=sizes.px(4))
        body.box(Rect(plank.x + 3, plank.y + 2, wide - 6, high * 0.16), fill=shine, radius=2)
        for share, start, end in ((0.36, 0.02, 0.55), (0.55, 0.3, 0.97), (0.74, 0.06, 0.7)):
            y = plank.y + high * share
            body.line([(plank.x + wide * start, y), (plank.x + wide * end, y)], grain, width=sizes.px(1))
        body.box(plank, outline=theme.wood_edge, width=sizes.stroke, radius=sizes.px(4))

    pin = stage.camera.at(pivot.at_m, pivot.up_m)
    grip = (
        MARGIN_PX + stage.camera.length_px(pivot.at_m - view.bench.bar.left_m),
        MARGIN_PX + high / 2 - stage.camera.length_px(pivot.up_m),
    )
    canvas.turned(
        ("bar", theme.name, round(wide), round(high)),
        (wide + 2 * MARGIN_PX, high + 2 * MARGIN_PX),
        make,
        at=pin,
        grip=grip,
        angle_rad=view.angle_rad,
    )


LOOSE_KNOB_PX = 11.0
"""From the rail down to the middle of the knob that held the bar, once it is drawn up."""


def draw_pin(canvas: Canvas, view: HangingView, stage: Stage) -> None:
    """The pin that the bar turns about, on a plate where it lies beyond the wood."""
    theme, sizes = view.look.theme, view.look.sizes
    pivot = view.bench.pivot
    pin = stage.camera.at(pivot.at_m, pivot.up_m)
    up = stage.camera.length_px(pivot.up_m)
    if abs(up) > stage.bar.h / 2:
        foot = stage.hook_px(view, pivot.at_m)
        canvas.line([foot, pin], theme.steel_edge, width=sizes.px(12))
        canvas.line([foot, pin], theme.steel, width=sizes.px(8))
    canvas.circle(pin, sizes.px(7), fill=theme.panel, outline=theme.ink, width=sizes.stroke)


def holding_at_m(view: HangingView, taken_m: Sequence[tuple[float, float]] = ()) -> float:
    """Where the cord holds the bar: near the end that is further from the pivot, beside what is clamped there.

    taken_m: stretches of the bar, each from left to right.
    """
    bar = view.bench.bar
    right_is_further = bar.right_m - view.bench.pivot.at_m >= view.bench.pivot.at_m - bar.left_m
    end_m, inwards = (bar.right_m, -1.0) if right_is_further else (bar.left_m, 1.0)
    for tries in range(1, HOLDING_TRIES + 1):
        at_m = end_m + inwards * tries * HOLDING_SHARE * bar.length_m
        if not any(low <= at_m <= high for low, high in taken_m):
            return at_m
    return end_m + inwards * HOLDING_SHARE * bar.length_m


def draw_holding_cord(
    canvas: Canvas, view: HangingView, stage: Stage, board: LabelBoard, clamps: Sequence[Rect]
) -> None:
    """Held: a cord from the rail with a yellow knob on the bar. Let go: the knob is drawn up under the rail.

    clamps: what is clamped to the level bar.
    """
    theme, sizes = view.look.theme, view.look.sizes
    radius = sizes.px(9)
    taken_m = [(stage.camera.along_m(box.x - radius), stage.camera.along_m(box.right + radius)) for box in clamps]
    x = stage.camera.x_px(holding_at_m(view, taken_m))
    held = view.bench.held
    knob_y = stage.bar.y - radius + sizes.px(2) if held else stage.rail.bottom + sizes.px(LOOSE_KNOB_PX)
    canvas.line([(x, stage.rail.bottom), (x, knob_y)], theme.ink, width=sizes.px(3))
    canvas.circle((x, knob_y), radius, fill=theme.held, outline=theme.ink, width=sizes.stroke)
    board.keep_clear([Rect(x - radius, stage.rail.bottom, 2 * radius, knob_y + radius - stage.rail.bottom)])
    if not held:
        return
    # The start screen makes the knob larger: its name keeps clear of that too.
    gap = radius + sizes.px(16)
    board.place(
        view.look.words.say("held"),
        [((x - gap, knob_y - sizes.px(4)), "right middle"), ((x + gap, knob_y - sizes.px(4)), "left middle")],
        size=sizes.text("small"),
        color=theme.soft,
    )
