"""The bench that a question is shown on: a bar on its pin, a tool on a finger, or a scene that is only shown."""

from __future__ import annotations

from lab.files import Build
from lab.lesson import Asked, Explanation
from lab.lesson.forms import Answer
from lab.lesson.kinds import kind_of
from lab.lesson.kinds.attitude import Hook
from lab.screens.screen import Bench
from lab.simulation.benches.airframe_hanging import AirframeHanging
from lab.simulation.benches.bar_builds import hanging_bar_from_build
from lab.simulation.benches.finger_builds import finger_from_build
from lab.simulation.benches.held_scenes import HungScene, WeighedScene
from lab.simulation.benches.showing import Showing

_TURNING = ("side", "place", "weight", "arm")
"""Kinds whose body is let go on its pin or finger, and moves by the mechanics."""


def turns(asked: Asked) -> bool:
    """Whether its body is let go on a bench; an airframe, or what is on a pin and no bar, is only shown."""
    if asked.kind not in _TURNING:
        return False
    if asked.build.is_airframe:
        return False
    return asked.kind == "place" or asked.pad_half_m > 0 or asked.build.bar is not None


def bench_of(asked: Asked, value: Answer | None) -> Bench:
    """The body that is asked about with an answer carried out, held.  value: None before there is one."""
    if not turns(asked):
        return _shown(asked, asked.build)
    build = asked.build if value is None else kind_of(asked.task).scene_with(asked, value)
    return _turning(asked, build, value)


def changed_bench(asked: Asked, told: Explanation, value: Answer | None) -> Bench:
    """The bench of the explanation's contrast, held.  Raises ValueError where there is no contrast."""
    if told.contrast is None:
        raise ValueError("nothing is changed in this explanation")
    changed = told.contrast.build
    return _turning(asked, changed, value) if turns(asked) else _shown(asked, changed)


def _shown(asked: Asked, build: Build) -> Bench:
    """A scene on which nothing is changed: what hangs or is weighed moves as such things do, all else is eased."""
    if isinstance(asked.detail, Hook):
        return HungScene(parts=build.all_parts, hanging=AirframeHanging(hook_m=asked.detail.at_m))
    return WeighedScene() if asked.kind == "reading" else Showing()


def _turning(asked: Asked, build: Build, value: Answer | None) -> Bench:
    if asked.kind == "place":
        middle_m = (asked.left_m + asked.right_m) / 2
        at_m = value if isinstance(value, float) else middle_m
        return finger_from_build(build, finger_at_m=at_m, pad_half_m=asked.pad_half_m)
    if asked.pad_half_m > 0:
        return finger_from_build(build, pad_half_m=asked.pad_half_m)
    return hanging_bar_from_build(build)
