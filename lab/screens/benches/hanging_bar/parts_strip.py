"""What the strip shows of a part by what it is: hung or clamped, the water in a tin, the beads on a cord; its name."""

from __future__ import annotations

from lab.scenes.hanging_view import HangingView
from lab.screens.benches.filling_field import filling_field
from lab.screens.benches.hanging_bar.keys import HOLDING
from lab.screens.benches.strip_fields import copies_and_back, name_field, tie_button, weight_field
from lab.simulation import Hung
from lab.simulation.benches.bar_parts import kind_of
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.widget import Widget


def like(view: HangingView, weight: Hung) -> tuple[Widget, ...]:
    """What it is like: of brass how it is held, of a tin its water, of beads how many."""
    filling = filling_field(view.look, weight)
    if filling is not None:
        return (filling,)
    if kind_of(weight) is not None:
        return ()
    say = view.look.words.say
    options = (("hung", say("hung")), ("clamped", say("clamped")))
    return (ChoiceRow(HOLDING, say("How it is held"), options, weight.hold, show_name=False),)


def more_of(view: HangingView, weight: Hung, *, typed: str | None) -> tuple[Widget, ...]:
    """What else can be done to it.  typed: its name while one is typed."""
    say, name = view.look.words.say, view.look.words.content(weight.name)
    children: list[Widget] = [name_field(view.look, weight.name, typed)]
    if filling_field(view.look, weight) is None:
        children.append(weight_field(view.readings, say("weight of {name}", name=name), weight.mass_kg))
    return (*children, tie_button(view.look, weight.name), *copies_and_back(view.look))
