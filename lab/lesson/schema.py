"""The tables of a lesson file and their keys, checked, and what is wrong with them in words a writer can use."""

from __future__ import annotations

import re
import unicodedata
from typing import Annotated, Any, Literal

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field

from lab.files import shown
from lab.files.table_values import Above0, From0, Name, Number, Place, Title, plain_number, refusal
from lab.lesson.fault_places import nearest_of
from lab.lesson.kinds import KINDS
from lab.lesson.lesson import Level

LONGEST_TEXT = 600
"""Characters of one text; a learner sees at most forty words before acting, which is half as many."""

MOST_QUESTIONS = 40
"""Of one lesson; a lesson of eight takes a class twenty minutes."""

MOST_PLACES = 8
"""Of one list in a question: nobody chooses among more."""

MOST_SENTENCES = 12
"""Of one list on the teacher's page, which is read at a glance."""

SHORTEST_MINUTES, LONGEST_MINUTES = 5, 120
"""How long a lesson may take a class, talk included."""

_SLUG = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")


def _text(value: Any) -> str:
    if not isinstance(value, str):
        raise refusal(f"{shown(value)} is not text", "write it in quotes")
    if not value.strip():
        raise refusal("the text is empty", "write a sentence")
    if len(value) > LONGEST_TEXT:
        raise refusal(f"a text of {len(value)} characters", f"write at most {LONGEST_TEXT}")
    if not value.isprintable() and any(unicodedata.category(char).startswith(("C", "Zl", "Zp")) for char in value):
        raise refusal("the text holds a line break or another control character", "write it on one line")
    return value


def _slug(value: Any) -> str:
    text = _text(value)
    if not _SLUG.fullmatch(text):
        raise refusal(f"{shown(value)} is no plain name", "write small letters, figures and hyphens, as `boat-hook`")
    return text


def _asked(value: Any) -> str:
    if isinstance(value, str) and value in KINDS:
        return value
    raise refusal(f"{shown(value)} is not one of the choices", nearest_of(value, KINDS))


def _expected(value: Any) -> str | float | list[float]:
    if isinstance(value, str):
        return _text(value)
    if isinstance(value, list):
        return [plain_number(each) for each in value]
    if isinstance(value, int | float) and not isinstance(value, bool):
        return plain_number(value)
    raise refusal(f"{shown(value)} is no answer", 'write a number, a list of numbers, or an option such as "level"')


def _minutes(value: Any) -> int:
    if not isinstance(value, int) or isinstance(value, bool):
        raise refusal(f"{shown(value)} is not a whole number", "write whole minutes, such as 20")
    if not SHORTEST_MINUTES <= value <= LONGEST_MINUTES:
        raise refusal(f"{value} minutes", f"write from {SHORTEST_MINUTES} to {LONGEST_MINUTES}, or split the lesson")
    return value


Text = Annotated[str, Field(min_length=1, max_length=LONGEST_TEXT), BeforeValidator(_text)]
Slug = Annotated[str, Field(pattern=f"^{_SLUG.pattern}$"), BeforeValidator(_slug)]
Asks = Annotated[str, Field(json_schema_extra={"enum": list(KINDS)}), BeforeValidator(_asked)]
Expected = Annotated[str | float | list[float], BeforeValidator(_expected)]
Sentences = Annotated[list[Text], Field(min_length=1, max_length=MOST_SENTENCES)]
Minutes = Annotated[int, Field(ge=SHORTEST_MINUTES, le=LONGEST_MINUTES), BeforeValidator(_minutes)]
Span = Annotated[list[Number], Field(min_length=2, max_length=2)]


class _Table(BaseModel):
    """A table that knows its keys and takes no others."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True, validate_by_alias=True)


class RangeTable(_Table):
    """From where to where, and in which steps, a value may vary."""

    low: Number = Field(alias="from")
    to: Number
    step: Above0


class HangTable(_Table):
    """What is to be hung: so much, or there; the other is asked for."""

    name: Name
    at: Number | None = None
    weight: Above0 | None = None


class AddTable(_Table):
    """A part that is added."""

    name: Name
    weight: Above0
    at: Number


class ChangeTable(_Table):
    """One change: a part moved `by` so much, added or taken off, or the reference line put elsewhere."""

    move: Name | None = None
    by: Number | None = None
    add: AddTable | None = None
    take: Name | None = None
    reference: Number | None = None


class BallastPlaceTable(_Table):
    """Where ballast may go: at one place, or anywhere from one to another; at most so much."""

    name: Name
    at: Number | None = None
    low: Number | None = Field(default=None, alias="from")
    to: Number | None = None
    most: Above0 | None = None


class BurnTable(_Table):
    """One stretch of a burn plan: so much a second, from these tanks, for so many seconds."""

    rate: From0
    tanks: list[Name] = []
    order: Literal["together", "in order"] = "together"
    seconds: Above0 | None = Field(default=None, alias="for")


class PumpTable(_Table):
    """Contents pumped from one tank to another, so much a second, for so many seconds."""

    source: Name = Field(alias="from")
    target: Name = Field(alias="to")
    rate: Above0
    seconds: Above0 = Field(alias="for")


class QuestionTable(_Table):
    """One `[[question]]`; its scene is read apart."""

    name: Slug
    ask: Asks
    title: Title
    say: Text
    scene: Any
    tolerance: Above0 | None = None
    ways: list[str] | None = None
    hints: list[Text] = []
    vary: dict[str, RangeTable] = {}
    as_written_first: bool = False
    expect: Expected | None = None
    hang: HangTable | None = None
    change: ChangeTable | None = None
    target: Span | None = None
    places: Annotated[list[BallastPlaceTable], Field(min_length=1, max_length=MOST_PLACES)] | None = None
    find: str | None = None
    plan: Annotated[list[BurnTable], Field(min_length=1, max_length=MOST_PLACES)] | None = None
    pumps: Annotated[list[PumpTable], Field(min_length=1, max_length=MOST_PLACES)] | None = None
    hung_at: Place | None = None


KEYS_BY_KIND = ("hang", "change", "target", "places", "find", "plan", "pumps", "hung_at")
"""The keys of a question that only some kinds have."""


class TeacherTable(_Table):
    """The teacher's page: minutes of a class, what to have on the table, what to do, what to expect, cautions."""

    minutes: Minutes
    have: Sentences
    do: Sentences
    expect: Sentences
    cautions: Sentences


class LessonTable(_Table):
    """A whole lesson file; its questions are read one by one."""

    format: Literal[1]
    title: Title
    level: Level
    aim: Text
    order: int = 0
    units: Literal["g-cm", "kg-m", "N-m", "lb-in"] = "g-cm"
    teacher: TeacherTable | None = None
    question: list[Any] = Field(min_length=1, max_length=MOST_QUESTIONS)
