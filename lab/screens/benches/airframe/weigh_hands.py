"""What hands do at the weighed airframe: place its scales, guess, raise its nose. Widget events in, commands out."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from math import radians

from lab.screens.benches.airframe.weigh_panel import ACROSS, ALONG, ANGLE, LOWER, RAISE, READING
from lab.screens.benches.airframe.weigh_picture import Spot, panels_of, spot_at, spot_px
from lab.screens.benches.airframe.weigh_view import SCALE, WeighView
from lab.screens.benches.hands import BenchHands, TakenUp, step_m
from lab.simulation import Command
from lab.simulation.airframe_commands import RaiseNose
from lab.simulation.benches.scales import Scale
from lab.simulation.scales_commands import GuessReading, MoveScale
from lab.ui.geometry import Point, Rect
from lab.ui.outcomes import Changed, Chosen, DragBegan, Nudged

FIRST_RAISE_RAD = radians(10.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class CarriedScale:
    """A scale in hand. face: the view it is carried in.  origin_m: where it was.  offset_px: from the pointer to it.

    begun: whether a move was already sent, which the next one joins.
    """

    id: int
    face: str
    origin_m: Spot
    offset_px: Point
    begun: bool = False


@dataclass(slots=True)
class WeighHands(BenchHands[WeighView, TakenUp]):
    """What is picked and carried just now, and how far the nose is to be raised."""

    raise_rad: float = FIRST_RAISE_RAD
    _carried: dict[int, CarriedScale] = field(default_factory=dict)
    _downs: dict[int, Point] = field(default_factory=dict)

    @property
    def carries(self) -> bool:
        """Whether a scale is in hand."""
        return bool(self._carried)

    def pointer_down(self, pointer: int, at: Point) -> None:
        self._downs[pointer] = at

    def _pressed(self, key: str, view: WeighView, rect: Rect) -> tuple[Command, ...]:
        if key in (RAISE, LOWER):
            return (RaiseNose(self.raise_rad if key == RAISE else 0.0),)
        if _held_by(key, view) is not None:
            self._pick(key)
        return ()

    def _tapped(self, at: Point, view: WeighView, rect: Rect) -> tuple[Command, ...]:
        self.picked = ""
        return ()

    def _chosen(self, event: Chosen, view: WeighView) -> tuple[Command, ...]:
        """A row of the table picks its scale, where it is seen from above."""
        row = event.value.removeprefix("row-")
        key = f"{row}-top"
        if row != event.value and _held_by(key, view) is not None:
            self._pick(key)
        return ()

    def _typed(self, event: Changed, view: WeighView) -> tuple[Command, ...]:
        units, scale = view.readings.units, view.picked_scale
        if event.key == READING:
            return (GuessReading(event.value / units.from_kg(1.0)),)
        if event.key == ANGLE:
            self.raise_rad = radians(event.value)
        if event.key not in (ALONG, ACROSS) or scale is None:
            return ()
        along, across, _ = scale.at_m
        goal = units.to_m(event.value)
        return (MoveScale(scale.id, goal, across) if event.key == ALONG else MoveScale(scale.id, along, goal),)

    def _began(self, event: DragBegan, view: WeighView, rect: Rect) -> tuple[Command, ...]:
        held = _held_by(event.key, view)
        if held is None or held[1] not in panels_of(view, rect):
            return ()
        scale, face = held
        self.picked = event.key
        at, down = spot_px(view, rect, face, scale.at_m), self._downs.get(event.pointer, event.at)
        origin = (scale.at_m[0], scale.at_m[1])
        offset = (at[0] - down[0], at[1] - down[1])
        self._carried[event.pointer] = CarriedScale(id=scale.id, face=face, origin_m=origin, offset_px=offset)
        return self._carry(event.pointer, event.at, view, rect)

    def _carry(self, pointer: int, at: Point, view: WeighView, rect: Rect) -> tuple[Command, ...]:
        carried = self._carried.get(pointer)
        if carried is None:
            return ()
        point = (at[0] + carried.offset_px[0], at[1] + carried.offset_px[1])
        along, across = spot_at(view, rect, carried.face, point, carried.origin_m)
        self._carried[pointer] = replace(carried, begun=True)
        return (MoveScale(carried.id, along, across, joins=carried.begun),)

    def _put_down(self, pointer: int, at: Point, view: WeighView, rect: Rect) -> tuple[Command, ...]:
        commands = self._carry(pointer, at, view, rect)
        self._carried.pop(pointer, None)
        return commands

    def _put_back(self, pointer: int, view: WeighView) -> tuple[Command, ...]:
        carried = self._carried.pop(pointer, None)
        return () if carried is None or not carried.begun else (MoveScale(carried.id, *carried.origin_m, joins=True),)

    def _nudged(self, event: Nudged, view: WeighView) -> tuple[Command, ...]:
        held = _held_by(event.key, view)
        if held is None:
            return ()
        self.picked = event.key
        scale, face = held
        step = step_m(event, view)
        along, across, _ = scale.at_m
        if face == "front":
            across -= step * event.dx
        else:
            along, across = along + step * event.dx, across + (step * event.dy if face == "top" else 0.0)
        return (MoveScale(scale.id, round(along, 9), round(across, 9)),)

    def _removed(self, key: str, view: WeighView) -> tuple[Command, ...]:
        """It stands on three."""
        return ()


def _held_by(key: str, view: WeighView) -> tuple[Scale, str] | None:
    """The scale of a key and the view it is seen in; None for any other key."""
    for scale in view.weighing.scales:
        for face in ("side", "top", "front"):
            if key == f"{SCALE}{scale.id}-{face}":
                return scale, face
    return None
