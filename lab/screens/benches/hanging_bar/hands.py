"""What hands do at the hanging bar: pick up, carry, put down, nudge. Widget events in, commands out."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import ClassVar

from lab.scenes.hanging_scene import along_at_m, place_at_m
from lab.scenes.hanging_view import PIVOT, REFERENCE, Ghost, HangingView
from lab.screens.benches.filling import refilled
from lab.screens.benches.hands import CarryingHands, step_m
from lab.screens.benches.hanging_bar.keys import CANCEL, HOLDING
from lab.screens.benches.hanging_bar.moves import (
    move_of,
    moves_of,
    reweighed,
    snapped_m,
    weight_of,
    where_is,
    x_of,
)
from lab.screens.benches.hanging_bar.shelves import SHELF, hung_on, tray_weight
from lab.screens.benches.strip_keys import BEADS, GHOST, PLACE, WATER, WEIGHT_FIELD
from lab.simulation import Command, Hung, Move, Remove, SetHold
from lab.ui.geometry import Point, Rect
from lab.ui.outcomes import Changed, Chosen, DragBegan, Nudged


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """What a pointer carries. weight: None for the pivot and the reference line.

    origin_m: where it was; None for a new weight.  offset_px: from the pointer to it.  at_m: where it would go,
    None while it is off the bar.  begun: whether a move was already sent, which the next one joins.
    """

    key: str
    weight: Hung | None
    origin_m: float | None
    offset_px: float
    at_m: float | None
    pointer: Point
    begun: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Armed:
    """A weight taken up from the tray, waiting for a place. at_m: where it would hang."""

    key: str
    weight: Hung
    at_m: float


@dataclass(slots=True)
class Hands(CarryingHands[HangingView, Armed, Carried]):
    """What is picked, taken up and carried just now.

    shelf: what the tray shows.
    """

    CANCEL: ClassVar[str] = CANCEL
    shelf: str = "brass"

    @property
    def ghost(self) -> Ghost | None:
        """The weight on its way that the picture shows."""
        carried = self.carried
        if carried is not None and carried.weight is not None and (carried.origin_m is None or carried.at_m is None):
            weight = carried.weight
            return Ghost(mass_kg=weight.mass_kg, at_m=carried.at_m, pointer=carried.pointer, weight=weight)
        if self.armed is not None and carried is None:
            return Ghost(mass_kg=self.armed.weight.mass_kg, at_m=self.armed.at_m, weight=self.armed.weight)
        return None

    # --- picking and hanging --------------------------------------------------------------------------------

    def _from_tray(self, key: str, view: HangingView) -> Armed | None:
        weight, bar = tray_weight(key), view.bench.bar
        return None if weight is None else Armed(key=key, weight=weight, at_m=bar.left_m + bar.length_m / 2)

    def _aimed(self, armed: Armed, at: Point, view: HangingView, rect: Rect) -> Armed | None:
        along_m = place_at_m(view, rect, at)
        return None if along_m is None else replace(armed, at_m=snapped_m(along_m, view, rect))

    def _put(self, armed: Armed, view: HangingView) -> tuple[Command, ...]:
        return self._hang(armed.weight, armed.at_m, view)

    def _asked(self, key: str, view: HangingView) -> tuple[Command, ...]:
        picked, pressed = weight_of(view, self.picked), weight_of(view, key)
        part = None if picked is None else picked.id
        commands = self._asked_of_part(key, part, None if pressed is None else pressed.id)
        if commands is not None:
            return commands
        if key in (PIVOT, REFERENCE) or pressed is not None:
            self.parts.let_go()
            self._pick(key)
        return ()

    def _hang(self, weight: Hung, at_m: float, view: HangingView) -> tuple[Command, ...]:
        self.armed = None
        self.picked = self.focus = f"weight-{view.bench.next_id}"
        return (hung_on(weight, at_m),)

    def _removed(self, key: str, view: HangingView) -> tuple[Command, ...]:
        weight = weight_of(view, key)
        if weight is None:
            return ()
        self.picked = ""
        return (Remove(weight.id),)

    def _typed(self, event: Changed, view: HangingView) -> tuple[Command, ...]:
        if event.key in (WATER, BEADS):
            return refilled(event, weight_of(view, self.picked))
        if event.key == PLACE:
            return self._moved_to(self.picked, view.readings.units.to_m(event.value), view)
        return reweighed(self.picked, event.value, view) if event.key == WEIGHT_FIELD else ()

    def _chosen(self, event: Chosen, view: HangingView) -> tuple[Command, ...]:
        if event.key == SHELF:
            self.shelf, self.armed = event.value, None
        weight = weight_of(view, view.picked)
        if event.key != HOLDING or weight is None:
            return ()
        return (SetHold(weight.id, "clamped" if event.value == "clamped" else "hung"),)

    # --- carrying -------------------------------------------------------------------------------------------

    def _began(self, event: DragBegan, view: HangingView, rect: Rect) -> tuple[Command, ...]:
        weight = tray_weight(event.key)
        if event.key == GHOST and self.armed is not None:
            weight = self.armed.weight
        if weight is not None:
            self.armed, self.picked = None, ""
            self._carried[event.pointer] = Carried(
                key=event.key, weight=weight, origin_m=None, offset_px=0.0, at_m=None, pointer=event.at
            )
            return self._carry(event.pointer, event.at, view, rect)
        origin_m, weight = where_is(event.key, view)
        if origin_m is None:
            return ()
        self.armed, self.picked = None, event.key
        self._carried[event.pointer] = Carried(
            key=event.key,
            weight=weight,
            origin_m=origin_m,
            offset_px=x_of(origin_m, view, rect) - self._downs.get(event.pointer, event.at)[0],
            at_m=origin_m,
            pointer=event.at,
        )
        return self._carry(event.pointer, event.at, view, rect)

    def _carry(self, pointer: int, at: Point, view: HangingView, rect: Rect) -> tuple[Command, ...]:
        carried = self._carried.get(pointer)
        if carried is None:
            return ()
        point = (at[0] + carried.offset_px, at[1])
        if carried.weight is None:
            at_m: float | None = snapped_m(along_at_m(view, rect, point), view, rect)
        else:
            along_m = place_at_m(view, rect, point)
            at_m = None if along_m is None else snapped_m(along_m, view, rect)
        self._carried[pointer] = replace(carried, at_m=at_m, pointer=at)
        if carried.origin_m is None:
            return ()
        goal_m = carried.origin_m if at_m is None else at_m
        command = move_of(carried.key, goal_m, view, joins=carried.begun)
        if command is None:
            return ()
        self._carried[pointer] = replace(carried, at_m=at_m, pointer=at, begun=True)
        return (command,)

    def _put_down(self, pointer: int, at: Point, view: HangingView, rect: Rect) -> tuple[Command, ...]:
        commands = self._carry(pointer, at, view, rect)
        carried = self._carried.pop(pointer, None)
        if carried is None or carried.at_m is None:
            return commands if carried is None else (*commands, *self._off_the_bar(carried, view))
        if carried.origin_m is None and carried.weight is not None:
            return self._hang(carried.weight, carried.at_m, view)
        return commands

    def _off_the_bar(self, carried: Carried, view: HangingView) -> tuple[Command, ...]:
        """Dropped where no bar is: it is back where it came from, and the bench is asked so that it says why."""
        nowhere_m = view.bench.bar.right_m + view.bench.bar.length_m
        if carried.origin_m is None and carried.weight is not None:
            return (hung_on(carried.weight, nowhere_m),)
        weight = weight_of(view, carried.key)
        return () if weight is None else (Move(weight.id, nowhere_m),)

    def _put_back(self, pointer: int, view: HangingView) -> tuple[Command, ...]:
        carried = self._carried.pop(pointer, None)
        if carried is None or carried.origin_m is None or not carried.begun:
            return ()
        return moves_of(carried.key, carried.origin_m, joins=True)

    # --- small steps ----------------------------------------------------------------------------------------

    def _nudged(self, event: Nudged, view: HangingView) -> tuple[Command, ...]:
        along_m = step_m(event, view) * event.dx
        if event.key == GHOST and self.armed is not None:
            bar = view.bench.bar
            goal_m = min(max(self.armed.at_m + along_m, bar.left_m), bar.right_m)
            self.armed = replace(self.armed, at_m=round(goal_m, 9))
            return ()
        now_m, _ = where_is(event.key, view)
        if now_m is None:
            return ()
        self.picked = event.key
        return self._moved_to(event.key, now_m + along_m, view)

    def _moved_to(self, key: str, at_m: float, view: HangingView) -> tuple[Command, ...]:
        command = move_of(key, at_m, view, joins=False)
        return () if command is None else (command,)
