"""States and commands as JSON values and back, to the last bit: floats are written in hex.

A record is read by the type that is expected, so a text that looks like a number stays a text. Where
several kinds of value may stand, the record names the kind: ``{"is": "Rod", "length_m": "0x1.8p-2"}``.
"""

from __future__ import annotations

import types
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from functools import cache
from typing import Any, Literal, NewType, Union, get_args, get_origin, get_type_hints

Json = dict[str, "Json"] | list["Json"] | str | int | bool | None
"""What JSON can hold, without its own floats: those may lose their last bits between machines."""

IS = "is"
"""The key that names a record's kind."""


LARGEST_WHOLE = 2**53
"""The largest whole number that stands for a float: beyond it not every one has a float of its own."""


LARGEST = 1e30
"""No float of a state is larger (kg, m, kg·m² …): its square and cube are still numbers."""

AnyFloat = NewType("AnyFloat", float)
"""A float that a command was given: NaN and infinity too."""


class RecordError(ValueError):
    """A record that is not of the kind expected; the message says where in it and what would be right."""


def recorded(value: object) -> Json:
    """A value as JSON.

    value: a dataclass, tuple, mapping, str, int, float, bool or None, to any depth.
    Raises RecordError for anything else.
    """
    if value is None or isinstance(value, bool | int | str):
        return value
    if isinstance(value, float):
        return value.hex()
    if isinstance(value, tuple):
        return [recorded(each) for each in value]
    if isinstance(value, Mapping):
        return {str(key): recorded(each) for key, each in value.items()}
    if is_dataclass(value) and not isinstance(value, type):
        held = {each.name: recorded(getattr(value, each.name)) for each in _real_fields(type(value))}
        return {IS: type(value).__name__, **held}
    raise RecordError(f"a {type(value).__name__} can't be put on a tape")


def from_record(record: Json, kind: Any, *, at: str = "") -> Any:
    """The value of that kind that a record holds.

    kind: a type as written in an annotation.  at: the path so far, for messages.
    Raises RecordError.
    """
    origin = get_origin(kind)
    if origin in (Union, types.UnionType):
        return _one_of(record, get_args(kind), at)
    if origin is Literal:
        # True == 1 in Python, so the type must be the same too.
        if not any(record == each and type(record) is type(each) for each in get_args(kind)):
            raise RecordError(f"{_place(at)} is {record!r}; it must be one of {list(get_args(kind))}")
        return record
    if origin is tuple:
        return _tuple(record, get_args(kind), at)
    if origin is not None and issubclass(origin, Mapping):
        return _mapping(record, get_args(kind)[1], at)
    if is_dataclass(kind):
        return _instance(record, kind, at)
    return _scalar(record, kind, at)


def command_from_record(record: Json, kind: Any) -> Any:
    """The command that a record holds, whatever it asks for: the bench itself refuses what makes no sense.

    kind: the command's class.  Raises RecordError.
    """
    return _instance(record, kind, "", as_asked=True)


def flat(record: Json, path: str = "") -> dict[str, str | int | bool | None]:
    """Every plain value in a record by its path, such as ``weights[2].at_m``."""
    if isinstance(record, dict):
        steps = [(f"{path}.{key}" if path else key, each) for key, each in record.items()]
    elif isinstance(record, list):
        steps = [(f"{path}[{place}]", each) for place, each in enumerate(record)]
    else:
        return {path: record}
    values: dict[str, str | int | bool | None] = {}
    for step, each in steps:
        values.update(flat(each, step))
    return values


def _one_of(record: Json, kinds: tuple[Any, ...], at: str) -> Any:
    if isinstance(record, dict) and IS in record:
        for kind in kinds:
            if is_dataclass(kind) and getattr(kind, "__name__", "") == record[IS]:
                return _instance(record, kind, at)
    for kind in kinds:
        if is_dataclass(kind):
            continue
        try:
            return from_record(record, kind, at=at)
        except RecordError:
            continue
    raise RecordError(f"{_place(at)} is of no kind that can stand there")


def _tuple(record: Json, kinds: tuple[Any, ...], at: str) -> tuple[Any, ...]:
    if not isinstance(record, list):
        raise RecordError(f"{_place(at)} must be a list")
    if kinds[-1:] == (Ellipsis,):
        kinds = kinds[:1] * len(record)
    if len(record) != len(kinds):
        raise RecordError(f"{_place(at)} has {len(record)} values; it must have {len(kinds)}")
    pairs = enumerate(zip(record, kinds, strict=True))
    return tuple(from_record(each, kind, at=f"{at}[{place}]") for place, (each, kind) in pairs)


def _mapping(record: Json, kind: Any, at: str) -> dict[str, Any]:
    if not isinstance(record, dict):
        raise RecordError(f"{_place(at)} must be a table")
    return {key: from_record(each, kind, at=f"{at}.{key}") for key, each in record.items()}


def _instance(record: Json, kind: Any, at: str, *, as_asked: bool = False) -> Any:
    if not isinstance(record, dict) or record.get(IS) != kind.__name__:
        raise RecordError(f'{_place(at)} must be a table with "{IS}": "{kind.__name__}"')
    hints = {name: _widened(hint) if as_asked else hint for name, hint in _hints(kind).items()}
    names = [each.name for each in _real_fields(kind)]
    odd = sorted(set(record) ^ {IS, *names})
    if odd:
        raise RecordError(f"{_place(at)}: {', '.join(odd)}: each field of {kind.__name__} must be there, once")
    values = {name: from_record(record[name], hints[name], at=f"{at}.{name}" if at else name) for name in names}
    try:
        return kind(**values)
    except ValueError as error:
        raise RecordError(f"{_place(at)}: {error}") from error


def _widened(kind: Any) -> Any:
    """The kind with any text where only certain words may stand, and any float."""
    if kind is float:
        return AnyFloat
    origin = get_origin(kind)
    if origin is Literal:
        return str
    if origin in (Union, types.UnionType):
        return Union[tuple(_widened(each) for each in get_args(kind))]  # noqa: UP007 - made, not written
    return kind


def _scalar(record: Json, kind: Any, at: str) -> Any:
    if kind in (float, AnyFloat):
        number = _number(record)
        if number is None or (kind is float and not abs(number) <= LARGEST):
            raise RecordError(f"{_place(at)} is {record!r}; it must be a float in hex, at most {LARGEST:g}")
        return number
    if record is None and kind is type(None):
        return None
    if type(record) is not kind:
        raise RecordError(f"{_place(at)} is {record!r}; it must be {getattr(kind, '__name__', kind)}")
    return record


def _number(record: Json) -> float | None:
    """A float in hex, or a whole number that stands for one and was never made a float; None for others."""
    if type(record) is int:
        return record if abs(record) <= LARGEST_WHOLE else None
    if not isinstance(record, str):
        return None
    try:
        return float.fromhex(record)
    except (ValueError, OverflowError):
        return None


def _place(at: str) -> str:
    return at or "the record"


@cache
def _hints(kind: Any) -> Mapping[str, Any]:
    return get_type_hints(kind)


@cache
def _real_fields(kind: Any) -> tuple[Any, ...]:
    return fields(kind)
