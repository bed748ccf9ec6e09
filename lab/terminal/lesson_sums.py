"""The moment sum of a question as lines of plain text, its columns lined up."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from lab.files import UnitSystem
from lab.lesson import Asked, Explanation, Wording, render, shown_amount
from lab.lesson.kinds import kind_of
from lab.lesson.messages import Amount, decimals_needed, length, mass, moment, msg
from lab.mechanics import moment_sum

Row = tuple[str, str, str, str, str]
"""name, weight, arm, the side that the arm is on, moment."""


def sum_lines(asked: Asked, told: Explanation, words: Wording) -> list[str]:
    """Return the sum that decides, a row for each part and one for the sum.

    Arms are measured from the reference line or from the pivot, as the explanation says; a little sum of another make
    stands as it is.
    """
    units = asked.units
    if told.working:
        return [render(line, words, units) for line in told.working]
    from_pivot = told.arms_from == "pivot"
    rows = told.sum.rows
    arms = _arms([row.arm_m[0] for row in rows], asked, unsigned=from_pivot)
    table: list[Row] = [
        (
            words.content(row.name),
            _shown(mass(row.mass_kg), words, units),
            _shown(arm, words, units),
            _side_of(row.arm_m[0], words) if from_pivot else "",
            _shown(moment(abs(row.moment_kg_m[0]) if from_pivot else row.moment_kg_m[0]), words, units),
        )
        for row, arm in zip(rows, arms, strict=True)
    ]
    total = moment(told.sum.moment_kg_m[0])
    table.append(
        (
            words.say(msg("sum")),
            _shown(mass(told.sum.mass_kg), words, units),
            "",
            "",
            _shown(total, words, units) if not from_pivot else "",
        )
    )
    *lines, last = _lined_up(table)
    return [*lines, f"{last}    {render(told.quotient, words, units)}"]


def given_lines(asked: Asked, words: Wording) -> list[str]:
    """Return the weights and where they sit, without the moments that would give the answer away."""
    rows = moment_sum(asked.build.all_parts).rows
    places = _arms([row.arm_m[0] for row in rows], asked, unsigned=False)
    table = [
        (words.content(row.name), _shown(mass(row.mass_kg), words, asked.units), _shown(place, words, asked.units))
        for row, place in zip(rows, places, strict=True)
    ]
    name, weight, where = (max(len(row[column]) for row in table) for column in range(3))
    beside = [_beside_the_middle(part.at_m[1], asked, words) for part in asked.build.all_parts]
    lines = [
        f"{row[0]:<{name}}   {row[1]:>{weight}}   " + words.say(msg("at {place}"), place=f"{row[2]:>{where}}") + across
        for row, across in zip(table, beside, strict=True)
    ]
    return [*lines, *(render(line, words, asked.units) for line in kind_of(asked.task).given(asked))]


def _beside_the_middle(across_m: float, asked: Asked, words: Wording) -> str:
    """Return how far beside the middle a part sits, and on which side; nothing for one in the middle."""
    if across_m == 0:
        return ""
    side = msg(", {away} left of the middle") if across_m < 0 else msg(", {away} right of the middle")
    return words.say(side, away=_shown(length(abs(across_m)), words, asked.units))


def _arms(arms_m: Iterable[float], asked: Asked, *, unsigned: bool) -> list[Amount]:
    """Return the arms, all with as many figures after the point as the finest of them needs."""
    values = [abs(arm_m) if unsigned else arm_m for arm_m in arms_m]
    finest = max(decimals_needed(asked.units.from_m(value)) for value in values)
    return [length(value, decimals=max(1, finest)) for value in values]


def _side_of(arm_m: float, words: Wording) -> str:
    if arm_m == 0:
        return ""
    return words.say(msg("left")) if arm_m < 0 else words.say(msg("right"))


def _shown(amount: Amount, words: Wording, units: UnitSystem) -> str:
    return shown_amount(amount, words, units)


def _lined_up(table: Sequence[Row]) -> list[str]:
    """Return the rows of a sum with their columns lined up; a row without an arm leaves its place empty."""
    name, weight, arm, side, turning = (max(len(row[column]) for row in table) for column in range(5))
    lines = []
    for row in table:
        start = f"{row[0]:<{name}}   {row[1]:>{weight}}"
        between = f" x {row[2]:>{arm}}" if row[2] else " " * (3 + arm)
        beside = f" {row[3]:<{side}}" if side else ""
        equals = " =" if row[2] else "  "
        lines.append(f"{start}{between}{beside}{equals}  {row[4]:>{turning}}".rstrip())
    return lines
