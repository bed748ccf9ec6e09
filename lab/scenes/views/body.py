"""What is drawn: parts, surfaces and tanks as values, and hints how each looks."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Protocol

from lab.mechanics import Part, Surface, Tank

NO_LOOKS: Mapping[str, str] = MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """An assembly as it is drawn: a tool, a plate, an airframe.

    name: what it is called.  parts: all that weighs, the bar too; what a tank holds may be among them under the
    tank's name, and is then drawn as the tank.  looks: by the part's name; a part without one is drawn by shape.
    bar_name, bar_depth_m: the part that is the bar, and how high it is drawn; "" where there is none.
    """

    name: str
    parts: tuple[Part, ...]
    surfaces: tuple[Surface, ...] = ()
    tanks: tuple[Tank, ...] = ()
    looks: Mapping[str, str] = field(default_factory=lambda: NO_LOOKS, hash=False)
    bar_name: str = ""
    bar_depth_m: float = 0.0


class DrawnBar(Protocol):
    """What a body takes from a bar."""

    @property
    def name(self) -> str:
        """What it is called."""
        ...

    @property
    def depth_m(self) -> float:
        """Its height as drawn."""
        ...


class DrawnBuild(Protocol):
    """What a body takes from a build."""

    @property
    def title(self) -> str:
        """What it is called."""
        ...

    @property
    def bar(self) -> DrawnBar | None:
        """Its bar."""
        ...

    @property
    def all_parts(self) -> tuple[Part, ...]:
        """All that weighs."""
        ...

    @property
    def surfaces(self) -> Sequence[Surface]:
        """Its plan forms."""
        ...

    @property
    def tanks(self) -> Sequence[Tank]:
        """Its tanks."""
        ...

    @property
    def looks(self) -> Mapping[str, str]:
        """Hints how parts are drawn."""
        ...


def body_of(build: DrawnBuild) -> Body:
    """The body that a build is drawn as; its groups are loose already."""
    bar = build.bar
    return Body(
        name=build.title,
        parts=build.all_parts,
        surfaces=tuple(build.surfaces),
        tanks=tuple(build.tanks),
        looks=build.looks,
        bar_name="" if bar is None else bar.name,
        bar_depth_m=0.0 if bar is None else bar.depth_m,
    )
