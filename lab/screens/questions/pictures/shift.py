"""Where the balance point goes when one thing is changed."""

from __future__ import annotations

from dataclasses import replace
from typing import ClassVar

from lab.files import Build
from lab.lesson.kinds.shift import Shift, changed
from lab.mechanics import Part
from lab.scenes.views.view import BodyView, GhostPart, LineMark
from lab.screens.questions.pictures.on_body import (
    OnBody,
    balance_mark,
    balance_of,
    between,
    labels_of,
    moment_of,
    plain_view,
    told_mark,
)
from lab.screens.questions.scope import Scope


class Shifted(OnBody):
    """The change is carried out before one's eyes, and the balance point goes along as it must."""

    comes: ClassVar = frozenset(("balance", "before", "told"))

    def view(self, scope: Scope) -> BodyView:
        asked, now = scope.asked, moment_of(scope)
        shift: Shift = asked.detail
        before, after = asked.build, changed(asked.task)
        shown = now.build if scope.model.contrast else between(before, after, now.share)
        start_m, place_m = balance_of(before), balance_of(shown)
        template = "balances at {place}" if scope.run.phase != "watch" else ""
        begun = now.share > 0.0 or now.over
        said_m = scope.place_m
        return replace(
            plain_view(scope, shown),
            ruler="along",
            labels=labels_of(scope),
            highlighted=frozenset((shift.part,)) if shift.part else frozenset(),
            balance=balance_mark(scope, place_m, template),
            before=balance_mark(scope, start_m, "before {place}") if begun and shift.what != "reference" else None,
            told=None if said_m is None else told_mark(scope, start_m[0] + said_m, said_m),
            reference=_line(scope, shift, now.share) if shift.what == "reference" else None,
            ghosts=_ghosts(shift, before, after, share=now.share),
        )


def _line(scope: Scope, shift: Shift, share: float) -> LineMark:
    start_m, end_m = scope.asked.build.reference_m[0], shift.at_m or 0.0
    return LineMark(at_m=start_m + share * (end_m - start_m), text=scope.say("reference line"))


def _ghosts(shift: Shift, before: Build, after: Build, *, share: float) -> tuple[GhostPart, ...]:
    """Where the part goes, while it is not there yet; where it was, from then on."""
    old, new = _named(before, shift.part), _named(after, shift.part)
    if share < 1.0:
        if new is None:
            return ()
        look = after.looks.get(shift.part, "")
        return (GhostPart(part=new, look=look, from_m=None if old is None else old.at_m),)
    if old is None:
        return ()
    look = before.looks.get(shift.part, "")
    return (GhostPart(part=old, look=look, to_m=None if new is None else new.at_m),)


def _named(build: Build, name: str) -> Part | None:
    return next((part for part in build.parts if part.name == name), None)
