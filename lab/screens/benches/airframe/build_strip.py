"""The strip for what is picked of an airframe: its place, remove; behind *More* its weight and copies.

Of its place the two axes can be typed that the view shows in which it was picked.
"""

from __future__ import annotations

from lab.mechanics import Vector
from lab.screens.benches.airframe.build_view import AXIS_INDEX, FACE_AXES, REFERENCE, BuildView, face_of_key
from lab.screens.benches.part_strip import PartStrip
from lab.screens.benches.strip_fields import (
    armed_line,
    copies_and_back,
    fitted,
    length_field,
    more_and_remove,
    name_field,
    named,
    strip_panel,
    tie_button,
    tie_line,
    weight_field,
)
from lab.screens.benches.strip_keys import PLACE, REMOVE
from lab.simulation.benches.airframe_reach import reach_m
from lab.ui.widgets.button import Button
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

CANCEL, ACROSS, UP = "put-cancel", "picked-across", "picked-up"
FIELDS = (PLACE, ACROSS, UP)


def build_strip(view: BuildView, parts: PartStrip, *, armed_text: str = "") -> Panel | None:
    """The strip for what is picked, or taken up from the tray; None where there is neither."""
    if armed_text:
        children = armed_line(view.look, "put-where", armed_text, cancel=CANCEL)
    else:
        children = _picked(view, parts)
    return strip_panel(fitted(view.look, children)) if children else None


def _picked(view: BuildView, parts: PartStrip) -> tuple[Widget, ...]:
    words, bench = view.look.words, view.bench
    say = words.say
    if view.picked == REFERENCE and view.told:
        index = AXIS_INDEX[bench.axis]
        field = length_field(
            view.readings, say("place of the reference line"), bench.reference_m[index], reach_m(bench)[index]
        )
        return named(say("reference line")), field
    part, tank = view.picked_part, view.picked_tank
    if tank is not None:
        name = words.content(tank.name)
        return named(name), *_places(view, name, tank.at_m), Button(REMOVE, say("Remove"), kind="quiet")
    if part is None:
        return ()
    if parts.tying:
        return tie_line(view.look, part.name)
    name = words.content(part.name)
    if parts.more:
        called = name_field(view.look, part.name, parts.naming.draft)
        weight = weight_field(view.readings, say("weight of {name}", name=name), part.mass_kg)
        return called, weight, tie_button(view.look, part.name), *copies_and_back(view.look)
    return named(name), *_places(view, name, part.at_m), *more_and_remove(view.look)


def _places(view: BuildView, name: str, at_m: Vector) -> tuple[Widget, ...]:
    say, spans = view.look.words.say, reach_m(view.bench)
    face = face_of_key(view.picked)
    shown = (0, 1, 2) if face is None else FACE_AXES[face]
    called = (
        say("place of {name}", name=name),
        say("place of {name} across", name=name),
        say("place of {name} up", name=name),
    )
    return tuple(
        length_field(view.readings, text, at_m[axis], spans[axis], key=FIELDS[axis])
        for axis, text in enumerate(called)
        if axis in shown
    )
