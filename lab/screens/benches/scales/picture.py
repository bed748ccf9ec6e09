"""The scales bench as a picture with bodies in it that can be grabbed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Literal

from lab.scenes.scales.scene import draw_scales_bench, grab_bounds
from lab.scenes.scales.stage import stage_of
from lab.scenes.scales.view import REFERENCE, Moment, ScalesView, load_key, scale_key, window
from lab.screens.benches.layout import PICTURE
from lab.screens.benches.scales.words import load_said, picture_said, scale_said
from lab.screens.benches.strip_keys import GHOST
from lab.ui.geometry import Rect
from lab.ui.widgets.picture import Handle, HandleAction, Picture


def picture(view: ScalesView, moment: Callable[[], Moment]) -> Picture:
    """The bench as a picture with bodies in it.  moment: asked for each time it is drawn."""
    say = view.look.words.say

    def handles(rect: Rect) -> tuple[Handle, ...]:
        return (*_scales(view, rect), *_loads(view, rect), *_ghost(view, rect))

    return Picture(
        PICTURE,
        say("Scales"),
        lambda canvas, rect: draw_scales_bench(canvas, rect, replace(view, moment=moment())),
        handles=handles,
        value=picture_said(view.look.words, view),
        least=(320.0, 260.0),
    )


def _axis(view: ScalesView) -> Literal["along", "both"]:
    return "both" if view.three else "along"


def _scales(view: ScalesView, rect: Rect) -> list[Handle]:
    words, bounds = view.look.words, grab_bounds(view, rect)
    found = []
    if REFERENCE in bounds:
        value = view.readings.length_with_unit(view.bench.reference_m)
        picked = view.picked == REFERENCE
        found.append(Handle(REFERENCE, words.say("reference line"), value, bounds[REFERENCE], selected=picked))
    for number, scale in enumerate(view.bench.scales):
        key = scale_key(scale)
        said = scale_said(words, view, number, window(view, number))
        name = words.content(scale.name)
        found.append(Handle(key, name, said, bounds[key], axis=_axis(view), selected=view.picked == key))
    return found


def _loads(view: ScalesView, rect: Rect) -> list[Handle]:
    words, bounds, carrier = view.look.words, grab_bounds(view, rect), view.bench.carrier
    found = []
    # What carries lies under everything else, for pointers too.
    for load in sorted(view.bench.loads, key=lambda one: (one is not carrier, one.at_m)):
        key = load_key(load.id)
        if key not in bounds:
            continue
        actions: tuple[HandleAction, ...] = ("press",) if load is carrier else ("move", "press", "remove")
        said = load_said(words, view, load)
        name, picked = words.content(load.name), view.picked == key
        found.append(Handle(key, name, said, bounds[key], actions, axis=_axis(view), selected=picked))
    return found


def _ghost(view: ScalesView, rect: Rect) -> list[Handle]:
    ghost = view.ghost
    if ghost is None or ghost.at_m is None or ghost.pointer is not None:
        return []
    stage, target = stage_of(view, rect), view.look.sizes.target
    at = ghost.at_m
    panel = stage.top or stage.side
    if panel is None:
        return []
    x, y = panel.px((at[0], at[1], ghost.part.at_m[2]))
    name = view.look.words.say("{weight}, not put on yet", weight=view.readings.weight_with_unit(ghost.part.mass_kg))
    box = Rect(x - target / 2, y - target / 2, target, target)
    return [Handle(GHOST, name, view.readings.length_with_unit(at[0]), box, axis=_axis(view), selected=True)]
