"""One changed scene that comes out another way than the one that was asked about."""

from __future__ import annotations

from collections.abc import Iterator

from lab.files import Build
from lab.lesson.asked import Asked, Side
from lab.lesson.contrast import HALF_AS_FAR, HALF_AS_HEAVY, NO_WEIGHT, WOULD_GO, Contrast, nearer, weighed, weightless
from lab.lesson.messages import Message, message, msg
from lab.lesson.resting import pivot_of, with_pivot_at
from lab.lesson.situation import situation_of
from lab.mechanics import moment_sum, turn_about

AT_MIDDLE = msg("What if it rested on its balance point?")

_STILL_WENT: dict[Side, str] = {
    "left": msg("The left end would still go down."),
    "right": msg("The right end would still go down."),
    "level": msg("It would still stay level."),
}


def side_contrast(asked: Asked, *, deciding: str) -> Contrast | None:
    """Return the scene with one thing changed; None where there is nothing to change.

    deciding: the row that decides.
    """
    tried = [_shown(asked, label, build) for label, build in _changes(asked, deciding)]
    # The best contrast is one that comes out another way than the scene itself.
    return next((each for each in tried if each.goes != asked.truth), tried[0] if tried else None)


def _changes(asked: Asked, deciding: str) -> Iterator[tuple[Message, Build]]:
    build, pivot = asked.build, pivot_of(asked.build)
    beam = situation_of(build).beam
    if beam is None or deciding != beam.name:
        yield message(HALF_AS_FAR, part=deciding), nearer(build, deciding, pivot.at_m)
        yield message(HALF_AS_HEAVY, part=deciding), weighed(build, deciding, times=0.5)
    if beam is not None and len(build.all_parts) > 1:
        yield message(NO_WEIGHT, part=beam.name), weightless(build, beam.name)
    if asked.truth != "level":
        yield message(AT_MIDDLE), with_pivot_at(build, moment_sum(build.all_parts).balance_point_m[0])


def _shown(asked: Asked, label: Message, build: Build) -> Contrast:
    goes = turn_about(build.all_parts, pivot_of(build)).goes
    sentences = _STILL_WENT if goes == asked.truth else WOULD_GO
    return Contrast(
        label=label,
        build=build,
        balance_point_m=moment_sum(build.all_parts).balance_point_m[0],
        goes=goes,
        happened=message(sentences[goes]),
    )
