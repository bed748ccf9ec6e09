"""Writes builds as TOML that reads back to the same build."""

from __future__ import annotations

import json
from math import degrees, radians
from typing import cast

from lab.files.build import ORIGIN_M, Bar, Build, Support, Tensor
from lab.files.units import UNITS, UnitSystem, written_back
from lab.mechanics import Box, Cylinder, Part, Pivot, Point, Rectangle, Rod, Shape, Vector

_LARGEST_WHOLE = 1e15


def build_text(build: Build) -> str:
    """The build as the text of a build file, in the build's own units.

    Reading the text gives an equal build: to the last bit of every number that came from such a text, and within
    the last place of one that was first written in other units.  Raises ValueError where a part has a shape that
    the format does not know.
    """
    writer = _Writer(UNITS[build.units])
    blocks = [writer.top(build)]
    if build.bar is not None:
        blocks.append(writer.bar(build.bar))
    blocks += [writer.part(part, build.looks.get(part.name)) for part in build.parts]
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

    def part(self, part: Part, look: str | None) -> str:
        lines = [
            "[[part]]",
            f"name = {_quoted(part.name)}",
            f"weight = {self._weight(part.mass_kg)}",
            f"at = {self._place(part.at_m)}",
        ]
        if not isinstance(part.shape, Point):
            lines.append(f"shape = {self._shape(part.shape)}")
        if part.inertia_kg_m2 is not None:
            # A part keeps three principal values as the tensor they make.
            lines.append(f"inertia = {self._inertia(cast(Tensor, part.inertia_kg_m2))}")
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

    def pivot(self, pivot: Pivot) -> str:
        stop = written_back(radians, pivot.stop_rad, guess=degrees(pivot.stop_rad))
        lines = ["[pivot]", f"at = {self._length(pivot.at_m)}", f"up = {self._length(pivot.up_m)}"]
        lines += [f"stop = {_number(stop)}", f"pad = {self._length(pivot.pad_m)}"]
        lines.append(f"damping = {_number(self._system.from_kg_m2(pivot.damping_kg_m2_s))}")
        return _block(lines)

    def support(self, support: Support) -> str:
        return _block(["[[support]]", f"name = {_quoted(support.name)}", f"at = {self._place(support.at_m)}"])

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

    def _shape(self, shape: Shape) -> str:
        kind = type(shape).__name__.lower()
        match shape:
            case Rod(length_m=length_m, axis=axis):
                keys = {"length": self._length(length_m), "axis": _quoted(axis)}
            case Rectangle(length_m=length_m, width_m=width_m):
                keys = {"length": self._length(length_m), "width": self._length(width_m)}
            case Box(size_m=size_m):
                keys = {"size": _listed([self._length(side_m) for side_m in size_m])}
            case Cylinder(radius_m=radius_m, length_m=length_m, inner_m=inner_m, axis=axis):
                keys = {
                    "radius": self._length(radius_m),
                    "length": self._length(length_m),
                    "inner": self._length(inner_m),
                    "axis": _quoted(axis),
                }
            case _:
                # Written without its sizes it would come back as something else.
                raise ValueError(f"a build file of format 1 has no kind {kind!r}; give the part's inertia by numbers")
        named = {"kind": _quoted(kind), **keys}
        return "{ " + ", ".join(f"{key} = {value}" for key, value in named.items()) + " }"


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
