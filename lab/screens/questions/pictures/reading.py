"""What scales will read: a body that stands on them."""

from __future__ import annotations

from dataclasses import replace

from lab.files import Build
from lab.lesson.forms import Answer
from lab.lesson.kinds import kind_of
from lab.scenes.views.view import BodyView, Hanging, StandingScale
from lab.screens.questions.pictures.on_body import OnBody, balance_mark, balance_of, moment_of, plain_view
from lab.screens.questions.scope import Scope
from lab.simulation.benches.held_scenes import WeighedScene
from lab.simulation.benches.scales import LIFT_SHARE


class OnScales(OnBody):
    """Each scale shows what the learner says, then what it reads."""

    def view(self, scope: Scope) -> BodyView:
        asked, now = scope.asked, moment_of(scope)
        supports = asked.build.supports
        in_line = len(supports) == 2
        truth = kind_of(asked.task).truth(replace(asked.task, build=now.build))
        scales = tuple(
            StandingScale(
                key=str(place),
                at_m=support.at_m,
                reading=_reading(scope, _number(truth, place), place, share=now.share),
                name=_name(scope, support.name, place),
                follows=False,
            )
            for place, support in enumerate(supports, start=1)
        )
        return replace(
            plain_view(scope, now.build),
            faces=("side",) if in_line else ("side", "top"),
            scales=scales,
            hanging=Hanging(at_m=supports[0].at_m, cord=False, shift_m=(0.0, 0.0, _lift_m(scope, now.build))),
            ruler="along",
            balance=balance_mark(scope, balance_of(now.build), "balances at {place}") if now.over else None,
        )


def _lift_m(scope: Scope, build: Build) -> float:
    """How far over its scales it is held: seen to be let down on them."""
    bench = scope.model.bench
    raised = bench.raised if isinstance(bench, WeighedScene) else 0.0
    return raised * LIFT_SHARE * max(part.shape.extent_m[0] for part in build.all_parts)


def _name(scope: Scope, name: str, place: int) -> str:
    """What is written at a scale: whose it is, and what the learner said of it once it shows something else."""
    shown, told, kg = scope.look.words.content(name), scope.told, scope.numbers[place - 1]
    if scope.run.phase != "explain" or told is None or told.right or scope.model.contrast or kg is None:
        return shown
    return scope.say("{scale}: you {weight}", scale=shown, weight=scope.shown_weight(kg))


def _number(value: Answer, place: int) -> float:
    return value[place - 1] if isinstance(value, tuple) else 0.0


def _reading(scope: Scope, truth_kg: float, place: int, *, share: float) -> str:
    """What a scale shows: the learner's word, then its own, which it takes a moment to come to."""
    kg = scope.numbers[place - 1] if scope.run.phase == "predict" else share * truth_kg
    return scope.say("?") if kg is None else scope.shown_weight(kg)
