"""What hands do at the tool: pick up, carry, put down, nudge. Widget events in, commands out."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from lab.files import UNITS
from lab.mechanics import extent_m
from lab.scenes.tool.scene import along_at_m, place_at_m
from lab.scenes.tool.view import FINGER, REFERENCE, ToolGhost, ToolView, part_key
from lab.screens.benches.strip_keys import COPY, GHOST, MIRROR, MORE, PLACE, REMOVE, WEIGHT_FIELD
from lab.screens.benches.sums import ROW
from lab.screens.benches.tool.keys import CANCEL, HOLDING, LENGTH, NAME, SHELF, put_on, tray_part
from lab.screens.benches.tool.moves import id_of, moves_of, part_of, snapped_m, where_is
from lab.screens.benches.tool.naming import Naming
from lab.simulation import Command, Remove, SetHold
from lab.simulation.benches.tool import BuiltTool
from lab.simulation.command_table import carried_out
from lab.simulation.commands import Hold
from lab.simulation.part_commands import Copy, Rename, Reweigh
from lab.simulation.tool_commands import SetLength
from lab.ui.geometry import Point, Rect
from lab.ui.outcomes import (
    Changed,
    Chosen,
    DragBegan,
    DragCancelled,
    Dragged,
    Dropped,
    Nudged,
    Pressed,
    Removed,
    Tapped,
    WidgetEvent,
)

LARGE_STEPS = 10


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
class Hands:
    """What is picked, taken up and carried just now.

    focus: what should get the keyboard's focus next.  shelf: which parts the tray shows.  laid_for: the tool as it was
    when something of it was taken in hand: the picture stays laid out for it.
    """

    picked: str = ""
    armed: Armed | None = None
    focus: str = ""
    shelf: str = "heads"
    laid_for: BuiltTool | None = None
    more: bool = False
    naming: Naming = field(default_factory=Naming)
    _carried: dict[int, Carried] = field(default_factory=dict)
    _downs: dict[int, Point] = field(default_factory=dict)

    @property
    def carried(self) -> Carried | None:
        """What was taken in hand last, if anything is carried."""
        return next(reversed(self._carried.values()), None)

    def pointer_down(self, pointer: int, at: Point) -> None:
        """Remember where a pointer went down: what it will carry keeps its distance to that point."""
        self._downs[pointer] = at

    def ghost(self, bench: BuiltTool) -> ToolGhost | None:
        """The part on its way that the picture shows."""
        carried = self.carried
        if carried is not None and carried.origin_m is None:
            return _ghost(bench, carried.key, carried.at_m, carried.pointer)
        if self.armed is not None and carried is None:
            return _ghost(bench, self.armed.key, self.armed.at_m, None)
        return None

    def let_all_go(self) -> bool:
        """Nothing is picked or taken up any more; whether anything was."""
        had = bool(self.picked or self.armed)
        self.picked, self.armed, self.naming.draft = "", None, None
        return had

    def answer(self, event: WidgetEvent, view: ToolView, rect: Rect) -> tuple[Command, ...]:
        """The commands that an event of the picture, the tray or the strip comes to.  rect: of the picture."""
        match event:
            case Pressed():
                return self._pressed(event.key, view)
            case Tapped():
                return self._tapped(event.at, view, rect)
            case DragBegan():
                return self._began(event, view, rect)
            case Dragged():
                return self._carry(event.pointer, event.at, view, rect)
            case Dropped():
                return self._put_down(event.pointer, event.at, view, rect)
            case DragCancelled():
                return self._put_back(event.pointer)
            case Nudged():
                return self._nudged(event, view)
            case Removed():
                return self._removed(event.key, view)
            case Chosen(key=key, value=value) if key == SHELF:
                self.shelf, self.armed = value, None
            case Chosen(value=value) if value.startswith(ROW):
                self.armed, self.picked = None, value.removeprefix(ROW)
            case Changed() | Chosen():
                return self._set(event, view)
        return ()

    # --- picking and putting on -----------------------------------------------------------------------------

    def _pressed(self, key: str, view: ToolView) -> tuple[Command, ...]:
        if tray_part(key) is not None:
            if self.armed is not None and self.armed.key == key:
                self.armed = None
            else:
                self.armed = Armed(key=key, at_m=(view.bench.left_m + view.bench.right_m) / 2)
                self.picked, self.focus = "", GHOST
            return ()
        if key == GHOST and self.armed is not None:
            return self._put_on(self.armed.key, self.armed.at_m, view)
        if key in (MORE, COPY, MIRROR, NAME):
            return self._more(key, view)
        if key == CANCEL:
            self.focus = self.armed.key if self.armed else ""
            self.armed = None
        elif key == REMOVE:
            return self._removed(self.picked, view)
        elif key in (FINGER, REFERENCE) or part_of(view, key) is not None:
            self.armed, self.naming.draft = None, None
            self.picked = "" if self.picked == key else key
        return ()

    def _more(self, key: str, view: ToolView) -> tuple[Command, ...]:
        """The second half of what can be done to a part."""
        number, name = id_of(self.picked), self.naming.taken()
        if key == MORE:
            self.more, self.focus = not self.more, MORE
        if number is None or view.bench.part(number) is None:
            return ()
        if key == NAME and name is not None:
            return (Rename(number, name),)
        if key in (COPY, MIRROR):
            self.picked = part_key(view.bench.next_id)
            return (Copy(number, mirrored=key == MIRROR),)
        return ()

    def _tapped(self, at: Point, view: ToolView, rect: Rect) -> tuple[Command, ...]:
        if self.armed is None:
            self.picked = ""
            return ()
        along_m = place_at_m(view, rect, at, half_m=_half_m(self.armed.key))
        if along_m is None:
            return ()
        return self._put_on(self.armed.key, snapped_m(along_m, view, rect), view)

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

    def _set(self, event: Changed | Chosen, view: ToolView) -> tuple[Command, ...]:
        """What the strip changes of what is picked."""
        units, number = view.readings.units, id_of(self.picked)
        if isinstance(event, Changed) and event.key == PLACE:
            return moves_of(self.picked, units.to_m(event.value), joins=False)
        if number is None:
            return ()
        if isinstance(event, Chosen):
            hold: Hold = "hung" if event.value == "hung" else "clamped"
            return (SetHold(number, hold),) if event.key == HOLDING else ()
        if event.key == WEIGHT_FIELD:
            return (Reweigh(number, UNITS[units.name].to_kg(event.value)),)
        return (SetLength(number, units.to_m(event.value)),) if event.key == LENGTH else ()

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

    def _put_back(self, pointer: int) -> tuple[Command, ...]:
        carried = self._carried.pop(pointer, None)
        if not self._carried:
            self.laid_for = None
        if carried is None or carried.origin_m is None or not carried.begun:
            return ()
        return moves_of(carried.key, carried.origin_m, joins=True)

    # --- small steps ----------------------------------------------------------------------------------------

    def _nudged(self, event: Nudged, view: ToolView) -> tuple[Command, ...]:
        units, bench = view.readings.units, view.bench
        step_m = units.to_m(view.readings.fineness.step) * (LARGE_STEPS if event.large else 1) * event.dx
        if event.key == GHOST and self.armed is not None:
            half_m = _half_m(self.armed.key)
            goal_m = min(max(self.armed.at_m + step_m, bench.left_m - half_m), bench.right_m + half_m)
            self.armed = replace(self.armed, at_m=round(goal_m, 9))
            return ()
        now_m = where_is(event.key, view)
        if now_m is None:
            return ()
        self.picked = event.key
        return moves_of(event.key, now_m + step_m, joins=False)


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
