"""What must hold between the keys of a build: names, places on the bar, supports, a total to divide by.

The rules read the raw table, so that they find their faults beside those of the schema, in one go. A value
that the schema refuses by itself takes part in no rule.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

from lab.files.build_faults import FaultPlaces
from lab.files.faults import Fault, KeyPath, shown
from lab.files.table_values import LARGEST

# Round-off when a place is reckoned from the bar's own numbers, as 0.1 + 0.2 is for 0.3.
_ROUND_OFF = 1e-9


def rule_faults(data: dict[str, Any], places: FaultPlaces) -> list[Fault]:
    """Everything that is wrong between the keys of a build."""
    return [
        *_names_used_twice(data, places),
        *_off_the_bar(data, places),
        *_supports(data, places),
        *_total(data, places),
        *_bores(data, places),
    ]


def _names_used_twice(data: dict[str, Any], places: FaultPlaces) -> Iterator[Fault]:
    bar = _table(data, "bar")
    parts: list[tuple[KeyPath, Any]] = [(("bar", "name"), bar.get("name", "bar"))] if bar is not None else []
    parts += [(("part", index, "name"), part.get("name")) for index, part in _tables(data, "part")]
    supports = [(("support", index, "name"), support.get("name")) for index, support in _tables(data, "support")]
    for things in (parts, supports):
        first: dict[str, KeyPath] = {}
        # By line, since a bar may come after its parts: the name that a reader meets first is the one to keep.
        for path, name in sorted(things, key=lambda thing: places.line(thing[0])):
            if not isinstance(name, str):
                continue
            if name in first:
                line = places.line(first[name])
                what = f"the name {shown(name)} is used twice (first on line {line})"
                yield places.fault(path, what, "give each its own name")
            first.setdefault(name, path)


def _off_the_bar(data: dict[str, Any], places: FaultPlaces) -> Iterator[Fault]:
    bar = _table(data, "bar")
    if bar is None:
        return
    left, length = _number(bar.get("left", 0)), _number(bar.get("length"))
    if left is None or length is None or length <= 0:
        return
    right = left + length
    slack = _ROUND_OFF * length
    for path, at in _things_on_the_bar(data):
        along = _number(at[0] if isinstance(at, list) and at else at)
        if along is not None and not left - slack <= along <= right + slack:
            reach = f"from {_shown(left)} to {_shown(right)}"
            what = f"{_shown(along)} is off the bar, which reaches {reach}"
            yield places.fault(path, what, f"write a place {reach}")


def _things_on_the_bar(data: dict[str, Any]) -> Iterator[tuple[KeyPath, Any]]:
    for key in ("part", "support"):
        for index, thing in _tables(data, key):
            yield (key, index, "at"), thing.get("at")
    pivot = _table(data, "pivot")
    if pivot is not None:
        yield ("pivot", "at"), pivot.get("at")


def _supports(data: dict[str, Any], places: FaultPlaces) -> Iterator[Fault]:
    supports = list(_tables(data, "support"))
    if len(supports) == 1:
        yield places.fault(
            ("support",), "one support alone holds nothing steady", "add another [[support]], or use [pivot]"
        )
    if len(supports) > 2:
        index, _ = supports[2]
        yield places.fault(("support", index), "more than two supports are not in this version yet", "keep two of them")
    if len(supports) == 2:
        (_, first), (index, second) = supports
        alongs = [_number(at[0] if isinstance(at, list) and at else at) for at in (first.get("at"), second.get("at"))]
        if alongs[0] is not None and alongs[0] == alongs[1]:
            yield places.fault(("support", index, "at"), "both supports are at one place", "set them apart")


def _total(data: dict[str, Any], places: FaultPlaces) -> Iterator[Fault]:
    weights: list[tuple[Any, bool]] = [
        (part.get("weight"), part.get("cut") is True) for _, part in _tables(data, "part")
    ]
    bar = _table(data, "bar")
    if bar is not None:
        weights.append((bar.get("weight"), False))
    if not weights and data.get("part", []) == [] and "bar" not in data:
        yield places.fault((), "nothing in it weighs anything", "add a [[part]] or a [bar]")
    terms = []
    for weight, is_cut in weights:
        number = _number(weight)
        if number is None or number <= 0:
            return
        terms.append(-number if is_cut else number)
    # Less than round-off of the whole is nothing left, and dividing by it would give a place from noise.
    if terms and math.fsum(terms) <= _ROUND_OFF * math.fsum(map(abs, terms)):
        cuts = [index for index, part in _tables(data, "part") if part.get("cut") is True]
        yield places.fault(
            ("part", cuts[-1], "weight"), "the cut-outs take away all the weight", "cut less than there is"
        )


def _bores(data: dict[str, Any], places: FaultPlaces) -> Iterator[Fault]:
    for index, part in _tables(data, "part"):
        shape = part.get("shape")
        if not isinstance(shape, dict) or shape.get("kind") != "cylinder":
            continue
        inner, radius = _number(shape.get("inner", 0)), _number(shape.get("radius"))
        if inner is not None and radius is not None and inner >= radius > 0:
            what = f"a bore of radius {_shown(inner)} leaves nothing of radius {_shown(radius)}"
            yield places.fault(("part", index, "shape", "inner"), what, f"write less than {_shown(radius)}")


def _table(data: dict[str, Any], key: str) -> dict[str, Any] | None:
    value = data.get(key)
    return value if isinstance(value, dict) else None


def _tables(data: dict[str, Any], key: str) -> Iterator[tuple[int, dict[str, Any]]]:
    """The tables of a list, each with its index; none where the list is something else."""
    value = data.get(key)
    if isinstance(value, list):
        yield from ((index, item) for index, item in enumerate(value) if isinstance(item, dict))


def _shown(number: float) -> str:
    """As many figures as tell it from what it is compared with; no round-off of a sum."""
    return f"{number:.12g}"


def _number(value: Any) -> float | None:
    """The value where the schema would let it pass as a number."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        return None
    return float(value) if -LARGEST <= value <= LARGEST else None
