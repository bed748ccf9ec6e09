"""Airframes out of saved builds and into them, and the one that the bench starts with."""

from __future__ import annotations

from types import MappingProxyType

from lab.files import Build, Support
from lab.mechanics import Box, Cylinder, MechanicsError, Part, Surface, flattened
from lab.simulation.benches.airframe import MOST_PARTS, AirframeBench, AirframePart
from lab.simulation.benches.airframe_weighing import AirframeWeighing
from lab.simulation.benches.groups import as_groups
from lab.simulation.benches.scales import Scale
from lab.simulation.benches.scales_places import apart
from lab.simulation.benches.unfit import UnfitBuildError
from lab.simulation.refused import Refused, msg

TOO_MANY = Refused(template=msg("This build has more parts than can be told apart on an airframe."))
WITH_BAR = Refused(template=msg("This build has a bar, which is no part of an airframe."))
EMPTY = Refused(template=msg("This build weighs nothing."))
NO_TRIANGLE = Refused(template=msg("The scales of this build are too near to each other, or in one line."))


def airframe_from_build(build: Build) -> AirframeBench:
    """The airframe as the build says, held, with nothing guessed. Parts get the ids 1, 2, … in file order.

    Its supports, where there are three, are where its scales stand.  Raises UnfitBuildError for a bar, too many parts,
    nothing that weighs, or scales that could hold nothing.
    """
    if build.bar is not None:
        raise UnfitBuildError(WITH_BAR)
    parts = (*build.parts, *flattened(build.groups))
    if len(parts) > MOST_PARTS:
        raise UnfitBuildError(TOO_MANY)
    if not parts:
        raise UnfitBuildError(EMPTY)
    state = AirframeBench(
        parts_on=tuple(_part(number, part, build.looks.get(part.name)) for number, part in enumerate(parts, start=1)),
        tanks=build.tanks,
        surfaces=build.surfaces,
        limits=build.limits,
        weighing=_weighing(build),
        reference_m=build.reference_m,
        title=build.title,
        units=build.units,
        view=build.view,
        next_id=len(parts) + 1,
    )
    check(state)
    return state


def build_from_airframe(state: AirframeBench) -> Build:
    """The build to be saved: its scales too, where it was weighed. Where it was hung by is not kept."""
    parts, groups = as_groups(each.part for each in state.parts_on)
    scales = () if state.weighing is None else state.weighing.scales
    return Build(
        title=state.title,
        units=state.units,
        reference_m=state.reference_m,
        view=state.view,
        parts=parts,
        groups=groups,
        tanks=state.tanks_now,
        surfaces=state.surfaces,
        limits=state.limits,
        supports=tuple(Support(name=scale.name, at_m=scale.at_m, friction=scale.friction) for scale in scales),
        looks=MappingProxyType({each.name: each.look for each in state.parts_on if each.look is not None}),
    )


def workshop_airframe() -> AirframeBench:
    """What the bench starts with: a hand-launched glider of 1 m, a battery in its nose."""
    parts = (
        Part("fuselage", 0.060, (0.40, 0.0, 0.0), Cylinder(radius_m=0.018, length_m=0.80)),
        Part("wing", 0.090, (0.29, 0.0, 0.02), Box((0.14, 1.0, 0.01))),
        Part("tail", 0.012, (0.77, 0.0, 0.01), Box((0.07, 0.30, 0.004))),
        Part("fin", 0.006, (0.77, 0.0, 0.06), Box((0.07, 0.004, 0.10))),
        Part("battery", 0.055, (0.06, 0.0, 0.0), Box((0.07, 0.03, 0.02))),
    )
    surfaces = (
        Surface(name="wing", root_chord_m=0.16, tip_chord_m=0.12, span_m=1.0, sweep_rad=0.0, at_m=(0.22, 0.0, 0.02)),
        Surface(name="tail", root_chord_m=0.08, tip_chord_m=0.06, span_m=0.30, sweep_rad=0.0, at_m=(0.73, 0.0, 0.01)),
        Surface(
            name="fin",
            root_chord_m=0.09,
            tip_chord_m=0.06,
            span_m=0.10,
            sweep_rad=0.2,
            at_m=(0.72, 0.0, 0.01),
            vertical=True,
        ),
    )
    looks = MappingProxyType({"fuselage": "fuselage", "battery": "battery"})
    return airframe_from_build(Build(title="Hand glider", parts=parts, surfaces=surfaces, looks=looks))


def check(state: AirframeBench) -> None:
    """Whatever the bench will be asked for later must have an answer now.  Raises UnfitBuildError."""
    try:
        _ = state.sum, state.doing_now("hang").released(), state.doing_now("weigh").released()
    except MechanicsError as error:
        why = Refused(template=msg("This build can't be hung and weighed: {why}."), values={"why": str(error)})
        raise UnfitBuildError(why) from error


def _part(number: int, part: Part, look: str | None) -> AirframePart:
    return AirframePart(
        id=number,
        name=part.name,
        mass_kg=part.mass_kg,
        at_m=part.at_m,
        shape=part.shape,
        inertia_kg_m2=part.inertia_kg_m2,
        hold=part.hold,
        cut=part.cut,
        mass_doubt_kg=part.mass_doubt_kg,
        at_doubt_m=part.at_doubt_m,
        set_name=part.set_name,
        look=look,
    )


def _weighing(build: Build) -> AirframeWeighing | None:
    """On the build's own three supports; None where it has not three."""
    if len(build.supports) != 3:
        return None
    if not apart(support.at_m for support in build.supports):
        raise UnfitBuildError(NO_TRIANGLE)
    first, second, third = (
        Scale(id=number, name=support.name, at_m=support.at_m, friction=support.friction)
        for number, support in enumerate(build.supports, start=1)
    )
    return AirframeWeighing(scales=(first, second, third))
