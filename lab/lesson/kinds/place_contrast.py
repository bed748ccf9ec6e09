"""One changed scene that shows what an answer about a balance point left out."""

from __future__ import annotations

from lab.files import Build
from lab.lesson.asked import Asked
from lab.lesson.contrast import HEAVY, NO_WEIGHT, NOT_CUT, TWICE_AS_HEAVY, Contrast, weighed, weightless
from lab.lesson.kinds.kind import Fit
from lab.lesson.messages import Message, length, message, msg
from lab.lesson.resting import goes_at
from lab.lesson.situation import situation_of
from lab.mechanics import moment_sum

_WEIGHT_BLIND = frozenset(
    ("plain_mean", "middle", "at_heaviest", "half_way_to_heaviest", "outer_middle", "equal_weight", "swapped")
)
"""Ways that the weights as such do not sway enough: making a part heavier moves the truth and not their answer."""


def place_contrast(asked: Asked, value: float, fit: Fit | None) -> Contrast:
    """Return the scene with one weight changed.

    fit: the one way of thinking that the answer fits, if one does.
    """
    changed, label = _change(asked.build, fit)
    balance_m = moment_sum(changed.all_parts).balance_point_m[0]
    stays = isinstance(asked.truth, float) and abs(balance_m - asked.truth) < (asked.tolerance_m or 0.0) / 10
    template = msg("It would still balance at {place}.") if stays else msg("Then it would balance at {place}.")
    return Contrast(
        label=label,
        build=changed,
        balance_point_m=balance_m,
        goes=goes_at(changed, value, pad_half_m=asked.pad_half_m),
        happened=message(template, place=length(balance_m, decimals=asked.decimals)),
    )


def _change(build: Build, fit: Fit | None) -> tuple[Build, Message]:
    # Without its plate a hole is nothing: where something is cut out, that is what is undone.
    hole = next((part.name for part in build.parts if part.cut), None)
    if hole is not None:
        return weightless(build, hole), message(NOT_CUT, part=hole)
    names = [part.name for part in build.all_parts]
    beam = situation_of(build).beam
    if len(names) > 1 and fit is not None and fit.way in ("bar_left_out", "part_left_out", "bar_below_only"):
        heavy = fit.part or names[0]
    elif len(names) > 1 and (beam is None or (fit is not None and fit.way in _WEIGHT_BLIND)):
        heavy = max(build.parts, key=lambda part: part.mass_kg).name
    elif len(names) == 1 or beam is None:
        heavy = names[0]
    else:
        return weightless(build, beam.name), message(NO_WEIGHT, part=beam.name)
    return weighed(build, heavy, times=HEAVY), message(TWICE_AS_HEAVY, part=heavy)
