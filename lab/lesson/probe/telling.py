"""What a learner is asked and told in a probe, as sentences: the same on a screen and in a terminal."""

from __future__ import annotations

from dataclasses import dataclass

from lab.files import UNITS
from lab.lesson.messages import Amount, Message, length, mass, message, msg, number
from lab.lesson.probe.items import UNIT_NAME, Item
from lab.lesson.probe.probe import Finding, Form
from lab.lesson.probe.rules import GROUP_SAYS, GUESSES, MIXED, MIXED_LEADS, RULE_NAMES

TITLE = msg("How do you think?")
AIM = msg("A few bars, one weight on each side. At the end you hear which rule your answers fit.")
BEGINS = msg(
    "A light bar hangs by its middle. You are told nothing in between; what your answers fit comes at the end."
)
PROMPT = msg("Which end drops when it is let go, or does it stay level?")

MOST_SURE = 99
"""Per cent: nobody is ever surer than that about how somebody thinks."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What is said at the end.

    fits: the rule, to follow "Your answers fit:".  sure: how sure that is; None of mixed answers.  runner_up: the next
    likely rule; None where there is none to speak of.  leads: what it means and what to look at next.
    """

    fits: Message
    sure: Message | None
    runner_up: Message | None
    leads: Message | None


def given_message(item: Item) -> Message:
    """Return both weights and their arms."""
    units = UNITS[UNIT_NAME]
    return message(
        msg("On the left {left} hangs {left_arm} from the middle; on the right {right} hangs {right_arm} from it."),
        left=mass(units.to_kg(item.left_weight)),
        left_arm=length(units.to_m(item.left_arm)),
        right=mass(units.to_kg(item.right_weight)),
        right_arm=length(units.to_m(item.right_arm)),
    )


def told(found: Finding, *, form: Form = "full") -> Told:
    """Return what is said of a finding.  form: after four items in the kiosk it is the broad group alone."""
    if form == "kiosk":
        fits = message(GROUP_SAYS[found.group])
        return Told(fits=fits, sure=_sure(found.group_chance), runner_up=None, leads=None)
    next_one = found.runner_up
    if found.fit is None:
        guesses = found.ranked[0].rule.name == RULE_NAMES[GUESSES]
        leads = found.ranked[0].rule.leads if guesses else MIXED_LEADS
        nearest = message(msg("Nearest to them: {rule}"), rule=message(next_one.rule.says))
        return Told(fits=message(MIXED), sure=None, runner_up=nearest, leads=message(leads))
    return Told(
        fits=message(found.fit.rule.says),
        sure=_sure(found.fit.chance),
        runner_up=message(
            msg("Next nearest ({percent} %): {rule}"),
            rule=message(next_one.rule.says),
            percent=_percent(next_one.chance),
        ),
        leads=message(found.fit.rule.leads),
    )


def _sure(chance: float) -> Message:
    return message(msg("How sure that is: {percent} %."), percent=_percent(chance))


def _percent(chance: float) -> Amount:
    return number(min(MOST_SURE, round(100 * chance)))
