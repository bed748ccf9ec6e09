"""Settings and record as a command takes them up: what had to be set aside or could not be saved is said."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import asdict
from typing import TYPE_CHECKING

import lab
from lab.app.console import Console, Stopped
from lab.app.paths import Paths
from lab.app.record import Record
from lab.app.settings import Settings, SettingsError, load_settings, save_settings
from lab.attempts import meant_code, near_code, shown_code

if TYPE_CHECKING:
    from lab.lesson import Answered


def kept_settings(console: Console, paths: Paths) -> Settings:
    """The settings of this installation; a fresh learner code is written down, so that it stays the same."""
    loaded = load_settings(paths.settings)
    if loaded.set_aside is not None:
        aside = str(loaded.set_aside)
        console.talk(console.words.say("The settings could not be read; they are kept aside as {file}", file=aside))
    if not paths.settings.exists():
        try:
            save_settings(paths.settings, loaded.settings)
        except SettingsError as error:
            console.talk(str(error))
    return loaded.settings


def learner_named(text: str | None, settings: Settings, record: Record, console: Console) -> str:
    """The code that answers are to be kept under.  text: as it was typed; None for that of the settings.

    Raises Stopped with the way out where it is no code, or none that was used here.
    """
    if text is None:
        return settings.learner
    say, known = console.words.say, (settings.learner, *(used.code for used in record.codes()))
    meant = meant_code(text, known)
    if meant in known and meant is not None:
        return meant
    near = near_code(text, known)
    cure = (
        say("the nearest is {code}", code=shown_code(near))
        if near
        else say("without --learner answers go to the present code")
    )
    if meant is None:
        raise Stopped(say("learner: {text} is no code; {cure}", text=text, cure=cure))
    raise Stopped(say("learner: nothing is kept here under {code}; {cure}", code=shown_code(meant), cure=cure))


def refuse_in_window(code: str | None, console: Console) -> None:
    """Raise Stopped where a learner was named for the window, which has a place to choose one."""
    if code is not None:
        raise Stopped(
            console.words.say("--learner goes with --text; in the window the code is chosen on the start screen"),
            code=2,
        )


def say_what_is_left(record: Record, console: Console) -> None:
    """After the record was closed: what was damaged, and what could not be written to the last."""
    if record.set_aside is not None:
        aside = str(record.set_aside)
        console.talk(console.words.say("The record was damaged; it is kept aside as {file}", file=aside))
    if record.waiting:
        why = record.trouble or ""
        console.talk(
            console.words.plural(
                "{n} answer could not be saved: {why}", "{n} answers could not be saved: {why}", record.waiting, why=why
            )
        )


@contextmanager
def answers_kept(
    console: Console, paths: Paths, *, code: str | None = None
) -> Iterator[tuple[str, Callable[[Answered], None]]]:
    """The learner's code, and what keeps an answer; at the end it is said what could not be kept.

    code: as it was typed; None for that of the settings.  Raises Stopped where it is none that was used here.
    Keeping raises AttemptsError where an answer could not be written at once.
    """
    from lab.attempts import AttemptsError, attempt_of

    settings, record = kept_settings(console, paths), Record(paths.record)
    try:
        learner = learner_named(code, settings, record, console)
    except Stopped:
        record.close()
        raise

    def keep(answer: Answered) -> None:
        if not record.keep(attempt_of(asdict(answer), learner=learner, version=lab.__version__)):
            raise AttemptsError(record.trouble or "")

    try:
        yield learner, keep
    finally:
        record.close()
        say_what_is_left(record, console)
