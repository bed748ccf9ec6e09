"""Builds survive being written; mutated build files are read or refused, never anything else."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lab.files import UNITS, Bar, Build, FileFaults, Support, build_text, read_build_text
from lab.mechanics import Box, Cylinder, Part, Pivot, Point, Rectangle, Rod

names = st.text(
    st.characters(exclude_categories=["Cs", "Cc", "Zl", "Zp"]), min_size=1, max_size=12
).filter(str.strip)  # fmt: skip
systems = st.sampled_from(sorted(UNITS))


def numbers(low, high):
    """Numbers as a person writes them, and as a drag with a finger leaves them."""
    return st.floats(low, high) | st.integers(math.ceil(low), math.floor(high)).map(float)


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
    return Build(
        title=draw(names), units=system.name, reference_m=draw(places),
        view=draw(st.sampled_from(["plain", "numbers", "all"])), parts=parts, pivot=draw(st.none() | pivots),
        supports=tuple(Support(name=f"s{at}", at_m=each) for at, each in enumerate(supports)), looks=draw(looks),
    )  # fmt: skip


@settings(max_examples=150)
@given(builds())
def test_a_build_that_was_written_reads_back_equal_to_the_last_bit(build):
    assert read_build_text(build_text(build), file="b.toml") == build


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
"""
pieces = st.sampled_from(
    [
        "", "nan", "-inf", "1e400", "-1", "0", "true", "[]", "{}", "[1,2]", '"x"', "''", "\n", "=", "[[part]]\n",
        "[part]\n", "[bar]\n", "9" * 30, "1979-05-27", "kind", "weight", "# ", "\\", "\x00", "\ufeff", "[[[", '"""',
        "[1,2,3]", "[[1,2,3],[1,2,3],[1,2,3]]", 'shape = { kind = "box", size = [1,1,1] }\n', "name = 'bar'\n",
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


@settings(max_examples=500)
@given(
    st.lists(st.tuples(places, st.integers(0, 6), pieces), min_size=1, max_size=3).map(mutated)
    | st.lists(st.tuples(places, pieces), min_size=1, max_size=4).map(swapped)
)
def test_a_mutated_file_is_read_or_refused_in_whole_lines_and_nothing_else_happens(text):
    try:
        build = read_build_text(text, file="b.toml")
    except FileFaults as refused:
        for fault in refused.faults:
            assert 1 <= fault.line <= text.count("\n") + 1
            assert fault.key
            assert fault.what
            assert fault.cure
            assert fault.as_text().isprintable()
    else:
        assert all(math.isfinite(part.mass_kg) and part.mass_kg > 0 for part in build.all_parts)
