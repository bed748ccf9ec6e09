"""Bodies that are let go on a finger or a pin: which end drops, where it balances, what must hang there, and where."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from lab.lesson.kinds.hanging import Hung
from lab.scenes.finger_scene import draw_finger_bench
from lab.scenes.finger_stage import FingerView, Moment, finger_bounds, finger_stage
from lab.scenes.hanging_scene import along_at_m, draw_hanging_bar, grab_bounds, place_at_m
from lab.scenes.hanging_view import Ghost, HangingView, angle_between, weight_key
from lab.screens.questions.bench import bench_of
from lab.screens.questions.pictures.pictured import Pictured
from lab.screens.questions.scope import FINGER, Scope
from lab.simulation.benches.finger import FingerTool
from lab.simulation.benches.finger_builds import finger_from_build
from lab.simulation.benches.hanging_bar import HangingBar
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect
from lab.ui.widgets.picture import Handle

HUNG = "hung"
"""Key of what is to be hung somewhere."""

UNKNOWN_KG = 0.1
"""As what a weight is drawn that is not known yet."""


class Turning(Pictured):
    """The bench itself: what was let go moves by the mechanics."""

    def draw(self, canvas: Canvas, rect: Rect, scope: Scope, *, covered_px: float = 0.0) -> None:
        finger = _finger_view(scope)
        if finger is not None:
            draw_finger_bench(canvas, rect, replace(finger, covered_px=covered_px))
            return
        hanging = _hanging_view(scope, rect)
        if hanging is not None:
            draw_hanging_bar(canvas, rect, hanging)

    def covers(self, scope: Scope) -> bool:
        # The line that a tool was held from is gone once it is let go, and its place is free.
        return scope.finger is not None

    def spoken(self, scope: Scope) -> tuple[str, ...]:
        bench = scope.model.bench
        if not isinstance(bench, HangingBar | FingerTool):
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
        hung = scope.asked.detail
        if isinstance(hung, Hung) and hung.at_m is not None and scope.run.value is None:
            name = scope.look.words.content(hung.name)
            said.append(scope.say("{part}: not known yet, at {place}", part=name, place=scope.shown_place(hung.at_m)))
        if isinstance(bench, HangingBar):
            said.append(scope.say("pivot at {place}", place=scope.shown_place(bench.pivot.at_m)))
        elif scope.asked.kind != "place":
            said.append(scope.say("finger at {place}", place=scope.shown_place(bench.finger_at_m)))
        if scope.run.phase == "explain":
            said.append(scope.say("balances at {place}", place=scope.shown_place(bench.sum.balance_point_m[0])))
            if scope.asked.form.quantity == "length" and scope.place_m is not None:
                said.append(scope.say("you said {place}", place=scope.shown_place(scope.place_m)))
            said += _spoken_as_it_should_be(scope)
        return tuple(said)


class UnderFinger(Turning):
    """A tool whose finger the learner puts somewhere."""

    def handles(self, scope: Scope, rect: Rect) -> tuple[Handle, ...]:
        view = _finger_view(scope)
        if view is None or not self.tappable(scope):
            return ()
        return (_handle(scope, FINGER, scope.say("finger"), finger_bounds(view, rect)[FINGER]),)

    def tappable(self, scope: Scope) -> bool:
        return scope.run.phase == "predict"

    def tapped_m(self, scope: Scope, rect: Rect, point: Point) -> float | None:
        view = _finger_view(scope)
        if view is None:
            return None
        stage = finger_stage(view, rect)
        top_y = stage.camera.y_px(stage.bounds_m[3])
        if not top_y - scope.look.sizes.px(16) <= point[1] <= stage.ground_y:
            return None
        return stage.camera.along_m(point[0])

    def dragged_m(self, scope: Scope, rect: Rect, point: Point) -> float | None:
        view = _finger_view(scope)
        return None if view is None else finger_stage(view, rect).camera.along_m(point[0])

    def carried_m(self, scope: Scope, key: str) -> float | None:
        if key != FINGER or scope.finger is None:
            return None
        return scope.finger.finger_at_m if scope.place_m is None else scope.place_m


class ToBeHung(Turning):
    """A bar on which the learner hangs something somewhere."""

    def handles(self, scope: Scope, rect: Rect) -> tuple[Handle, ...]:
        view = _hanging_view(scope, rect)
        if view is None or not self.tappable(scope):
            return ()
        if scope.place_m is None:
            at, target = _waiting_at(scope, rect), scope.look.sizes.target
            bounds = Rect(at[0] - target / 2, at[1] - target / 2, target, target)
        else:
            bounds = grab_bounds(view, rect)[weight_key(view.bench.weights[-1])]
        return (_handle(scope, HUNG, scope.look.words.content(scope.asked.detail.name), bounds),)

    def tappable(self, scope: Scope) -> bool:
        return scope.run.phase == "predict" and scope.finger is None

    def tapped_m(self, scope: Scope, rect: Rect, point: Point) -> float | None:
        view = _hanging_view(scope, rect)
        return None if view is None else place_at_m(view, rect, point)

    def dragged_m(self, scope: Scope, rect: Rect, point: Point) -> float | None:
        view = _hanging_view(scope, rect)
        return None if view is None else along_at_m(view, rect, point)

    def carried_m(self, scope: Scope, key: str) -> float | None:
        if key != HUNG:
            return None
        middle_m = (scope.asked.left_m + scope.asked.right_m) / 2
        return middle_m if scope.place_m is None else scope.place_m


def _handle(scope: Scope, key: str, name: str, bounds: Rect) -> Handle:
    value = scope.say("not placed yet") if scope.place_m is None else scope.shown_place(scope.place_m)
    return Handle(key, name, value, bounds, actions=("move",))


def _finger_view(scope: Scope) -> FingerView | None:
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
        told_m=scope.place_m if moment == "explained" and asked.kind == "place" else None,
        picked=scope.dragging,
        chosen=asked.kind != "place" or scope.place_m is not None,
        goes=goes,
        laid_for=laid_for,
    )


def _hanging_view(scope: Scope, rect: Rect) -> HangingView | None:
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
        ghost=_ghost(scope, rect),
        laid_for=_laid_for(scope),
    )


def _laid_for(scope: Scope) -> HangingBar | None:
    """The bar with what is to be hung as far out as it goes; None where nothing is hung somewhere."""
    asked = scope.asked
    if asked.kind != "arm":
        return None
    pivot_m = asked.build.pivot.at_m if asked.build.pivot is not None else asked.left_m
    ends = sorted((asked.left_m, asked.right_m), key=lambda end_m: abs(end_m - pivot_m))
    bench = bench_of(asked, ends[-1])
    return bench if isinstance(bench, HangingBar) else None


def _ghost(scope: Scope, rect: Rect) -> Ghost | None:
    """What is to be hung: before the learner has said where or how heavy it is, and in the end as it should be."""
    hung, value = scope.asked.detail, scope.run.value
    if not isinstance(hung, Hung):
        return None
    if scope.run.phase == "explain":
        return _as_it_should_be(scope, hung)
    if scope.run.phase != "predict" or value is not None:
        return None
    if hung.mass_kg is None:
        return Ghost(mass_kg=UNKNOWN_KG, at_m=hung.at_m, stamp=scope.say("?"))
    return Ghost(mass_kg=hung.mass_kg, at_m=None, pointer=_waiting_at(scope, rect))


def _as_it_should_be(scope: Scope, hung: Hung) -> Ghost | None:
    """The right answer beside the learner's; None where the two are one, or where something else is changed."""
    told, truth = scope.told, scope.asked.truth
    if told is None or told.right or scope.model.contrast or not isinstance(truth, float):
        return None
    if hung.mass_kg is None:
        return Ghost(
            mass_kg=truth, at_m=hung.at_m, plate=scope.say("level: {amount}", amount=scope.shown_weight(truth))
        )
    return Ghost(mass_kg=hung.mass_kg, at_m=truth, plate=scope.say("level: {amount}", amount=scope.shown_place(truth)))


def _spoken_as_it_should_be(scope: Scope) -> Iterator[str]:
    hung = scope.asked.detail
    ghost = _as_it_should_be(scope, hung) if isinstance(hung, Hung) else None
    if ghost is not None and ghost.plate is not None:
        yield scope.say("{part}, {plate}", part=scope.look.words.content(hung.name), plate=ghost.plate)


def _waiting_at(scope: Scope, rect: Rect) -> Point:
    """Where a weight waits that hangs nowhere yet."""
    sizes = scope.look.sizes
    return rect.x + sizes.px(64), rect.bottom - sizes.px(64)
