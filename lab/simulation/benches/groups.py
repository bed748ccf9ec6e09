"""Parts that are tied together. A part is in a group exactly when its name says so: `group/part`.

That is how rows of a sum name what a build file has in its groups, so a bench needs to remember nothing else.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from lab import mechanics
from lab.mechanics import Part
from lab.simulation.benches.names import typed_name, unused_name

if TYPE_CHECKING:
    # Only builds with groups wait for them.
    from lab.mechanics import Group, Member

NEW_GROUP = "group"
"""What parts that are tied together are called at first."""


def group_of(name: str) -> str | None:
    """The outermost group that a part of this name is in; None for one on its own."""
    pieces = name.split("/")
    # A name out of a file may hold a slash that parts nothing.
    return pieces[0] if len(pieces) > 1 and all(pieces) else None


def in_group(name: str) -> str:
    """What a part is called within its groups: never with a slash."""
    # A slash that parts nothing would, behind a group's name.
    return name.replace("/", "-") if group_of(name) is None else name.rpartition("/")[2]


def tied_with(names: Sequence[str], index: int) -> tuple[int, ...]:
    """Which parts move when one does: all of its group, in order; itself alone where it is on its own."""
    group = group_of(names[index])
    if group is None:
        return (index,)
    return tuple(number for number, name in enumerate(names) if group_of(name) == group)


def tied_names(names: Sequence[str], index: int, to: int) -> tuple[str, ...]:
    """The names after a part, and all that is tied to it, was tied to another and all that is tied to that.

    The group that is joined keeps its name; where neither was in one, a new one begins.
    """
    group = group_of(names[to]) or group_of(names[index])
    if group is None:
        group = unused_name(NEW_GROUP, _taken(names))
    joining = {*tied_with(names, index), *tied_with(names, to)}
    after = list(names)
    for number in sorted(joining):
        if group_of(names[number]) != group:
            after[number] = unused_name(f"{group}/{in_group(names[number])}", _taken(after, but=number))
    return tuple(after)


def untied_names(names: Sequence[str], index: int) -> tuple[str, ...]:
    """The names after one part was loosened. One that is left alone is on its own again too."""
    after = list(names)
    _loosen(after, index)
    return _alone_loosened(after, group_of(names[index]))


def taken_names(names: Sequence[str], index: int) -> tuple[str, ...]:
    """The names of the others after one part was taken away: one that is left alone is on its own again."""
    return _alone_loosened([name for place, name in enumerate(names) if place != index], group_of(names[index]))


def _alone_loosened(names: list[str], group: str | None) -> tuple[str, ...]:
    left = [place for place, name in enumerate(names) if group is not None and group_of(name) == group]
    if len(left) == 1:
        _loosen(names, left[0])
    return tuple(names)


def _loosen(names: list[str], index: int) -> None:
    if group_of(names[index]) is not None:
        names[index] = unused_name(in_group(names[index]), _taken(names, but=index))


def _taken(names: Sequence[str], *, but: int | None = None) -> set[str]:
    """What parts and groups are called already.  but: the place of a name that is about to go."""
    others = [name for place, name in enumerate(names) if place != but]
    return {*others, *(group for name in others if (group := group_of(name)) is not None)}


def renamed(names: Sequence[str], index: int, typed: str) -> str | None:
    """What a part is called after a name was typed for it: it stays in its group.  None where that is no name."""
    wanted = typed_name(typed)
    if wanted is None:
        return None
    way = names[index].rpartition("/")[0] + "/" if group_of(names[index]) else ""
    return unused_name(way + wanted, _taken(names, but=index))


def copied_names(names: Sequence[str], tied: Sequence[str]) -> tuple[str, ...]:
    """The names of copies of parts that are tied together: of one, or of a whole group as a new one.

    names: what all is called already.  tied: those of the parts that are copied.
    """
    taken, group = _taken(names), group_of(tied[0])
    if group is None:
        return (unused_name(without_number(tied[0]), taken),)
    new = unused_name(without_number(group), taken)
    return tuple(new + name[len(group) :] for name in tied)


def together_m(by_m: float, at_m: Sequence[float], spans_m: Sequence[tuple[float, float]]) -> float:
    """How far all of a group can go when one is moved by so much: as far as the first of them that stops.

    at_m: where they are, each within its span.
    """
    lows = [low_m - place_m for place_m, (low_m, _) in zip(at_m, spans_m, strict=True)]
    highs = [high_m - place_m for place_m, (_, high_m) in zip(at_m, spans_m, strict=True)]
    return min(max(by_m, *lows), *highs)


def without_number(name: str) -> str:
    """`brass 50` of `brass 50 (2)`: a copy of a copy is numbered as one of the first."""
    return name.partition(" (")[0] or name


def as_groups(parts: Iterable[Part]) -> tuple[tuple[Part, ...], tuple[Group, ...]]:
    """Parts on their own, and the groups of the others, as a build file has them: where they are, unturned."""
    loose: list[Part] = []
    groups: dict[str, list[Part]] = {}
    for part in parts:
        group = group_of(part.name)
        if group is None:
            loose.append(part)
        else:
            groups.setdefault(group, []).append(replace(part, name=part.name[len(group) + 1 :]))
    return tuple(loose), tuple(mechanics.Group(name=name, members=_members(inner)) for name, inner in groups.items())


def _members(parts: Iterable[Part]) -> tuple[Member, ...]:
    loose, groups = as_groups(parts)
    return (*loose, *groups)
