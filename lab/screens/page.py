"""What the start screen, the list and the question have in common: a desk, the notice, two dialogs, the way back."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from lab.outline.words import msg
from lab.screens.intents import Back, ChangeSetting, Intent
from lab.screens.notices import notice_intents, notice_toast
from lab.screens.screen import Notice, Setting
from lab.screens.settings_panel import LOOKS_DONE, changed_setting, settings_dialog
from lab.screens.top_bar import BACK, HELP, LOOKS, SOUND
from lab.ui.desk import Desk
from lab.ui.look import Look
from lab.ui.outcomes import Escaped, Pressed, WidgetEvent
from lab.ui.widgets.button import Button
from lab.ui.widgets.dialog import Dialog
from lab.ui.widgets.label import Label
from lab.ui.widgets.widget import Widget

Opened = Literal["", "looks", "help"]
HELP_DONE = "help-done"
KEYS_HELP = msg("By keys: Tab goes on, arrows choose and move, Enter presses, Escape goes back.")


class Page:
    """One desk with its dialogs.  opened: which dialog is open.  can_go_back: whether Escape leads anywhere."""

    def __init__(self, look: Look, *, help_lines: Sequence[str], can_go_back: bool = True) -> None:
        """help_lines: templates, what to do here, one paragraph each."""
        self.desk = Desk(look)
        self.opened: Opened = ""
        self._help = (*help_lines, KEYS_HELP)
        self._can_go_back = can_go_back

    @property
    def look(self) -> Look:
        """Colours, sizes and words in force."""
        return self.desk.look

    def show(self, root: Widget, *, setting: Setting, notice: Notice | None) -> None:
        """Put a tree on the desk, with what is open over it."""
        dialog: Dialog | None = None
        if self.opened == "looks":
            dialog = settings_dialog(self.look, setting, sound=True)
        elif self.opened == "help":
            dialog = self._help_dialog()
        self.desk.show(root, dialog=dialog, toast=notice_toast(self.look, notice))

    def sound_shown(self, setting: Setting) -> bool | None:
        """Whether sound is on, for the bar at the top; None where large letters need the room (the dialog has it)."""
        sizes = self.look.sizes
        return None if sizes.text_scale > 1.2 or sizes.portrait else setting.sound

    def answer(self, event: WidgetEvent, setting: Setting) -> tuple[Intent, ...] | None:
        """What an event asks for that every page knows; None where it is the page's own."""
        changed = changed_setting(event) or notice_intents(event)
        if changed:
            return changed if isinstance(changed, tuple) else (changed,)
        match event:
            case Pressed(key=key) if key == LOOKS:
                self.opened = "looks"
            case Pressed(key=key) if key == HELP:
                self.opened = "help"
            case Pressed(key=key) if key in (LOOKS_DONE, HELP_DONE):
                self.opened = ""
            case Pressed(key=key) if key == SOUND:
                return (ChangeSetting(name="sound", value=not setting.sound),)
            case Pressed(key=key) if key == BACK:
                return (Back(),)
            case Escaped(key=""):
                return (Back(),) if self._can_go_back else ()
            case Escaped():
                self.opened = ""
            case _:
                return None
        return ()

    def _help_dialog(self) -> Dialog:
        say = self.look.words.say
        lines = tuple(Label(f"help-line-{number}", say(line)) for number, line in enumerate(self._help))
        done = Button(HELP_DONE, say("Done"), kind="main")
        return Dialog("help-dialog", say("What to do here"), children=lines, buttons=(done,), width=560.0)
