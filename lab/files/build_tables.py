"""The tables of a build file and their keys, as a schema that checks them and that editors can read."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BaseModel, ConfigDict, Discriminator, Field, Tag, ValidationError

from lab.files.build import Look, View
from lab.files.table_values import (
    Above0,
    BoxSize,
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

Axis = Literal["along", "across", "up"]
NOWHERE: Triple = (0.0, 0.0, 0.0)


class Table(BaseModel):
    """A table that knows its keys and takes no others; numbers are never made from text."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True, validate_by_alias=True)


class PointTable(Table):
    """All the weight in one place."""

    kind: Literal["point"] = "point"


class RodTable(Table):
    """A slender rod, its centre at `at`."""

    kind: Literal["rod"]
    length: Above0
    axis: Axis = "along"


class RectangleTable(Table):
    """A thin plate seen from the side: length along, width up."""

    kind: Literal["rectangle"]
    length: Above0
    width: Above0


class BoxTable(Table):
    """A solid box: size along, across, up."""

    kind: Literal["box"]
    size: BoxSize


class CylinderTable(Table):
    """A solid or hollow cylinder; `inner` is the radius of its bore."""

    kind: Literal["cylinder"]
    radius: Above0
    length: Above0
    inner: From0 = 0.0
    axis: Axis = "along"


def _kind(value: Any) -> str | None:
    """Which shape a shape table means; pydantic asks before it looks at any other key."""
    if isinstance(value, dict):
        kind = value.get("kind", "point")
        return kind if isinstance(kind, str) else ""  # no tag: the fault shows what is written
    return getattr(value, "kind", None)


ShapeTable = Annotated[
    Annotated[PointTable, Tag("point")]
    | Annotated[RodTable, Tag("rod")]
    | Annotated[RectangleTable, Tag("rectangle")]
    | Annotated[BoxTable, Tag("box")]
    | Annotated[CylinderTable, Tag("cylinder")],
    Discriminator(_kind),
]
SHAPE_KINDS = ("point", "rod", "rectangle", "box", "cylinder")


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
    """One of two things that hold the build up from below."""

    name: Name
    at: Place


class BuildTable(Table):
    """A Tiltbench build file."""

    format: Literal[1]
    title: Title
    units: Literal["g-cm", "kg-m", "N-m", "lb-in"]
    reference: Place = Field(default=NOWHERE, description="Arms are measured from here.")
    view: View = "plain"
    bar: BarTable | None = None
    part: tuple[PartTable, ...] = Field(default=(), strict=False)
    pivot: PivotTable | None = None
    support: tuple[SupportTable, ...] = Field(default=(), strict=False)


TABLES: dict[str, type[Table]] = {
    "": BuildTable,
    "bar": BarTable,
    "part": PartTable,
    "pivot": PivotTable,
    "support": SupportTable,
    "point": PointTable,
    "rod": RodTable,
    "rectangle": RectangleTable,
    "box": BoxTable,
    "cylinder": CylinderTable,
}
"""Every table by the name it has in a file, a shape by its kind; the whole file under an empty name."""

LATER_TABLES = ("group", "tank", "surface", "limits")
LATER_PART_KEYS = ("group",)
LATER_SHAPE_KINDS = ("triangle", "polygon", "disc", "half-disc", "cone", "sphere", "hemisphere")


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
