"""Where a build rests, on its pivot or on a finger, and which end then goes down."""

from __future__ import annotations

from dataclasses import replace

from lab.files import Build
from lab.lesson.asked import Side
from lab.mechanics import Pivot, turn_about


def goes_at(build: Build, at_m: float, *, pad_half_m: float) -> Side:
    """Return which end of a build drops on a finger at a place, or `level` where it stays.

    pad_half_m: half the width of the finger's pad.
    """
    finger = Pivot(at_m=at_m, pad_m=pad_half_m)
    return turn_about(build.all_parts, finger).goes


def pivot_of(build: Build) -> Pivot:
    """Return the pivot of a build.  Raises ValueError where there is none."""
    if build.pivot is None:
        raise ValueError("a side question needs a pivot; add one to its scene")
    return build.pivot


def with_pivot_at(build: Build, at_m: float) -> Build:
    """Return the build with its pivot elsewhere."""
    return replace(build, pivot=replace(pivot_of(build), at_m=at_m))
