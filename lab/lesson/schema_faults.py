"""What the schema of a lesson refuses, in words that a writer can use; and what can be read in spite of it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from pydantic import BaseModel, ValidationError

from lab.files import Fault, KeyPath, near, shown
from lab.lesson.fault_places import FaultPlaces, nearest_of
from lab.lesson.schema import (
    MOST_PLACES,
    MOST_QUESTIONS,
    MOST_SENTENCES,
    AddTable,
    BallastPlaceTable,
    BurnTable,
    ChangeTable,
    HangTable,
    PumpTable,
    QuestionTable,
    RangeTable,
    TeacherTable,
)

SENTENCE_KEYS = ("have", "do", "expect", "cautions")
"""The lists of sentences on the teacher's page."""

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
    "minutes": "minutes = 20",
    **{key: f'{key} = ["…"]' for key in SENTENCE_KEYS},
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
            return "unknown key", _nearest_key(key, _table_at(path, table))
        case "literal_error":
            choices = [choice.strip("' ") for choice in str(context["expected"]).replace(" or ", ", ").split(", ")]
            return f"{shown(value)} is not one of the choices", nearest_of(value, choices)
        case "bool_type":
            return f"{shown(value)} is neither true nor false", "write true or false, without quotes"
        case "too_short" | "too_long":
            return _wrong_count(key, value)
        case "string_type":
            return f"{shown(value)} is not text", "write it in quotes"
        case "int_type":
            return f"{shown(value)} is not a whole number", "write a number such as 2"
        case _:
            return f"{shown(value)} does not belong here", _right_kind(key)


_INNER: Mapping[str, type[BaseModel]] = {
    "vary": RangeTable,
    "hang": HangTable,
    "add": AddTable,
    "change": ChangeTable,
    "places": BallastPlaceTable,
    "plan": BurnTable,
    "pumps": PumpTable,
    "teacher": TeacherTable,
}


def _table_at(path: KeyPath, table: type[BaseModel]) -> type[BaseModel]:
    """The innermost table on the way to a key that nothing knows."""
    owners = [step for step in path[:-1] if isinstance(step, str) and step in _INNER]
    return _INNER[owners[-1]] if owners else table


def _wrong_count(key: str, value: list[Any]) -> tuple[str, str]:
    if key == "question":
        if value:
            return f"{len(value)} questions", f"split it into lessons of at most {MOST_QUESTIONS}"
        return "a lesson without questions", "add `[[question]]` and its keys below it"
    if key == "target":
        return f"{shown(value)} where two numbers belong", "write the lower and the higher limit: [10, 12]"
    if key in SENTENCE_KEYS:
        what = f"{len(value)} sentences" if value else "a list without a sentence"
        return what, f"write from one to {MOST_SENTENCES}"
    return f"{shown(value)}", f"write from one to {MOST_PLACES} of them"


def _right_kind(key: str) -> str:
    kinds = {
        "question": "write `[[question]]` and its keys below it",
        "ways": 'write a list such as ["middle", "far_end"]',
        "hints": 'write a list such as ["Look at the heavy end."]',
        "hang": 'write a table such as { name = "float", at = 80 }',
        "change": 'write a table such as { move = "camera", by = 5 }',
        "target": "write the lower and the higher limit: [10, 12]",
        "places": 'write `places = [{ name = "nose box", at = 2 }]`',
        "plan": 'write `plan = [{ rate = 2, tanks = ["nose tank"] }]`',
        "pumps": 'write `pumps = [{ from = "nose tank", to = "tail tank", rate = 2, for = 30 }]`',
        "teacher": "write `[teacher]` and its keys below it, before the first `[[question]]`",
        **dict.fromkeys(SENTENCE_KEYS, 'write a list of sentences, such as ["A broom."]'),
        "vary": 'write `vary = { "pole.weight" = { from = 100, to = 200, step = 20 } }`',
    }
    return kinds.get(key, "write a table such as { from = 100, to = 200, step = 20 }")


def _nearest_key(key: str, table: type[BaseModel]) -> str:
    known = [field.alias or name for name, field in table.model_fields.items()]
    nearest = near(key, known)
    return f"did you mean `{nearest}`?" if nearest else f"the keys here are {', '.join(known)}"
