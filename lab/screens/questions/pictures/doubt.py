"""How far off the balance point may be: a band round it."""

from __future__ import annotations

from dataclasses import replace

from lab.lesson.forms import Answer
from lab.lesson.kinds import kind_of
from lab.scenes.views.view import Band, BodyView
from lab.screens.questions.pictures.on_body import OnBody, balance_mark, balance_of, moment_of, plain_view
from lab.screens.questions.scope import Scope


class Doubted(OnBody):
    """The learner's band first, then the one that the measurements leave."""

    def view(self, scope: Scope) -> BodyView:
        now, asked = moment_of(scope), scope.asked
        at_m = balance_of(now.build)
        truth = kind_of(asked.task).truth(replace(asked.task, build=now.build))
        bands = [_band(scope, at_m[0], scope.run.value, "you said ± {doubt}")]
        if scope.run.phase != "predict":
            bands.insert(0, _band(scope, at_m[0], truth, "± {doubt}", share=now.share))
        return replace(
            plain_view(scope, now.build),
            ruler="along",
            balance=balance_mark(scope, at_m, "balances at {place}"),
            bands=tuple(band for band in bands if band is not None),
        )

    def whole(self, view: BodyView) -> BodyView:
        at_m = 0.0 if view.balance is None else view.balance.at_m[0]
        return replace(super().whole(view), bands=(Band(low_m=at_m, high_m=at_m, text=" "),) * 2)


def _band(scope: Scope, at_m: float, doubt: Answer | None, template: str, *, share: float = 1.0) -> Band | None:
    if not isinstance(doubt, float):
        return None
    text = scope.say(template, doubt=scope.text(scope.asked.form.shown(doubt))) if share == 1.0 else ""
    return Band(low_m=at_m - share * doubt, high_m=at_m + share * doubt, text=text)
