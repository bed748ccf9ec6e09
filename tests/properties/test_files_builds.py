"""Builds survive being written; mutated build files are read or refused, never anything else."""

import dataclasses
import itertools
import json
import math
import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lab.files import UNITS, Bar, Build, FileFaults, Support, build_text, read_build_text
from lab.mechanics import (
    Box,
    Cone,
    Cylinder,
    Disc,
    Group,
    HalfDisc,
    Hemisphere,
    Limits,
    Part,
    Pivot,
    Point,
    Polygon,
    Rectangle,
    Rod,
    Sphere,
    Surface,
    Tank,
    Triangle,
    moment_sum,
)
from lab.outline.words import Words
from lab.terminal.sums import sum_document, sum_table

names = st.text(
    st.characters(exclude_categories=["Cs", "Cc", "Zl", "Zp"]), min_size=1, max_size=12
).filter(str.strip).filter(lambda name: name not in ("tank 0", "tank 1", "group 0", "group 1"))  # fmt: skip
systems = st.sampled_from(sorted(UNITS))


def numbers(low, high):
    """Numbers as a person writes them, and as a drag with a finger leaves them."""
    return st.floats(low, high) | st.integers(math.ceil(low), math.floor(high)).map(float)


def plates(to_m):
    """Triangles, and rectangles with a square hole, anywhere and of any size."""
    sizes = st.tuples(numbers(-1e3, 1e3), numbers(-1e3, 1e3), numbers(0.1, 1e3), numbers(0.1, 1e3))

    def ring(*corners):
        return tuple((to_m(along), to_m(up)) for along, up in corners)

    def triangle(x, z, wide, high):
        return Triangle(ring((x, z), (x + wide, z), (x, z + high)))

    def polygon(x, z, wide, high):
        a, b, c, d = x + wide / 4, z + high / 4, x + wide / 2, z + high / 2
        outline = ring((x, z), (x + wide, z), (x + wide, z + high), (x, z + high))
        return Polygon(outline, (ring((a, b), (c, b), (c, d), (a, d)),))

    return sizes.map(lambda size: triangle(*size)) | sizes.map(lambda size: polygon(*size))


@st.composite
def groups(draw, part, places, *, depth=2):
    """A group of parts, and perhaps of groups, with names that only it has to tell apart."""
    member = part if depth == 0 else st.one_of(part, groups(part, places, depth=depth - 1))
    members = draw(st.lists(member, min_size=1, max_size=3))
    parts = [each for each in members if isinstance(each, Part)]
    inner = [each for each in members if isinstance(each, Group)]
    return Group(
        name="", members=tuple(renamed(each, f"m{at}") for at, each in enumerate((*parts, *inner))),
        at_m=draw(places), turn_rad=draw(st.tuples(*[numbers(-360, 360).map(math.radians)] * 3)),
    )  # fmt: skip


def renamed(thing, name):
    return dataclasses.replace(thing, name=name)


def told_apart(group, names):
    """Every group under a name of its own, since a file's parts call their group by it."""
    name = next(names)
    members = tuple(told_apart(each, names) if isinstance(each, Group) else each for each in group.members)
    return dataclasses.replace(group, name=name, members=members)


@st.composite
def builds(draw):
    """A build whose every number came from a file: reading back can then be exact to the last bit."""
    system = UNITS[draw(systems)]
    to_m, to_kg = system.to_m, system.to_kg
    lengths = numbers(0.01, 1e4).map(to_m)
    places = st.tuples(*[numbers(-1e4, 1e4).map(to_m)] * 3)
    sides = numbers(0.01, 1e4)
    shapes = st.one_of(
        st.just(Point()),
        st.builds(Rod, lengths, axis=st.sampled_from(["along", "across", "up"])),
        st.builds(Rectangle, lengths, lengths),
        st.builds(Box, st.tuples(lengths, lengths, lengths)),
        sides.flatmap(lambda radius: st.builds(
            Cylinder, st.just(to_m(radius)), lengths, inner_m=st.floats(0, radius * 0.9).map(to_m))),
        st.builds(Disc, lengths), st.builds(HalfDisc, lengths), st.builds(Sphere, lengths),
        st.builds(Cone, lengths, lengths, axis=st.sampled_from(["along", "across", "up"])),
        st.builds(Hemisphere, lengths, axis=st.sampled_from(["along", "across", "up"])),
        plates(to_m),
    )  # fmt: skip
    inertias = st.none() | numbers(0.1, 1e4).map(system.to_kg_m2).map(lambda each: (each, each, each))
    part = st.builds(
        Part, st.just(""), numbers(0.01, 1e6).map(to_kg), places, shapes,
        inertia_kg_m2=inertias, hold=st.sampled_from(["clamped", "hung"]),
        mass_doubt_kg=numbers(0, 10).map(to_kg), at_doubt_m=st.tuples(*[numbers(0, 10).map(to_m)] * 3),
        set_name=st.none() | names,
    )  # fmt: skip
    named = draw(st.lists(st.tuples(names, part), min_size=1, max_size=4, unique_by=lambda pair: pair[0]))
    parts = tuple(
        Part(name, each.mass_kg, each.at_m, each.shape, inertia_kg_m2=each.inertia_kg_m2, hold=each.hold,
             mass_doubt_kg=each.mass_doubt_kg, at_doubt_m=each.at_doubt_m, set_name=each.set_name)
        for name, each in named
    )  # fmt: skip
    pivots = st.builds(
        Pivot, numbers(-1e4, 1e4).map(to_m), up_m=numbers(-10, 10).map(to_m),
        stop_rad=numbers(1, 89).map(math.radians), pad_m=numbers(0, 10).map(to_m),
        damping_kg_m2_s=numbers(0, 10).map(system.to_kg_m2),
    )  # fmt: skip
    looks = st.dictionaries(st.sampled_from([name for name, _ in named]), st.sampled_from(["hook", "box"]))
    supports = draw(st.just(()) | st.tuples(places, places).filter(lambda pair: pair[0][0] != pair[1][0]))
    tanks = st.builds(
        lambda at, capacity, share, density: Tank(
            name="", at_m=at, capacity_m3=system.to_m3(capacity), contents_m3=system.to_m3(capacity * share),
            density_kg_m3=system.to_kg_m3(density),
        ), places, numbers(0.01, 1e4), st.floats(0, 1), numbers(0.01, 1e3),
    )  # fmt: skip
    surfaces = st.builds(
        Surface, name=st.just(""), root_chord_m=lengths, tip_chord_m=lengths | st.just(0.0), span_m=lengths,
        sweep_rad=numbers(-60, 60).map(math.radians), at_m=places, vertical=st.booleans(),
    )  # fmt: skip
    limits = st.builds(
        lambda low, high, light, heavy: Limits(
            outline=tuple((to_m(at), to_kg(weight)) for at, weight in ((low, light), (high, light), (high, heavy))),
            across_m=(to_m(low), to_m(high)),
        ), numbers(-100, 0), numbers(1, 100), numbers(1, 10), numbers(11, 100),
    )  # fmt: skip
    numbered = (f"group {number}" for number in itertools.count())
    return Build(
        groups=tuple(told_apart(each, numbered) for each in draw(st.lists(groups(part, places), max_size=2))),
        tanks=tuple(renamed(each, f"tank {at}") for at, each in enumerate(draw(st.lists(tanks, max_size=2)))),
        surfaces=tuple(renamed(each, f"s{at}") for at, each in enumerate(draw(st.lists(surfaces, max_size=2)))),
        limits=draw(st.none() | limits),
        title=draw(names), units=system.name, reference_m=draw(places),
        view=draw(st.sampled_from(["plain", "numbers", "all"])), parts=parts, pivot=draw(st.none() | pivots),
        supports=tuple(Support(name=f"s{at}", at_m=each) for at, each in enumerate(supports)), looks=draw(looks),
    )  # fmt: skip


@settings(max_examples=150, deadline=None)
@given(builds())
def test_a_build_that_was_written_reads_back_equal_to_the_last_bit(build):
    assert read_build_text(build_text(build), file="b.toml") == build


@settings(max_examples=60, deadline=None)
@given(builds())
def test_taking_a_build_apart_changes_no_sum(build):
    loose = build.loose()
    assert loose.groups == loose.tanks == ()
    assert moment_sum(loose.all_parts) == moment_sum(build.all_parts)


@settings(max_examples=60, deadline=None)
@given(builds(), systems)
def test_every_build_that_reads_has_a_sum_in_any_units_that_json_can_hold(build, units):
    document = sum_document(build, units=units)
    assert len(document["parts"]) == len(build.all_parts) + sum(tank.mass_kg == 0 for tank in build.tanks)
    # Numbers of up to 1e10 added and turned: round-off of their largest, some 1e-15 of it.
    mass_kg = math.fsum(part.signed_mass_kg for part in build.all_parts)
    assert UNITS[units].to_kg(document["weight"]) == pytest.approx(mass_kg, rel=1e-12)
    assert json.loads(json.dumps(document, allow_nan=False)) == document
    assert sum_table(build, Words("en"), units=units)


@given(systems, st.floats(1e-3, 1e3), st.floats(1e-3, 1e3), st.floats(-1e3, 1e3))
def test_a_bar_reads_back_equal_to_the_last_bit(units, length, weight, left):
    system = UNITS[units]
    bar = Bar(
        name="bar", length_m=system.to_m(length), mass_kg=system.to_kg(weight),
        left_m=system.to_m(left), depth_m=system.to_m(length) * 0.02,
    )  # fmt: skip
    again = read_build_text(build_text(Build(title="T", units=units, bar=bar)), file="b.toml").bar
    assert (again.length_m, again.mass_kg, again.left_m) == (bar.length_m, bar.mass_kg, bar.left_m)
    # The depth was not read from a file: no number in these units may mean exactly this one.
    assert again.depth_m == pytest.approx(bar.depth_m, rel=3e-16)


@given(st.floats(-1e6, 1e6, allow_subnormal=False), systems)
def test_any_number_of_a_file_means_the_same_after_it_was_written_again(number, units):
    system = UNITS[units]
    for read, write in (
        (system.to_kg, system.from_kg),
        (system.to_m, system.from_m),
        (system.to_kg_m, system.from_kg_m),
        (system.to_kg_m2, system.from_kg_m2),
        (system.to_m3, system.from_m3),
    ):
        assert read(write(read(number))) == read(number)


@given(st.decimals(-(10**6), 10**6, places=6), systems)
def test_a_number_of_at_most_12_figures_is_written_as_it_was_read(decimal, units):
    number = float(decimal)
    assert UNITS[units].from_m(UNITS[units].to_m(number)) == number
    assert UNITS[units].from_kg(UNITS[units].to_kg(number)) == number


GOOD = """\
format = 1
title = "Boat hook"
units = "g-cm"
reference = 0.0

[bar]
length = 100
weight = 150

[[part]]
name = "pole"
weight = 120
at = 20.0
shape = { kind = "rod", length = 40 }

[[part]]
name = "hook"
weight = 480
at = [2.0, 0, 0]
weight_doubt = 1
inertia = [1, 1, 1]

[pivot]
at = 40

[[support]]
name = "near"
at = 10

[[support]]
name = "far"
at = 90

[[support]]
name = "aside"
at = [50, 20, 0]

[[group]]
name = "head"
at = [60, 0, 5]
turn = [0, 30, 10]

[[group]]
name = "neck"
group = "head"
at = 2

[[part]]
name = "camera"
group = "neck"
weight = 60
at = 3
shape = { kind = "polygon", outline = [[0, 0], [9, 0], [9, 9], [0, 9]], holes = [[[1, 1], [2, 1], [1, 2]]] }

[[tank]]
name = "tank"
at = [30, -4, 0]
capacity = 200
contents = 120
density = 0.8

[[surface]]
name = "wing"
root_chord = 20
tip_chord = 14
span = 120
sweep = 5
at = 30

[limits]
outline = [[30, 300], [60, 300], [60, 2000], [30, 2000]]
across = [-5, 5]
"""
pieces = st.sampled_from(
    [
        "", "nan", "-inf", "1e400", "-1", "0", "true", "[]", "{}", "[1,2]", '"x"', "''", "\n", "=", "[[part]]\n",
        "[part]\n", "[bar]\n", "9" * 30, "1979-05-27", "kind", "weight", "# ", "\\", "\x00", "\ufeff", "[[[", '"""',
        "[1,2,3]", "[[1,2,3],[1,2,3],[1,2,3]]", 'shape = { kind = "box", size = [1,1,1] }\n', "name = 'bar'\n",
        "[[0,0],[1,0],[0,1]]", "[[0,0],[1,1],[1,0],[0,1]]", "[[[0,0],[1,0],[0,1]]]", '"head"', '"neck"', "1e-9", "1e9",
        "'polygon'", "'half-disc'", "[0, 90, 0]", "group = 'head'\n", "[[group]]\n", "[[tank]]\n", "[limits]\n",
    ]
)  # fmt: skip
places = st.integers(0, len(GOOD))


def mutated(changes):
    text = GOOD
    for at, cut, piece in changes:
        at = min(at, len(text))
        text = text[:at] + piece + text[at + cut :]
    return text


def swapped(drawn):
    """A value of the good file replaced by something else that TOML can hold."""
    lines = GOOD.split("\n")
    for number, piece in drawn:
        key, equals, _ = lines[number % len(lines)].partition(" = ")
        if equals:
            lines[number % len(lines)] = f"{key} = {piece}"
    return "\n".join(lines)


@settings(max_examples=400, deadline=None)
@given(
    st.lists(st.tuples(places, st.integers(0, 6), pieces), min_size=1, max_size=3).map(mutated)
    | st.lists(st.tuples(places, pieces), min_size=1, max_size=4).map(swapped)
)
def test_a_mutated_file_is_read_or_refused_in_whole_lines_and_nothing_else_happens(text):
    start = time.process_time()
    try:
        build = read_build_text(text, file="b.toml")
    except FileFaults as refused:
        # What bad input may take; it takes a hundredth.
        assert time.process_time() - start < 2.0
        for fault in refused.faults:
            assert 1 <= fault.line <= text.count("\n") + 1
            assert fault.key
            assert fault.what
            assert fault.cure
            assert fault.as_text().isprintable()
    else:
        assert all(math.isfinite(part.mass_kg) and part.mass_kg > 0 for part in build.all_parts)
        assert sum_table(build, Words("en"))
