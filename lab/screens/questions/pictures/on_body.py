"""Questions whose scene is only shown: a body from its sides, as it was asked about and as it comes out."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import ClassVar, Literal

from lab.files import Build
from lab.lesson.forms import Answer
from lab.mechanics import Part, Vector, moment_sum
from lab.scenes.views.body import body_of
from lab.scenes.views.nodes import view_said
from lab.scenes.views.scene import draw_views
from lab.scenes.views.view import BodyView, Labels, LineMark, PlaceMark, TurningArrow
from lab.screens.questions.answering import said
from lab.screens.questions.pictures.pictured import Pictured
from lab.screens.questions.scope import Scope
from lab.simulation.benches.held_scenes import WeighedScene
from lab.simulation.benches.showing import Showing
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect

Mark = Literal["balance", "before", "told", "neutral", "turning"]
FAINTEST = 1e-6
"""Less than this share of a weight is not drawn: it comes or goes, and the mechanics take no part of 0 kg."""


class OnBody(Pictured):
    """A body seen from one side or more, and what is to be said of it.

    comes: the marks that are there at the end at the latest; room is kept for them from the first.
    """

    comes: ClassVar[frozenset[Mark]] = frozenset(("balance",))

    @abstractmethod
    def view(self, scope: Scope) -> BodyView:
        """The question as it stands."""

    def draw(self, canvas: Canvas, rect: Rect, scope: Scope, *, covered_px: float = 0.0) -> None:
        view = replace(self.view(scope), covered_px=covered_px)
        draw_views(canvas, rect, replace(view, laid_for=self.whole(view)))

    def whole(self, view: BodyView) -> BodyView:
        """The view with all that is still to come, for which room is kept."""
        return _with_marks(view, self.comes)

    def spoken(self, scope: Scope) -> tuple[str, ...]:
        return view_said(self.view(scope))


@dataclass(frozen=True, slots=True, kw_only=True)
class Moment:
    """What the picture is of.

    share: how much of the way is done, 0 … 1.  build: the scene that is shown, the changed one where that is.
    over: whether it is explained.
    """

    share: float
    build: Build
    over: bool


def _with_marks(view: BodyView, comes: frozenset[Mark]) -> BodyView:
    """The view with every mark that comes, somewhere."""
    at_m, text = moment_sum(view.body.parts).balance_point_m, view.readings.length_with_unit(0.0)
    marked: dict[Mark, object] = {
        "balance": PlaceMark(at_m=at_m, text=text),
        "before": PlaceMark(at_m=at_m, text=text),
        "told": LineMark(at_m=at_m[0], text=text),
        "neutral": LineMark(at_m=at_m[0], text=text),
        "turning": TurningArrow(face="side", sense="clockwise", text=text),
    }
    missing = {mark: marked[mark] for mark in comes if not getattr(view, mark) or not _said(getattr(view, mark))}
    return replace(view, **missing)  # type: ignore[arg-type]


def _said(mark: PlaceMark | LineMark | TurningArrow) -> bool:
    return bool(mark.text)


def moment_of(scope: Scope) -> Moment:
    """What the picture is of now."""
    told, over = scope.told, scope.run.phase == "explain"
    changed = told.contrast if told is not None and scope.model.contrast else None
    share = 0.0 if scope.run.phase == "predict" else _share(scope)
    return Moment(share=share, build=scope.asked.build if changed is None else changed.build, over=over)


def _share(scope: Scope) -> float:
    now, before = scope.model.bench, scope.model.previous
    if not isinstance(now, Showing | WeighedScene):
        return 1.0
    start = before.share if isinstance(before, Showing | WeighedScene) else now.share
    return start + scope.model.fraction * (now.share - start)


def plain_view(scope: Scope, build: Build) -> BodyView:
    """The body alone."""
    return BodyView(body=body_of(build), look=scope.look, readings=scope.readings)


def balance_of(build: Build) -> Vector:
    """Where a scene balances, m."""
    return moment_sum(build.all_parts).balance_point_m


def balance_mark(scope: Scope, at_m: Vector, template: str) -> PlaceMark:
    """The balance point, with its place along in a sentence of the screen."""
    return PlaceMark(at_m=at_m, text=scope.say(template, place=scope.shown_place(at_m[0])))


def told_mark(scope: Scope, at_m: float, answer: Answer) -> LineMark:
    """The learner's place, and what they said."""
    return LineMark(at_m=at_m, text=scope.say("you said {answer}", answer=said(scope, answer)))


def between(before: Build, after: Build, share: float) -> Build:
    """A scene on its way to another: what moves is carried, what is added or taken grows or fades.

    share: how much of the way is done, 0 … 1.
    """
    there: Mapping[str, Part] = {part.name: part for part in after.parts}
    here: Mapping[str, Part] = {part.name: part for part in before.parts}
    parts = [
        _carried(part, there[part.name], share) if part.name in there else _faded(part, 1.0 - share)
        for part in before.parts
    ]
    parts += [_faded(part, share) for part in after.parts if part.name not in here]
    return replace(before, parts=tuple(part for part in parts if part is not None))


def _carried(part: Part, to: Part, share: float) -> Part:
    along, across, up = (start + share * (end - start) for start, end in zip(part.at_m, to.at_m, strict=True))
    return replace(part, at_m=(along, across, up), mass_kg=part.mass_kg + share * (to.mass_kg - part.mass_kg))


def _faded(part: Part, share: float) -> Part | None:
    return None if share <= FAINTEST else replace(part, mass_kg=share * part.mass_kg)


def weighed_out(build: Build) -> Build:
    """The scene with its parts as the workshop's scale would weigh them, to a tenth of a gram."""
    parts = tuple(replace(part, mass_kg=round(part.mass_kg, 4) or part.mass_kg) for part in build.parts)
    return replace(build, parts=parts)


def labels_of(scope: Scope) -> Labels:
    """What is written at the parts: while weights change before one's eyes, names are enough."""
    return "names" if scope.run.phase == "watch" else "weights"
