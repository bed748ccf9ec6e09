"""The tables of a lesson file and their keys, checked, and what is wrong with them in words a writer can use."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from typing import Annotated, Any, Literal

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, ValidationError

from lab.files import Fault, KeyPath, near, shown
from lab.files.table_values import Above0, Number, Title, plain_number, refusal
from lab.lesson.fault_places import FaultPlaces, nearest_of
from lab.lesson.lesson import Ask, Level

LONGEST_TEXT = 600
"""Characters of one text; a learner sees at most forty words before acting, which is half as many."""

MOST_QUESTIONS = 40
"""Of one lesson; a lesson of eight takes a class twenty minutes."""

_SLUG = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")


def _text(value: Any) -> str:
    if not isinstance(value, str):
        raise refusal(f"{shown(value)} is not text", "write it in quotes")
    if not value.strip():
        raise refusal("the text is empty", "write a sentence")
    if len(value) > LONGEST_TEXT:
        raise refusal(f"a text of {len(value)} characters", f"write at most {LONGEST_TEXT}")
    if any(unicodedata.category(char).startswith(("C", "Zl", "Zp")) for char in value):
        raise refusal("the text holds a line break or another control character", "write it on one line")
    return value


def _slug(value: Any) -> str:
    text = _text(value)
    if not _SLUG.fullmatch(text):
        raise refusal(f"{shown(value)} is no plain name", "write small letters, figures and hyphens, as `boat-hook`")
    return text


def _expected(value: Any) -> str | float:
    if isinstance(value, str) and value in ("left", "right", "level"):
        return value
    if isinstance(value, int | float) and not isinstance(value, bool):
        return plain_number(value)
    raise refusal(f"{shown(value)} is no answer", 'write a place as a number, or "left", "right" or "level"')


Text = Annotated[str, BeforeValidator(_text)]
Slug = Annotated[str, BeforeValidator(_slug)]
Expected = Annotated[str | float, BeforeValidator(_expected)]


class _Table(BaseModel):
    """A table that knows its keys and takes no others."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True, validate_by_alias=True)


class RangeTable(_Table):
    """From where to where, and in which steps, a value may vary."""

    low: Number = Field(alias="from")
    to: Number
    step: Above0


class QuestionTable(_Table):
    """One `[[question]]`; its scene is read apart."""

    name: Slug
    ask: Ask
    title: Title
    say: Text
    scene: Any
    tolerance: Above0 | None = None
    ways: list[str] | None = None
    hints: list[Text] = []
    vary: dict[str, RangeTable] = {}
    as_written_first: bool = False
    expect: Expected | None = None


class LessonTable(_Table):
    """A whole lesson file; its questions are read one by one."""

    format: Literal[1]
    title: Title
    level: Level
    aim: Text
    order: int = 0
    units: Literal["g-cm", "kg-m", "N-m", "lb-in"] = "g-cm"
    question: list[Any] = Field(min_length=1, max_length=MOST_QUESTIONS)


_STAND_INS: Mapping[str, Any] = {
    "name": "question",
    "ask": "side",
    "title": "A question",
    "say": "A scene.",
    "scene": None,
}
"""What takes the place of a required key that cannot be read, so that the others can still be looked at."""


def what_can_be_read(data: Mapping[str, Any], refused: ValidationError) -> tuple[QuestionTable, frozenset[str]]:
    """Return a question's table without what the schema refused in it, and the keys that were left out.

    Of `vary` only the ranges that were refused are left out.
    """
    places = [error["loc"] for error in refused.errors(include_url=False)]
    ranges = {place[1] for place in places if place[0] == "vary" and len(place) > 1}
    unread = frozenset(str(place[0]) for place in places if place[0] != "vary" or len(place) == 1)
    sound = {key: value for key, value in data.items() if key not in unread}
    if ranges:
        sound["vary"] = {names: each for names, each in sound["vary"].items() if names not in ranges}
    missing = {key: value for key, value in _STAND_INS.items() if key not in sound}
    return QuestionTable.model_validate({**sound, **missing}), unread


_EXAMPLES: Mapping[str, str] = {
    "format": "format = 1",
    "title": 'title = "Where will it balance?"',
    "level": 'level = "early"',
    "aim": 'aim = "The balance point lies nearer to the heavy end."',
    "question": "[[question]]",
    "name": 'name = "boat-hook"',
    "ask": 'ask = "place"',
    "say": 'say = "A pole of {pole.weight}."',
    "scene": "[question.scene]",
    "tolerance": "tolerance = 0.3",
    "from": "from = 100",
    "to": "to = 500",
    "step": "step = 20",
}


def table_faults(refused: ValidationError, table: type[BaseModel], at: KeyPath, places: FaultPlaces) -> list[Fault]:
    """Return one fault for everything that the schema refused in the table at a key path."""
    faults = []
    for error in refused.errors(include_url=False):
        path = error["loc"]
        what, cure = _what_and_cure(error["type"], path, error["input"], error.get("ctx", {}), table)
        faults.append(places.fault(at + path, what, cure))
    return faults


def _what_and_cure(
    error: str, path: KeyPath, value: Any, context: Mapping[str, Any], table: type[BaseModel]
) -> tuple[str, str]:
    key = str(path[-1]) if path else ""
    match error:
        case "refused":
            return context["what"], context["cure"]
        case "missing":
            return "missing", f"add `{_EXAMPLES.get(key, key + ' = …')}`"
        case "extra_forbidden":
            return "unknown key", _nearest_key(key, RangeTable if path[:1] == ("vary",) else table)
        case "literal_error":
            choices = [choice.strip("' ") for choice in str(context["expected"]).replace(" or ", ", ").split(", ")]
            return f"{shown(value)} is not one of the choices", nearest_of(value, choices)
        case "bool_type":
            return f"{shown(value)} is neither true nor false", "write true or false, without quotes"
        case "too_short":
            return "a lesson without questions", "add `[[question]]` and its keys below it"
        case "too_long":
            return f"{len(value)} questions", f"split it into lessons of at most {MOST_QUESTIONS}"
        case "string_type":
            return f"{shown(value)} is not text", "write it in quotes"
        case "int_type":
            return f"{shown(value)} is not a whole number", "write a number such as 2"
        case _:
            return f"{shown(value)} does not belong here", _right_kind(key)


def _right_kind(key: str) -> str:
    kinds = {
        "question": "write `[[question]]` and its keys below it",
        "ways": 'write a list such as ["middle", "far_end"]',
        "hints": 'write a list such as ["Look at the heavy end."]',
        "vary": 'write `vary = { "pole.weight" = { from = 100, to = 200, step = 20 } }`',
    }
    return kinds.get(key, "write a table such as { from = 100, to = 200, step = 20 }")


def _nearest_key(key: str, table: type[BaseModel]) -> str:
    known = [field.alias or name for name, field in table.model_fields.items()]
    nearest = near(key, known)
    return f"did you mean `{nearest}`?" if nearest else f"the keys here are {', '.join(known)}"
