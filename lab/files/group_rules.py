"""What must hold between groups and their parts, and where a group's parts lie in the file's own coordinates."""

from __future__ import annotations

from collections.abc import Iterator
from math import radians
from typing import Any

from lab.files.build_faults import FaultPlaces
from lab.files.faults import Fault, KeyPath, near, shown
from lab.files.raw_tables import place_of, tables_of, text_of
from lab.files.table_values import Triple
from lab.mechanics import Group, Member, Part, flattened

DEEPEST_GROUP = 20
"""Most groups inside one another. Each level lengthens the names of the rows."""

MOST_OFFERS = 200
"""Most comparisons of names, in all, to offer one that may have been meant: each costs some microseconds."""

_UNTURNED = [0.0, 0.0, 0.0]


class GroupTree:
    """The groups of a raw table, by name, and what they sit in."""

    def __init__(self, data: dict[str, Any]) -> None:
        """Whatever has no name takes no part; of two of one name the first counts."""
        self._data = data
        self._tables: dict[str, tuple[int, dict[str, Any]]] = {}
        for index, table in tables_of(data, "group"):
            name = text_of(table.get("name"))
            if name is not None:
                self._tables.setdefault(name, (index, table))
        self._ways = {name: self._way(name) for name in self._tables}

    def way(self, name: Any) -> tuple[str, ...] | None:
        """The names from the outermost group to this one; None where there is no such way."""
        return self._ways.get(name) if isinstance(name, str) else None

    def _way(self, name: str) -> tuple[str, ...] | None:
        way: list[str] = []
        inner: str | None = name
        while inner is not None:
            # One more than allowed, so that a way that is too deep can be told from one that never ends.
            if inner in way or inner not in self._tables or len(way) > DEEPEST_GROUP:
                return None
            way.append(inner)
            outer = self._tables[inner][1].get("group")
            if outer is not None and not isinstance(outer, str):
                return None
            inner = outer
        return tuple(reversed(way))

    def faults(self, places: FaultPlaces) -> Iterator[Fault]:
        """Groups that aren't there, that hold nothing, or that sit in each other."""
        holding = set()
        offers = MOST_OFFERS
        for key in ("part", "group"):
            for index, table in tables_of(self._data, key):
                outer = text_of(table.get("group"))
                if outer is None:
                    continue
                holding.add(outer)
                if outer not in self._tables:
                    offers -= len(self._tables)
                    yield self._unknown(places, (key, index, "group"), outer, offers=offers >= 0)
        for name, (index, _) in self._tables.items():
            if name not in holding:
                cure = f"give a [[part]] the key `group = {shown(name)}`, or leave the group out"
                yield places.fault(("group", index), "nothing is in this group", cure)
        yield from self._rings(places)
        yield from self._too_deep(places)

    def _unknown(self, places: FaultPlaces, path: KeyPath, outer: str, *, offers: bool) -> Fault:
        nearest = near(outer, self._tables) if offers else None
        cure = f"did you mean {shown(nearest)}?" if nearest else f"add a [[group]] with `name = {shown(outer)}`"
        return places.fault(path, f"there is no group {shown(outer)}", cure)

    def _rings(self, places: FaultPlaces) -> Iterator[Fault]:
        seen: set[str] = set()
        for start in self._tables:
            way: list[str] = []
            name: str | None = start
            while name is not None and name in self._tables and name not in seen:
                seen.add(name)
                way.append(name)
                name = text_of(self._tables[name][1].get("group"))
            if name in way:
                ring = way[way.index(name) :]
                what = "the group sits in itself"
                if ring[1:]:
                    what += f", by way of {', '.join(map(shown, ring[1:4]))}"
                yield places.fault(("group", self._tables[name][0], "group"), what, "leave this key out")

    def _too_deep(self, places: FaultPlaces) -> Iterator[Fault]:
        for name, (index, table) in self._tables.items():
            outer = self.way(table.get("group"))
            # Of a long way inwards only the first group too many is told.
            if outer is not None and len(outer) == DEEPEST_GROUP:
                what = f"{shown(name)} sits {DEEPEST_GROUP + 1} groups deep"
                yield places.fault(("group", index, "group"), what, f"nest at most {DEEPEST_GROUP}")

    def places_in_file(self) -> dict[int, Triple]:
        """Where the parts of groups lie in the file's own coordinates, by the part's index."""
        members: dict[str | None, list[Member]] = {}
        for index, part in tables_of(self._data, "part"):
            at, name = place_of(part.get("at")), part.get("group")
            if at is not None and self.way(name) is not None:
                members.setdefault(name, []).append(Part(str(index), 1.0, at))
        # The innermost first, so that each is whole when the one around it takes it in.
        for name in sorted(self._tables, key=lambda each: -len(self.way(each) or ())):
            _, table = self._tables[name]
            at, turn = place_of(table.get("at", 0)), table.get("turn", _UNTURNED)
            angles = place_of(turn) if isinstance(turn, list) else None
            if self.way(name) is None or name not in members or at is None or angles is None:
                continue
            roll, pitch, yaw = map(radians, angles)
            # No part's index is a word with a letter before it.
            whole = Group(name=f"g{name}", members=tuple(members[name]), at_m=at, turn_rad=(roll, pitch, yaw))
            members.setdefault(table.get("group"), []).append(whole)
        found = flattened(members.get(None, ()))
        return {int(part.name.rpartition("/")[2]): part.at_m for part in found}


def row_name(way: tuple[str, ...], name: str) -> str:
    """The name of a row of a sum: the groups and the part."""
    return "/".join((*way, name))
