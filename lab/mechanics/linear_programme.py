"""A small linear programme, solved exactly: the least cost · x where A x ≤ most and x ≥ 0.

The simplex method in fractions, entering and leaving by least number, so that it never cycles, never rounds,
and gives the same answer every time.  For a handful of rows and some dozens of columns.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

ZERO = Fraction(0)
MOST_BASES = 200
"""Bases looked at for further answers as good; more places than that share an answer in no bench."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Programme:
    """cost: (n,).  rows: (k, n).  most: (k,), either sign.  Minimise cost · x where rows x ≤ most and x ≥ 0."""

    cost: tuple[Fraction, ...]
    rows: tuple[tuple[Fraction, ...], ...]
    most: tuple[Fraction, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Solved:
    """cost: the least.  corners: every corner found that costs no more than a given share above it, the least
    first.  all_found: whether the search for them came to its end."""

    cost: Fraction
    corners: tuple[tuple[Fraction, ...], ...]
    all_found: bool


class _Tableau:
    """Rows over structural, slack and artificial columns, the right side last, and which column each row holds."""

    def __init__(self, programme: Programme) -> None:
        self.count = len(programme.cost)
        self.height = len(programme.rows)
        below = [number for number, most in enumerate(programme.most) if most < 0]
        self.width = self.count + self.height
        self.rows: list[list[Fraction]] = []
        self.basis: list[int] = []
        for number, (row, most) in enumerate(zip(programme.rows, programme.most, strict=True)):
            sign = -1 if most < 0 else 1
            slack = [Fraction(sign) if other == number else ZERO for other in range(self.height)]
            artificial = [Fraction(1) if number == other else ZERO for other in below]
            self.rows.append([*(sign * each for each in row), *slack, *artificial, sign * most])
            self.basis.append(self.width + below.index(number) if most < 0 else self.count + number)
        self.artificials = len(below)

    def copy(self) -> "_Tableau":
        """The same, to pivot elsewhere."""
        twin = object.__new__(_Tableau)
        twin.count, twin.height, twin.width, twin.artificials = self.count, self.height, self.width, self.artificials
        twin.rows, twin.basis = [list(row) for row in self.rows], list(self.basis)
        return twin

    def reduced(self, cost: Sequence[Fraction]) -> list[Fraction]:
        """What one more of each column would cost, the basis making room."""
        priced = [(cost[column], row) for column, row in zip(self.basis, self.rows, strict=True) if cost[column]]
        return [each - sum((c * row[n] for c, row in priced), ZERO) for n, each in enumerate(cost)]

    def leaving(self, column: int) -> int | None:
        """The row whose column makes room first; None where the column may grow for ever."""
        best: tuple[Fraction, int] | None = None
        found = None
        for number, row in enumerate(self.rows):
            if row[column] > 0:
                key = row[-1] / row[column], self.basis[number]
                if best is None or key < best:
                    best, found = key, number
        return found

    def pivot(self, number: int, column: int) -> None:
        """Brings a column into the basis in the place of a row's."""
        scale = self.rows[number][column]
        entered = [each / scale for each in self.rows[number]]
        for other, row in enumerate(self.rows):
            factor = row[column]
            if other != number and factor:
                self.rows[other] = [each - factor * by if by else each for each, by in zip(row, entered, strict=True)]
        self.rows[number] = entered
        self.basis[number] = column

    def minimise(self, cost: Sequence[Fraction]) -> None:
        """Pivots to the least cost; every cost here is bounded below, so that it comes to an end."""
        while True:
            column = next((n for n, each in enumerate(self.reduced(cost)) if each < 0), None)
            row = None if column is None else self.leaving(column)
            if column is None or row is None:
                return
            self.pivot(row, column)

    def corner(self) -> tuple[Fraction, ...]:
        """The structural columns' values."""
        values = [ZERO] * self.count
        for column, row in zip(self.basis, self.rows, strict=True):
            if column < self.count:
                values[column] = row[-1]
        return tuple(values)

    def drop_artificials(self) -> None:
        """Takes the artificial columns out, all of them 0; each row has a slack, so one can always leave."""
        for number, held in enumerate(self.basis):
            if held >= self.width:
                self.pivot(number, next(n for n in range(self.width) if self.rows[number][n] != 0))
        self.rows = [[*row[: self.width], row[-1]] for row in self.rows]
        self.artificials = 0


def solved(programme: Programme, *, tie_share: Fraction) -> Solved | None:
    """The least cost and every corner that costs at most `tie_share` more; None where nothing satisfies the rows.

    Costs must be 0 or above.  Raises nothing.  Source: S-50.
    """
    tableau = _Tableau(programme)
    if tableau.artificials:
        wanted = [*[ZERO] * tableau.width, *[Fraction(1)] * tableau.artificials]
        tableau.minimise(wanted)
        if any(row[-1] > 0 for column, row in zip(tableau.basis, tableau.rows, strict=True) if column >= tableau.width):
            return None
        tableau.drop_artificials()
    cost = [*programme.cost, *[ZERO] * tableau.height]
    tableau.minimise(cost)
    least = sum((c * x for c, x in zip(programme.cost, tableau.corner(), strict=True)), ZERO)
    corners, all_found = _as_good(tableau, cost, least * (1 + tie_share))
    return Solved(cost=least, corners=tuple(corners), all_found=all_found)


def _as_good(tableau: _Tableau, cost: list[Fraction], enough: Fraction) -> tuple[list[tuple[Fraction, ...]], bool]:
    """Corners reached from the best one by pivots that cost no more than enough, nearest first."""
    seen = {frozenset(tableau.basis)}
    corners = [tableau.corner()]
    waiting = [tableau]
    for here in waiting:  # grows as it is walked
        now = sum((c * x for c, x in zip(cost, here.corner(), strict=False)), ZERO)
        for column, extra in enumerate(here.reduced(cost)):
            row = None if column in here.basis else here.leaving(column)
            if row is None or now + extra * (here.rows[row][-1] / here.rows[row][column]) > enough:
                continue
            basis = frozenset(here.basis) - {here.basis[row]} | {column}
            if basis in seen:
                continue
            if len(seen) == MOST_BASES:
                return corners, False
            seen.add(basis)
            there = here.copy()
            there.pivot(row, column)
            waiting.append(there)
            if there.corner() not in corners:
                corners.append(there.corner())
    return corners, True


def least_squares(rows: Sequence[Sequence[Fraction]], right: Sequence[Fraction]) -> tuple[Fraction, ...] | None:
    """The x that comes nearest to rows · x = right, exactly; None where more than one does.

    rows: (k, n).  right: (k,).  Returns (n,).  Source: S-44.
    """
    count = len(rows[0]) if rows else 0
    if not count:
        return None if not rows else ()
    system = [
        [
            *(sum((row[i] * row[j] for row in rows), ZERO) for j in range(count)),
            sum((row[i] * to for row, to in zip(rows, right, strict=True)), ZERO),
        ]
        for i in range(count)
    ]
    for column in range(count):
        pivot = next((n for n in range(column, count) if system[n][column] != 0), None)
        if pivot is None:
            return None
        system[column], system[pivot] = system[pivot], system[column]
        scale = system[column][column]
        system[column] = [each / scale for each in system[column]]
        for number in range(count):
            factor = system[number][column]
            if number != column and factor:
                system[number] = [a - factor * b for a, b in zip(system[number], system[column], strict=True)]
    return tuple(row[-1] for row in system)
