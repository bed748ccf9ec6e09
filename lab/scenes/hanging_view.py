"""What a picture of the hanging bar is made from, and where things lie in it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache, partial
from math import sin

from lab.scenes.camera import Camera, turned_m
from lab.scenes.readings import Readings
from lab.scenes.rows import row_heights, rows_of
from lab.simulation import HangingBar, Hung
from lab.simulation.benches.hanging_bar import LEVEL
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look

ROW_GAP_PX = 5.0
PIVOT, REFERENCE, HANGING = "pivot", "reference", "weight-"
LARGEST_BRASS_KG = 0.5
SIDE_OF_100_G_PX = 36.0
MOST_SIDE_PX = 64.0
SWINGING_SHARE = 0.62
"""The longest arm that the picture surely holds at its stop, as a share of the bar. A pivot further out lets the
rising end pass in front of the rail; more would shrink the bar for a place where hardly anyone puts the pivot."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ghost:
    """A weight on its way: where it would go, or at the pointer where it would not go on the bar at all.

    at_m: the place along, None while it is off the bar.  pointer: where it is held.
    """

    mass_kg: float
    at_m: float | None
    pointer: Point | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class HangingView:
    """A moment of the hanging bar as it is to be drawn.

    angle_rad: of the bar now, between two ticks.  picked: key of the weight, the pivot or the reference line that
    is picked.  ghost: a weight on its way.  numbers: whether places are written.  outcome_shown: whether the
    balance point may be seen.  lines: whether arms are drawn as dimension lines and the reference line is there.
    foot_px: height at the lower edge that something else covers.  carried_at_m: the place, while something of the
    picture is carried along.
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
        side_px = partial(_side_px, scale)
        rows = rows_of(bench, camera, side_px, gap)
        if sum(row_heights(bench, rows, side_px, 2 * gap).values()) <= room:
            break
        scale *= 0.88
    return scale


def _side_px(scale: float, mass_kg: float) -> float:
    return scale * float(mass_kg ** (1 / 3))


def stage_for(bench: HangingBar, frame: Rect, look: Look) -> Stage:
    """The stage for a bench in a rectangle: the bar as wide as fits, and room for it to tip."""
    # A tilt changes nothing of it, so a swinging bar keeps the stage that was worked out when it was let go.
    return _stage_for(replace(bench, swing=LEVEL, turning=None, guess=None), frame, look)


@lru_cache(maxsize=16)
def _stage_for(bench: HangingBar, frame: Rect, look: Look) -> Stage:
    sizes = look.sizes
    rule_h = sizes.text("small") * 1.3 + sizes.px(22)
    rail_m = bench.rail_m
    rail_h = sizes.px(16)
    scale = _brass_scale(bench, look)
    heaviest = max((weight.mass_kg for weight in bench.weights), default=0.05)
    cord = sizes.px(34)
    hang = cord + scale * float(heaviest ** (1 / 3)) * 1.3 + sizes.px(10)
    room = max(frame.h - rule_h - rail_h, 1.0)
    side_margin = max(sizes.px(22), sizes.text("small") * 1.2)
    by_width = max(frame.w - 2 * side_margin, 50.0) / (rail_m[1] - rail_m[0])
    reach = 2 * SWINGING_SHARE * bench.bar.length_m * sin(min(bench.pivot.stop_rad, 1.5))
    by_height = max(room - hang - sizes.px(24), 1.0) / reach
    px_per_m = max(min(by_width, by_height), 0.72 * by_width)
    rail_w = (rail_m[1] - rail_m[0]) * px_per_m
    left = frame.x + (frame.w - rail_w) / 2
    rail = Rect(left, frame.y + rule_h, rail_w, rail_h)
    drop = max(reach / 2 * px_per_m + sizes.px(26), min((room - hang) * 0.46, sizes.px(320)))
    depth = max(bench.bar.depth_m * px_per_m, sizes.px(24))
    drop = max(min(drop, room - hang - depth / 2), sizes.px(60))
    origin_x = left - rail_m[0] * px_per_m
    middle_y = rail.bottom + drop
    camera = Camera(px_per_m=px_per_m, origin=(origin_x, middle_y))
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
