"""One thing changed: the same scene with one part heavier, lighter or elsewhere, and what that does."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from lab.files import Build
from lab.lesson.asked import Answer, Asked, Side
from lab.lesson.matching import Fit
from lab.lesson.messages import Message, length, message, msg
from lab.lesson.situation import situation_of
from lab.lesson.truth import goes_at, pivot_of, truth_of, with_pivot_at
from lab.mechanics import Part, moment_sum

FEATHER_KG = 1e-9
"""What stands for no weight: a microgram.  The mechanics take no part of 0 kg, and this moves no shown figure."""

HEAVY = 2.0
"""How many times as heavy a part becomes; enough to move the balance point by more than any tolerance."""

NO_WEIGHT = msg("What if the {part} had no weight?")
TWICE_AS_HEAVY = msg("What if the {part} weighed twice as much?")
HALF_AS_FAR = msg("What if the {part} sat half as far out?")
HALF_AS_HEAVY = msg("What if the {part} weighed half as much?")
AT_MIDDLE = msg("What if it rested on its balance point?")

_WEIGHT_BLIND = frozenset(
    ("plain_mean", "middle", "at_heaviest", "half_way_to_heaviest", "outer_middle", "equal_weight", "swapped")
)
"""Ways that the weights as such do not sway enough: making a part heavier moves the truth and not their answer."""

_WENT: dict[Side, str] = {
    "left": msg("Then the left end would go down."),
    "right": msg("Then the right end would go down."),
    "level": msg("Then it would stay level."),
}
_STILL_WENT: dict[Side, str] = {
    "left": msg("The left end would still go down."),
    "right": msg("The right end would still go down."),
    "level": msg("It would still stay level."),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Contrast:
    """The same picture with one thing changed.

    label: the question it asks.  build: the changed scene, whole.  balance_point_m: along, in metres.
    goes: which end drops in the changed scene where it rests now.  happened: what that shows, as a sentence.
    """

    label: Message
    build: Build
    balance_point_m: float
    goes: Side
    happened: Message


def contrast_for(asked: Asked, value: Answer, fit: Fit | None, *, deciding: str) -> Contrast | None:
    """Return one changed scene that shows what the answer left out; None where there is nothing to change.

    fit: the one way of thinking that the answer fits, if one does.  deciding: the row that decides.
    """
    if isinstance(value, float):
        return _place_contrast(asked, value, fit)
    tried = [_shown(asked, label, build) for label, build in _side_changes(asked, deciding)]
    # The best contrast is one that comes out another way than the scene itself.
    return next((each for each in tried if each.goes != asked.truth), tried[0] if tried else None)


def _place_contrast(asked: Asked, value: float, fit: Fit | None) -> Contrast | None:
    build = asked.build
    names = [part.name for part in build.all_parts]
    beam = situation_of(build).beam
    if len(names) == 1:
        changed, label = weighed(build, names[0], times=HEAVY), message(TWICE_AS_HEAVY, part=names[0])
    elif fit is not None and fit.way in ("bar_left_out", "part_left_out", "bar_below_only"):
        left_out = fit.part or names[0]
        changed, label = weighed(build, left_out, times=HEAVY), message(TWICE_AS_HEAVY, part=left_out)
    elif beam is None or (fit is not None and fit.way in _WEIGHT_BLIND):
        heaviest = max(build.parts, key=lambda part: part.mass_kg).name
        changed, label = weighed(build, heaviest, times=HEAVY), message(TWICE_AS_HEAVY, part=heaviest)
    else:
        changed, label = weightless(build, beam.name), message(NO_WEIGHT, part=beam.name)
    balance_m = moment_sum(changed.all_parts).balance_point_m[0]
    stays = abs(balance_m - float(asked.truth)) < (asked.tolerance_m or 0.0) / 10
    template = msg("It would still balance at {place}.") if stays else msg("Then it would balance at {place}.")
    return Contrast(
        label=label,
        build=changed,
        balance_point_m=balance_m,
        goes=goes_at(changed, value, pad_half_m=asked.pad_half_m),
        happened=message(template, place=length(balance_m, decimals=asked.decimals)),
    )


def _side_changes(asked: Asked, deciding: str) -> Iterator[tuple[Message, Build]]:
    build, pivot = asked.build, pivot_of(asked.build)
    beam = situation_of(build).beam
    if beam is None or deciding != beam.name:
        yield message(HALF_AS_FAR, part=deciding), _nearer(build, deciding, pivot.at_m)
        yield message(HALF_AS_HEAVY, part=deciding), weighed(build, deciding, times=0.5)
    if beam is not None and len(build.all_parts) > 1:
        yield message(NO_WEIGHT, part=beam.name), weightless(build, beam.name)
    if asked.truth != "level":
        yield message(AT_MIDDLE), with_pivot_at(build, moment_sum(build.all_parts).balance_point_m[0])


def _shown(asked: Asked, label: Message, build: Build) -> Contrast:
    goes = truth_of("side", build)
    if isinstance(goes, float):
        raise TypeError("a side question's truth is a side")
    sentences = _STILL_WENT if goes == asked.truth else _WENT
    return Contrast(
        label=label,
        build=build,
        balance_point_m=moment_sum(build.all_parts).balance_point_m[0],
        goes=goes,
        happened=message(sentences[goes]),
    )


def weighed(build: Build, name: str, *, times: float) -> Build:
    """Return the build with one part, or the bar, so many times as heavy."""
    return _with_mass(build, name, {part.name: part.mass_kg for part in build.all_parts}[name] * times)


def weightless(build: Build, name: str) -> Build:
    """Return the build with one part, or the bar, of no weight to speak of."""
    return _with_mass(build, name, FEATHER_KG)


def _with_mass(build: Build, name: str, mass_kg: float) -> Build:
    if build.bar is not None and build.bar.name == name:
        return replace(build, bar=replace(build.bar, mass_kg=mass_kg))
    return _with_part(build, name, lambda part: replace(part, mass_kg=mass_kg))


def _nearer(build: Build, name: str, pivot_m: float) -> Build:
    def moved(part: Part) -> Part:
        along, across, up = part.at_m
        return replace(part, at_m=((along + pivot_m) / 2, across, up))

    return _with_part(build, name, moved)


def _with_part(build: Build, name: str, change: Callable[[Part], Part]) -> Build:
    return replace(build, parts=tuple(change(part) if part.name == name else part for part in build.parts))
