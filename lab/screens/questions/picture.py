"""The picture side of a question: the body that is asked about, the changed one, how far one is."""

from __future__ import annotations

from lab.screens.questions.caution import caution_below
from lab.screens.questions.contrast import contrast_in_text, contrast_room, contrast_strip
from lab.screens.questions.layout import Over
from lab.screens.questions.pictures import PICTURE, picture_of
from lab.screens.questions.pictures.pictured import marks
from lab.screens.questions.scope import Scope
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.widgets.arrange import Column, Row, Spacer, Steady
from lab.ui.widgets.headers import Progress
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.picture import Picture
from lab.ui.widgets.widget import Widget


def picture_side(scope: Scope) -> Widget:
    """The changed picture's button where there is one, the picture, the row of progress."""
    picture, progress = _picture(scope), _progress(scope)
    if contrast_in_text(scope):
        return Column((picture, progress), gap=0, weights=(1.0, 0.0))
    contrast = contrast_strip(scope)
    if not picture_of(scope).covers(scope):
        # Its room is kept from the first, so that the bar stays where it is when the button comes.
        strip = Steady(contrast or Spacer(), (contrast_room(scope),))
        return Column((strip, picture, progress), gap=0, weights=(0.0, 1.0, 0.0))
    seen = picture if contrast is None else Over(picture, contrast)
    return Column((seen, progress), gap=0, weights=(1.0, 0.0))


def _picture(scope: Scope) -> Picture:
    shown = picture_of(scope)

    def draw(canvas: Canvas, rect: Rect) -> None:
        shown.draw(canvas, rect, scope, covered_px=_covered_px(scope, rect))

    return Picture(
        PICTURE,
        scope.look.words.content(scope.asked.build.title),
        draw,
        handles=lambda rect: shown.handles(scope, rect),
        nodes=lambda rect: marks(rect, shown.spoken(scope)),
        value=_said(scope),
        least=(240.0, 200.0),
        tappable=shown.tappable(scope),
    )


def _covered_px(scope: Scope, rect: Rect) -> float:
    """How much of the picture's top lies under the strip with the changed picture's button."""
    lies_over = picture_of(scope).covers(scope) and not contrast_in_text(scope)
    strip = contrast_strip(scope) if lies_over else None
    return 0.0 if strip is None else strip.height(scope.look, rect.w)


def _said(scope: Scope) -> str:
    """The picture in a sentence."""
    told, phase = scope.told, scope.run.phase
    if phase == "predict":
        return scope.say("held level until you lock your answer in")
    if phase == "watch" or told is None:
        return scope.say("let go")
    if scope.model.contrast and told.contrast is not None:
        return scope.text(told.contrast.happened)
    return scope.text(told.happened)


def _progress(scope: Scope) -> Widget:
    run = scope.run
    marks = []
    for number, mark in enumerate(run.marks):
        kinds = {"right": "right", "off": "wrong", "skipped": "open", "todo": "open"}
        now = number == run.index and (run.phase == "predict" or mark == "todo")
        # While it moves nothing gives the outcome away.
        now = now or (number == run.index and run.phase == "watch")
        marks.append("now" if now else kinds[mark])
    number_of = scope.look.words.number
    text = scope.say("question {number} of {count}", number=number_of(run.index + 1), count=number_of(len(run.marks)))
    progress: Widget = Progress("progress", tuple(marks), text)
    caution = caution_below(scope)
    if caution is not None:
        progress = Row((progress, caution), gap=24, weights=(0.0, 1.0), wraps=False)
    return Panel("progress-ground", children=(progress,), fill="")
