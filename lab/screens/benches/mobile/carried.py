"""What is on its way: carried by a pointer, or taken up by a press and waiting for a place."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from lab.scenes.mobile.pointing import along_under, hook_point, place_under, px_per_m
from lab.scenes.mobile.view import BAR, REFERENCE, MobileView, number_of
from lab.screens.benches.mobile.keys import TrayThing
from lab.screens.benches.mobile.moves import hangs_at, snapped_m, thing_of, tied
from lab.simulation import Command, MoveReference
from lab.simulation.benches import Mobile
from lab.simulation.mobile_commands import Rehang, SlideBar
from lab.ui.geometry import Point, Rect

NOWHERE = -1
"""No bar has this id."""

Place = tuple[int, float]
"""A bar, by its id, and a place on it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """What a pointer carries. thing: from the tray, None for what hangs already.

    origin: the bar that it hung from and the place on it; of a bar by its wood, itself and the place of its ring.
    offset: from the pointer to its hook.  start: where the pointer took hold, pointer: where it is.
    place: where it hangs or would hang, None over no bar.  begun: whether a move was already sent.
    """

    key: str
    thing: TrayThing | None
    origin: Place
    offset: Point
    start: Point
    pointer: Point
    place: Place | None = None
    begun: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Armed:
    """A thing taken up from the tray by a press, waiting for a place. bar, at_m: where it would hang."""

    thing: TrayThing
    bar: int
    at_m: float

    @property
    def key(self) -> str:
        """Of the thing in the tray."""
        return self.thing.key

    def moved(self, step_m: float, down: int, view: MobileView) -> Armed:
        """A step along its bar, or to a bar further down or up in reading order."""
        bars = [beam for beam in view.bench.beams if beam.id != view.coming]
        ids = [beam.id for beam in bars]
        now = ids.index(self.bar) if self.bar in ids else 0
        bar = bars[min(max(now + down, 0), len(bars) - 1)]
        at_m = bar.length_m / 2 if down else min(max(self.at_m + step_m, 0.0), bar.length_m)
        return replace(self, bar=bar.id, at_m=round(at_m, 9))


@dataclass(slots=True)
class Carrying:
    """All that pointers carry just now.

    laid_for: the mobile as it was when the first thing was taken in hand, by which its picture stays laid out.
    """

    laid_for: Mobile | None = None
    _carried: dict[int, Carried] = field(default_factory=dict)
    _downs: dict[int, Point] = field(default_factory=dict)

    @property
    def last(self) -> Carried | None:
        """What was taken in hand last, if anything is carried."""
        return next(reversed(self._carried.values()), None)

    def pointer_down(self, pointer: int, at: Point) -> None:
        """Remember where a pointer went down: what it will carry keeps its distance to that point."""
        self._downs[pointer] = at

    def take(self, pointer: int, key: str, thing: TrayThing | None, at: Point, view: MobileView, rect: Rect) -> bool:
        """Take a thing of the tray or of the picture in hand; whether there was anything to be taken."""
        start = self._downs.get(pointer, at)
        held = ((NOWHERE, 0.0), (0.0, 0.0)) if thing is not None else _hold_of(key, view, rect, start)
        if held is None:
            return False
        if not self._carried:
            self.laid_for = view.bench if view.coming is None else None
        origin, offset = held
        self._carried[pointer] = Carried(key=key, thing=thing, origin=origin, offset=offset, start=start, pointer=at)
        return True

    def carry(self, pointer: int, at: Point, view: MobileView, rect: Rect) -> tuple[Command, ...]:
        """The commands that bring it to where the pointer is now."""
        carried = self._carried.get(pointer)
        if carried is None:
            return ()
        commands, place = _brought(carried, at, view, rect)
        begun = carried.begun or bool(commands)
        self._carried[pointer] = replace(carried, pointer=at, place=place, begun=begun)
        return commands

    def let_go(self, pointer: int) -> Carried | None:
        """It is carried no more."""
        carried = self._carried.pop(pointer, None)
        if not self._carried:
            self.laid_for = None
        return carried

    def put_back(self, pointer: int) -> tuple[Command, ...]:
        """It goes back to where it came from."""
        carried = self.let_go(pointer)
        if carried is None or not carried.begun:
            return ()
        number, (bar, at_m) = thing_of(carried.key), carried.origin
        if carried.key == REFERENCE:
            return (MoveReference(at_m, joins=True),)
        return (SlideBar(bar, at_m, joins=True),) if number is None else (Rehang(number, bar, at_m, joins=True),)


def place_on(view: MobileView, rect: Rect, point: Point, *, moving: int | None = None) -> Place | None:
    """The place of a bar that a point means, drawn to a mark where it is near one."""
    found = place_under(view, rect, point, moving=moving)
    beam = None if found is None else view.bench.beam(found[0])
    if found is None or beam is None:
        return None
    at_m = snapped_m(found[1], view, px_per_m(view, rect))
    return beam.id, min(max(at_m, 0.0), beam.length_m)


def _hold_of(key: str, view: MobileView, rect: Rect, start: Point) -> tuple[Place, Point] | None:
    """Where a thing of the picture is as it is taken hold of, and how far its hook is from the pointer."""
    bench = view.bench
    if key == REFERENCE:
        off_px = (bench.reference_m - along_under(view, rect, start[0])) * px_per_m(view, rect)
        return (NOWHERE, bench.reference_m), (off_px, 0.0)
    bar = bench.beam(number_of(key, BAR))
    if bar is not None:
        return (bar.id, bar.pin_m), (0.0, 0.0)
    hangs, number = hangs_at(key, view), thing_of(key)
    if hangs is None or number is None:
        return None
    x, y = hook_point(view, rect, number)
    return hangs, (x - start[0], y - start[1])


def _brought(carried: Carried, at: Point, view: MobileView, rect: Rect) -> tuple[tuple[Command, ...], Place | None]:
    """The commands that bring a carried thing to a pointer, and the place that this is on a bar."""
    scale, joins = px_per_m(view, rect), carried.begun
    point = (at[0] + carried.offset[0], at[1] + carried.offset[1])
    if carried.key == REFERENCE:
        goal_m = snapped_m(along_under(view, rect, point[0]), view, scale)
        return (MoveReference(goal_m, joins=joins),), None
    bar = view.bench.beam(number_of(carried.key, BAR))
    if bar is not None:
        # Its ring stays where it is, so the bar goes right when the ring comes to lie further left on it.
        goal_m = snapped_m(carried.origin[1] - (at[0] - carried.start[0]) / scale, view, scale)
        return (SlideBar(bar.id, min(max(goal_m, 0.0), bar.length_m), joins=joins),), None
    number = thing_of(carried.key)
    moving = number if number is not None and view.bench.beam(number) is not None else None
    place = place_on(view, rect, point, moving=moving)
    if carried.thing is not None:
        return (), place
    return tied(carried.key, *(place or carried.origin), view, joins=joins), place
