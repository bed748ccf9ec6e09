"""What of a picture can be taken hold of, read out and checked: bounds in pixels, nodes of the outline."""

from __future__ import annotations

from collections.abc import Mapping

from lab.mechanics import Part
from lab.outline import Node
from lab.scenes.views.holding import scale_boxes
from lab.scenes.views.margins import home_of
from lab.scenes.views.naming import short_name, thing_box
from lab.scenes.views.place_marks import BEFORE_PX, MARK_PX, band_rect
from lab.scenes.views.stage import Panel, ViewsStage, fitted, views_stage
from lab.scenes.views.things import surface_of, things_of
from lab.scenes.views.told_mark import told_rect
from lab.scenes.views.view import BodyView, LineMark
from lab.ui.geometry import Rect

LINE_HALF_PX = 6.0
SAME_M = 1e-6
"""Nearer to the middle than this nobody sees a part to one side of it."""


def view_bounds(view: BodyView, rect: Rect) -> Mapping[str, Rect]:
    """Where things and marks are drawn, by key, each in the first face that shows it.

    Keys: part:NAME, tank:NAME, surface:NAME, balance, before, told, neutral, reference, band:NUMBER, scale:KEY, hook.
    """
    view = fitted(view, rect)
    stage = views_stage(view, rect)
    first = next(iter(stage.panels.values()))
    bounds: dict[str, Rect] = {}
    for thing in things_of(view.body):
        for panel in stage.panels.values():
            box = thing_box(view, panel, thing)
            if box is not None and thing.name:
                bounds[thing.key] = box.common(rect)
                break
    for key, mark, half in (("balance", view.balance, MARK_PX), ("before", view.before, BEFORE_PX)):
        if mark is not None:
            bounds[key] = _round_box(first, first.px(mark.at_m), view.look.sizes.px(half))
    bounds.update(_line_bounds(view, stage))
    scaled = next((panel for panel in stage.panels.values() if panel.face != "top"), None)
    if view.scales and scaled is not None:
        bounds.update({f"scale:{key}": box for key, box in scale_boxes(view, scaled).items()})
    if view.hanging is not None and view.hanging.cord:
        hung = scaled or first
        bounds["hook"] = _round_box(hung, hung.px(view.hanging.at_m), view.look.sizes.px(LINE_HALF_PX))
    return bounds


def _round_box(panel: Panel, at: tuple[float, float], half: float) -> Rect:
    return Rect(at[0] - half, at[1] - half, 2 * half, 2 * half)


def _line_bounds(view: BodyView, stage: ViewsStage) -> dict[str, Rect]:
    found: dict[str, Rect] = {}
    half = view.look.sizes.px(LINE_HALF_PX)
    for key, line in (("neutral", view.neutral), ("reference", view.reference)):
        panel = None if line is None else _home(view, stage, line)
        if line is not None and panel is not None:
            at = panel.axis_px(line.axis, line.at_m) or 0.0
            frame = panel.frame
            level = panel.lies_level(line.axis)
            found[key] = Rect(at - half, frame.y, 2 * half, frame.h) if level else Rect(
                frame.x, at - half, frame.w, 2 * half)  # fmt: skip
    if view.told is not None:
        panel = _home(view, stage, view.told)
        if panel is not None:
            found["told"] = told_rect(view, panel, view.told)
    for number, band in enumerate(view.bands):
        home = home_of(view, band.axis)
        if home is not None:
            found[f"band:{number}"] = band_rect(view, stage.panels[home], number)
    return found


def _home(view: BodyView, stage: ViewsStage, line: LineMark) -> Panel | None:
    home = home_of(view, line.axis)
    return None if home is None else stage.panels[home]


def view_nodes(view: BodyView, rect: Rect) -> tuple[Node, ...]:
    """Everything that the picture shows as marks of the outline, in reading order."""
    bounds = view_bounds(view, rect)
    nodes = []
    for key, name, value in _said(view):
        box = bounds.get(key, rect)
        state = frozenset({"selected"}) if key == f"part:{view.picked}" or key == view.picked else frozenset()
        nodes.append(Node(f"view.{key}", "mark", name, value, state, box))
    return tuple(nodes)


def view_said(view: BodyView) -> tuple[str, ...]:
    """The same in sentences, for those who listen."""
    say = view.look.words.say
    return tuple(say("{name}: {value}", name=name, value=value) if value else name for _, name, value in _said(view))


def _said(view: BodyView) -> list[tuple[str, str, str]]:
    """Key, name and value of each thing that is shown."""
    words = view.look.words
    found = [_said_part(view, part) for part in view.body.parts]
    marks = [("balance", view.balance), ("before", view.before), ("told", view.told), ("neutral", view.neutral),
             ("reference", view.reference)]  # fmt: skip
    found += [(key, mark.text, "") for key, mark in marks if mark is not None and mark.text]
    found += [(f"band:{number}", band.text, "") for number, band in enumerate(view.bands) if band.text]
    found += [(f"ghost:{number}", ghost.text, "") for number, ghost in enumerate(view.ghosts) if ghost.text]
    for scale in view.scales:
        shown = words.say("not known yet") if scale.reading == "?" else scale.reading
        found.append((f"scale:{scale.key}", scale.name or words.say("scale"), shown))
    if view.hanging is not None and view.hanging.cord:
        found.append(("hook", words.say("hangs by a cord"), ""))
    if view.turning is not None and view.turning.text:
        found.append(("turning", view.turning.text, ""))
    return found


def _said_part(view: BodyView, part: Part) -> tuple[str, str, str]:
    words, readings = view.look.words, view.readings
    keys = {thing.key for thing in things_of(view.body)}
    surface = surface_of(view.body, part)
    key = f"tank:{part.name}" if f"tank:{part.name}" in keys else f"part:{part.name}"
    if key not in keys and surface is not None:
        key = f"surface:{surface.name}"
    name = words.content(short_name(view, part.name))
    if view.labels != "weights":
        return key, name, ""
    weight, along = readings.weight_with_unit(part.mass_kg), readings.length_with_unit(part.at_m[0])
    place = _with_side(view, along, part.at_m[1])
    if part.cut:
        return key, name, words.say("{weight} taken away at {place}", weight=weight, place=place)
    return key, name, words.say("{weight} at {place}", weight=weight, place=place)


def _with_side(view: BodyView, along: str, across_m: float) -> str:
    """A place along, and how far to one side where the picture shows that."""
    words = view.look.words
    if view.faces == ("side",) or abs(across_m) < SAME_M:
        return along
    away = view.readings.length_with_unit(abs(across_m))
    if across_m < 0:
        return words.say("{place}, {away} left of the middle", place=along, away=away)
    return words.say("{place}, {away} right of the middle", place=along, away=away)
