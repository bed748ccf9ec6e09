"""The strip for what is picked: its place, hung or clamped, remove; behind *More* its weight and copies of it.

Or what is to be hung where.
"""

from __future__ import annotations

from lab.scenes.hanging_view import PIVOT, REFERENCE, HangingView
from lab.screens.benches.hanging_bar.keys import CANCEL, HOLDING
from lab.screens.benches.hanging_bar.moves import weight_of
from lab.screens.benches.strip_fields import (
    armed_line,
    copies_and_back,
    length_field,
    more_and_remove,
    named,
    strip_panel,
    strip_row,
    weight_field,
)
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget


def strip(view: HangingView, *, armed_text: str = "", more: bool = False) -> Panel | None:
    """The strip for what is picked, or for a weight taken up from the tray; None where there is neither.

    more: whether the second half of what can be done to a weight is shown.
    """
    if armed_text:
        children = armed_line(view.look, "hang-where", armed_text, cancel=CANCEL)
    else:
        children = _picked(view, more=more)
    if not children:
        return None
    return strip_panel(strip_row(children))


def _picked(view: HangingView, *, more: bool) -> tuple[Widget, ...]:
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
    name = view.look.words.content(weight.name)
    if more:
        return (
            named(name),
            weight_field(view.readings, say("weight of {name}", name=name), weight.mass_kg),
            *copies_and_back(view.look),
        )
    options = (("hung", say("hung")), ("clamped", say("clamped")))
    return (
        named(name),
        length_field(view.readings, say("place of {name}", name=name), weight.at_m, of_bar),
        ChoiceRow(HOLDING, say("How it is held"), options, weight.hold, show_name=False),
        *more_and_remove(view.look),
    )
