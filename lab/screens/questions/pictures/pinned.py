"""An airframe, or a tool without a bar, on a pin through it: what must hang there, or where, so that it stays level."""

from __future__ import annotations

from dataclasses import replace
from math import copysign

from lab.files import Build
from lab.lesson.kinds import kind_of
from lab.lesson.kinds.hanging import Hung
from lab.mechanics import Part, Pivot, turn_about
from lab.scenes.views.view import BodyView, GhostPart, Hanging
from lab.screens.questions.pictures.on_body import OnBody, balance_mark, balance_of, moment_of, plain_view
from lab.screens.questions.scope import Scope


class OnPin(OnBody):
    """Held level on its pin; let go, it tips as far as its moment takes it."""

    def view(self, scope: Scope) -> BodyView:
        asked, now = scope.asked, moment_of(scope)
        pivot = asked.build.pivot or Pivot(at_m=asked.left_m)
        value = scope.run.value
        shown = now.build
        if value is not None and not scope.model.contrast:
            shown = kind_of(asked.task).scene_with(asked, value)
        return replace(
            plain_view(scope, shown),
            ruler="along",
            hanging=Hanging(
                at_m=(pivot.at_m, 0.0, pivot.up_m),
                # The end that drops: nose up positive, and the nose is at the left.
                pitch_rad=-now.share * _tilt_rad(shown, pivot),
                reach_rad=pivot.stop_rad,
            ),
            balance=balance_mark(scope, balance_of(shown), "balances at {place}") if now.over else None,
            ghosts=_waiting(scope) if value is None else _as_it_should_be(scope) if now.over else (),
        )


def _tilt_rad(build: Build, pivot: Pivot) -> float:
    """How far it tips, anticlockwise positive: to its stop where nothing holds it before."""
    turn = turn_about(build.all_parts, pivot)
    if turn.tilt_rad is not None:
        return turn.tilt_rad
    return 0.0 if turn.goes == "level" else copysign(pivot.stop_rad, turn.moment_kg_m)


def _waiting(scope: Scope) -> tuple[GhostPart, ...]:
    """What is to be hung, where that is known; how heavy it is is what is asked."""
    hung = scope.asked.detail
    if not isinstance(hung, Hung) or hung.at_m is None:
        return ()
    least_kg = min(part.mass_kg for part in scope.asked.build.all_parts)
    part = Part(name=hung.name, mass_kg=least_kg, at_m=(hung.at_m, 0.0, 0.0))
    return (GhostPart(part=part, text=scope.look.words.content(hung.name)),)


def _as_it_should_be(scope: Scope) -> tuple[GhostPart, ...]:
    """The right answer beside the learner's, where that is another and nothing else is changed."""
    hung, told, truth = scope.asked.detail, scope.told, scope.asked.truth
    if not isinstance(hung, Hung) or told is None or told.right or scope.model.contrast or not isinstance(truth, float):
        return ()
    part = kind_of(scope.asked.task).scene_with(scope.asked, truth).parts[-1]
    amount = scope.shown_weight(truth) if hung.mass_kg is None else scope.shown_place(truth)
    return (GhostPart(part=part, text=scope.say("level: {amount}", amount=amount)),)
