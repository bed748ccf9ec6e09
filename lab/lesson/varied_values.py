"""The values of a question that may vary, by name: those of its scene, and those of its other keys."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any


def value_names(table: Mapping[str, Any], keys: Mapping[str, Any]) -> tuple[str, ...]:
    """Return the names of the values that may vary: `pole.weight` of a sound scene, `hang.at` of a question's keys."""
    return (*scene_names(table), *(".".join(path) for path in _leaves(keys)))


def put_in_keys(keys: dict[str, Any], name: str, value: float) -> None:
    """Put a value into a question's keys in place.  name: such as `hang.at`."""
    *owners, key = name.split(".")
    inner: Any = keys
    for owner in owners:
        inner = inner[owner]
    inner[key] = value


def scene_names(table: Mapping[str, Any]) -> Iterator[str]:
    """The names of the values of a sound scene that may vary."""
    if "bar" in table:
        yield from ("bar.length", "bar.weight")
    for part in table.get("part", ()):
        yield from (f"{part['name']}.weight", f"{part['name']}.at")
        if "length" in part.get("shape", {}):
            yield f"{part['name']}.length"
    for tank in table.get("tank", ()):
        yield from (f"{tank['name']}.contents", f"{tank['name']}.at")
    for support in table.get("support", ()):
        yield f"{support['name']}.at"
    if "pivot" in table:
        yield "pivot.at"


def put_in_scene(table: dict[str, Any], name: str, value: float) -> None:
    """Put a value into a sound scene's table in place.  name: one of `scene_names`."""
    owner, _, key = name.rpartition(".")
    if owner in ("bar", "pivot") and owner in table:
        table[owner][key] = value
        return
    things = [*table.get("part", ()), *table.get("tank", ()), *table.get("support", ())]
    thing = next(thing for thing in things if thing["name"] == owner)
    if key == "length":
        thing["shape"]["length"] = value
    elif key == "at" and isinstance(thing["at"], list):
        thing["at"][0] = value
    else:
        thing[key] = value


def _leaves(keys: Mapping[str, Any], under: tuple[str, ...] = ()) -> Iterator[tuple[str, ...]]:
    """The paths of the numbers in a question's keys; those in lists cannot be named."""
    for key, value in keys.items():
        if isinstance(value, Mapping):
            yield from _leaves(value, (*under, key))
        elif under and isinstance(value, int | float) and not isinstance(value, bool):
            yield (*under, key)
