"""The shapes that a part of a build file may have, as the schema knows them."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BaseModel, ConfigDict, Discriminator, Tag

from lab.files.shape_values import Holes, Outline, ThreeCorners
from lab.files.table_values import Above0, BoxSize, From0

Axis = Literal["along", "across", "up"]


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


class TriangleTable(Table):
    """A thin plate seen from the side: three corners [along, up] in coordinates of its own."""

    kind: Literal["triangle"]
    outline: ThreeCorners
    holes: Holes = ()


class PolygonTable(Table):
    """A thin plate with straight sides: corners [along, up] in coordinates of its own, in order, once round."""

    kind: Literal["polygon"]
    outline: Outline
    holes: Holes = ()


class DiscTable(Table):
    """A thin round plate, seen from the side."""

    kind: Literal["disc"]
    radius: Above0


class HalfDiscTable(Table):
    """A thin half-round plate, its straight edge along and below."""

    kind: Literal["half-disc"]
    radius: Above0


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


class ConeTable(Table):
    """A solid cone; its tip points the positive way of its axis."""

    kind: Literal["cone"]
    radius: Above0
    length: Above0
    axis: Axis = "along"


class SphereTable(Table):
    """A solid ball."""

    kind: Literal["sphere"]
    radius: Above0


class HemisphereTable(Table):
    """A solid half ball; its dome points the positive way of its axis."""

    kind: Literal["hemisphere"]
    radius: Above0
    axis: Axis = "up"


def _kind(value: Any) -> str | None:
    """Which shape a shape table means; pydantic asks before it looks at any other key."""
    if isinstance(value, dict):
        kind = value.get("kind", "point")
        return kind if isinstance(kind, str) else ""  # no tag: the fault shows what is written
    return getattr(value, "kind", None)


SHAPES: dict[str, type[Table]] = {
    "point": PointTable,
    "rod": RodTable,
    "rectangle": RectangleTable,
    "triangle": TriangleTable,
    "polygon": PolygonTable,
    "disc": DiscTable,
    "half-disc": HalfDiscTable,
    "box": BoxTable,
    "cylinder": CylinderTable,
    "cone": ConeTable,
    "sphere": SphereTable,
    "hemisphere": HemisphereTable,
}
"""Every shape's table by its kind."""

ShapeTable = Annotated[
    Annotated[PointTable, Tag("point")]
    | Annotated[RodTable, Tag("rod")]
    | Annotated[RectangleTable, Tag("rectangle")]
    | Annotated[TriangleTable, Tag("triangle")]
    | Annotated[PolygonTable, Tag("polygon")]
    | Annotated[DiscTable, Tag("disc")]
    | Annotated[HalfDiscTable, Tag("half-disc")]
    | Annotated[BoxTable, Tag("box")]
    | Annotated[CylinderTable, Tag("cylinder")]
    | Annotated[ConeTable, Tag("cone")]
    | Annotated[SphereTable, Tag("sphere")]
    | Annotated[HemisphereTable, Tag("hemisphere")],
    Discriminator(_kind),
]
