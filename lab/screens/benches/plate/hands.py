"""What hands do at the hung plate: pick up, carry, cut, put down, nudge. Widget events in, commands out."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Literal

from lab.scenes.plate_view import CLIP, CORNER, HOLE, PIN, PlateGhost, PlateView
from lab.screens.benches.hands import BenchHands, step_m
from lab.screens.benches.plate.carried import Carrying
from lab.screens.benches.plate.keys import (
    ALONG,
    AXIS,
    CANCEL,
    DRAW,
    MOMENTS,
    OUTLINES,
    RUB_OUT,
    SHEET_OF,
    SHEETS,
    SHEETS_KG_M2,
    UP,
    is_of_tray,
    tray_mass_kg,
)
from lab.screens.benches.plate.moves import (
    Place,
    clip_of,
    move_to,
    new_corner,
    place_under,
    put_down,
    removed,
    where_is,
)
from lab.screens.benches.strip_keys import GHOST, REMOVE, WEIGHT_FIELD
from lab.simulation import Command
from lab.simulation.benches.plate_rings import in_wood
from lab.simulation.part_commands import Reweigh
from lab.simulation.plate_commands import DrawPlumbLine, MovePin, RubOutLines, SetAreaWeight, TakeBlank
from lab.ui.geometry import Point, Rect
from lab.ui.outcomes import Changed, Chosen, DragBegan, Nudged


@dataclass(frozen=True, slots=True, kw_only=True)
class Armed:
    """A weight or a hole taken up from the tray, waiting for a place. at_m: where it would go."""

    key: str
    at_m: Place


@dataclass(slots=True)
class Hands(BenchHands[PlateView, Armed]):
    """What is picked, taken up and carried just now.

    axis: whose moments the table shows.  row: the piece picked in it.  carrying: what pointers carry.
    """

    axis: Literal["along", "up"] = "along"
    row: str = ""
    carrying: Carrying = field(default_factory=Carrying)

    @property
    def ghost(self) -> PlateGhost | None:
        """What is on its way to the plate."""
        carried = self.carrying.last
        if carried is not None and carried.origin_m is None:
            return PlateGhost(mass_kg=tray_mass_kg(carried.key), at_m=carried.at_m, pointer=carried.pointer)
        if self.armed is not None and carried is None:
            return PlateGhost(mass_kg=tray_mass_kg(self.armed.key), at_m=self.armed.at_m)
        return None

    def pointer_down(self, pointer: int, at: Point) -> None:
        self.carrying.pointer_down(pointer, at)

    def let_all_go(self) -> bool:
        """Nothing is picked or taken up any more; whether anything was."""
        had, self.row = bool(self.row), ""
        # The slotted class is made anew by its decorator: super() without names would mean the one before.
        return super(Hands, self).let_all_go() or had

    # --- picking and putting --------------------------------------------------------------------------------

    def _pressed(self, key: str, view: PlateView, rect: Rect) -> tuple[Command, ...]:
        if key in (DRAW, RUB_OUT):
            return (DrawPlumbLine(),) if key == DRAW else (RubOutLines(),)
        if is_of_tray(key):
            self._take_up(key, view)
        elif key == GHOST and self.armed is not None:
            return self._put(self.armed.key, self.armed.at_m, view)
        elif key == CANCEL:
            self.focus = self.armed.key if self.armed else ""
            self.armed = None
        elif key == REMOVE:
            return self._removed(self.picked, view)
        else:
            return self._asked(key, view)
        return ()

    def _asked(self, key: str, view: PlateView) -> tuple[Command, ...]:
        """A handle was pressed, or a button of the strip."""
        picked, pressed = clip_of(view, self.picked), clip_of(view, key)
        part = None if picked is None else picked.id
        commands = self._asked_of_part(key, part, None if pressed is None else pressed.id)
        if commands is not None:
            return commands
        if key != SHEET_OF and where_is(view, key) is None:
            return self._added(key, view)
        self.parts.let_go()
        self._pick(key)
        return ()

    def _take_up(self, key: str, view: PlateView) -> None:
        if self.armed is not None and self.armed.key == key:
            self.armed = None
            return
        pin = view.bench.pivot
        self.armed = Armed(key=key, at_m=(pin.at_m, pin.up_m))
        self.picked, self.focus = "", GHOST

    def _added(self, key: str, view: PlateView) -> tuple[Command, ...]:
        """A corner on the edge that was pressed, which is then picked."""
        command = new_corner(view, key)
        if command is None:
            return ()
        self.armed = None
        self.picked = self.focus = f"{CORNER}{command.ring}-{command.after + 1}"
        return (command,)

    def _tapped(self, at: Point, view: PlateView, rect: Rect) -> tuple[Command, ...]:
        """On the wood: what is taken up goes there, or the plate is hung by that place."""
        place = place_under(view, rect, at)
        if self.armed is not None:
            return self._put(self.armed.key, place, view)
        if self.picked or not in_wood(place, view.bench.outline_m, view.bench.holes_m):
            self.picked = ""
            return ()
        return (MovePin(*place),)

    def _put(self, key: str, place: Place, view: PlateView) -> tuple[Command, ...]:
        self.armed = None
        mass_kg = tray_mass_kg(key)
        new = f"{HOLE}{len(view.bench.holes_m) + 1}" if mass_kg is None else f"{CLIP}{view.bench.next_id}"
        self.picked = self.focus = new
        return (put_down(view, mass_kg, place),)

    def _removed(self, key: str, view: PlateView) -> tuple[Command, ...]:
        commands = removed(view, key)
        if commands:
            self.picked, self.focus = "", PIN
        return commands

    def _typed(self, event: Changed, view: PlateView) -> tuple[Command, ...]:
        key, value = event.key, event.value
        now = where_is(view, self.picked)
        units, clip = view.readings.units, clip_of(view, self.picked)
        if key == WEIGHT_FIELD and clip is not None:
            return (Reweigh(clip.id, value / units.from_kg(1.0)),)
        if now is None or key not in (ALONG, UP):
            return ()
        goal = (units.to_m(value), now[1]) if key == ALONG else (now[0], units.to_m(value))
        return move_to(view, self.picked, goal, joins=False)

    def _chosen(self, event: Chosen, view: PlateView) -> tuple[Command, ...]:
        key, value = event.key, event.value
        if key == AXIS:
            self.axis = "up" if value == "up" else "along"
        elif key == MOMENTS:
            row = value.removeprefix("row-")
            self.row = "" if row == self.row else row
        elif key == OUTLINES:
            return (TakeBlank(value),)
        elif key == SHEETS and value in SHEETS_KG_M2:
            return (SetAreaWeight(SHEETS_KG_M2[value]),)
        return ()

    # --- carrying -------------------------------------------------------------------------------------------

    def _began(self, event: DragBegan, view: PlateView, rect: Rect) -> tuple[Command, ...]:
        key = self.armed.key if event.key == GHOST and self.armed is not None else event.key
        taken = self.carrying.take(event.pointer, key, event.at, view, rect)
        if taken is None:
            return ()
        self.armed, self.picked = None, "" if is_of_tray(key) else taken.key
        added = new_corner(view, key)
        return (added,) if added is not None else self.carrying.carry(event.pointer, event.at, view, rect)

    def _carry(self, pointer: int, at: Point, view: PlateView, rect: Rect) -> tuple[Command, ...]:
        return self.carrying.carry(pointer, at, view, rect)

    def _put_down(self, pointer: int, at: Point, view: PlateView, rect: Rect) -> tuple[Command, ...]:
        commands = self.carrying.carry(pointer, at, view, rect)
        carried = self.carrying.let_go(pointer)
        if carried is None or carried.origin_m is not None:
            return commands
        if carried.at_m is None:
            # Dropped where no wood is: the bench is asked all the same, so that it says why it went back.
            place = place_under(view, rect, at)
            return (put_down(view, tray_mass_kg(carried.key), place),) if rect.contains(at) else ()
        return self._put(carried.key, carried.at_m, view)

    def _put_back(self, pointer: int, view: PlateView) -> tuple[Command, ...]:
        return self.carrying.put_back(pointer, view)

    # --- small steps ----------------------------------------------------------------------------------------

    def _nudged(self, event: Nudged, view: PlateView) -> tuple[Command, ...]:
        step = step_m(event, view)
        if event.key == GHOST and self.armed is not None:
            x, z = self.armed.at_m
            goal = round(x + step * event.dx, 9), round(z + step * event.dy, 9)
            if in_wood(goal, view.bench.outline_m, view.bench.holes_m):
                self.armed = replace(self.armed, at_m=goal)
            return ()
        now = where_is(view, event.key)
        if now is None:
            return ()
        self.picked = event.key
        return move_to(view, event.key, (now[0] + step * event.dx, now[1] + step * event.dy), joins=False)
