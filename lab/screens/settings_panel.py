"""How the lab looks and speaks: text size, colours, motion, sound, balance by ear, language."""

from __future__ import annotations

from collections.abc import Mapping

from lab.outline.words import LANGUAGES, msg
from lab.screens.intents import ChangeSetting
from lab.screens.screen import Setting
from lab.ui.look import Look
from lab.ui.outcomes import Chosen, WidgetEvent
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.dialog import Dialog
from lab.ui.widgets.label import Label
from lab.ui.widgets.widget import Widget

LOOKS_DIALOG, LOOKS_DONE = "looks-dialog", "looks-done"
_PREFIX = "setting-"

TEXT_SIZES: Mapping[str, str] = {"1.0": msg("usual"), "1.5": msg("larger"), "2.0": msg("twice as large")}
THEME_NAMES: Mapping[str, str] = {"paper": msg("paper"), "contrast": msg("high contrast"), "print": msg("print")}
MOTION: Mapping[str, str] = {"False": msg("moving"), "True": msg("show the end at once")}
SOUND: Mapping[str, str] = {"True": msg("on"), "False": msg("off")}
BY_EAR: Mapping[str, str] = {"False": msg("off"), "True": msg("on")}
BY_EAR_NOTE = msg("A tone beside a steady one is lower with the left end down, higher with the right. Level is silent.")
# The made-up languages are not among them: they test the layout, and nobody reads them.
LANGUAGE_NAMES: Mapping[str, str] = {"en": msg("English")}


def settings_dialog(look: Look, setting: Setting, *, sound: bool = False, above: tuple[Widget, ...] = ()) -> Dialog:
    """The dialog behind *Aa*.

    sound: whether there is any to be switched.  above: what the screen itself adds before the rest.
    """
    say = look.words.say
    rows: list[Widget] = [
        *above,
        _row(look, "text_scale", say("Text size"), TEXT_SIZES, f"{setting.text_scale:.1f}"),
        _row(look, "theme", say("Colours"), THEME_NAMES, setting.theme),
        _row(look, "reduced_motion", say("When something is let go"), MOTION, str(setting.reduced_motion)),
    ]
    if sound:
        rows.append(_row(look, "sound", say("Sound"), SOUND, str(setting.sound)))
        rows.append(_row(look, "balance_by_ear", say("Balance by ear"), BY_EAR, str(setting.balance_by_ear)))
        rows.append(Label("by-ear-note", say(BY_EAR_NOTE), style="small", color="soft"))
    languages = {code: LANGUAGE_NAMES[code] for code in LANGUAGES if code in LANGUAGE_NAMES}
    if len(languages) > 1:
        rows.append(_row(look, "language", say("Language"), languages, setting.language))
    done = Button(LOOKS_DONE, say("Done"), kind="main")
    return Dialog(LOOKS_DIALOG, say("How it looks and speaks"), children=tuple(rows), buttons=(done,), width=620.0)


def changed_setting(event: WidgetEvent) -> ChangeSetting | None:
    """What a choice in the dialog asks for; None for any other event."""
    if not isinstance(event, Chosen) or not event.key.startswith(_PREFIX):
        return None
    name = event.key.removeprefix(_PREFIX)
    if name == "text_scale":
        return ChangeSetting(name=name, value=float(event.value))
    if name in ("reduced_motion", "sound", "balance_by_ear"):
        return ChangeSetting(name=name, value=event.value == "True")
    return ChangeSetting(name=name, value=event.value)


def _row(look: Look, name: str, title: str, options: Mapping[str, str], value: str) -> ChoiceRow:
    said = tuple((key, look.words.say(text)) for key, text in options.items())
    return ChoiceRow(_PREFIX + name, title, said, value)
