"""The same scene with one thing changed, in plain lines: asked first, told once something was said or one goes on."""

from __future__ import annotations

from collections.abc import Callable, Collection

from lab.lesson import Message, Run
from lab.lesson.foretelling import Foretelling
from lab.lesson.messages import message, msg
from lab.lesson.understanding import option_meant
from lab.terminal.plain_lines import whole_word

Worded = Callable[[Message], str]


def pending(run: Run) -> Foretelling | None:
    """What can be said of the changed scene and has not been said yet."""
    return run.foretold if run.phase in ("watch", "explain") and run.foreseen is None else None


def change_asked(run: Run, worded: Worded) -> str | None:
    """What would it do?  Or what it does, where that was said or cannot be asked; None where nothing is changed."""
    told, asks = run.explanation, pending(run)
    if told is None or told.contrast is None:
        return None
    what = worded(told.contrast.label)
    if asks is None:
        return f"{what} {worded(told.contrast.happened)}"
    options = ", ".join(worded(option.shown) for option in asks.form.options)
    return f"{what} {worded(asks.prompt)} {worded(message(msg('({options}; or go on)'), options=options))}"


def change_told(run: Run, worded: Worded) -> str | None:
    """What the changed scene does; None where nothing is changed."""
    told = run.explanation
    return None if told is None or told.contrast is None else worded(told.contrast.happened)


def foreseen(run: Run, said: str, *, commands: Collection[str]) -> str | None:
    """The option of the changed scene that words mean; None where they mean none, a whole command, or going on."""
    asks = pending(run)
    if asks is None or run.phase != "explain" or whole_word(said, ("next",)) or said.strip().casefold() in commands:
        return None
    return option_meant(asks.form, said)
