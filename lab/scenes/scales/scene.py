"""The whole picture of a body on scales, and what in it can be grabbed."""

from __future__ import annotations

from collections.abc import Mapping

from lab.scenes.boxwood import draw_boxwood
from lab.scenes.labels import LabelBoard, Spot
from lab.scenes.scales.marks import (
    draw_balance,
    draw_cords,
    draw_place_plate,
    draw_reference,
    draw_triangle,
    name_held,
    name_reference,
    place_plate,
    reference_knob,
)
from lab.scenes.scales.stage import ScalesStage, stage_of, tipped_place_m
from lab.scenes.scales.standing import case_boxes, draw_cases, draw_rings, post_boxes, ring_boxes
from lab.scenes.scales.view import REFERENCE, ScalesView, load_key
from lab.scenes.ties import draw_ties
from lab.scenes.views.body import Body
from lab.scenes.views.naming import draw_names, obstacles, thing_box
from lab.scenes.views.paint import draw_thing
from lab.scenes.views.projections import Face, Flat
from lab.scenes.views.scene import draw_body, face_name
from lab.scenes.views.stage import Panel
from lab.scenes.views.things import Thing, things_of
from lab.scenes.views.view import BodyView
from lab.ui.canvas import Anchor, Canvas
from lab.ui.geometry import Point, Rect


def draw_scales_bench(canvas: Canvas, rect: Rect, view: ScalesView) -> None:
    """Draws the bench into a rectangle; nothing leaves it."""
    stage = stage_of(view, rect)
    with canvas.clipped(rect):
        canvas.box(rect, fill=view.look.theme.paper)
        if stage.side is not None:
            _draw_side(canvas, view, stage, stage.side)
        if stage.top is not None:
            _draw_top(canvas, view, stage, stage.top)
        _draw_pointer_ghost(canvas, view, stage)
        panel = stage.top or stage.side
        if panel is not None:
            draw_place_plate(canvas, view, panel)


def body_view(view: ScalesView, body: Body, face: Face, *, named: bool) -> BodyView:
    """The body for the drawing of views, in one face.  named: whether parts are named."""
    picked = next((load.name for load in view.bench.loads if load_key(load.id) == view.picked), "")
    lit = frozenset({picked}) if picked else frozenset()
    return BodyView(
        body=body,
        look=view.look,
        readings=view.readings,
        faces=(face,),
        labels="weights" if named else "none",
        highlighted=lit,
        picked=picked if view.carried else "",
        symmetry=False,
    )


def _draw_side(canvas: Canvas, view: ScalesView, stage: ScalesStage, panel: Panel) -> None:
    look = view.look
    sizes, theme = look.sizes, look.theme
    frame = panel.frame
    board = LabelBoard(canvas, Rect(frame.x, frame.y, frame.w, stage.floor_y - frame.y).inset(sizes.px(4), 0))
    lower = LabelBoard(canvas, frame.inset(sizes.px(4), 0))
    if stage.top is None:
        _keep_plate_clear(canvas, view, panel, board)
    bottom = frame.bottom if stage.top is not None else stage.frame.bottom
    table = Rect(frame.x, stage.floor_y, frame.w, bottom - stage.floor_y)
    canvas.box(table, fill=theme.wash)
    canvas.line(((frame.x, stage.floor_y), (frame.right, stage.floor_y)), theme.edge, width=sizes.px(2))
    if view.three:
        _name_face(view, panel, board)
    draw_reference(canvas, view, stage, board)
    draw_cords(canvas, view, panel, board)
    if not (view.three and view.tips):
        along = view.bench.reach_m[0]
        draw_boxwood(canvas, look, stage.rule, view.readings.units, x_px=panel.camera.x_px, span_m=along)
        _name_unit(view, stage, lower)
    shown = body_view(view, stage.side_body, "side", named=stage.top is None)
    with canvas.clipped(frame):
        draw_body(canvas, shown, panel)
        if not view.tips and stage.top is None:
            board.keep_clear(_draw_ties(canvas, view, stage, shown, panel))
        # In front of a body that comes down beside them: what they show is to be seen.
        draw_cases(canvas, view, stage, lower)
        board.keep_clear([*case_boxes(view, stage).values(), *post_boxes(view, stage)])
        draw_balance(canvas, view, stage, panel, board)
    board.keep_clear(obstacles(shown, panel))
    name_reference(view, stage, board)
    name_held(view, panel, board)
    if not view.bench.moving or not view.tips:
        draw_names(canvas, shown, panel, board)


def _name_unit(view: ScalesView, stage: ScalesStage, board: LabelBoard) -> None:
    """The unit of the rule, beside it or over one of its ends."""
    look, sizes = view.look, view.look.sizes
    board.keep_clear([stage.rule])
    right, below = stage.rule.right, stage.rule.bottom + sizes.px(3)
    spots: list[Spot] = [
        ((right + sizes.px(6), stage.rule.center[1]), "left middle"),
        ((right, below), "right top"),
        ((right, stage.rule.y - sizes.px(3)), "right bottom"),
        ((stage.rule.x, stage.rule.y - sizes.px(3)), "left bottom"),
    ]
    board.place(view.readings.units.length_word, spots, size=sizes.text("small"), color=look.theme.soft)


def _name_face(view: ScalesView, panel: Panel, board: LabelBoard) -> None:
    look, sizes = view.look, view.look.sizes
    text = face_name(look, panel.face)
    if panel.face == "side" and view.tips:
        text = look.words.say("seen along the edge that it tips over")
    mirrored = sizes.mirrored
    anchor: Anchor = "right top" if mirrored else "left top"
    x = panel.frame.right - sizes.px(12) if mirrored else panel.frame.x + sizes.px(12)
    board.place(text, [((x, panel.frame.y + sizes.px(6)), anchor)], size=sizes.text("small"), color=look.theme.soft)


def _draw_top(canvas: Canvas, view: ScalesView, stage: ScalesStage, panel: Panel) -> None:
    look, sizes = view.look, view.look.sizes
    board = LabelBoard(canvas, panel.frame.inset(sizes.px(4), sizes.px(2)))
    _keep_plate_clear(canvas, view, panel, board)
    if stage.side is not None:
        y = panel.frame.y - sizes.px(7)
        canvas.line(((panel.frame.x, y), (panel.frame.right, y)), look.theme.hair, width=sizes.px(1.5))
    if stage.side is None:
        draw_reference(canvas, view, stage, board)
    shown = body_view(view, stage.body, "top", named=True)
    if view.tips:
        _draw_tipped_top(canvas, view, shown, panel)
    else:
        draw_body(canvas, shown, panel)
        board.keep_clear(_draw_ties(canvas, view, stage, shown, panel))
    draw_triangle(canvas, view, panel, board)
    draw_rings(canvas, view, stage, board)
    _name_face(view, panel, board)
    draw_balance(canvas, view, stage, panel, board)
    if not view.tips:
        draw_names(canvas, shown, panel, board)


def _draw_ties(canvas: Canvas, view: ScalesView, stage: ScalesStage, shown: BodyView, panel: Panel) -> list[Rect]:
    boxes = {thing.name: thing_box(shown, panel, thing) for thing in things_of(stage.body)}
    return draw_ties(canvas, view.look, {name: box.center for name, box in boxes.items() if box is not None})


def _draw_tipped_top(canvas: Canvas, view: ScalesView, shown: BodyView, panel: Panel) -> None:
    """From above while it tips: each thing at its own height, foreshortened as it turns."""
    for thing in sorted(things_of(shown.body), key=lambda one: (one.layer, one.at_m[2])):

        def to_px(place: Flat, thing: Thing = thing) -> Point:
            return panel.camera.at(*tipped_place_m(view, place, thing.at_m[2]))

        draw_thing(canvas, view.look, thing, "top", to_px, ground=view.look.theme.paper)


def _keep_plate_clear(canvas: Canvas, view: ScalesView, panel: Panel, board: LabelBoard) -> None:
    """No label where the place of what is being carried will stand."""
    found = place_plate(canvas, view, panel)
    if found is not None:
        board.keep_clear([found[0]])


def _draw_pointer_ghost(canvas: Canvas, view: ScalesView, stage: ScalesStage) -> None:
    """A weight on its way that is not over the body: at the pointer."""
    ghost = view.ghost
    if ghost is None or ghost.at_m is not None or ghost.pointer is None:
        return
    side = max(view.look.sizes.px(14), stage.camera.length_px(ghost.part.shape.extent_m[0]))
    x, y = ghost.pointer
    theme = view.look.theme
    box = Rect(x - side / 2, y - side / 2, side, side)
    canvas.box(
        box, fill=theme.brass, outline=theme.brass_edge, width=view.look.sizes.px(2), radius=view.look.sizes.px(3)
    )


def grab_bounds(view: ScalesView, rect: Rect) -> Mapping[str, Rect]:
    """What can be grabbed in the picture, by key: parts, scales, the reference line. Three scales: from above."""
    stage = stage_of(view, rect)
    target = view.look.sizes.target
    panel = stage.top or stage.side
    found: dict[str, Rect] = {}
    if panel is None:
        return found
    shown = body_view(view, stage.body, panel.face, named=False)
    names = {load.name: load_key(load.id) for load in view.bench.loads}
    for thing in things_of(stage.body):
        box = thing_box(shown, panel, thing)
        if box is not None and thing.name in names:
            found[names[thing.name]] = box.at_least(target, target).common(rect)
    scales = ring_boxes(view, stage) if stage.top is not None else case_boxes(view, stage)
    found |= {key: box.at_least(target, target) for key, box in scales.items()}
    knob = reference_knob(view, stage)
    if knob is not None:
        found[REFERENCE] = knob.at_least(target, target)
    return found
