"""The course as the program has it: lessons off the shelf, rows of the record, and the time of day."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime

from lab.app.paths import Paths
from lab.app.record import Record
from lab.app.shelf import shelf_of
from lab.attempts import Attempt
from lab.files import FileFaults
from lab.lesson import Lesson
from lab.lesson.course import Course, Row, course
from lab.lesson.course_gain import Gain, gain, probes
from lab.lesson.course_mixed import mixed


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """Where one learner is.

    lessons: those that can be taken.  faults: of those that cannot.  again: what has come back, as a lesson; None
    where nothing has.  probed: how many probes came to their end.  probed_last: whether nothing was answered since.
    """

    lessons: tuple[Lesson, ...]
    faults: tuple[FileFaults, ...]
    course: Course
    again: Lesson | None
    gain: Gain
    probed: int
    probed_last: bool


def standing(paths: Paths, record: Record, learner: str, *, now_s: float) -> Standing:
    """Where a learner is now.  now_s: as `time.time` and `seconds_of` give it."""
    lessons, faults = shelf_of(paths).read_all()
    rows = rows_of(record.of(learner))
    so_far = course(lessons, rows, now_s=now_s)
    taken = probes(rows)
    met_s = [each.met_s for each in so_far.done if each.met_s is not None]
    return Standing(
        lessons=lessons,
        faults=faults,
        course=so_far,
        again=mixed(lessons, rows, so_far),
        gain=gain(rows),
        probed=len(taken),
        probed_last=bool(taken) and taken[-1][-1].at_s >= max(met_s, default=taken[-1][-1].at_s),
    )


def gain_of(record: Record, learner: str) -> Gain:
    """What has changed for a learner so far."""
    return gain(rows_of(record.of(learner)))


def rows_of(kept: Sequence[Attempt]) -> tuple[Row, ...]:
    """Attempts as a course takes them."""
    return tuple(
        Row(
            lesson=each.lesson,
            question=each.question,
            kind=each.kind,
            understood=each.understood,
            round=each.round,
            right=each.right,
            sure=each.sure,
            hints=each.hints,
            ways=each.ways,
            locked=each.locked,
            at_s=seconds_of(each.made_at),
        )
        for each in kept
    )


def seconds_of(time: str) -> float:
    """An ISO 8601 time in seconds, as `time.time` gives the present one.

    Without a zone it is UTC; what is no time is long ago.
    """
    try:
        read = datetime.fromisoformat(time)
    except ValueError:
        return 0.0
    return (read if read.tzinfo is not None else read.replace(tzinfo=UTC)).timestamp()
