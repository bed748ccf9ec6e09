"""The hanging bar as a picture with bodies in it that can be grabbed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from lab.scenes.hanging_scene import draw_hanging_bar, grab_bounds
from lab.scenes.hanging_view import GHOST_ID, PIVOT, REFERENCE, HangingView, weight_key
from lab.scenes.weights import hung_places, level_rect
from lab.screens.benches.hanging_bar.words import picture_said, weight_said
from lab.screens.benches.layout import PICTURE
from lab.screens.benches.strip_keys import GHOST
from lab.ui.geometry import Rect
from lab.ui.widgets.picture import Handle, Picture


def picture(view: HangingView, angle_rad: Callable[[], float]) -> Picture:
    """The bench as a picture with bodies in it.  angle_rad: asked for each time it is drawn."""
    say, words, readings, bench = view.look.words.say, view.look.words, view.readings, view.bench

    def handles(rect: Rect) -> tuple[Handle, ...]:
        bounds = grab_bounds(view, rect)
        place = readings.length_with_unit
        found = [Handle(PIVOT, say("pivot"), place(bench.pivot.at_m), bounds[PIVOT], selected=view.picked == PIVOT)]
        if REFERENCE in bounds:
            box, value = bounds[REFERENCE], place(bench.reference_m)
            found.append(Handle(REFERENCE, say("reference line"), value, box, selected=view.picked == REFERENCE))
        for weight in sorted(bench.weights, key=lambda one: one.at_m):
            key = weight_key(weight)
            said = weight_said(words, weight, readings)
            name, picked = words.content(weight.name), view.picked == key
            found.append(Handle(key, name, said, bounds[key], ("move", "press", "remove"), selected=picked))
        ghost = view.ghost
        if ghost is not None and ghost.at_m is not None and ghost.pointer is None:
            name = say("{weight}, not hung yet", weight=readings.weight_with_unit(ghost.mass_kg))
            found.append(Handle(GHOST, name, place(ghost.at_m), _ghost_rect(view, rect), selected=True))
        return tuple(found)

    return Picture(
        PICTURE,
        say("Hanging bar"),
        lambda canvas, rect: draw_hanging_bar(canvas, rect, replace(view, angle_rad=angle_rad())),
        handles=handles,
        value=picture_said(words, bench, readings),
        least=(320.0, 260.0),
    )


def _ghost_rect(view: HangingView, rect: Rect) -> Rect:
    stage, target = view.stage(rect), view.look.sizes.target
    place = hung_places(view, stage).get(GHOST_ID)
    if place is not None:
        return place.body.at_least(target, target)
    ghost = view.ghost
    return rect if ghost is None else level_rect(view, stage, ghost.coming).at_least(target, target)
