"""What pointers carry at the hung plate: corners, holes, weights, the pin, the reference line; or what is new."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from lab.scenes.plate_view import CORNER, PlateView
from lab.screens.benches.plate.keys import is_of_tray
from lab.screens.benches.plate.moves import Place, move_to, new_corner, place_under, where_is
from lab.simulation import Command
from lab.simulation.benches import HungPlate
from lab.simulation.benches.plate_rings import in_wood
from lab.ui.geometry import Point, Rect


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """What a pointer carries.

    key: of the thing, or of the tray.  origin_m: where it was; None for what is new.  offset_px: from the pointer.
    at_m: where it would go, None while it is off the plate.  begun: whether a move was already sent, which the next one
    joins.  corners: of all rings together while it is carried: were the corner not added, none would be moved for it.
    """

    key: str
    origin_m: Place | None
    offset_px: Point
    at_m: Place | None
    pointer: Point
    begun: bool = False
    corners: int = 0


@dataclass(slots=True)
class Carrying:
    """All that pointers carry just now.

    laid_for, laid_in: the plate and the rectangle as they were when the first thing was taken in hand, which the
    picture stays laid out for.
    """

    laid_for: HungPlate | None = None
    laid_in: Rect | None = None
    _carried: dict[int, Carried] = field(default_factory=dict)
    _downs: dict[int, Point] = field(default_factory=dict)

    @property
    def last(self) -> Carried | None:
        """What was taken in hand last, if anything is carried."""
        return next(reversed(self._carried.values()), None)

    def pointer_down(self, pointer: int, at: Point) -> None:
        """Remember where a pointer went down: what it will carry keeps its distance to that point."""
        self._downs[pointer] = at

    def take(self, pointer: int, key: str, at: Point, view: PlateView, rect: Rect) -> Carried | None:
        """Take a thing of the tray or of the picture in hand; None where there is nothing of that key.

        An edge is taken by the corner that will be added to it.
        """
        if is_of_tray(key):
            carried = Carried(key=key, origin_m=None, offset_px=(0.0, 0.0), at_m=None, pointer=at)
            self._carried[pointer] = carried
            return carried
        added = new_corner(view, key)
        origin = where_is(view, key) if added is None else (added.at_m, added.up_m)
        if origin is None:
            return None
        down = self._downs.get(pointer, at)
        x, y = view.stage(rect).px(view, origin)
        if not self._carried:
            self.laid_for, self.laid_in = view.bench, rect
        carried = Carried(
            key=key if added is None else f"{CORNER}{added.ring}-{added.after + 1}",
            origin_m=origin,
            offset_px=(x - down[0], y - down[1]),
            at_m=origin,
            pointer=at,
            corners=_corners(view) + (added is not None),
        )
        self._carried[pointer] = carried
        return carried

    def carry(self, pointer: int, at: Point, view: PlateView, rect: Rect) -> tuple[Command, ...]:
        """The commands that bring it to where the pointer is now."""
        carried = self._carried.get(pointer)
        if carried is None:
            return ()
        place = place_under(view, rect, (at[0] + carried.offset_px[0], at[1] + carried.offset_px[1]))
        if carried.origin_m is None:
            on_it = rect.contains(at) and in_wood(place, view.bench.outline_m, view.bench.holes_m)
            self._carried[pointer] = replace(carried, at_m=place if on_it else None, pointer=at)
            return ()
        if carried.corners != _corners(view):
            return ()
        self._carried[pointer] = replace(carried, at_m=place, pointer=at, begun=True)
        return move_to(view, carried.key, place, joins=carried.begun)

    def let_go(self, pointer: int) -> Carried | None:
        """It is carried no more."""
        carried = self._carried.pop(pointer, None)
        if not self._carried:
            self.laid_for = self.laid_in = None
        return carried

    def put_back(self, pointer: int, view: PlateView) -> tuple[Command, ...]:
        """It goes back to where it came from."""
        carried = self.let_go(pointer)
        if carried is None or carried.origin_m is None or not carried.begun:
            return ()
        return move_to(view, carried.key, carried.origin_m, joins=True)


def _corners(view: PlateView) -> int:
    return sum(len(ring) for ring in view.bench.rings_m)
