"""What a picture of a hung plate is made from, and where things lie in it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import lru_cache
from math import exp, floor, log

from lab.mechanics import MomentSum, extent_m, small_swing_period_s
from lab.outline.words import msg
from lab.scenes.camera import Camera, turned_m
from lab.scenes.readings import Readings
from lab.scenes.turning_areas import LEAST_ARM, TurningArea, TurningView
from lab.scenes.views.solids import silhouette_m
from lab.simulation.benches import Hung, HungPlate
from lab.simulation.benches.hanging_bar import FADE_S
from lab.simulation.benches.plate import HELD
from lab.simulation.benches.plate_rings import Ring
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look

PIN, REFERENCE, CROSSING = "pin", "reference", "crossing"
CORNER, EDGE, HOLE, CLIP = "corner-", "edge-", "hole-", "clip-"
TURNING = msg("Turning areas about the pin, as held")

RAIL_PX, RULE_PX, STRIP_PX = 44.0, 30.0, 74.0
"""Rows for the rail above, the rule below and a strip of one row in its place, in design pixels."""
TIGHT_PX = 120.0
"""Under this height for the plate, in design pixels, nothing is written beside it."""
USUAL_SHARE = 0.78
"""How much of the picture's height or width a plate takes where its swing leaves room."""
SCALE_STEP = 1.08
"""Scales go in such steps, so that the picture stays put while a corner moves a little."""
SLACK_SWING = 1.03
"""Room for the first swing, as a share of what it should take."""
SWEEP_STEPS = 20
SIDE_OF_100_G_PX = 30.0
"""How wide a weight of 100 g is drawn, in design pixels."""
THIN_SHARE = 0.02
"""How thick a rod that is fast to a plate is drawn, as a share of its length."""
HOLE_SHARE = 0.1
"""The radius of a new hole, as a share of the plate's smaller side."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlateGhost:
    """A weight or a hole on its way. mass_kg: None for a hole.  at_m: on the plate, None while it is off it.
    pointer: where it is held."""

    mass_kg: float | None
    at_m: tuple[float, float] | None
    pointer: Point | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PlateView:
    """A moment of the hung plate as it is to be drawn.

    angle_rad: of the plate now, between two ticks.  picked: key of what is picked in the picture.  row: key of the
    piece whose row is picked.  ghost: on its way.  numbers: whether places are written.  outcome_shown: whether the
    balance point, the triangles and the reference line may be seen.  foot_px: height at the lower edge that something
    else covers.  laid_for: the plate that the picture is laid out for, None for the one drawn: so it stays where it is
    while a corner or the pin is dragged; laid_in: and the rectangle, for a strip may go as the drag begins.
    """

    bench: HungPlate
    look: Look
    readings: Readings
    angle_rad: float = 0.0
    picked: str = ""
    row: str = ""
    ghost: PlateGhost | None = None
    numbers: bool = False
    outcome_shown: bool = False
    foot_px: float = 0.0
    laid_for: HungPlate | None = None
    laid_in: Rect | None = None

    def stage(self, rect: Rect) -> PlateStage:
        """Where the fixed things of the picture lie in a rectangle."""
        bench = self.laid_for or self.bench
        still = replace(bench, swing=HELD, fall=None, held=True, guess=None, lines=(), reference_m=0.0, view="plain")
        return _stage_for(still, self.laid_in or rect, self.look)

    def place_m(self, place_m: tuple[float, float]) -> tuple[float, float]:
        """Where a place of the plate has come to."""
        if self.angle_rad == 0.0:
            return place_m
        pivot = self.bench.pivot
        return turned_m(place_m, (pivot.at_m, pivot.up_m), self.angle_rad)


@dataclass(frozen=True, slots=True, kw_only=True)
class PlateStage:
    """Where the fixed things of the picture lie.  rail: the steel bar overhead.  rule: the boxwood below.
    tight: there is hardly room for the plate itself, and none for words or a rule.
    """

    frame: Rect
    camera: Camera
    rail: Rect
    rule: Rect
    clip_px_per_cbrt: float
    tight: bool = False

    def px(self, view: PlateView, place_m: tuple[float, float]) -> Point:
        """The pixel of a place of the plate now."""
        return self.camera.at(*view.place_m(place_m))

    def ring_px(self, view: PlateView, ring: Iterable[tuple[float, float]]) -> list[Point]:
        """The pixels of a ring of corners."""
        return [self.px(view, corner) for corner in ring]

    def on_plate_m(self, view: PlateView, point: Point) -> tuple[float, float]:
        """The place of the plate, in its own coordinates, under a pixel."""
        place = self.camera.along_m(point[0]), self.camera.up_m(point[1])
        if view.angle_rad == 0.0:
            return place
        pivot = view.bench.pivot
        return turned_m(place, (pivot.at_m, pivot.up_m), -view.angle_rad)

    def clip_radius_px(self, mass_kg: float) -> float:
        """Half as wide as a weight is drawn; sides go with the cube root, as true brass does."""
        return self.clip_px_per_cbrt * float(mass_kg ** (1 / 3)) / 2


def hole_radius_m(bench: HungPlate) -> float:
    """How large a new hole in this plate is, to a millimetre where that is anything."""
    _, _, wide_m, high_m = _bounds_m(bench.outline_m)
    radius_m = HOLE_SHARE * min(wide_m, high_m)
    return round(radius_m, 3) or radius_m


def plate_angle_between(previous: HungPlate, bench: HungPlate, fraction: float) -> float:
    """The angle to draw at a fraction of the way between two ticks."""
    if bench.held or previous.held:
        return bench.angle_rad
    return previous.angle_rad + fraction * (bench.angle_rad - previous.angle_rad)


@lru_cache(maxsize=32)
def sum_of(bench: HungPlate) -> MomentSum:
    """The sum of a held plate over its pieces, worked out once."""
    return bench.sum_of_pieces


def settled_sum(bench: HungPlate) -> MomentSum:
    """The same of a plate however it hangs just now."""
    return sum_of(bench.stilled() if bench.guess is None else replace(bench.stilled(), guess=None))


@lru_cache(maxsize=16)
def _stage_for(bench: HungPlate, frame: Rect, look: Look) -> PlateStage:
    sizes = look.sizes
    # With large text the strip lies below the picture, and the rule needs height for its numbers.
    rule_h = max(sizes.px(RULE_PX), sizes.text("small") * 1.25 + sizes.px(12))
    rail_h, margin = sizes.px(RAIL_PX), sizes.px(18)
    room = Rect(frame.x + margin, frame.y + rail_h, max(frame.w - 2 * margin, 20.0), 0.0)
    # A strip of one row is as high as the rule with its margins: when it comes nothing moves.
    foot = max(rule_h + margin, sizes.px(STRIP_PX)) + sizes.px(6)
    room = Rect(room.x, room.y, room.w, max(frame.h - rail_h - foot, 20.0))
    plate, sweep = _bounds_m(_covers_m(bench)), _sweep_m(bench)
    usual = USUAL_SHARE * min(room.w / plate[2], room.h / plate[3])
    fitting = min(room.w / sweep[2], room.h / sweep[3])
    px_per_m = _stepped(min(usual, fitting))
    # The held plate in the middle, pushed aside only as far as its swing needs.
    x = room.center[0] - (plate[0] + plate[2] / 2) * px_per_m
    y = room.center[1] + (plate[1] + plate[3] / 2) * px_per_m
    x = _pushed(x, room.x - sweep[0] * px_per_m, room.right - (sweep[0] + sweep[2]) * px_per_m)
    y = _pushed(y, room.y + (sweep[1] + sweep[3]) * px_per_m, room.bottom + sweep[1] * px_per_m)
    rail = Rect(frame.x + margin, frame.y + sizes.px(12), max(frame.w - 2 * margin, 20.0), sizes.px(14))
    rule = Rect(frame.x + margin, frame.bottom - rule_h - sizes.px(6), max(frame.w - 2 * margin, 20.0), rule_h)
    per_cbrt = SIDE_OF_100_G_PX * sizes.unit * (1.0 + 0.3 * (sizes.text_scale - 1.0)) / float(0.1 ** (1 / 3))
    camera = Camera(px_per_m=px_per_m, origin=(round(x), round(y)))
    tight = room.h < sizes.px(TIGHT_PX)
    return PlateStage(frame=frame, camera=camera, rail=rail, rule=rule, clip_px_per_cbrt=per_cbrt, tight=tight)


def _stepped(scale: float) -> float:
    return float(SCALE_STEP ** floor(log(scale, SCALE_STEP)))


def _pushed(value: float, low: float, high: float) -> float:
    return min(max(value, min(low, high)), max(low, high))


def fitting_m(clip: Hung) -> tuple[Ring, ...]:
    """The outline and the holes of what is fast to a plate, where it lies on it; none of a weight that is a point."""
    wide_m, _, high_m = extent_m(clip.shape)
    thin_m = THIN_SHARE * max(wide_m, high_m)
    rings = silhouette_m(clip.shape, "side", thin_m=thin_m) if thin_m > 0.0 else ()
    return tuple(tuple((clip.at_m + along_m, clip.up_m + up_m) for along_m, up_m in ring) for ring in rings)


def _covers_m(bench: HungPlate) -> list[tuple[float, float]]:
    """The outermost places of the plate and of all that is fast to it."""
    corners = list(bench.outline_m)
    for clip in bench.clips:
        corners += [(clip.at_m, clip.up_m), *(place for ring in fitting_m(clip)[:1] for place in ring)]
    return corners


def _bounds_m(corners: Iterable[tuple[float, float]]) -> tuple[float, float, float, float]:
    """Left, bottom, width and height."""
    along, up = zip(*corners, strict=True)
    return min(along), min(up), max(max(along) - min(along), 1e-6), max(max(up) - min(up), 1e-6)


def _sweep_m(bench: HungPlate) -> tuple[float, float, float, float]:
    """What the plate passes over from the way it is held through its first swing."""
    fall = bench.released().fall
    rest = fall.rest_rad if fall is not None else 0.0
    period_s = small_swing_period_s(fall.body) if fall is not None else None
    # Half a swing later it is as far beyond its rest as the damping has left it; a large swing takes longer still.
    beyond = exp(-period_s / (2.0 * FADE_S)) if period_s is not None else 0.0
    last = rest + SLACK_SWING * beyond * rest
    pin = bench.pivot.at_m, bench.pivot.up_m
    turned = [
        turned_m(corner, pin, last * step / SWEEP_STEPS)
        for step in range(SWEEP_STEPS + 1)
        for corner in _covers_m(bench)
    ]
    return _bounds_m(turned)


def turning_areas_of(view: PlateView) -> TurningView:
    """What each piece does about the pin while the plate is held. A hole takes weight away: it stands at the side that
    it lightens the other of."""
    bench, areas = view.bench, []
    for piece in bench.pieces:
        arm_m = bench.pivot.at_m - piece.part.at_m[0]
        if abs(arm_m) > LEAST_ARM:
            areas.append(
                TurningArea(
                    key=piece.key,
                    name=piece.part.name,
                    mass_kg=piece.part.mass_kg,
                    arm_m=abs(arm_m),
                    left=(arm_m > 0.0) != piece.part.cut,
                )
            )
    return TurningView(
        title=TURNING,
        areas=tuple(areas),
        about_m=bench.pivot.at_m,
        look=view.look,
        readings=view.readings,
        picked=view.row or view.picked,
    )
