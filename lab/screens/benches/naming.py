"""A name that is being typed: it counts when Enter is pressed, and is forgotten when anything else is picked."""

from __future__ import annotations

from dataclasses import dataclass

from lab.screens.benches.builds import typed_into
from lab.screens.benches.strip_keys import NAME
from lab.ui.events import Event, Key, Text


@dataclass(slots=True)
class Naming:
    """What has been typed so far; None where nothing was."""

    draft: str | None = None

    def typed(self, event: Event, name: str, *, focused: str | None) -> bool:
        """Whether the event was typing into the name.  name: as it is."""
        if focused != NAME:
            return False
        so_far = name if self.draft is None else self.draft
        if isinstance(event, Text):
            self.draft = typed_into(so_far, event.text)
        elif isinstance(event, Key) and event.name == "backspace":
            self.draft = so_far[:-1]
        else:
            # The character of the space bar comes as text too.
            return isinstance(event, Key) and event.name == "space"
        return True

    def taken(self) -> str | None:
        """What was typed, once."""
        draft, self.draft = self.draft, None
        return draft
