"""`tiltbench lesson`: the list of lessons, or one lesson in a window or in the terminal."""

from __future__ import annotations

import argparse
from dataclasses import asdict
from pathlib import Path

import lab
from lab.app.console import Console, Stopped
from lab.app.kept import kept_settings, say_what_is_left
from lab.app.paths import Paths
from lab.app.record import Record
from lab.app.seeds import drawn_seed
from lab.app.shelf import Shelf, UnknownLessonError, shelf_of
from lab.app.window_program import NoDisplayError, open_window
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
    try:
        return open_window(paths, console, lesson=Path(lesson.file), seed=args.seed)
    except NoDisplayError as error:
        why = str(error)
    if not console.has_terminal:
        raise Stopped(
            console.words.say(
                "tiltbench: there is no display ({why}) and no terminal; with --text answers come from a pipe", why=why
            ),
            code=2,
        )
    console.talk(console.words.say("There is no display ({why}), so this runs in the terminal.", why=why))
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
        say_what_is_left(record, console)
