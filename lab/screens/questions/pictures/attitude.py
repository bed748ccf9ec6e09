"""How a body hangs that hangs by one point."""

from __future__ import annotations

from dataclasses import replace

from lab.files import Build
from lab.lesson.kinds.attitude import Hook
from lab.mechanics import hanging_attitude
from lab.scenes.views.view import BodyView, Hanging
from lab.screens.questions.pictures.on_body import OnBody, balance_mark, balance_of, moment_of, plain_view
from lab.screens.questions.scope import Scope


class HangsByPoint(OnBody):
    """Held level by its cord, then let hang: its balance point comes to lie right below."""

    def view(self, scope: Scope) -> BodyView:
        hook: Hook = scope.asked.detail
        now = moment_of(scope)
        pitch_rad, roll_rad = _angles(now.build, hook)
        own_rad = max(abs(angle) for angle in _angles(scope.asked.build, hook))
        return replace(
            plain_view(scope, now.build),
            faces=("side",) if hook.axis == 0 else ("front",),
            hanging=Hanging(
                at_m=hook.at_m,
                pitch_rad=now.share * pitch_rad,
                roll_rad=now.share * roll_rad,
                reach_rad=max(own_rad, abs(pitch_rad), abs(roll_rad)),
                plumb=now.over,
            ),
            balance=balance_mark(scope, balance_of(now.build), "balance point") if now.over else None,
        )


def _angles(build: Build, hook: Hook) -> tuple[float, float]:
    """The pitch and the roll to which it comes, rad; of the one that is not asked for, none."""
    attitude = hanging_attitude(build.all_parts, hook.at_m)
    if attitude is None:
        return 0.0, 0.0
    return (attitude.pitch_rad or 0.0, 0.0) if hook.axis == 0 else (0.0, attitude.roll_rad or 0.0)
