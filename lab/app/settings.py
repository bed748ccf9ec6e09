"""What was chosen for the whole lab, kept in one small JSON file."""

from __future__ import annotations

import json
import os
import tempfile
from collections.abc import Callable
from dataclasses import asdict, dataclass, replace
from pathlib import Path
from typing import Any, Literal

from lab.attempts import new_code, valid_code
from lab.outline.words import LANGUAGES

FORMAT = 1
THEMES = ("paper", "contrast", "print")
TEXT_SCALES = (1.0, 1.5, 2.0)
UNITS = ("", "g-cm", "kg-m", "N-m", "lb-in")


class SettingsError(Exception):
    """The settings cannot be written now, or a setting has no such value.  Its text is a plain sentence."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """What a person may choose.

    learner: the code that answers are kept under until someone else sits down.
    units: "" leaves each lesson and build in its own.  balance_by_ear: a tilt is heard as a pitch, where sound is on.
    """

    learner: str
    language: str = "en"
    theme: Literal["paper", "contrast", "print"] = "paper"
    text_scale: float = 1.0
    units: Literal["", "g-cm", "kg-m", "N-m", "lb-in"] = ""
    sound: bool = True
    balance_by_ear: bool = False
    reduced_motion: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Loaded:
    """Settings as found.  set_aside: where a file was moved that could not be understood, or None."""

    settings: Settings
    set_aside: Path | None = None


_ALLOWED: dict[str, Callable[[Any], bool]] = {
    "learner": lambda value: isinstance(value, str) and valid_code(value),
    "language": lambda value: value in LANGUAGES,
    "theme": lambda value: value in THEMES,
    "text_scale": lambda value: not isinstance(value, bool) and value in TEXT_SCALES,
    "units": lambda value: value in UNITS,
    "sound": lambda value: isinstance(value, bool),
    "balance_by_ear": lambda value: isinstance(value, bool),
    "reduced_motion": lambda value: isinstance(value, bool),
}


def changed(settings: Settings, name: str, value: object) -> Settings:
    """The settings with one of them changed.  Raises SettingsError if there is no such setting or value."""
    if name not in _ALLOWED:
        raise SettingsError(f"there is no setting {name!r}; there are {', '.join(_ALLOWED)}")
    if not _ALLOWED[name](value):
        raise SettingsError(f"the setting {name} cannot be {value!r}")
    changes: dict[str, Any] = {name: value}
    return replace(settings, **changes)


def load_settings(path: Path) -> Loaded:
    """Read the settings; where there are none, or none that can be understood, begin with fresh ones.

    A value out of range is left at its default; a file that is not ours at all is moved aside.
    Never raises for what is in the file, nor for a folder that cannot be read.
    """
    fresh = Settings(learner=new_code())
    try:
        text = path.read_text(encoding="utf-8")
    except FileNotFoundError:
        return Loaded(settings=fresh)
    except (OSError, UnicodeDecodeError):
        return Loaded(settings=fresh, set_aside=_move_aside(path))
    try:
        held = json.loads(text)
    except (ValueError, RecursionError):
        held = None
    if not isinstance(held, dict) or held.get("format") != FORMAT:
        return Loaded(settings=fresh, set_aside=_move_aside(path))
    good = {name: held[name] for name, allowed in _ALLOWED.items() if name in held and _holds(allowed, held[name])}
    return Loaded(settings=replace(fresh, **good))


def save_settings(path: Path, settings: Settings) -> None:
    """Write the settings so that a power cut leaves the old ones or the new.  Raises SettingsError if it cannot."""
    text = json.dumps({"format": FORMAT, **asdict(settings)}, indent=1) + "\n"
    try:
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=".settings-")
        try:
            with os.fdopen(handle, "w", encoding="utf-8") as stream:
                stream.write(text)
                stream.flush()
                os.fsync(stream.fileno())
            Path(temporary).replace(path)
        except OSError:
            Path(temporary).unlink(missing_ok=True)
            raise
    except OSError as error:
        raise SettingsError(f"the settings could not be saved: {error.strerror or error}") from error


def _holds(allowed: Callable[[Any], bool], value: object) -> bool:
    try:
        return allowed(value)
    except TypeError:  # a list or a table where a word should be
        return False


def _move_aside(path: Path) -> Path | None:
    aside = path.with_name(f"{path.stem}.set-aside{path.suffix}")
    try:
        path.replace(aside)
    except OSError:
        return None
    return aside
