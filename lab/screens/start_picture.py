"""The bar on the start screen, and the small pictures on its cards."""

from __future__ import annotations

from math import cos, pi, sin

from lab.scenes.bar import LOOSE_KNOB_PX, holding_at_m
from lab.scenes.hanging_scene import draw_hanging_bar, grab_bounds
from lab.scenes.hanging_view import PIVOT, HangingView, weight_key
from lab.scenes.weights import brass_rect, draw_brass
from lab.screens.benches.hanging_bar.words import weight_said
from lab.ui.canvas import Canvas, Draw
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.widgets.picture import Handle, Picture

PICTURE, PIN = "picture", "pin"
PIN_PX = 9.0
DISC_PX = 16.0


def start_picture(view: HangingView) -> Picture:
    """The bar with its pin, its weights and its carriage to take hold of."""
    say, readings = view.look.words.say, view.readings

    def handles(rect: Rect) -> tuple[Handle, ...]:
        bounds = grab_bounds(view, rect)
        pivot = readings.length_with_unit(view.bench.pivot.at_m)
        found = [Handle(PIVOT, say("pivot"), pivot, bounds[PIVOT], actions=("move",))]
        for weight in sorted(view.bench.weights, key=lambda one: one.at_m):
            key = weight_key(weight)
            said = weight_said(view.look.words, weight, readings)
            found.append(Handle(key, view.look.words.content(weight.name), said, bounds[key], actions=("move",)))
        name = say("yellow pin: let go") if view.bench.held else say("yellow pin: hold it level")
        found.append(Handle(PIN, name, "", pin_rect(view, rect), actions=("press",)))
        return tuple(found)

    said = (
        say("A bar with brass weights, held level by a yellow pin.") if view.bench.held else say("The bar is let go.")
    )
    return Picture(
        PICTURE,
        say("Hanging bar"),
        lambda canvas, rect: _draw(canvas, rect, view),
        handles=handles,
        value=said,
        least=(300.0, 200.0),
    )


def pin_rect(view: HangingView, rect: Rect) -> Rect:
    """The yellow pin with room round it for a finger: on the bar while held, under the rail when let go."""
    stage = view.stage(rect)
    sizes = view.look.sizes
    x = stage.camera.x_px(holding_at_m(view))
    y = stage.bar.y - sizes.px(PIN_PX - 2) if view.bench.held else stage.rail.bottom + sizes.px(LOOSE_KNOB_PX)
    side = max(sizes.target, 4 * sizes.px(DISC_PX))
    return Rect(x - side / 2, y - side / 2, side, side)


def _draw(canvas: Canvas, rect: Rect, view: HangingView) -> None:
    draw_hanging_bar(canvas, rect, view)
    if view.bench.held:
        _draw_invitation(canvas, rect, view)


def _draw_invitation(canvas: Canvas, rect: Rect, view: HangingView) -> None:
    """The pin made large, with three short strokes beside it: here is where one taps."""
    theme, sizes = view.look.theme, view.look.sizes
    x, y = pin_rect(view, rect).center
    canvas.circle((x, y), sizes.px(DISC_PX), fill=theme.held, outline=theme.ink, width=sizes.px(2.5))
    canvas.circle((x, y), sizes.px(5), fill=theme.ink)
    for turn in (0.12, 0.5, 0.88):
        angle = turn * pi / 2 - pi / 12
        near, far = sizes.px(DISC_PX + 7), sizes.px(DISC_PX + 17)
        ends = ((x + near * cos(angle), y - near * sin(angle)), (x + far * cos(angle), y - far * sin(angle)))
        canvas.line(ends, theme.ink, width=sizes.px(3))


def lesson_card_picture(look: Look) -> Draw:
    """A tool on a finger, and a question mark over where it will go."""

    def draw(canvas: Canvas, rect: Rect) -> None:
        theme, sizes = look.theme, look.sizes
        w, h = rect.w, rect.h
        stroke = max(1.5, sizes.px(1.5))
        pole = Rect(rect.x + 0.16 * w, rect.y + 0.52 * h, 0.76 * w, 0.08 * h)
        canvas.box(pole, fill=theme.wood, outline=theme.wood_edge, width=stroke, radius=pole.h / 2)
        head = Rect(rect.x + 0.1 * w, rect.y + 0.42 * h, 0.16 * w, 0.28 * h)
        canvas.box(head, fill=theme.steel, outline=theme.steel_edge, width=stroke, radius=3)
        finger = Rect(rect.x + 0.36 * w, pole.bottom, 0.11 * w, 0.24 * h)
        canvas.box(finger, fill=theme.skin, outline=theme.ink, width=stroke, radius=finger.w / 2)
        foot = Rect(finger.center[0] - 0.14 * w, finger.bottom - 0.04 * h, 0.28 * w, 0.09 * h)
        canvas.box(foot, fill=theme.ink, radius=3)
        text = look.words.say("?")
        at = (rect.x + 0.66 * w, rect.y + 0.28 * h)
        canvas.text(text, at, size=0.34 * h, color=theme.ink, bold=True, anchor="center middle")

    return draw


def build_card_picture(look: Look) -> Draw:
    """Brass weights hanging from a bar."""

    def draw(canvas: Canvas, rect: Rect) -> None:
        theme, sizes = look.theme, look.sizes
        w, h = rect.w, rect.h
        stroke = max(1.5, sizes.px(1.5))
        bar = Rect(rect.x + 0.07 * w, rect.y + 0.28 * h, 0.86 * w, 0.08 * h)
        middle = rect.center[0]
        for foot in (-0.07, 0.07):
            canvas.line(((middle + foot * w, rect.y), (middle, bar.center[1])), theme.ink, width=stroke)
        canvas.box(bar, fill=theme.wood, outline=theme.wood_edge, width=stroke, radius=2)
        canvas.circle((middle, bar.center[1]), 0.03 * w, fill=theme.panel, outline=theme.ink, width=stroke)
        for share, side in ((0.2, 0.26), (0.62, 0.2), (0.84, 0.15)):
            x, top = rect.x + share * w, rect.y + 0.5 * h
            canvas.line(((x, bar.center[1]), (x, top)), theme.ink, width=stroke)
            draw_brass(canvas, look, brass_rect((x, top), side * w), "")

    return draw
