"""What a picture of a tool that is built on a finger is made from, and where things lie in it."""

from __future__ import annotations

from dataclasses import dataclass

from lab.mechanics import Part
from lab.scenes.finger_parts import PartOutline
from lab.scenes.finger_stage import FingerStage, FingerView, body_place_px, finger_stage
from lab.scenes.readings import Readings
from lab.simulation.benches.tool import BuiltTool
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look

FINGER, REFERENCE, PART = "finger", "reference", "part-"
STRIP_PX, LEAST_PX = 78.0, 420.0
"""At the foot of a picture that is at least so high the room of the strip is kept free, so that nothing jumps when
something is picked."""

LARGE_TEXT = 1.2
"""With larger letters than that the strip has its place beside the picture."""

KNOB_PX = 24.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ToolGhost:
    """A part on its way.

    tool: as it would be with it; None while it is off the tool.  part, look: to draw it by then, at the pointer.
    """

    part: Part
    look: str
    tool: BuiltTool | None
    pointer: Point | None = None

    @property
    def at_m(self) -> float | None:
        """Where it would go, along."""
        return None if self.tool is None else self.tool.parts[-1].at_m[0]


@dataclass(frozen=True, slots=True, kw_only=True)
class ToolView:
    """A moment of the tool as it is to be drawn.

    previous, fraction: for drawing between two ticks.  picked: key of the part, the finger or the reference line.
    ghost: a part on its way.  numbers: whether places are written.  outcome_shown: whether the balance point may be
    seen.  lines: whether arms and the reference line are there.  foot_px: height at the lower edge that something else
    covers.  carried_at_m: the place, while something of the picture is carried along.  laid_for: the tool that the
    picture is laid out for, None for the one that is drawn.
    """

    bench: BuiltTool
    look: Look
    readings: Readings
    previous: BuiltTool | None = None
    fraction: float = 1.0
    picked: str = ""
    ghost: ToolGhost | None = None
    numbers: bool = False
    outcome_shown: bool = False
    lines: bool = False
    foot_px: float = 0.0
    carried_at_m: float | None = None
    laid_for: BuiltTool | None = None

    @property
    def tool(self) -> BuiltTool:
        """What is drawn: with the part that is on its way, where it would go."""
        return self.bench if self.ghost is None or self.ghost.tool is None else self.ghost.tool

    @property
    def finger(self) -> FingerView:
        """The same for those who draw any tool on a finger."""
        return FingerView(
            tool=self.tool,
            look=self.look,
            readings=self.readings,
            moment="held" if self.tool.held else "moving",
            previous=self.previous,
            fraction=self.fraction,
            picked=self.picked == FINGER,
            # Where no numbers are shown the carriage says instead that it can be moved.
            chosen=self.numbers or (self.picked == FINGER and self.carried_at_m is not None),
            laid_for=self.laid_for or (self.bench if self.ghost is not None else None),
        )

    def frame(self, rect: Rect) -> Rect:
        """The rectangle without what the strip takes of it, or would take."""
        sizes = self.look.sizes
        keeps = sizes.text_scale <= LARGE_TEXT and rect.h >= sizes.px(LEAST_PX)
        taken = max(self.foot_px, sizes.px(STRIP_PX) if keeps else 0.0)
        return Rect(rect.x, rect.y, rect.w, max(rect.h - taken, 1.0))

    def stage(self, rect: Rect) -> FingerStage:
        """Where the fixed things of the picture lie in a rectangle."""
        return finger_stage(self.finger, self.frame(rect))


def part_key(id: int) -> str:  # noqa: A002 - the field's own name
    """The key under which a part is grabbed and spoken of."""
    return f"{PART}{id}"


def key_of(tool: BuiltTool, part: Part) -> str:
    """The key of a part of a tool: no two parts have the same name."""
    names = [each.name for each in tool.parts]
    return part_key(tool.ids[names.index(part.name)])


def part_box(view: ToolView, stage: FingerStage, outline: PartOutline) -> Rect:
    """The upright rectangle round a part as it lies now."""
    camera, finger = stage.camera, view.finger
    if outline.hook_m is not None:
        x, y = body_place_px(finger, stage, outline.hook_m)
        wide, high = (camera.length_px(side) for side in _size_m(outline))
        return Rect(x - wide / 2, y + camera.length_px(outline.hook_m[1] - outline.top_m), wide, high)
    corners = [
        body_place_px(finger, stage, (along_m, up_m))
        for along_m in (outline.left_m, outline.right_m)
        for up_m in (outline.bottom_m, outline.top_m)
    ]
    left, top = (min(corner[way] for corner in corners) for way in (0, 1))
    right, bottom = (max(corner[way] for corner in corners) for way in (0, 1))
    return Rect(left, top, right - left, bottom - top)


def _size_m(outline: PartOutline) -> tuple[float, float]:
    return outline.right_m - outline.left_m, outline.top_m - outline.bottom_m


def reference_knob(view: ToolView, stage: FingerStage) -> Rect:
    """The knob by which the reference line is dragged: under the rule, or where that lies on the floor, at the top."""
    sizes = view.look.sizes
    side = sizes.px(KNOB_PX)
    x, y = stage.camera.x_px(view.bench.reference_m), stage.rule.bottom + sizes.px(8)
    if y + side > stage.ground_y:
        y = stage.line_y + sizes.px(14)
    return Rect(x - side / 2, y, side, side)
