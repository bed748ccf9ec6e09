"""The mobile as a picture with bodies in it that can be grabbed."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from lab.scenes.mobile.scene import draw_mobile, grab_bounds
from lab.scenes.mobile.view import BAR, HOOK, REFERENCE, WEIGHT, MobileView
from lab.screens.benches.layout import PICTURE
from lab.screens.benches.mobile.words import hook_said, picture_said, ring_said, weight_said
from lab.screens.benches.strip_keys import GHOST
from lab.simulation.benches import Beam
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.widgets.picture import Handle, HandleAction, Picture


def picture(view: MobileView, angles_rad: Callable[[], tuple[float, ...]], *, armed: bool) -> Picture:
    """The bench as a picture.

    angles_rad: asked for each time it is drawn.  armed: something from the tray was taken up by a press.
    """
    words = view.look.words

    def handles(rect: Rect) -> tuple[Handle, ...]:
        bounds = grab_bounds(view, rect)
        found: list[Handle] = []
        if REFERENCE in bounds:
            place = view.readings.length_with_unit(view.bench.reference_m)
            picked = view.picked == REFERENCE
            found.append(Handle(REFERENCE, words.say("reference line"), place, bounds[REFERENCE], selected=picked))
        for beam in view.bench.beams:
            found += _of_bar(view, beam, bounds, armed=armed)
        return tuple(found)

    def draw(canvas: Canvas, rect: Rect) -> None:
        now = view if view.coming is not None else replace(view, angles_rad=angles_rad())
        draw_mobile(canvas, rect, now)

    return Picture(
        PICTURE,
        words.say("Mobile"),
        draw,
        handles=handles,
        value=picture_said(words, view.bench),
        least=(320.0, 300.0),
    )


def _of_bar(view: MobileView, beam: Beam, bounds: Mapping[str, Rect], *, armed: bool) -> list[Handle]:
    """The hook of a bar, the bar, and its weights from left to right; what is not hung yet as such."""
    words, readings, bench = view.look.words, view.readings, view.bench
    above = bench.beam(beam.above)
    if beam.id == view.coming and above is not None:
        return [_not_hung(view, beam.mass_kg, bounds[f"{BAR}{beam.id}"])] if armed else []
    found, name = [], words.content(beam.name)
    key, said = f"{BAR}{beam.id}", ring_said(words, beam, readings)
    actions: tuple[HandleAction, ...] = ("move", "press") if above is None else ("move", "press", "remove")
    found.append(Handle(key, name, said, bounds[key], actions, selected=view.picked == key))
    if above is not None:
        key, said = f"{HOOK}{beam.id}", hook_said(words, beam, above, readings)
        hook = words.say("hook of {bar}", bar=name)
        found.append(Handle(key, hook, said, bounds[key], actions, selected=view.picked == key))
    for weight in sorted(beam.weights, key=lambda each: (each.at_m, each.id)):
        key = f"{WEIGHT}{weight.id}"
        if weight.id == view.coming:
            found += [_not_hung(view, weight.mass_kg, bounds[key])] if armed else []
            continue
        said, picked = weight_said(words, weight, beam, readings), view.picked == key
        found.append(
            Handle(key, words.content(weight.name), said, bounds[key], ("move", "press", "remove"), selected=picked)
        )
    return found


def _not_hung(view: MobileView, mass_kg: float, box: Rect) -> Handle:
    """What is taken up and waits for its place: arrows carry it along bars and from bar to bar."""
    name = view.look.words.say("{weight}, not hung yet", weight=view.readings.weight_with_unit(mass_kg))
    return Handle(GHOST, name, "", box, axis="both", selected=True)
