"""What the start screen, the lists and the questions have in common: a desk, the notice, two dialogs, the way back."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Sequence
from typing import Generic, Literal, Protocol, TypeVar

from lab.outline import Node
from lab.outline.words import msg
from lab.screens.intents import Back, ChangeSetting, Intent
from lab.screens.notices import notice_intents, notice_toast
from lab.screens.screen import Notice, Outcome, Setting
from lab.screens.settings_panel import LOOKS_DONE, changed_setting, settings_dialog
from lab.screens.top_bar import BACK, HELP, LOOKS, SOUND
from lab.ui.canvas import Canvas
from lab.ui.desk import Desk
from lab.ui.events import Event
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


class PageModel(Protocol):
    """What a page is shown, as far as every page knows it."""

    @property
    def setting(self) -> Setting:
        """What was chosen for the whole lab."""

    @property
    def notice(self) -> Notice | None:
        """The sentence over the screen, if there is one."""


Shown = TypeVar("Shown", bound=PageModel)


class PageScreen(ABC, Generic[Shown]):
    """A screen that is one page: it says what stands on it and what its own events ask for; the rest is here."""

    def __init__(self, look: Look, *, help_lines: Sequence[str], can_go_back: bool = True) -> None:
        self._page = Page(look, help_lines=help_lines, can_go_back=can_go_back)
        self._model: Shown | None = None

    def show(self, model: Shown) -> None:
        """Take a new model."""
        self._model = model
        self._refresh()

    def restyle(self, look: Look) -> None:
        """Take another look."""
        self._page.desk.restyle(look)
        self._refresh()

    def draw(self, canvas: Canvas) -> None:
        """Draw the model that was shown last."""
        self._page.desk.draw(canvas)

    def outline(self) -> Node:
        """The same as a tree."""
        return self._page.desk.outline()

    def handle(self, event: Event) -> Outcome:
        """Answer an event."""
        model = self._model
        if model is None:
            return Outcome()
        intents: list[Intent] = []
        events = self._page.desk.handle(event)
        for happened in events:
            shared = self._page.answer(happened, model.setting)
            intents += self._answer(happened, model) if shared is None else shared
        if events:
            self._refresh()
        return Outcome(consumed=self._page.desk.consumed, intents=tuple(intents))

    @abstractmethod
    def _answer(self, event: WidgetEvent, model: Shown) -> list[Intent]:
        """What an event of the page's own asks for."""

    @abstractmethod
    def _root(self, model: Shown) -> Widget:
        """What stands on the page."""

    def _refresh(self) -> None:
        model = self._model
        if model is not None:
            self._page.show(self._root(model), setting=model.setting, notice=model.notice)
