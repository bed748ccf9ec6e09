"""What hands at every bench have in common: events to what they mean, what is picked, taken up and carried."""

from __future__ import annotations

from abc import ABC, abstractmethod
from dataclasses import dataclass, field
from typing import ClassVar, Generic, Protocol, TypeVar

from lab.scenes.readings import Readings
from lab.screens.benches.part_strip import PartStrip
from lab.screens.benches.strip_keys import GHOST, MORE, REMOVE
from lab.simulation import Command
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


class BenchView(Protocol):
    """What a bench is shown as."""

    @property
    def readings(self) -> Readings:
        """How quantities are written."""


class TakenUp(Protocol):
    """What was taken up from the tray by a press and waits for a place."""

    @property
    def key(self) -> str:
        """Of it in the tray."""


V = TypeVar("V", bound=BenchView)
A = TypeVar("A", bound=TakenUp)
C = TypeVar("C")


@dataclass(slots=True)
class BenchHands(ABC, Generic[V, A]):
    """What is picked and taken up just now, and what every event means.

    parts: what is half done with the part that is picked.  focus: what should get the keyboard's focus next.
    """

    picked: str = ""
    armed: A | None = None
    focus: str = ""
    parts: PartStrip = field(default_factory=PartStrip)

    def let_all_go(self) -> bool:
        """Nothing is picked or taken up any more, no name half typed and no tie looked for; whether anything was."""
        had = bool(self.picked or self.armed)
        self.picked, self.armed = "", None
        self.parts.let_go(more=self.parts.more)
        return had

    def _asked_of_part(self, key: str, part: int | None, pressed: int | None) -> tuple[Command, ...] | None:
        """The commands of a press on one of the strip's buttons, or on what a part is to be tied to; else None.

        part: the id of the part that is picked.  pressed: of the one that the key means.
        """
        commands = self.parts.pressed(key, part)
        if commands is None:
            return self.parts.tied(part, pressed)
        self.focus = MORE if key == MORE else ""
        return commands

    def answer(self, event: WidgetEvent, view: V, rect: Rect) -> tuple[Command, ...]:
        """The commands that an event of the picture, the tray, the table or the strip comes to.

        rect: of the picture.
        """
        match event:
            case Pressed():
                return self._pressed(event.key, view, rect)
            case Tapped():
                return self._tapped(event.at, view, rect)
            case DragBegan():
                return self._began(event, view, rect)
            case Dragged():
                return self._carry(event.pointer, event.at, view, rect)
            case Dropped():
                return self._put_down(event.pointer, event.at, view, rect)
            case DragCancelled():
                return self._put_back(event.pointer, view)
            case Nudged():
                return self._nudged(event, view)
            case Removed():
                return self._removed(event.key, view)
            case Changed():
                return self._typed(event, view)
            case Chosen():
                return self._chosen(event, view)
        return ()

    @abstractmethod
    def pointer_down(self, pointer: int, at: Point) -> None:
        """Remember where a pointer went down: what it will carry keeps its distance to that point."""

    def _pick(self, key: str) -> None:
        """Picked by a press, and by another one no more."""
        self.armed = None
        self.picked = "" if self.picked == key else key

    @abstractmethod
    def _pressed(self, key: str, view: V, rect: Rect) -> tuple[Command, ...]:
        """A handle, a button or something of the tray was pressed."""

    @abstractmethod
    def _tapped(self, at: Point, view: V, rect: Rect) -> tuple[Command, ...]:
        """The bare picture was pressed."""

    @abstractmethod
    def _began(self, event: DragBegan, view: V, rect: Rect) -> tuple[Command, ...]:
        """Something is taken in hand."""

    @abstractmethod
    def _carry(self, pointer: int, at: Point, view: V, rect: Rect) -> tuple[Command, ...]:
        """It is brought to where the pointer is now."""

    @abstractmethod
    def _put_down(self, pointer: int, at: Point, view: V, rect: Rect) -> tuple[Command, ...]:
        """It is dropped."""

    @abstractmethod
    def _put_back(self, pointer: int, view: V) -> tuple[Command, ...]:
        """It goes back to where it came from."""

    @abstractmethod
    def _nudged(self, event: Nudged, view: V) -> tuple[Command, ...]:
        """A step by the keyboard."""

    @abstractmethod
    def _removed(self, key: str, view: V) -> tuple[Command, ...]:
        """A thing is to go."""

    @abstractmethod
    def _typed(self, event: Changed, view: V) -> tuple[Command, ...]:
        """A number of the strip or the panel is another one."""

    @abstractmethod
    def _chosen(self, event: Chosen, view: V) -> tuple[Command, ...]:
        """One of several was chosen."""


@dataclass(slots=True)
class CarryingHands(BenchHands[V, A], Generic[V, A, C]):
    """Hands that also know what each pointer carries, and how a tray and its strip are pressed.

    CANCEL: the key of the button that puts back what is taken up.
    """

    CANCEL: ClassVar[str]
    _carried: dict[int, C] = field(default_factory=dict)
    _downs: dict[int, Point] = field(default_factory=dict)

    @property
    def carried(self) -> C | None:
        """What was taken in hand last, if anything is carried."""
        return next(reversed(self._carried.values()), None)

    def pointer_down(self, pointer: int, at: Point) -> None:
        self._downs[pointer] = at

    def _pressed(self, key: str, view: V, rect: Rect) -> tuple[Command, ...]:
        taken = self._from_tray(key, view)
        if taken is not None:
            if self.armed is not None and self.armed.key == key:
                self.armed = None
            else:
                self.armed = taken
                self.picked, self.focus = "", GHOST
        elif key == GHOST and self.armed is not None:
            return self._put(self.armed, view)
        elif key == self.CANCEL:
            self.focus = self.armed.key if self.armed else ""
            self.armed = None
        elif key == REMOVE:
            return self._removed(self.picked, view)
        else:
            return self._asked(key, view)
        return ()

    def _tapped(self, at: Point, view: V, rect: Rect) -> tuple[Command, ...]:
        if self.armed is None:
            self.picked = ""
            return ()
        aimed = self._aimed(self.armed, at, view, rect)
        return () if aimed is None else self._put(aimed, view)

    @abstractmethod
    def _from_tray(self, key: str, view: V) -> A | None:
        """What a press on the tray takes up; None for any other key."""

    @abstractmethod
    def _aimed(self, armed: A, at: Point, view: V, rect: Rect) -> A | None:
        """The same with the place that a pointer means; None where it cannot go."""

    @abstractmethod
    def _put(self, armed: A, view: V) -> tuple[Command, ...]:
        """What is taken up goes to its place."""

    @abstractmethod
    def _asked(self, key: str, view: V) -> tuple[Command, ...]:
        """A handle was pressed, or a button that this bench has of its own."""


def step_m(event: Nudged, view: BenchView) -> float:
    """How far a step of the keyboard goes."""
    return view.readings.units.to_m(view.readings.fineness.step) * (LARGE_STEPS if event.large else 1)
