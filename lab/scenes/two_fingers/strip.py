"""The strip below the picture: what each finger carries and its friction, drawn where the finger was."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lab.mechanics import STANDARD_GRAVITY_M_S2, FingerSlide
from lab.scenes.camera import Camera
from lab.scenes.two_fingers.view import TwoFingersView
from lab.scenes.two_fingers.way import WayPoint, way_points
from lab.ui.canvas import Anchor, Canvas
from lab.ui.geometry import Point, Rect

LOAD_SHARE, GAP_SHARE = 0.5, 0.08
"""Of the plot's height: for the loads, which stand above, and between them and the frictions, which have a scale of
their own, since they are only a part of them."""
HEADROOM = 1.06
"""How much higher a band is than the largest force in it."""
FRICTION_PX, LOAD_PX = 3.5, 2.0
LOAD_DASH = (6.0, 4.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Plot:
    """How places and forces of one kind become pixels. camera: along only.  px_per_n: upwards from the band's foot."""

    band: Rect
    camera: Camera
    px_per_n: float

    def at(self, along_m: float, force_n: float) -> Point:
        """The pixel of a force at a place."""
        return self.camera.x_px(along_m), self.band.bottom - force_n * self.px_per_n


def shown_way(view: TwoFingersView) -> FingerSlide | None:
    """The way that the strip is about: the one they are on, or, where all may be seen, the one they would take."""
    bench = view.bench
    if bench.slide is not None or bench.tipping is not None:
        return bench.slide
    return bench.released().slide if view.told else None


def draw_strip(canvas: Canvas, rect: Rect, view: TwoFingersView, *, camera: Camera | None = None) -> None:
    """Title, traces and figures in a rectangle.  camera: the picture's, where it lies right above."""
    look, sizes = view.look, view.look.sizes
    with canvas.clipped(rect):
        canvas.box(rect, fill=look.theme.panel)
        inner = rect.inset(sizes.px(20), sizes.px(8))
        head_h = _draw_heading(canvas, view, inner)
        body = Rect(inner.x, inner.y + head_h, inner.w, inner.h - head_h - sizes.px(6))
        slide = shown_way(view)
        if body.h < sizes.px(24):
            return
        if slide is None:
            _draw_empty(canvas, view, body)
            return
        plots = plots_of(view, body, slide, camera)
        _draw_grid(canvas, view, plots, slide)
        if view.told:
            key = ("two-fingers-way", look, slide, plots)
            canvas.kept(key, lambda: _draw_traces(canvas, view, plots, way_points(slide), pale=True))
        if view.bench.slide is not None:
            done = way_points(slide, to_gap_m=view.bench.gap_m)
            _draw_traces(canvas, view, plots, done, pale=False)
            if done:
                _draw_now(canvas, view, plots, done[-1])


def plots_of(view: TwoFingersView, body: Rect, slide: FingerSlide, camera: Camera | None) -> tuple[Plot, Plot]:
    """The bands of the loads and of the frictions.

    Right under the picture its own scale along is used, so that a trace lies under its finger.
    """
    left_m, right_m = view.bench.span_m
    if camera is None:
        px_per_m = body.w / (right_m - left_m)
        camera = Camera(px_per_m=px_per_m, origin=(body.x - left_m * px_per_m, body.bottom))
    points = way_points(slide)
    load_n = max(max(point.forces.left_normal_n, point.forces.right_normal_n) for point in points)
    friction_n = max(point.forces.friction_n for point in points)
    upper, rest = body.cut_top(body.h * LOAD_SHARE)
    lower = rest.cut_top(body.h * GAP_SHARE)[1]
    return (
        Plot(band=upper, camera=camera, px_per_n=upper.h / (HEADROOM * max(load_n, slide.weight_n / 2))),
        Plot(band=lower, camera=camera, px_per_n=lower.h / (HEADROOM * friction_n)),
    )


def _draw_heading(canvas: Canvas, view: TwoFingersView, inner: Rect) -> float:
    """The title and, where it fits beside it, which line is which. Returns the height taken."""
    look, say = view.look, view.look.words.say
    sizes, small = look.sizes, look.sizes.text("small")
    title = say("What the fingers feel")
    size = sizes.text("body")
    while size > small and canvas.text_size(title, size=size, bold=True)[0] > inner.w:
        size -= 1
    mirrored = sizes.mirrored
    anchor: Anchor = "right middle" if mirrored else "left middle"
    x, way = (inner.right, -1) if mirrored else (inner.x, 1)
    y = inner.y + sizes.text("body") * 0.7
    canvas.text(title, (x, y), size=size, color=look.theme.ink, bold=True, anchor=anchor)
    x += way * (canvas.text_size(title, size=size, bold=True)[0] + sizes.px(18))
    sample = sizes.px(26)
    texts = (say("load"), say("friction"))
    wide = sum(canvas.text_size(text, size=small)[0] for text in texts) + 2 * (sample + sizes.px(22))
    if abs(x - (inner.x if mirrored else inner.right)) < wide:
        return sizes.text("body") * 1.5
    for text, width, dash in zip(texts, (LOAD_PX, FRICTION_PX), (LOAD_DASH, ()), strict=True):
        ends = ((x, y), (x + way * sample, y))
        canvas.line(ends, look.theme.ink, width=sizes.px(width), dash=tuple(sizes.px(each) for each in dash))
        x += way * (sample + sizes.px(6))
        canvas.text(text, (x, y), size=small, color=look.theme.soft, anchor=anchor)
        x += way * (canvas.text_size(text, size=small)[0] + sizes.px(16))
    return sizes.text("body") * 1.5


def _draw_empty(canvas: Canvas, view: TwoFingersView, body: Rect) -> None:
    look = view.look
    tips = view.bench.tipping is not None
    text = look.words.say("It tipped off.") if tips else look.words.say("Slide them in: their way is drawn here.")
    size = look.sizes.text("small")
    while size > 10 and canvas.text_size(text, size=size)[0] > body.w:
        size -= 1
    canvas.text(text, body.center, size=size, color=look.theme.soft, anchor="center middle")


def _draw_grid(canvas: Canvas, view: TwoFingersView, plots: tuple[Plot, Plot], slide: FingerSlide) -> None:
    """The bands' feet, the half weight, and where the balance point is."""
    theme, sizes = view.look.theme, view.look.sizes
    loads, frictions = plots
    left_m, right_m = view.bench.span_m
    ends = loads.camera.x_px(left_m), loads.camera.x_px(right_m)
    y = loads.at(0.0, slide.weight_n / 2)[1]
    canvas.line([(ends[0], y), (ends[1], y)], theme.hair, width=sizes.px(1))
    for plot, width in ((loads, 1), (frictions, 2)):
        foot = plot.band.bottom
        canvas.line([(ends[0], foot), (ends[1], foot)], theme.ink, width=sizes.px(width))
    if view.told or view.bench.outcome is not None:
        x = loads.camera.x_px(slide.meeting_m)
        dash = (sizes.px(5), sizes.px(4))
        canvas.line([(x, loads.band.y), (x, frictions.band.bottom)], theme.settled, width=sizes.px(2), dash=dash)
    if view.numbers:
        half_kg = slide.weight_n / 2 / STANDARD_GRAVITY_M_S2
        text = view.look.words.say("half: {weight}", weight=view.readings.weight_with_unit(half_kg))
        size = sizes.text("small")
        wide = canvas.text_size(text, size=size)[0]
        if ends[1] + sizes.px(6) + wide <= loads.band.right + sizes.px(16):
            canvas.text(text, (ends[1] + sizes.px(6), y), size=size, color=theme.soft, anchor="left middle")


def _draw_traces(
    canvas: Canvas, view: TwoFingersView, plots: tuple[Plot, Plot], points: Sequence[WayPoint], *, pale: bool
) -> None:
    theme, sizes = view.look.theme, view.look.sizes
    if len(points) < 2:
        return
    for number, color in ((0, theme.anticlockwise), (1, theme.clockwise)):
        tone = theme.edge if pale else color
        loads = [plots[0].at(_place(point, number), _load(point, number)) for point in points]
        dash = tuple(sizes.px(each) for each in LOAD_DASH)
        canvas.line(loads, tone, width=sizes.px(1.0 if pale else LOAD_PX), dash=dash)
        frictions = [plots[1].at(_place(point, number), point.forces.friction_n) for point in points]
        canvas.line(frictions, tone, width=sizes.px(1.5 if pale else FRICTION_PX))


def _draw_now(canvas: Canvas, view: TwoFingersView, plots: tuple[Plot, Plot], now: WayPoint) -> None:
    """A dot for each finger on each of its traces."""
    theme, sizes = view.look.theme, view.look.sizes
    for number, color in ((0, theme.anticlockwise), (1, theme.clockwise)):
        load = plots[0].at(_place(now, number), _load(now, number))
        canvas.circle(load, sizes.px(5), fill=theme.panel, outline=color, width=sizes.px(2))
        canvas.circle(plots[1].at(_place(now, number), now.forces.friction_n), sizes.px(5), fill=color)


def _place(point: WayPoint, number: int) -> float:
    return point.right_m if number else point.left_m


def _load(point: WayPoint, number: int) -> float:
    return point.forces.right_normal_n if number else point.forces.left_normal_n
