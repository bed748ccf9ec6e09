"""The whole picture of a body on scales, and what in it can be grabbed."""

from __future__ import annotations

from collections.abc import Mapping

from lab.scenes.boxwood import draw_boxwood
from lab.scenes.labels import LabelBoard, Spot
from lab.scenes.marks import DASH_DOT, draw_quartered
from lab.scenes.scales.stage import ScalesStage, stage_of, tipped_place_m
from lab.scenes.scales.standing import case_boxes, draw_cases, draw_rings, post_boxes, ring_boxes
from lab.scenes.scales.view import REFERENCE, ScalesView, load_key
from lab.scenes.views.body import Body
from lab.scenes.views.naming import draw_names, thing_box
from lab.scenes.views.paint import draw_thing
from lab.scenes.views.place_marks import DASHED
from lab.scenes.views.projections import Face, Flat
from lab.scenes.views.scene import draw_body, face_name
from lab.scenes.views.stage import Panel
from lab.scenes.views.things import Thing, things_of
from lab.scenes.views.view import BodyView
from lab.ui.canvas import Anchor, Canvas
from lab.ui.geometry import Point, Rect

MARK_PX, KNOB_PX = 11.0, 24.0


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
    table = Rect(frame.x, stage.floor_y, frame.w, frame.bottom - stage.floor_y)
    canvas.box(table, fill=theme.wash)
    canvas.line(((frame.x, stage.floor_y), (frame.right, stage.floor_y)), theme.edge, width=sizes.px(2))
    if view.three:
        _name_face(canvas, view, stage, panel, board)
    _draw_reference(canvas, view, stage, board)
    _draw_cords(canvas, view, panel, board)
    draw_cases(canvas, view, stage, lower)
    board.keep_clear(case_boxes(view, stage).values())
    board.keep_clear(post_boxes(view, stage))
    if not (view.three and view.tips):
        along = view.bench.reach_m[0]
        draw_boxwood(canvas, look, stage.rule, view.readings.units, x_px=panel.camera.x_px, span_m=along)
        lower.keep_clear([stage.rule])
        right, below = stage.rule.right, stage.rule.bottom + sizes.px(3)
        spots: list[Spot] = [
            ((right + sizes.px(6), stage.rule.center[1]), "left middle"),
            ((right, below), "right top"),
            ((right, stage.rule.y - sizes.px(3)), "right bottom"),
            ((stage.rule.x, stage.rule.y - sizes.px(3)), "left bottom"),
        ]
        lower.place(view.readings.units.length_word, spots, size=sizes.text("small"), color=theme.soft)
    shown = body_view(view, stage.side_body, "side", named=stage.top is None)
    with canvas.clipped(frame):
        draw_body(canvas, shown, panel)
        _draw_balance(canvas, view, stage, panel, board)
    if not view.bench.moving or not view.tips:
        draw_names(canvas, shown, panel, board)


def _name_face(canvas: Canvas, view: ScalesView, stage: ScalesStage, panel: Panel, board: LabelBoard) -> None:
    look, sizes = view.look, view.look.sizes
    text = face_name(look, panel.face)
    if panel.face == "side" and view.tips:
        text = look.words.say("seen along the edge that it tips over")
    mirrored = sizes.mirrored
    anchor: Anchor = "right top" if mirrored else "left top"
    x = panel.frame.right - sizes.px(12) if mirrored else panel.frame.x + sizes.px(12)
    board.place(text, [((x, panel.frame.y + sizes.px(6)), anchor)], size=sizes.text("small"), color=look.theme.soft)


def _draw_cords(canvas: Canvas, view: ScalesView, panel: Panel, board: LabelBoard) -> None:
    """Held: two cords from above, a yellow knob at each end of the body."""
    if not view.bench.held:
        return
    theme, sizes = view.look.theme, view.look.sizes
    radius = sizes.px(9)
    left, right = view.bench.carrier_m
    y = panel.px((left, 0.0, view.bench.top_m))[1]
    inset = 0.02 * (right - left)
    for at_m in (left + inset, right - inset):
        x = panel.camera.x_px(at_m)
        canvas.line(((x, panel.frame.y), (x, y - radius)), theme.ink, width=sizes.px(3))
        canvas.circle((x, y - radius + sizes.px(2)), radius, fill=theme.held, outline=theme.ink, width=sizes.stroke)
        board.keep_clear([Rect(x - radius, panel.frame.y, 2 * radius, y - panel.frame.y)])
    x = panel.camera.x_px(right - inset)
    spots: list[Spot] = [
        ((x - sizes.px(14), y - sizes.px(26)), "right middle"),
        ((x - sizes.px(14), panel.frame.y + sizes.px(22)), "right middle"),
        ((x + sizes.px(14), panel.frame.y + sizes.px(22)), "left middle"),
    ]
    board.place(view.look.words.say("held"), spots, size=sizes.text("small"), color=theme.soft)


def reference_knob(view: ScalesView, stage: ScalesStage) -> Rect | None:
    """The knob by which the reference line is dragged; None where there is no line."""
    panel = stage.side or stage.top
    if not view.told or panel is None or (view.three and view.tips):
        return None
    side = view.look.sizes.px(KNOB_PX)
    x, y = panel.camera.x_px(view.bench.reference_m), panel.frame.y + view.look.sizes.px(26)
    return Rect(x - side / 2, y, side, side)


def _draw_reference(canvas: Canvas, view: ScalesView, stage: ScalesStage, board: LabelBoard) -> None:
    """A chain line down to the rule, and a knob on it with an arrow to either side."""
    knob = reference_knob(view, stage)
    if knob is None:
        return
    theme, sizes = view.look.theme, view.look.sizes
    x, y = knob.center
    foot = stage.rule.y if stage.side is not None else stage.frame.bottom
    dash = tuple(sizes.px(length) for length in DASH_DOT)
    canvas.line(((x, knob.y), (x, foot)), theme.ink, width=sizes.px(2), dash=dash)
    picked = view.picked == REFERENCE
    radius = knob.w / 2
    canvas.circle((x, y), radius, fill=theme.ink if picked else theme.panel, outline=theme.ink, width=sizes.stroke)
    color = theme.panel if picked else theme.ink
    tip, back, half = radius * 0.62, radius * 0.16, radius * 0.34
    for side in (-1, 1):
        canvas.polygon([(x + side * tip, y), (x + side * back, y - half), (x + side * back, y + half)], fill=color)
    board.keep_clear([knob.grown(sizes.px(4)), Rect(x - 2, knob.y, 4, foot - knob.y)])
    gap = sizes.px(6)
    spots: list[Spot] = [((knob.right + gap, y), "left middle"), ((knob.x - gap, y), "right middle")]
    board.place(view.look.words.say("reference line"), spots, size=sizes.text("small"), color=theme.soft)


def _draw_balance(canvas: Canvas, view: ScalesView, stage: ScalesStage, panel: Panel, board: LabelBoard) -> None:
    """The balance point, and while the body lies level a line from it down to the rule."""
    if not view.told:
        return
    look, sizes = view.look, view.look.sizes
    balance = view.bench.sum.balance_point_m
    if panel.face == "top":
        along, across = tipped_place_m(view, (balance[0], balance[1]), balance[2])
        at = panel.camera.at(along, across)
    elif view.three and view.tips:
        at = panel.flat_px(panel.hook_m)
    else:
        at = panel.px(balance)
    radius = sizes.px(MARK_PX)
    level = not view.tips
    if panel.face == "side" and level:
        foot = stage.rule.y
        dash = tuple(sizes.px(length) for length in DASHED)
        canvas.line(((at[0], at[1]), (at[0], foot)), look.theme.settled, width=sizes.px(2), dash=dash)
        board.keep_clear([Rect(at[0] - 1, at[1], 2, foot - at[1])])
    draw_quartered(canvas, look, at, radius, panel.angle_rad)
    board.keep_clear([Rect(at[0] - radius, at[1] - radius, 2 * radius, 2 * radius)])
    if not level or (panel.face == "side" and stage.top is not None):
        return
    place = view.readings.length_with_unit(balance[0])
    text = look.words.say("balances at {place}", place=place)
    gap, y = sizes.px(8), (at[1] + stage.floor_y) / 2 if panel.face == "side" else at[1]
    spots: list[Spot] = []
    for step in range(6):
        for sense in (1, -1):
            level_y = y + sense * step * 0.7 * sizes.text("small")
            spots += [
                ((at[0] + gap + radius, level_y), "left middle"),
                ((at[0] - gap - radius, level_y), "right middle"),
            ]
    size = sizes.text("small")
    board.place_one_of((text, place), spots, sizes=(size,), color=look.theme.settled, bold=True)


def _draw_top(canvas: Canvas, view: ScalesView, stage: ScalesStage, panel: Panel) -> None:
    look, sizes = view.look, view.look.sizes
    board = LabelBoard(canvas, panel.frame.inset(sizes.px(4), sizes.px(2)))
    if stage.side is not None:
        y = panel.frame.y - sizes.px(7)
        canvas.line(((panel.frame.x, y), (panel.frame.right, y)), look.theme.hair, width=sizes.px(1.5))
    _name_face(canvas, view, stage, panel, board)
    if stage.side is None:
        _draw_reference(canvas, view, stage, board)
    shown = body_view(view, stage.body, "top", named=True)
    if view.tips:
        _draw_tipped_top(canvas, view, shown, panel)
    else:
        draw_body(canvas, shown, panel)
    _draw_triangle(canvas, view, panel)
    draw_rings(canvas, view, stage, board)
    _draw_balance(canvas, view, stage, panel, board)
    if not view.tips:
        draw_names(canvas, shown, panel, board)


def _draw_triangle(canvas: Canvas, view: ScalesView, panel: Panel) -> None:
    """The lines from scale to scale: inside them it stands. The one that it tips over is strong, with an arrow."""
    points = [panel.camera.at(*scale.at_m[:2]) for scale in view.bench.scales]
    theme, sizes = view.look.theme, view.look.sizes
    dash = tuple(sizes.px(length) for length in DASHED)
    canvas.line([*points, points[0]], theme.ink, width=sizes.px(1.5), dash=dash)
    tipping = view.bench.tipping
    if tipping is None:
        return
    kept = [point for point, share in zip(points, tipping.bears, strict=True) if share]
    if len(kept) == 2:
        canvas.line(kept, theme.clockwise, width=sizes.px(4))
    foot = (
        sum(share * point[0] for point, share in zip(points, tipping.bears, strict=True)),
        sum(share * point[1] for point, share in zip(points, tipping.bears, strict=True)),
    )
    (dx, dy), long, head = (tipping.way[0], -tipping.way[1]), sizes.px(84), sizes.px(11)
    tip = (foot[0] + long * dx, foot[1] + long * dy)
    neck = (tip[0] - head * dx, tip[1] - head * dy)
    canvas.line([foot, neck], theme.clockwise, width=sizes.px(4))
    barbs = [
        (neck[0] - 0.6 * head * dy, neck[1] + 0.6 * head * dx),
        (neck[0] + 0.6 * head * dy, neck[1] - 0.6 * head * dx),
    ]
    canvas.polygon([tip, *barbs], fill=theme.clockwise)


def _draw_tipped_top(canvas: Canvas, view: ScalesView, shown: BodyView, panel: Panel) -> None:
    """From above while it tips: each thing at its own height, foreshortened as it turns."""
    for thing in sorted(things_of(shown.body), key=lambda one: (one.layer, one.at_m[2])):

        def to_px(place: Flat, thing: Thing = thing) -> Point:
            return panel.camera.at(*tipped_place_m(view, place, thing.at_m[2]))

        draw_thing(canvas, view.look, thing, "top", to_px, ground=view.look.theme.paper)


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
