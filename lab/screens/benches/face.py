"""What one bench gives to the screen of free build: its picture, its panel, and what hands do to it."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, ClassVar, Generic, TypeVar, cast

from lab.scenes.readings import Readings
from lab.screens.benches.hands import BenchHands, BenchView
from lab.screens.benches.layout import Areas
from lab.screens.benches.panel import PanelParts
from lab.screens.benches.tasks import NO_TASK, TASK, Kinds, Tasked, task_after, task_widgets
from lab.simulation import Command
from lab.simulation.benches.tasks import Task
from lab.ui.events import Event
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look
from lab.ui.outcomes import Pressed, WidgetEvent
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

if TYPE_CHECKING:
    from lab.simulation.benches import BenchState

B = TypeVar("B", bound="BenchState")


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand(Generic[B]):
    """What stands on the bench, and how it is shown.

    previous, fraction: the state one tick before, and how far between the two to draw.
    """

    look: Look
    readings: Readings
    bench: B
    previous: B
    fraction: float = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What of a bench is shown just now: see `Pieces`."""

    picture: Callable[[float], Widget]
    parts: PanelParts
    strip: Panel | None = None
    areas: Areas | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What the face asks the screen for when it is drawn.

    picture: the rectangle of the picture.  stand: as it is by then; while something moves, nothing else is new.
    """

    picture: Callable[[], Rect | None]
    stand: Callable[[], Stand[BenchState]]


class Face(ABC, Generic[B]):
    """One bench on the screen of free build. It keeps what is picked and what is half done; all else is in its stand.

    title: what the help is headed with.  help: sentences that say what can be done.  caution: for real things.
    tasks: every kind of task that the bench can set.
    focus: key of what should get the keyboard's focus next; "" for nothing.
    """

    help: ClassVar[tuple[str, ...]]
    caution: ClassVar[str]
    tasks: ClassVar[Kinds]
    focus: str = ""
    _hands: BenchHands[Any, Any]
    _task: Task[Any] | None = None

    @abstractmethod
    def shown(self, stand: Stand[B], asked: Asked) -> Shown:
        """What is shown now."""

    @abstractmethod
    def _view(self, stand: Stand[B]) -> BenchView:
        """What the picture, the panel and the strip show."""

    def task_shown(self, stand: Stand[B]) -> tuple[Widget, ...]:
        """What the panel shows of a task."""
        return task_widgets(stand.look, self.tasks, cast(Tasked, stand.bench), self._task)

    def answer(self, event: WidgetEvent, stand: Stand[B], rect: Rect) -> tuple[Command, ...]:
        """The commands that an event of the picture, tray, table or strip comes to.  rect: of the picture."""
        if isinstance(event, Pressed) and event.key in (TASK, NO_TASK):
            self._task = task_after(self.tasks, cast(Tasked, stand.bench), self._task, event.key)
            return ()
        commands = self._hands.answer(event, self._view(stand), rect)
        self.focus, self._hands.focus = self._hands.focus, ""
        return commands

    def let_all_go(self) -> bool:
        """Nothing is picked or taken up any more; whether anything was."""
        return self._hands.let_all_go()

    def pointer_down(self, pointer: int, at: Point) -> None:
        """A pointer went down: what it will carry keeps its distance to that point."""
        self._hands.pointer_down(pointer, at)

    def typed(self, event: Event, stand: Stand[B], *, focused: str | None) -> bool:
        """Whether the event was typing into a field of this bench.  focused: key of what the keyboard is at."""
        return False

    def only_moved(self, before: Stand[B], now: Stand[B]) -> bool:
        """Whether nothing but the motion of what was let go is new, which the picture asks for by itself."""
        return False
