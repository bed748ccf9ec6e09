"""What surrounds a tool on a finger: the line it is held from, the finger, the rule, the floor."""

from __future__ import annotations

from lab.scenes.boxwood import draw_boxwood
from lab.scenes.finger_shapes import blended
from lab.scenes.finger_stage import FingerStage, FingerView, carriage_box, plate_text, span_m
from lab.scenes.labels import LabelBoard
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look

CORD_SHARES = (0.03, 0.95)
"""Where the two cords hold the tool, as shares of its length."""

HATCH_PX = 14.0

TRESTLE_SHARES = (0.07, 0.93)
"""Where the rule stands, as shares of its length."""


def draw_ground(canvas: Canvas, view: FingerView, stage: FingerStage) -> None:
    """The floor: a line with hatching below."""
    theme, sizes = view.look.theme, view.look.sizes
    y, frame = stage.ground_y, stage.frame
    strip = Rect(frame.x, y, frame.w, sizes.px(HATCH_PX))
    canvas.hatch(strip, theme.edge, rising=True, spacing=sizes.px(12), width=max(1.0, sizes.px(1.2)))
    canvas.line(((frame.x, y), (frame.right, y)), theme.ink, width=sizes.stroke)


def draw_cords(
    canvas: Canvas, view: FingerView, stage: FingerStage, board: LabelBoard, *, held_until: str = ""
) -> None:
    """The line above with its two yellow pins; while the tool is held, a cord from each down to it.

    held_until: how that is said where nothing is locked in.
    """
    look, camera = view.look, stage.camera
    theme, sizes, tool = look.theme, look.sizes, view.tool
    places = [tool.left_m + share * (tool.right_m - tool.left_m) for share in CORD_SHARES]
    y = stage.line_y
    ends = (camera.x_px(tool.left_m) - sizes.px(36), camera.x_px(tool.right_m) + sizes.px(36))
    canvas.line(((ends[0], y), (ends[1], y)), theme.ink, width=sizes.px(4))
    held = view.moment == "held"
    board.keep_clear([Rect(ends[0], y - sizes.px(4), ends[1] - ends[0], sizes.px(8))])
    for place in places:
        x = camera.x_px(place)
        top = _top_y(stage, place)
        # Let go: what is left of each cord dangles, so that everybody sees that it was the cords.
        low = top if held else y + sizes.px(24)
        canvas.line(((x, y), (x, low)), theme.ink, width=sizes.px(2))
        if held:
            canvas.circle((x, top), sizes.px(4), fill=theme.steel, outline=theme.steel_edge, width=sizes.px(1.5))
        canvas.circle(
            (x, y), sizes.px(10), fill=theme.held if held else theme.panel, outline=theme.ink, width=sizes.stroke
        )
        board.keep_clear([Rect(x - sizes.px(10), y - sizes.px(10), sizes.px(20), top - y + sizes.px(10))])
    text = (held_until or look.words.say("held until you lock it in")) if held else look.words.say("let go")
    middle = (camera.x_px((tool.left_m + tool.right_m) / 2), y - sizes.px(8))
    board.place(text, [(middle, "center bottom")], size=sizes.text("small"), color=theme.soft)


def _top_y(stage: FingerStage, at_m: float) -> float:
    tops = [
        outline.top_m for outline in stage.outlines if outline.left_m <= at_m <= outline.right_m and not outline.hook_m
    ]
    return stage.camera.y_px(max(tops, default=0.0))


def draw_rule(canvas: Canvas, view: FingerView, stage: FingerStage, board: LabelBoard) -> None:
    """The boxwood rule on two trestles, its marks along the upper edge."""
    theme, sizes = view.look.theme, view.look.sizes
    rule = stage.rule
    for legs in trestle_boxes(view, stage):
        _draw_trestle(canvas, view, legs)
    places_m = span_m(view.laid_for or view.tool)
    draw_boxwood(canvas, view.look, rule, view.readings.units, x_px=stage.camera.x_px, span_m=places_m)
    board.keep_clear([rule])
    gap, size = sizes.px(8), sizes.text("small")
    # Where nothing fits beside the rule, the unit stands below its end.
    beside, below = (rule.right + gap, rule.center[1]), (rule.right, rule.bottom + sizes.px(4))
    unit = view.readings.units.length_word
    board.place(unit, [(beside, "left middle"), (below, "right top")], size=size, color=theme.soft, ground=theme.paper)


def trestle_boxes(view: FingerView, stage: FingerStage) -> list[Rect]:
    """Where the trestles stand; none where the rule lies right on the floor."""
    rule, sizes = stage.rule, view.look.sizes
    top, foot = rule.bottom - 2, stage.ground_y
    if foot - top < sizes.px(10):
        return []
    spread = min(sizes.px(17), (foot - top) * 0.22)
    middles = (rule.x + share * rule.w for share in TRESTLE_SHARES)
    return [Rect(x - spread, top, 2 * spread, foot - top) for x in middles]


def _draw_trestle(canvas: Canvas, view: FingerView, legs: Rect) -> None:
    theme, sizes = view.look.theme, view.look.sizes
    x, spread = legs.center[0], legs.w / 2
    for side in (-1, 1):
        ends = ((x + side * sizes.px(3), legs.y), (x + side * spread, legs.bottom))
        canvas.line(ends, theme.wood_edge, width=sizes.px(4))
    if legs.h > sizes.px(50):
        across, level = spread * 0.68, legs.y + 0.62 * legs.h
        canvas.line(((x - across, level), (x + across, level)), theme.wood_edge, width=sizes.px(3))


def draw_finger(canvas: Canvas, view: FingerView, stage: FingerStage) -> None:
    """The finger with the pad on top."""
    finger, pad = stage.finger_rect(view.tool, view.look), stage.pad_rect(view.tool)
    draw_fingertip(canvas, view.look, finger, pad, pad_fill=view.look.theme.held, sunk=stage.carriage_h * 0.6)


def draw_fingertip(canvas: Canvas, look: Look, finger: Rect, pad: Rect, *, pad_fill: str, sunk: float) -> None:
    """A finger with a pad on top.  sunk: how far it goes on below, behind what it stands on."""
    theme, sizes = look.theme, look.sizes
    stroke, x = sizes.stroke, finger.center[0]
    # It goes on behind the carriage, so that only its tip is round.
    whole = Rect(finger.x, pad.y + stroke, finger.w, finger.bottom - pad.y + sunk)
    canvas.box(whole, fill=theme.skin, outline=theme.ink, width=stroke, radius=finger.w / 2)
    lines = blended(theme.skin, theme.on_material, 0.5)
    nail_h = min(finger.w * 0.62, finger.h * 0.36)
    nail = Rect(x - finger.w * 0.27, pad.bottom + sizes.px(4), finger.w * 0.54, nail_h)
    pale = blended(theme.skin, "#FFFFFF", 0.55)
    canvas.box(nail, fill=pale, outline=lines, width=max(1.0, sizes.px(1)), radius=finger.w * 0.24)
    for down in (0.62, 0.71):
        y, half = finger.y + down * finger.h, finger.w * (0.3 if down < 0.7 else 0.2)
        canvas.line(((x - half, y), (x + half, y)), lines, width=max(1.0, sizes.px(1.2)))
    canvas.box(pad, fill=pad_fill, outline=theme.ink, width=max(1.0, sizes.px(1.5)), radius=2)


def draw_carriage(canvas: Canvas, view: FingerView, stage: FingerStage) -> None:
    """The finger's foot on the rule, which says where it stands."""
    look = view.look
    theme, sizes = look.theme, look.sizes
    box = carriage_box(view, stage)
    if view.picked:
        canvas.box(box.grown(sizes.px(4)), outline=theme.ink, width=sizes.stroke, radius=sizes.px(11))
    canvas.box(box, fill=theme.ink, radius=sizes.px(8))
    size = sizes.text("body")
    canvas.text(plate_text(view), box.center, size=size, color=theme.on_dark, bold=True, anchor="center middle")
    # A hand that points at the place on the rule.
    x, half, low = stage.finger_rect(view.tool, look).center[0], sizes.px(5), stage.rule.y + sizes.px(6)
    canvas.polygon(((x - half, box.bottom - 1), (x + half, box.bottom - 1), (x, low)), fill=theme.ink)
