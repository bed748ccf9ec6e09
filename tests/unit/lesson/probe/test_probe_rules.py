"""The items and the nine rules of the probe, against tables that were worked out elsewhere."""

import itertools
from fractions import Fraction

import pytest

from lab.lesson.probe.items import Item, item_named, pool, situation_of_item, truth_of_item
from lab.lesson.probe.rules import RULE_NAMES, RULES
from lab.lesson.probe.signatures import ANSWERS, ANY, says_of, signatures, turned_answer

# Worked out elsewhere: share of items that each rule answers right, weights to 6, arms to 4; a rule that says any of
# three is right in a third.  Columns: weight_only, weight_then_distance, muddles, moment, compensates, nearest_down,
# distance_only.
SHARES = {
    "balance": (100, 100, 100, 100, 100, 100, 100),
    "weight": (100, 100, 100, 100, 100, 100, 0),
    "distance": (0, 100, 100, 100, 100, 0, 100),
    "conflict-weight": (100, 100, 33, 100, 0, 100, 0),
    "conflict-distance": (0, 0, 33, 100, 0, 0, 100),
    "conflict-balance": (0, 0, 33, 100, 100, 0, 0),
}
COLUMNS = (
    "weight_only",
    "weight_then_distance",
    "muddles",
    "moment",
    "compensates",
    "nearest_down",
    "distance_only",
)
ADDS_ON_SIX_BY_FOUR = {"conflict-weight": 90, "conflict-distance": 46, "conflict-balance": 50}
COUNTS = {
    "balance": 24,
    "weight": 120,
    "distance": 72,
    "conflict-weight": 78,
    "conflict-distance": 78,
    "conflict-balance": 24,
    "concordant": 180,
}


def small_pool() -> list[Item]:
    return [
        Item(left_weight=a, left_arm=b, right_weight=c, right_arm=d)
        for a, b, c, d in itertools.product(range(1, 7), range(1, 5), range(1, 7), range(1, 5))
    ]


def share_right(name: str, kind: str) -> float:
    index = RULE_NAMES.index(name)
    items = [item for item in small_pool() if item.problem_type == kind]
    right = Fraction(0)
    for item in items:
        said = says_of(item)[index]
        right += Fraction(1, 3) if said == ANY else int(ANSWERS[said] == truth_of_item(item))
    return round(100 * float(right / len(items)))


def test_the_types_are_as_many_as_counted():
    items = small_pool()
    assert {kind: sum(item.problem_type == kind for item in items) for kind in COUNTS} == COUNTS


@pytest.mark.parametrize("kind", SHARES)
def test_each_rule_is_right_as_often_as_the_table_says(kind: str):
    assert tuple(share_right(name, kind) for name in COLUMNS) == SHARES[kind]


@pytest.mark.parametrize("kind", ADDS_ON_SIX_BY_FOUR)
def test_adding_is_right_as_often_as_the_table_says(kind: str):
    assert share_right("adds", kind) == ADDS_ON_SIX_BY_FOUR[kind]


def test_who_guesses_says_any_always():
    assert all(rule.predict(situation_of_item(item)) is None for rule in RULES[-1:] for item in pool()[::50])


def test_no_item_has_a_weight_and_its_arm_exchanged():
    # 4 at 2 against 2 at 4 has the same sum and the same product: nothing there tells adding from multiplying.
    assert item_named("4x2-2x4") not in pool()
    assert item_named("3x3-3x3") in pool()
    # 1296 pairs less, for each of the 30 unequal (weight, arm), the one that exchanges them.
    assert len(pool()) == 6**4 - 30


def test_there_are_as_many_signatures_as_known_mirror_images_being_one():
    # Known: 25 signatures with mirror products and concordant items; two of them are all mirror products.
    kinds = signatures()
    with_mirrors = {tuple(row) for row in kinds.says.tolist()}
    with_mirrors |= {tuple(turned_answer(each) for each in row) for row in kinds.says.tolist()}
    assert len(with_mirrors) == 23
    assert len(kinds) == 12
    assert sum(len(items) for items in kinds.items) == len(pool())


def test_the_signature_of_an_item_and_of_its_mirror_image_are_one():
    for item in pool()[::7]:
        assert signatures().find(item)[0] == signatures().find(item.mirrored)[0]
    with pytest.raises(ValueError, match="not one that the probe asks"):
        signatures().find(item_named("4x2-2x4"))


@pytest.mark.parametrize("name", ["", "4x2", "4x2-3x9", "0x1-1x1", "4x2-3xq", "4x2-3x5-1", "4x²-3x5"])
def test_a_name_that_is_none_is_refused(name: str):
    with pytest.raises(ValueError, match="names no item"):
        item_named(name)


def test_a_name_leads_back_to_its_item():
    assert all(item_named(item.name) == item for item in pool())
