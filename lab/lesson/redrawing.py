"""A scene with other numbers in it, without reading its table again.

Reading checks every key; of a scene that has been read only what a changed number can break is looked at again.  It
gives the same builds as reading, and refuses the same numbers; scenes of parts that hang together in a way that one
number can upset elsewhere (groups, cut-outs, supports that are moved) are not for it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from typing import Any

from lab.files import UNITS, Bar, Build, UnitSystem
from lab.mechanics import Cylinder, MechanicsError, Part, Rectangle, Rod, Tank

LARGEST = 1e9
"""The largest number that a file may hold."""

SMALLEST = 1e-9
"""The smallest where one above 0 is asked for."""

ROUND_OFF = 1e-9
"""What a place may be past an end of the bar, as a share of its length."""

DEPTH_SHARE = 0.02
"""A bar's depth where none is written."""


class Redrawing:
    """Puts numbers into one scene."""

    def __init__(self, table: Mapping[str, Any], written: Build) -> None:
        """table: the scene as it was written.  written: the build that was read from it."""
        self._table = table
        self._written = written
        self._units: UnitSystem = UNITS[written.units]
        self._places = dict(_places(table))

    @staticmethod
    def suits(table: Mapping[str, Any], written: Build, names: frozenset[str]) -> bool:
        """Whether these values of a scene can be changed so."""
        if table.get("group") or len(table.get("tank", ())) != len(written.tanks):
            return False
        for part in table.get("part", ()):
            of_another_make = part.get("shape", {}).get("kind") not in ("rod", "rectangle", "cylinder")
            if part.get("cut") or (f"{part['name']}.length" in names and of_another_make):
                return False
        return not any(f"{support['name']}.at" in names for support in table.get("support", ()))

    def build(self, values: Mapping[str, float]) -> Build | None:
        """The build with these values in it; None where the scene's own rules do not allow them."""
        if not self._allowed(values):
            return None
        try:
            return self._changed(values)
        except MechanicsError:
            return None

    def _allowed(self, values: Mapping[str, float]) -> bool:
        for name, value in values.items():
            key = name.rpartition(".")[2]
            if not abs(value) <= LARGEST:
                return False
            if key in ("weight", "length") and value < SMALLEST:
                return False
            if key == "contents" and value < 0:
                return False
        return self._on_the_bar(values)

    def _on_the_bar(self, values: Mapping[str, float]) -> bool:
        bar = self._table.get("bar")
        if bar is None:
            return True
        length, left = values.get("bar.length", bar["length"]), bar.get("left", 0)
        slack = ROUND_OFF * length
        places = (values.get(name, place) for name, place in self._places.items())
        return all(left - slack <= place <= left + length + slack for place in places)

    def _changed(self, values: Mapping[str, float]) -> Build:
        build, units = self._written, self._units
        parts, tanks = list(build.parts), list(build.tanks)
        for name, value in values.items():
            owner, _, key = name.rpartition(".")
            if owner == "bar" and build.bar is not None:
                build = replace(build, bar=self._bar(build.bar, key, value))
            elif owner == "pivot" and build.pivot is not None:
                build = replace(build, pivot=replace(build.pivot, at_m=units.to_m(value)))
            elif any(part.name == owner for part in parts):
                index = next(index for index, part in enumerate(parts) if part.name == owner)
                parts[index] = _PARTS[key](parts[index], value, units)
            else:
                index = next(index for index, tank in enumerate(tanks) if tank.name == owner)
                tanks[index] = _TANKS[key](tanks[index], value, units)
        return replace(build, parts=tuple(parts), tanks=tuple(tanks))

    def _bar(self, bar: Bar, key: str, value: float) -> Bar:
        if key == "weight":
            return replace(bar, mass_kg=self._units.to_kg(value))
        depth_m = bar.depth_m if "depth" in self._table["bar"] else self._units.to_m(DEPTH_SHARE * value)
        return replace(bar, length_m=self._units.to_m(value), depth_m=depth_m)


def _places(table: Mapping[str, Any]) -> Iterator[tuple[str, float]]:
    """Everything that must lie on the bar, by the name of its place, with its numeral along."""
    for key in ("part", "tank", "support"):
        for thing in table.get(key, ()):
            at = thing["at"]
            yield f"{thing['name']}.at", at[0] if isinstance(at, list) else at
    if "pivot" in table:
        yield "pivot.at", table["pivot"]["at"]


def _with_weight(part: Part, value: float, units: UnitSystem) -> Part:
    return replace(part, mass_kg=units.to_kg(value))


def _with_place(part: Part, value: float, units: UnitSystem) -> Part:
    return replace(part, at_m=(units.to_m(value), *part.at_m[1:]))


def _with_length(part: Part, value: float, units: UnitSystem) -> Part:
    if not isinstance(part.shape, Rod | Rectangle | Cylinder):
        raise MechanicsError(f"{part.name} has no such length; change another value")
    return replace(part, shape=replace(part.shape, length_m=units.to_m(value)))


def _with_contents(tank: Tank, value: float, units: UnitSystem) -> Tank:
    return replace(tank, contents_m3=units.to_m3(value))


def _with_tank_at(tank: Tank, value: float, units: UnitSystem) -> Tank:
    return replace(tank, at_m=(units.to_m(value), *tank.at_m[1:]))


_PARTS: Mapping[str, Callable[[Part, float, UnitSystem], Part]] = {
    "weight": _with_weight,
    "at": _with_place,
    "length": _with_length,
}
_TANKS: Mapping[str, Callable[[Tank, float, UnitSystem], Tank]] = {"contents": _with_contents, "at": _with_tank_at}
