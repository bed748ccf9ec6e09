"""The benches of free build by name: what each starts with, and how it goes into a build file and out of one."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from lab.files import Bench, Build
from lab.simulation.benches.bar_builds import build_from_hanging_bar, hanging_bar_from_build, workshop_bar
from lab.simulation.benches.hanging_bar import HangingBar
from lab.simulation.benches.mobile import Mobile
from lab.simulation.benches.mobile_builds import build_from_mobile, mobile_from_build, workshop_mobile
from lab.simulation.benches.plate import HungPlate
from lab.simulation.benches.plate_builds import build_from_plate, plate_from_build, workshop_plate
from lab.simulation.benches.poles import hangable
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
        name="plate",
        title=msg("Hung plate"),
        note=msg("cut any outline, hang it, draw plumb lines"),
        state=HungPlate,
        start=workshop_plate,
        take=plate_from_build,
        give=build_from_plate,
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
)

BENCHES: Mapping[Bench, BenchKind] = MappingProxyType({kind.name: kind for kind in _KINDS})
"""Every bench that there is, in the order in which they are offered."""


def kind_of(state: object) -> BenchKind:
    """The bench that a state stands on."""
    return next(kind for kind in _KINDS if isinstance(state, kind.state))


def bench_for(build: Build) -> BenchKind:
    """The bench that a build goes on: the one it names, else what it holds tells."""
    name: Bench = build.bench or ("scales" if build.supports else "bar")
    return BENCHES.get(name, BENCHES["bar"])
