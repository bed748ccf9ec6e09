"""Where ballast goes, and how much of it."""

from __future__ import annotations

from dataclasses import replace
from typing import ClassVar

from lab.files import Build
from lab.lesson.kinds import kind_of
from lab.lesson.kinds.ballast import Ballast
from lab.mechanics import BallastPlace, Part
from lab.scenes.views.view import Band, BodyView, GhostPart
from lab.screens.questions.pictures.on_body import (
    OnBody,
    balance_mark,
    balance_of,
    between,
    labels_of,
    moment_of,
    plain_view,
    weighed_out,
)
from lab.screens.questions.scope import Scope


class Ballasted(OnBody):
    """The places that may hold ballast; what the learner chose is put there, and the balance point comes along."""

    comes: ClassVar = frozenset(("balance", "before"))

    def view(self, scope: Scope) -> BodyView:
        asked, now = scope.asked, moment_of(scope)
        before = asked.build
        value = scope.run.value
        after = before if value is None else kind_of(asked.task).scene_with(asked, value)
        shown = weighed_out(now.build if scope.model.contrast else between(before, after, now.share))
        start_m, place_m = balance_of(before), balance_of(shown)
        begun = now.share > 0.0 or now.over
        return replace(
            plain_view(scope, shown),
            ruler="along",
            balance=balance_mark(scope, place_m, "balances at {place}" if scope.run.phase != "watch" else ""),
            before=balance_mark(scope, start_m, "before {place}") if begun else None,
            bands=(target_band(scope, asked.detail.low_m, asked.detail.high_m),),
            ghosts=() if begun else _places(scope),
            labels=labels_of(scope),
        )


def target_band(scope: Scope, low_m: float, high_m: float) -> Band:
    """Where it must balance."""
    low, high = scope.readings.short_length(low_m), scope.readings.short_length(high_m)
    text = scope.say("allowed {low} to {high} {unit}", low=low, high=high, unit=scope.units.length_word)
    return Band(low_m=low_m, high_m=high_m, text=text)


def _places(scope: Scope) -> tuple[GhostPart, ...]:
    """The places that may hold ballast, each with its name; where a weight is asked for, with what is said of it."""
    asked, ballast = scope.asked, scope.asked.detail
    if not isinstance(ballast, Ballast):
        return ()
    value = scope.run.value
    if ballast.find == "weight" and isinstance(value, float) and value > 0:
        return (GhostPart(part=_ballast(kind_of(asked.task).scene_with(asked, value))),)
    chosen = [place for place in ballast.places if value is None or value == place.name]
    return tuple(_at(scope, place) for place in chosen)


def _ballast(build: Build) -> Part:
    """What was put there: it stands last."""
    return build.parts[-1]


def _at(scope: Scope, place: BallastPlace) -> GhostPart:
    """A place, as heavy as nothing much; a strip by its middle."""
    along, across, up = (sum(each) / len(place.ends_m) for each in zip(*place.ends_m, strict=True))
    least_kg = min(part.mass_kg for part in scope.asked.build.all_parts)
    part = Part(name=place.name, mass_kg=least_kg, at_m=(along, across, up))
    return GhostPart(part=part, text=scope.look.words.content(place.name))
