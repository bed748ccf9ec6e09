"""Bodies on scales out of saved builds and into them, and the bar that the bench starts with."""

from __future__ import annotations

from types import MappingProxyType

from lab.files import Bar, Build, Support, View
from lab.mechanics import Box, MechanicsError, Part
from lab.simulation.benches.groups import as_groups
from lab.simulation.benches.hanging_bar import Hung
from lab.simulation.benches.scales import MOST_LOADS, Scale, ScalesBench
from lab.simulation.benches.scales_places import apart
from lab.simulation.benches.unfit import UnfitBuildError
from lab.simulation.refused import Refused, msg

NO_LENGTH = Refused(template=msg("This build has no length that scales could go under."))
NO_TRIANGLE = Refused(template=msg("The scales of this build are too near to each other, or in one line."))
TOO_MANY = Refused(template=msg("This build has more parts than the bench has room for."))

SCALE_NAMES = (msg("left scale"), msg("right scale"), msg("third scale"))
STANDS_AT = (0.15, 0.85)
"""Where two scales stand where a build says nothing: shares of its length."""


def scales_from_build(build: Build) -> ScalesBench:
    """The bench as the build says, held over its scales, nothing guessed.  Parts get the ids 1, 2, … in file order.

    A build without supports gets two scales, near its ends.  Arms are along, so of the reference only that counts.
    Raises UnfitBuildError where it is no length, has a hole or too many parts, or its scales can't hold a body.
    """
    build = build.loose()
    if len(build.parts) > MOST_LOADS:
        raise UnfitBuildError(TOO_MANY)
    if build.bar is None and not any(max(part.shape.extent_m[:2]) > 0.0 for part in build.parts):
        raise UnfitBuildError(NO_LENGTH)
    loads = tuple(_load(number, part, build) for number, part in enumerate(build.parts, start=1))
    state = ScalesBench(
        bar=build.bar,
        loads=loads,
        scales=_scales(build, loads),
        reference_m=build.reference_m[0],
        title=build.title,
        units=build.units,
        view=build.view,
        next_id=len(loads) + 1,
    )
    check(state)
    return state


def build_from_scales(state: ScalesBench) -> Build:
    """The build to be saved. Reading it back gives the same bench, held, with nothing guessed."""
    looks = {load.name: load.look for load in state.loads if load.look is not None}
    parts, groups = as_groups(load.part for load in state.loads)
    return Build(
        title=state.title,
        units=state.units,
        reference_m=(state.reference_m, 0.0, 0.0),
        view=state.view,
        bar=state.bar,
        parts=parts,
        groups=groups,
        supports=tuple(Support(name=scale.name, at_m=scale.at_m, friction=scale.friction) for scale in state.scales),
        looks=MappingProxyType(looks),
    )


def workshop_scales(*, view: View = "plain") -> ScalesBench:
    """What the bench starts with: a boom of 100 cm and 300 g on two scales, a camera and a nest box on it."""
    bar = Bar(name="boom", length_m=1.0, mass_kg=0.300, left_m=0.0, depth_m=0.03)
    loads = (
        Part(name="camera", mass_kg=0.400, at_m=(0.30, 0.0, 0.045), shape=Box((0.08, 0.06, 0.06))),
        Part(name="nest box", mass_kg=0.200, at_m=(0.70, 0.0, 0.075), shape=Box((0.10, 0.09, 0.12))),
    )
    supports = (Support(name="left scale", at_m=(0.20, 0.0, 0.0)), Support(name="right scale", at_m=(0.80, 0.0, 0.0)))
    looks = MappingProxyType({"camera": "camera", "nest box": "box"})
    return scales_from_build(
        Build(title="Camera boom", view=view, bar=bar, parts=loads, supports=supports, looks=looks)
    )


def check(state: ScalesBench) -> None:
    """Whatever the bench will be asked for later must have an answer now.  Raises UnfitBuildError."""
    if not apart(scale.at_m for scale in state.scales):
        raise UnfitBuildError(NO_TRIANGLE)
    try:
        _ = state.sum, state.at_rest()
    except MechanicsError as error:
        why = Refused(template=msg("This build can't stand on scales: {why}."), values={"why": str(error)})
        raise UnfitBuildError(why) from error


def _load(number: int, part: Part, build: Build) -> Hung:
    if part.cut:
        why = Refused(template=msg("{name} is a hole, and a hole can't be put on scales."), values={"name": part.name})
        raise UnfitBuildError(why)
    if build.bar is not None and not build.bar.left_m <= part.at_m[0] <= build.bar.right_m:
        raise UnfitBuildError(Refused(template=msg("{name} is off the bar."), values={"name": part.name}))
    return Hung(
        id=number,
        name=part.name,
        mass_kg=part.mass_kg,
        at_m=part.at_m[0],
        hold=part.hold,
        across_m=part.at_m[1],
        up_m=part.at_m[2],
        shape=part.shape,
        inertia_kg_m2=part.inertia_kg_m2,
        mass_doubt_kg=part.mass_doubt_kg,
        at_doubt_m=part.at_doubt_m,
        set_name=part.set_name,
        look=build.looks.get(part.name),
    )


def _scales(build: Build, loads: tuple[Hung, ...]) -> tuple[Scale, ...]:
    """The build's own supports, two of them from left to right; else two near the ends of what carries."""
    supports = build.supports
    if not supports:
        spare = tuple(Scale(id=number, name="", at_m=(0.0, 0.0, 0.0)) for number in (1, 2))
        left, right = ScalesBench(bar=build.bar, loads=loads, scales=spare).carrier_m
        supports = tuple(
            Support(name=name, at_m=(left + share * (right - left), 0.0, 0.0))
            for name, share in zip(SCALE_NAMES, STANDS_AT, strict=False)
        )
    if len(supports) == 2:
        supports = tuple(sorted(supports, key=lambda support: support.at_m[0]))
    return tuple(
        Scale(id=number, name=each.name, at_m=each.at_m, friction=each.friction)
        for number, each in enumerate(supports, start=1)
    )
