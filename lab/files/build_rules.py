"""What must hold between the keys of a build: names, places on the bar, supports, a total to divide by.

The rules read the raw table, so that they find their faults beside those of the schema, in one go. A value
that the schema refuses by itself takes part in no rule.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

from lab.files.build_faults import FaultPlaces
from lab.files.faults import Fault, KeyPath, shown
from lab.files.group_rules import GroupTree, row_name
from lab.files.raw_tables import number_of, place_of, table_of, tables_of, text_of

# Round-off when a place is reckoned from the bar's own numbers, as 0.1 + 0.2 is for 0.3.
_ROUND_OFF = 1e-9

Things = list[tuple[KeyPath, str | None]]
"""Key paths of names, and the names; None where there is none."""

MOST_SUPPORTS = 3
MOST_SURFACES = 6
"""Most surfaces of an airframe. Each makes the sum of its lift longer; with six it takes half a second."""


def rule_faults(data: dict[str, Any], places: FaultPlaces) -> list[Fault]:
    """Everything that is wrong between the keys of a build."""
    groups = GroupTree(data)
    return [
        *_names_used_twice(data, groups, places),
        *groups.faults(places),
        *_off_the_bar(data, groups, places),
        *_supports(data, places),
        *_total(data, places),
        *_bores(data, places),
        *_tanks(data, places),
        *_surfaces(data, places),
        *_limits(data, places),
    ]


def _names_used_twice(data: dict[str, Any], groups: GroupTree, places: FaultPlaces) -> Iterator[Fault]:
    named: dict[str, Things] = {
        key: [((key, index, "name"), text_of(table.get("name"))) for index, table in tables_of(data, key)]
        for key in ("group", "surface", "support")
    }
    twice = set()
    for things in named.values():
        for fault in _twice(things, places):
            twice.add(fault.key)
            yield fault
    # What has a row in the sum shares one stock of names, and so do the groups that are part of them.
    for fault in _twice(_rows(data, groups), places):
        if fault.key not in twice:
            yield fault


def _rows(data: dict[str, Any], groups: GroupTree) -> Things:
    bar = table_of(data, "bar")
    rows: Things = []
    if bar is not None:
        rows.append((("bar", "name"), text_of(bar.get("name", "bar"))))
    for key in ("part", "group", "tank"):
        for index, table in tables_of(data, key):
            name = text_of(table.get("name"))
            way = groups.way(table.get("group")) or ()
            rows.append(((key, index, "name"), name and row_name(way, name)))
    return rows


def _twice(things: Things, places: FaultPlaces) -> Iterator[Fault]:
    names = [name for _, name in things if name is not None]
    if len(set(names)) == len(names):
        return
    first: dict[str, KeyPath] = {}
    # By line, since a bar may come after its parts: the name that a reader meets first is the one to keep.
    for path, name in sorted(things, key=lambda thing: places.line(thing[0])):
        if name is None:
            continue
        if name in first:
            line = places.line(first[name])
            what = f"the name {shown(name)} is used twice (first on line {line})"
            yield places.fault(path, what, "give each its own name")
        first.setdefault(name, path)


def _off_the_bar(data: dict[str, Any], groups: GroupTree, places: FaultPlaces) -> Iterator[Fault]:
    bar = table_of(data, "bar")
    if bar is None:
        return
    left, length = number_of(bar.get("left", 0)), number_of(bar.get("length"))
    if left is None or length is None or length <= 0:
        return
    right = left + length
    slack = _ROUND_OFF * length
    for path, along in _things_on_the_bar(data, groups):
        if along is not None and not left - slack <= along <= right + slack:
            reach = f"from {_shown(left)} to {_shown(right)}"
            what = f"{_shown(along)} is off the bar, which reaches {reach}"
            yield places.fault(path, what, f"write a place {reach}")


def _things_on_the_bar(data: dict[str, Any], groups: GroupTree) -> Iterator[tuple[KeyPath, float | None]]:
    grouped = groups.places_in_file()
    for key in ("part", "tank", "support"):
        for index, thing in tables_of(data, key):
            if key != "part" or thing.get("group") is None:
                at = thing.get("at")
                yield (key, index, "at"), number_of(at[0] if isinstance(at, list) and at else at)
            elif index in grouped:
                yield (key, index, "at"), grouped[index][0]
    pivot = table_of(data, "pivot")
    if pivot is not None:
        yield ("pivot", "at"), number_of(pivot.get("at"))


def _supports(data: dict[str, Any], places: FaultPlaces) -> Iterator[Fault]:
    supports = list(tables_of(data, "support"))
    if len(supports) == 1:
        yield places.fault(
            ("support",), "one support alone holds nothing steady", "add another [[support]], or use [pivot]"
        )
    if len(supports) > MOST_SUPPORTS:
        index, _ = supports[MOST_SUPPORTS]
        what = f"on {len(supports)} supports statics can't tell what each carries"
        yield places.fault(("support", index), what, "keep two, or three that aren't in line")
    found = [(index, place_of(support.get("at"))) for index, support in supports]
    placed = [(at[0], at[1]) for _, at in found if at is not None]
    index = found[-1][0] if found else 0
    if len(supports) == len(placed) == 2 and placed[0][0] == placed[1][0]:
        yield places.fault(("support", index, "at"), "both supports are at one place", "set them apart along")
    if len(supports) == len(placed) == 3 and _in_line(placed):
        yield places.fault(
            ("support", index, "at"),
            "the three supports are in one line, and statics can't tell what each carries",
            "move one across, out of the line",
        )


def _in_line(corners: list[tuple[float, float]]) -> bool:
    first, second, third = corners
    sides = [(b[0] - a[0], b[1] - a[1]) for a, b in ((first, second), (first, third), (second, third))]
    longest = max(abs(each) for side in sides for each in side)
    (along, across), (farther, wider), _ = sides
    return abs(along * wider - across * farther) <= _ROUND_OFF * longest * longest


def _total(data: dict[str, Any], places: FaultPlaces) -> Iterator[Fault]:
    nothing = ("nothing in it weighs anything", "add a [[part]] or a [bar]")
    weights: list[tuple[Any, bool]] = [
        (part.get("weight"), part.get("cut") is True) for _, part in tables_of(data, "part")
    ]
    bar = table_of(data, "bar")
    if bar is not None:
        weights.append((bar.get("weight"), False))
    if not weights and not data.get("part") and "bar" not in data and not data.get("tank"):
        yield places.fault((), *nothing)
        return
    terms = []
    for weight, is_cut in weights:
        number = number_of(weight)
        if number is None or number <= 0:
            return
        terms.append(-number if is_cut else number)
    for _, tank in tables_of(data, "tank"):
        contents, density = number_of(tank.get("contents")), number_of(tank.get("density"))
        if contents is None or density is None or contents < 0 or density <= 0:
            return
        terms.append(contents * density)
    cuts = [index for index, part in tables_of(data, "part") if part.get("cut") is True]
    # Less than round-off of the whole is nothing left, and dividing by it would give a place from noise.
    if terms and math.fsum(terms) <= _ROUND_OFF * math.fsum(map(abs, terms)):
        if cuts:
            path: KeyPath = ("part", cuts[-1], "weight")
            yield places.fault(path, "the cut-outs take away all the weight", "cut less than there is")
        else:
            yield places.fault((), *nothing)


def _bores(data: dict[str, Any], places: FaultPlaces) -> Iterator[Fault]:
    for index, part in tables_of(data, "part"):
        shape = part.get("shape")
        if not isinstance(shape, dict) or shape.get("kind") != "cylinder":
            continue
        inner, radius = number_of(shape.get("inner", 0)), number_of(shape.get("radius"))
        if inner is not None and radius is not None and inner >= radius > 0:
            what = f"a bore of radius {_shown(inner)} leaves nothing of radius {_shown(radius)}"
            yield places.fault(("part", index, "shape", "inner"), what, f"write less than {_shown(radius)}")


def _tanks(data: dict[str, Any], places: FaultPlaces) -> Iterator[Fault]:
    for index, tank in tables_of(data, "tank"):
        contents, capacity = number_of(tank.get("contents")), number_of(tank.get("capacity"))
        if contents is not None and capacity is not None and contents > capacity > 0:
            what = f"contents of {_shown(contents)} overflow a tank of {_shown(capacity)}"
            yield places.fault(("tank", index, "contents"), what, f"write at most {_shown(capacity)}")


def _surfaces(data: dict[str, Any], places: FaultPlaces) -> Iterator[Fault]:
    surfaces = list(tables_of(data, "surface"))
    if len(surfaces) > MOST_SURFACES:
        index, _ = surfaces[MOST_SURFACES]
        yield places.fault(("surface", index), f"{len(surfaces)} surfaces", f"keep at most {MOST_SURFACES}")


def _limits(data: dict[str, Any], places: FaultPlaces) -> Iterator[Fault]:
    limits = table_of(data, "limits")
    if limits is not None and not {"outline", "across"} & limits.keys():
        yield places.fault(("limits",), "limits that say nothing", "add `outline`, `across` or both")


def _shown(number: float) -> str:
    """As many figures as tell it from what it is compared with; no round-off of a sum."""
    return f"{number:.12g}"
