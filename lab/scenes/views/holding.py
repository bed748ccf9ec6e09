"""What holds a body: scales that it stands on, or a cord from a rail."""

from __future__ import annotations

from collections.abc import Mapping

from lab.scenes.labels import LabelBoard, Spot
from lab.scenes.views.margins import SCALE_GAP_PX, scale_widths
from lab.scenes.views.paint import finish_of
from lab.scenes.views.projections import flat_m
from lab.scenes.views.stage import Panel
from lab.scenes.views.things import places_m, things_of
from lab.scenes.views.view import BodyView, StandingScale
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.sizes import TextStyle

HOOK_PX, CORD_PX = 4.0, 2.0
BOB_PX = 9.0
PAD_PX = 14.0


def draw_rail(canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """A rail above, and the cord down to the place that it is tied to."""
    if view.hanging is None or not view.hanging.cord or panel.face == "top":
        return
    theme, sizes = view.look.theme, view.look.sizes
    x, y = panel.px(view.hanging.at_m)
    top = panel.row("rail").y + sizes.px(8)
    half = min(sizes.px(110), panel.frame.w * 0.3)
    rail = Rect(x - half, top, 2 * half, sizes.px(9)).common(panel.frame.inset(sizes.px(6), 0))
    canvas.box(rail, fill=theme.steel, outline=theme.steel_edge, width=sizes.px(1.5), radius=sizes.px(3))
    canvas.line(((x, rail.bottom), (x, y)), theme.ink, width=sizes.px(CORD_PX))
    board.keep_clear([rail, Rect(x - 3, rail.bottom, 6, max(0.0, y - rail.bottom))])


def draw_hook(canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """The ring at the end of the cord, and the plumb line that falls from it, over the body; from above the ring."""
    hanging = view.hanging
    if hanging is None or not hanging.cord:
        return
    theme, sizes = view.look.theme, view.look.sizes
    x, y = panel.px(hanging.at_m)
    if hanging.plumb and panel.face != "top":
        bob = sizes.px(BOB_PX)
        foot = max(panel.reach_px[1] - bob, y + 3 * bob)
        canvas.line(((x, y), (x, foot)), theme.clockwise, width=max(1.0, sizes.px(1.5)))
        tip = ((x - bob / 2, foot), (x + bob / 2, foot), (x + bob / 2, foot + 0.6 * bob), (x, foot + 1.6 * bob),
               (x - bob / 2, foot + 0.6 * bob))  # fmt: skip
        canvas.polygon(tip, fill=theme.brass, outline=theme.brass_edge, width=max(1.0, sizes.px(1.5)))
        board.keep_clear([Rect(x - bob / 2, y, bob, foot + 1.6 * bob - y)])
    radius = sizes.px(HOOK_PX) + 1
    canvas.circle((x, y), radius, fill=theme.steel, outline=theme.ink, width=max(1.0, sizes.px(1.5)))
    board.keep_clear([Rect(x - radius, y - radius, 2 * radius, 2 * radius)])


def scale_boxes(view: BodyView, panel: Panel) -> Mapping[str, Rect]:
    """Where each scale's case is, by key: under its place, and beside each other where they would overlap."""
    row, sizes = panel.row("scales"), view.look.sizes
    size = sizes.text(reading_style(view, panel))
    high = LINE_HIGH * size + sizes.px(10)
    y = row.y + sizes.px(18 + 8)
    gap = sizes.px(SCALE_GAP_PX)
    wide = dict(zip((scale.key for scale in view.scales), scale_widths(view, reading_style(view, panel)), strict=True))
    order = sorted(view.scales, key=lambda scale: flat_m(panel.face, scale.at_m)[0])
    widths = [wide[scale.key] - gap for scale in order]
    middles = [_plate_x(view, panel, scale) for scale in order]
    lefts = parted(middles, widths, gap, panel.frame.inset(sizes.px(4), 0))
    return {scale.key: Rect(left, y, wide, high) for scale, left, wide in zip(order, lefts, widths, strict=True)}


def reading_style(view: BodyView, panel: Panel) -> TextStyle:
    """How large readings are set: smaller where they would not all fit beside each other."""
    return "body" if sum(scale_widths(view, "body")) <= panel.frame.w else "small"


LINE_HIGH = 1.1


def _plate_x(view: BodyView, panel: Panel, scale: StandingScale) -> float:
    """Where a scale stands: under its place of the body as that lies now, or where it stood when the body lay level."""
    if scale.follows:
        return panel.px(scale.at_m)[0]
    return panel.camera.x_px(flat_m(panel.face, scale.at_m)[0])


def parted(middles: list[float], widths: list[float], gap: float, frame: Rect) -> list[float]:
    """Left edges, in order, that do not overlap and stay as near as they can to their middles."""
    lefts = [middle - wide / 2 for middle, wide in zip(middles, widths, strict=True)]
    for _ in range(8 * len(lefts)):
        for i in range(len(lefts) - 1):
            over = lefts[i] + widths[i] + gap - lefts[i + 1]
            if over > 0:
                lefts[i] -= over / 2
                lefts[i + 1] += over / 2
        lefts = [min(max(left, frame.x), frame.right - wide) for left, wide in zip(lefts, widths, strict=True)]
    return lefts


def draw_scales(canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """A post up to the body, a case with a window, a floor."""
    if not view.scales or panel.face == "top":
        return
    boxes, sizes, theme = scale_boxes(view, panel), view.look.sizes, view.look.theme
    floor = max(box.bottom for box in boxes.values()) + sizes.px(3)
    wide = panel.frame.inset(sizes.px(10), 0)
    canvas.line(((wide.x, floor), (wide.right, floor)), theme.edge, width=sizes.px(2))
    board.keep_clear([Rect(wide.x, floor - 2, wide.w, 4)])
    for scale in sorted(view.scales, key=lambda one: -one.at_m[1]):
        _draw_scale(canvas, view, panel, board, scale, boxes[scale.key])
    for scale in view.scales:
        if scale.name:
            box = boxes[scale.key]
            text, size = scale.name, sizes.text("small")
            spots = [((box.center[0], floor + sizes.px(4)), "center top"), ((box.x, floor + sizes.px(4)), "left top"),
                     ((box.right, floor + sizes.px(4)), "right top")]  # fmt: skip
            board.place(text, spots, size=size, color=theme.soft, bold=scale.highlighted)  # type: ignore[arg-type]


def draw_footprints(canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """From above, over the body: a ring where it stands on each scale, with the scale's name."""
    if panel.face != "top":
        return
    theme, sizes = view.look.theme, view.look.sizes
    for scale in view.scales:
        at, radius = panel.px(scale.at_m), sizes.px(8)
        canvas.circle(at, radius, outline=theme.paper, width=sizes.px(5))
        canvas.circle(at, radius, outline=theme.ink, width=sizes.px(2))
        canvas.circle(at, sizes.px(2.5), fill=theme.ink)
        board.keep_clear([Rect(at[0] - radius, at[1] - radius, 2 * radius, 2 * radius)])
    for scale in view.scales:
        if scale.name:
            (x, y), gap = panel.px(scale.at_m), sizes.px(12)
            spots: list[Spot] = [
                ((x + gap, y), "left middle"), ((x - gap, y), "right middle"),
                ((x, y - gap), "center bottom"), ((x, y + gap), "center top"),
            ]  # fmt: skip
            board.place(
                scale.name, spots, size=sizes.text("small"), color=theme.ink, bold=scale.highlighted, ground=theme.paper
            )


def underside_m(view: BodyView, panel: Panel, right_m: float) -> float:
    """The lowest place of the body over a place that lies level in the face; its bottom where nothing is over it."""
    lows = []
    for thing in things_of(view.body):
        places = list(places_m(thing, panel.face))
        for (x0, y0), (x1, y1) in zip(places, places[1:] + places[:1], strict=True):
            low, high = min(x0, x1), max(x0, x1)
            if low <= right_m <= high:
                share = 0.0 if x1 == x0 else (right_m - x0) / (x1 - x0)
                lows.append(y0 + share * (y1 - y0))
    return min(lows, default=panel.bounds_m[1])


def _draw_scale(
    canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard, scale: StandingScale, box: Rect
) -> None:
    theme, sizes = view.look.theme, view.look.sizes
    right = flat_m(panel.face, scale.at_m)[0]
    under = (right, underside_m(view, panel, right))
    x, y = panel.flat_px(under) if scale.follows else panel.camera.at(*under)
    plate = Rect(box.x + 0.12 * box.w, box.y - sizes.px(8), 0.76 * box.w, sizes.px(6))
    pad = Rect(x - sizes.px(PAD_PX) / 2, y, sizes.px(PAD_PX), sizes.px(5))
    foot = _plate_x(view, panel, scale)
    canvas.line(((x, pad.bottom - 1), (min(max(foot, plate.x + 4), plate.right - 4), plate.y)), theme.ink,
                width=sizes.px(4))  # fmt: skip
    canvas.box(pad, fill=theme.ink, radius=2)
    canvas.box(plate, fill=theme.steel, outline=theme.steel_edge, width=sizes.px(1.5), radius=sizes.px(2))
    canvas.line(((box.center[0], plate.bottom), (box.center[0], box.y + 2)), theme.ink, width=sizes.px(6))
    metal = finish_of(theme, "metal")
    if scale.highlighted:
        canvas.box(box.grown(sizes.px(4)), fill=theme.held, radius=sizes.px(9))
    canvas.box(box, fill=metal.fill, outline=metal.edge, width=sizes.px(2), radius=sizes.px(6))
    window = box.inset(sizes.px(6), sizes.px(4))
    canvas.box(window, fill=theme.panel, outline=theme.ink, width=1.0, radius=sizes.px(3))
    size = sizes.text(reading_style(view, panel))
    canvas.text(scale.reading, window.center, size=size, color=theme.ink, bold=True, anchor="center middle")
    board.keep_clear([box.union(plate), pad, Rect(x - 3, y, 6, max(0.0, plate.y - y))])
