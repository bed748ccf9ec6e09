"""What a picture of the hanging bar is made from, and where things lie in it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache, partial
from math import sin

from lab.mechanics import MomentSum
from lab.scenes.bar_bodies import size_px
from lab.scenes.camera import Camera, turned_m
from lab.scenes.readings import Readings
from lab.scenes.rows import row_heights, rows_of
from lab.simulation import HangingBar, Hung
from lab.simulation.benches.hanging_bar import LEVEL
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look

GHOST_ID = 0
"""No weight has this id: those on the bar count from 1."""
ROW_GAP_PX = 5.0
CORD_PX, DEPTH_PX, RISE_PX = 34.0, 24.0, 32.0
"""A weight's cord, the least depth of the bar, and the room between a risen end and the rail, in design pixels."""
PIVOT, REFERENCE, HANGING = "pivot", "reference", "weight-"
LARGEST_BRASS_KG = 0.5
SIDE_OF_100_G_PX = 36.0
MOST_SIDE_PX = 64.0
SWINGING_SHARE, RISING_SHARE = 0.62, 0.72
"""Arms that the picture has room for wherever the pivot is, and the longest that rises without passing in front of
the rail, as shares of the bar. More would shrink the bar for a place where hardly anyone puts the pivot."""
USUAL_SHARE, LEAST_SHARE = 0.72, 0.35
"""Of the width that the picture offers: smaller than the first only where what hangs there would leave the picture,
smaller than the second never."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ghost:
    """A weight that does not hang there: on its way, at the pointer while off the bar, or where it would have to be.

    at_m: the place along, None while it is off the bar.  pointer: where it is held.
    weight: what it is, where it is no brass.
    stamp: what is struck into it, None for its weight.  plate: what is written over the bar, None for its place.
    """

    mass_kg: float
    at_m: float | None
    pointer: Point | None = None
    stamp: str | None = None
    plate: str | None = None
    weight: Hung | None = None

    @property
    def coming(self) -> Hung:
        """The weight that is not there yet."""
        at_m = 0.0 if self.at_m is None else self.at_m
        if self.weight is not None:
            return replace(self.weight, id=GHOST_ID, name="", at_m=at_m)
        return Hung(id=GHOST_ID, name="", mass_kg=self.mass_kg, at_m=at_m)


@dataclass(frozen=True, slots=True, kw_only=True)
class HangingView:
    """A moment of the hanging bar as it is to be drawn.

    angle_rad: of the bar now, between two ticks.  picked: key of the weight, the pivot or the reference line that
    is picked.  ghost: a weight on its way.  numbers: whether places are written.  outcome_shown: whether the
    balance point may be seen.  lines: whether arms are drawn as dimension lines and the reference line is there.
    foot_px: height at the lower edge that something else covers.  carried_at_m: the place, while something of the
    picture is carried along.  laid_for: the bench that the picture is laid out for, None for the one that is drawn: so
    the bar stays where it is while something is hung here and there.
    """

    bench: HangingBar
    look: Look
    readings: Readings
    angle_rad: float = 0.0
    picked: str = ""
    ghost: Ghost | None = None
    numbers: bool = False
    outcome_shown: bool = False
    lines: bool = False
    foot_px: float = 0.0
    carried_at_m: float | None = None
    laid_for: HangingBar | None = None

    def stage(self, rect: Rect) -> Stage:
        """Where the fixed things of the picture lie in a rectangle."""
        return stage_for(self.laid_for or self.bench, rect, self.look)


def weight_key(weight: Hung) -> str:
    """The key under which a weight is grabbed and spoken of."""
    return f"{HANGING}{weight.id}"


def angle_between(previous: HangingBar, bench: HangingBar, fraction: float) -> float:
    """The angle to draw at a fraction of the way between two ticks."""
    if bench.held or previous.held:
        return bench.swing.angle_rad
    before = previous.swing.angle_rad
    return before + fraction * (bench.swing.angle_rad - before)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """Where the fixed things of the picture lie.

    camera: along 0 on the bar's middle line.  rail: the steel bar overhead.  cord_px: of a weight in the first row.
    side_px_per_cbrt: side of a brass weight for a mass of 1 kg; sides go with the cube root, as true brass does.
    """

    frame: Rect
    camera: Camera
    rail: Rect
    bar: Rect
    cord_px: float
    side_px_per_cbrt: float

    def side_px(self, mass_kg: float) -> float:
        """The side of a brass weight."""
        return _side_px(self.side_px_per_cbrt, mass_kg)

    def size_px(self, weight: Hung) -> tuple[float, float]:
        """How wide and how high a hung weight is."""
        return size_px(weight, self.side_px_per_cbrt)

    def hook_px(self, view: HangingView, at_m: float, up_m: float = 0.0) -> Point:
        """Where a place on the bar is now."""
        return self.camera.at(*self.place_m(view, at_m, up_m))

    def place_m(self, view: HangingView, at_m: float, up_m: float = 0.0) -> tuple[float, float]:
        """The same in metres."""
        pivot = view.bench.pivot
        return turned_m((at_m, up_m), (pivot.at_m, pivot.up_m), view.angle_rad)


def _brass_scale(bench: HangingBar, look: Look) -> float:
    unit = look.sizes.unit * (1.0 + 0.45 * (look.sizes.text_scale - 1.0))
    largest = max((weight.mass_kg for weight in bench.weights), default=0.0)
    by_hundred = SIDE_OF_100_G_PX * unit / float(0.1 ** (1 / 3))
    return min(by_hundred, MOST_SIDE_PX * unit / float(max(largest, LARGEST_BRASS_KG) ** (1 / 3)))


def _fitting(bench: HangingBar, camera: Camera, scale: float, room: float, gap: float) -> float:
    """The scale at which all rows of weights fit under the bar: usually the one given, less where many crowd."""
    for _ in range(6):
        size = partial(size_px, scale=scale)
        rows = rows_of(bench, camera, size, gap)
        if sum(row_heights(bench, rows, size, 2 * gap).values()) <= room:
            break
        scale *= 0.88
    return scale


def _side_px(scale: float, mass_kg: float) -> float:
    return scale * float(mass_kg ** (1 / 3))


def sum_of(bench: HangingBar) -> MomentSum:
    """The moment sum of a bench, worked out once for as long as only its angle changes."""
    return _sum_of(replace(bench, swing=LEVEL, turning=None, guess=None))


@lru_cache(maxsize=16)
def _sum_of(bench: HangingBar) -> MomentSum:
    return bench.sum


def stage_for(bench: HangingBar, frame: Rect, look: Look) -> Stage:
    """The stage for a bench in a rectangle: the bar as wide as fits, and room for it to tip."""
    # A tilt changes nothing of it, so a swinging bar keeps the stage that was worked out when it was let go.
    return _stage_for(replace(bench, swing=LEVEL, turning=None, guess=None), frame, look)


@lru_cache(maxsize=16)
def _stage_for(bench: HangingBar, frame: Rect, look: Look) -> Stage:
    sizes = look.sizes
    rule_h = sizes.text("small") * 1.3 + sizes.px(22)
    rail_m, rail_h = bench.rail_m, sizes.px(16)
    scale = _brass_scale(bench, look)
    room = max(frame.h - rule_h - rail_h, 1.0)
    falls = _falls(bench, look, scale)
    rise_m = _rise_m(bench)
    by_width = _by_width(bench, frame, look)
    over = sizes.px(RISE_PX)
    usual, *needed = (max(room - over - low_px, 1.0) / (rise_m + low_m) for low_m, low_px in falls)
    px_per_m = min(by_width, max(usual, USUAL_SHARE * by_width), max(min(needed), LEAST_SHARE * by_width))
    rail_w = (rail_m[1] - rail_m[0]) * px_per_m
    left = frame.x + (frame.w - rail_w) / 2
    rail = Rect(left, frame.y + rule_h, rail_w, rail_h)
    low = max(low_m * px_per_m + low_px for low_m, low_px in falls[1:])
    drop = max(rise_m * px_per_m + over, min((room - falls[0][1]) * 0.46, sizes.px(320)))
    drop = max(min(drop, room - low), sizes.px(60))
    depth = max(bench.bar.depth_m * px_per_m, sizes.px(DEPTH_PX))
    origin_x = left - rail_m[0] * px_per_m
    middle_y = rail.bottom + drop
    camera = Camera(px_per_m=px_per_m, origin=(origin_x, middle_y))
    cord = sizes.px(CORD_PX)
    below = frame.bottom - middle_y - depth / 2 - cord
    scale = _fitting(bench, camera, scale, below, sizes.px(ROW_GAP_PX))
    return Stage(
        frame=frame,
        camera=camera,
        rail=rail,
        bar=Rect(origin_x + bench.bar.left_m * px_per_m, middle_y - depth / 2, bench.bar.length_m * px_per_m, depth),
        cord_px=cord,
        side_px_per_cbrt=scale,
    )


def _by_width(bench: HangingBar, frame: Rect, look: Look) -> float:
    """The scale at which the rail is as wide as fits, the unit's word beside the last number of the rule included."""
    small, rail_m = look.sizes.text("small"), bench.rail_m
    margin = max(look.sizes.px(22), small * 1.2)
    rail = max(frame.w - 2 * margin, 50.0) / (rail_m[1] - rail_m[0])
    # Half a number of three figures, a gap, and the longest of the units' words.
    words = small * 0.9 + look.sizes.px(12) + small * 1.4
    return min(rail, max(frame.w - 2 * words, 50.0) / bench.bar.length_m)


def _rise_m(bench: HangingBar) -> float:
    """How far over its level the picture lets an end rise before it would pass in front of the rail."""
    bar, pivot = bench.bar, bench.pivot
    longest_m = max(pivot.at_m - bar.left_m, bar.right_m - pivot.at_m)
    arm_m = min(max(longest_m, SWINGING_SHARE * bar.length_m), RISING_SHARE * bar.length_m)
    return arm_m * sin(min(pivot.stop_rad, 1.5))


def _falls(bench: HangingBar, look: Look, scale: float) -> tuple[tuple[float, float], ...]:
    """How far under the level bar things reach at the stop, each as (metres that scale, pixels that do not).

    The first is a bar of the usual arm with its heaviest weight at the end; then the end itself and each weight.
    """
    bar, pivot, sizes = bench.bar, bench.pivot, look.sizes
    slope = sin(min(pivot.stop_rad, 1.5))
    heaviest = max((weight.mass_kg for weight in bench.weights), default=0.05)
    hang = sizes.px(CORD_PX + 10.0) + 1.3 * _side_px(scale, heaviest)
    longest_m = max(pivot.at_m - bar.left_m, bar.right_m - pivot.at_m)
    half = sizes.px(DEPTH_PX) / 2
    falls = [(SWINGING_SHARE * bar.length_m * slope, hang), (longest_m * slope + bar.depth_m / 2, half + sizes.px(8))]
    for weight in bench.weights:
        if weight.hold == "hung":
            high = half + sizes.px(CORD_PX + 8.0) + size_px(weight, scale)[1]
            falls.append((abs(weight.at_m - pivot.at_m) * slope, high))
    return tuple(falls)
