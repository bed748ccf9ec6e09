"""Whether a nose that is pushed up comes down again."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from math import radians
from typing import ClassVar

from lab.lesson.kinds import kind_of
from lab.lesson.kinds.steady import neutral_of
from lab.scenes.views.view import BodyView, Hanging, LineMark, TurningArrow
from lab.screens.questions.pictures.on_body import OnBody, balance_mark, balance_of, moment_of, plain_view
from lab.screens.questions.scope import Scope

PUSHED_RAD = radians(7.0)
"""How far the nose is pushed up: plainly, and still as a gust would."""

ENDS_RAD: Mapping[str, float] = {"steady": 0.0, "neutral": PUSHED_RAD, "runs away": radians(20.0)}
"""Where the nose is a moment later.  How fast is not shown: that is a matter of the flight and not of the margin."""

PUSHED_SHARE = 0.25
"""How much of the way is the push."""


class Pushed(OnBody):
    """The airframe from its side; its nose is pushed up, and does what the margin says."""

    comes: ClassVar = frozenset(("balance", "neutral", "turning"))

    def view(self, scope: Scope) -> BodyView:
        asked, now = scope.asked, moment_of(scope)
        goes = kind_of(asked.task).truth(replace(asked.task, build=now.build))
        at_m, neutral_m = balance_of(now.build), neutral_of(now.build.surfaces).at_m
        neutral = LineMark(at_m=neutral_m, text=scope.say("neutral point {place}", place=scope.shown_place(neutral_m)))
        return replace(
            plain_view(scope, now.build),
            hanging=Hanging(
                at_m=at_m,
                pitch_rad=0.0 if now.over else _nose_rad(now.share, ENDS_RAD[str(goes)]),
                reach_rad=max(ENDS_RAD.values()),
                cord=False,
            ),
            turning=_arrow(scope, str(goes)) if now.over else None,
            balance=balance_mark(scope, at_m, "balances at {place}") if now.over else None,
            neutral=neutral if now.over else None,
        )


def _arrow(scope: Scope, goes: str) -> TurningArrow | None:
    """Which way it turns by itself once its nose is up; it points left, so that nose up is clockwise."""
    if goes == "steady":
        return TurningArrow(face="side", sense="anticlockwise", text=scope.say("turns back"))
    if goes == "runs away":
        return TurningArrow(face="side", sense="clockwise", text=scope.say("turns on"))
    return None


def _nose_rad(share: float, end_rad: float) -> float:
    """The nose pushed up first, then on its way."""
    if share <= PUSHED_SHARE:
        return PUSHED_RAD * share / PUSHED_SHARE
    return PUSHED_RAD + (end_rad - PUSHED_RAD) * (share - PUSHED_SHARE) / (1.0 - PUSHED_SHARE)
