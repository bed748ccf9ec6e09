"""What a learner is told of a course, as sentences: the same on a screen and in a terminal."""

from __future__ import annotations

from lab.lesson.course import DAY_S, HOUR_S
from lab.lesson.course_gain import Gain, RuleGain, ShareGain
from lab.lesson.messages import Message, message, msg, number
from lab.lesson.probe.probe import Finding
from lab.lesson.probe.rules import MIXED
from lab.lesson.probe.telling import MOST_SURE

FIRST_PROBE = msg("First a few short questions: how do you think now? At the end you see what has changed.")
LAST_PROBE = msg("All lessons are done. The short questions of the beginning once more show what has changed.")
BACK = msg("Some days have passed. A few questions from before, mixed: what is recalled stays.")
ONWARD = msg("Go on where you are.")
BEGIN = msg("Begin here.")
ALL_DONE = msg("All lessons are done. They come back from time to time; each can be taken again.")

QUITE, FAIRLY = 0.95, 0.80
"""How likely what is called quite, and fairly, sure must be."""

_NEVER = msg("not yet used")
_AGES: tuple[tuple[float, str], ...] = (
    (HOUR_S, msg("within the last hour")),
    (1 * DAY_S, msg("within the last day")),
    (2 * DAY_S, msg("a day or two ago")),
    (7 * DAY_S, msg("within the last week")),
    (31 * DAY_S, msg("within the last month")),
)
_LONG_AGO = msg("more than a month ago")


def how_long_ago(age_s: float | None) -> str:
    """Return a template that says roughly how long ago something was.  age_s: in seconds; None for never."""
    if age_s is None:
        return _NEVER
    return next((said for most_s, said in _AGES if age_s <= most_s), _LONG_AGO)


def gain_lines(found: Gain) -> tuple[Message, ...]:
    """Return what has changed and how sure that is, a sentence each; none where nothing can be compared yet."""
    rule = () if found.rule is None else _rule_lines(found.rule)
    share = () if found.share is None else _share_lines(found.share)
    return (*rule, *share)


def _rule_lines(found: RuleGain) -> tuple[Message, ...]:
    lines = [
        message(msg("At first your answers fitted: {rule}"), rule=_rule(found.before)),
        message(msg("Now they fit: {rule}"), rule=_rule(found.after)),
    ]
    chance = found.chance_changed
    if chance is not None:
        said = msg("How sure it is that these are two rules: {percent} %.")
        if not found.changed:
            said, chance = msg("How sure it is that this is one and the same rule: {percent} %."), 1.0 - chance
        lines.append(message(said, percent=number(min(MOST_SURE, round(100 * chance)))))
    return tuple(lines)


def _rule(found: Finding) -> Message:
    return message(MIXED if found.fit is None else found.fit.rule.says)


def _share_lines(found: ShareGain) -> tuple[Message, ...]:
    counts = message(
        msg("Questions met again: {questions}. Right at first: {first}. Right when they came back: {later}."),
        questions=number(found.questions),
        first=number(found.right_first),
        later=number(found.right_later),
    )
    return counts, message(_how_sure(found))


def _how_sure(found: ShareGain) -> str:
    better = found.chance_better
    if better >= QUITE:
        return msg("That is a gain, quite sure.")
    if better >= FAIRLY:
        return msg("That is a gain, fairly sure.")
    if better <= 1.0 - QUITE:
        return msg("Some of it was forgotten, quite sure.")
    return msg("Too few of them changed to be sure of a gain.")
