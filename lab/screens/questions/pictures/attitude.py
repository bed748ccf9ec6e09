"""How a body hangs that hangs by one point."""

from __future__ import annotations

from dataclasses import replace

from lab.files import Build
from lab.lesson.kinds.attitude import Hook
from lab.mechanics import Vector, attitude_of, plumb_line
from lab.scenes.views.swinging import between_downs, room_rad
from lab.scenes.views.view import BodyView, Hanging
from lab.screens.questions.pictures.on_body import OnBody, balance_mark, balance_of, moment_of, plain_view
from lab.screens.questions.scope import Scope
from lab.simulation.benches.held_scenes import HungScene


class HangsByPoint(OnBody):
    """Held level by its cord, then let hang: its balance point comes to lie right below."""

    def view(self, scope: Scope) -> BodyView:
        hook: Hook = scope.asked.detail
        now = moment_of(scope)
        pitch_rad, roll_rad = attitude_of(_down(scope))
        rooms = [_room_rad(build, hook) for build in (scope.asked.build, now.build)]
        room = min(low for low, _ in rooms), max(high for _, high in rooms)
        return replace(
            plain_view(scope, now.build),
            faces=("side",) if hook.axis == 0 else ("front",),
            hanging=Hanging(
                at_m=hook.at_m,
                pitch_rad=pitch_rad,
                roll_rad=roll_rad or 0.0,
                side_rad=room,
                front_rad=room,
                plumb=now.over,
            ),
            balance=balance_mark(scope, balance_of(now.build), "balance point") if now.over else None,
        )


def _down(scope: Scope) -> Vector:
    """Where down lies in the body at the moment that is drawn."""
    now, before = scope.model.bench, scope.model.previous
    if not isinstance(now, HungScene):
        return _rest(moment_of(scope).build, scope.asked.detail)
    start = before.swing if isinstance(before, HungScene) else now.swing
    return between_downs(start.down, now.swing.down, scope.model.fraction)


def _rest(build: Build, hook: Hook) -> Vector:
    line = plumb_line(build.all_parts, hook.at_m)
    return (0.0, 0.0, -1.0) if line is None else line[0].down


def _room_rad(build: Build, hook: Hook) -> tuple[float, float]:
    """From where to where it turns in the picture of what is asked for."""
    rest = _rest(build, hook)
    return room_rad(rest[hook.axis], rest[2], sense=-1.0 if hook.axis == 0 else 1.0)
