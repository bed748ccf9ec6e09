"""The same picture with one thing changed: what will it do then?  Said first, then shown and told in a sentence."""

from __future__ import annotations

from lab.lesson import Foresee
from lab.lesson.foretelling import Foretelling
from lab.lesson.forms import Option
from lab.screens.intents import Answer, Intent, ShowContrast
from lab.screens.questions.scope import CONTRAST, Scope
from lab.ui.widgets.arrange import Column, Row, Spacer, Steady
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

FORETELL = "foretell."
"""Begins the key of a button that says what the changed picture will do."""


def contrast_in_text(scope: Scope) -> bool:
    """Whether the buttons stand in the text: large letters over a low picture would cover it."""
    sizes = scope.look.sizes
    return sizes.text_scale > (1.7 if sizes.portrait else 1.2)


def contrast_strip(scope: Scope) -> Widget | None:
    """The question, or the button with a line above it; None where nothing is explained, or nothing can be changed."""
    told = scope.told
    if scope.run.phase != "explain" or told is None or told.contrast is None:
        return None
    foretold = scope.run.foretold
    asks = foretold is not None and scope.run.foreseen is None and not scope.model.contrast
    lines = _asked(scope, foretold) if asks and foretold is not None else _shown(scope)
    return lines if contrast_in_text(scope) else Panel("contrast-ground", children=(lines,), fill="")


def contrast_room(scope: Scope) -> Widget:
    """As high as the strip, before it is there."""
    lines = Column((Label("", " "), Spacer(tall=scope.look.sizes.target / scope.look.sizes.unit)), gap=4)
    return Panel("contrast-room", children=(lines,), fill="")


def foretell(scope: Scope, key: str) -> list[Intent]:
    """What a press on one of the options asks for: that answer, and then to see it."""
    foretold, said = scope.run.foretold, key.removeprefix(FORETELL)
    if foretold is None or not foretold.form.takes(said):
        return []
    given = scope.text(foretold.form.shown(said))
    return [Answer(action=Foresee(key=said, given=given)), ShowContrast(shown=True)]


def _asked(scope: Scope, foretold: Foretelling) -> Widget:
    """What is changed, what is asked of it, one button for each answer."""
    told = scope.told
    label = "" if told is None or told.contrast is None else scope.text(told.contrast.label)
    line = Label(
        "contrast.note", scope.say("{what} {then}", what=label, then=scope.text(foretold.prompt)), align="center"
    )
    options = list(foretold.form.options)
    if scope.look.sizes.mirrored:
        # Left and right are those of the picture, which is never mirrored.
        options.reverse()
    buttons = tuple(_option(scope, option) for option in options)
    if contrast_in_text(scope):
        return Column((line, Column(buttons)), gap=4)
    sides = (1.0, *(0.0 for _ in buttons), 1.0)
    return Column((line, Row((Spacer(), *buttons, Spacer()), weights=sides, wraps=False)), gap=4)


def _option(scope: Scope, option: Option) -> Button:
    return Button(FORETELL + option.key, scope.text(option.shown))


def _shown(scope: Scope) -> Widget:
    """What it showed, and the button that shows it again or goes back."""
    told, run, shown = scope.told, scope.run, scope.model.contrast
    contrast = None if told is None else told.contrast
    if contrast is None:
        return Spacer()
    happened = scope.text(contrast.happened)
    if run.foretold is not None and run.foreseen is not None:
        said = scope.text(run.foretold.form.shown(run.foreseen))
        happened = scope.say("You said: {answer}. {happened}", answer=said, happened=happened)
    note = happened if shown else scope.say("same picture, one thing changed:")
    text = scope.say("Back to your answer") if shown else scope.text(contrast.label)
    style, color = ("body", "ink") if shown else ("small", "soft")
    # One is set larger than the other; what lies below stays where it is.
    line = Steady(Label("contrast.note", note, style=style, color=color, align="center"), (Label("", note),))
    button = Button(CONTRAST, text)
    return Column((line, Row((Spacer(), button, Spacer()), weights=(1.0, 0.0, 1.0), wraps=False)), gap=4)
