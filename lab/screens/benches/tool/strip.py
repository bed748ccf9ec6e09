"""The strip for what is picked: its place or length and its weight between − and +, remove; or what goes where."""

from __future__ import annotations

from lab.mechanics import Part, extent_m
from lab.scenes.tool.view import FINGER, REFERENCE, ToolView
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
from lab.screens.benches.tool.keys import CANCEL, HOLDING, LENGTH
from lab.screens.benches.tool.moves import id_of, part_of
from lab.simulation.benches.groups import in_group
from lab.simulation.benches.poles import is_pole
from lab.simulation.benches.tool_edits import LONGEST_M, SHORTEST_M
from lab.simulation.benches.tool_places import places_m
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget


def strip(view: ToolView, parts: PartStrip, *, armed_text: str = "") -> Panel | None:
    """The strip for what is picked, or for a part taken up from the tray; None where there is neither.

    parts: what is half done with what is picked.
    """
    if armed_text:
        children = armed_line(view.look, "fit-where", armed_text, cancel=CANCEL)
    else:
        children = _picked(view, parts)
    if not children:
        return None
    return strip_panel(fitted(view.look, children))


def _picked(view: ToolView, parts: PartStrip) -> tuple[Widget, ...]:
    say, tool = view.look.words.say, view.bench
    if view.picked == FINGER:
        name, place = say("finger"), say("place of the finger")
        return named(name), length_field(view.readings, place, tool.finger_at_m, tool.rail_m)
    if view.picked == REFERENCE and view.lines:
        name, place = say("reference line"), say("place of the reference line")
        return named(name), length_field(view.readings, place, tool.reference_m, tool.rail_m)
    part = part_of(view, view.picked)
    if part is None:
        return ()
    if parts.tying:
        return tie_line(view.look, part.name)
    return _more_of_part(view, part, parts.naming.draft) if parts.more else _of_part(view, part)


def _of_part(view: ToolView, part: Part) -> tuple[Widget, ...]:
    say = view.look.words.say
    name = view.look.words.content(in_group(part.name))
    children: list[Widget] = [named(name)]
    if is_pole(part):
        long_m, ends_m = extent_m(part.shape)[0], (SHORTEST_M, LONGEST_M)
        children.append(length_field(view.readings, say("length of {name}", name=name), long_m, ends_m, key=LENGTH))
    else:
        ends_m = places_m(view.bench.parts, view.bench.ids.index(id_of(view.picked) or 0))
        children.append(length_field(view.readings, say("place of {name}", name=name), part.at_m[0], ends_m))
    children.append(weight_field(view.readings, say("weight of {name}", name=name), part.mass_kg))
    return (*children, *more_and_remove(view.look))


def _more_of_part(view: ToolView, part: Part, typed: str | None) -> tuple[Widget, ...]:
    say = view.look.words.say
    children: list[Widget] = [name_field(view.look, part.name, typed)]
    if not any(extent_m(part.shape)):
        options = (("clamped", say("clipped on")), ("hung", say("on a cord")))
        children.append(ChoiceRow(HOLDING, say("How it is held"), options, part.hold, show_name=False))
    return (*children, tie_button(view.look, part.name), *copies_and_back(view.look))
