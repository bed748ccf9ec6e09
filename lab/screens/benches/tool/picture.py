"""The tool as a picture with bodies in it that can be grabbed."""

from __future__ import annotations

from collections.abc import Callable

from lab.mechanics import Part
from lab.scenes.tool.scene import draw_built_tool, grab_bounds
from lab.scenes.tool.view import FINGER, REFERENCE, ToolView, part_key
from lab.screens.benches.layout import PICTURE
from lab.screens.benches.strip_keys import GHOST
from lab.screens.benches.tool.words import part_said, picture_said
from lab.ui.geometry import Rect
from lab.ui.widgets.picture import Handle, Picture


def picture(view: ToolView, moved: Callable[[ToolView], ToolView]) -> Picture:
    """The bench as a picture with bodies in it.  moved: the view as it is when it is drawn, for what moves."""
    words = view.look.words

    def handles(rect: Rect) -> tuple[Handle, ...]:
        return _handles(view, rect)

    return Picture(
        PICTURE,
        words.say("Tool on a finger"),
        lambda canvas, rect: draw_built_tool(canvas, rect, moved(view)),
        handles=handles,
        value=picture_said(words, view.bench, view.readings),
        least=(320.0, 260.0),
    )


def _handles(view: ToolView, rect: Rect) -> tuple[Handle, ...]:
    say, bench = view.look.words.say, view.bench
    place = view.readings.length_with_unit
    bounds = grab_bounds(view, rect)
    if view.ghost is not None and view.ghost.pointer is None:
        # While a place is looked for the tool is what is tapped, and no part of it is in the way.
        return tuple(_on_its_way(view, box) for key, box in bounds.items() if key == part_key(bench.next_id))
    parts = {part_key(id_): part for id_, part in zip(bench.ids, bench.parts, strict=True)}
    found = []
    for key, box in bounds.items():
        if key in parts:
            found.append(_of_part(view, key, parts[key], box))
        elif key == FINGER:
            value = place(bench.finger_at_m)
            found.append(Handle(key, say("finger"), value, box, selected=view.picked == key))
        elif key == REFERENCE:
            value = place(bench.reference_m)
            found.append(Handle(key, say("reference line"), value, box, selected=view.picked == key))
    return tuple(found)


def _on_its_way(view: ToolView, box: Rect) -> Handle:
    """What was taken up from the tray, where it would go."""
    ghost, words = view.ghost, view.look.words
    name, at_m = ("", None) if ghost is None else (words.content(ghost.part.name), ghost.at_m)
    value = "" if at_m is None else view.readings.length_with_unit(at_m)
    return Handle(GHOST, words.say("{part}, not put on yet", part=name), value, box, selected=True)


def _of_part(view: ToolView, key: str, part: Part, box: Rect) -> Handle:
    words = view.look.words
    said = part_said(words, part, view.readings)
    return Handle(key, words.content(part.name), said, box, ("move", "press", "remove"), selected=view.picked == key)
