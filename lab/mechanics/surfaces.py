"""Plan-form surfaces: wings, tails, foreplanes and fins, and the mean chord that margins are measured in.

Airframe senses: x aft, y to the right wing, z up; nose up is positive in pitch.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from math import isfinite, pi, radians, tan

from lab.mechanics.checks import MechanicsError, Vector, finite, not_negative, positive, vector

LARGEST_SWEEP_RAD = radians(60.0)
"""Most sweep of a leading edge, either way.  Beyond it the flow rolls up over the edge, which no flat lattice
knows; a choice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Surface:
    """A flat trapezoid on each side of its root: a wing, a tail, a foreplane; or a fin, where vertical.

    name: what messages call it.  root_chord_m, tip_chord_m: along; the tip may be a point, 0.  span_m: tip to
    tip; of a vertical one, root to tip.  sweep_rad: of the leading edge, aft positive.  at_m: the root's
    leading edge.  vertical: it then carries no lift in pitch.  Raises MechanicsError.
    """

    name: str
    root_chord_m: float
    tip_chord_m: float
    span_m: float
    sweep_rad: float = 0.0
    at_m: Vector = (0.0, 0.0, 0.0)
    vertical: bool = False

    def __post_init__(self) -> None:
        called = f"surface {self.name!r}"
        put = object.__setattr__
        put(self, "root_chord_m", positive(f"root chord of {called}", self.root_chord_m, "m"))
        put(self, "tip_chord_m", not_negative(f"tip chord of {called}", self.tip_chord_m, "m"))
        put(self, "span_m", positive(f"span of {called}", self.span_m, "m"))
        put(self, "at_m", vector(f"place of {called}", self.at_m, "m"))
        sweep = finite(f"sweep of {called}", self.sweep_rad, "rad")
        if abs(sweep) > LARGEST_SWEEP_RAD:
            raise MechanicsError(
                f"sweep of {called} is {sweep * 180.0 / pi:.4g} degrees; it must be between -60 and 60 degrees"
            )
        put(self, "sweep_rad", sweep)

    @property
    def area_m2(self) -> float:
        """Both sides together, m²."""
        return self.span_m * (self.root_chord_m + self.tip_chord_m) / 2.0

    @property
    def aspect(self) -> float:
        """Aspect ratio: span² over area."""
        return self.span_m**2 / self.area_m2

    @property
    def half_span_m(self) -> float:
        """From the root to a tip, m."""
        return self.span_m if self.vertical else self.span_m / 2.0


@dataclass(frozen=True, slots=True, kw_only=True)
class MeanChord:
    """length_m: 2/S ∫ c² dy over the half-span.  at_m: the leading edge of the mean chord, along.
    across_m: how far out from the root the chord is as long as that."""

    length_m: float
    at_m: float
    across_m: float

    @property
    def quarter_m(self) -> float:
        """Its quarter point, along, m."""
        return self.at_m + self.length_m / 4.0

    def share(self, along_m: float) -> float:
        """A place along, as a share of the mean chord from its leading edge: 0.25 is a quarter back."""
        return (finite("place along", along_m, "m") - self.at_m) / self.length_m

    def along_m(self, share: float) -> float:
        """The place along of a share of the mean chord, m."""
        return self.at_m + finite("share of the mean chord", share, "") * self.length_m


def mean_chord(surface: Surface) -> MeanChord:
    """The mean chord of a surface and its place, exact for a trapezoid.

    2/S ∫ c² dy = ⅔ (r² + r t + t²) / (r + t) for root r and tip t; it lies where a swept half balances:
    (r + 2 t) / (3 (r + t)) of the half-span out.  Source: S-61.
    """
    root, tip = surface.root_chord_m, surface.tip_chord_m
    length = 2.0 / 3.0 * (root + tip * tip / (root + tip))
    across = surface.half_span_m * (root + 2.0 * tip) / (3.0 * (root + tip))
    return MeanChord(
        length_m=length,
        at_m=surface.at_m[0] + across * tan(surface.sweep_rad),
        across_m=across,
    )


def airframe_surfaces(surfaces: Iterable[Surface]) -> tuple[Surface, ...]:
    """The surfaces as a tuple, fit to fly in pitch.

    Raises MechanicsError if a name is used twice or none of them lies flat.
    """
    found = tuple(surfaces)
    names: set[str] = set()
    for surface in found:
        if surface.name in names:
            raise MechanicsError(f"the name {surface.name!r} is used twice; each surface needs its own")
        names.add(surface.name)
    if not any(not surface.vertical for surface in found):
        raise MechanicsError("no surface lies flat; pitch needs at least one that is not vertical")
    return found


def main_surface(surfaces: Iterable[Surface]) -> Surface:
    """The wing: of the surfaces that lie flat the one with most area, the first of equals.

    Its area and mean chord are what margins and coefficients are measured in.  Raises MechanicsError.
    """
    return max((each for each in airframe_surfaces(surfaces) if not each.vertical), key=lambda each: each.area_m2)


def mean_chord_percent(surfaces: Iterable[Surface], along_m: float) -> float:
    """A place along in per cent of the wing's mean chord, from its leading edge.

    Raises MechanicsError.  Source: S-61.
    """
    percent = 100.0 * mean_chord(main_surface(surfaces)).share(along_m)
    if not isfinite(percent):
        raise MechanicsError(f"place along is {along_m} m; it must be within reach of the mean chord")
    return percent
