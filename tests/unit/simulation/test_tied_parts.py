"""Parts are tied and loosened by their names alone, and every name stays one of its own."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lab.mechanics import Part, flattened
from lab.simulation.benches.groups import (
    as_groups,
    copied_names,
    group_of,
    renamed,
    taken_names,
    tied_names,
    tied_with,
    untied_names,
)

pieces = st.text("ab( 2)/", min_size=1, max_size=6)
lists = st.lists(pieces, min_size=2, max_size=6, unique=True)


@pytest.mark.parametrize(
    ("name", "group"), [("hook", None), ("arm/hook", "arm"), ("arm/head/lens", "arm"), ("/hook", None), ("arm/", None)]
)
def test_a_slash_between_two_names_says_the_group(name, group):
    assert group_of(name) == group


def test_two_parts_that_are_tied_begin_a_group_that_nothing_else_is_called():
    assert tied_names(("tin", "group", "hook"), 0, 2) == ("group (2)/tin", "group", "group (2)/hook")


def test_a_part_joins_the_group_of_the_one_it_is_tied_to():
    assert tied_names(("tin", "arm/tube", "arm/hook"), 0, 2) == ("arm/tin", "arm/tube", "arm/hook")


def test_two_groups_that_are_tied_become_one_and_no_two_parts_have_one_name():
    names = ("a/tin", "a/hook", "b/tin", "b/rod")
    assert tied_names(names, 0, 2) == ("b/tin (2)", "b/hook", "b/tin", "b/rod")


def test_one_that_is_left_alone_is_on_its_own_again():
    assert untied_names(("a/tin", "a/hook", "rod"), 0) == ("tin", "hook", "rod")
    assert taken_names(("a/tin", "a/hook", "rod"), 0) == ("hook", "rod")


def test_one_of_three_that_is_loosened_leaves_two_tied():
    assert untied_names(("a/tin", "a/hook", "a/rod"), 1) == ("a/tin", "hook", "a/rod")


def test_a_part_that_gets_a_name_stays_in_its_group():
    assert renamed(("a/tin", "a/hook"), 0, " red  tin ") == "a/red tin"
    assert renamed(("a/tin", "a/hook"), 0, "hook") == "a/hook (2)"
    assert renamed(("tin", "a/hook", "a/rod"), 0, "a") == "a (2)"


@pytest.mark.parametrize("typed", ["", "   ", "a/b", "x" * 41, "a\x00b"])
def test_what_is_no_name_is_not_taken(typed):
    assert renamed(("tin",), 0, typed) is None


def test_a_copied_group_is_a_group_of_its_own():
    assert copied_names(("a/tin", "a/hook", "rod"), ("a/tin", "a/hook")) == ("a (2)/tin", "a (2)/hook")
    assert copied_names(("rod", "rod (2)"), ("rod (2)",)) == ("rod (3)",)


@given(names=lists, data=st.data())
def test_tying_and_loosening_keep_every_name_its_own(names, data):
    places = st.integers(0, len(names) - 1)
    index, to = data.draw(places), data.draw(places)
    tied = tied_names(names, index, to)
    assert len({*tied}) == len(names)
    if index != to:
        assert {index, to} <= {*tied_with(tied, index)}
    loose = untied_names(tied, index)
    assert len({*loose}) == len(names)
    assert group_of(loose[index]) is None


@given(names=lists)
def test_groups_of_a_file_hold_the_same_parts_where_they_were(names):
    parts = tuple(Part(name=name, mass_kg=1.0, at_m=(float(place), 0.0, 0.0)) for place, name in enumerate(names))
    loose, groups = as_groups(parts)
    in_file = {part.name: part.at_m for part in (*loose, *flattened(groups))}
    assert in_file == {part.name: part.at_m for part in parts}
