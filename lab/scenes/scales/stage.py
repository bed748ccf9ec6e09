"""Where the things of a body on scales lie in a rectangle: seen from its side, and with three scales from above."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from math import atan2

from lab.mechanics import Group, Part, bounds_m, flattened
from lab.scenes.camera import Camera, turned_m
from lab.scenes.scales.view import Moment, ScalesView, body_on_scales
from lab.scenes.views.body import Body
from lab.scenes.views.margins import Margins
from lab.scenes.views.projections import Face, Flat, flat_m
from lab.scenes.views.stage import Panel
from lab.simulation.benches.scales import LIFT_SHARE, LYING, ScalesBench
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look

SIDE_PX, ABOVE_PX, HEAD_PX, GAP_PX = 40.0, 58.0, 26.0, 14.0
"""Kept free beside the body, over it in the side view, for a panel's name, and between the two panels."""
STRIP_TEXT, STRIP_FROM_PX = 1.2, 380.0
"""With larger letters, or in a lower picture, the strip lies elsewhere or upon the table."""
TAG_PX = 46.0
"""From above: kept free round the body for the windows of its scales."""
RISE_SHARE = 0.28
"""Of the body's size: how far over its level the picture lets an end rise, where there is height enough."""
LEAST_PX = 130.0
"""A body that would be drawn shorter than this is seen from above alone."""
PLAIN = Margins(above=(), below=(), left=0.0, right=0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class ScalesStage:
    """Where everything lies.

    side: the body from its side, None where there is no room beside the view from above.  top: from above; None on
    two scales.  scales_m: where each scale stands in the side view, to the right.  floor_y: of the table in it.
    rule: where a rule lies on the table's edge.
    """

    frame: Rect
    side: Panel | None
    top: Panel | None
    body: Body
    side_body: Body
    scales_m: tuple[float, ...]
    floor_y: float
    rule: Rect

    @property
    def camera(self) -> Camera:
        """The one that shows places along as they are."""
        panel = self.top or self.side
        if panel is None:
            raise ValueError("a stage shows the body from one side at least")
        return panel.camera


def stage_of(view: ScalesView, frame: Rect) -> ScalesStage:
    """The stage for a body on scales, with the body where it is at this moment."""
    foot_px = max(view.foot_px, strip_px(view.look, frame))
    fixed = _fixed(_still(view.bench), frame.cut_bottom(foot_px)[1], view.look)
    body = body_on_scales(view.bench, view.ghost)
    stage = replace(fixed, frame=frame, body=body, side_body=body)
    if stage.side is None or view.bench.held or not view.tips:
        return _lifted(stage, view.moment)
    return _tipped(stage, view)


def strip_px(look: Look, frame: Rect) -> float:
    """Kept free at the lower edge for the strip of what is picked, so that nothing moves when it comes and goes."""
    sizes = look.sizes
    return sizes.target + sizes.px(30) if sizes.text_scale <= STRIP_TEXT and frame.h > sizes.px(STRIP_FROM_PX) else 0.0


def _still(bench: ScalesBench) -> ScalesBench:
    """The same, without what changes from tick to tick and moves nothing of the stage."""
    return replace(
        bench, held=True, raised=1.0, given=0.0, tipping=None, motion=LYING, pressed_kg=0.0, guess=None, guessed_kg=None
    )


@lru_cache(maxsize=16)
def _fixed(bench: ScalesBench, frame: Rect, look: Look) -> ScalesStage:
    body = body_on_scales(bench)
    side, top = box_m(bench, "side"), box_m(bench, "top")
    if len(bench.scales) == 3:
        return _of_two_panels(bench, body, frame, look, side, top)
    sizes = look.sizes
    foot = _foot_px(look)
    wide = (frame.w - 2 * sizes.px(SIDE_PX)) / (side[2] - side[0])
    high = frame.h - sizes.px(ABOVE_PX) - foot
    scale = min(wide, max(high, 1.0) / (side[3] - side[1]))
    camera = _camera(frame, side, scale)
    rise = min(RISE_SHARE * bench.size_m * scale, frame.h - foot - scale * (side[3] - side[1]) - sizes.px(ABOVE_PX))
    spare = frame.h - foot - scale * (side[3] - side[1]) - sizes.px(ABOVE_PX) - rise
    floor_y = frame.bottom - foot - max(0.0, spare) / 2
    camera = replace(camera, origin=(camera.origin[0], floor_y + side[1] * scale))
    panel = _panel("side", frame, camera, side)
    return _stage(bench, body, frame, look, panel, None)


def _of_two_panels(
    bench: ScalesBench, body: Body, frame: Rect, look: Look, side: Sequence[float], top: Sequence[float]
) -> ScalesStage:
    """The side above, the view from above below it, both to one scale and one right under the other."""
    sizes = look.sizes
    tags, foot = sizes.px(TAG_PX), _foot_px(look)
    head = sizes.text("small") + sizes.px(12)
    wide = (frame.w - 2 * sizes.px(SIDE_PX + 60)) / (side[2] - side[0])
    fixed = 2 * head + sizes.px(ABOVE_PX - HEAD_PX) + foot + sizes.px(GAP_PX) + 2 * tags
    both = min(wide, max(frame.h - fixed, 1.0) / (side[3] - side[1] + top[3] - top[1]))
    if both * (top[2] - top[0]) < sizes.px(LEAST_PX):
        room = frame.h - head - 2 * tags
        scale = min(wide, max(room, 1.0) / (top[3] - top[1]))
        panel = _panel("top", frame, _camera(frame.cut_top(head)[1], top, scale), top)
        return _stage(bench, body, frame, look, None, panel)
    high = 2 * tags + head + both * (top[3] - top[1])
    spare = max(0.0, frame.h - fixed - both * (side[3] - side[1] + top[3] - top[1])) / 2
    lower = Rect(frame.x, frame.bottom - high - spare / 2, frame.w, high + spare / 2)
    upper = Rect(frame.x, frame.y, frame.w, lower.y - sizes.px(GAP_PX) - frame.y)
    under = _camera(lower.cut_top(head)[1], top, both)
    floor_y = upper.bottom - foot
    over = Camera(px_per_m=both, origin=(under.origin[0], floor_y + side[1] * both))
    return _stage(bench, body, frame, look, _panel("side", upper, over, side), _panel("top", lower, under, top))


def _foot_px(look: Look) -> float:
    """Under the table's upper edge: the names of the scales, and a rule."""
    return 1.4 * look.sizes.text("small") + rule_px(look) + look.sizes.px(16)


def rule_px(look: Look) -> float:
    """How high the rule is."""
    return float(round(look.sizes.text("small") * 1.32 + look.sizes.px(16)))


def _camera(frame: Rect, box: Sequence[float], scale: float) -> Camera:
    """What lies in a box, in the middle of a frame."""
    middle = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
    return Camera(px_per_m=scale, origin=(frame.center[0] - scale * middle[0], frame.center[1] + scale * middle[1]))


def _panel(face: Face, frame: Rect, camera: Camera, box: Sequence[float]) -> Panel:
    top, bottom = camera.y_px(box[3]), camera.y_px(box[1])
    return Panel(
        face=face, frame=frame, camera=camera, margins=PLAIN, bounds_m=(box[0], box[1], box[2], box[3]),
        reach_px=(top, bottom),
    )  # fmt: skip


def _stage(
    bench: ScalesBench, body: Body, frame: Rect, look: Look, side: Panel | None, top: Panel | None
) -> ScalesStage:
    panel = side or top
    floor_y = frame.bottom if side is None else side.camera.y_px(bench.floor_m)
    along, _ = bench.reach_m
    over = look.sizes.px(14) + look.sizes.text("small")
    x, right = (0.0, 0.0) if panel is None else (panel.camera.x_px(along[0]) - over, panel.camera.x_px(along[1]) + over)
    y = floor_y + 1.4 * look.sizes.text("small") + look.sizes.px(12)
    left = max(x, frame.x + 4)
    return ScalesStage(
        frame=frame,
        side=side,
        top=top,
        body=body,
        side_body=body,
        scales_m=tuple(scale.at_m[0] for scale in bench.scales),
        floor_y=floor_y,
        rule=Rect(left, y, min(right, frame.right - 4) - left, rule_px(look)),
    )


def box_m(bench: ScalesBench, face: Face) -> tuple[float, float, float, float]:
    """What the picture must hold in a face: the body held over its scales, and the table under them."""
    boxes = [box for part in bench.parts for box in _ends(face, part)]
    boxes += [flat_m(face, scale.at_m) for scale in bench.scales] if face == "top" else []
    (low, high), _ = bench.reach_m
    rights, ups = [each[0] for each in boxes], [each[1] for each in boxes]
    if face == "side":
        rights += [low, high]
        ups += [bench.floor_m, bench.underside_m, bench.top_m + LIFT_SHARE * bench.size_m]
    return min(rights), min(ups), max(rights), max(ups)


def _ends(face: Face, part: Part) -> Iterable[Flat]:
    """Two corners of the box that a part fills in a face."""
    for corner in bounds_m(part.shape):
        at_m = part.at_m
        yield flat_m(face, (at_m[0] + corner[0], at_m[1] + corner[1], at_m[2] + corner[2]))


def _lifted(stage: ScalesStage, moment: Moment) -> ScalesStage:
    """With the body so far over its scales as it is held."""
    if stage.side is None or not moment.raised_m:
        return stage
    up: Point = (0.0, -stage.side.camera.length_px(moment.raised_m))
    return replace(stage, side=replace(stage.side, moved_px=up))


def _tipped(stage: ScalesStage, view: ScalesView) -> ScalesStage:
    """With the body turned as far as it has come; of three scales, seen along the edge that it tips over."""
    tipping, motion, side = view.bench.tipping, view.moment.motion, stage.side
    if tipping is None or side is None:
        return stage
    sense = -1.0 if tipping.way[0] < 0.0 else 1.0
    way = (sense * tipping.way[0], sense * tipping.way[1])
    cg = (sense * tipping.body.cg_m[0], tipping.body.cg_m[1])
    camera, body, scales_m = side.camera, stage.body, stage.scales_m
    if view.three:
        body = seen_along_edge(body, way)
        rights = [place[0] for part in body.parts for place in _ends("side", part)]
        middle = side.frame.center[0] - camera.px_per_m * (min(rights) + max(rights)) / 2
        camera = replace(camera, origin=(middle, camera.origin[1]))
        scales_m = tuple(way[0] * scale.at_m[0] + way[1] * scale.at_m[1] for scale in view.bench.scales)
    moved = (camera.length_px(sense * motion.x_m), -camera.length_px(motion.z_m))
    panel = replace(side, camera=camera, hook_m=cg, angle_rad=sense * motion.angle_rad, moved_px=moved)
    return replace(stage, side=panel, side_body=body, scales_m=scales_m)


def seen_along_edge(body: Body, way: tuple[float, float]) -> Body:
    """The body turned about the upright, so that a level direction lies to the right from its side."""
    turned = flattened([Group(name="seen", members=body.parts, turn_rad=(0.0, 0.0, atan2(way[1], way[0])))])
    names = [part.name for part in body.parts]
    return replace(body, parts=tuple(replace(part, name=name) for part, name in zip(turned, names, strict=True)))


def tipped_place_m(view: ScalesView, place_m: Flat, up_m: float) -> Flat:
    """Where a place along and across of a body that tips is now, seen from above.  up_m: how high it was."""
    tipping, motion = view.bench.tipping, view.moment.motion
    if tipping is None:
        return place_m
    way, cg = tipping.way, tipping.body.cg_m
    ahead = way[0] * place_m[0] + way[1] * place_m[1]
    aside = -way[1] * place_m[0] + way[0] * place_m[1]
    now = turned_m((ahead, up_m), cg, motion.angle_rad)[0] + motion.x_m
    return now * way[0] - aside * way[1], now * way[1] + aside * way[0]
