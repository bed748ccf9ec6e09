"""Settings and record as a command takes them up: what had to be set aside or could not be saved is said."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import asdict
from typing import TYPE_CHECKING

import lab
from lab.app.console import Console
from lab.app.paths import Paths
from lab.app.record import Record
from lab.app.settings import Settings, SettingsError, load_settings, save_settings

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
def answers_kept(console: Console, paths: Paths) -> Iterator[tuple[str, Callable[[Answered], None]]]:
    """The learner's code, and what keeps an answer; at the end it is said what could not be kept.

    Keeping raises AttemptsError where an answer could not be written at once.
    """
    from lab.attempts import AttemptsError, attempt_of

    learner = kept_settings(console, paths).learner
    record = Record(paths.record)

    def keep(answer: Answered) -> None:
        if not record.keep(attempt_of(asdict(answer), learner=learner, version=lab.__version__)):
            raise AttemptsError(record.trouble or "")

    try:
        yield learner, keep
    finally:
        record.close()
        say_what_is_left(record, console)
