"""The nine rules that the probe tells apart: what each would answer, how it is named to a learner, what it leads to."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from lab.lesson.asked import Side
from lab.lesson.messages import msg
from lab.lesson.situation import Situation
from lab.lesson.ways import side

Group = Literal["weight", "in turn", "together", "moment", "none"]
GROUPS: tuple[Group, ...] = ("weight", "in turn", "together", "moment")


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """A way of answering every item.

    predict: the side it says, or None where it says any of the three alike.
    group: the broad group that four items can tell.  says: the rule as a learner would put it, after "Your answers
    fit:".  leads: what to look at next.
    """

    name: str
    group: Group
    predict: Callable[[Situation], Side | None]
    says: str
    leads: str


def muddles(seen: Situation) -> Side | None:
    """Weight and distance both count; where they say different sides, any answer may come."""
    return None if {side.weight_only(seen), side.distance_only(seen)} == {"left", "right"} else side.moment(seen)


def guesses(seen: Situation) -> Side | None:
    """Any answer may come, always."""
    del seen  # that is the rule
    return None


RULES: tuple[Rule, ...] = (
    Rule(
        name="weight_only",
        group="weight",
        predict=side.weight_only,
        says=msg("the side with more weight goes down."),
        leads=msg("You look at how heavy each side is. Now watch what happens when one hangs farther out."),
    ),
    Rule(
        name="weight_then_distance",
        group="in turn",
        predict=side.weight_then_distance,
        says=msg("the side with more weight goes down, and only if they weigh the same, the one farther out."),
        leads=msg("You look at weight first and at distance on a tie. Now watch a light one far out."),
    ),
    Rule(
        name="muddles",
        group="together",
        predict=muddles,
        says=msg("weight and distance both count, and where they pull against each other it could be any."),
        leads=msg("You look at both. There is a way to say which of the two wins: the lessons show it."),
    ),
    Rule(
        name="compensates",
        group="together",
        predict=side.compensates,
        says=msg("more weight here and more distance there make up for each other, so it stays level."),
        leads=msg("You see that the two pull against each other. Now watch how much each of them pulls."),
    ),
    Rule(
        name="adds",
        group="together",
        predict=side.adds,
        says=msg("weight and distance are added, and the larger sum goes down."),
        leads=msg("You use both numbers. Now watch what twice the distance does to a heavy weight."),
    ),
    Rule(
        name="moment",
        group="moment",
        predict=side.moment,
        says=msg("weight times distance, and the larger product goes down."),
        leads=msg("That is what a bar does too. Go on to bars that weigh something themselves."),
    ),
    Rule(
        name="nearest_down",
        group="in turn",
        predict=side.nearest_down,
        says=msg("the side with more weight goes down, and if they weigh the same, the one nearer to the middle."),
        leads=msg("You look at weight first. Now watch two that weigh the same, one near and one far out."),
    ),
    Rule(
        name="distance_only",
        group="in turn",
        predict=side.distance_only,
        says=msg("the one farther out goes down, whatever it weighs."),
        leads=msg("You look at how far out each hangs. Now watch a heavy one near and a light one far out."),
    ),
    Rule(
        name="guesses",
        group="none",
        predict=guesses,
        says=msg("no rule that shows: any answer may come."),
        leads=msg("There is something to find out here. The first lessons begin with one bar and one finger."),
    ),
)
"""In a fixed order: arrays of rules are in this order everywhere."""

RULE_NAMES: tuple[str, ...] = tuple(rule.name for rule in RULES)
GUESSES = RULE_NAMES.index("guesses")

MIXED = msg("no single rule.")
MIXED_LEADS = msg("Now one thing decided, now another; that often comes just before a new idea. Try the lessons.")

GROUP_SAYS: dict[Group, str] = {
    "weight": msg("you look at the weights."),
    "in turn": msg("you look at weight or at distance, one after the other."),
    "together": msg("you look at weight and distance together, and not yet at their product."),
    "moment": msg("you look at weight times distance."),
}
"""What four answers can tell, after "Your answers fit:"."""
