"""Marks that belong to the thinking: the reference line, the balance point's place, where they were said to meet."""

from __future__ import annotations

from lab.scenes.labels import LabelBoard, Spot
from lab.scenes.marks import DASH_DOT
from lab.scenes.two_fingers.view import MEETING, REFERENCE, Stage, TwoFingersView, meeting_flag, reference_knob
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect


def draw_reference(canvas: Canvas, view: TwoFingersView, stage: Stage, board: LabelBoard) -> None:
    """A chain line from above the body down to its knob under the rule."""
    theme, sizes = view.look.theme, view.look.sizes
    knob = reference_knob(view, stage)
    x, y = knob.center
    dash = tuple(sizes.px(length) for length in DASH_DOT)
    top = stage.camera.y_px(stage.body.bounds_m[3]) - sizes.px(24)
    canvas.line([(x, top), (x, knob.y)], theme.ink, width=sizes.px(2), dash=dash)
    picked = view.picked == REFERENCE
    radius = knob.w / 2
    canvas.circle((x, y), radius, fill=theme.ink if picked else theme.panel, outline=theme.ink, width=sizes.stroke)
    color = theme.panel if picked else theme.ink
    tip, back, half = radius * 0.62, radius * 0.16, radius * 0.34
    for side in (-1, 1):
        points = [(x + side * tip, y), (x + side * back, y - half), (x + side * back, y + half)]
        canvas.polygon(points, fill=color)
    board.keep_clear([knob, Rect(x - 1, top, 2, knob.y - top)])
    gap = sizes.px(8)
    spots: list[Spot] = [
        ((knob.right + gap, y), "left middle"),
        ((knob.x - gap, y), "right middle"),
        ((x, knob.bottom + gap), "center top"),
    ]
    board.place(
        view.look.words.say("reference line"), spots, size=sizes.text("small"), color=theme.soft, ground=theme.paper
    )


def draw_flag(canvas: Canvas, view: TwoFingersView, stage: Stage, board: LabelBoard) -> None:
    """A paper flag that points at the rule: where the learner says that they will meet."""
    theme, sizes, bench = view.look.theme, view.look.sizes, view.bench
    flag = meeting_flag(view, stage)
    x, top = flag.center[0], flag.y
    said = bench.meeting_guess_m is not None
    points = ((x, top), (flag.right, top + flag.h * 0.42), (flag.right, flag.bottom), (flag.x, flag.bottom),
              (flag.x, top + flag.h * 0.42))  # fmt: skip
    picked = view.picked == MEETING
    width = sizes.px(3) if picked else sizes.stroke
    canvas.polygon(points, fill=theme.held if said else theme.panel, outline=theme.ink, width=width)
    board.keep_clear([flag])
    say, gap, size = view.look.words.say, sizes.px(8), sizes.text("small")
    texts = [say("where will they meet?")]
    if bench.meeting_guess_m is not None:
        place = view.readings.length_with_unit(bench.meeting_guess_m)
        texts = [say("you: {place}", place=place), place]
    y = flag.bottom - flag.h * 0.3
    spots: list[Spot] = [
        ((flag.x - gap, y), "right middle"),
        ((flag.right + gap, y), "left middle"),
        ((x, flag.bottom + sizes.px(4)), "center top"),
        ((flag.right, flag.bottom + sizes.px(4)), "right top"),
        ((flag.x, flag.bottom + sizes.px(4)), "left top"),
    ]
    for text in texts:
        if board.place(text, spots, size=size, color=theme.ink, ground=theme.paper) is not None:
            break


def name_balance(canvas: Canvas, view: TwoFingersView, stage: Stage, board: LabelBoard, mark: Point) -> None:
    """Where the balance point lies along the rule, over the body."""
    look = view.look
    sizes = look.sizes
    if view.bench.moving or not (view.numbers or view.bench.outcome is not None):
        return  # figures would only flicker by
    along = view.bench.sum.balance_point_m[0]
    text = look.words.say("balances at {place}", place=view.readings.length_with_unit(along))
    top = stage.camera.y_px(stage.body.bounds_m[3]) - sizes.px(8)
    under = stage.pads[0].y + sizes.px(8)
    low = mark[1] + sizes.px(14)
    step = sizes.text("small") * 1.3
    spots: list[Spot] = [((mark[0], top - lift * step), "center bottom") for lift in range(3)]
    spots += [((mark[0] + side * sizes.px(60), top), "center bottom") for side in (-1, 1)]
    spots += [((mark[0], max(low, under) + lift * step), "center top") for lift in range(4)]
    board.place(text, spots, size=sizes.text("small"), color=look.theme.settled, bold=True)
