"""What hands do at the mobile: take up, carry, hang, slide, nudge. Widget events in, commands out."""

from __future__ import annotations

from dataclasses import dataclass, field

from lab.scenes.mobile.view import BAR, REFERENCE, WEIGHT, Ghost, MobileView, number_of
from lab.screens.benches.hands import BenchHands, step_m
from lab.screens.benches.mobile.carried import NOWHERE, Armed, Carried, Carrying, place_on
from lab.screens.benches.mobile.keys import CANCEL, LEVELS, SHELF, TrayThing, tray_thing
from lab.screens.benches.mobile.moves import hanging, moved, picked_bar, thing_of, typed
from lab.screens.benches.strip_keys import GHOST, REMOVE
from lab.simulation import Command, Remove
from lab.simulation.command_table import carried_out
from lab.simulation.mobile_commands import Rehang
from lab.simulation.part_commands import Copy
from lab.simulation.refused import Refused
from lab.ui.geometry import Point, Rect
from lab.ui.outcomes import Changed, Chosen, DragBegan, Nudged


@dataclass(slots=True)
class Hands(BenchHands[MobileView, Armed]):
    """What is picked, taken up and carried just now.  shelf: what the tray shows."""

    shelf: str = "things"
    carrying: Carrying = field(default_factory=Carrying)
    _last_down: Point | None = None
    _strip_was: str = ""

    @property
    def strip_for(self) -> str:
        """What the strip is for: while something is carried what it was for before, so that the picture keeps its
        place."""
        return self.picked if self.carried is None else self._strip_was

    @property
    def carried(self) -> Carried | None:
        """What was taken in hand last, if anything is carried."""
        return self.carrying.last

    @property
    def coming(self) -> tuple[TrayThing, tuple[int, float]] | None:
        """What is on its way from the tray and over a bar: what it is, and the place."""
        carried = self.carried
        if carried is not None:
            return None if carried.thing is None or carried.place is None else (carried.thing, carried.place)
        return None if self.armed is None else (self.armed.thing, (self.armed.bar, self.armed.at_m))

    @property
    def ghost(self) -> Ghost | None:
        """What is on its way from the tray and over no bar."""
        carried = self.carried
        if carried is None or carried.thing is None or carried.place is not None:
            return None
        thing = carried.thing
        return Ghost(mass_kg=thing.mass_kg, look=thing.look, length_m=thing.length_m, pointer=carried.pointer)

    def pointer_down(self, pointer: int, at: Point) -> None:
        self.carrying.pointer_down(pointer, at)
        self._last_down = at

    # --- picking and hanging --------------------------------------------------------------------------------

    def _pressed(self, key: str, view: MobileView, rect: Rect) -> tuple[Command, ...]:
        thing, down = tray_thing(key), self._last_down
        self._last_down = None
        if thing is not None:
            self._take_up(thing, view)
        elif key == GHOST and self.armed is not None:
            return self._hang(self.armed.thing, (self.armed.bar, self.armed.at_m), view)
        elif key == CANCEL:
            self.focus = self.armed.key if self.armed else ""
            self.armed = None
        elif key == REMOVE:
            return self._removed(self.picked, view)
        elif (commands := self._asked_of_part(key, self._number, None)) is not None:
            self._pick_twin(commands, view)
            return commands
        elif self.armed is not None and down is not None and key != REFERENCE:
            return self._tapped(down, view, rect)
        elif key == REFERENCE or thing_of(key) is not None or picked_bar(key) is not None:
            self.parts.let_go()
            self._pick(key)
        return ()

    def _take_up(self, thing: TrayThing, view: MobileView) -> None:
        if self.armed is not None and self.armed.thing == thing:
            self.armed = None
            return
        top = view.bench.beams[0]
        self.armed = Armed(thing=thing, bar=top.id, at_m=round(top.length_m / 2, 9))
        self.picked, self.focus = "", GHOST

    def _tapped(self, at: Point, view: MobileView, rect: Rect) -> tuple[Command, ...]:
        if self.armed is None:
            self.picked = ""
            return ()
        place = place_on(view, rect, at)
        return () if place is None else self._hang(self.armed.thing, place, view)

    def _hang(self, thing: TrayThing, place: tuple[int, float], view: MobileView) -> tuple[Command, ...]:
        self.armed = None
        coming = view.bench.next_id if view.coming is None else view.coming
        self.picked = self.focus = f"{WEIGHT if thing.length_m is None else BAR}{coming}"
        return (hanging(thing, *place),)

    def _pick_twin(self, commands: tuple[Command, ...], view: MobileView) -> None:
        """A copy is picked, if there is room for one: it hides among its like."""
        copies = [each for each in commands if isinstance(each, Copy)]
        if copies and not isinstance(carried_out(view.bench, copies[0]), Refused):
            kind = BAR if number_of(self.picked, WEIGHT) is None else WEIGHT
            self.picked = f"{kind}{view.bench.next_id}"

    @property
    def _number(self) -> int | None:
        """The id of what is picked: a weight, or a bar with all below it."""
        weight = number_of(self.picked, WEIGHT)
        return picked_bar(self.picked) if weight is None else weight

    def _removed(self, key: str, view: MobileView) -> tuple[Command, ...]:
        number = thing_of(key)
        if number is None:
            number = picked_bar(key)
        if number is None:
            return ()
        self.picked = ""
        return (Remove(number),)

    def _typed(self, event: Changed, view: MobileView) -> tuple[Command, ...]:
        return typed(event, self.picked, view)

    def _chosen(self, event: Chosen, view: MobileView) -> tuple[Command, ...]:
        if event.key == SHELF:
            self.shelf, self.armed = event.value, None
        if event.key == LEVELS:
            row = event.value.removeprefix("row-")
            self.picked = "" if self.picked == row else row
        return ()

    # --- carrying -------------------------------------------------------------------------------------------

    def _began(self, event: DragBegan, view: MobileView, rect: Rect) -> tuple[Command, ...]:
        thing = tray_thing(event.key)
        if event.key == GHOST and self.armed is not None:
            thing = self.armed.thing
        if not self.carrying.take(event.pointer, event.key, thing, event.at, view, rect):
            return ()
        self._strip_was = self.picked
        self.armed, self.picked = None, "" if thing is not None else event.key
        return self.carrying.carry(event.pointer, event.at, view, rect)

    def _carry(self, pointer: int, at: Point, view: MobileView, rect: Rect) -> tuple[Command, ...]:
        return self.carrying.carry(pointer, at, view, rect)

    def _put_down(self, pointer: int, at: Point, view: MobileView, rect: Rect) -> tuple[Command, ...]:
        commands = self.carrying.carry(pointer, at, view, rect)
        carried = self.carrying.let_go(pointer)
        if carried is None:
            return commands
        if carried.thing is not None:
            if carried.place is None:
                return (hanging(carried.thing, NOWHERE, 0.0),)
            return self._hang(carried.thing, carried.place, view)
        number = thing_of(carried.key)
        if carried.place is None and number is not None:
            # Dropped where no bar is: it is back where it came from, and the bench is asked so that it says why.
            return (*commands, Rehang(number, NOWHERE, 0.0))
        return commands

    def _put_back(self, pointer: int, view: MobileView) -> tuple[Command, ...]:
        return self.carrying.put_back(pointer)

    # --- small steps ----------------------------------------------------------------------------------------

    def _nudged(self, event: Nudged, view: MobileView) -> tuple[Command, ...]:
        right_m = step_m(event, view) * event.dx
        if event.key == GHOST and self.armed is not None:
            self.armed = self.armed.moved(right_m, -event.dy, view)
            return ()
        self.picked = event.key
        return moved(event.key, right_m, view)
