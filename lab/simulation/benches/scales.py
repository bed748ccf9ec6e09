"""The scales bench: a loaded bar on two scales, or a frame on two or three, that tips where they can't hold it.

Let down, the body stands on the scales' plates. Each plate gives on a spring beside an oil damper, all with one time
constant τ, so stiff that the body stays level: the damper bears what the spring does not yet, and the window, which
shows the spring, comes to what the scale bears as 1 − exp(−t / τ).  What the scales bear adds up to the weight in every
tick; after that first moment so does what they show, for parts on a standing body are moved slowly.

A body whose balance point lies beyond its scales tips over the nearest of them as a free body does: see `pads`.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from math import exp

from lab.files import Bar, View
from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    MomentSum,
    PadMotion,
    Part,
    Toppling,
    Vector,
    moment_sum,
    pad_tick,
    pressed_kg,
    support_reactions_n,
    toppling_of,
)
from lab.simulation.benches.hanging_bar import Hung
from lab.simulation.clock import TICK_S
from lab.simulation.commands import Side

MOST_LOADS = 40
"""Parts on one body, as on the hanging bar."""

STAND_SHARE, LIFT_SHARE = 0.15, 0.03
"""How high a scale stands, and how far over the scales the body is held, as shares of the body's size."""

LOWERS_S = 0.3
"""How long it takes to be let down, s: seen to be set down, not dropped."""

SETTLES_S = 0.15
"""τ of a scale, s. At 0.15 a window is steady within a second, as a kitchen scale's; shorter shows no settling."""

STEADY = 1e-4
"""Nearer than this share of the weight to what it comes to, a window is steady: under half its last digit."""

SAME_SHARE = 1e-9
"""Two scales that differ by less than this share of the weight read the same: round-off lies well below."""

LYING = PadMotion()


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """One scale. at_m: where the body stands on it, along, across, up; its height plays no part.

    friction: goes back into the file as it came; a body that tips has the friction of wood on all of them.
    """

    id: int
    name: str
    at_m: Vector
    friction: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ScalesBench:
    """The whole state of the bench.

    bar: what all lies on; None for a body of parts alone, the longest of which then carries the others.
    scales: two, from left to right, or three.  guess: which of two will read more.  guessed_kg: what the first will
    read.  raised: how far over the scales the body is, as a share of where it is held.  given: the share of what a
    scale bears that it shows already.  tipping: None while it stands.  pressed_kg: what then still presses.
    """

    bar: Bar | None = None
    loads: tuple[Hung, ...] = ()
    scales: tuple[Scale, ...]
    reference_m: float = 0.0
    guess: Side | None = None
    guessed_kg: float | None = None
    held: bool = True
    raised: float = 1.0
    given: float = 0.0
    tipping: Toppling | None = None
    motion: PadMotion = LYING
    pressed_kg: float = 0.0
    title: str = "On scales"
    units: str = "g-cm"
    view: View = "plain"
    next_id: int = 1

    # --- what lies there ------------------------------------------------------------------------------------

    @property
    def parts(self) -> tuple[Part, ...]:
        """All that weighs, the bar first."""
        return _weighing(self.bar, self.loads)

    @property
    def sum(self) -> MomentSum:
        """The moment sum about the reference line."""
        return _summed(self.bar, self.loads, self.reference_m)

    @property
    def carrier(self) -> Hung | None:
        """The part that carries all others, where there is no bar: the longest, the first of equals."""
        return None if self.bar is not None else max(self.loads, key=lambda load: max(load.shape.extent_m[:2]))

    @property
    def carrier_m(self) -> tuple[float, float]:
        """From where to where what carries reaches, along."""
        if self.bar is not None:
            return self.bar.left_m, self.bar.right_m
        low, high = _corners(self.carrier)
        return low[0], high[0]

    @property
    def reach_m(self) -> tuple[tuple[float, float], tuple[float, float]]:
        """How far parts and scales can be moved, along and across: what carries, and wherever one is already."""
        spots = [load.part.at_m for load in self.loads] + [scale.at_m for scale in self.scales]
        if self.bar is not None:
            alongs, acrosses = [self.bar.left_m, self.bar.right_m], [0.0, *(spot[1] for spot in spots)]
        else:
            spots += _corners(self.carrier)
            alongs, acrosses = [spot[0] for spot in spots], [spot[1] for spot in spots]
        return (min(alongs), max(alongs)), (min(acrosses), max(acrosses))

    @property
    def rail_m(self) -> tuple[float, float]:
        """Where the reference line may be, along."""
        return self.reach_m[0]

    @property
    def size_m(self) -> float:
        """How long it is, or how wide."""
        (left, right), (low, high) = self.reach_m
        return max(right - left, high - low)

    @property
    def underside_m(self) -> float:
        """The height of what stands on the scales."""
        return -self.bar.depth_m / 2 if self.bar is not None else min(corner[2] for corner in _corners(self.carrier))

    @property
    def top_m(self) -> float:
        """The height on which weights are put."""
        return self.bar.depth_m / 2 if self.bar is not None else max(corner[2] for corner in _corners(self.carrier))

    @property
    def floor_m(self) -> float:
        """The height of the table that the scales stand on."""
        lowest_m = min(part.at_m[2] - part.shape.reach_m((0.0, 0.0, -1.0)) for part in self.parts)
        return min(lowest_m, self.underside_m) - STAND_SHARE * self.size_m

    @property
    def lift_m(self) -> float:
        """How far over the scales the body is now."""
        return self.raised * LIFT_SHARE * self.size_m

    @property
    def ids(self) -> tuple[int, ...]:
        """Those of the parts that lie there, in order."""
        return tuple(load.id for load in self.loads)

    @property
    def names(self) -> tuple[str, ...]:
        """What all is called: the parts in order, then the bar."""
        names = tuple(load.name for load in self.loads)
        return names if self.bar is None else (*names, self.bar.name)

    def called(self, names: tuple[str, ...]) -> ScalesBench:
        """The same with other names of the parts."""
        loads = zip(self.loads, names[: len(self.loads)], strict=True)
        return replace(self, loads=tuple(replace(load, name=name) for load, name in loads))

    def load(self, number: int) -> Hung | None:
        """The part with an id."""
        return next((load for load in self.loads if load.id == number), None)

    def scale(self, number: int) -> Scale | None:
        """The scale with an id."""
        return next((scale for scale in self.scales if scale.id == number), None)

    # --- what the scales bear and show ----------------------------------------------------------------------

    @property
    def reactions_kg(self) -> tuple[float, ...] | None:
        """What each scale would bear with the body standing on all of them; None where it tips."""
        forces_n = support_reactions_n(self.parts, [scale.at_m for scale in self.scales])
        return None if forces_n is None else tuple(force / STANDARD_GRAVITY_M_S2 for force in forces_n)

    @property
    def borne_kg(self) -> tuple[float, ...]:
        """What each scale bears now."""
        nothing = (0.0,) * len(self.scales)
        if self.held or self.raised:
            return nothing
        if self.tipping is not None:
            return tuple(share * self.pressed_kg for share in self.tipping.bears)
        return self.reactions_kg or nothing

    @property
    def readings_kg(self) -> tuple[float, ...]:
        """What each scale shows now."""
        if self.tipping is not None:
            return self.borne_kg
        return tuple(self.given * borne for borne in self.borne_kg)

    @property
    def outcome(self) -> Side | None:
        """Which of two scales reads more, of three which way it tips; None until let go and come to rest."""
        if self.held or self.moving:
            return None
        if len(self.scales) != 2:
            return "level" if self.tipping is None else "left" if self.tipping.way[0] < 0.0 else "right"
        first, second = self.borne_kg if self.tipping is None else self.tipping.bears
        if abs(first - second) <= SAME_SHARE * (first + second):
            return "level"
        return "left" if first > second else "right"

    # --- what time does -------------------------------------------------------------------------------------

    @property
    def moving(self) -> bool:
        """Whether the next tick changes anything."""
        if self.held:
            return False
        if self.tipping is not None:
            return self.motion.phase != "down"
        return self.raised > 0.0 or self.given < 1.0

    def stilled(self) -> ScalesBench:
        """The body held over the scales."""
        if self.held:
            return self
        return replace(self, held=True, raised=1.0, given=0.0, tipping=None, motion=LYING, pressed_kg=0.0)

    def released(self) -> ScalesBench:
        """The body just let go of, on its way down.  Raises MechanicsError where no scales could hold it."""
        if not self.held:
            return self
        _ = self.reactions_kg  # asked now: once it is on its way nobody could be told
        return replace(self, held=False)

    def set_down(self) -> ScalesBench:
        """The body with its parts where they are now: it stands, or begins to tip."""
        if self.held or self.raised or self.tipping is not None or self.reactions_kg is not None:
            return self
        places = [scale.at_m for scale in self.scales]
        tipping = toppling_of(self.parts, places, underside_m=self.underside_m, floor_m=self.floor_m)
        return replace(self, tipping=tipping, pressed_kg=tipping.body.mass_kg)

    def ticked(self) -> ScalesBench:
        """The bench one tick later."""
        if not self.moving:
            return self
        if self.tipping is not None:
            return self._tipped(self.tipping)
        if self.raised:
            return replace(self, raised=max(0.0, self.raised - TICK_S / LOWERS_S)).set_down()
        given = 1.0 - (1.0 - self.given) * exp(-TICK_S / SETTLES_S)
        return replace(self, given=1.0 if 1.0 - given < STEADY else given)

    def at_rest(self) -> ScalesBench:
        """The body set down, standing steady or just beginning to tip.  Raises MechanicsError."""
        return replace(self.stilled(), held=False, raised=0.0, given=1.0).set_down()

    def at_end(self) -> ScalesBench:
        """The body called down where it is: it has had its minute and hardly moves any more."""
        if not self.moving:
            return self
        if self.tipping is None:
            return self.at_rest()
        still = replace(self.motion, phase="down", rate_rad_s=0.0, vx_m_s=0.0, vz_m_s=0.0)
        return replace(self, motion=still, pressed_kg=pressed_kg(self.tipping, self.motion, still, TICK_S))

    def _tipped(self, tipping: Toppling) -> ScalesBench:
        motion = pad_tick(tipping.body, tipping.edge_m, 0.0, tipping.floor_m, self.motion, TICK_S)
        # The very same motion back: it hangs on the edge and stays.
        if motion is self.motion:
            motion = replace(motion, phase="down")
        return replace(self, motion=motion, pressed_kg=pressed_kg(tipping, self.motion, motion, TICK_S))


# While it settles or tips, every frame asks for the same parts and the same sum many times.
@lru_cache(maxsize=16)
def _weighing(bar: Bar | None, loads: tuple[Hung, ...]) -> tuple[Part, ...]:
    parts = tuple(load.part for load in loads)
    return parts if bar is None else (bar.as_part(), *parts)


@lru_cache(maxsize=16)
def _summed(bar: Bar | None, loads: tuple[Hung, ...], reference_m: float) -> MomentSum:
    return moment_sum(_weighing(bar, loads), (reference_m, 0.0, 0.0))


def _corners(load: Hung | None) -> list[Vector]:
    """Two opposite corners of the box that a part fills."""
    if load is None:
        return []
    at_m, half = load.part.at_m, load.shape.reach_m
    low = (-half((-1.0, 0.0, 0.0)), -half((0.0, -1.0, 0.0)), -half((0.0, 0.0, -1.0)))
    high = (half((1.0, 0.0, 0.0)), half((0.0, 1.0, 0.0)), half((0.0, 0.0, 1.0)))
    return [(at_m[0] + end[0], at_m[1] + end[1], at_m[2] + end[2]) for end in (low, high)]
