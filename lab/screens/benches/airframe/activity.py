"""What can be done with an airframe: each thing has a picture, a panel and hands of its own."""

from __future__ import annotations

from abc import ABC, abstractmethod
from typing import Any, ClassVar

from lab.screens.benches.face import Asked, Shown, Stand
from lab.screens.benches.hands import BenchHands
from lab.simulation import Command
from lab.simulation.benches.airframe import AirframeBench, Doing
from lab.ui.events import Event
from lab.ui.geometry import Rect
from lab.ui.outcomes import WidgetEvent


class Activity(ABC):
    """One of them. It keeps what is picked and half done; all else is in its stand.

    doing: as the bench's state has it.  title: what its button says.  hands: what they do there.
    """

    doing: ClassVar[Doing]
    title: ClassVar[str]
    hands: BenchHands[Any, Any]

    @abstractmethod
    def shown(self, stand: Stand[AirframeBench], asked: Asked) -> Shown:
        """What is shown now."""

    @abstractmethod
    def view(self, stand: Stand[AirframeBench]) -> Any:
        """What its hands are given to look at."""

    def answer(self, event: WidgetEvent, stand: Stand[AirframeBench], rect: Rect) -> tuple[Command, ...]:
        """The commands that an event of its picture, panel or strip comes to.  rect: of the picture."""
        return self.hands.answer(event, self.view(stand), rect)

    def typed(self, event: Event, stand: Stand[AirframeBench], *, focused: str | None) -> bool:
        """Whether the event was typing into a field of its own.  focused: key of what the keyboard is at."""
        return False

    def only_moved(self, before: Stand[AirframeBench], now: Stand[AirframeBench]) -> bool:
        """Whether nothing but the motion of what was let go is new, which the picture asks for by itself."""
        return False


def is_told(bench: AirframeBench) -> bool:
    """Whether numbers and the balance point are shown: not before it is let go, unless they are asked for."""
    return bench.view == "all" or (bench.view == "numbers" and not bench.held)
