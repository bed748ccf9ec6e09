"""Tanks that burn or are pumped, and the balance point that goes with them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import ClassVar

from lab.files import Build
from lab.lesson.forms import Answer
from lab.lesson.kinds.tank_flights import Tanks, whole_plan
from lab.lesson.messages import message, msg, seconds
from lab.mechanics import Burn, MechanicsError, Pump, TankCourse, tank_course
from lab.scenes.views.view import BodyView, PlaceMark
from lab.screens.questions.pictures.ballast import target_band
from lab.screens.questions.pictures.on_body import OnBody, balance_mark, balance_of, moment_of, plain_view
from lab.screens.questions.scope import Scope


class Tanked(OnBody):
    """The flight that the learner chose is flown; for an instant, the one that is given, up to what they said."""

    comes: ClassVar = frozenset(("balance", "before"))

    def view(self, scope: Scope) -> BodyView:
        asked, now = scope.asked, moment_of(scope)
        flown = _flight(scope, now.build)
        at_s = now.share * flown.end_s
        shown = now.build if flown.course is None else _at(now.build, flown.course, at_s)
        start_m, place_m = balance_of(now.build), balance_of(shown)
        begun = now.share > 0.0 or now.over
        return replace(
            plain_view(scope, shown),
            faces=("side", "top"),
            ruler="along",
            labels="weights" if scope.run.phase == "predict" else "names",
            balance=PlaceMark(at_m=place_m, text=_text(scope, place_m[0], at_s if flown.course else None)),
            before=balance_mark(scope, start_m, "before {place}") if begun else None,
            bands=(target_band(scope, asked.detail.low_m, asked.detail.high_m),),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Flight:
    """course: None before there is an answer, or where nothing can be flown.  end_s: when it is looked at last."""

    course: TankCourse | None
    end_s: float


def _flight(scope: Scope, build: Build) -> _Flight:
    tanks: Tanks = scope.asked.detail
    value = scope.run.value
    if value is None:
        return _Flight(course=None, end_s=0.0)
    try:
        course = _course(scope, tanks, build, value)
    except MechanicsError:
        # With one tank half as full a plan may not be flown as it stands; then the tanks are shown full.
        return _Flight(course=None, end_s=0.0)
    end_s = course.legs[-1].end_s
    return _Flight(course=course, end_s=min(value, end_s) if isinstance(value, float) else end_s)


def _course(scope: Scope, tanks: Tanks, build: Build, value: Answer) -> TankCourse:
    plan: Sequence[Burn] = tanks.plan
    if tanks.find == "first":
        plan = whole_plan(scope.asked.task, first=str(value))
    if tanks.find == "pump":
        pump = _pump(tanks, str(value))
        return tank_course(build.tanks, (Burn(rate_m3_s=0.0),), pumps=(pump,), until_s=pump.until_s)
    return tank_course(build.tanks, plan)


def _pump(tanks: Tanks, key: str) -> Pump:
    return next(pump for pump in tanks.pumps if f"{pump.source} to {pump.target}" == key)


def _at(build: Build, course: TankCourse, at_s: float) -> Build:
    """The scene with its tanks as they are at an instant."""
    contents = course.contents_at(min(max(at_s, course.legs[0].start_s), course.legs[-1].end_s))
    tanks = tuple(replace(tank, contents_m3=each) for tank, each in zip(build.tanks, contents, strict=True))
    return replace(build, tanks=tanks)


def _text(scope: Scope, place_m: float, at_s: float | None) -> str:
    place = scope.shown_place(place_m)
    if not at_s:
        return scope.say("balances at {place}", place=place)
    time = scope.text(message(msg("{time}"), time=seconds(round(at_s))))
    return scope.say("after {time}: balances at {place}", time=time, place=place)
