"""The strip for what is picked: its place, hung or clamped, remove; behind *More* its weight and copies of it.

Or what is to be hung where.
"""

from __future__ import annotations

from lab.scenes.hanging_view import PIVOT, REFERENCE, HangingView
from lab.screens.benches.hanging_bar.keys import CANCEL
from lab.screens.benches.hanging_bar.moves import weight_of
from lab.screens.benches.hanging_bar.parts_strip import like, more_of
from lab.screens.benches.part_strip import PartStrip
from lab.screens.benches.strip_fields import (
    armed_line,
    fitted,
    length_field,
    more_and_remove,
    named,
    strip_panel,
    tie_line,
)
from lab.simulation.benches.bar_parts import span_m
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget


def strip(view: HangingView, parts: PartStrip, *, armed_text: str = "") -> Panel | None:
    """The strip for what is picked, or for a weight taken up from the tray; None where there is neither.

    parts: what is half done with what is picked.
    """
    if armed_text:
        children = armed_line(view.look, "hang-where", armed_text, cancel=CANCEL)
    else:
        children = _picked(view, parts)
    if not children:
        return None
    return strip_panel(fitted(view.look, children))


def _picked(view: HangingView, parts: PartStrip) -> tuple[Widget, ...]:
    say, bench = view.look.words.say, view.bench
    of_bar = bench.bar.left_m, bench.bar.right_m
    if view.picked == PIVOT:
        return (
            named(say("pivot")),
            length_field(view.readings, say("place of the pivot"), bench.pivot.at_m, of_bar),
        )
    if view.picked == REFERENCE and view.lines:
        return (
            named(say("reference line")),
            length_field(view.readings, say("place of the reference line"), bench.reference_m, bench.rail_m),
        )
    weight = weight_of(view, view.picked)
    if weight is None:
        return ()
    if parts.tying:
        return tie_line(view.look, weight.name)
    if parts.more:
        return more_of(view, weight, typed=parts.naming.draft)
    name = view.look.words.content(weight.name)
    return (
        named(name),
        length_field(view.readings, say("place of {name}", name=name), weight.at_m, span_m(bench.bar, weight)),
        *like(view, weight),
        *more_and_remove(view.look),
    )
