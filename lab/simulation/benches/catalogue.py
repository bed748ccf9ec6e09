"""The benches of free build by name: what each starts with, and how it goes into a build file and out of one."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from lab.files import Bench, Build
from lab.mechanics import Polygon, Turned
from lab.simulation.benches.airframe import AirframeBench
from lab.simulation.benches.airframe_builds import airframe_from_build, build_from_airframe, workshop_airframe
from lab.simulation.benches.bar_builds import build_from_hanging_bar, hanging_bar_from_build, workshop_bar
from lab.simulation.benches.hanging_bar import HangingBar
from lab.simulation.benches.mobile import Mobile
from lab.simulation.benches.mobile_builds import build_from_mobile, mobile_from_build, workshop_mobile
from lab.simulation.benches.plate import HungPlate
from lab.simulation.benches.plate_builds import build_from_plate, plate_from_build, workshop_plate
from lab.simulation.benches.poles import hangable
from lab.simulation.benches.scales import ScalesBench
from lab.simulation.benches.scales_builds import build_from_scales, scales_from_build, workshop_scales
from lab.simulation.benches.tool import BuiltTool
from lab.simulation.benches.tool_builds import build_from_tool, tool_from_build, workshop_tool
from lab.simulation.benches.two_fingers import TwoFingers
from lab.simulation.benches.two_fingers_builds import build_from_two_fingers, two_fingers_from_build, workshop_pole
from lab.simulation.refused import msg

if TYPE_CHECKING:
    from lab.simulation.benches import BenchState


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchKind:
    """One bench.

    name: as `bench` has it in a build file.  title, note: what it is called, and what one does there.
    state: the class of its states.  start: what it holds when nobody has built anything yet.
    take: the state that a build makes; raises UnfitBuildError.  give: the build that a state makes.
    """

    name: Bench
    title: str
    note: str
    state: type[BenchState]
    start: Callable[[], BenchState]
    take: Callable[[Build], BenchState]
    give: Callable[[Any], Build]

    def build_of(self, state: BenchState) -> Build:
        """The build to be saved, which says on what it stands."""
        return replace(self.give(state), bench=self.name)


_KINDS = (
    BenchKind(
        name="bar",
        title=msg("Hanging bar"),
        note=msg("hang weights from a bar"),
        state=HangingBar,
        start=workshop_bar,
        take=lambda build: hanging_bar_from_build(hangable(build)),
        give=build_from_hanging_bar,
    ),
    BenchKind(
        name="tool",
        title=msg("Tool on a finger"),
        note=msg("build a lopsided tool, find where it stays"),
        state=BuiltTool,
        start=workshop_tool,
        take=tool_from_build,
        give=build_from_tool,
    ),
    BenchKind(
        name="plate",
        title=msg("Hung plate"),
        note=msg("cut any outline, hang it, draw plumb lines"),
        state=HungPlate,
        start=workshop_plate,
        take=plate_from_build,
        give=build_from_plate,
    ),
    BenchKind(
        name="scales",
        title=msg("Scales"),
        note=msg("see what two or three scales read"),
        state=ScalesBench,
        start=workshop_scales,
        take=scales_from_build,
        give=build_from_scales,
    ),
    BenchKind(
        name="mobile",
        title=msg("Mobile"),
        note=msg("hang bars from bars until every one is level"),
        state=Mobile,
        start=workshop_mobile,
        take=mobile_from_build,
        give=build_from_mobile,
    ),
    BenchKind(
        name="fingers",
        title=msg("Two fingers"),
        note=msg("slide them in under anything"),
        state=TwoFingers,
        start=workshop_pole,
        take=two_fingers_from_build,
        give=build_from_two_fingers,
    ),
    BenchKind(
        name="airframe",
        title=msg("Airframe"),
        note=msg("see it from three sides, hang it, weigh it"),
        state=AirframeBench,
        start=workshop_airframe,
        take=airframe_from_build,
        give=build_from_airframe,
    ),
)

BENCHES: Mapping[Bench, BenchKind] = MappingProxyType({kind.name: kind for kind in _KINDS})
"""Every bench that there is, in the order in which they are offered."""


def kind_of(state: object) -> BenchKind:
    """The bench that a state stands on."""
    return next(kind for kind in _KINDS if isinstance(state, kind.state))


def bench_for(build: Build) -> BenchKind:
    """The bench that a build goes on: the one it names, else what it holds tells."""
    return BENCHES.get(build.bench or _told_by(build), BENCHES["bar"])


def _told_by(build: Build) -> Bench:
    if build.is_airframe:
        return "airframe"
    if build.supports:
        return "scales"
    if build.bar is not None:
        return "bar"
    if build.pivot is not None:
        return "mobile"
    if any(isinstance(part.shape, Polygon) for part in build.loads):
        return "plate"
    # What has parts at an angle is seen from three sides; it cannot lie along a finger.
    return "airframe" if any(isinstance(part.shape, Turned) for part in build.loads) else "tool"
