"""`tiltbench lesson`: the list of lessons, or one lesson in a window or in the terminal."""

from __future__ import annotations

import argparse
from dataclasses import asdict
from pathlib import Path

import lab
from lab.app.console import Console, Stopped
from lab.app.paths import Paths
from lab.app.record import Record
from lab.app.seeds import drawn_seed
from lab.app.settings import Settings, SettingsError, load_settings, save_settings
from lab.app.shelf import Shelf, UnknownLessonError, shelf_of
from lab.attempts import AttemptsError, attempt_of
from lab.files import FileFaults
from lab.lesson import Answered, Lesson, read_lesson
from lab.terminal.lesson_text import play


def run(args: argparse.Namespace, console: Console, paths: Paths) -> int:
    """List the lessons, or run one."""
    shelf = shelf_of(paths)
    if args.lesson is None:
        return list_lessons(shelf, console)
    lesson = named_lesson(shelf, args.lesson, console)
    if args.text:
        play_text(lesson, args.seed, console, paths)
        return 0
    from lab.app.window_program import NoDisplayError, open_window

    try:
        return open_window(paths, console, lesson=Path(lesson.file), seed=args.seed)
    except NoDisplayError as error:
        console.talk(no_display(console, error))
    if not console.has_terminal:
        raise Stopped(
            console.words.say("tiltbench: with no terminal either; `lesson NAME --text` takes answers from a pipe"),
            code=2,
        )
    play_text(lesson, args.seed, console, paths)
    return 0


def list_lessons(shelf: Shelf, console: Console) -> int:
    """Print one lesson a line, its name first; lessons that cannot be used are named to the side."""
    lessons, faulty = shelf.read_all()
    width = max((len(lesson.name) for lesson in lessons), default=0)
    for lesson in lessons:
        questions = console.words.plural("{n} question", "{n} questions", len(lesson.questions))
        title = console.words.content(lesson.title)
        console.result(f"{lesson.name:<{width}}  {title} ({lesson.level}, {questions})")
    for faults in faulty:
        console.faults(faults.faults, as_json=False)
    return 0


def named_lesson(shelf: Shelf, name: str, console: Console) -> Lesson:
    """The lesson with this name, or in this file.  Raises Stopped with what is wrong."""
    say = console.words.say
    try:
        return read_lesson(shelf.file(name))
    except UnknownLessonError as unknown:
        if unknown.near is not None:
            cure = say("the nearest is {near}", near=unknown.near)
        else:
            cure = say("`tiltbench lesson` lists them")
        raise Stopped(say("lesson: there is no lesson {name}; {cure}", name=unknown.name, cure=cure)) from unknown
    except FileFaults as found:
        raise Stopped(*(fault.as_text() for fault in found.faults)) from found


def play_text(lesson: Lesson, seed: int | None, console: Console, paths: Paths) -> None:
    """Take a learner through a lesson in plain lines; every answer is kept, or it is said that it is not."""
    settings = kept_settings(console, paths)
    record = Record(paths.record)

    def keep(answer: Answered) -> None:
        if not record.keep(attempt_of(asdict(answer), learner=settings.learner, version=lab.__version__)):
            raise AttemptsError(record.trouble or "")

    try:
        play(
            lesson,
            seed=drawn_seed() if seed is None else seed,
            stdin=console.stdin,
            stdout=console.stdout,
            words=console.words,
            keep=keep,
            code=settings.learner,
        )
    finally:
        record.close()
        _say_what_is_left(record, console)


def kept_settings(console: Console, paths: Paths) -> Settings:
    """The settings of this installation; a fresh learner code is written down, so that it stays the same."""
    loaded = load_settings(paths.settings)
    if loaded.set_aside is not None:
        console.talk(
            console.words.say(
                "The settings could not be read; they are kept aside as {file}", file=str(loaded.set_aside)
            )
        )
    if not paths.settings.exists():
        try:
            save_settings(paths.settings, loaded.settings)
        except SettingsError as error:
            console.talk(str(error))
    return loaded.settings


def no_display(console: Console, error: Exception) -> str:
    """The one line that says why there is no window."""
    return console.words.say("There is no display ({why}), so this runs in the terminal.", why=str(error))


def _say_what_is_left(record: Record, console: Console) -> None:
    if record.set_aside is not None:
        console.talk(
            console.words.say("The record was damaged; it is kept aside as {file}", file=str(record.set_aside))
        )
    if record.waiting:
        console.talk(
            console.words.plural(
                "{n} answer could not be saved: {why}", "{n} answers could not be saved: {why}", record.waiting,
                why=record.trouble or "",
            )
        )  # fmt: skip
