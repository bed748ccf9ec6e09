"""What every screen is, and what each is shown.

A screen is made with a `Look`, is shown a model (a frozen value below), draws it, and answers events
with an `Outcome`.  It holds widgets and what is half done (a drag, an open dialog), nothing else.
The laboratory makes screens by these names:

    lab.screens.start.StartScreen            shows StartModel
    lab.screens.lessons.LessonsScreen        shows LessonsModel
    lab.screens.benches.screen.FreeBuildScreen    shows BuildModel
    lab.screens.questions.screen.QuestionScreen      shows QuestionModel   (predict, watch, explain, finished)
    lab.screens.probe.ProbeScreen            shows ProbeModel
    lab.screens.learner.LearnerScreen        shows LearnerModel
    lab.screens.teachers_page.TeachersPageScreen     shows TeachersPageModel
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Literal, Protocol, TypeAlias, TypeVar

from lab.screens.intents import Intent

if TYPE_CHECKING:
    from lab.files import View

    # For the annotations alone: the start screen must not wait for mechanics and file formats to load.
    from lab.lesson.messages import Message
    from lab.lesson.probe.items import Item
    from lab.lesson.probe.probe import Probe
    from lab.lesson.run import Run
    from lab.lesson.teaching import TeachingSheet
    from lab.mechanics import Part
    from lab.outline.node import Node
    from lab.simulation.benches.hanging_bar import HangingBar
    from lab.simulation.benches.states import BenchState
    from lab.ui.canvas import Canvas
    from lab.ui.events import Event
    from lab.ui.look import Look

Bench: TypeAlias = "BenchState"


class Workpiece(Protocol):
    """What every bench of free build has, whatever stands on it; see `lab.simulation.benches`."""

    @property
    def title(self) -> str:
        """What it is called."""

    @property
    def parts(self) -> tuple[Part, ...]:
        """Everything that weighs something."""

    @property
    def units(self) -> str:
        """The unit system that it is shown in."""

    @property
    def view(self) -> View:
        """How many of the numbers are shown."""

    @property
    def held(self) -> bool:
        """Whether it is not let go."""

    @property
    def moving(self) -> bool:
        """Whether time changes anything now."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What an event led to.

    consumed: the event was used, so it goes no further and the screen is drawn again.
    intents: what the laboratory is to do, in order.
    """

    consumed: bool = False
    intents: tuple[Intent, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """What a person may choose for the whole lab; every field can be the name in `ChangeSetting`.

    units: "" leaves each lesson and build in its own units.  balance_by_ear: a tilt is heard as a pitch.
    """

    language: str = "en"
    theme: Literal["paper", "contrast", "print"] = "paper"
    text_scale: float = 1.0
    units: Literal["", "g-cm", "kg-m", "N-m", "lb-in"] = ""
    sound: bool = True
    balance_by_ear: bool = False
    reduced_motion: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Notice:
    """A sentence over the screen: `words.say(template, **values)`, values being text already.

    kind: "said" can be dismissed and goes by itself; "trouble" stays, and with `retry` offers
    `RetrySave`.
    """

    template: str
    values: Mapping[str, str] = field(default_factory=dict)
    kind: Literal["said", "trouble"] = "said"
    retry: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class StartModel:
    """The start screen.

    learner: the code that answers are kept under.
    first_lesson: for `Go(place="lesson", name=…)` of *begin here*; "" lets the laboratory choose.
    bench, previous, fraction: the bar on the start screen, held until somebody lets it go, as in
    `BuildModel`; it is the workshop's own and changes nothing that anyone built.
    """

    setting: Setting
    learner: str
    first_lesson: str
    bench: HangingBar | None = None
    previous: HangingBar | None = None
    fraction: float = 1.0
    notice: Notice | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LessonEntry:
    """One lesson of the list; `title` and `aim` are the writer's words (`words.content`).

    answered, right_first: how many of its questions, and how many of those were right at the first try.
    is_next: the one to go on with.  has_page: whether there is a teacher's page.
    """

    name: str
    title: str
    level: str
    aim: str
    questions: int
    answered: int = 0
    right_first: int = 0
    is_next: bool = False
    has_page: bool = False


Offer = Literal["first probe", "again", "next", "last probe", "nothing"]
"""The next best thing to do: how one thinks, before and after; what has come back; the next lesson."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LessonsModel:
    """The lessons in the order in which they are best taken.

    offer: the one dark action.  again: how many questions have come back.  gain: what has changed, a sentence each.
    learner: the code that answers are kept under.
    """

    setting: Setting
    lessons: tuple[LessonEntry, ...]
    offer: Offer = "next"
    again: int = 0
    gain: tuple[Message, ...] = ()
    learner: str = ""
    notice: Notice | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class UsedCode:
    """A code that was used on this machine.  when: a template that says roughly how long ago."""

    code: str
    when: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LearnerModel:
    """Whose answers they are.

    learner: the code in force.  used: those to pick from, the latest first.  known: every one that was ever used here.
    """

    setting: Setting
    learner: str
    used: tuple[UsedCode, ...] = ()
    known: tuple[str, ...] = ()
    notice: Notice | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class BuildEntry:
    """A build file that can be opened; `title` is the writer's."""

    title: str
    path: Path


@dataclass(frozen=True, slots=True, kw_only=True)
class BuildModel:
    """Free build.  Draw `bench` at `fraction` of the way from `previous` to it."""

    setting: Setting
    bench: Workpiece
    previous: Workpiece
    fraction: float = 1.0
    can_undo: bool = False
    can_redo: bool = False
    builds: tuple[BuildEntry, ...] = ()
    notice: Notice | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class QuestionModel:
    """One question of a lesson, in whichever phase `run.phase` names.

    bench, previous, fraction: the body that is asked about, as in `BuildModel`, or how far it is shown to have come;
    None when the lesson is finished.  contrast: it is the contrasting bench that is shown.
    learner: the code that answers are kept under, shown at the end.
    """

    setting: Setting
    run: Run
    bench: Bench | None
    previous: Bench | None
    fraction: float = 1.0
    contrast: bool = False
    learner: str = ""
    notice: Notice | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ProbeModel:
    """The probe: what is asked now, or at its end what the answers fit.

    bench: the bar that is asked about, held; None at the end.  learner: the code that answers are kept under.
    gain: what has changed since the first one, a sentence each.
    """

    setting: Setting
    probe: Probe
    bench: HangingBar | None
    learner: str = ""
    gain: tuple[Message, ...] = ()
    notice: Notice | None = None

    @property
    def item(self) -> Item | None:
        """What is asked now."""
        return self.probe.item


@dataclass(frozen=True, slots=True, kw_only=True)
class TeachersPageModel:
    """The teacher's page of a lesson.  name: the lesson's, as commands take it."""

    setting: Setting
    name: str
    sheet: TeachingSheet
    notice: Notice | None = None


Model = TypeVar("Model", contravariant=True)


class Screen(Protocol[Model]):
    """A screen, to the laboratory.  Made with its look: `StartScreen(look)`."""

    def show(self, model: Model) -> None:
        """Take a new model; what is focused or half done stays where its key still exists."""

    def restyle(self, look: Look) -> None:
        """Take a new size, theme, language or text scale."""

    def handle(self, event: Event) -> Outcome:
        """Answer an event; must work before the first `draw`."""

    def draw(self, canvas: Canvas) -> None:
        """Draw the model that was shown last; reads only."""

    def outline(self) -> Node:
        """The same as a tree, for keyboard, speech, tests and layout checks."""
