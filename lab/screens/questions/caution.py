"""The caution that belongs to every question about something that flies: below the picture, or in the text."""

from __future__ import annotations

from lab.outline.cautions import LEARNING_ONLY
from lab.screens.questions.scope import Scope
from lab.ui.widgets.label import Label
from lab.ui.widgets.widget import Widget

LARGE = 1.2
"""Letters beyond this scale would take the picture's room, so that the caution stands in the text."""


def caution_below(scope: Scope) -> Widget | None:
    """The caution below the picture, None where there is none or where it stands in the text."""
    return _caution(scope) if scope.look.sizes.text_scale <= LARGE else None


def caution_in_text(scope: Scope) -> tuple[Widget, ...]:
    """The caution in the text."""
    caution = _caution(scope) if scope.look.sizes.text_scale > LARGE else None
    return () if caution is None else (caution,)


def _caution(scope: Scope) -> Widget | None:
    if not scope.asked.build.is_airframe:
        return None
    return Label("caution", scope.say(LEARNING_ONLY), style="small", color="soft")
