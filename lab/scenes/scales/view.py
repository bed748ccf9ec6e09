"""A moment of a body on scales as it is to be drawn."""

from __future__ import annotations

from dataclasses import dataclass, replace

from lab.mechanics import PadMotion, Part
from lab.scenes.readings import Readings
from lab.scenes.views.body import Body
from lab.simulation.benches.scales import Scale, ScalesBench
from lab.ui.geometry import Point
from lab.ui.look import Look

LOAD, SCALE, REFERENCE = "load-", "scale-", "reference"


@dataclass(frozen=True, slots=True, kw_only=True)
class ScalesGhost:
    """A weight on its way. at_m: along and across, None while it is off the body.  pointer: where it is held."""

    part: Part
    at_m: tuple[float, float] | None
    pointer: Point | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Moment:
    """Where the body is between two ticks, and what the windows show.

    raised_m: how far over the scales.  motion: once it tips.  readings_kg: of each scale.
    """

    raised_m: float
    motion: PadMotion
    readings_kg: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ScalesView:
    """A moment of the bench as it is to be drawn.

    picked: key of the part, scale or line that is picked; carried: of what is being moved by a pointer.
    ghost: a weight on its way.  told: whether balance point, reference line and the like may be seen.
    foot_px: height at the lower edge that something else covers.
    """

    bench: ScalesBench
    look: Look
    readings: Readings
    moment: Moment
    picked: str = ""
    carried: str = ""
    ghost: ScalesGhost | None = None
    told: bool = False
    foot_px: float = 0.0

    @property
    def three(self) -> bool:
        """Whether it stands on three scales, and is seen from above too."""
        return len(self.bench.scales) == 3

    @property
    def tips(self) -> bool:
        """Whether it is tipping, or has."""
        return self.bench.tipping is not None


def load_key(number: int) -> str:
    """The key under which a part is grabbed and spoken of."""
    return f"{LOAD}{number}"


def scale_key(scale: Scale) -> str:
    """The key under which a scale is grabbed and spoken of."""
    return f"{SCALE}{scale.id}"


def moment_between(previous: ScalesBench, bench: ScalesBench, fraction: float) -> Moment:
    """What to draw at a fraction of the way between two ticks."""
    same = len(previous.scales) == len(bench.scales) and previous.held == bench.held
    before = previous if same and (previous.tipping is None) == (bench.tipping is None) else bench

    def part_way(first: float, second: float) -> float:
        return first + fraction * (second - first)

    motion = replace(
        bench.motion,
        angle_rad=part_way(before.motion.angle_rad, bench.motion.angle_rad),
        x_m=part_way(before.motion.x_m, bench.motion.x_m),
        z_m=part_way(before.motion.z_m, bench.motion.z_m),
    )
    pairs = zip(before.readings_kg, bench.readings_kg, strict=True)
    return Moment(
        raised_m=part_way(before.lift_m, bench.lift_m),
        motion=motion,
        readings_kg=tuple(part_way(first, second) for first, second in pairs),
    )


def window(view: ScalesView, number: int) -> str:
    """What the window of a scale shows; a question mark before the body is let down, unless all is to be seen."""
    bench, words = view.bench, view.look.words
    if not bench.held:
        return reading(view, view.moment.readings_kg[number])
    if bench.view != "all":
        return "?"
    reactions = bench.reactions_kg
    return words.say("tips") if reactions is None else reading(view, reactions[number])


def reading(view: ScalesView, mass_kg: float) -> str:
    """What a scale shows for a mass, with its unit: to one decimal of a gram, or as its units are always written."""
    units, words = view.readings.units, view.look.words
    number = words.number(units.from_kg(mass_kg), decimals(view))
    return words.say("{number} {unit}", number=number, unit=units.weight_word)


def decimals(view: ScalesView) -> int:
    """Of a reading: one more than of a weight that is given in whole ones."""
    return max(1, view.readings.fineness.weight)


def body_on_scales(bench: ScalesBench, ghost: ScalesGhost | None = None) -> Body:
    """The body that views draw; a weight on its way is part of it once it has a place."""
    parts = bench.parts
    looks = {load.name: load.look for load in bench.loads if load.look is not None}
    if ghost is not None and ghost.at_m is not None:
        parts = (*parts, replace(ghost.part, at_m=(*ghost.at_m, ghost.part.at_m[2])))
        looks[ghost.part.name] = "weight"
    bar = bench.bar
    return Body(
        name=bench.title,
        parts=parts,
        looks=looks,
        bar_name="" if bar is None else bar.name,
        bar_depth_m=0.0 if bar is None else bar.depth_m,
    )
