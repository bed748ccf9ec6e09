"""An airframe that hangs by one of its points, as it is to be shown."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

from lab.mechanics import MomentSum, Part, Vector, attitude_of, plumb_line
from lab.scenes.readings import Readings
from lab.scenes.views.body import Body
from lab.scenes.views.swinging import room_rad
from lab.scenes.views.view import BodyView, Hanging, PlaceMark
from lab.simulation.benches.airframe_hanging import AirframeHanging, HangLine
from lab.simulation.benches.airframe_places import Spans
from lab.ui.look import Look

HOOK = "hook"
HOOK_FACES = ("side", "top", "front")

OVER_SHARE = 0.08
"""Of the airframe's size: how far a pencil line goes on beyond the box round it, both ways."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HangView:
    """What is shown.

    parts, sum: all that weighs, and its moments.  spans_m: the box round it.  down: where down lies in it at the
    moment that is drawn.  told: whether numbers and the balance point are shown.  laid_for: the picture as it was laid
    out when the hook was taken in hand, so that nothing moves under the pointer.
    """

    look: Look
    readings: Readings
    body: Body
    parts: tuple[Part, ...]
    sum: MomentSum
    spans_m: Spans
    hanging: AirframeHanging
    down: Vector
    picked: str = ""
    told: bool = False
    laid_for: BodyView | None = None
    covered_px: float = 0.0


def body_view(view: HangView) -> BodyView:
    """The airframe from its three sides on its cord."""
    hanging, say = view.hanging, view.look.words.say
    pitch_rad, roll_rad = attitude_of(view.down)
    crossing = hanging.crossing
    side_rad, front_rad = _rooms_rad(view.parts, hanging.hook_m)
    balance = before = None
    if view.told:
        at_m = view.sum.balance_point_m
        balance = PlaceMark(at_m=at_m, text=say("CG {place}", place=view.readings.length_with_unit(at_m[0])))
    elif crossing is not None:
        before = PlaceMark(at_m=crossing.at_m, text=say("the lines cross"))
    found = BodyView(
        body=view.body,
        look=view.look,
        readings=view.readings,
        faces=("side", "top", "front"),
        labels="names",
        hanging=Hanging(
            at_m=hanging.hook_m,
            pitch_rad=pitch_rad,
            roll_rad=roll_rad or 0.0,
            side_rad=side_rad,
            front_rad=front_rad,
            plumb=hanging.at_rest and not hanging.hangs_any_way,
        ),
        pencil=tuple(pencil_m(line, view.spans_m) for line in hanging.lines),
        balance=balance,
        before=before,
        covered_px=view.covered_px,
    )
    return found if view.laid_for is None else replace(found, laid_for=view.laid_for)


@lru_cache(maxsize=32)
def _rooms_rad(parts: tuple[Part, ...], hook_m: Vector) -> tuple[tuple[float, float], tuple[float, float]]:
    """Where it may turn on its way to rest, from the side and from the front; nowhere where it hangs any way."""
    line = plumb_line(parts, hook_m)
    if line is None:
        return (0.0, 0.0), (0.0, 0.0)
    along, across, up = line[0].down
    # From the left, with the nose at the left, tail down is clockwise; from ahead, right wing down is not.
    return room_rad(along, up, sense=-1.0), room_rad(across, up, sense=1.0)


def pencil_m(line: HangLine, spans_m: Spans) -> tuple[Vector, Vector]:
    """A plumb line from a little over its hook to where it leaves the box round the airframe."""
    size = max(high - low for low, high in spans_m)
    over = OVER_SHARE * size
    out = max(_leaves_at(line, spans_m), 0.0) + over
    return _along(line, -over), _along(line, out)


def _along(line: HangLine, far_m: float) -> Vector:
    """The place on a line so far below its hook."""
    (x, y, z), (along, across, up) = line.through_m, line.down
    return x + far_m * along, y + far_m * across, z + far_m * up


def _leaves_at(line: HangLine, spans_m: Spans) -> float:
    """How far below the hook a line leaves the box."""
    ways = [
        ((high if way > 0.0 else low) - at) / way
        for at, way, (low, high) in zip(line.through_m, line.down, spans_m, strict=True)
        if abs(way) > 1e-9
    ]
    return min(ways)
