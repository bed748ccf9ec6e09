"""What is so: the answers, computed by the mechanics and never read from a lesson."""

from __future__ import annotations

from dataclasses import replace

from lab.files import Build
from lab.lesson.asked import Answer, Side
from lab.lesson.lesson import Ask
from lab.mechanics import Pivot, moment_sum, turn_about


def truth_of(kind: Ask, build: Build) -> Answer:
    """Return the answer to a question about a build: the end that drops, or the balance point in metres.

    Raises MechanicsError where the parts are no body, and ValueError for a side question without a pivot.
    """
    if kind == "place":
        return moment_sum(build.all_parts).balance_point_m[0]
    return turn_about(build.all_parts, pivot_of(build)).goes


def goes_at(build: Build, at_m: float, *, pad_half_m: float) -> Side:
    """Return which end of a build drops on a finger at a place, or `level` where it stays.

    pad_half_m: half the width of the finger's pad.
    """
    finger = Pivot(at_m=at_m, pad_m=pad_half_m)
    return turn_about(build.all_parts, finger).goes


def pivot_of(build: Build) -> Pivot:
    """Return the pivot of a side question's build.  Raises ValueError where there is none."""
    if build.pivot is None:
        raise ValueError("a side question needs a pivot; add one to its scene")
    return build.pivot


def with_pivot_at(build: Build, at_m: float) -> Build:
    """Return the build with its pivot elsewhere."""
    return replace(build, pivot=replace(pivot_of(build), at_m=at_m))
