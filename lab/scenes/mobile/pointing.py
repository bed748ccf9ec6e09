"""Which place of which bar a pointer means."""

from __future__ import annotations

from math import cos, hypot, sin

from lab.scenes.mobile.stage import pose_of, stage_of
from lab.scenes.mobile.view import MobileView
from lab.simulation.benches.mobile import below
from lab.ui.geometry import Point, Rect

BELOW_PX, ABOVE_PX, BESIDE_PX = 110.0, 34.0, 30.0
"""How far under, over and beside a bar a thing may be held and still mean it, in design pixels."""


def place_under(view: MobileView, rect: Rect, point: Point, *, moving: int | None = None) -> tuple[int, float] | None:
    """The bar that is meant, by its id, and the place on it; None where no bar is near.

    What hangs under a bar belongs to it: things are held by their bodies.  moving: the bar on its way, which can
    hang neither from itself nor from what hangs below it.
    """
    stage = stage_of(view, rect)
    pose = pose_of(view, stage)
    bench, scale, unit = view.bench, stage.sizing.px_per_m, view.look.sizes.unit
    barred = {beam.id for beam in below(bench.beams, moving)} if moving is not None else set()
    best: tuple[float, int, float] | None = None
    for beam in bench.beams:
        if beam.id in barred or beam.id == view.coming:
            continue
        (x, y), angle = pose.rings[beam.id], pose.angles_rad[beam.id]
        right, down = point[0] - x, point[1] - y
        at_m = beam.pin_m + (right * cos(angle) - down * sin(angle)) / scale
        lower = right * sin(angle) + down * cos(angle) - stage.sizing.ring(beam)
        beside = max(-at_m, at_m - beam.length_m, 0.0) * scale
        if beside > BESIDE_PX * unit or not -ABOVE_PX * unit <= lower <= BELOW_PX * unit:
            continue
        far = hypot(2.0 * beside, lower if lower >= 0.0 else 2.0 * lower)
        if best is None or far < best[0]:
            best = (far, beam.id, min(max(at_m, 0.0), beam.length_m))
    return None if best is None else best[1:]


def hook_point(view: MobileView, rect: Rect, number: int) -> Point:
    """What a thing hangs from now, by its id."""
    return pose_of(view, stage_of(view, rect)).hooks[number]


def px_per_m(view: MobileView, rect: Rect) -> float:
    """Pixels for a metre along."""
    return stage_of(view, rect).sizing.px_per_m


def along_under(view: MobileView, rect: Rect, x_px: float) -> float:
    """The place along, of the whole bench, under an x."""
    return stage_of(view, rect).along_m(view.bench, x_px)
