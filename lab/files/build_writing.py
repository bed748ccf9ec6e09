"""Writes builds as TOML that reads back to the same build."""

from __future__ import annotations

import json
from collections.abc import Mapping
from math import degrees, radians

from lab.files.build import ORIGIN_M, Bar, Build, Support, Tensor
from lab.files.shape_writing import shape_text
from lab.files.units import UNITS, UnitSystem, written_back
from lab.mechanics import Group, Limits, Part, Pivot, Surface, Tank, Turned, Vector

_LARGEST_WHOLE = 1e15


def build_text(build: Build) -> str:
    """The build as the text of a build file, in the build's own units.

    Reading the text gives an equal build: to the last bit of every number that came from such a text, and within
    the last place of one that was first written in other units.  Inside a group, parts come before groups.  A part
    that lies askew outside any group keeps its inertia and loses its shape.  Raises ValueError where a part has a
    shape that the format does not know.
    """
    writer = _Writer(UNITS[build.units])
    blocks = [writer.top(build)]
    if build.bar is not None:
        blocks.append(writer.bar(build.bar))
    blocks += [writer.part(part, build.looks.get(part.name)) for part in build.parts]
    for group in build.groups:
        blocks += writer.group(group, build.looks)
    blocks += [writer.tank(tank) for tank in build.tanks]
    blocks += [writer.surface(surface) for surface in build.surfaces]
    if build.limits is not None:
        blocks.append(writer.limits(build.limits))
    if build.pivot is not None:
        blocks.append(writer.pivot(build.pivot))
    blocks += [writer.support(support) for support in build.supports]
    return "\n".join(blocks)


class _Writer:
    """The tables of a build as TOML text in one unit system. Keys at their defaults are left out."""

    def __init__(self, system: UnitSystem) -> None:
        self._system = system

    def top(self, build: Build) -> str:
        lines = ["format = 1", f"title = {_quoted(build.title)}", f"units = {_quoted(build.units)}"]
        if build.reference_m != ORIGIN_M:
            lines.append(f"reference = {self._place(build.reference_m)}")
        if build.view != "plain":
            lines.append(f"view = {_quoted(build.view)}")
        if build.bench is not None:
            lines.append(f"bench = {_quoted(build.bench)}")
        return _block(lines)

    def bar(self, bar: Bar) -> str:
        return _block(
            [
                "[bar]",
                f"name = {_quoted(bar.name)}",
                f"length = {self._length(bar.length_m)}",
                f"weight = {self._weight(bar.mass_kg)}",
                f"left = {self._length(bar.left_m)}",
                f"depth = {self._length(bar.depth_m)}",
            ]
        )

    def part(self, part: Part, look: str | None, group: str | None = None) -> str:
        lines = [
            "[[part]]",
            f"name = {_quoted(part.name)}",
            *([] if group is None else [f"group = {_quoted(group)}"]),
            f"weight = {self._weight(part.mass_kg)}",
            f"at = {self._place(part.at_m)}",
        ]
        shape = shape_text(part.shape, self._length)
        if shape is not None:
            lines.append(f"shape = {shape}")
        if part.inertia_kg_m2 is not None or isinstance(part.shape, Turned):
            lines.append(f"inertia = {self._inertia(_given_inertia(part))}")
        if part.hold != "clamped":
            lines.append(f"hold = {_quoted(part.hold)}")
        if part.cut:
            lines.append("cut = true")
        if part.mass_doubt_kg:
            lines.append(f"weight_doubt = {self._weight(part.mass_doubt_kg)}")
        if part.at_doubt_m != ORIGIN_M:
            lines.append(f"at_doubt = {self._place(part.at_doubt_m)}")
        if part.set_name is not None:
            lines.append(f"set = {_quoted(part.set_name)}")
        if look is not None:
            lines.append(f"look = {_quoted(look)}")
        return _block(lines)

    def group(self, group: Group, looks: Mapping[str, str], way: tuple[str, ...] = ()) -> list[str]:
        lines = ["[[group]]", f"name = {_quoted(group.name)}"]
        if way:
            lines.append(f"group = {_quoted(way[-1])}")
        lines.append(f"at = {self._place(group.at_m)}")
        if group.turn_rad != ORIGIN_M:
            lines.append(f"turn = {_listed([_angle(each) for each in group.turn_rad])}")
        blocks = [_block(lines)]
        inner = (*way, group.name)
        for member in group.members:
            if isinstance(member, Part):
                blocks.append(self.part(member, looks.get("/".join((*inner, member.name))), group.name))
        for member in group.members:
            if isinstance(member, Group):
                blocks += self.group(member, looks, inner)
        return blocks

    def tank(self, tank: Tank) -> str:
        return _block(
            [
                "[[tank]]",
                f"name = {_quoted(tank.name)}",
                f"at = {self._place(tank.at_m)}",
                f"capacity = {_number(self._system.from_m3(tank.capacity_m3))}",
                f"contents = {_number(self._system.from_m3(tank.contents_m3))}",
                f"density = {_number(self._system.from_kg_m3(tank.density_kg_m3))}",
            ]
        )

    def surface(self, surface: Surface) -> str:
        lines = [
            "[[surface]]",
            f"name = {_quoted(surface.name)}",
            f"root_chord = {self._length(surface.root_chord_m)}",
            f"tip_chord = {self._length(surface.tip_chord_m)}",
            f"span = {self._length(surface.span_m)}",
            f"sweep = {_angle(surface.sweep_rad)}",
            f"at = {self._place(surface.at_m)}",
        ]
        return _block([*lines, "vertical = true"] if surface.vertical else lines)

    def limits(self, limits: Limits) -> str:
        lines = ["[limits]"]
        if limits.outline:
            corners = [_listed([self._length(along_m), self._weight(mass_kg)]) for along_m, mass_kg in limits.outline]
            lines.append(f"outline = {_listed(corners)}")
        if limits.across_m is not None:
            lines.append(f"across = {_listed([self._length(each_m) for each_m in limits.across_m])}")
        return _block(lines)

    def pivot(self, pivot: Pivot) -> str:
        lines = ["[pivot]", f"at = {self._length(pivot.at_m)}", f"up = {self._length(pivot.up_m)}"]
        lines += [f"stop = {_angle(pivot.stop_rad)}", f"pad = {self._length(pivot.pad_m)}"]
        lines.append(f"damping = {_number(self._system.from_kg_m2(pivot.damping_kg_m2_s))}")
        return _block(lines)

    def support(self, support: Support) -> str:
        lines = ["[[support]]", f"name = {_quoted(support.name)}", f"at = {self._place(support.at_m)}"]
        if support.friction is not None:
            lines.append(f"friction = {_listed([_number(each) for each in support.friction])}")
        return _block(lines)

    def _weight(self, mass_kg: float) -> str:
        return _number(self._system.from_kg(mass_kg))

    def _length(self, length_m: float) -> str:
        return _number(self._system.from_m(length_m))

    def _place(self, place_m: Vector) -> str:
        if place_m[1:] == (0.0, 0.0):
            return self._length(place_m[0])
        return _listed([self._length(each_m) for each_m in place_m])

    def _inertia(self, tensor: Tensor) -> str:
        rows = [[_number(self._system.from_kg_m2(each)) for each in row] for row in tensor]
        if all(tensor[i][j] == 0 for i in range(3) for j in range(3) if i != j):
            return _listed([rows[i][i] for i in range(3)])
        return _listed([_listed(row) for row in rows])


def _given_inertia(part: Part) -> Tensor:
    """The inertia by numbers; of a cut-out what it takes away."""
    first, second, third = part.own_inertia_kg_m2
    if not part.cut:
        return first, second, third
    return (_turned_over(first), _turned_over(second), _turned_over(third))


def _turned_over(row: Vector) -> Vector:
    return -row[0], -row[1], -row[2]


def _angle(angle_rad: float) -> str:
    """An angle in degrees that reads back to the same."""
    return _number(written_back(radians, angle_rad, guess=degrees(angle_rad)))


def _block(lines: list[str]) -> str:
    return "\n".join(lines) + "\n"


def _listed(items: list[str]) -> str:
    return f"[{', '.join(items)}]"


def _number(number: float) -> str:
    """The shortest text that reads back to the same float; whole numbers without a point."""
    if number.is_integer() and abs(number) < _LARGEST_WHOLE:
        return str(int(number))
    return repr(number)


def _quoted(text: str) -> str:
    # JSON and TOML escape alike, but for DEL, which only TOML forbids.
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")
