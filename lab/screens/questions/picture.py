"""The picture side of a question: the body that is asked about, the changed one, how far one is."""

from __future__ import annotations

from dataclasses import replace

from lab.outline import Node
from lab.scenes.finger_scene import draw_finger_bench
from lab.scenes.finger_stage import FingerView, Moment, finger_bounds, finger_stage
from lab.scenes.hanging_scene import draw_hanging_bar
from lab.scenes.hanging_view import HangingView, angle_between
from lab.screens.questions.contrast import contrast_in_text, contrast_room, contrast_strip
from lab.screens.questions.layout import Over
from lab.screens.questions.scope import FINGER, Scope
from lab.simulation.benches.finger import FingerTool
from lab.simulation.benches.finger_builds import finger_from_build
from lab.simulation.benches.hanging_bar import HangingBar
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect
from lab.ui.widgets.arrange import Column, Spacer, Steady
from lab.ui.widgets.headers import Progress
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.picture import Handle, Picture
from lab.ui.widgets.widget import Widget

PICTURE = "picture"


def picture_side(scope: Scope) -> Widget:
    """The changed picture's button where there is one, the picture, the row of progress."""
    picture, progress = _picture(scope), _progress(scope)
    if contrast_in_text(scope):
        return Column((picture, progress), gap=0, weights=(1.0, 0.0))
    contrast = contrast_strip(scope)
    if scope.finger is None:
        # Its room is kept from the first, so that the bar stays where it is when the button comes.
        strip = Steady(contrast or Spacer(), (contrast_room(scope),))
        return Column((strip, picture, progress), gap=0, weights=(0.0, 1.0, 0.0))
    # The line that the tool was held from is gone by now, and its place is free.
    seen = picture if contrast is None else Over(picture, contrast)
    return Column((seen, progress), gap=0, weights=(1.0, 0.0))


# --- the picture ---------------------------------------------------------------------------------------------


def _picture(scope: Scope) -> Picture:
    can_move = scope.run.phase == "predict" and scope.asked.kind == "place"

    def handles(rect: Rect) -> tuple[Handle, ...]:
        view = finger_view(scope)
        if view is None or not can_move:
            return ()
        value = scope.say("not placed yet") if scope.place_m is None else scope.shown_place(scope.place_m)
        bounds = finger_bounds(view, rect)["finger"]
        return (Handle(FINGER, scope.say("finger"), value, bounds, actions=("move",)),)

    def draw(canvas: Canvas, rect: Rect) -> None:
        draw_bench(canvas, rect, scope)

    return Picture(
        PICTURE,
        scope.look.words.content(scope.asked.build.title),
        draw,
        handles=handles,
        nodes=lambda rect: _marks(scope, rect),
        value=_said(scope),
        least=(240.0, 200.0),
        tappable=can_move,
    )


def draw_bench(canvas: Canvas, rect: Rect, scope: Scope) -> None:
    """Draw whichever bench is shown."""
    finger = finger_view(scope)
    if finger is not None:
        draw_finger_bench(canvas, rect, replace(finger, covered_px=_covered_px(scope, rect)))
        return
    hanging = hanging_view(scope)
    if hanging is not None:
        draw_hanging_bar(canvas, rect, hanging)


def _covered_px(scope: Scope, rect: Rect) -> float:
    """How much of the picture's top lies under the strip with the changed picture's button."""
    strip = None if contrast_in_text(scope) else contrast_strip(scope)
    return 0.0 if strip is None else strip.height(scope.look, rect.w)


def finger_view(scope: Scope) -> FingerView | None:
    """The tool on the finger as it is to be drawn, None where a bar hangs."""
    tool, told = scope.finger, scope.told
    if tool is None:
        return None
    phase, contrast = scope.run.phase, scope.model.contrast
    moment: Moment = "held" if phase == "predict" else "moving" if phase == "watch" else "explained"
    goes = "level" if told is None else told.goes
    if contrast and told is not None and told.contrast is not None:
        goes = told.contrast.goes
    previous, asked = scope.model.previous, scope.asked
    laid_for = None
    if contrast:
        # The same picture with one thing changed: all else stays where it is.
        laid_for = finger_from_build(asked.build, finger_at_m=tool.finger_at_m, pad_half_m=asked.pad_half_m)
    return FingerView(
        tool=tool,
        look=scope.look,
        readings=scope.readings,
        moment=moment,
        previous=previous if isinstance(previous, FingerTool) else None,
        fraction=scope.model.fraction,
        told_m=scope.place_m if moment == "explained" else None,
        picked=scope.dragging,
        chosen=scope.asked.kind == "side" or scope.place_m is not None,
        goes=goes,
        laid_for=laid_for,
    )


def hanging_view(scope: Scope) -> HangingView | None:
    """The hanging bar as it is to be drawn, None where a tool lies on a finger."""
    bench, previous = scope.model.bench, scope.model.previous
    if not isinstance(bench, HangingBar):
        return None
    before = previous if isinstance(previous, HangingBar) else bench
    return HangingView(
        bench=bench,
        look=scope.look,
        readings=scope.readings,
        angle_rad=angle_between(before, bench, scope.model.fraction),
        numbers=True,
        outcome_shown=scope.run.phase == "explain",
    )


def place_under(scope: Scope, rect: Rect, point: Point) -> float | None:
    """The place that a tap in the picture means: from the tool down to the floor; None elsewhere."""
    view = finger_view(scope)
    if view is None:
        return None
    stage = finger_stage(view, rect)
    top_y = stage.camera.y_px(stage.bounds_m[3])
    if not top_y - scope.look.sizes.px(16) <= point[1] <= stage.ground_y:
        return None
    return scope.snapped_m(stage.camera.along_m(point[0]))


def dragged_place(scope: Scope, rect: Rect, point: Point) -> float | None:
    """The place that a dragged finger means, however high the pointer is."""
    view = finger_view(scope)
    return None if view is None else scope.snapped_m(finger_stage(view, rect).camera.along_m(point[0]))


# --- in words ------------------------------------------------------------------------------------------------


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


def _marks(scope: Scope, rect: Rect) -> tuple[Node, ...]:
    """Every part with its weight and place, and in the explanation both places, for those who listen."""
    bench = scope.model.bench
    if bench is None:
        return ()
    said = [
        scope.say(
            "{part}: {weight} at {place}",
            part=scope.look.words.content(part.name),
            weight=scope.readings.weight_with_unit(part.mass_kg),
            place=scope.shown_place(part.at_m[0]),
        )
        for part in bench.parts
    ]
    if isinstance(bench, HangingBar):
        said.append(scope.say("pivot at {place}", place=scope.shown_place(bench.pivot.at_m)))
    elif scope.asked.kind == "side":
        said.append(scope.say("finger at {place}", place=scope.shown_place(bench.finger_at_m)))
    if scope.run.phase == "explain":
        said.append(scope.say("balances at {place}", place=scope.shown_place(bench.sum.balance_point_m[0])))
        if scope.place_m is not None:
            said.append(scope.say("you said {place}", place=scope.shown_place(scope.place_m)))
    return tuple(Node(f"{PICTURE}.mark-{number}", "mark", text, bounds=rect) for number, text in enumerate(said))


# --- round it ------------------------------------------------------------------------------------------------


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
    return Panel("progress-ground", children=(Progress("progress", tuple(marks), text),), fill="")
