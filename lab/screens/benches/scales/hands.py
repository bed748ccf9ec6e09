"""What hands do at the scales bench: pick up, carry, put down, nudge. Widget events in, commands out."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import ClassVar

from lab.files import UNITS
from lab.mechanics import Part
from lab.scenes.scales.view import ScalesGhost, ScalesView, load_key
from lab.screens.benches.hands import CarryingHands, step_m
from lab.screens.benches.scales.keys import ACROSS, CANCEL, COUNT, READING, SHELF, loose_kind, tray_mass_kg
from lab.screens.benches.scales.moves import Spot, body_spot, load_of, move_of, spot_at, spot_px, where_is
from lab.screens.benches.strip_keys import GHOST, PLACE, WEIGHT_FIELD
from lab.simulation import Command, Remove
from lab.simulation.benches.scales_edits import brass
from lab.simulation.part_commands import Reweigh
from lab.simulation.scales_commands import GuessReading, PutOn, PutPart, StandOn
from lab.ui.geometry import Point, Rect
from lab.ui.outcomes import Changed, Chosen, DragBegan, Nudged


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """What a pointer carries. mass_kg: of a new weight; None for what is there already.

    origin_m: where it was.  offset_px: from the pointer to it.  at_m: where it would go, None while off the body.
    begun: whether a move was already sent, which the next one joins.
    """

    key: str
    mass_kg: float | None
    origin_m: Spot | None
    offset_px: Point
    at_m: Spot | None
    pointer: Point
    begun: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Armed:
    """A weight taken up from the tray, waiting for a place. at_m: where it would stand."""

    key: str
    mass_kg: float
    at_m: Spot


@dataclass(slots=True)
class Hands(CarryingHands[ScalesView, Armed, Carried]):
    """What is picked, taken up and carried just now.  shelf: what the tray shows."""

    CANCEL: ClassVar[str] = CANCEL
    shelf: str = "brass"

    def ghost(self, top_m: float) -> ScalesGhost | None:
        """The weight on its way that the picture shows.  top_m: the height on which weights stand."""
        carried = self.carried
        if carried is not None and carried.mass_kg is not None:
            return ScalesGhost(
                part=_part(carried.key, carried.mass_kg, top_m), at_m=carried.at_m, pointer=carried.pointer
            )
        if self.armed is not None and carried is None:
            return ScalesGhost(part=_part(self.armed.key, self.armed.mass_kg, top_m), at_m=self.armed.at_m)
        return None

    # --- picking and putting on -----------------------------------------------------------------------------

    def _from_tray(self, key: str, view: ScalesView) -> Armed | None:
        mass_kg = tray_mass_kg(key, view.bench.sum.mass_kg)
        return None if mass_kg is None else Armed(key=key, mass_kg=mass_kg, at_m=_middle(view))

    def _aimed(self, armed: Armed, at: Point, view: ScalesView, rect: Rect) -> Armed | None:
        spot = body_spot(at, view, rect)
        return None if spot is None else replace(armed, at_m=spot)

    def _put(self, armed: Armed, view: ScalesView) -> tuple[Command, ...]:
        return self._put_on(armed.key, armed.mass_kg, armed.at_m, view)

    def _asked(self, key: str, view: ScalesView) -> tuple[Command, ...]:
        picked, pressed = load_of(view, self.picked), load_of(view, key)
        part = None if picked is None else picked.id
        commands = self._asked_of_part(key, part, None if pressed is None else pressed.id)
        if commands is not None:
            return commands
        if where_is(key, view) is not None:
            self.parts.let_go()
            self._pick(key)
        return ()

    def _put_on(self, key: str, mass_kg: float, at_m: Spot, view: ScalesView) -> tuple[Command, ...]:
        self.armed = None
        self.picked = self.focus = load_key(view.bench.next_id)
        kind = loose_kind(key)
        return (PutOn(mass_kg, *at_m) if kind is None else PutPart(kind.name, *at_m),)

    def _removed(self, key: str, view: ScalesView) -> tuple[Command, ...]:
        load = load_of(view, key)
        if load is None:
            return ()
        self.picked = ""
        return (Remove(load.id),)

    def _chosen(self, event: Chosen, view: ScalesView) -> tuple[Command, ...]:
        if event.key == SHELF:
            self.shelf, self.armed = event.value, None
        if event.key == COUNT and event.value.isdigit():
            self.picked = ""
            return (StandOn(int(event.value)),)
        row = event.value.removeprefix("row-")
        if row != event.value and where_is(row, view) is not None:
            self._pick(row)
        return ()

    def _typed(self, event: Changed, view: ScalesView) -> tuple[Command, ...]:
        units, now, load = UNITS[view.readings.units.name], where_is(self.picked, view), load_of(view, self.picked)
        if event.key == READING:
            return (GuessReading(units.to_kg(event.value)),)
        if event.key == WEIGHT_FIELD and load is not None:
            return (Reweigh(load.id, units.to_kg(event.value)),)
        if event.key not in (PLACE, ACROSS) or now is None:
            return ()
        goal = (units.to_m(event.value), now[1]) if event.key == PLACE else (now[0], units.to_m(event.value))
        return _one(move_of(self.picked, goal, view, joins=False))

    # --- carrying -------------------------------------------------------------------------------------------

    def _began(self, event: DragBegan, view: ScalesView, rect: Rect) -> tuple[Command, ...]:
        key = self.armed.key if event.key == GHOST and self.armed is not None else event.key
        mass_kg = tray_mass_kg(key, view.bench.sum.mass_kg)
        origin = None if mass_kg is not None else where_is(event.key, view)
        if mass_kg is None and origin is None:
            return ()
        self.armed, self.picked = None, "" if origin is None else event.key
        offset = (0.0, 0.0)
        if origin is not None:
            at, down = spot_px(origin, view, rect), self._downs.get(event.pointer, event.at)
            offset = (at[0] - down[0], at[1] - down[1])
        self._carried[event.pointer] = Carried(
            key=key, mass_kg=mass_kg, origin_m=origin, offset_px=offset, at_m=origin, pointer=event.at
        )
        return self._carry(event.pointer, event.at, view, rect)

    def _carry(self, pointer: int, at: Point, view: ScalesView, rect: Rect) -> tuple[Command, ...]:
        carried = self._carried.get(pointer)
        if carried is None:
            return ()
        point = (at[0] + carried.offset_px[0], at[1] + carried.offset_px[1])
        if carried.origin_m is None:
            self._carried[pointer] = replace(carried, at_m=body_spot(at, view, rect), pointer=at)
            return ()
        goal = spot_at(point, view, rect, across_m=carried.origin_m[1])
        command = move_of(carried.key, goal, view, joins=carried.begun)
        self._carried[pointer] = replace(carried, at_m=goal, pointer=at, begun=carried.begun or command is not None)
        return _one(command)

    def _put_down(self, pointer: int, at: Point, view: ScalesView, rect: Rect) -> tuple[Command, ...]:
        commands = self._carry(pointer, at, view, rect)
        carried = self._carried.pop(pointer, None)
        if carried is None or carried.mass_kg is None:
            return commands
        if carried.at_m is not None:
            return self._put_on(carried.key, carried.mass_kg, carried.at_m, view)
        # Dropped where nothing is: it is back in the tray, and the bench is asked so that it says why.
        (_, right), _ = view.bench.reach_m
        return (PutOn(carried.mass_kg, right + view.bench.size_m),)

    def _put_back(self, pointer: int, view: ScalesView) -> tuple[Command, ...]:
        carried = self._carried.pop(pointer, None)
        if carried is None or carried.origin_m is None or not carried.begun:
            return ()
        return _one(move_of(carried.key, carried.origin_m, view, joins=True))

    # --- small steps ----------------------------------------------------------------------------------------

    def _nudged(self, event: Nudged, view: ScalesView) -> tuple[Command, ...]:
        step = step_m(event, view)
        dx, dy = step * event.dx, step * event.dy if view.three else 0.0
        if event.key == GHOST and self.armed is not None:
            (left, right), (low, high) = view.bench.reach_m
            along, across = self.armed.at_m[0] + dx, self.armed.at_m[1] + dy
            at_m = (round(min(max(along, left), right), 9), round(min(max(across, low), high), 9))
            self.armed = replace(self.armed, at_m=at_m)
            return ()
        now = where_is(event.key, view)
        if now is None:
            return ()
        self.picked = event.key
        return _one(move_of(event.key, (now[0] + dx, now[1] + dy), view, joins=False))


def _one(command: Command | None) -> tuple[Command, ...]:
    return () if command is None else (command,)


def _middle(view: ScalesView) -> Spot:
    (left, right), (low, high) = view.bench.reach_m
    return (left + right) / 2, (low + high) / 2


def _part(key: str, mass_kg: float, top_m: float) -> Part:
    """What lies in the tray under a key as it would stand on the body."""
    kind = loose_kind(key)
    shape = brass(mass_kg) if kind is None else kind.shape
    return Part(name="\u200b", mass_kg=mass_kg, at_m=(0.0, 0.0, top_m + shape.extent_m[2] / 2.0), shape=shape)
