"""What the parts of a tool look like: their outlines along and up, in metres, before anything is drawn."""

from __future__ import annotations

from dataclasses import dataclass

from lab.mechanics import Cylinder, Part, Rectangle, extent_m
from lab.simulation.benches.finger import FingerTool

BEAM_LOOKS = frozenset({"pole", "bar"})
PLATE, GAP = "plate", "gap"

FILLED_SHARE = 1e-6
"""Of the heaviest part: a cut-out that takes away less than this takes away nothing, and is drawn as filled."""

# How large a part is drawn whose shape the build leaves open, as (along, up) shares of the tool's length.
_DRAWN_SHARE = {
    "hook": (0.10, 0.13),
    "blade": (0.24, 0.09),
    "ring": (0.20, 0.20),
    "camera": (0.09, 0.085),
    "box": (0.13, 0.15),
    "battery": (0.11, 0.06),
    "pole": (0.10, 0.03),
    "bar": (0.10, 0.03),
}
FLAT_RING = 0.32
"""How high a hoop is drawn at least, as a share of its length."""

_WEIGHT_SHARE = 0.05
_HEAVY_SHARE = 0.08


@dataclass(frozen=True, slots=True, kw_only=True)
class PartOutline:
    """Where a part is drawn while the tool lies level.

    look: which picture it gets.  left_m, right_m, bottom_m, top_m: its outline, along and up.
    outward: −1 where its outer side points left, +1 where it points right.
    hook_m: the place on the tool that its cord is tied to; None for a part that is fixed.
    """

    part: Part
    look: str
    left_m: float
    right_m: float
    bottom_m: float
    top_m: float
    outward: int
    hook_m: tuple[float, float] | None = None

    @property
    def beam(self) -> bool:
        """Whether it is the long part that the others sit on."""
        return self.look in BEAM_LOOKS

    @property
    def middle_m(self) -> tuple[float, float]:
        """The middle of what is drawn."""
        return (self.left_m + self.right_m) / 2, (self.bottom_m + self.top_m) / 2


def part_outlines(tool: FingerTool) -> tuple[PartOutline, ...]:
    """Every part of a tool as it is drawn, the longest first, so that the rest lies over it."""
    span_m = tool.right_m - tool.left_m
    longest = max(tool.parts, key=lambda part: extent_m(part.shape)[0])
    heaviest_kg = max(part.mass_kg for part in tool.parts)
    outlines = [
        _outline(tool, part, span_m, is_longest=part is longest, share=part.mass_kg / heaviest_kg)
        for part in tool.parts
        if not (part.cut and part.mass_kg < FILLED_SHARE * heaviest_kg)
    ]
    # A gap lies over what it is cut out of, and under all that sits there.
    return tuple(sorted(outlines, key=lambda outline: (not outline.beam, outline.look != PLATE, outline.look != GAP)))


def _outline(tool: FingerTool, part: Part, span_m: float, *, is_longest: bool, share: float) -> PartOutline:
    look = tool.looks.get(part.name) or _look_by_shape(part, is_longest=is_longest)
    along_m, _, up_m = extent_m(part.shape)
    # A head that is stated as long as a pole, but drawn as something else, keeps its stated length.
    wide_m, high_m = _drawn_m(look, span_m, share=share)
    wide_m, high_m = along_m or wide_m, up_m or high_m
    if look == "ring":
        # A hoop lies flat; drawn from straight beside it would be a stick.
        high_m = max(high_m, FLAT_RING * wide_m)
    at_m, height_m = part.at_m[0], part.at_m[2]
    if is_longest:
        high_m = max(up_m, 2.0 * (height_m - tool.underside_m))
    if part.hold == "hung":
        return _hung(part, wide_m, high_m, span_m)
    middle_m = (tool.left_m + tool.right_m) / 2
    return PartOutline(
        part=part,
        look=look,
        left_m=at_m - wide_m / 2,
        right_m=at_m + wide_m / 2,
        bottom_m=height_m - high_m / 2,
        top_m=height_m + high_m / 2,
        outward=-1 if at_m <= middle_m else 1,
    )


def _look_by_shape(part: Part, *, is_longest: bool) -> str:
    if part.cut:
        return GAP
    if isinstance(part.shape, Rectangle):
        return PLATE
    if is_longest and extent_m(part.shape)[0] > 0:
        return "bar"
    if isinstance(part.shape, Cylinder) and part.shape.axis == "along":
        return "sleeve"
    return "weight"


def _drawn_m(look: str, span_m: float, *, share: float) -> tuple[float, float]:
    if look in _DRAWN_SHARE:
        along, up = _DRAWN_SHARE[look]
        return along * span_m, up * span_m
    # Brass of one shape: its side goes with the cube root of its weight, down to what can still be seen.
    side_m = span_m * max(_WEIGHT_SHARE, _HEAVY_SHARE * share ** (1 / 3))
    return side_m, side_m


def _hung(part: Part, wide_m: float, high_m: float, span_m: float) -> PartOutline:
    at_m, height_m = part.at_m[0], part.at_m[2]
    top_m = height_m - 0.05 * span_m
    return PartOutline(
        part=part,
        look="weight",
        left_m=at_m - wide_m / 2,
        right_m=at_m + wide_m / 2,
        bottom_m=top_m - high_m,
        top_m=top_m,
        outward=1,
        hook_m=(at_m, height_m),
    )
