"""What lies over the screen of a bench: how it looks, the builds, the benches, help.  One at a time."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from lab.outline.words import msg
from lab.screens import top_bar
from lab.screens.benches.builds import BUILD_NAME, BUILDS_DIALOG, BUILDS_DONE, SAVE, builds_dialog, opened, typed_into
from lab.screens.benches.chooser import ALONG, BENCHES_DIALOG, BENCHES_DONE, COMES, bench_chosen, benches_dialog
from lab.screens.benches.face import Face
from lab.screens.intents import Go, Intent, OpenBuild, SaveBuild, TakeAlong
from lab.screens.screen import BuildModel
from lab.screens.settings_panel import LOOKS_DIALOG, LOOKS_DONE, settings_dialog
from lab.simulation.benches.catalogue import kind_of
from lab.ui.events import Event, Key, Text
from lab.ui.look import Look
from lab.ui.outcomes import Chosen
from lab.ui.widgets.button import Button
from lab.ui.widgets.dialog import Dialog
from lab.ui.widgets.label import Label

HELP_DIALOG, HELP_DONE = "help-dialog", "help-done"
HELP_TITLE = msg("What you can do here")
BY_EAR = msg(
    "Balance by ear, under Aa: while it tilts, a tone beside a steady one is lower with the left end down, "
    "higher with the right end down, and silent at level."
)
_OPENS: Mapping[str, str] = {
    top_bar.LOOKS: LOOKS_DIALOG,
    top_bar.BENCHES: BENCHES_DIALOG,
    top_bar.BUILDS: BUILDS_DIALOG,
    top_bar.HELP: HELP_DIALOG,
}
_CLOSES = (LOOKS_DONE, BUILDS_DONE, BENCHES_DONE, HELP_DONE)


class Dialogs:
    """Which dialog is open, the name that is being typed for a build, and whether it comes along to another bench."""

    def __init__(self) -> None:
        self.open = ""
        self._along = False
        self._name: str | None = None

    def show_builds(self) -> None:
        """Open the list of builds."""
        self.open, self._name = BUILDS_DIALOG, None

    def close(self) -> None:
        """Close whichever is open."""
        self.open = ""

    def pressed(self, key: str, model: BuildModel) -> list[Intent] | None:
        """What a button of a dialog, or one that opens it, asks for; None for any other key."""
        if key in _OPENS:
            self.open, self._name, self._along = _OPENS[key], None, False
            return []
        if key in _CLOSES:
            self.close()
            return []
        if key == BUILD_NAME:
            return []
        intents = self._chosen(key, model)
        if intents is not None:
            self.close()
        return intents

    def chosen(self, event: Chosen) -> bool:
        """Whether the event chose something in a dialog."""
        if event.key != ALONG:
            return False
        self._along = event.value == COMES
        return True

    def typed(self, event: Event, model: BuildModel, *, focused: str | None) -> bool:
        """Whether the event was typing into the name of a build."""
        if self.open != BUILDS_DIALOG or focused != BUILD_NAME:
            return False
        name = model.bench.title if self._name is None else self._name
        if isinstance(event, Text):
            self._name = typed_into(name, event.text)
        elif isinstance(event, Key) and event.name == "backspace":
            self._name = name[:-1]
        else:
            return isinstance(event, Key) and event.name == "space"
        return True

    def shown(self, look: Look, model: BuildModel, face: Face[Any]) -> Dialog | None:
        """The open dialog."""
        if self.open == LOOKS_DIALOG:
            return settings_dialog(look, model.setting, sound=True)
        if self.open == BUILDS_DIALOG:
            name = model.bench.title if self._name is None else self._name
            return builds_dialog(look, name, model.builds)
        if self.open == BENCHES_DIALOG:
            return benches_dialog(look, kind_of(model.bench), along=self._along)
        return _help(look, face) if self.open == HELP_DIALOG else None

    def _chosen(self, key: str, model: BuildModel) -> list[Intent] | None:
        bench = bench_chosen(key)
        if bench is not None:
            if bench == kind_of(model.bench).name:
                return []
            return [TakeAlong(bench=bench) if self._along else Go(place="build", name=bench)]
        if key == SAVE:
            name = (self._name or "").strip()
            own = not name or name == model.bench.title
            return [SaveBuild() if own else SaveBuild(path=file_named(name))]
        entry = opened(key, model.builds)
        return None if entry is None else [OpenBuild(path=entry.path)]


def file_named(name: str) -> Path:
    """A file name made of a build's name; the laboratory puts it into the builder's own folder."""
    stem = re.sub(r"[^\w]+", "-", name.lower()).strip("-_")
    return Path(f"{stem or 'build'}.toml")


def _help(look: Look, face: Face[Any]) -> Dialog:
    say = look.words.say
    lines = tuple(Label(f"help-{number}", say(text)) for number, text in enumerate(face.help))
    by_ear = Label("help-by-ear", say(BY_EAR))
    caution = Label("caution", say(face.caution), style="small", color="soft")
    done = Button(HELP_DONE, say("Close"), kind="main")
    return Dialog(HELP_DIALOG, say(HELP_TITLE), children=(*lines, by_ear, caution), buttons=(done,), width=620.0)
