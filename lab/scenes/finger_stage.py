"""Where the fixed things lie in a picture of a tool on a finger, and what the picture is made from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import asin, radians
from typing import Literal

from lab.scenes.camera import Camera, turned_m
from lab.scenes.finger_parts import PartOutline, part_outlines
from lab.scenes.readings import Readings
from lab.simulation.benches.finger import FingerTool
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look
from lab.ui.metrics import text_width

Moment = Literal["held", "moving", "explained"]

TIP_RAD = radians(13.0)
"""How far an explained tool is shown tipped: plainly, and yet its parts can be read."""

END_DROP, CORD_DROP = 0.13, 0.05
"""How far an end, or a weight on a cord, comes down in that, as a share of the tool's length."""

AT_ZERO_M = 1e-9
"""A reference line nearer to the zero of the rule than this, a nanometre, is that zero and needs no line."""

TOOL_SHARE = 0.78
"""Of the picture's width; the rest is room for the tool to fall past its own end."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FingerView:
    """A moment of a tool on a finger as it is to be drawn.

    moment: held by its cords; let go and moving; or explained, as it was when it began to tip.
    previous, fraction: for drawing between two ticks.  told_m: the learner's place, None for no mark of it.
    picked: whether the finger is being dragged.  chosen: whether a place has been chosen yet.
    goes: which end drops, for the arrow.  covered_px: how much of the picture's top lies under something else.
    laid_for: the tool that the picture is laid out for, where it is shown with one thing changed; None for the tool.
    """

    tool: FingerTool
    look: Look
    readings: Readings
    moment: Moment
    previous: FingerTool | None = None
    fraction: float = 1.0
    told_m: float | None = None
    picked: bool = False
    chosen: bool = True
    goes: Literal["left", "right", "level"] = "level"
    covered_px: float = 0.0
    laid_for: FingerTool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class FingerStage:
    """Where things lie.

    camera: along and up.  outlines: the tool's parts.  line_y: the line that it is held from.
    rule: the wooden rule on which the finger's carriage slides.  carriage_h: of the finger's foot.
    ground_y: the floor.  bounds_m: left, bottom, right, top of what is drawn of the tool.
    balance_m: the balance point of the tool as it lay, along and up.
    """

    frame: Rect
    camera: Camera
    outlines: tuple[PartOutline, ...]
    line_y: float
    rule: Rect
    carriage_h: float
    ground_y: float
    bounds_m: tuple[float, float, float, float]
    balance_m: tuple[float, float]

    def pad_rect(self, tool: FingerTool) -> Rect:
        """The pad on the finger: as wide as what counts."""
        x, y = self.camera.at(tool.finger_at_m, tool.underside_m)
        half = max(2.0, self.camera.length_px(tool.pad_half_m))
        return Rect(x - half, y, 2 * half, max(4.0, self.carriage_h * 0.16))

    def finger_rect(self, tool: FingerTool, look: Look) -> Rect:
        """The finger from its pad down to its carriage."""
        pad = self.pad_rect(tool)
        wide = max(look.sizes.px(26), pad.w * 0.6)
        top = pad.bottom
        return Rect(pad.center[0] - wide / 2, top, wide, self.rule.y - self.carriage_h - top)


def pose_of(view: FingerView) -> tuple[float, float, float]:
    """How the tool lies now: its angle, and how far its balance point is from where it lay (along, up)."""
    tool = view.tool
    if view.moment == "held":
        return 0.0, 0.0, 0.0
    if view.moment == "explained":
        return _tipped(view)
    now, before = tool.motion, (view.previous or tool).motion
    part = view.fraction if view.previous is not None and not view.previous.held else 1.0
    return (
        before.angle_rad + part * (now.angle_rad - before.angle_rad),
        before.x_m + part * (now.x_m - before.x_m),
        before.z_m + part * (now.z_m - before.z_m),
    )


def balance_m(tool: FingerTool) -> tuple[float, float]:
    """The tool's balance point, along and up, as it lay."""
    along, _, up = tool.sum.balance_point_m
    return along, up


def _tipped(view: FingerView) -> tuple[float, float, float]:
    if view.goes == "level":
        return 0.0, 0.0, 0.0
    tool = view.tool
    sense = 1.0 if view.goes == "left" else -1.0
    edge = (tool.finger_at_m - sense * tool.pad_half_m, tool.underside_m)
    arm_m = edge[0] - tool.left_m if sense > 0 else tool.right_m - edge[0]
    span_m = tool.right_m - tool.left_m
    # A long arm is tipped less, so that its end stays above the rule; so is a weight on a cord.
    angle = min(TIP_RAD, _reaching(END_DROP * span_m, arm_m))
    for part in tool.parts:
        if part.hold == "hung":
            angle = min(angle, _reaching(CORD_DROP * span_m, sense * (edge[0] - part.at_m[0])))
    angle *= sense
    balance = balance_m(tool)
    now = turned_m(balance, edge, angle)
    return angle, now[0] - balance[0], now[1] - balance[1]


def _reaching(drop_m: float, arm_m: float) -> float:
    """The angle at which an arm's end is so much lower."""
    return asin(min(1.0, drop_m / arm_m)) if arm_m > 0 else TIP_RAD


def body_place_px(view: FingerView, stage: FingerStage, place_m: tuple[float, float]) -> Point:
    """Where a place of the tool is now, in pixels."""
    angle, dx, dz = pose_of(view)
    along, up = turned_m(place_m, stage.balance_m, angle)
    return stage.camera.at(along + dx, up + dz)


def finger_stage(view: FingerView, frame: Rect) -> FingerStage:
    """The stage for a tool in a rectangle: as large as fits, with room above to be held and below to fall."""
    tool, sizes = view.laid_for or view.tool, view.look.sizes
    outlines = part_outlines(view.tool)
    bounds = _bounds_m(tool, part_outlines(tool))
    left, bottom, right, top = bounds
    small = sizes.text("small")
    above = small * 1.5 + sizes.px(18) + sizes.px(56)
    drop_m = bottom - min(tool.floor_m, bottom)
    room = max(frame.h - above - sizes.px(20), 1.0)
    # Beyond the tool there is the rule's own end, and beside that the word of its unit.
    beyond = max(sizes.px(20), small * 0.9 + sizes.px(8))
    word = small * 1.4 + sizes.px(14)
    by_width = min(TOOL_SHARE * frame.w, max(frame.w - 2 * (beyond + word), 1.0)) / (right - left)
    span = span_m(tool)
    far_left, far_right = min(left, span[0]), max(right, span[1])
    # A reference line off the tool is in the picture, too.
    by_width = min(by_width, max(frame.w - 2 * (beyond + word), 1.0) / (far_right - far_left))
    px_per_m = min(by_width, room / (top - bottom + drop_m))
    spare = max(0.0, room - px_per_m * (top - bottom + drop_m))
    line_y = frame.y + small * 1.5 + sizes.px(18) + spare * 0.3
    # The cords may be longer where there is room, but a tool far below its line looks lost.
    top_y = line_y + sizes.px(56) + min(spare * 0.35, sizes.px(70))
    origin = (frame.center[0] - (far_left + far_right) / 2 * px_per_m, top_y + top * px_per_m)
    camera = Camera(px_per_m=px_per_m, origin=origin)
    if view.moment == "moving":
        reach_px = (camera.x_px(far_left) - beyond, camera.x_px(far_right) + beyond + word)
        camera = _following(view, camera, frame, floor_m=bottom - drop_m, reach_px=reach_px)
    ground_y = camera.y_px(bottom - drop_m)
    carriage_h = max(sizes.px(34), round(sizes.text("body") * 1.25))
    rule = _rule(view, camera, bottom, ground_y - sizes.px(6), carriage_h=carriage_h, beyond=beyond)
    return FingerStage(
        frame=frame, camera=camera, outlines=outlines, line_y=line_y, rule=rule,
        carriage_h=carriage_h, ground_y=ground_y, bounds_m=_bounds_m(view.tool, outlines),
        balance_m=balance_m(view.tool),
    )  # fmt: skip


def _following(
    view: FingerView, camera: Camera, frame: Rect, *, floor_m: float, reach_px: tuple[float, float]
) -> Camera:
    """The same camera, lowered and then drawn back just as far as it takes to keep what falls in sight.

    It follows from how the tool lies now alone, so it is as steady as the fall.  reach_px: what lies still, from left
    to right.
    """
    tool, edge = view.tool, view.look.sizes.px(8)
    angle, dx, dz = pose_of(view)
    lies = [turned_m(place, balance_m(tool), angle) for place in _corners_m(part_outlines(tool))]
    left_m, right_m = min(along for along, _ in lies) + dx, max(along for along, _ in lies) + dx
    low, high = min(camera.x_px(left_m), reach_px[0]), max(camera.x_px(right_m), reach_px[1])
    up_px = camera.length_px(max(up for _, up in lies) + dz - floor_m)
    across, room = frame.w - 2 * edge, frame.h - edge - view.look.sizes.px(20)
    share = min(1.0, max(across, 1.0) / (high - low), max(room, 1.0) / up_px)
    centre = frame.center[0]
    low, high = centre + share * (low - centre), centre + share * (high - centre)
    aside = max(frame.x + edge - low, 0.0) + min(frame.right - edge - high, 0.0)
    # The floor stays where it is until something would stick out above.
    floor_y = max(camera.y_px(floor_m), frame.y + edge + share * up_px)
    px_per_m = share * camera.px_per_m
    x = centre + share * (camera.origin[0] - centre) + aside
    return Camera(px_per_m=px_per_m, origin=(x, floor_y + floor_m * px_per_m))


def _corners_m(outlines: tuple[PartOutline, ...]) -> list[tuple[float, float]]:
    """The corners of all that is stiff, as it lay, and where weights hang from it."""
    stiff = [outline for outline in outlines if outline.hook_m is None]
    corners = [(x, z) for one in stiff for x in (one.left_m, one.right_m) for z in (one.bottom_m, one.top_m)]
    return corners + [outline.hook_m for outline in outlines if outline.hook_m is not None]


def _rule(
    view: FingerView, camera: Camera, bottom_m: float, lowest: float, *, carriage_h: float, beyond: float
) -> Rect:
    """The rule under the tool: a finger's length and the carriage below it, but clear of what hangs there."""
    tool, sizes = view.laid_for or view.tool, view.look.sizes
    high = round(sizes.text("small") * 1.32 + sizes.px(16))
    wanted = camera.y_px(tool.underside_m) + sizes.px(74) + carriage_h
    y = min(max(wanted, camera.y_px(bottom_m) + sizes.px(10) + carriage_h), lowest - high)
    first_m, last_m = span_m(tool)
    x = camera.x_px(first_m) - beyond
    return Rect(x, y, camera.x_px(last_m) + beyond - x, high)


def line_m(tool: FingerTool) -> float | None:
    """Where the reference line is drawn, along; None where it is the zero of the rule."""
    return tool.reference_m if abs(tool.reference_m) > AT_ZERO_M else None


def span_m(tool: FingerTool) -> tuple[float, float]:
    """The first and the last place of the rule: the tool's, and the reference line's where that lies off the tool."""
    places = [tool.left_m, tool.right_m]
    line = line_m(tool)
    places += [] if line is None else [line]
    return min(places), max(places)


def _bounds_m(tool: FingerTool, outlines: tuple[PartOutline, ...]) -> tuple[float, float, float, float]:
    return (
        min(tool.left_m, *(outline.left_m for outline in outlines)),
        min(tool.underside_m, *(outline.bottom_m for outline in outlines)),
        max(tool.right_m, *(outline.right_m for outline in outlines)),
        max(tool.underside_m, *(outline.top_m for outline in outlines)),
    )


def place_along_m(view: FingerView, frame: Rect, point: Point) -> float:
    """The place along the tool that a point of the picture means; it stops at the tool's ends."""
    along_m = finger_stage(view, frame).camera.along_m(point[0])
    return min(max(along_m, view.tool.left_m), view.tool.right_m)


def plate_text(view: FingerView) -> str:
    """What the carriage says: where it stands, or that it can be moved."""
    if view.chosen:
        return view.readings.length_with_unit(view.tool.finger_at_m)
    return view.look.words.say("slide me")


def carriage_box(view: FingerView, stage: FingerStage) -> Rect:
    """Where the carriage is: under the finger, but never out of the picture."""
    sizes = view.look.sizes
    wide = max(sizes.px(80), text_width(plate_text(view), size=sizes.text("body"), bold=True) + sizes.px(24))
    x = stage.finger_rect(view.tool, view.look).center[0] - wide / 2
    x = min(max(x, stage.frame.x + sizes.px(4)), stage.frame.right - sizes.px(4) - wide)
    return Rect(x, stage.rule.y - stage.carriage_h, wide, stage.carriage_h)


def finger_bounds(view: FingerView, frame: Rect) -> Mapping[str, Rect]:
    """What can be grabbed in the picture, by key: the finger and its carriage, large enough for a fingertip."""
    stage, target = finger_stage(view, frame), view.look.sizes.target
    whole = stage.finger_rect(view.tool, view.look).union(carriage_box(view, stage))
    return {"finger": whole.at_least(target, target)}
