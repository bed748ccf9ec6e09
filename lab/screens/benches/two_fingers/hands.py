"""What hands do at the two fingers: pick up, carry, put down, nudge, soap. Widget events in, commands out."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import ClassVar

from lab.scenes.two_fingers.view import (
    MEETING,
    Coming,
    TwoFingersView,
    along_at_m,
    place_at_m,
    stage_for,
)
from lab.screens.benches.hands import CarryingHands, step_m
from lab.screens.benches.strip_keys import GHOST
from lab.screens.benches.two_fingers.carried import Armed, Carried, off_the_end, other_hand_slides
from lab.screens.benches.two_fingers.keys import CANCEL, FORGET, MOMENTS, STOP, tray_mass_kg
from lab.screens.benches.two_fingers.moves import move_of, piece_of, snapped_place_m, where_is
from lab.screens.benches.two_fingers.typed import gripped, typed
from lab.simulation import Command, Hang, Remove
from lab.simulation.two_finger_commands import GuessMeeting, StopFingers
from lab.ui.geometry import Point, Rect
from lab.ui.outcomes import Changed, Chosen, DragBegan, Nudged


@dataclass(slots=True)
class Hands(CarryingHands[TwoFingersView, Armed, Carried]):
    """What is picked, taken up and carried just now."""

    CANCEL: ClassVar[str] = CANCEL

    @property
    def carries(self) -> bool:
        """Whether anything is in hand."""
        return bool(self._carried)

    @property
    def coming(self) -> Coming | None:
        """The weight on its way that the picture shows."""
        for carried in reversed(self._carried.values()):
            if carried.mass_kg is not None:
                return Coming(mass_kg=carried.mass_kg, at_m=carried.at_m, pointer=carried.pointer)
        if self.armed is not None and not self._carried:
            return Coming(mass_kg=self.armed.mass_kg, at_m=self.armed.at_m)
        return None

    # --- picking and standing ---------------------------------------------------------------------------------

    def _from_tray(self, key: str, view: TwoFingersView) -> Armed | None:
        mass_kg, (low_m, high_m) = tray_mass_kg(key), view.bench.beam_m
        return None if mass_kg is None else Armed(key=key, mass_kg=mass_kg, at_m=round((low_m + high_m) / 2, 9))

    def _aimed(self, armed: Armed, at: Point, view: TwoFingersView, rect: Rect) -> Armed | None:
        along_m = place_at_m(view, rect, at)
        return None if along_m is None else replace(armed, at_m=snapped_place_m(along_m, view, rect))

    def _put(self, armed: Armed, view: TwoFingersView) -> tuple[Command, ...]:
        return self._stand(armed.mass_kg, armed.at_m, view)

    def _asked(self, key: str, view: TwoFingersView) -> tuple[Command, ...]:
        if key == STOP:
            return (StopFingers(),)
        if key == FORGET:
            return self._removed(self.picked, view)
        picked, pressed = piece_of(view, self.picked), piece_of(view, key)
        part = None if picked is None else picked.id
        commands = self._asked_of_part(key, part, None if pressed is None else pressed.id)
        if commands is not None:
            return commands
        if where_is(key, view) is not None:
            self.parts.let_go()
            self._pick(key)
        return ()

    def _stand(self, mass_kg: float, at_m: float, view: TwoFingersView) -> tuple[Command, ...]:
        self.armed = None
        self.picked = self.focus = f"piece-{view.bench.next_id}"
        return (Hang(mass_kg, at_m, "clamped"),)

    def _removed(self, key: str, view: TwoFingersView) -> tuple[Command, ...]:
        if key == MEETING:
            self.picked = ""
            return (GuessMeeting(None),)
        piece = piece_of(view, key)
        if piece is None:
            return ()
        self.picked = ""
        return (Remove(piece.id),)

    def _typed(self, event: Changed, view: TwoFingersView) -> tuple[Command, ...]:
        return typed(event, self.picked, view)

    def _chosen(self, event: Chosen, view: TwoFingersView) -> tuple[Command, ...]:
        if event.key == MOMENTS:
            key = event.value.removeprefix("row-")
            if piece_of(view, key) is not None:
                self.picked = "" if self.picked == key else key
            return ()
        return gripped(event, self.picked)

    # --- carrying ---------------------------------------------------------------------------------------------

    def _began(self, event: DragBegan, view: TwoFingersView, rect: Rect) -> tuple[Command, ...]:
        mass_kg = tray_mass_kg(event.key)
        if event.key == GHOST and self.armed is not None:
            mass_kg = self.armed.mass_kg
        origin_m = where_is(event.key, view)
        if mass_kg is None and origin_m is None:
            return ()
        offset_px = 0.0
        if origin_m is not None:
            x = stage_for(view, rect).camera.x_px(origin_m)
            offset_px = x - self._downs.get(event.pointer, event.at)[0]
            if event.key == MEETING and view.bench.meeting_guess_m is None:
                offset_px = 0.0
        self.armed, self.picked = None, "" if mass_kg is not None else event.key
        self._carried[event.pointer] = Carried(
            key=event.key,
            mass_kg=mass_kg,
            origin_m=origin_m or 0.0,
            offset_px=offset_px,
            at_m=origin_m,
            pointer=event.at,
        )
        return self._carry(event.pointer, event.at, view, rect)

    def _carry(self, pointer: int, at: Point, view: TwoFingersView, rect: Rect) -> tuple[Command, ...]:
        carried = self._carried.get(pointer)
        if carried is None:
            return ()
        point = (at[0] + carried.offset_px, at[1])
        is_piece = piece_of(view, carried.key) is not None
        along_m = (
            place_at_m(view, rect, point) if carried.mass_kg is not None or is_piece else along_at_m(view, rect, point)
        )
        at_m = None if along_m is None else snapped_place_m(along_m, view, rect)
        self._carried[pointer] = replace(carried, at_m=at_m, pointer=at)
        if carried.mass_kg is not None:
            return ()
        goal_m = carried.origin_m if at_m is None else at_m
        command = move_of(carried.key, goal_m, view, joins=carried.begun or other_hand_slides(self._carried, pointer))
        if command is None:
            return ()
        self._carried[pointer] = replace(self._carried[pointer], begun=True)
        return (command,)

    def _put_down(self, pointer: int, at: Point, view: TwoFingersView, rect: Rect) -> tuple[Command, ...]:
        commands = self._carry(pointer, at, view, rect)
        carried = self._carried.pop(pointer, None)
        if carried is None:
            return commands
        if carried.at_m is None:
            return (*commands, *off_the_end(carried, view))
        if carried.mass_kg is not None:
            return self._stand(carried.mass_kg, carried.at_m, view)
        return commands

    def _put_back(self, pointer: int, view: TwoFingersView) -> tuple[Command, ...]:
        carried = self._carried.pop(pointer, None)
        if carried is None or not carried.begun:
            return ()
        command = move_of(carried.key, carried.origin_m, view, joins=True)
        return () if command is None else (command,)

    # --- small steps ------------------------------------------------------------------------------------------

    def _nudged(self, event: Nudged, view: TwoFingersView) -> tuple[Command, ...]:
        along_m = step_m(event, view) * event.dx
        if event.key == GHOST and self.armed is not None:
            low_m, high_m = view.bench.beam_m
            self.armed = replace(self.armed, at_m=round(min(max(self.armed.at_m + along_m, low_m), high_m), 9))
            return ()
        now_m = where_is(event.key, view)
        if now_m is None:
            return ()
        self.picked = event.key
        return self._moved_to(event.key, now_m + along_m, view)

    def _moved_to(self, key: str, at_m: float, view: TwoFingersView) -> tuple[Command, ...]:
        command = move_of(key, at_m, view, joins=False)
        return () if command is None else (command,)
