"""Where things lie in a picture of a body on two fingers, and what the picture is made from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from lab.mechanics import Box, Part, Point
from lab.scenes.camera import Camera
from lab.scenes.finger_parts import PartOutline, part_outlines
from lab.scenes.finger_stage import FingerStage, FingerView, finger_stage
from lab.scenes.readings import Readings
from lab.simulation.benches.finger import FingerTool
from lab.simulation.benches.two_fingers import Piece, TwoFingers
from lab.ui.geometry import Point as Pixel
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.metrics import text_width

FINGER_KEYS = ("finger-left", "finger-right")
REFERENCE, MEETING, SITTING = "reference", "meeting", "piece-"

BRASS_SHARE, BRASS_KG, LEAST_BRASS, MOST_BRASS = 0.075, 0.5, 0.03, 0.12
"""A brass weight of so many kg is drawn with a side of this share of the body's length, others by the cube root of
theirs; none smaller or larger than can be grabbed and kept apart."""


PARKED_SHARE = 0.72
"""Where along the rule the flag stands that points nowhere yet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Coming:
    """A weight on its way. at_m: where it would stand, None where nothing is under it.  pointer: what carries it."""

    mass_kg: float
    at_m: float | None
    pointer: Pixel | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TwoFingersView:
    """A moment of the bench as it is to be drawn.

    previous, fraction: for drawing between two ticks.  picked: key of what is picked.  coming: a weight on its way.
    numbers: whether figures are shown.  told: whether what comes out may be seen.
    foot_px: how much of the picture's foot lies under something else.
    """

    bench: TwoFingers
    look: Look
    readings: Readings
    previous: TwoFingers | None = None
    fraction: float = 1.0
    picked: str = ""
    coming: Coming | None = None
    numbers: bool = False
    told: bool = False
    foot_px: float = 0.0

    @property
    def places_m(self) -> tuple[float, float]:
        """Where the fingers are to be drawn."""
        now = self.bench.places_m
        if self.previous is None or self.previous.slide is None or self.bench.slide is None:
            return now
        before = self.previous.places_m
        left, right = (a + self.fraction * (b - a) for a, b in zip(before, now, strict=True))
        return left, right


def piece_key(piece: Piece) -> str:
    """The key of a piece in the picture and the table."""
    return f"{SITTING}{piece.id}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """Where things lie. seen: the body as the pictures of tools on a finger see it.  body: where those have it.

    pads, fingers, feet: of the left and of the right finger.
    """

    seen: FingerView
    body: FingerStage
    pads: tuple[Rect, Rect]
    fingers: tuple[Rect, Rect]
    feet: tuple[Rect, Rect]

    @property
    def camera(self) -> Camera:
        """Along and up."""
        return self.body.camera


def brass_side_m(view: TwoFingersView, mass_kg: float) -> float:
    """How large a brass weight is drawn."""
    left_m, right_m = view.bench.span_m
    share = float(BRASS_SHARE * (mass_kg / BRASS_KG) ** (1 / 3))
    return min(max(share, LEAST_BRASS), MOST_BRASS) * (right_m - left_m)


def stands_on(bench: TwoFingers, part: Part) -> bool:
    """Whether a part without a size of its own is drawn as a weight that stands on the body."""
    flat = isinstance(part.shape, Point) and not part.cut
    return flat and bench.underside_m <= part.at_m[2] <= bench.top_m


def stage_for(view: TwoFingersView, rect: Rect) -> Stage:
    """The stage for a rectangle; the pieces' places come from the state, whatever is picked or on its way."""
    frame = rect.cut_bottom(view.foot_px)[1]
    tool, drawn = _tool(view.bench), _drawn(view)
    seen = FingerView(
        tool=tool,
        look=view.look,
        readings=view.readings,
        moment="held" if view.bench.held else "moving",
        previous=None if view.previous is None or view.bench.tipping is None else _tool(view.previous),
        fraction=view.fraction,
        laid_for=drawn,
    )
    laid = finger_stage(seen, frame)
    outlines = part_outlines(drawn)
    body = replace(laid, outlines=outlines, bounds_m=_bounds_m(drawn, outlines))
    pads, fingers = _fingers(view, body)
    return Stage(seen=seen, body=body, pads=pads, fingers=fingers, feet=_feet(view, body, fingers))


def plate_texts(view: TwoFingersView) -> tuple[str, str]:
    """What stands on the fingers' feet."""
    left, right = (view.readings.length(at_m) for at_m in view.places_m)
    return left, right


def piece_bounds(view: TwoFingersView, stage: Stage) -> Mapping[str, Rect]:
    """What can be grabbed of each loose piece, by key, large enough for a fingertip."""
    target, bench = view.look.sizes.target, view.bench
    names = {piece.part.name: piece_key(piece) for piece in bench.pieces if bench.is_loose(piece)}
    found = {}
    for outline in stage.body.outlines:
        key = names.get(outline.part.name)
        if key is not None:
            found[key] = outline_rect(stage, outline).at_least(target, target)
    return found


def outline_rect(stage: Stage, outline: PartOutline) -> Rect:
    """Where a part is drawn while the body lies level."""
    x, y = stage.camera.at(outline.left_m, outline.top_m)
    wide = stage.camera.length_px(outline.right_m - outline.left_m)
    return Rect(x, y, wide, stage.camera.length_px(outline.top_m - outline.bottom_m))


def finger_bounds(view: TwoFingersView, stage: Stage) -> tuple[Rect, Rect]:
    """What can be grabbed of each finger, with its foot."""
    target = view.look.sizes.target
    left, right = (
        finger.union(foot).at_least(target, target) for finger, foot in zip(stage.fingers, stage.feet, strict=True)
    )
    return left, right


def reference_knob(view: TwoFingersView, stage: Stage) -> Rect:
    """The knob by which the reference line is dragged, under the rule."""
    sizes = view.look.sizes
    side, x = sizes.px(24), stage.camera.x_px(view.bench.reference_m)
    return Rect(x - side / 2, stage.body.rule.bottom + sizes.px(10), side, side)


def meeting_flag(view: TwoFingersView, stage: Stage) -> Rect:
    """The flag that says where they will meet; on the ground, pointing nowhere, while nobody has said so."""
    sizes, rule = view.look.sizes, stage.body.rule
    wide, high = sizes.px(22), sizes.px(30)
    guess_m = view.bench.meeting_guess_m
    if guess_m is None:
        x = rule.x + PARKED_SHARE * rule.w
        return Rect(x - wide / 2, max(stage.body.ground_y - high - sizes.px(12), rule.bottom + sizes.px(2)), wide, high)
    return Rect(stage.camera.x_px(guess_m) - wide / 2, rule.bottom + sizes.px(2), wide, high)


def place_at_m(view: TwoFingersView, rect: Rect, at: Pixel) -> float | None:
    """The place on the beam that a point of the picture means for a weight; None where nothing is under it."""
    stage = stage_for(view, rect)
    low_m, high_m = view.bench.beam_m
    along_m = stage.camera.along_m(at[0])
    reach = stage.camera.length_m(view.look.sizes.target / 2)
    inside = rect.contains(at) and at[1] < stage.body.rule.y
    if not inside or not low_m - reach <= along_m <= high_m + reach:
        return None
    return min(max(along_m, low_m), high_m)


def along_at_m(view: TwoFingersView, rect: Rect, at: Pixel) -> float:
    """The place along that a point of the picture means."""
    return stage_for(view, rect).camera.along_m(at[0])


def _tool(bench: TwoFingers) -> FingerTool:
    left_m, right_m = bench.span_m
    return FingerTool(
        parts=bench.parts,
        looks=_looks(bench),
        left_m=left_m,
        right_m=right_m,
        underside_m=bench.underside_m,
        floor_m=bench.floor_m,
        finger_at_m=bench.places_m[0],
        held=bench.held,
        motion=bench.motion,
    )


def _drawn(view: TwoFingersView) -> FingerTool:
    """The body as it is drawn: a weight without a size of its own stands on it as a block of brass."""
    bench = view.bench
    parts, looks = [], dict(_looks(bench))
    for part in bench.parts:
        if stands_on(bench, part):
            side_m = brass_side_m(view, part.mass_kg)
            at_m = (part.at_m[0], part.at_m[1], bench.top_m + side_m / 2)
            looks.setdefault(part.name, "weight")
            parts.append(replace(part, at_m=at_m, shape=Box((side_m, side_m, side_m))))
        else:
            parts.append(part)
    return replace(_tool(bench), parts=tuple(parts), looks=MappingProxyType(looks))


def _looks(bench: TwoFingers) -> Mapping[str, str]:
    return {piece.part.name: piece.look for piece in bench.pieces if piece.look is not None}


def _bounds_m(tool: FingerTool, outlines: tuple[PartOutline, ...]) -> tuple[float, float, float, float]:
    return (
        min(tool.left_m, *(outline.left_m for outline in outlines)),
        min(tool.underside_m, *(outline.bottom_m for outline in outlines)),
        max(tool.right_m, *(outline.right_m for outline in outlines)),
        max(tool.underside_m, *(outline.top_m for outline in outlines)),
    )


def _fingers(view: TwoFingersView, body: FingerStage) -> tuple[tuple[Rect, Rect], tuple[Rect, Rect]]:
    """Pads and fingers: as wide as leaves them side by side when they touch."""
    sizes = view.look.sizes
    wide = min(sizes.px(27), body.camera.length_px(view.bench.touch_m))
    pads, fingers = [], []
    for at_m in view.places_m:
        x, y = body.camera.at(at_m, view.bench.underside_m)
        pad = Rect(x - wide * 0.36, y, wide * 0.72, max(5.0, sizes.px(6)))
        pads.append(pad)
        fingers.append(Rect(x - wide / 2, pad.bottom, wide, body.rule.y - body.carriage_h - pad.bottom))
    return (pads[0], pads[1]), (fingers[0], fingers[1])


def _feet(view: TwoFingersView, body: FingerStage, fingers: tuple[Rect, Rect]) -> tuple[Rect, Rect]:
    """Each finger's foot on the rule, reaching outwards, so that the two stand side by side when they touch."""
    sizes = view.look.sizes
    size = sizes.text("body")
    y, high = body.rule.y - body.carriage_h, body.carriage_h
    wide = [max(sizes.px(64), text_width(text, size=size, bold=True) + sizes.px(20)) for text in plate_texts(view)]
    left_x = max(fingers[0].right - wide[0], body.frame.x + sizes.px(4))
    right_x = min(fingers[1].x, body.frame.right - sizes.px(4) - wide[1])
    return Rect(left_x, y, wide[0], high), Rect(right_x, y, wide[1], high)
