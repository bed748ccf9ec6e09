"""Moving a part: what is moved times how far is the whole times how far the balance point goes."""

from collections.abc import Iterable
from dataclasses import replace

from lab.mechanics.checks import MechanicsError, Vector, finite, positive, vector
from lab.mechanics.parts import Part, checked


def balance_shift_m(*, mass_kg: float, by_m: float, whole_kg: float) -> float:
    """How far the balance point goes when a part is moved, m: w d / W, with the sign of the move.

    mass_kg: the part's, at most the whole's.  by_m: how far, on one axis.  whole_kg: everything, the part
    included, unchanged.  Raises MechanicsError.  Source: S-03.
    """
    return _share(mass_kg, whole_kg) * finite("move", by_m, "m")


def move_m(*, mass_kg: float, balance_shift_m: float, whole_kg: float) -> float:
    """How far a part has to be moved for the balance point to go so far, m.

    Raises MechanicsError.  Source: S-03.
    """
    return finite("shift of the balance point", balance_shift_m, "m") / _share(mass_kg, whole_kg)


def moved_mass_kg(*, by_m: float, balance_shift_m: float, whole_kg: float) -> float | None:
    """How much has to be moved so far for the balance point to go so far, kg; None where no mass does it.

    None does where the move is nothing or goes the other way, or is shorter than the shift: all of the mass
    would not be enough.  Raises MechanicsError.  Source: S-03.
    """
    by = finite("move", by_m, "m")
    shift = finite("shift of the balance point", balance_shift_m, "m")
    whole = positive("whole mass", whole_kg, "kg")
    if shift == 0.0:
        return 0.0
    if by == 0.0 or (by > 0.0) != (shift > 0.0) or abs(shift) > abs(by):
        return None
    return whole * (shift / by)


def loading_shift_m(*, mass_kg: float, at_m: float, whole_kg: float, balance_m: float) -> float:
    """How far the balance point goes when mass is added at a place, m; a negative mass is taken away.

    whole_kg, balance_m: before.  Raises MechanicsError where nothing would be left.  Source: S-12.
    """
    mass = finite("mass added", mass_kg, "kg")
    whole = positive("whole mass", whole_kg, "kg")
    if not whole + mass > 0.0:
        raise MechanicsError(f"{-mass} kg are taken from {whole} kg; something must be left")
    return mass / (whole + mass) * (finite("place", at_m, "m") - finite("balance point", balance_m, "m"))


def with_part_moved(parts: Iterable[Part], name: str, by_m: Vector) -> tuple[Part, ...]:
    """The same build with one part moved by so much along, across and up.

    Raises MechanicsError where there is no part of that name.  Source: S-03.
    """
    build = checked(parts)
    by = vector("move", by_m, "m")
    part = part_named(build, name)
    along, across, up = (at + each for at, each in zip(part.at_m, by, strict=True))
    return tuple(replace(each, at_m=(along, across, up)) if each is part else each for each in build)


def part_named(parts: tuple[Part, ...], name: str) -> Part:
    """The part of that name.  Raises MechanicsError where there is none."""
    for part in parts:
        if part.name == name:
            return part
    raise MechanicsError(f"there is no part {name!r}; there are {', '.join(part.name for part in parts)}")


def _share(mass_kg: float, whole_kg: float) -> float:
    mass = positive("mass moved", mass_kg, "kg")
    whole = positive("whole mass", whole_kg, "kg")
    if mass > whole:
        raise MechanicsError(f"mass moved is {mass} kg; it must be at most the whole, {whole} kg")
    return mass / whole
