"""The hung plate as a picture with corners, holes, weights and a pin in it that can be grabbed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from lab.outline import Node
from lab.scenes.plate_scene import draw_plate, grab_bounds
from lab.scenes.plate_view import CORNER, CROSSING, EDGE, PIN, REFERENCE, PlateView
from lab.screens.benches.layout import PICTURE
from lab.screens.benches.plate.moves import clip_of, numbers_of, where_is
from lab.screens.benches.plate.words import picture_said, place_said
from lab.screens.benches.strip_keys import GHOST
from lab.ui.geometry import Rect
from lab.ui.widgets.picture import Handle, Picture


def picture(view: PlateView, angle_rad: Callable[[], float]) -> Picture:
    """The bench as a picture with bodies in it.  angle_rad: asked for each time it is drawn."""
    say, words, readings, bench = view.look.words.say, view.look.words, view.readings, view.bench

    def handles(rect: Rect) -> tuple[Handle, ...]:
        found = [_handle(view, key, box) for key, box in grab_bounds(view, rect).items()]
        ghost = view.ghost
        if ghost is not None and ghost.at_m is not None and ghost.pointer is None:
            name = say("hole, not cut yet")
            if ghost.mass_kg is not None:
                name = say("{weight}, not clipped on yet", weight=readings.weight_with_unit(ghost.mass_kg))
            x, y = view.stage(rect).px(view, ghost.at_m)
            box = Rect(x, y, 0.0, 0.0).at_least(view.look.sizes.target, view.look.sizes.target)
            value = place_said(words, readings, ghost.at_m)
            found.append(Handle(GHOST, name, value, box, axis="both", selected=True))
        return tuple(found)

    def nodes(rect: Rect) -> tuple[Node, ...]:
        if bench.crossing_m is None:
            return ()
        x, y = view.stage(rect).px(view, bench.crossing_m)
        value = place_said(words, readings, bench.crossing_m)
        return (Node(CROSSING, "mark", say("where the lines cross"), value=value, bounds=Rect(x - 8, y - 8, 16, 16)),)

    return Picture(
        PICTURE,
        say("Hung plate"),
        lambda canvas, rect: draw_plate(canvas, rect, replace(view, angle_rad=angle_rad())),
        handles=handles,
        nodes=nodes,
        value=picture_said(words, bench, readings),
        least=(320.0, 260.0),
    )


def _handle(view: PlateView, key: str, box: Rect) -> Handle:
    """One body, as it is spoken of and with what can be done to it."""
    name, selected = handle_name(view, key), view.picked == key
    if key.startswith(EDGE):
        value = view.look.words.say("press for a new corner")
        return Handle(key, name, value, box, ("move", "press"), axis="both", selected=selected)
    place = where_is(view, key) or (0.0, 0.0)
    if key == REFERENCE:
        return Handle(key, name, view.readings.length_with_unit(place[0]), box, selected=selected)
    value = place_said(view.look.words, view.readings, place)
    if key == PIN and not view.bench.held:
        # Under a plate that hangs askew a pin carried along would turn it with every step.
        return Handle(key, name, value, box, ("press",), selected=selected)
    if key == PIN:
        return Handle(key, name, value, box, axis="both", selected=selected)
    return Handle(key, name, value, box, ("move", "press", "remove"), axis="both", selected=selected)


def handle_name(view: PlateView, key: str) -> str:
    """What a body in the picture is called."""
    words = view.look.words
    if key in (PIN, REFERENCE):
        return words.say("pin") if key == PIN else words.say("reference line")
    clip = clip_of(view, key)
    if clip is not None:
        return words.content(clip.name)
    corner, edge = numbers_of(key, CORNER), numbers_of(key, EDGE)
    hole, number = (words.number(each, 0) for each in ((corner or edge or (0,))[0], (corner or edge or (0,))[-1] + 1))
    if corner:
        of_hole = words.say("corner {number} of hole {hole}", number=number, hole=hole)
        return of_hole if corner[0] else words.say("corner {number}", number=number)
    if edge:
        of_hole = words.say("edge {number} of hole {hole}", number=number, hole=hole)
        return of_hole if edge[0] else words.say("edge {number}", number=number)
    return words.say("hole {number}", number=key.rsplit("-", 1)[-1])
