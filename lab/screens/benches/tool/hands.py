"""What hands do at the tool: pick up, carry, put down, nudge. Widget events in, commands out."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import ClassVar

from lab.files import UNITS
from lab.mechanics import extent_m
from lab.scenes.tool.scene import along_at_m, place_at_m
from lab.scenes.tool.view import FINGER, REFERENCE, ToolGhost, ToolView, part_key
from lab.screens.benches.hands import CarryingHands, step_m
from lab.screens.benches.strip_keys import GHOST, PLACE, WEIGHT_FIELD
from lab.screens.benches.sums import ROW
from lab.screens.benches.tool.keys import CANCEL, HOLDING, LENGTH, SHELF, put_on, tray_part
from lab.screens.benches.tool.moves import id_of, moves_of, part_of, snapped_m, where_is
from lab.simulation import Command, Remove, SetHold
from lab.simulation.benches.tool import BuiltTool
from lab.simulation.command_table import carried_out
from lab.simulation.commands import Hold
from lab.simulation.part_commands import Reweigh
from lab.simulation.tool_commands import SetLength
from lab.ui.geometry import Point, Rect
from lab.ui.outcomes import Changed, Chosen, DragBegan, Nudged


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """What a pointer carries.

    key: of the thing, or of the tray.  origin_m: where it was; None for what comes from the tray.  offset_px: from the
    pointer to it.  at_m: where it would go, None while it is off the tool.  begun: whether a move was already sent.
    """

    key: str
    origin_m: float | None
    offset_px: float
    at_m: float | None
    pointer: Point
    begun: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Armed:
    """A part taken up from the tray, waiting for a place. at_m: where it would go."""

    key: str
    at_m: float


@dataclass(slots=True)
class Hands(CarryingHands[ToolView, Armed, Carried]):
    """What is picked, taken up and carried just now.

    shelf: which parts the tray shows.  laid_for: the tool as it was when something of it was taken in hand: the picture
    stays laid out for it.
    """

    CANCEL: ClassVar[str] = CANCEL
    shelf: str = "heads"
    laid_for: BuiltTool | None = None

    def ghost(self, bench: BuiltTool) -> ToolGhost | None:
        """The part on its way that the picture shows."""
        carried = self.carried
        if carried is not None and carried.origin_m is None:
            return _ghost(bench, carried.key, carried.at_m, carried.pointer)
        if self.armed is not None and carried is None:
            return _ghost(bench, self.armed.key, self.armed.at_m, None)
        return None

    # --- picking and putting on -----------------------------------------------------------------------------

    def _from_tray(self, key: str, view: ToolView) -> Armed | None:
        middle_m = (view.bench.left_m + view.bench.right_m) / 2
        return None if tray_part(key) is None else Armed(key=key, at_m=middle_m)

    def _aimed(self, armed: Armed, at: Point, view: ToolView, rect: Rect) -> Armed | None:
        along_m = place_at_m(view, rect, at, half_m=_half_m(armed.key))
        return None if along_m is None else replace(armed, at_m=snapped_m(along_m, view, rect))

    def _put(self, armed: Armed, view: ToolView) -> tuple[Command, ...]:
        return self._put_on(armed.key, armed.at_m, view)

    def _asked(self, key: str, view: ToolView) -> tuple[Command, ...]:
        number = id_of(self.picked) if part_of(view, self.picked) is not None else None
        is_part = part_of(view, key) is not None
        commands = self._asked_of_part(key, number, id_of(key) if is_part else None)
        if commands is not None:
            return commands
        if key in (FINGER, REFERENCE) or is_part:
            self.parts.let_go(more=self.parts.more)
            self._pick(key)
        return ()

    def _put_on(self, key: str, at_m: float, view: ToolView) -> tuple[Command, ...]:
        self.armed = None
        self.picked = self.focus = part_key(view.bench.next_id)
        return (put_on(key, at_m),)

    def _removed(self, key: str, view: ToolView) -> tuple[Command, ...]:
        number = id_of(key)
        if number is None or view.bench.part(number) is None:
            return ()
        self.picked = ""
        return (Remove(number),)

    def _typed(self, event: Changed, view: ToolView) -> tuple[Command, ...]:
        units, number = view.readings.units, id_of(self.picked)
        if event.key == PLACE:
            return moves_of(self.picked, units.to_m(event.value), joins=False)
        if number is None:
            return ()
        if event.key == WEIGHT_FIELD:
            return (Reweigh(number, UNITS[units.name].to_kg(event.value)),)
        return (SetLength(number, units.to_m(event.value)),) if event.key == LENGTH else ()

    def _chosen(self, event: Chosen, view: ToolView) -> tuple[Command, ...]:
        number = id_of(self.picked)
        if event.key == SHELF:
            self.shelf, self.armed = event.value, None
        elif event.value.startswith(ROW):
            self.armed, self.picked = None, event.value.removeprefix(ROW)
        elif event.key == HOLDING and number is not None:
            hold: Hold = "hung" if event.value == "hung" else "clamped"
            return (SetHold(number, hold),)
        return ()

    # --- carrying -------------------------------------------------------------------------------------------

    def _began(self, event: DragBegan, view: ToolView, rect: Rect) -> tuple[Command, ...]:
        key = self.armed.key if event.key == GHOST and self.armed is not None else event.key
        origin_m, offset_px = None, 0.0
        if tray_part(key) is None:
            origin_m = where_is(key, view)
            if origin_m is None:
                return ()
            offset_px = view.stage(rect).camera.x_px(origin_m) - self._downs.get(event.pointer, event.at)[0]
        self.armed, self.picked = None, key if origin_m is not None else ""
        self.laid_for = self.laid_for or view.bench
        self._carried[event.pointer] = Carried(
            key=key, origin_m=origin_m, offset_px=offset_px, at_m=origin_m, pointer=event.at
        )
        return self._carry(event.pointer, event.at, replace(view, laid_for=self.laid_for), rect)

    def _carry(self, pointer: int, at: Point, view: ToolView, rect: Rect) -> tuple[Command, ...]:
        carried = self._carried.get(pointer)
        if carried is None:
            return ()
        point = (at[0] + carried.offset_px, at[1])
        if carried.key in (FINGER, REFERENCE):
            along_m: float | None = along_at_m(view, rect, point)
        else:
            along_m = place_at_m(view, rect, point, half_m=_half_m(carried.key, view))
        at_m = None if along_m is None else snapped_m(along_m, view, rect)
        carried = replace(carried, at_m=at_m, pointer=at)
        self._carried[pointer] = carried
        if carried.origin_m is None:
            return ()
        commands = moves_of(carried.key, carried.origin_m if at_m is None else at_m, joins=carried.begun)
        self._carried[pointer] = replace(carried, begun=True)
        return commands

    def _put_down(self, pointer: int, at: Point, view: ToolView, rect: Rect) -> tuple[Command, ...]:
        commands = self._carry(pointer, at, view, rect)
        carried = self._carried.pop(pointer, None)
        if not self._carried:
            self.laid_for = None
        if carried is None or carried.origin_m is not None:
            return commands
        if carried.at_m is not None:
            return self._put_on(carried.key, carried.at_m, view)
        # Dropped where no tool is: the bench is asked, so that it says why it went back.
        return (put_on(carried.key, view.bench.right_m + 10.0),)

    def _put_back(self, pointer: int, view: ToolView) -> tuple[Command, ...]:
        carried = self._carried.pop(pointer, None)
        if not self._carried:
            self.laid_for = None
        if carried is None or carried.origin_m is None or not carried.begun:
            return ()
        return moves_of(carried.key, carried.origin_m, joins=True)

    # --- small steps ----------------------------------------------------------------------------------------

    def _nudged(self, event: Nudged, view: ToolView) -> tuple[Command, ...]:
        bench, along_m = view.bench, step_m(event, view) * event.dx
        if event.key == GHOST and self.armed is not None:
            half_m = _half_m(self.armed.key)
            goal_m = min(max(self.armed.at_m + along_m, bench.left_m - half_m), bench.right_m + half_m)
            self.armed = replace(self.armed, at_m=round(goal_m, 9))
            return ()
        now_m = where_is(event.key, view)
        if now_m is None:
            return ()
        self.picked = event.key
        return moves_of(event.key, now_m + along_m, joins=False)


def _ghost(bench: BuiltTool, key: str, at_m: float | None, pointer: Point | None) -> ToolGhost | None:
    """The tool as it would be, worked out by what would really be done."""
    lying = tray_part(key)
    if lying is None:
        return None
    tool = None if at_m is None else carried_out(bench, put_on(key, at_m))
    part, look = lying
    return ToolGhost(part=part, look=look, tool=tool if isinstance(tool, BuiltTool) else None, pointer=pointer)


def _half_m(key: str, view: ToolView | None = None) -> float:
    """Half the length of a part of the tray, or of the tool."""
    lying = tray_part(key)
    part = lying[0] if lying is not None else None if view is None else part_of(view, key)
    return 0.0 if part is None else extent_m(part.shape)[0] / 2
