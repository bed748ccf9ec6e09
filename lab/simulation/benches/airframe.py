"""The airframe bench: what flies, and what is being done with it: looked over, hung, weighed, flown.

Each thing that is done has a state of its own, to which time and hands go; the airframe itself is the same for all.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal

from lab.files import View
from lab.mechanics import Axis, Limits, MomentSum, Part, Shape, Surface, Tank, Vector, moment_sum, tank_parts
from lab.simulation.benches.airframe_hanging import AirframeHanging
from lab.simulation.benches.airframe_places import first_hook_m, first_scales, spans_m
from lab.simulation.benches.airframe_tanks import TankFlight, first_flight
from lab.simulation.benches.airframe_weighing import AirframeWeighing
from lab.simulation.benches.groups import in_group
from lab.simulation.benches.hanging_bar import NO_EXTENT
from lab.simulation.commands import Hold, Side

Doing = Literal["build", "hang", "weigh", "burn"]
"""What is being done with it: one picture and one panel each."""

ORIGIN: Vector = (0.0, 0.0, 0.0)
MOST_PARTS = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class AirframePart:
    """One part of it.

    id: unlike any other ever on this airframe, kept when it moves.  The other values are those of a part of a build.
    """

    id: int
    name: str
    mass_kg: float
    at_m: Vector
    shape: Shape = NO_EXTENT
    inertia_kg_m2: tuple[float, float, float] | tuple[Vector, Vector, Vector] | None = None
    hold: Hold = "clamped"
    cut: bool = False
    mass_doubt_kg: float = 0.0
    at_doubt_m: Vector = ORIGIN
    set_name: str | None = None
    look: str | None = None

    @property
    def part(self) -> Part:
        """The part as mechanics sees it."""
        return Part(
            name=self.name,
            mass_kg=self.mass_kg,
            at_m=self.at_m,
            shape=self.shape,
            inertia_kg_m2=self.inertia_kg_m2,
            hold=self.hold,
            cut=self.cut,
            mass_doubt_kg=self.mass_doubt_kg,
            at_doubt_m=self.at_doubt_m,
            set_name=self.set_name,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class AirframeBench:
    """The whole state of the bench.

    parts_on: in file order.  tanks, surfaces, limits: as in a build.  doing: what is being done with it.
    hang, weighing, flight: how it hangs, stands on scales, flies on its tanks; None before each was first done.
    In flight tanks are as they were at take-off.
    axis: whose moments are shown.  reference_m: what arms are measured from, on three axes.
    guess: which end drops of what is held up at its neutral point.  found: whether it was looked at since where it
    balances; while it is built, that is what letting go of it means.
    """

    parts_on: tuple[AirframePart, ...]
    tanks: tuple[Tank, ...] = ()
    surfaces: tuple[Surface, ...] = ()
    limits: Limits | None = None
    doing: Doing = "build"
    hang: AirframeHanging | None = None
    weighing: AirframeWeighing | None = None
    flight: TankFlight | None = None
    axis: Axis = "along"
    reference_m: Vector = ORIGIN
    guess: Side | None = None
    found: bool = False
    title: str = "Airframe"
    units: str = "g-cm"
    view: View = "plain"
    next_id: int = 1

    @property
    def parts(self) -> tuple[Part, ...]:
        """All that weighs: the parts, then what the tanks hold now."""
        return _parts(self.parts_on, self.tanks_now)

    @property
    def ids(self) -> tuple[int, ...]:
        """Those of the parts, in order."""
        return tuple(each.id for each in self.parts_on)

    @property
    def names(self) -> tuple[str, ...]:
        """What all is called: the parts in order, then the tanks."""
        return (*(each.name for each in self.parts_on), *(tank.name for tank in self.tanks))

    def called(self, names: tuple[str, ...]) -> AirframeBench:
        """The same with other names of the parts; a surface goes on being called as its part is."""
        new = names[: len(self.parts_on)]
        named = tuple(replace(each, name=name) for each, name in zip(self.parts_on, new, strict=True))
        now = {in_group(old.name): in_group(last) for old, last in zip(self.parts_on, new, strict=True)}
        surfaces = tuple(replace(each, name=now.get(each.name, each.name)) for each in self.surfaces)
        # Two parts in two groups may be called the same; two surfaces may not.
        alike = len({surface.name for surface in surfaces}) < len(surfaces)
        return replace(self, parts_on=named, surfaces=self.surfaces if alike else surfaces)

    @property
    def tanks_now(self) -> tuple[Tank, ...]:
        """The tanks with what is left in them."""
        return self.tanks if self.flight is None else self.flight.tanks_at(self.tanks)

    @property
    def sum(self) -> MomentSum:
        """The moment sum about the reference."""
        return _summed(self.parts, self.reference_m)

    @property
    def rail_m(self) -> tuple[float, float]:
        """Where the reference may be, along."""
        low, high = spans_m(self.parts, self.surfaces)[0]
        over = 0.1 * (high - low)
        return low - over, high + over

    @property
    def _done(self) -> AirframeHanging | AirframeWeighing | TankFlight | None:
        """The state of what is being done; None where nothing moves in it."""
        if self.doing == "burn":
            return self.flight
        if self.doing == "hang":
            return self.hang
        return self.weighing if self.doing == "weigh" else None

    @property
    def held(self) -> bool:
        """Whether it is not let go."""
        if self.doing == "build":
            return not self.found
        return self._done is None or self._done.held

    @property
    def moving(self) -> bool:
        """Whether the next tick changes anything."""
        return self._done is not None and self._done.moving

    def doing_now(self, doing: Doing) -> AirframeBench:
        """Held, with something else being done with it, which begins where it was left."""
        state = replace(self.stilled(), doing=doing)
        if doing == "hang" and state.hang is None:
            return replace(state, hang=AirframeHanging(hook_m=first_hook_m(self.parts, self.surfaces)))
        if doing == "weigh" and state.weighing is None:
            return replace(state, weighing=AirframeWeighing(scales=first_scales(self.parts, self.surfaces)))
        if doing == "burn" and state.flight is None:
            return replace(state, flight=first_flight(self.tanks))
        return state

    def touched(self) -> AirframeBench:
        """Held, with all that was guessed, drawn and noted about it forgotten: it is not what it was."""
        hang = None if self.hang is None else self.hang.touched()
        weighing = None if self.weighing is None else self.weighing.touched()
        return replace(self, hang=hang, weighing=weighing, guess=None, found=False)

    def stilled(self) -> AirframeBench:
        """Held, in whatever is being done with it."""
        if self.held:
            return self
        if self.doing == "build":
            return replace(self, found=False)
        if isinstance(self._done, AirframeHanging):
            return replace(self, hang=self._done.stilled())
        if isinstance(self._done, TankFlight):
            return replace(self, flight=self._done.stilled())
        return self if self._done is None else replace(self, weighing=self._done.stilled())

    def released(self) -> AirframeBench:
        """Just let go; while it is built, looked at where it balances.  Raises MechanicsError."""
        if self.doing == "build":
            return replace(self, found=True)
        if isinstance(self._done, AirframeHanging):
            return replace(self, hang=self._done.released(self.parts))
        if isinstance(self._done, TankFlight):
            return replace(self, flight=self._done.released(self.tanks))
        return self if self._done is None else replace(self, weighing=self._done.released(self.parts))

    def ticked(self) -> AirframeBench:
        """The bench one tick later."""
        if not self.moving:
            return self
        if isinstance(self._done, AirframeHanging):
            return replace(self, hang=self._done.ticked())
        if isinstance(self._done, TankFlight):
            return replace(self, flight=self._done.ticked())
        return self if self._done is None else replace(self, weighing=self._done.ticked())

    def at_end(self) -> AirframeBench:
        """Where it comes to rest in the end."""
        if not self.moving:
            return self
        if isinstance(self._done, AirframeHanging):
            return replace(self, hang=self._done.at_end())
        if isinstance(self._done, TankFlight):
            return replace(self, flight=self._done.at_end())
        return self if self._done is None else replace(self, weighing=self._done.at_end())


@lru_cache(maxsize=16)
def _parts(parts_on: tuple[AirframePart, ...], tanks: tuple[Tank, ...]) -> tuple[Part, ...]:
    """While something moves, every frame asks for the same ones many times."""
    return (*(each.part for each in parts_on), *tank_parts(tanks))


@lru_cache(maxsize=16)
def _summed(parts: tuple[Part, ...], reference_m: Vector) -> MomentSum:
    return moment_sum(parts, reference_m)
