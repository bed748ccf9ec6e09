"""Published answers, each beside its source: we get what the book prints, to half its last digit.

Where a book is wrong in print, the row is kept as a trap: we get what its inputs give, and not what it prints.
The rows stand in lab/figures/published, so that they can be printed too; the list of all that was gathered, and
why some is left out, in sources.toml.
"""

import tomllib
from collections import Counter
from pathlib import Path

import pytest

from lab.figures.published.check_values import CheckValue, Number
from lab.figures.published.register import REGISTER

GATHERED = tomllib.loads((Path(__file__).parent / "sources.toml").read_text(encoding="utf-8"))
MARKS = ("seen", "part", "memory", "ours")


@pytest.mark.parametrize("value", REGISTER, ids=lambda value: f"{value.id} ({value.mark})")
def test_we_get_what_the_source_prints(value: CheckValue) -> None:
    numbers = value.numbers()
    assert numbers
    for number in numbers:
        assert number.met, number


def test_a_number_off_by_more_than_its_tolerance_is_not_met() -> None:
    assert Number(11.249, 11.2, 0.05).met
    assert Number(46.75, 46.8, 0.05).met, "on the rounding edge"
    assert not Number(11.2501, 11.2, 0.05).met
    assert not Number(float("nan"), 11.2, 0.05).met


def test_a_trap_is_sprung_by_what_is_printed() -> None:
    assert Number(18.3173, 18.6, 0.00005, right=18.3173).met
    assert not Number(18.6, 18.6, 0.00005, right=18.3173).met
    assert not Number(18.6, 18.6, 0.5, right=18.3173).met, "near enough to both is near enough to the misprint"


def test_every_gathered_value_is_held_or_left_out_for_a_reason_and_none_is_both() -> None:
    gathered = [each for mark in MARKS for each in GATHERED["published"][mark]]
    left_out = [row["id"] for row in GATHERED["left_out"]]
    held = [value.id for value in REGISTER]
    assert max(Counter(gathered).values()) == max(Counter(held + left_out).values()) == 1
    assert sorted(held + left_out) == sorted(gathered)
    assert all(len(row["reason"]) > 20 for row in GATHERED["left_out"])


def test_as_many_are_held_as_we_say() -> None:
    held = Counter(value.mark for value in REGISTER)
    assert held == {"seen": 77, "part": 11, "memory": 9, "ours": 6}
    assert len(GATHERED["left_out"]) == 9


def test_every_value_is_marked_as_it_is_known() -> None:
    known = {each: mark for mark in MARKS for each in GATHERED["published"][mark]}
    assert {value.id: value.mark for value in REGISTER if value.mark != known[value.id]} == {}


def test_what_is_wrong_in_print_is_a_trap_and_nothing_else_is() -> None:
    traps = {value.id for value in REGISTER if any(number.right is not None for number in value.numbers())}
    left_out = {row["id"] for row in GATHERED["left_out"]}
    assert traps == set(GATHERED["published"]["wrong_in_print"]) - left_out
