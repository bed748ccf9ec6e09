"""Where everything in a picture of a mobile lies."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from math import cos, sin

from lab.scenes.bar_bodies import size_px
from lab.scenes.mobile.hanging_order import Arrangement, Sizing, arranged
from lab.scenes.mobile.view import MobileView, still
from lab.simulation import Hung
from lab.simulation.benches import Beam, Mobile
from lab.simulation.benches.bar_parts import of_look
from lab.simulation.benches.mobile import STOP_RAD
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look

SIDE_OF_100_G_PX = 36.0
CORD_PX, GAP_PX, HALF_BAR_PX, RAIL_PX, TOP_CORD_PX = 24.0, 5.0, 6.0, 12.0, 30.0
MOST_PX_PER_M = 1150.0
"""A short mobile isn't drawn larger than this, times the unit: its brass would look lost on it."""
FITS = (
    (1.0, 1.5, 2.8), (1.0, 1.4, 2.2), (1.0, 1.25, 1.7), (1.0, 1.1, 1.3), (1.0, 1.0, 1.0), (1.0, 0.85, 0.85),
    (0.9, 0.8, 0.8), (0.9, 0.7, 0.7), (0.8, 0.65, 0.65), (0.7, 0.6, 0.6), (0.6, 0.5, 0.5), (0.5, 0.42, 0.42),
    (0.4, 0.36, 0.36), (0.32, 0.3, 0.3),
)  # fmt: skip
"""How a picture grows or shrinks until it fills its height and all fits: lengths along, bodies, cords."""
STRIP_BESIDE = 1.2
"""With larger text the strip for what is picked stands beside the picture."""
WIDE, HIGH = {"gull": 2.3, "float": 0.95}, {"gull": 0.95, "float": 1.15}
BRASS_HIGH = 1.14
"""Width and height of bodies as shares of the side of a brass weight that weighs the same."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MobileStage:
    """Where the fixed things lie. shrunk: how large bodies and cords are drawn, 1 as usual.

    top: the topmost ring.
    """

    frame: Rect
    rail: Rect
    top: Point
    sizing: Sizing
    drops_px: Mapping[int, float]
    shrunk: tuple[float, float]
    reach: Rect

    def x_px(self, bench: Mobile, along_m: float) -> float:
        """The x of a place along, of the whole bench."""
        return self.top[0] + (along_m - bench.top_at_m) * self.sizing.px_per_m

    def along_m(self, bench: Mobile, x_px: float) -> float:
        """The place along, of the whole bench, that an x shows."""
        return bench.top_at_m + (x_px - self.top[0]) / self.sizing.px_per_m


@dataclass(frozen=True, slots=True, kw_only=True)
class Pose:
    """Where everything is at one moment, by id. rings: of bars.  hooks: what holds each thing on the bar above.

    bodies: of weights.  angles_rad: of bars.
    """

    rings: Mapping[int, Point]
    hooks: Mapping[int, Point]
    bodies: Mapping[int, Rect]
    angles_rad: Mapping[int, float]


def body_size(look: Look, weight: Hung, shrunk: float) -> tuple[float, float]:
    """Width and height of a weight: with the cube root of its mass, as bodies of one stuff go."""
    return size_of(look, weight.mass_kg, weight.look, shrunk)


def size_of(look: Look, mass_kg: float, kind: str | None, shrunk: float) -> tuple[float, float]:
    """The same by mass and look."""
    loose = of_look(kind, mass_kg)
    unit = look.sizes.unit * (1.0 + 0.3 * (look.sizes.text_scale - 1.0))
    if loose is not None:
        return size_px(loose, SIDE_OF_100_G_PX * unit * shrunk * 10.0 ** (1 / 3))
    side = SIDE_OF_100_G_PX * unit * shrunk * float((mass_kg / 0.1) ** (1 / 3))
    side = min(side, SIDE_OF_100_G_PX * 2 * unit * shrunk)
    return side * WIDE.get(kind or "", 1.0), side * HIGH.get(kind or "", BRASS_HIGH)


def stage_of(view: MobileView, rect: Rect) -> MobileStage:
    """The stage for a view in a rectangle."""
    bench = still(view.bench)
    if view.laid_for is None or still(view.laid_for) == bench:
        return _stage(bench, rect, view.look)
    return _rehung(bench, still(view.laid_for), rect, view.look)


@lru_cache(maxsize=16)
def _stage(bench: Mobile, frame: Rect, look: Look) -> MobileStage:
    sizes = look.sizes
    rail = Rect(frame.x + sizes.px(24), frame.y + sizes.px(22), frame.w - sizes.px(48), sizes.px(RAIL_PX))
    room = max(frame.bottom - _foot(look) - rail.bottom, 1.0)
    left_m, right_m = bench.reach_m
    bodies = [body_size(look, each, FITS[0][1])[0] for beam in bench.beams for each in beam.weights]
    margin = max(bodies, default=0.0) / 2 + sizes.px(14)
    fitting = min(max(frame.w - 2 * margin, 40.0) / (right_m - left_m), MOST_PX_PER_M * sizes.unit)
    for along, other, cords in FITS:
        sizing = _sizing(bench, look, along * fitting, (other, cords))
        found = arranged(bench, sizing)
        cord = _top_cord(bench, look, sizing)
        if cord + found.height + _fall_m(bench) * sizing.px_per_m <= room:
            break
    middle_m = (left_m + right_m) / 2
    x = frame.x + frame.w / 2 + (bench.top_at_m - middle_m) * sizing.px_per_m
    return MobileStage(
        frame=frame,
        rail=rail,
        top=(x, rail.bottom + cord),
        sizing=sizing,
        drops_px=found.drops_px,
        shrunk=(other, cords),
        reach=_around(found, (x, rail.bottom + cord)),
    )


@lru_cache(maxsize=16)
def _rehung(bench: Mobile, before: Mobile, frame: Rect, look: Look) -> MobileStage:
    """The same scale and the same topmost ring for a mobile that has been changed since."""
    laid = _stage(before, frame, look)
    sizing = _sizing(bench, look, laid.sizing.px_per_m, laid.shrunk)
    found = arranged(bench, sizing)
    return MobileStage(
        frame=laid.frame,
        rail=laid.rail,
        top=laid.top,
        sizing=sizing,
        drops_px=found.drops_px,
        shrunk=laid.shrunk,
        reach=_around(found, laid.top),
    )


def _foot(look: Look) -> float:
    """Room at the lower edge for the strip for what is picked, picked or not: a picture must not jump under a hand."""
    sizes = look.sizes
    return sizes.px(14) if sizes.text_scale > STRIP_BESIDE else sizes.target + sizes.px(40)


def _top_cord(bench: Mobile, look: Look, sizing: Sizing) -> float:
    """Long enough for neither end of the topmost bar to rise in front of the rail."""
    top = bench.beams[0]
    rise_m = max(top.pin_m, top.length_m - top.pin_m) * sin(STOP_RAD) - top.pin_up_m * cos(STOP_RAD)
    return max(look.sizes.px(TOP_CORD_PX), rise_m * sizing.px_per_m + look.sizes.px(16))


def _around(found: Arrangement, top: Point) -> Rect:
    whole = found.boxes[0]
    for box in found.boxes[1:]:
        whole = whole.union(box)
    return Rect(whole.x + top[0], whole.y + top[1], whole.w, whole.h)


def _sizing(bench: Mobile, look: Look, px_per_m: float, shrunk: tuple[float, float]) -> Sizing:
    bodies, cords = shrunk
    sizes = look.sizes
    return Sizing(
        px_per_m=px_per_m,
        gap=sizes.px(GAP_PX),
        cord=sizes.px(CORD_PX) * cords,
        half_bar=sizes.px(HALF_BAR_PX) * min(max(bodies, 0.6), 1.25),
        bodies={each.id: body_size(look, each, bodies) for beam in bench.beams for each in beam.weights},
    )


def _fall_m(bench: Mobile) -> float:
    """How much lower things can get when every bar lies on its stop, to the side that is worst."""
    falls: dict[int | None, float] = {None: 0.0}
    by_id = {beam.id: beam for beam in bench.beams}
    deepest = 0.0
    for beam in bench.beams:
        above = by_id.get(beam.above) if beam.above is not None else None
        falls[beam.id] = falls[beam.above] + (abs(beam.hook_m - above.pin_m) * sin(STOP_RAD) if above else 0.0)
        arm_m = max((abs(each.at_m - beam.pin_m) for each in beam.weights), default=0.0)
        deepest = max(deepest, falls[beam.id] + arm_m * sin(STOP_RAD))
    return deepest


def pose_of(view: MobileView, stage: MobileStage) -> Pose:
    """Where everything is now. Every cord hangs straight down whatever the tilts."""
    bench = view.bench
    angles = dict(zip((beam.id for beam in bench.beams), view.angles_rad or (0.0,) * len(bench.beams), strict=True))
    rings: dict[int, Point] = {}
    hooks: dict[int, Point] = {}
    bodies: dict[int, Rect] = {}
    by_id = {beam.id: beam for beam in bench.beams}
    for beam in bench.beams:
        above = by_id.get(beam.above) if beam.above is not None else None
        if above is None:
            rings[beam.id] = stage.top
        else:
            hooks[beam.id] = on_bar(stage, above, rings[above.id], angles[above.id], beam.hook_m)
            rings[beam.id] = (hooks[beam.id][0], hooks[beam.id][1] + stage.drops_px[beam.id])
        for weight in beam.weights:
            x, y = hooks[weight.id] = on_bar(stage, beam, rings[beam.id], angles[beam.id], weight.at_m)
            wide, high = stage.sizing.bodies[weight.id]
            bodies[weight.id] = Rect(x - wide / 2, y + stage.drops_px[weight.id], wide, high)
    return Pose(rings=rings, hooks=hooks, bodies=bodies, angles_rad=angles)


def on_bar(stage: MobileStage, beam: Beam, ring: Point, angle_rad: float, at_m: float) -> Point:
    """The pixel of a place on a bar that has turned about its ring."""
    along, down = (at_m - beam.pin_m) * stage.sizing.px_per_m, stage.sizing.ring(beam)
    turned, raised = cos(angle_rad), sin(angle_rad)
    return ring[0] + along * turned + down * raised, ring[1] - along * raised + down * turned
