"""The whole picture of a body on two fingers: what is drawn, and in which order."""

from __future__ import annotations

from lab.scenes.finger_bench import draw_cords, draw_fingertip, draw_ground, draw_rule
from lab.scenes.finger_stage import body_place_px
from lab.scenes.finger_tool import draw_hung, draw_tool, name_parts
from lab.scenes.labels import LabelBoard
from lab.scenes.marks import draw_quartered
from lab.scenes.ties import draw_ties
from lab.scenes.two_fingers.marks import draw_flag, draw_reference, name_balance
from lab.scenes.two_fingers.slipping import draw_frictions, draw_slipping, draw_suds, say_forces
from lab.scenes.two_fingers.view import (
    FINGER_KEYS,
    Stage,
    TwoFingersView,
    brass_side_m,
    finger_bounds,
    outline_rect,
    piece_key,
    plate_texts,
    reference_knob,
    stage_for,
)
from lab.scenes.weights import brass_rect, draw_brass
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect

BALANCE_PX = 11.0


def draw_two_fingers(canvas: Canvas, rect: Rect, view: TwoFingersView) -> None:
    """Draw the bench into a rectangle; nothing leaves it."""
    stage = stage_for(view, rect)
    with canvas.clipped(rect):
        canvas.box(rect, fill=view.look.theme.paper)
        board = LabelBoard(canvas, stage.body.frame)
        _draw_around(canvas, view, stage, board)
        for number in (0, 1):
            _draw_finger(canvas, view, stage, number)
        draw_suds(canvas, view, stage)
        draw_hung(canvas, stage.seen, stage.body)
        draw_tool(canvas, stage.seen, stage.body)
        board.keep_clear([*stage.feet, *stage.fingers])
        _draw_marks(canvas, view, stage, board)
        if view.bench.tipping is None:
            draw_slipping(canvas, view, stage)
            draw_frictions(canvas, view, stage)
            board.keep_clear(outline_rect(stage, outline) for outline in stage.body.outlines)
            say_forces(canvas, view, stage, board)
        if view.bench.tipping is None:
            boxes = {each.part.name: outline_rect(stage, each) for each in stage.body.outlines if not each.beam}
            # At its upper edge, so that the knot hides no number.
            spots = {name: (box.center[0], box.y) for name, box in boxes.items()}
            board.keep_clear(draw_ties(canvas, view.look, spots))
        if view.bench.held:
            # A name that touched a weight would seem to be struck into it.
            gap = view.look.sizes.px(6)
            board.keep_clear(outline_rect(stage, each).grown(gap) for each in stage.body.outlines if not each.beam)
            name_parts(canvas, stage.seen, stage.body, board)
        _draw_coming(canvas, view, stage)


def _draw_around(canvas: Canvas, view: TwoFingersView, stage: Stage, board: LabelBoard) -> None:
    """Floor, rule, cords, and the lines behind the body."""
    say = view.look.words.say
    draw_ground(canvas, stage.seen, stage.body)
    draw_rule(canvas, stage.seen, stage.body, board)
    draw_cords(canvas, stage.seen, stage.body, board, held_until=say("held until you slide them in"))
    if view.told:
        # Drawn later, over the flag's words.
        board.keep_clear([reference_knob(view, stage)])
    draw_flag(canvas, view, stage, board)
    if view.told:
        draw_reference(canvas, view, stage, board)


def _draw_finger(canvas: Canvas, view: TwoFingersView, stage: Stage, number: int) -> None:
    """One finger with its foot, which says where it stands."""
    look, foot, finger = view.look, stage.feet[number], stage.fingers[number]
    theme, sizes = look.theme, look.sizes
    leg = view.bench.leg
    side = ("left", "right")[number]
    sticks = view.bench.moving and leg is not None and leg.mover not in (side, "both")
    pad_fill = theme.held if sticks else theme.panel
    draw_fingertip(canvas, look, finger, stage.pads[number], pad_fill=pad_fill, sunk=foot.h * 0.6)
    if view.picked == FINGER_KEYS[number]:
        canvas.box(foot.grown(sizes.px(4)), outline=theme.ink, width=sizes.stroke, radius=sizes.px(11))
    canvas.box(foot, fill=theme.ink, radius=sizes.px(8))
    # A band in the colour of its traces in the strip below.
    color = theme.anticlockwise if number == 0 else theme.clockwise
    band = Rect(foot.x + sizes.px(8), foot.bottom - sizes.px(6), foot.w - sizes.px(16), sizes.px(3))
    canvas.box(band, fill=color, radius=1)
    text = plate_texts(view)[number]
    canvas.text(
        text,
        (foot.center[0], foot.center[1] - sizes.px(1)),
        size=sizes.text("body"),
        color=theme.on_dark,
        bold=True,
        anchor="center middle",
    )
    x, half, low = finger.center[0], sizes.px(5), stage.body.rule.y + sizes.px(6)
    canvas.polygon(((x - half, foot.bottom - 1), (x + half, foot.bottom - 1), (x, low)), fill=theme.ink)


def _draw_marks(canvas: Canvas, view: TwoFingersView, stage: Stage, board: LabelBoard) -> None:
    """What is picked, and the balance point where it may be seen."""
    look, bench = view.look, view.bench
    if bench.tipping is None:
        for piece in bench.pieces:
            if piece_key(piece) == view.picked:
                outline = next(each for each in stage.body.outlines if each.part.name == piece.part.name)
                box = outline_rect(stage, outline).grown(look.sizes.px(4))
                canvas.box(box, outline=look.theme.ink, width=look.sizes.px(3), radius=look.sizes.px(5))
    if not view.told and bench.outcome is None:
        return
    along, _, up = bench.sum.balance_point_m
    _, bottom, _, top = stage.body.bounds_m
    mark = body_place_px(stage.seen, stage.body, (along, min(max(up, bottom), top)))
    draw_quartered(canvas, look, mark, look.sizes.px(BALANCE_PX))
    if bench.tipping is None:
        name_balance(canvas, view, stage, board, mark)


def _draw_coming(canvas: Canvas, view: TwoFingersView, stage: Stage) -> None:
    """A weight on its way: pale on the body where it would stand, or at the pointer that carries it."""
    rect = coming_rect(view, stage)
    if rect is not None and view.coming is not None:
        draw_brass(canvas, view.look, rect, view.readings.stamp(view.coming.mass_kg), faint=True)


def coming_rect(view: TwoFingersView, stage: Stage) -> Rect | None:
    """Where a weight on its way is drawn."""
    coming = view.coming
    if coming is None:
        return None
    side = stage.camera.length_px(brass_side_m(view, coming.mass_kg))
    if coming.at_m is not None:
        x, y = stage.camera.at(coming.at_m, view.bench.top_m)
        return brass_rect((x, y - brass_rect((0.0, 0.0), side).h), side)
    if coming.pointer is not None:
        return brass_rect((coming.pointer[0], coming.pointer[1] - side / 2), side)
    return None


def finger_rects(view: TwoFingersView, rect: Rect) -> tuple[Rect, Rect]:
    """What can be grabbed of the two fingers."""
    return finger_bounds(view, stage_for(view, rect))
