"""What a course has changed: the rule that answers fitted before and after it, and first answers then and later.

Nothing here says more than a few answers can: each finding comes with how sure it is.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import comb

from lab.lesson.course import Row, answers, apart
from lab.lesson.probe.probe import Finding, finding, is_over
from lab.lesson.probe.record import KIND as PROBE
from lab.lesson.probe.record import given_in


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleGain:
    """The rules that the answers of the first and of the last probe fitted.

    chance_changed: how likely they are two rules, 0 to 1; None where one of the probes found no steady rule, of which
    no chance can be told.
    """

    before: Finding
    after: Finding

    @property
    def changed(self) -> bool:
        """Whether the two findings name different rules."""
        return _named(self.before) != _named(self.after)

    @property
    def chance_changed(self) -> float | None:
        """The chance that one learner with both sets of answers had two rules."""
        if self.before.fit is None or self.after.fit is None:
            return None
        then = {each.rule.name: each.chance for each in self.before.ranked}
        return 1.0 - sum(then[each.rule.name] * each.chance for each in self.after.ranked)


@dataclass(frozen=True, slots=True, kw_only=True)
class ShareGain:
    """Questions that were met and, a day or more later, met again.

    questions: how many.  right_first, right_later: how many were right at the first try, and at the first of the last
    meeting.  gained, lost: how many went from wrong to right, and from right to wrong.
    """

    questions: int
    right_first: int
    right_later: int
    gained: int
    lost: int

    @property
    def chance_better(self) -> float:
        """How likely it is that a question which changes is gained rather than lost, 0 to 1.

        The chance that a share, alike likely anywhere before, lies above one half after `gained` of
        `gained` + `lost`.  Source: the beta distribution's tail as a sum of binomial terms.
        """
        tries = self.gained + self.lost + 1
        return sum(comb(tries, hits) for hits in range(self.gained + 1)) * 0.5**tries


@dataclass(frozen=True, slots=True, kw_only=True)
class Gain:
    """What has changed; each None where there is nothing to compare yet."""

    rule: RuleGain | None
    share: ShareGain | None


def gain(rows: Iterable[Row]) -> Gain:
    """Return what the record of one learner says has changed.  rows: in any order."""
    kept = sorted(rows, key=lambda row: row.at_s)
    return Gain(rule=_rule_gain(kept), share=_share_gain(answers(kept)))


def probes(rows: Iterable[Row]) -> tuple[tuple[Row, ...], ...]:
    """Return the probes of a record that came to their end, oldest first, each as its rows."""
    found: list[list[Row]] = []
    for row in sorted(rows, key=lambda row: row.at_s):
        if row.kind != PROBE:
            continue
        if row.round == 0 or not found:
            found.append([])
        found[-1].append(row)
    return tuple(tuple(each) for each in found if is_over(given_in(each)))


def _rule_gain(kept: Sequence[Row]) -> RuleGain | None:
    taken = probes(kept)
    if len(taken) < 2:
        return None
    before, after = (finding(given_in(each)) for each in (taken[0], taken[-1]))
    return RuleGain(before=before, after=after)


def _named(found: Finding) -> str:
    return "" if found.fit is None else found.fit.rule.name


def _share_gain(kept: Sequence[Row]) -> ShareGain | None:
    by_question: dict[tuple[str, str], list[Row]] = {}
    for row in kept:
        by_question.setdefault((row.lesson, row.question), []).append(row)
    pairs = [(rows[0].right, later.right) for rows in by_question.values() if (later := _later(rows)) is not None]
    if not pairs:
        return None
    return ShareGain(
        questions=len(pairs),
        right_first=sum(first for first, _ in pairs),
        right_later=sum(later for _, later in pairs),
        gained=sum(later and not first for first, later in pairs),
        lost=sum(first and not later for first, later in pairs),
    )


def _later(rows: Sequence[Row]) -> Row | None:
    """The first answer of the last meeting, where that was a day or more after the one before it."""
    begins = [later for earlier, later in pairwise(rows) if apart(earlier, later)]
    return begins[-1] if begins else None
