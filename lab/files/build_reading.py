"""Reads build files into builds, with every fault at once."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping
from functools import partial
from math import radians
from types import MappingProxyType
from typing import Any, TypeVar

from pydantic import ValidationError

from lab.files.build import Bar, Build, Support
from lab.files.build_faults import FaultPlaces, schema_faults
from lab.files.build_rules import rule_faults
from lab.files.build_tables import (
    BarTable,
    BoxTable,
    BuildTable,
    CylinderTable,
    PartTable,
    PivotTable,
    PointTable,
    RodTable,
    ShapeTable,
    checked,
)
from lab.files.faults import Fault, FileFaults, KeyPath, shown
from lab.files.keyed_toml import load, parse
from lab.files.table_values import Tensor, Triple
from lab.files.units import UNITS, UnitSystem
from lab.mechanics import Box, Cylinder, MechanicsError, Part, Pivot, Point, Rectangle, Rod, Shape

FORMAT = 1
"""The number of the file format that this version reads and writes."""

# Where a bar's depth is not given. Slender enough to look like a bar, thick enough to take hold of.
_DEPTH_SHARE = 0.02

_Made = TypeVar("_Made")


def read_build(path: str | os.PathLike[str]) -> Build:
    """Read a build file.

    Raises FileFaults with everything that is wrong with it.
    """
    keyed = load(path)
    return build_from_table(keyed.data, keyed.lines, os.fspath(path), at=())


def read_build_text(text: str, *, file: str) -> Build:
    """Read the text of a build file.

    file: named in faults.  Raises FileFaults with everything that is wrong with it.
    """
    keyed = parse(text, file=file)
    return build_from_table(keyed.data, keyed.lines, file, at=())


def build_from_table(
    table: dict[str, Any],
    lines: Mapping[KeyPath, int],
    file: str,
    *,
    at: KeyPath = (),
    title: str | None = None,
    units: str | None = None,
) -> Build:
    """The build that a parsed table describes: a whole file, or a scene inside another file.

    at: the table's own key path in the file; () for a whole file, which must state its format.
    title, units: stand in where the table has none; None makes the key a required one.
    Raises FileFaults with everything that is wrong with it.
    """
    places = FaultPlaces(file, lines, at)
    data: dict[str, Any] = {} if title is None else {"title": title}
    if units is not None:
        data["units"] = units
    if at:
        data["format"] = FORMAT
    data |= table
    other_format = _other_format(data, places)
    if other_format is not None:
        raise FileFaults([other_format])
    read = checked(data)
    faults = rule_faults(data, places)
    if isinstance(read, ValidationError):
        raise FileFaults(schema_faults(read, places) + faults)
    if faults:
        raise FileFaults(faults)
    return _build(read, places)


def _other_format(data: dict[str, Any], places: FaultPlaces) -> Fault | None:
    """A fault where the file is in another format: its other keys may then mean anything."""
    value = data.get("format", FORMAT)
    if isinstance(value, int) and not isinstance(value, bool) and value == FORMAT:
        return None
    if isinstance(value, int) and not isinstance(value, bool) and value > FORMAT:
        cure = "open it with a newer version, or save it from there as format 1"
    else:
        cure = "write `format = 1`"
    return places.fault(("format",), f"format {shown(value)} is not one this version reads", cure)


class _Reader:
    """Makes the parts of a build from its tables, gathering what the mechanics refuse."""

    def __init__(self, system: UnitSystem, places: FaultPlaces) -> None:
        self.faults: list[Fault] = []
        self._system = system
        self._places = places

    def made(self, path: KeyPath, make: Callable[[], _Made]) -> _Made | None:
        """What ``make`` gives, or None and a fault where the mechanics refuse it."""
        try:
            return make()
        except MechanicsError as why:
            what, _, cure = str(why).partition("; ")
            self.faults.append(self._places.fault(path, what, cure or "write values that a real body has"))
            return None

    def vector(self, triple: Triple) -> Triple:
        """Three lengths of the file, in metres."""
        to_m = self._system.to_m
        return (to_m(triple[0]), to_m(triple[1]), to_m(triple[2]))

    def tensor(self, rows: Tensor) -> Tensor:
        """An inertia of the file, in kg·m²."""
        first, second, third = (
            (self._system.to_kg_m2(a), self._system.to_kg_m2(b), self._system.to_kg_m2(c)) for a, b, c in rows
        )
        return (first, second, third)

    def shape(self, table: ShapeTable) -> Shape:
        """The shape of a part."""
        to_m = self._system.to_m
        match table:
            case PointTable():
                return Point()
            case RodTable():
                return Rod(to_m(table.length), axis=table.axis)
            case BoxTable():
                return Box(self.vector(table.size))
            case CylinderTable():
                radius_m, length_m, inner_m = to_m(table.radius), to_m(table.length), to_m(table.inner)
                return Cylinder(radius_m, length_m, inner_m=inner_m, axis=table.axis)
            case _:
                return Rectangle(to_m(table.length), to_m(table.width))

    def part(self, table: PartTable) -> Part:
        """A part."""
        return Part(
            name=table.name,
            mass_kg=self._system.to_kg(table.weight),
            at_m=self.vector(table.at),
            shape=self.shape(table.shape),
            inertia_kg_m2=None if table.inertia is None else self.tensor(table.inertia),
            hold=table.hold,
            cut=table.cut,
            mass_doubt_kg=self._system.to_kg(table.weight_doubt),
            at_doubt_m=self.vector(table.at_doubt),
            set_name=table.together,
        )

    def bar(self, table: BarTable) -> Bar:
        """The bar."""
        depth = _DEPTH_SHARE * table.length if table.depth is None else table.depth
        return Bar(
            name=table.name,
            length_m=self._system.to_m(table.length),
            mass_kg=self._system.to_kg(table.weight),
            left_m=self._system.to_m(table.left),
            depth_m=self._system.to_m(depth),
        )

    def pivot(self, table: PivotTable) -> Pivot:
        """What it turns about."""
        return Pivot(
            at_m=self._system.to_m(table.at),
            up_m=self._system.to_m(table.up),
            stop_rad=radians(table.stop),
            pad_m=self._system.to_m(table.pad),
            damping_kg_m2_s=self._system.to_kg_m2(table.damping),
        )


def _build(table: BuildTable, places: FaultPlaces) -> Build:
    reader = _Reader(UNITS[table.units], places)
    parts = []
    for index, part_table in enumerate(table.part):
        # All else in a part is checked by now; what the mechanics still may refuse is an impossible inertia.
        key = () if part_table.inertia is None else ("inertia",)
        part = reader.made(("part", index, *key), partial(reader.part, part_table))
        if part is not None:
            parts.append(part)
    pivot_table = table.pivot
    pivot = None if pivot_table is None else reader.made(("pivot",), partial(reader.pivot, pivot_table))
    if reader.faults:
        raise FileFaults(reader.faults)
    return Build(
        title=table.title,
        units=table.units,
        reference_m=reader.vector(table.reference),
        view=table.view,
        bar=None if table.bar is None else reader.bar(table.bar),
        parts=tuple(parts),
        pivot=pivot,
        supports=tuple(Support(name=each.name, at_m=reader.vector(each.at)) for each in table.support),
        looks=MappingProxyType({part.name: part.look for part in table.part if part.look is not None}),
    )
