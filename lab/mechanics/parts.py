"""Parts: what a build is made of."""

from collections.abc import Iterable
from dataclasses import KW_ONLY, dataclass
from math import fsum, isfinite
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from lab.mechanics.axes import Tensor
from lab.mechanics.checks import MechanicsError, Vector, not_negative, positive, vector
from lab.mechanics.shapes import POINT, Shape

Hold = Literal["clamped", "hung"]
HOLDS: tuple[Hold, ...] = ("clamped", "hung")


@dataclass(frozen=True, slots=True)
class Part:
    """One part of a build: so much mass, there, in this shape.

    name: what messages call it.  mass_kg: above 0, also for a cut-out.  at_m: its own centre, or, where it
    is hung, its hook: along, across, up.  shape: how the mass is spread about that centre.
    inertia_kg_m2: by numbers instead of by shape: three principal values or a 3 × 3 tensor.
    hold: `clamped` turns with the bar; `hung` acts at its hook whatever the tilt, its cord upright.
    cut: takes mass away.  mass_doubt_kg, at_doubt_m: standard uncertainties (one u), 0 where unknown.
    set_name: parts weighed with one scale, or measured with one ruler; their doubts go together.
    Raises MechanicsError.
    """

    name: str
    mass_kg: float
    at_m: Vector
    shape: Shape = POINT
    _: KW_ONLY
    inertia_kg_m2: Vector | Tensor | None = None
    hold: Hold = "clamped"
    cut: bool = False
    mass_doubt_kg: float = 0.0
    at_doubt_m: Vector = (0.0, 0.0, 0.0)
    set_name: str | None = None

    def __post_init__(self) -> None:
        called = f"part {self.name!r}"
        put = object.__setattr__
        put(self, "mass_kg", positive(f"mass of {called}", self.mass_kg, "kg"))
        put(self, "at_m", vector(f"place of {called}", self.at_m, "m"))
        put(self, "mass_doubt_kg", not_negative(f"mass doubt of {called}", self.mass_doubt_kg, "kg"))
        doubt = vector(f"place doubt of {called}", self.at_doubt_m, "m")
        for value in doubt:
            not_negative(f"place doubt of {called}", value, "m")
        put(self, "at_doubt_m", doubt)
        if self.hold not in HOLDS:
            raise MechanicsError(f"hold of {called} is {self.hold!r}; it must be clamped or hung")
        if self.inertia_kg_m2 is not None:
            put(self, "inertia_kg_m2", inertia_tensor(f"inertia of {called}", self.inertia_kg_m2, "kg m²"))

    @property
    def signed_mass_kg(self) -> float:
        """The mass, negative for a cut-out."""
        return -self.mass_kg if self.cut else self.mass_kg

    @property
    def own_inertia_kg_m2(self) -> Tensor:
        """Inertia about its own centre, (3, 3); all negative for a cut-out."""
        if self.inertia_kg_m2 is None:
            return _of_mass(self.signed_mass_kg, self.shape.unit_inertia_m2)
        given: Tensor = self.inertia_kg_m2  # type: ignore[assignment]  # a tensor since __post_init__
        if not self.cut:
            return given
        first, second, third = ((-row[0], -row[1], -row[2]) for row in given)
        return first, second, third


def _of_mass(mass_kg: float, unit_inertia_m2: Vector | Tensor) -> Tensor:
    """A shape's inertia as three rows: most shapes state what is on the diagonal only."""
    if isinstance(unit_inertia_m2[0], tuple):
        rows: Tensor = unit_inertia_m2
        first, second, third = ((mass_kg * a, mass_kg * b, mass_kg * c) for a, b, c in rows)
        return first, second, third
    along, across, up = (mass_kg * each for each in unit_inertia_m2)
    return (along, 0.0, 0.0), (0.0, across, 0.0), (0.0, 0.0, up)


def inertia_tensor(what: str, given: Vector | Tensor, unit: str) -> Tensor:
    """A 3 × 3 inertia from three principal values or nine numbers.

    what, unit: for the message, in whatever unit it is given.
    Raises MechanicsError where no body could have it: each principal value must be 0 or above, and none over
    the sum of the other two.  Source: S-04.
    """
    array = np.array(given, dtype=float)
    if array.shape == (3,):
        array = np.diag(array)
    if array.shape != (3, 3):
        raise MechanicsError(f"{what} has shape {array.shape}; it must be three numbers or 3 × 3, in {unit}")
    if not np.isfinite(array).all():
        raise MechanicsError(f"{what} must be finite numbers, in {unit}")
    largest = float(np.abs(array).max())
    # Numbers read off a drawing are rounded, so a part in 10⁶ of unevenness is let pass.
    if not np.allclose(array, array.T, rtol=0.0, atol=1e-6 * largest):
        raise MechanicsError(f"{what} is not symmetric; it must be the same across its diagonal")
    principal = np.linalg.eigvalsh(array)
    if principal[0] < -1e-6 * largest or principal[0] + principal[1] < principal[2] * (1.0 - 1e-6):
        listed = ", ".join(f"{value:.6g}" for value in principal)
        raise MechanicsError(
            f"{what} has principal values {listed} {unit}; each must be 0 or above and none over "
            "the sum of the other two"
        )
    first, second, third = ((float(row[0]), float(row[1]), float(row[2])) for row in array)
    return first, second, third


def checked(parts: Iterable[Part]) -> tuple[Part, ...]:
    """The parts as a tuple, fit to be added up.

    Raises MechanicsError if there is none, a name is used twice, or the total mass is not above 0.
    """
    build = tuple(parts)
    if not build:
        raise MechanicsError("there is no part; a sum needs at least one")
    names: set[str] = set()
    for part in build:
        if part.name in names:
            raise MechanicsError(f"the name {part.name!r} is used twice; each part needs its own")
        names.add(part.name)
    total_mass_kg(build)
    return build


def total_mass_kg(parts: Iterable[Part]) -> float:
    """The mass of the parts less their cut-outs, kg.  Raises MechanicsError if it is not above 0.  Source: S-03."""
    total = added(part.signed_mass_kg for part in parts)
    if total <= 0.0:
        raise MechanicsError(f"total mass is {total} kg; the cut-outs must leave more than 0")
    return total


def added(terms: Iterable[float]) -> float:
    """The correctly rounded sum, the same in any order.  Raises MechanicsError if it is too large to hold."""
    try:
        total = fsum(terms)
    except (OverflowError, ValueError) as error:
        raise MechanicsError("the sum is too large to hold; use smaller masses or places") from error
    if not isfinite(total):
        raise MechanicsError("the sum is too large to hold; use smaller masses or places")
    return total


def inertia_array_kg_m2(part: Part) -> NDArray[np.float64]:
    """A part's inertia about its own centre, (3, 3), kg m²; negative for a cut-out.  Source: S-04."""
    return np.array(part.own_inertia_kg_m2)
