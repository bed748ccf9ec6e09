"""What hands do at the hung airframe: take its hook elsewhere, guess, draw lines. Widget events in, commands out."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from lab.mechanics import Vector
from lab.scenes.views.view import BodyView
from lab.screens.benches.airframe.hang_panel import ACROSS, ALONG, DRAW, NOSE, RUB_OUT, UP, WING
from lab.screens.benches.airframe.hang_picture import SIDEWAYS, UPRIGHT, hook_at, panels_of
from lab.screens.benches.airframe.hang_view import HOOK, HOOK_FACES, HangView, body_view
from lab.screens.benches.airframe.hang_words import NOSES
from lab.screens.benches.hands import BenchHands, TakenUp, step_m
from lab.screens.benches.sides import SIDES
from lab.simulation import Command
from lab.simulation.airframe_commands import GuessAttitude, HangBy
from lab.simulation.plate_commands import DrawPlumbLine, RubOutLines
from lab.ui.geometry import Point, Rect
from lab.ui.outcomes import Changed, Chosen, DragBegan, Nudged

AXES = (ALONG, ACROSS, UP)


@dataclass(frozen=True, slots=True, kw_only=True)
class CarriedHook:
    """The hook in hand. face: the view it is carried in.  origin_m: where it was.  offset_px: from the pointer to it.

    laid_for: the picture as it was laid out then.  begun: whether a move was already sent, which the next one joins.
    """

    face: str
    origin_m: Vector
    offset_px: Point
    laid_for: BodyView
    begun: bool = False


@dataclass(slots=True)
class HangHands(BenchHands[HangView, TakenUp]):
    """What is picked and carried just now: the hook, in one of the views."""

    _carried: dict[int, CarriedHook] = field(default_factory=dict)
    _downs: dict[int, Point] = field(default_factory=dict)

    @property
    def laid_for(self) -> BodyView | None:
        """The layout that is kept while the hook is in hand."""
        return next((carried.laid_for for carried in self._carried.values()), None)

    def pointer_down(self, pointer: int, at: Point) -> None:
        self._downs[pointer] = at

    def _pressed(self, key: str, view: HangView, rect: Rect) -> tuple[Command, ...]:
        if key in (DRAW, RUB_OUT):
            return (DrawPlumbLine(),) if key == DRAW else (RubOutLines(),)
        if _face_of(key):
            self._pick(key)
        return ()

    def _tapped(self, at: Point, view: HangView, rect: Rect) -> tuple[Command, ...]:
        self.picked = ""
        return ()

    def _chosen(self, event: Chosen, view: HangView) -> tuple[Command, ...]:
        """What was guessed once more is taken back."""
        nose, wing = view.hanging.guess_nose, view.hanging.guess_wing
        for each in NOSES if event.key == NOSE else ():
            if each == event.value:
                return (GuessAttitude(None if each == nose else each, wing),)
        for side in SIDES if event.key == WING else ():
            if side == event.value:
                return (GuessAttitude(nose, None if side == wing else side),)
        return ()

    def _typed(self, event: Changed, view: HangView) -> tuple[Command, ...]:
        if event.key not in AXES:
            return ()
        hook = list(view.hanging.hook_m)
        hook[AXES.index(event.key)] = view.readings.units.to_m(event.value)
        return (HangBy(hook[0], hook[1], hook[2]),)

    def _began(self, event: DragBegan, view: HangView, rect: Rect) -> tuple[Command, ...]:
        face = _face_of(event.key)
        panels = panels_of(view, rect)
        if face not in panels:
            return ()
        self.picked = event.key
        at, down = panels[face].px(view.hanging.hook_m), self._downs.get(event.pointer, event.at)
        self._carried[event.pointer] = CarriedHook(
            face=face,
            origin_m=view.hanging.hook_m,
            offset_px=(at[0] - down[0], at[1] - down[1]),
            laid_for=replace(body_view(view), laid_for=None),
        )
        return self._carry(event.pointer, event.at, replace(view, laid_for=self.laid_for), rect)

    def _carry(self, pointer: int, at: Point, view: HangView, rect: Rect) -> tuple[Command, ...]:
        carried = self._carried.get(pointer)
        if carried is None:
            return ()
        point = (at[0] + carried.offset_px[0], at[1] + carried.offset_px[1])
        command = HangBy(*hook_at(view, rect, carried.face, point), joins=carried.begun)
        self._carried[pointer] = replace(carried, begun=True)
        return (command,)

    def _put_down(self, pointer: int, at: Point, view: HangView, rect: Rect) -> tuple[Command, ...]:
        commands = self._carry(pointer, at, view, rect)
        self._carried.pop(pointer, None)
        return commands

    def _put_back(self, pointer: int, view: HangView) -> tuple[Command, ...]:
        carried = self._carried.pop(pointer, None)
        return () if carried is None or not carried.begun else (HangBy(*carried.origin_m, joins=True),)

    def _nudged(self, event: Nudged, view: HangView) -> tuple[Command, ...]:
        face = _face_of(event.key)
        if not face:
            return ()
        self.picked = event.key
        step, hook = step_m(event, view), list(view.hanging.hook_m)
        for (axis, sense), steps in ((SIDEWAYS[face], event.dx), (UPRIGHT[face], event.dy)):
            hook[axis] = round(hook[axis] + sense * step * steps, 9)
        return (HangBy(hook[0], hook[1], hook[2]),)

    def _removed(self, key: str, view: HangView) -> tuple[Command, ...]:
        """A hook can't be taken away: it hangs by it."""
        return ()


def _face_of(key: str) -> str:
    """The view whose hook has that key; "" for any other key."""
    face = key.removeprefix(f"{HOOK}-")
    return face if face != key and face in HOOK_FACES else ""
