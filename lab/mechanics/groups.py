"""Groups of parts: built in their own coordinates, then placed and turned, to any depth."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Union

import numpy as np
from numpy.typing import NDArray

from lab.mechanics.axes import UPRIGHT, as_tensor, as_vector, rotation
from lab.mechanics.checks import MechanicsError, Vector, vector
from lab.mechanics.parts import Part, inertia_array_kg_m2
from lab.mechanics.shapes import Point, Turned

Floats = NDArray[np.float64]
Member = Union[Part, "Group"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Parts and groups that move as one.

    name: what messages and rows call it.  members: at least one, placed in the group's own coordinates.
    at_m: where the group's own zero lies in its surroundings.  turn_rad: roll, pitch, yaw about the group's
    own axes, turned in the order yaw, pitch, roll; right wing down, nose up, nose right are positive.
    Raises MechanicsError.  Source: S-40.
    """

    name: str
    members: tuple[Member, ...]
    at_m: Vector = (0.0, 0.0, 0.0)
    turn_rad: Vector = (0.0, 0.0, 0.0)

    def __post_init__(self) -> None:
        called = f"group {self.name!r}"
        put = object.__setattr__
        put(self, "members", tuple(self.members))
        put(self, "at_m", vector(f"place of {called}", self.at_m, "m"))
        put(self, "turn_rad", vector(f"turn of {called}", self.turn_rad, "rad"))
        if not self.members:
            raise MechanicsError(f"{called} has no member; it must have at least one")
        names: set[str] = set()
        for member in self.members:
            if member.name in names:
                raise MechanicsError(f"the name {member.name!r} is used twice in {called}; each member needs its own")
            names.add(member.name)


def flattened(members: Iterable[Member]) -> tuple[Part, ...]:
    """Every part of parts and groups, in order, in the outermost coordinates, named `group/part`.

    A turned part has its inertia and its shape turned with it.  Its place doubts are turned as independent
    ones, axis by axis; inside a set whose members are turned differently that counts them a little high.
    Raises MechanicsError.  Source: S-40, S-04.
    """
    return tuple(_placed(member.part, member.path, member.turn, member.zero) for member in _walked(members))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Found:
    """A part and the way to it: the names before it, and the coordinates that it lies in."""

    part: Part
    path: tuple[str, ...]
    turn: Floats
    zero: Floats


def _walked(members: Iterable[Member]) -> Iterator[_Found]:
    """The parts in reading order; a stack and not recursion, so that depth has no limit."""
    stack: list[tuple[Member, tuple[str, ...], Floats, Floats]] = [
        (member, (), np.array(UPRIGHT), np.zeros(3)) for member in reversed(tuple(members))
    ]
    while stack:
        member, path, turn, zero = stack.pop()
        if isinstance(member, Part):
            yield _Found(part=member, path=path, turn=turn, zero=zero)
            continue
        inner_turn, inner_zero = turn @ rotation(member.turn_rad), zero + turn @ member.at_m
        inner_path = (*path, member.name)
        stack += [(each, inner_path, inner_turn, inner_zero) for each in reversed(member.members)]


def _placed(part: Part, path: tuple[str, ...], turn: Floats, zero: Floats) -> Part:
    named = replace(part, name="/".join((*path, part.name)), at_m=as_vector(zero + turn @ part.at_m))
    if np.array_equal(turn, UPRIGHT):
        return named
    doubt = np.sqrt(turn**2 @ np.square(part.at_doubt_m))
    return replace(
        named,
        at_doubt_m=as_vector(doubt),
        shape=part.shape if isinstance(part.shape, Point) else Turned(part.shape, as_tensor(turn)),
        inertia_kg_m2=None if part.inertia_kg_m2 is None else as_tensor(turn @ _given(part) @ turn.T),
    )


def _given(part: Part) -> Floats:
    """The inertia stated by numbers; a cut-out states what it takes away, as a body of its own."""
    own = inertia_array_kg_m2(part)
    return -own if part.cut else own
