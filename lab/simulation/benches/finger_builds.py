"""A tool on a finger, out of a saved build."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from lab.files import Bar, Build
from lab.mechanics import MechanicsError, Part, extent_m
from lab.simulation.benches.finger import FLOOR_DROP, PAD_HALF_M, FingerTool
from lab.simulation.benches.unfit import UnfitBuildError
from lab.simulation.refused import Refused, msg

ROD_DEPTH = 0.02
"""How thick a thin rod lies on the finger, as a share of its length: as a bar whose depth is not stated."""

NO_LENGTH = Refused(template=msg("This build has no length that a finger could go under."))


@dataclass(frozen=True, slots=True, kw_only=True)
class Lie:
    """How a tool lies: see `FingerTool`."""

    left_m: float
    right_m: float
    underside_m: float
    floor_m: float


def lie_of(parts: tuple[Part, ...], *, bar: Bar | None = None) -> Lie:
    """How parts lie on a finger.  bar: the one among them, if any.  Raises UnfitBuildError where nothing is long."""
    spans_m = [span_m(part) for part in parts if not part.cut]
    left_m = min((left for left, _ in spans_m), default=0.0)
    right_m = max((right for _, right in spans_m), default=0.0)
    if not right_m > left_m:
        raise UnfitBuildError(NO_LENGTH)
    underside_m = -bar.depth_m / 2 if bar is not None else _underside_m(parts)
    bottoms_m = (part.at_m[2] - extent_m(part.shape)[2] / 2 for part in parts)
    floor_m = min(underside_m, *bottoms_m) - FLOOR_DROP * (right_m - left_m)
    return Lie(left_m=left_m, right_m=right_m, underside_m=underside_m, floor_m=floor_m)


def span_m(part: Part) -> tuple[float, float]:
    """From where to where a part reaches, along."""
    half_m = extent_m(part.shape)[0] / 2
    return part.at_m[0] - half_m, part.at_m[0] + half_m


def finger_from_build(build: Build, *, finger_at_m: float | None = None, pad_half_m: float | None = None) -> FingerTool:
    """The build as one stiff tool lying level on a finger, held, with nothing guessed.

    finger_at_m: the middle of the pad, along; left out, the build's pivot, else the tool's middle.
    pad_half_m: half the pad's width; left out, the build's own pad, else 3 mm.
    Raises UnfitBuildError where nothing is long enough, or mechanics cannot use the parts.
    """
    build = build.loose()
    parts = build.all_parts
    lie = lie_of(parts, bar=build.bar)
    left_m, right_m = lie.left_m, lie.right_m
    if finger_at_m is None:
        finger_at_m = build.pivot.at_m if build.pivot else (left_m + right_m) / 2
    if pad_half_m is None:
        pad_half_m = (build.pivot.pad_m if build.pivot else 0.0) or PAD_HALF_M
    state = FingerTool(
        parts=parts,
        looks=build.looks,
        left_m=left_m,
        right_m=right_m,
        underside_m=lie.underside_m,
        floor_m=lie.floor_m,
        finger_at_m=min(max(finger_at_m, left_m), right_m),
        pad_half_m=pad_half_m,
        title=build.title,
        units=build.units,
        view=build.view,
        reference_m=build.reference_m[0],
    )
    _check_sums(state)
    return state


def _underside_m(parts: Iterable[Part]) -> float:
    """The lower face of what the finger slides along: the longest part."""
    longest = max((part for part in parts if not part.cut), key=lambda part: extent_m(part.shape)[0])
    along_m, _, depth_m = extent_m(longest.shape)
    return longest.at_m[2] - (depth_m or ROD_DEPTH * along_m) / 2


def _check_sums(state: FingerTool) -> None:
    """Whatever the bench will be asked for later must have an answer now."""
    try:
        _ = state.sum, state.released()
    except MechanicsError as error:
        raise UnfitBuildError(
            Refused(template=msg("This build can't lie on a finger: {why}."), values={"why": str(error)})
        ) from error
