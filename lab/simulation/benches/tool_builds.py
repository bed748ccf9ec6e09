"""Tools that are built on a finger, out of saved builds and into them, and the tool that the lab starts with."""

from __future__ import annotations

from dataclasses import fields, replace
from types import MappingProxyType

from lab.files import Bar, Build, View
from lab.mechanics import Cylinder, Part, Pivot, Turned
from lab.simulation.benches.finger import FingerTool
from lab.simulation.benches.finger_builds import finger_from_build
from lab.simulation.benches.groups import as_groups
from lab.simulation.benches.tool import MOST_PARTS, BuiltTool
from lab.simulation.benches.tool_parts import KINDS
from lab.simulation.benches.unfit import UnfitBuildError
from lab.simulation.refused import Refused, msg

AIRFRAME = Refused(template=msg("This build flies: the airframe bench takes it."))
AT_AN_ANGLE = Refused(template=msg("This build has parts at an angle: the airframe bench takes it."))
TOO_MANY = Refused(template=msg("This build has more parts than can be told apart on a finger."))


def tool_from_build(build: Build) -> BuiltTool:
    """The build as a tool on a finger, held, with nothing guessed. Parts get the ids 1, 2, … in file order.

    The finger stands at the build's pivot, else under the tool's middle. A bar lies there as a round pole as thick
    as it is deep.  Raises UnfitBuildError for an airframe, parts at an angle, too many of them, or what
    cannot lie on a finger.
    """
    build = build.loose()
    if build.is_airframe:
        raise UnfitBuildError(AIRFRAME)
    if any(isinstance(part.shape, Turned) for part in build.parts):
        raise UnfitBuildError(AT_AN_ANGLE)
    if build.bar is not None:
        looks = MappingProxyType({build.bar.name: "pole", **build.looks})
        build = replace(build, bar=None, parts=(_pole_of(build.bar), *build.parts), looks=looks)
    if len(build.parts) > MOST_PARTS:
        raise UnfitBuildError(TOO_MANY)
    lying = finger_from_build(build)
    held = {each.name: getattr(lying, each.name) for each in fields(FingerTool)}
    count = len(build.parts)
    return BuiltTool(**held, ids=tuple(range(1, count + 1)), next_id=count + 1)


def build_from_tool(state: BuiltTool) -> Build:
    """The build to be saved. Reading it back gives the same bench, held, with nothing guessed."""
    parts, groups = as_groups(state.parts)
    return Build(
        title=state.title,
        units=state.units,
        reference_m=(state.reference_m, 0.0, 0.0),
        view=state.view,
        parts=parts,
        groups=groups,
        pivot=Pivot(at_m=state.finger_at_m, pad_m=state.pad_half_m),
        looks=MappingProxyType(dict(state.looks)),
    )


def workshop_tool(*, view: View = "plain") -> BuiltTool:
    """The tool that free build starts with: a boat hook, the finger under its middle, its right end the heavier."""
    fitted = (("pole-100", "pole", 0.5), ("hook", "hook", 0.97), ("grip", "grip", 0.1))
    build = Build(
        title="Boat hook",
        view=view,
        parts=tuple(KINDS[kind].part(name, at_m) for kind, name, at_m in fitted),
        looks=MappingProxyType({name: look for kind, name, _ in fitted if (look := KINDS[kind].look) is not None}),
    )
    return tool_from_build(build)


def _pole_of(bar: Bar) -> Part:
    shape = Cylinder(radius_m=bar.depth_m / 2, length_m=bar.length_m)
    return replace(bar.as_part(), shape=shape)
