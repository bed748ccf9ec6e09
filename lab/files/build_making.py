"""Makes builds out of the tables of a file: schema, then rules, then SI, gathering every fault."""

from __future__ import annotations

from math import radians
from types import MappingProxyType
from typing import Any

from pydantic import ValidationError

from lab.files.build import FORMAT, Bar, Build, Support, Tensor
from lab.files.build_faults import FaultPlaces, schema_faults
from lab.files.build_rules import rule_faults
from lab.files.build_tables import (
    BarTable,
    BuildTable,
    GroupTable,
    LimitsTable,
    PartTable,
    PivotTable,
    SurfaceTable,
    TankTable,
    checked,
)
from lab.files.faults import Fault, FileFaults, shown
from lab.files.group_rules import row_name
from lab.files.shape_making import made_shape
from lab.files.table_values import Triple
from lab.files.units import UNITS, UnitSystem
from lab.mechanics import Group, Limits, Member, Part, Pivot, Surface, Tank

# Where a bar's depth is not given. Slender enough to look like a bar, thick enough to take hold of.
_DEPTH_SHARE = 0.02


def made_build(data: dict[str, Any], places: FaultPlaces) -> Build:
    """The build that a table describes, its stand-ins filled in.

    places: where the table lies in its file.  Raises FileFaults with everything that is wrong with it.
    """
    faults = _format_faults(data, places)
    read = checked(data | {"format": FORMAT} if faults else data)
    faults += rule_faults(data, places)
    if isinstance(read, ValidationError):
        raise FileFaults(faults + schema_faults(read, places))
    if faults:
        raise FileFaults(faults)
    return _build(read)


def _format_faults(data: dict[str, Any], places: FaultPlaces) -> list[Fault]:
    """What is wrong with the format's number.

    Raises FileFaults where the file is in another format: its other keys may then mean anything.
    """
    value = data.get("format", FORMAT)
    is_number = isinstance(value, int) and not isinstance(value, bool)
    if is_number and value == FORMAT:
        return []
    newer = is_number and value > FORMAT
    cure = "open it with a newer version, or save it from there as format 1" if newer else "write `format = 1`"
    fault = places.fault(("format",), f"format {shown(value)} is not one this version reads", cure)
    if is_number:
        raise FileFaults([fault])
    return [fault]


class _Reader:
    """Turns checked tables into SI. The schema and the rules let nothing through that mechanics would refuse."""

    def __init__(self, system: UnitSystem) -> None:
        self._system = system

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

    def part(self, table: PartTable) -> Part:
        """A part."""
        return Part(
            name=table.name,
            mass_kg=self._system.to_kg(table.weight),
            at_m=self.vector(table.at),
            shape=made_shape(table.shape, self._system.to_m),
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

    def group(self, table: GroupTable, members: tuple[Member, ...]) -> Group:
        """A group of what is in it."""
        roll, pitch, yaw = map(radians, table.turn)
        return Group(name=table.name, members=members, at_m=self.vector(table.at), turn_rad=(roll, pitch, yaw))

    def tank(self, table: TankTable) -> Tank:
        """A tank and its contents."""
        return Tank(
            name=table.name,
            at_m=self.vector(table.at),
            capacity_m3=self._system.to_m3(table.capacity),
            contents_m3=self._system.to_m3(table.contents),
            density_kg_m3=self._system.to_kg_m3(table.density),
        )

    def surface(self, table: SurfaceTable) -> Surface:
        """A wing, tail, foreplane or fin."""
        return Surface(
            name=table.name,
            root_chord_m=self._system.to_m(table.root_chord),
            tip_chord_m=self._system.to_m(table.tip_chord),
            span_m=self._system.to_m(table.span),
            sweep_rad=radians(table.sweep),
            at_m=self.vector(table.at),
            vertical=table.vertical,
        )

    def limits(self, table: LimitsTable) -> Limits:
        """Where the balance point may lie."""
        to_m, to_kg = self._system.to_m, self._system.to_kg
        return Limits(
            outline=tuple((to_m(along), to_kg(weight)) for along, weight in table.outline),
            across_m=None if table.across is None else (to_m(table.across[0]), to_m(table.across[1])),
        )


def _build(table: BuildTable) -> Build:
    reader = _Reader(UNITS[table.units])
    return Build(
        title=table.title,
        units=table.units,
        reference_m=reader.vector(table.reference),
        view=table.view,
        bench=table.bench,
        bar=None if table.bar is None else reader.bar(table.bar),
        parts=tuple(reader.part(each) for each in table.part if each.group is None),
        groups=_groups(table, reader),
        tanks=tuple(reader.tank(each) for each in table.tank),
        surfaces=tuple(reader.surface(each) for each in table.surface),
        limits=None if table.limits is None else reader.limits(table.limits),
        pivot=None if table.pivot is None else reader.pivot(table.pivot),
        supports=tuple(
            Support(name=each.name, at_m=reader.vector(each.at), friction=each.friction) for each in table.support
        ),
        looks=_looks(table),
    )


def _groups(table: BuildTable, reader: _Reader) -> tuple[Group, ...]:
    """The outermost groups, each holding its parts and then its groups."""
    parts: dict[str | None, list[PartTable]] = {}
    inner: dict[str | None, list[GroupTable]] = {}
    for part in table.part:
        parts.setdefault(part.group, []).append(part)
    for group in table.group:
        inner.setdefault(group.group, []).append(group)

    def within(group: GroupTable) -> Group:
        members = [reader.part(each) for each in parts.get(group.name, [])]
        return reader.group(group, (*members, *(within(each) for each in inner.get(group.name, []))))

    return tuple(within(each) for each in inner.get(None, []))


def _looks(table: BuildTable) -> MappingProxyType[str, str]:
    """How to draw what says so, by the name of its row."""
    outer = {group.name: group.group for group in table.group}
    looks: dict[str, str] = {}
    for part in table.part:
        if part.look is None:
            continue
        way: list[str] = []
        group = part.group
        while group is not None:
            way.insert(0, group)
            group = outer[group]
        looks[row_name(tuple(way), part.name)] = part.look
    return MappingProxyType(looks)
