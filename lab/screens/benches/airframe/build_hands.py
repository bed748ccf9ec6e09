"""What hands do at the airframe that is built: take up, place, weigh, tie. Widget events in, commands out."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import ClassVar

from lab.files import UNITS
from lab.mechanics import Part, Vector
from lab.scenes.views.projections import FACES, Face
from lab.scenes.views.view import BodyView
from lab.screens.benches.airframe.build_panel import AXIS, FIT
from lab.screens.benches.airframe.build_picture import moved_m, panel_at, spot_at
from lab.screens.benches.airframe.build_strip import CANCEL, FIELDS
from lab.screens.benches.airframe.build_view import (
    AXIS_INDEX,
    FACE_AXES,
    NO_NAME,
    PART,
    REFERENCE,
    BuildView,
    body_view,
    face_of_key,
    panels_of,
    part_of,
    place_of,
    tank_of,
)
from lab.screens.benches.hands import CarryingHands, step_m
from lab.screens.benches.strip_keys import GHOST, PLACE, WEIGHT_FIELD
from lab.simulation import Command, Remove
from lab.simulation.airframe_commands import FitOn, MeasureFrom, PlacePart, PlaceTank, RemoveTank, ShowAxis
from lab.simulation.benches.airframe import AirframeBench
from lab.simulation.benches.airframe_kinds import KINDS
from lab.simulation.benches.airframe_reach import reach_m
from lab.simulation.part_commands import Reweigh
from lab.ui.geometry import Point, Rect
from lab.ui.outcomes import Changed, Chosen, DragBegan, Nudged


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """What a pointer carries.  key: of it, with its face; or of the tray.  origin_m: where it was; None for new.

    offset_px: from the pointer to it.  at_m: where it would go, None while off every view.  begun: whether a move was
    already sent, which the next one joins.
    """

    key: str
    face: Face | None
    origin_m: Vector | None
    offset_px: Point
    at_m: Vector | None
    begun: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Armed:
    """Something of the tray that waits for a place.  at_m: where it would go."""

    key: str
    at_m: Vector


@dataclass(slots=True)
class BuildHands(CarryingHands[BuildView, Armed, Carried]):
    """What is picked, taken up and carried just now.  laid_for: what the picture stays laid out for meanwhile."""

    CANCEL: ClassVar[str] = CANCEL
    laid_for: BodyView | None = None

    @property
    def carried_keys(self) -> tuple[str, ...]:
        """What is in hand."""
        return tuple(carried.key for carried in self._carried.values())

    def coming(self) -> Part | None:
        """What comes from the tray, where it would go; None where nothing does."""
        carried = self.carried
        if carried is not None and carried.key.startswith(FIT) and carried.at_m is not None:
            return _thing(carried.key, carried.at_m)
        if self.armed is not None and not self._carried:
            return _thing(self.armed.key, self.armed.at_m)
        return None

    # --- the tray -------------------------------------------------------------------------------------------

    def _from_tray(self, key: str, view: BuildView) -> Armed | None:
        return Armed(key=key, at_m=_first_place(view.bench)) if key.removeprefix(FIT) in KINDS else None

    def _aimed(self, armed: Armed, at: Point, view: BuildView, rect: Rect) -> Armed | None:
        place = _aimed_at(armed.at_m, at, view, rect)
        return None if place is None else replace(armed, at_m=place)

    def _put(self, armed: Armed, view: BuildView) -> tuple[Command, ...]:
        return self._fitted(armed.key, armed.at_m, view)

    def _fitted(self, key: str, at_m: Vector, view: BuildView) -> tuple[Command, ...]:
        self.armed, kind = None, key.removeprefix(FIT)
        tank = kind == "tank"
        new = f"tank-{len(view.bench.tanks)}" if tank else f"{PART}{view.bench.next_id}"
        self.picked = self.focus = f"{new}@top"
        return (FitOn(kind, *at_m),)

    # --- picking --------------------------------------------------------------------------------------------

    def _asked(self, key: str, view: BuildView) -> tuple[Command, ...]:
        picked, pressed = view.picked_part, part_of(view.bench, key)
        commands = self._asked_of_part(
            key, None if picked is None else picked.id, None if pressed is None else pressed.id
        )
        if commands is not None:
            return commands
        if key == REFERENCE or place_of(view.bench, key) is not None:
            self.parts.let_go()
            self._pick(key)
        return ()

    def _removed(self, key: str, view: BuildView) -> tuple[Command, ...]:
        part, tank = part_of(view.bench, key), tank_of(view.bench, key)
        if part is None and tank is None:
            return ()
        self.picked = ""
        return (RemoveTank(tank.name),) if tank is not None else (Remove(part.id),) if part is not None else ()

    def _chosen(self, event: Chosen, view: BuildView) -> tuple[Command, ...]:
        if event.key == AXIS:
            axis = next((name for name in AXIS_INDEX if name == event.value), None)
            return () if axis is None else (ShowAxis(axis),)
        row = event.value.removeprefix("row-")
        if row != event.value and place_of(view.bench, row) is not None:
            self._pick(f"{row}@side")
        return ()

    def _typed(self, event: Changed, view: BuildView) -> tuple[Command, ...]:
        units, bench, part = UNITS[view.readings.units.name], view.bench, view.picked_part
        if event.key == WEIGHT_FIELD and part is not None:
            return (Reweigh(part.id, units.to_kg(event.value)),)
        if event.key == PLACE and self.picked == REFERENCE:
            return (MeasureFrom(bench.axis, round(units.to_m(event.value), 9)),)
        at_m = place_of(bench, self.picked)
        if event.key not in FIELDS or at_m is None:
            return ()
        place = list(at_m)
        place[FIELDS.index(event.key)] = round(units.to_m(event.value), 9)
        return _placed(bench, self.picked, (place[0], place[1], place[2]), joins=False)

    # --- carrying -------------------------------------------------------------------------------------------

    def _began(self, event: DragBegan, view: BuildView, rect: Rect) -> tuple[Command, ...]:
        key = self.armed.key if event.key == GHOST and self.armed is not None else event.key
        origin, face, down = place_of(view.bench, key), face_of_key(key), self._downs.get(event.pointer, event.at)
        new = key.removeprefix(FIT) in KINDS
        if not new and origin is None and key != REFERENCE:
            return ()
        panels = panels_of(view, rect)
        offset = (0.0, 0.0)
        if origin is not None and face in panels:
            at = panels[face].px(origin)
            offset = (at[0] - down[0], at[1] - down[1])
        if not self._carried and not new:
            self.laid_for = body_view(view)
        self.armed, self.picked = None, "" if new else key
        self._carried[event.pointer] = Carried(key=key, face=face, origin_m=origin, offset_px=offset, at_m=origin)
        return self._carry(event.pointer, event.at, view, rect)

    def _carry(self, pointer: int, at: Point, view: BuildView, rect: Rect) -> tuple[Command, ...]:
        carried = self._carried.get(pointer)
        if carried is None:
            return ()
        if carried.key.startswith(FIT):
            place = _aimed_at(carried.at_m or _first_place(view.bench), at, view, rect)
            self._carried[pointer] = replace(carried, at_m=place)
            return ()
        point = (at[0] + carried.offset_px[0], at[1] + carried.offset_px[1])
        self._carried[pointer] = replace(carried, begun=True)
        if carried.key == REFERENCE:
            return _reference_at(point, view, rect, joins=carried.begun)
        panel = None if carried.face is None else panels_of(view, rect).get(carried.face)
        now = place_of(view.bench, carried.key)
        if panel is None or now is None:
            return ()
        goal = moved_m(now, panel.face, spot_at(view, panel, point))
        return _placed(view.bench, carried.key, goal, joins=carried.begun)

    def _put_down(self, pointer: int, at: Point, view: BuildView, rect: Rect) -> tuple[Command, ...]:
        commands = self._carry(pointer, at, view, rect)
        carried = self._carried.pop(pointer, None)
        self._settle()
        if carried is not None and carried.key.startswith(FIT) and carried.at_m is not None:
            return self._fitted(carried.key, carried.at_m, view)
        return commands

    def _put_back(self, pointer: int, view: BuildView) -> tuple[Command, ...]:
        carried = self._carried.pop(pointer, None)
        self._settle()
        if carried is None or carried.origin_m is None or not carried.begun:
            return ()
        return _placed(view.bench, carried.key, carried.origin_m, joins=True)

    def _settle(self) -> None:
        if not self._carried:
            self.laid_for = None

    # --- small steps ----------------------------------------------------------------------------------------

    def _nudged(self, event: Nudged, view: BuildView) -> tuple[Command, ...]:
        step, bench = step_m(event, view), view.bench
        face = face_of_key(event.key) or "top"
        right, up = FACE_AXES[face]
        way = [0.0, 0.0, 0.0]
        way[right] = (-step if face == "front" else step) * event.dx
        way[up] += step * event.dy
        if event.key == GHOST and self.armed is not None:
            self.armed = replace(self.armed, at_m=_within(bench, _added(self.armed.at_m, way)))
            return ()
        if event.key == REFERENCE:
            index = AXIS_INDEX[bench.axis]
            # Seen from ahead, the right wing is at the left.
            by = step * (event.dy or (-event.dx if bench.axis == "across" else event.dx))
            return (MeasureFrom(bench.axis, round(bench.reference_m[index] + by, 9)),)
        now = place_of(bench, event.key)
        if now is None:
            return ()
        self.picked = event.key
        return _placed(bench, event.key, _added(now, way), joins=False)


def _placed(bench: AirframeBench, key: str, at_m: Vector, *, joins: bool) -> tuple[Command, ...]:
    part, tank = part_of(bench, key), tank_of(bench, key)
    if part is not None:
        return (PlacePart(part.id, *at_m, joins=joins),)
    return () if tank is None else (PlaceTank(tank.name, *at_m, joins=joins),)


def _reference_at(point: Point, view: BuildView, rect: Rect, *, joins: bool) -> tuple[Command, ...]:
    """The reference line dragged in the first view that shows its axis."""
    axis = view.bench.axis
    index = AXIS_INDEX[axis]
    panels = panels_of(view, rect)
    level = next((face for face in FACES if face in panels and FACE_AXES[face][0] == index), None)
    face = level or next((face for face in FACES if face in panels and FACE_AXES[face][1] == index), None)
    if face is None:
        return ()
    spot = spot_at(view, panels[face], point)
    return (MeasureFrom(axis, round(spot[FACE_AXES[face].index(index)], 9), joins=joins),)


def _aimed_at(at_m: Vector, at: Point, view: BuildView, rect: Rect) -> Vector | None:
    """The place that a pointer means: two axes of the view under it, the third as it was; None off every view."""
    panel = panel_at(view, rect, at)
    return None if panel is None else _within(view.bench, moved_m(at_m, panel.face, spot_at(view, panel, at)))


def _first_place(bench: AirframeBench) -> Vector:
    """At the nose end of what there is: there a little weight does most."""
    along, _, _ = reach_m(bench)
    balance = bench.sum.balance_point_m
    return round((along[0] + balance[0]) / 2.0, 3), 0.0, round(balance[2], 3)


def _thing(key: str, at_m: Vector) -> Part:
    kind = KINDS[key.removeprefix(FIT)]
    return Part(name=NO_NAME, mass_kg=kind.mass_kg, at_m=at_m, shape=kind.shape)


def _added(at_m: Vector, way: list[float]) -> Vector:
    return round(at_m[0] + way[0], 9), round(at_m[1] + way[1], 9), round(at_m[2] + way[2], 9)


def _within(bench: AirframeBench, at_m: Vector) -> Vector:
    along, across, up = (min(max(place, low), high) for place, (low, high) in zip(at_m, reach_m(bench), strict=True))
    return along, across, up
