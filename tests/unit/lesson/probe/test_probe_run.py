"""A probe from the first item to what it says, with learners whose rule is known."""

import numpy as np
import pytest

from lab.lesson import Side
from lab.lesson.probe.items import Item, item_named, situation_of_item, truth_of_item
from lab.lesson.probe.model import answer_chances, no_answers, rule_chances
from lab.lesson.probe.places import IDEA_NAMES, after_place, next_bars, no_idea, place_pool
from lab.lesson.probe.probe import MOST_ITEMS, Form, Probe, answered, finding, go_on, start_probe
from lab.lesson.probe.record import given_in, recorded
from lab.lesson.probe.rules import RULE_NAMES, RULES
from lab.lesson.probe.signatures import signatures
from lab.lesson.probe.telling import told

STEADY = ("weight_only", "weight_then_distance", "compensates", "adds", "moment", "nearest_down", "distance_only")


def said_by(name: str, item: Item) -> Side:
    (rule,) = (rule for rule in RULES if rule.name == name)
    side = rule.predict(situation_of_item(item))
    assert side is not None
    return side


def taken(*names: str, seed: int = 1, form: Form = "full", to_the_end: bool = False) -> Probe:
    """A probe answered by rules in turns."""
    probe = start_probe(seed=seed, form=form)
    while probe.item is not None:
        probe = answered(probe, said_by(names[len(probe.given) % len(names)], probe.item))
        if probe.item is None and to_the_end:
            probe = go_on(probe)
    return probe


@pytest.mark.parametrize("name", STEADY)
def test_a_rule_without_slips_is_named_in_few_items(name: str):
    probe = taken(name)
    found = finding(probe.given)
    assert found.fit is not None
    assert found.fit.rule.name == name
    assert found.fit.chance >= 0.95
    # Without a slip seven answers always do.
    assert len(probe.given) <= 7
    assert found.runner_up.rule.name not in (name, "guesses")


def test_two_rules_in_turns_are_no_steady_rule_after_all_items():
    probe = taken("weight_only", "distance_only", to_the_end=True)
    found = finding(probe.given)
    assert len(probe.given) == MOST_ITEMS
    assert found.fit is None
    said = told(found)
    assert said.sure is None
    assert said.fits.template == "no single rule."


def test_the_same_seed_and_answers_ask_the_same():
    assert taken("adds", seed=5) == taken("adds", seed=5)
    asked = {start_probe(seed=seed).item for seed in range(12)}
    assert len(asked) > 3, "another seed asks other numbers"


@pytest.mark.parametrize("seed", range(5))
def test_no_item_comes_twice_and_none_seen_from_behind_early(seed: int):
    probe = taken("moment", seed=seed, to_the_end=True)
    items = [item for item, _ in probe.given]
    assert len(set(items)) == MOST_ITEMS
    # The rarest kind has five pairs of mirror images, and no kind is asked five times so soon.
    assert len({frozenset((item, item.mirrored)) for item in items[:12]}) == 12


def test_a_probe_that_stopped_goes_on_to_the_last_item_and_no_further():
    probe = taken("moment")
    assert probe.can_go_on
    further = go_on(probe)
    assert further.item is not None
    assert further.given == probe.given
    whole = taken("moment", to_the_end=True)
    assert not whole.can_go_on
    assert go_on(whole) is whole
    with pytest.raises(ValueError, match="over"):
        answered(whole, "left")


@pytest.mark.parametrize(
    ("name", "group"),
    [("weight_only", "weight"), ("distance_only", "in turn"), ("adds", "together"), ("moment", "moment")],
)
def test_four_items_name_the_broad_group_only(name: str, group: str):
    probe = taken(name, form="kiosk")
    assert len(probe.given) == 4
    found = finding(probe.given)
    assert found.group == group
    said = told(found, form="kiosk")
    assert said.runner_up is None
    assert said.leads is None


def test_chances_follow_bayes():
    # One answer by hand: 2 at 3 against 1 at 5, said left.  Each rule's chance is that of its answer.
    given = ((item_named("2x3-1x5"), "left"),)
    kinds = signatures()
    slip = 0.10
    by_rule = {
        "weight_only": 0.9,
        "weight_then_distance": 0.9,
        "muddles": 1 / 3,
        "compensates": 0.05,
        "adds": 0.05,
        "moment": 0.9,
        "nearest_down": 0.9,
        "distance_only": 0.05,
        "guesses": 1 / 3,
    }
    counts = no_answers(kinds)
    index, turned = kinds.find(given[0][0])
    counts[index, 2 if turned else 0] += 1
    chances = rule_chances(counts, kinds, slips=(slip,))
    total = sum(by_rule.values())
    assert chances == pytest.approx([by_rule[name] / total for name in RULE_NAMES], abs=1e-12)
    assert answer_chances(kinds, slip=slip).sum(axis=-1) == pytest.approx(np.ones((12, 9)))


def test_an_answer_is_kept_with_its_item_and_the_chances_of_all_rules():
    probe = start_probe(seed=3)
    assert probe.item is not None
    row = recorded(probe, "level", given="lev", seconds=2.5)
    assert (row.lesson, row.kind, row.round, row.seed) == ("probe", "probe", 0, 3)
    assert row.question == probe.item.name
    assert row.truth == truth_of_item(probe.item)
    assert row.right == (row.truth == "level")
    names = [way.split(":")[0] for way in row.ways]
    assert sorted(names) == sorted(RULE_NAMES)
    assert sum(float(way.split(":")[1]) for way in row.ways) == pytest.approx(1.0, abs=9 * 5e-5)
    assert given_in([row]) == ((probe.item, "level"),)


def test_rows_that_are_none_of_the_probe_or_spoilt_are_passed_over():
    class Row:
        def __init__(self, question: str, kind: str, understood: object) -> None:
            self.question, self.kind, self.understood = question, kind, understood

    rows = [
        Row("4x2-3x5", "side", "left"),
        Row("boat-hook", "probe", "left"),
        Row("4x2-2x4", "probe", "left"),
        Row("4x2-3x5", "probe", 5.6),
        Row("4x2-3x5", "probe", "right"),
    ]
    assert given_in(rows) == ((item_named("4x2-3x5"), "right"),)


def test_no_answers_at_all_fit_nothing():
    found = finding(())
    assert found.fit is None
    assert {round(each.chance, 6) for each in found.ranked} == {round(1 / 9, 6)}


def test_two_places_name_the_idea_of_a_steady_hand():
    for idea, name in enumerate(IDEA_NAMES):
        given: list[tuple[int, float]] = []
        chances = no_idea(1)
        for _ in range(3):
            used = np.zeros((1, len(place_pool().items)), dtype=bool)
            used[0, [bar for bar, _ in given]] = True
            bar = int(next_bars(chances, used)[0])
            place = float(place_pool().places[bar, idea])
            given.append((bar, place))
            chances = after_place(chances, np.array([bar]), np.array([place]))
        assert IDEA_NAMES[int(chances[0].argmax())] == name
        assert chances.max() > 0.95
