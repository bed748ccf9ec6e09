"""The lab without a display: a list of lessons to choose from, and each played in plain lines."""

from __future__ import annotations

from lab.app.commands.lessons import list_lessons, named_lesson, play_mixed, play_text, say_what_is_due
from lab.app.console import Console, Stopped
from lab.app.paths import Paths
from lab.app.shelf import shelf_of
from lab.lesson.course_mixed import NAME as MIXED


def choose_lessons(console: Console, paths: Paths) -> None:
    """Ask which lesson, play it, ask again; until `quit` or the end of input."""
    shelf = shelf_of(paths)
    while True:
        list_lessons(shelf, console)
        say_what_is_due(console, paths)
        said = _ask(console)
        if said is None or (said and "quit".startswith(said.casefold())):
            return
        meant = _meant(said, (*(path.stem for path in shelf.files()), MIXED))
        try:
            if meant == MIXED:
                play_mixed(None, console, paths)
            else:
                play_text(named_lesson(shelf, meant, console), None, console, paths)
        except Stopped as stopped:
            for line in stopped.lines:
                console.result(line)
            continue
        console.result("")


def _ask(console: Console) -> str | None:
    console.stdout.write(console.words.say("which lesson (a name, a number, or quit)>") + " ")
    console.stdout.flush()
    line = console.stdin.readline()
    if not line:
        console.result("")
        return None
    return line.strip()


def _meant(said: str, names: tuple[str, ...]) -> str:
    """The name that was said, whole, shortened, or as its number in the list."""
    if said.isdecimal() and 1 <= int(said) <= len(names):
        return names[int(said) - 1]
    begun = [name for name in names if said and name.startswith(said.casefold())]
    return begun[0] if len(begun) == 1 else said
