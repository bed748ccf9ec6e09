"""The tables of a build file and their keys, as a schema that checks them and that editors can read."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import Field, ValidationError

from lab.files.build import Bench, Look, View
from lab.files.shape_tables import SHAPES, PointTable, ShapeTable, Table
from lab.files.shape_values import Frictions, LimitOutline, LimitsAcross, Sweep, Turn
from lab.files.table_values import (
    Above0,
    From0,
    Inertia,
    Name,
    Number,
    Place,
    PlaceDoubt,
    StopAngle,
    Title,
    Triple,
    Weight,
)

NOWHERE: Triple = (0.0, 0.0, 0.0)


class PartTable(Table):
    """One thing that weighs something."""

    name: Name
    weight: Weight
    at: Place = Field(description="The part's own centre: a number (along) or [along, across, up].")
    shape: ShapeTable = PointTable()
    inertia: Inertia | None = Field(
        default=None, description="Weight × length², about the part's own centre; stands before the shape's."
    )
    hold: Literal["clamped", "hung"] = "clamped"
    cut: bool = Field(default=False, description="true takes the weight away.")
    weight_doubt: From0 = Field(default=0.0, description="One standard uncertainty.")
    at_doubt: PlaceDoubt = Field(default=NOWHERE, description="One standard uncertainty.")
    together: Name | None = Field(
        default=None, alias="set", description="Parts measured with one scale or ruler share a set."
    )
    look: Look | None = Field(default=None, description="How to draw it.")
    group: Name | None = Field(default=None, description="What it is part of; `at` is then in its coordinates.")


class BarTable(Table):
    """The bar; every other part lies on it."""

    name: Name = "bar"
    length: Above0
    weight: Weight
    left: Number = 0.0
    depth: Above0 | None = Field(default=None, description="0.02 × length where not given.")


class PivotTable(Table):
    """What the build turns about."""

    at: Number
    up: Number = 0.0
    stop: StopAngle = Field(default=20.0, description="Degrees.")
    pad: From0 = Field(default=0.0, description="Half-width of a flat rest; 0 is a pin.")
    damping: From0 = Field(default=0.0, description="Weight × length² in a second.")


class SupportTable(Table):
    """One of two things, or three not in line, that hold the build up from below."""

    name: Name
    at: Place
    friction: Frictions | None = Field(
        default=None, description="[static, kinetic], the kinetic no more than the static."
    )


class GroupTable(Table):
    """Parts, and other groups, that move as one."""

    name: Name
    at: Place = Field(default=NOWHERE, description="Where the group's own zero lies.")
    turn: Turn = Field(default=NOWHERE, description="[roll, pitch, yaw] in degrees: yawed, then pitched, then rolled.")
    group: Name | None = Field(default=None, description="What it sits in; `at` is then in its coordinates.")


class TankTable(Table):
    """A tank; its contents weigh, at its place."""

    name: Name
    at: Place
    capacity: Above0 = Field(description="A volume: mL, L or US gal.")
    contents: From0 = Field(description="A volume, at most the capacity.")
    density: Above0 = Field(description="Weight per volume.")


class SurfaceTable(Table):
    """A wing, tail or foreplane: a flat trapezoid on each side of its root; or a fin."""

    name: Name
    root_chord: Above0
    tip_chord: From0
    span: Above0 = Field(description="Tip to tip; of a vertical one, root to tip.")
    sweep: Sweep = Field(default=0.0, description="Of the leading edge, in degrees, aft positive.")
    at: Place = Field(description="The leading edge of its root.")
    vertical: bool = False


class LimitsTable(Table):
    """Where the balance point may lie."""

    outline: LimitOutline = Field(default=(), description="Corners [along, weight], in order, once round.")
    across: LimitsAcross | None = Field(default=None, description="[left, right].")


class BuildTable(Table):
    """A Tiltbench build file."""

    format: Literal[1]
    title: Title
    units: Literal["g-cm", "kg-m", "N-m", "lb-in"]
    reference: Place = Field(default=NOWHERE, description="Arms are measured from here.")
    view: View = "plain"
    bench: Bench | None = Field(default=None, description="What it stands on in free build.")
    bar: BarTable | None = None
    part: tuple[PartTable, ...] = Field(default=(), strict=False)
    group: tuple[GroupTable, ...] = Field(default=(), strict=False)
    tank: tuple[TankTable, ...] = Field(default=(), strict=False)
    surface: tuple[SurfaceTable, ...] = Field(default=(), strict=False)
    limits: LimitsTable | None = None
    pivot: PivotTable | None = None
    support: tuple[SupportTable, ...] = Field(default=(), strict=False)


TABLES: dict[str, type[Table]] = {
    "": BuildTable,
    "bar": BarTable,
    "part": PartTable,
    "group": GroupTable,
    "tank": TankTable,
    "surface": SurfaceTable,
    "limits": LimitsTable,
    "pivot": PivotTable,
    "support": SupportTable,
    **SHAPES,
}
"""Every table by the name it has in a file, a shape by its kind; the whole file under an empty name."""


def keys_of(table: type[Table]) -> tuple[str, ...]:
    """The keys that a table may hold, in the order of the schema."""
    return tuple(field.alias or name for name, field in table.model_fields.items())


def checked(data: dict[str, Any]) -> BuildTable | ValidationError:
    """The table as the schema reads it, or everything in it that the schema refuses."""
    try:
        return BuildTable.model_validate(data)
    except ValidationError as why:
        return why


def schema() -> dict[str, Any]:
    """The JSON Schema (draft 2020-12) of a build file, for editors."""
    keys = BuildTable.model_json_schema(by_alias=True, mode="validation")
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **keys}
