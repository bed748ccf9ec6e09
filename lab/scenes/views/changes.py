"""What changes: a part's ghost with an arrow, lines drawn on the body, the sense in which it turns."""

from __future__ import annotations

from itertools import pairwise
from math import atan2, cos, hypot, pi, radians, sin

from lab.mechanics import Vector
from lab.scenes.labels import LabelBoard, Spot
from lab.scenes.views.paint import LEAST_PX, solid_px
from lab.scenes.views.projections import Face, flat_m
from lab.scenes.views.stage import Panel
from lab.scenes.views.things import Thing, part_thing, size_m
from lab.scenes.views.view import BodyView, GhostPart
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect, bounding

GHOST_DASH = (5.0, 4.0)
PENCIL_DASH = (7.0, 5.0)
ARC_FROM_RAD, ARC_SWEEP_RAD = radians(218.0), radians(104.0)
"""An arc below the body: from the lower left to the lower right."""


def ghost_thing(view: BodyView, ghost: GhostPart) -> Thing:
    """A ghost as a thing: drawn as large as the part itself would be."""
    heaviest = max((part.mass_kg for part in view.body.parts), default=ghost.part.mass_kg)
    return part_thing(
        ghost.part, ghost.look or view.body.looks.get(ghost.part.name, ""), size_m=size_m(view.body),
        share=min(1.0, ghost.part.mass_kg / heaviest),
    )  # fmt: skip


def ghost_rings_px(view: BodyView, panel: Panel, ghost: GhostPart) -> list[list[Point]]:
    """The outlines of a ghost in a face, in pixels."""
    thing = ghost_thing(view, ghost)
    dx, dy = flat_m(panel.face, thing.at_m) if thing.hung else (0.0, 0.0)
    least = view.look.sizes.px(LEAST_PX)
    return [
        solid_px([panel.flat_px((dx + x, dy + y)) for x, y in rings[0]], least) for rings in thing.patches[panel.face]
    ]


def draw_ghosts(canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """Each ghost in dashes, and an arrow where it goes or comes from."""
    theme, sizes = view.look.theme, view.look.sizes
    dash = tuple(sizes.px(length) for length in GHOST_DASH)
    for ghost in view.ghosts:
        for ring in ghost_rings_px(view, panel, ghost):
            canvas.polygon(ring, fill=f"{theme.held}40")
            canvas.line([*ring, ring[0]], theme.ink, width=sizes.px(2), dash=dash)
            board.keep_clear([bounding(ring)])
            _write_ghost(view, board, ghost, bounding(ring))
        here = ghost.part.at_m
        if ghost.to_m is not None:
            _draw_arrow(canvas, view, panel, board, here, ghost.to_m)
        if ghost.from_m is not None:
            _draw_arrow(canvas, view, panel, board, ghost.from_m, here)


def _write_ghost(view: BodyView, board: LabelBoard, ghost: GhostPart, box: Rect) -> None:
    if not ghost.text:
        return
    gap, size = view.look.sizes.px(6), view.look.sizes.text("small")
    x, y = box.center
    spots: list[Spot] = [((x, box.bottom + gap), "center top"), ((x, box.y - gap), "center bottom"),
                         ((box.right + gap, y), "left middle"), ((box.x - gap, y), "right middle")]  # fmt: skip
    if ghost.part.name in (part.name for part in view.body.parts):
        # The part itself is there too, and its name goes below it.
        spots.reverse()
    spots += [((x, box.bottom + gap + row * 1.32 * size), "center top") for row in range(1, 4)]
    board.place(ghost.text, spots, size=size, color=view.look.theme.ink, bold=True)


def _draw_arrow(
    canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard, start_m: Vector, end_m: Vector
) -> None:
    """A bow over the body from one place to another; nothing where they lie upon each other in this face."""
    theme, sizes = view.look.theme, view.look.sizes
    start, end = panel.px(start_m), panel.px(end_m)
    length = hypot(end[0] - start[0], end[1] - start[1])
    head = sizes.px(12)
    if length < 1.5 * head:
        return
    lift = min(0.32 * length, sizes.px(46))
    # Bent to the upper side, so that it does not run along the body.
    nx, ny = (end[1] - start[1]) / length, -(end[0] - start[0]) / length
    if ny > 0:
        nx, ny = -nx, -ny
    knee = ((start[0] + end[0]) / 2 + 2 * lift * nx, (start[1] + end[1]) / 2 + 2 * lift * ny)
    path = [_on_bow(start, knee, end, step / 20) for step in range(21)]
    way = atan2(end[1] - path[-3][1], end[0] - path[-3][0])
    back = (end[0] - head * cos(way), end[1] - head * sin(way))
    shaft = [*(point for point in path if hypot(point[0] - end[0], point[1] - end[1]) > head), back]
    canvas.line(shaft, theme.paper, width=sizes.px(7))
    canvas.line(shaft, theme.ink, width=sizes.px(3))
    half = 0.5 * head
    side = (half * sin(way), -half * cos(way))
    canvas.polygon(
        [end, (back[0] + side[0], back[1] + side[1]), (back[0] - side[0], back[1] - side[1])], fill=theme.ink
    )
    for first, second in pairwise(path):
        board.keep_clear([bounding((first, second), 3.0)])


def _on_bow(start: Point, knee: Point, end: Point, share: float) -> Point:
    back = 1.0 - share
    x, y = (back * back * start[axis] + 2.0 * back * share * knee[axis] + share * share * end[axis] for axis in (0, 1))
    return x, y


def draw_pencil(canvas: Canvas, view: BodyView, panel: Panel) -> None:
    """Lines drawn on the body; they turn with it."""
    sizes, color = view.look.sizes, view.look.theme.ink
    dash = tuple(sizes.px(length) for length in PENCIL_DASH)
    for first, second in view.pencil:
        canvas.line((panel.px(first), panel.px(second)), color, width=max(1.0, sizes.px(2)), dash=dash)


def draw_turning(canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """An arc below the body with a head in the colour of its sense, and its words."""
    turning = view.turning
    if turning is None or turning.face != panel.face:
        return
    look, row = view.look, panel.row("turning")
    sizes, left = look.sizes, turning.sense == "clockwise"
    color = look.theme.clockwise if left else look.theme.anticlockwise
    size = sizes.text("body")
    foot = row.bottom - (1.4 * size if turning.text else 0.0) - sizes.px(4)
    x = panel.flat_px(((panel.bounds_m[0] + panel.bounds_m[2]) / 2, panel.bounds_m[1]))[0]
    if panel.face == "front" and view.symmetry:
        x = panel.camera.x_px(0.0)
    radius = min(sizes.px(92), 0.3 * panel.frame.w)
    center, head = (x, foot - radius), sizes.px(15)
    # Below the body what turns clockwise goes to the left.
    trim = head / radius
    start = ARC_FROM_RAD + (trim if left else 0.0)
    canvas.arc(center, radius, start, ARC_SWEEP_RAD - trim, color, width=sizes.px(4))
    tip = ARC_FROM_RAD if left else ARC_FROM_RAD + ARC_SWEEP_RAD
    base = tip + trim if left else tip - trim
    canvas.polygon(
        [_around(center, radius, tip), _around(center, radius + 0.55 * head, base),
         _around(center, radius - 0.55 * head, base)], fill=color,
    )  # fmt: skip
    reach = radius * cos(pi / 2 - ARC_SWEEP_RAD / 2)
    board.keep_clear([Rect(x - reach, foot - 0.45 * radius, 2 * reach, 0.45 * radius + sizes.px(3))])
    if turning.text:
        y = foot + sizes.px(8)
        spots: list[Spot] = [((x, y), "center top"), ((panel.frame.x + 6, y), "left top"),
                             ((panel.frame.right - 6, y), "right top")]  # fmt: skip
        usual = (size, sizes.text("small"))
        board.place_one_of((turning.text,), spots, sizes=usual, color=look.theme.ink)


def _around(center: Point, radius: float, angle_rad: float) -> Point:
    return center[0] + radius * cos(angle_rad), center[1] - radius * sin(angle_rad)


def label_face(view: BodyView, at_m: Vector) -> Face:
    """In which face what lies at a place is named: beside the plane of symmetry from above, else in the first one."""
    off = abs(at_m[1]) > 0.02 * size_m(view.body)
    return "top" if off and "top" in view.faces else view.faces[0]
