"""Turning areas: each part a rectangle, its arm wide and its weight high. Level means equal area."""

from __future__ import annotations

from dataclasses import dataclass

from lab.outline.words import msg
from lab.scenes.camera import Camera
from lab.scenes.hanging_view import HangingView, weight_key
from lab.scenes.labels import LabelBoard, Spot, label_box
from lab.scenes.readings import Readings
from lab.simulation import HangingBar
from lab.ui.canvas import Anchor, Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look

LEAST_ARM = 1e-9
"""An arm under this share of the bar is none: round-off is no rectangle."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TurningArea:
    """What one part does about the pivot.

    arm_m: distance from the pivot, > 0.  left: it turns anticlockwise.  named: whether its label says its name too.
    """

    key: str
    name: str
    mass_kg: float
    arm_m: float
    left: bool
    named: bool = False

    @property
    def moment_kg_m(self) -> float:
        """Its area."""
        return self.mass_kg * self.arm_m


@dataclass(frozen=True, slots=True, kw_only=True)
class TurningView:
    """The areas of whatever turns about something.

    title: says about what.  about_m: where that is, along.  picked: key of the part that is picked.
    """

    title: str = msg("Turning areas about the pivot")
    areas: tuple[TurningArea, ...]
    about_m: float
    look: Look
    readings: Readings
    picked: str = ""

    @property
    def sums_kg_m(self) -> tuple[float, float]:
        """The moments on each side: (left, anticlockwise; right, clockwise)."""
        return sums_kg_m(self.areas)


def turning_view(view: HangingView) -> TurningView:
    """The areas of a hanging bar."""
    return TurningView(
        areas=turning_areas(view.bench),
        about_m=view.bench.pivot.at_m,
        look=view.look,
        readings=view.readings,
        picked=view.picked,
    )


def sums_kg_m(areas: tuple[TurningArea, ...]) -> tuple[float, float]:
    """The moments on each side: (left, anticlockwise; right, clockwise)."""
    return (
        sum((area.moment_kg_m for area in areas if area.left), 0.0),
        sum((area.moment_kg_m for area in areas if not area.left), 0.0),
    )


def turning_areas(bench: HangingBar) -> tuple[TurningArea, ...]:
    """Every part that turns the bar, the bar's own first; one right at the pivot does not."""
    keys = ["bar", *(weight_key(weight) for weight in bench.weights)]
    least_m = LEAST_ARM * bench.bar.length_m
    areas = []
    for key, part in zip(keys, bench.parts, strict=True):
        arm_m = bench.pivot.at_m - part.at_m[0]
        if abs(arm_m) > least_m:
            areas.append(
                TurningArea(
                    key=key,
                    name=part.name,
                    mass_kg=part.mass_kg,
                    arm_m=abs(arm_m),
                    left=arm_m > 0,
                    named=key == "bar",
                )
            )
    return tuple(areas)


def side_sums_kg_m(bench: HangingBar) -> tuple[float, float]:
    """The moments about the pivot on each side: (left, anticlockwise; right, clockwise)."""
    return sums_kg_m(turning_areas(bench))


@dataclass(frozen=True, slots=True, kw_only=True)
class Plot:
    """How arms and weights become pixels. axis_x: under the pivot.  base_y: what the stacks stand on."""

    rect: Rect
    axis_x: float
    base_y: float
    px_per_m: float
    px_per_kg: float


def plot_of(view: TurningView, body: Rect, camera: Camera | None) -> Plot:
    """Right under the bar its own scale is used, so that each rectangle ends below its weight."""
    areas = view.areas
    heights = [sum(a.mass_kg for a in areas if a.left is left) for left in (True, False)]
    px_per_kg = body.h / max(*heights, 1e-9)
    if camera is not None:
        axis_x, px_per_m = camera.x_px(view.about_m), camera.px_per_m
    else:
        reach = [max((a.arm_m for a in areas if a.left is left), default=0.0) for left in (True, False)]
        px_per_m = body.w / max(sum(reach), 1e-9)
        axis_x = body.x + reach[0] * px_per_m
    return Plot(rect=body, axis_x=axis_x, base_y=body.bottom, px_per_m=px_per_m, px_per_kg=px_per_kg)


def stacked_rects(view: TurningView, plot: Plot) -> tuple[tuple[TurningArea, Rect], ...]:
    """Each area's rectangle: the shortest arms at the bottom, so that nothing overhangs its own label."""
    placed = []
    for left in (True, False):
        y = plot.base_y
        side = [area for area in view.areas if area.left is left]
        for area in sorted(side, key=lambda one: (one.arm_m, one.key)):
            wide, high = area.arm_m * plot.px_per_m, area.mass_kg * plot.px_per_kg
            y -= high
            placed.append((area, Rect(plot.axis_x - wide if left else plot.axis_x, y, wide, high)))
    return tuple(placed)


def draw_turning_areas(canvas: Canvas, rect: Rect, view: TurningView, *, camera: Camera | None = None) -> None:
    """Title, stacks and sums in a rectangle.  camera: of what is right above, whose scale is then shared."""
    look = view.look
    sizes = look.sizes
    canvas.box(rect, fill=look.theme.panel)
    inner = rect.inset(sizes.px(20), sizes.px(8))
    small_h, number_h = sizes.text("small") * 1.3, sizes.text("number") * 1.4
    board = LabelBoard(canvas, rect.inset(sizes.px(6), 0))
    head_h = max(sizes.text("body") * 1.4, _draw_heading(canvas, view, inner))
    foot_h = _draw_sums(canvas, view, inner, number_h, small_h)
    body = Rect(inner.x, inner.y + head_h + sizes.px(4), inner.w, inner.h - head_h - foot_h - sizes.px(8))
    if body.h < sizes.px(24):
        return
    plot = plot_of(view, body, camera)
    placed = stacked_rects(view, plot)
    for area, box in placed:
        _draw_area(canvas, view, area, box)
    canvas.line([(inner.x, plot.base_y), (inner.right, plot.base_y)], look.theme.ink, width=sizes.px(2))
    canvas.line([(plot.axis_x, body.y - sizes.px(4)), (plot.axis_x, plot.base_y)], look.theme.ink, width=sizes.px(2))
    board.keep_clear([*(box for _, box in placed), Rect(inner.x, plot.base_y - 1, inner.w, 2)])
    for area, box in sorted(placed, key=lambda one: -one[0].moment_kg_m):
        _label(canvas, view, board, area, box)


def _draw_heading(canvas: Canvas, view: TurningView, inner: Rect) -> float:
    """The title and, where it fits beside or below, what the rectangles mean. Returns the height taken."""
    look, say = view.look, view.look.words.say
    sizes, units = look.sizes, view.readings.units
    title = say(view.title)
    note = say("arm wide ({length}), weight high ({weight})", length=units.length_word, weight=units.weight_word)
    size, small = sizes.text("body"), sizes.text("small")
    while size > small and canvas.text_size(title, size=size, bold=True)[0] > inner.w:
        size -= 1
    mirrored = sizes.mirrored
    anchor: Anchor = "right middle" if mirrored else "left middle"
    x = inner.right if mirrored else inner.x
    y = inner.y + sizes.text("body") * 0.7
    wide = canvas.text_size(title, size=size, bold=True)[0]
    canvas.text(title, (x, y), size=size, color=look.theme.ink, bold=True, anchor=anchor)
    note_w = canvas.text_size(note, size=small)[0]
    if wide + sizes.px(16) + note_w <= inner.w:
        step = wide + sizes.px(16)
        at = (x - step if mirrored else x + step, y)
        canvas.text(note, at, size=small, color=look.theme.soft, anchor=anchor)
    return sizes.text("body") * 1.4


def _draw_sums(canvas: Canvas, view: TurningView, inner: Rect, number_h: float, small_h: float) -> float:
    """What each side adds up to, at the foot; the sides are those of the bar, whatever the reading direction."""
    look, say = view.look, view.look.words.say
    sizes = look.sizes
    left, right = view.sums_kg_m
    pairs = (
        (say("anticlockwise"), view.readings.moment_with_unit(left), look.theme.anticlockwise),
        (say("clockwise"), view.readings.moment_with_unit(right), look.theme.clockwise),
    )
    small, number = sizes.text("small"), sizes.text("number")
    gap = sizes.px(8)
    widths = [
        canvas.text_size(word, size=small)[0] + gap + canvas.text_size(sum_, size=number, bold=True)[0]
        for word, sum_, _ in pairs
    ]
    beside = sum(widths) + sizes.px(24) <= inner.w
    foot = number_h if beside else number_h + small_h
    y = inner.bottom - number_h / 2
    for index, (word, total, color) in enumerate(pairs):
        anchors: tuple[Anchor, Anchor] = ("left middle", "right middle")
        x, anchor = (inner.x, anchors[0]) if index == 0 else (inner.right, anchors[1])
        box = canvas.text(total, (x, y), size=number, color=color, bold=True, anchor=anchor)
        if beside:
            at = (box.right + gap, y) if index == 0 else (box.x - gap, y)
        else:
            at = (x, y - number_h / 2 - small_h / 2)
        canvas.text(word, at, size=small, color=color, anchor=anchor)
    return foot


def _draw_area(canvas: Canvas, view: TurningView, area: TurningArea, box: Rect) -> None:
    theme, sizes = view.look.theme, view.look.sizes
    color = theme.anticlockwise if area.left else theme.clockwise
    picked = view.picked == area.key
    fill = theme.held_fill if picked else theme.anticlockwise_fill if area.left else theme.clockwise_fill
    canvas.box(box, fill=fill)
    if box.w > 3 and box.h > 3:
        canvas.hatch(box, color, rising=area.left, spacing=sizes.px(8), width=max(1.0, sizes.px(1.5)))
    canvas.box(box, outline=color, width=sizes.px(3) if picked else sizes.stroke)


def _label(canvas: Canvas, view: TurningView, board: LabelBoard, area: TurningArea, box: Rect) -> None:
    """weight × arm = moment: beside its rectangle on the far side, else upon it."""
    look, readings = view.look, view.readings
    values = {
        "weight": readings.weight(area.mass_kg),
        "arm": readings.short_length(area.arm_m),
        "moment": readings.moment(area.moment_kg_m),
    }
    if area.named:
        text = look.words.say("{bar} {weight} × {arm} = {moment}", bar=look.words.content(area.name), **values)
    else:
        text = look.words.say("{weight} × {arm} = {moment}", **values)
    size, gap = look.sizes.text("small"), look.sizes.px(10)
    y = box.center[1]
    # A thin rectangle's label may stand a little higher or lower than its middle.
    levels = [y + look.sizes.px(step) for step in (0, -4, 4, -8, 8)]
    outer: list[Spot] = [
        ((box.x - gap, level), "right middle") if area.left else ((box.right + gap, level), "left middle")
        for level in levels
    ]
    bold = view.picked == area.key
    if board.place_one_of((text,), outer, sizes=(size, 0.88 * size), color=look.theme.ink, bold=bold) is not None:
        return
    inside = label_box(canvas, text, (box.center, "center middle"), size=size, bold=bold)
    if inside.w + gap > box.w or inside.h > box.h - look.sizes.px(8):
        board.place(values["moment"], outer, size=size, color=look.theme.ink, bold=bold)
        return
    canvas.box(inside.grown(2).common(box), fill=look.theme.panel, radius=4)
    canvas.text(text, box.center, size=size, color=look.theme.ink, bold=bold, anchor="center middle")
