"""Where an airframe balances on one finger: it is drawn as it is, and tips where the finger does not hold it."""

from __future__ import annotations

from dataclasses import replace
from math import radians
from typing import ClassVar

from lab.scenes.views.nodes import view_bounds
from lab.scenes.views.pointing import axis_m
from lab.scenes.views.view import BodyView, Hanging, LineMark
from lab.screens.questions.pictures.on_body import OnBody, balance_mark, balance_of, moment_of, plain_view
from lab.screens.questions.scope import FINGER, Scope
from lab.ui.geometry import Point, Rect
from lab.ui.widgets.picture import Handle

TIP_RAD = radians(13.0)
"""How far it is shown tipped: plainly, and yet its parts can be read."""


class OnFinger(OnBody):
    """The airframe from its side; the learner's marker is the finger."""

    comes: ClassVar = frozenset(("balance", "told"))

    def view(self, scope: Scope) -> BodyView:
        now, at_m = moment_of(scope), self._finger_m(scope)
        balance_m = balance_of(now.build)
        if scope.place_m is None:
            text = scope.say("slide me")
        else:
            text = scope.say("you {place}" if now.over else "{place}", place=scope.shown_place(at_m))
        return replace(
            plain_view(scope, now.build),
            ruler="along",
            hanging=Hanging(
                at_m=(at_m, 0.0, balance_m[2]), pitch_rad=now.share * _pitch_rad(scope), reach_rad=TIP_RAD, cord=False
            ),
            told=LineMark(at_m=at_m, text=text),
            picked="told" if scope.dragging else "",
            balance=balance_mark(scope, balance_m, "balances at {place}") if now.over else None,
        )

    def handles(self, scope: Scope, rect: Rect) -> tuple[Handle, ...]:
        if not self.tappable(scope):
            return ()
        target = scope.look.sizes.target
        bounds = view_bounds(self.view(scope), rect)["told"].at_least(target, target)
        value = scope.say("not placed yet") if scope.place_m is None else scope.shown_place(scope.place_m)
        return (Handle(FINGER, scope.say("finger"), value, bounds, actions=("move",)),)

    def tappable(self, scope: Scope) -> bool:
        return scope.run.phase == "predict"

    def tapped_m(self, scope: Scope, rect: Rect, point: Point) -> float | None:
        return axis_m(self.view(scope), rect, point)

    def dragged_m(self, scope: Scope, rect: Rect, point: Point) -> float | None:
        return axis_m(self.view(scope), rect, point, held=True)

    def carried_m(self, scope: Scope, key: str) -> float | None:
        return self._finger_m(scope) if key == FINGER else None

    def _finger_m(self, scope: Scope) -> float:
        middle_m = (scope.asked.left_m + scope.asked.right_m) / 2
        return middle_m if scope.place_m is None else scope.place_m


def _pitch_rad(scope: Scope) -> float:
    """Nose up where the right end, the tail, drops."""
    told = scope.told
    if told is None:
        return 0.0
    goes = told.contrast.goes if scope.model.contrast and told.contrast is not None else told.goes
    return {"left": -TIP_RAD, "level": 0.0, "right": TIP_RAD}[goes]
