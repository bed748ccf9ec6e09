"""Hanging bars out of saved builds and into them, and the bars that the lab starts with."""

from __future__ import annotations

from types import MappingProxyType

from lab.files import Bar, Build, View
from lab.mechanics import MechanicsError, Part, Pivot
from lab.simulation.benches.groups import as_groups
from lab.simulation.benches.hanging_bar import MOST_WEIGHTS, HangingBar, Hung
from lab.simulation.benches.unfit import UnfitBuildError
from lab.simulation.refused import Refused, msg

PIN_UP_M = 0.01
"""How far above the bar's middle line the pin goes through, m, where a build has no pivot of its own. A bar
in balance then comes back to level by itself; lower it would only creep, higher and it tips too little."""

NO_BAR = Refused(template=msg("This build has no bar to hang. It can lie on a finger instead."))
ON_SUPPORTS = Refused(template=msg("This build stands on supports, so it can't hang."))
TOO_MANY = Refused(template=msg("This build has more weights than the bar has room for."))
PIVOT_OFF_BAR = Refused(template=msg("The pivot of this build is not on its bar."))


def hanging_bar_from_build(build: Build) -> HangingBar:
    """The bench as the build says, held, with nothing guessed. Weights get the ids 1, 2, … in file order.

    A build without a pivot hangs by the bar's middle. Arms are along, so of the reference only that counts.
    Raises UnfitBuildError where there is no bar, a hole, supports, too many parts, or something off the bar.
    """
    build = build.loose()
    if build.bar is None:
        raise UnfitBuildError(NO_BAR)
    if build.supports:
        raise UnfitBuildError(ON_SUPPORTS)
    if len(build.parts) > MOST_WEIGHTS:
        raise UnfitBuildError(TOO_MANY)
    bar = build.bar
    pivot = build.pivot or Pivot(at_m=bar.left_m + bar.length_m / 2, up_m=PIN_UP_M)
    if not bar.left_m <= pivot.at_m <= bar.right_m:
        raise UnfitBuildError(PIVOT_OFF_BAR)
    state = HangingBar(
        bar=bar,
        weights=tuple(
            _weight(number, part, bar, build.looks.get(part.name)) for number, part in enumerate(build.parts, start=1)
        ),
        pivot=pivot,
        reference_m=build.reference_m[0],
        title=build.title,
        units=build.units,
        view=build.view,
        next_id=len(build.parts) + 1,
    )
    _check_sums(state)
    return state


def build_from_hanging_bar(state: HangingBar) -> Build:
    """The build to be saved. Reading it back gives the same bench, held, with nothing guessed."""
    looks = {weight.name: weight.look for weight in state.weights if weight.look is not None}
    parts, groups = as_groups(weight.part for weight in state.weights)
    return Build(
        title=state.title,
        units=state.units,
        reference_m=(state.reference_m, 0.0, 0.0),
        view=state.view,
        bar=state.bar,
        parts=parts,
        groups=groups,
        pivot=state.pivot,
        looks=MappingProxyType(looks),
    )


def workshop_bar(*, view: View = "plain") -> HangingBar:
    """The bar that free build starts with: 100 cm, 150 g, three brass weights, its right end the heavier."""
    hung = ((0.200, 0.15), (0.100, 0.72), (0.050, 0.90))
    empty = empty_bar(view=view)
    weights = tuple(
        Hung(id=number, name=f"brass {mass_kg * 1000:.4g}", mass_kg=mass_kg, at_m=at_m)
        for number, (mass_kg, at_m) in enumerate(hung, start=1)
    )
    return HangingBar(
        bar=empty.bar,
        weights=weights,
        pivot=Pivot(at_m=0.40, up_m=PIN_UP_M),
        view=view,
        next_id=len(weights) + 1,
    )


def empty_bar(*, view: View = "plain") -> HangingBar:
    """A bar of 100 cm and 150 g with nothing on it, hung by its middle."""
    bar = Bar(name="bar", length_m=1.0, mass_kg=0.150, left_m=0.0, depth_m=0.035)
    return HangingBar(bar=bar, pivot=Pivot(at_m=0.50, up_m=PIN_UP_M), view=view)


def _weight(number: int, part: Part, bar: Bar, look: str | None) -> Hung:
    along_m, across_m, up_m = part.at_m
    if part.cut:
        raise UnfitBuildError(
            Refused(template=msg("{name} is a hole, and a hole can't hang."), values={"name": part.name})
        )
    if not bar.left_m <= along_m <= bar.right_m:
        raise UnfitBuildError(Refused(template=msg("{name} is off the bar."), values={"name": part.name}))
    return Hung(
        id=number,
        name=part.name,
        mass_kg=part.mass_kg,
        at_m=along_m,
        hold=part.hold,
        across_m=across_m,
        up_m=up_m,
        shape=part.shape,
        inertia_kg_m2=part.inertia_kg_m2,
        mass_doubt_kg=part.mass_doubt_kg,
        at_doubt_m=part.at_doubt_m,
        set_name=part.set_name,
        look=look,
    )


def _check_sums(state: HangingBar) -> None:
    """Whatever the bench will be asked for later must have an answer now."""
    try:
        _ = state.sum, state.turn, state.released()
    except MechanicsError as error:
        raise UnfitBuildError(
            Refused(template=msg("This build can't hang: {why}."), values={"why": str(error)})
        ) from error
