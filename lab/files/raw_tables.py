"""Looking into the raw table of a build: whatever the schema would refuse by itself is passed over."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from lab.files.table_values import LARGEST, Triple


def table_of(data: dict[str, Any], key: str) -> dict[str, Any] | None:
    """The table under a key; None where it is something else."""
    value = data.get(key)
    return value if isinstance(value, dict) else None


def tables_of(data: dict[str, Any], key: str) -> Iterator[tuple[int, dict[str, Any]]]:
    """The tables of a list, each with its index; none where the list is something else."""
    value = data.get(key)
    if isinstance(value, list):
        yield from ((index, item) for index, item in enumerate(value) if isinstance(item, dict))


def number_of(value: Any) -> float | None:
    """The value where the schema would let it pass as a number."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        return None
    return float(value) if -LARGEST <= value <= LARGEST else None


def place_of(value: Any) -> Triple | None:
    """The value where the schema would let it pass as a place: one number, or three."""
    numbers = [number_of(each) for each in value] if isinstance(value, list) else [number_of(value), 0.0, 0.0]
    found = [number for number in numbers if number is not None]
    return (found[0], found[1], found[2]) if len(found) == len(numbers) == 3 else None


def text_of(value: Any) -> str | None:
    """The value where it is text."""
    return value if isinstance(value, str) else None
