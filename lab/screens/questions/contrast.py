"""The same picture with one thing changed: the button that shows it, and what it shows in a sentence."""

from __future__ import annotations

from lab.screens.questions.scope import CONTRAST, Scope
from lab.ui.widgets.arrange import Column, Row, Spacer, Steady
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget


def contrast_in_text(scope: Scope) -> bool:
    """Whether the button stands in the text: large letters over a low picture would cover it."""
    sizes = scope.look.sizes
    return sizes.text_scale > 1.2 and not sizes.portrait


def contrast_strip(scope: Scope) -> Widget | None:
    """The button with a line above it; None where nothing is explained, or nothing can be changed."""
    told = scope.told
    if scope.run.phase != "explain" or told is None or told.contrast is None:
        return None
    shown = scope.model.contrast
    note = scope.text(told.contrast.happened) if shown else scope.say("same picture, one thing changed:")
    text = scope.say("Back to your answer") if shown else scope.text(told.contrast.label)
    style, color = ("body", "ink") if shown else ("small", "soft")
    # One is set larger than the other; what lies below stays where it is.
    line = Steady(Label("contrast.note", note, style=style, color=color, align="center"), (Label("", note),))
    lines = Column(
        (line, Row((Spacer(), Button(CONTRAST, text), Spacer()), weights=(1.0, 0.0, 1.0), wraps=False)), gap=4
    )
    return lines if contrast_in_text(scope) else Panel("contrast-ground", children=(lines,), fill="")


def contrast_room(scope: Scope) -> Widget:
    """As high as the strip, before it is there."""
    lines = Column((Label("", " "), Spacer(tall=scope.look.sizes.target / scope.look.sizes.unit)), gap=4)
    return Panel("contrast-room", children=(lines,), fill="")
