"""What a screen asks for: values that the laboratory turns into commands, answers and navigation.

A screen never changes a bench, a lesson run, the record or the settings itself; it returns intents.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from lab.lesson.actions import Action
    from lab.lesson.asked import Side
    from lab.simulation.commands import Command

Place = Literal["start", "lessons", "lesson", "probe", "build", "page", "learner"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Do:
    """Give this command to the session of the bench that is shown."""

    command: Command


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """Give this action to the lesson run.

    The laboratory alone knows the time: it fills in the seconds of every action that has them, so a
    screen sends them with 0.  It also gives `Watched` itself when the bench has come to rest; a screen sends
    it only for *skip the motion*.
    """

    action: Action


@dataclass(frozen=True, slots=True, kw_only=True)
class SaySide:
    """Give this answer to what the probe asks now."""

    side: Side


@dataclass(frozen=True, slots=True, kw_only=True)
class AskMore:
    """Let a probe that stopped early ask the questions that are left."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Go:
    """Show another place.

    name: for "lesson" the lesson's ("" is the first one, "mixed" what has come back), and for "page", its teacher's
    page; for "build" "builds" opens the list of builds; for "learner" the place that leads back from there.
    """

    place: Place
    name: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Back:
    """One place up: from a question or the probe to the lessons, from anywhere else to the start screen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SaveBuild:
    """Write the bench to a build file.

    path: a bare file name goes into the builder's own folder and names the build; None keeps its title.
    """

    path: Path | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenBuild:
    """Read a build file into free build."""

    path: Path


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeAlong:
    """Go to another bench with what is built on this one."""

    bench: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeSetting:
    """Change one field of `Setting` (lab/screens/screen.py) and keep it."""

    name: str
    value: str | float | bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ShowContrast:
    """Show the explanation's contrasting bench (or, with `shown=False`, the learner's own again)."""

    shown: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class NewLearner:
    """Someone else sits down: answers from now on carry a new code."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RetrySave:
    """Try again to write what could not be saved."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DismissNotice:
    """The notice has been read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Leave:
    """Close the lab."""


Intent = (
    Do
    | Answer
    | SaySide
    | AskMore
    | Go
    | Back
    | SaveBuild
    | OpenBuild
    | TakeAlong
    | ChangeSetting
    | ShowContrast
    | NewLearner
    | RetrySave
    | DismissNotice
    | Leave
)
