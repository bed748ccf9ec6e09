"""The lightest ballast over the places where it may go, in one to three axes, or why there is none.

Mass times offset from the target has to cancel on every axis asked for: linear in the masses, so the lightest
is a corner of a small linear programme.  A strip along which ballast may go counts as its two ends: a load at
both is one load between them.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import KW_ONLY, dataclass
from fractions import Fraction

from lab.mechanics.axes import AXES, Axis
from lab.mechanics.ballast import CannotBeDone
from lab.mechanics.checks import MechanicsError, Vector, finite, positive, vector
from lab.mechanics.linear_programme import Programme, least_squares, solved
from lab.mechanics.moments import balance_of
from lab.mechanics.parts import Part, added, checked, total_mass_kg
from lab.mechanics.pivots import LEVEL_SHARE

Target = float | tuple[float, float]
SLACK_SHARE = Fraction(1, 10**12)
"""Share of whole mass × longest arm by which a moment may miss: above round-off of the places and of the balance
point, a thousandth of what counts as level.  At 0, places on one line to all but the last bit could not help."""

TIE_SHARE = Fraction(LEVEL_SHARE)


@dataclass(frozen=True, slots=True)
class BallastPlace:
    """Where ballast may go.

    at_m: a place; to_m: the other end of a strip, where it is one.  most_kg: the most it holds, above 0; None
    for any amount.  Raises MechanicsError.
    """

    name: str
    at_m: Vector
    to_m: Vector | None = None
    _: KW_ONLY
    most_kg: float | None = None

    def __post_init__(self) -> None:
        called = f"ballast place {self.name!r}"
        put = object.__setattr__
        put(self, "at_m", vector(called, self.at_m, "m"))
        if self.to_m is not None:
            put(self, "to_m", vector(f"other end of {called}", self.to_m, "m"))
        if self.most_kg is not None:
            put(self, "most_kg", positive(f"most mass of {called}", self.most_kg, "kg"))

    @property
    def ends_m(self) -> tuple[Vector, ...]:
        """The place, or both ends of the strip."""
        return (self.at_m,) if self.to_m is None or self.to_m == self.at_m else (self.at_m, self.to_m)


@dataclass(frozen=True, slots=True, kw_only=True)
class BallastLoad:
    """So much ballast, there.  place: the name of its place."""

    place: str
    at_m: Vector
    mass_kg: float


Loads = tuple[BallastLoad, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LightestBallast:
    """The lightest answer.

    loads: what goes where, in the places' order; none where it balances already.  mass_kg: in all.
    whole_kg, balance_point_m: with the ballast.  as_light: other answers that weigh as little, to 1e-9; any
    mixture of them weighs as little too.  all_found: whether the search for those came to its end.
    """

    loads: Loads
    mass_kg: float
    whole_kg: float
    balance_point_m: Vector
    as_light: tuple[Loads, ...]
    all_found: bool

    @property
    def tied(self) -> bool:
        """Whether other answers weigh as little."""
        return bool(self.as_light)


def lightest_ballast(
    parts: Iterable[Part], places: Sequence[BallastPlace], *, target_m: Mapping[Axis, Target]
) -> LightestBallast | CannotBeDone:
    """The fewest grams that bring the balance point to a target, and where they go.

    target_m: for each axis asked for, a place or a range (low, high) the balance point must come to lie in.
    Exact and the same every time.  Raises MechanicsError.  Source: S-03, S-50.
    """
    build = checked(parts)
    task = _task(build, tuple(places), target_m)
    found = solved(task.programme(), tie_share=TIE_SHARE)
    if found is None:
        return _why_not(task)
    answers: list[tuple[Fraction, ...]] = []
    for corner in found.corners:
        masses = task.sharpened(corner)
        if not any(_same(masses, other, found.cost) for other in answers):
            answers.append(masses)
    first, *others = (task.loads(masses) for masses in answers)
    held = [(part.signed_mass_kg, part.at_m) for part in build] + [(load.mass_kg, load.at_m) for load in first]
    whole = added(mass for mass, _ in held)
    along, across, up = (added(mass * at[axis] for mass, at in held) / whole for axis in range(3))
    return LightestBallast(
        loads=first,
        mass_kg=added(load.mass_kg for load in first),
        whole_kg=whole,
        balance_point_m=(along, across, up),
        as_light=tuple(others),
        all_found=found.all_found,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Task:
    """The question in fractions.  targets: (axis, low, high).  ends: (place's number, where), one a column."""

    places: tuple[BallastPlace, ...]
    whole_kg: Fraction
    balance_m: tuple[Fraction, ...]
    targets: tuple[tuple[int, Fraction, Fraction], ...]
    ends: tuple[tuple[int, tuple[Fraction, ...]], ...]
    slack_kg_m: Fraction

    def programme(self, *, capped: bool = True, only: int | None = None) -> Programme:
        """Rows: under the high side and over the low side of each target, then what each place holds.

        only: one target by number; None for all of them.
        """
        rows, most = [], []
        for axis, low, high in self.targets if only is None else self.targets[only : only + 1]:
            for sign, bound in ((1, high), (-1, low)):
                rows.append(tuple(sign * (at[axis] - bound) for _, at in self.ends))
                most.append(sign * (bound - self.balance_m[axis]) * self.whole_kg + self.slack_kg_m)
        for number, place in enumerate(self.places):
            if capped and place.most_kg is not None:
                rows.append(self._of_place(number))
                most.append(Fraction(place.most_kg))
        return Programme(cost=(Fraction(1),) * len(self.ends), rows=tuple(rows), most=tuple(most))

    def sharpened(self, corner: tuple[Fraction, ...]) -> tuple[Fraction, ...]:
        """The corner moved from the edge of the slack to where its limits hold exactly, where that can be."""
        largest = max(corner, default=Fraction(0))
        for negligible in (largest * TIE_SHARE, Fraction(0)):
            used = [number for number, mass in enumerate(corner) if mass > negligible]
            exact = least_squares(*self._tight(corner, used))
            if exact is not None and all(mass >= 0 for mass in exact):
                masses = [Fraction(0)] * len(corner)
                for number, mass in zip(used, exact, strict=True):
                    masses[number] = mass
                if self._holds(masses):
                    return tuple(masses)
        return corner

    def loads(self, masses: tuple[Fraction, ...]) -> Loads:
        """What goes where; the two ends of a strip as one load between them."""
        loads = []
        for number, place in enumerate(self.places):
            there = [(m, at) for m, (of, at) in zip(masses, self.ends, strict=True) if of == number and m > 0]
            mass = sum((m for m, _ in there), Fraction(0))
            if mass > 0:
                along, across, up = (float(sum(m * at[axis] for m, at in there) / mass) for axis in range(3))
                loads.append(BallastLoad(place=place.name, at_m=(along, across, up), mass_kg=float(mass)))
        return tuple(loads)

    def _of_place(self, number: int) -> tuple[Fraction, ...]:
        return tuple(Fraction(int(of == number)) for of, _ in self.ends)

    def _tight(self, corner: tuple[Fraction, ...], used: list[int]) -> tuple[list[list[Fraction]], list[Fraction]]:
        """The limits that the corner lies on, without slack, over the columns that it uses."""
        rows, right = [], []
        programme = self.programme()
        moments = 2 * len(self.targets)
        for number, (row, most) in enumerate(zip(programme.rows, programme.most, strict=True)):
            slack = self.slack_kg_m if number < moments else Fraction(0)
            if most - _dot(row, corner) <= 2 * slack:
                rows.append([row[column] for column in used])
                right.append(most - slack)
        return rows, right

    def _holds(self, masses: list[Fraction]) -> bool:
        programme = self.programme()
        return all(_dot(row, masses) <= most for row, most in zip(programme.rows, programme.most, strict=True))


def _task(parts: tuple[Part, ...], places: tuple[BallastPlace, ...], target_m: Mapping[Axis, Target]) -> _Task:
    names = [place.name for place in places]
    for name in names:
        if names.count(name) > 1:
            raise MechanicsError(f"the name {name!r} is used twice; each ballast place needs its own")
    targets = tuple(_target(axis, target_m[axis]) for axis in AXES if axis in target_m)
    if not targets or len(targets) != len(target_m):
        raise MechanicsError(f"targets are for {', '.join(target_m) or 'no axis'}; give some of {', '.join(AXES)}")
    balance = tuple(Fraction(each) for each in balance_of(parts))
    ends = tuple(
        (number, tuple(Fraction(each) for each in end)) for number, place in enumerate(places) for end in place.ends_m
    )
    arms = [
        abs(at[axis] - bound)
        for axis, *bounds in targets
        for bound in bounds
        for at in (balance, *(at for _, at in ends))
    ]
    whole = Fraction(total_mass_kg(parts))
    return _Task(
        places=places,
        whole_kg=whole,
        balance_m=balance,
        targets=targets,
        ends=ends,
        slack_kg_m=SLACK_SHARE * whole * max(arms),
    )


def _target(axis: Axis, given: Target) -> tuple[int, Fraction, Fraction]:
    low, high = given if isinstance(given, tuple) else (given, given)
    finite(f"target {axis}", low, "m")
    finite(f"target {axis}", high, "m")
    if low > high:
        raise MechanicsError(f"target {axis} runs from {low} m to {high} m; the lower end must come first")
    return AXES.index(axis), Fraction(low), Fraction(high)


def _why_not(task: _Task) -> CannotBeDone:
    """The first reason of: no place on the right side, no way with all axes at once, too little room."""
    free = solved(task.programme(capped=False), tie_share=Fraction(0))
    if free is not None:
        return CannotBeDone(
            reason="room",
            why=f"the places hold too little; if they held any amount, {float(free.cost):.9g} kg would do",
        )
    for number, (axis, low, high) in enumerate(task.targets):
        if solved(task.programme(capped=False, only=number), tie_share=Fraction(0)) is None:
            now = task.balance_m[axis]
            side, bound = ("below", high) if now > high else ("above", low)
            return CannotBeDone(
                reason="side",
                why=f"no ballast place lies {side} {float(bound):.9g} m {AXES[axis]}; only from beyond it can "
                f"ballast bring the balance point there from {float(now):.9g} m",
            )
    asked = " and ".join(AXES[axis] for axis, *_ in task.targets)
    return CannotBeDone(
        reason="together", why=f"the places can bring each of {asked} right, but not all of them at once"
    )


def _same(masses: Sequence[Fraction], other: Sequence[Fraction], cost: Fraction) -> bool:
    return all(abs(a - b) <= TIE_SHARE * cost for a, b in zip(masses, other, strict=True))


def _dot(row: Sequence[Fraction], masses: Sequence[Fraction]) -> Fraction:
    return sum((a * m for a, m in zip(row, masses, strict=True)), Fraction(0))
