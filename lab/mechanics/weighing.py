"""Where a body balances, from what the scales under it read."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import hypot, pi

from lab.mechanics.axes import as_vector, rotation
from lab.mechanics.checks import MechanicsError, Vector, finite, not_negative, vector
from lab.mechanics.moments import balance_of
from lab.mechanics.parts import Part, total_mass_kg
from lab.mechanics.plumb_lines import PlumbCrossing, PlumbLine, plumb_crossing

MOST_DIFFERENCE_SHARE = 0.02
"""Two weighings whose totals differ by more than this share were not of one body.  A choice: kitchen and
luggage scales agree within it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ScaleReading:
    """One scale's reading.

    name: what messages call the scale.  mass_kg: what it shows, 0 or above: a scale cannot pull.
    at_m: the place of the body that stands on it, in the body's own coordinates.
    mass_doubt_kg, at_doubt_m: standard uncertainties (one u), 0 where unknown.  Raises MechanicsError.
    """

    name: str
    mass_kg: float
    at_m: Vector
    mass_doubt_kg: float = 0.0
    at_doubt_m: Vector = (0.0, 0.0, 0.0)

    def __post_init__(self) -> None:
        called = f"scale {self.name!r}"
        put = object.__setattr__
        put(self, "mass_kg", not_negative(f"reading of {called}", self.mass_kg, "kg"))
        put(self, "at_m", vector(f"place of {called}", self.at_m, "m"))
        put(self, "mass_doubt_kg", not_negative(f"mass doubt of {called}", self.mass_doubt_kg, "kg"))
        put(self, "at_doubt_m", vector(f"place doubt of {called}", self.at_doubt_m, "m"))
        for each in self.at_doubt_m:
            not_negative(f"place doubt of {called}", each, "m")


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighing:
    """A body at rest on any number of scales.

    readings: at least one above 0, names all different.  pitch_rad, roll_rad: how it lay while weighed, nose
    up and right wing down positive; both 0 when level.  Raises MechanicsError.
    """

    readings: tuple[ScaleReading, ...]
    pitch_rad: float = 0.0
    roll_rad: float = 0.0

    def __post_init__(self) -> None:
        put = object.__setattr__
        put(self, "readings", tuple(self.readings))
        names: set[str] = set()
        for reading in self.readings:
            if reading.name in names:
                raise MechanicsError(f"the name {reading.name!r} is used twice; each scale needs its own")
            names.add(reading.name)
        for what, value in (("pitch", self.pitch_rad), ("roll", self.roll_rad)):
            if abs(finite(f"{what} of the weighing", value, "rad")) >= pi / 2.0:
                raise MechanicsError(
                    f"{what} of the weighing is {value} rad; it must be under a quarter turn, π/2, either way"
                )
        if not any(reading.mass_kg for reading in self.readings):
            raise MechanicsError("no scale reads above 0 kg; at least one must carry the body")

    @property
    def parts(self) -> tuple[Part, ...]:
        """The readings as parts: what a body that balances the same would be made of."""
        return tuple(
            Part(
                reading.name,
                reading.mass_kg,
                reading.at_m,
                mass_doubt_kg=reading.mass_doubt_kg,
                at_doubt_m=reading.at_doubt_m,
            )
            for reading in self.readings
            if reading.mass_kg
        )

    @property
    def mass_kg(self) -> float:
        """What the scales read together."""
        return total_mass_kg(self.parts)

    @property
    def doubt_m(self) -> Vector | None:
        """One standard uncertainty of where the readings balance, per axis, m; None where none states any.

        As `balance_point_doubt_m` of the parts, but a scale that reads 0 counts too: it may carry a little.
        Source: S-02.
        """
        if not any(reading.mass_doubt_kg or any(reading.at_doubt_m) for reading in self.readings):
            return None
        balance = balance_of(self.parts)
        along, across, up = (self._axis_doubt_m(axis, balance[axis]) for axis in range(3))
        return along, across, up

    def _axis_doubt_m(self, axis: int, balance: float) -> float:
        total = self.mass_kg
        by_mass = [(each.at_m[axis] - balance) / total * each.mass_doubt_kg for each in self.readings]
        by_place = [each.mass_kg / total * each.at_doubt_m[axis] for each in self.readings]
        return hypot(*by_mass, *by_place)

    @property
    def line(self) -> PlumbLine:
        """The upright line through the middle of the scales' forces: the balance point lies on it."""
        down = rotation((self.roll_rad, self.pitch_rad, 0.0)).T @ (0.0, 0.0, -1.0)
        return PlumbLine(through_m=balance_of(self.parts), down=as_vector(down))


def weighed_level_m(weighing: Weighing) -> tuple[float, float]:
    """The balance point along and across from one weighing of a level body, m.

    How high it lies no level weighing tells.  One standard uncertainty is the weighing's `doubt_m`.
    Raises MechanicsError if the body was tilted.  Source: S-13.
    """
    if weighing.pitch_rad or weighing.roll_rad:
        raise MechanicsError(
            f"the body was weighed at a pitch of {weighing.pitch_rad} rad and a roll of {weighing.roll_rad} rad; "
            "a single weighing must be of a level body"
        )
    along, across, _ = balance_of(weighing.parts)
    return along, across


def weighed_balance_point(weighings: Iterable[Weighing]) -> PlumbCrossing:
    """The balance point along, across and up, from two or more weighings at different tilts.

    Each weighing gives an upright line through the body; the balance point is where they cross.  Of a level
    weighing that balances at x, and one pitched by θ whose readings balance at x', z' of the body's own
    coordinates, that is z = z' + (x' − x) / tan θ: an error of a line counts 1 / sin θ times, so tilt well.
    Raises MechanicsError for a single weighing, tilts all alike, or totals that differ.  Source: S-45.
    """
    weighed = tuple(weighings)
    if len(weighed) < 2:
        raise MechanicsError("how high it balances takes two weighings or more, at different tilts")
    for number, other in enumerate(weighed[1:], start=2):
        if abs(other.mass_kg - weighed[0].mass_kg) > MOST_DIFFERENCE_SHARE * weighed[0].mass_kg:
            raise MechanicsError(
                f"weighing 1 comes to {weighed[0].mass_kg:.6g} kg and weighing {number} to {other.mass_kg:.6g} kg; "
                "weigh the same body both times"
            )
    try:
        return plumb_crossing(weighing.line for weighing in weighed)
    except MechanicsError as error:
        raise MechanicsError("the weighings are all at one tilt; tilt the body for one of them") from error
