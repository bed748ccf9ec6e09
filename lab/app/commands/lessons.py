"""`tiltbench lesson`: the list of lessons, or one lesson in a window or in the terminal."""

from __future__ import annotations

import argparse
import time
from pathlib import Path

from lab.app.console import Console, Stopped
from lab.app.course import standing
from lab.app.kept import answers_kept, kept_settings, learner_named, refuse_in_window
from lab.app.paths import Paths
from lab.app.record import Record
from lab.app.seeds import drawn_seed
from lab.app.shelf import Shelf, UnknownLessonError, shelf_of
from lab.app.window_program import open_window, window_or_lines
from lab.attempts import shown_code
from lab.files import FileFaults
from lab.lesson import Lesson, read_lesson
from lab.lesson.course_mixed import NAME as MIXED
from lab.terminal.lesson_text import play


def run(args: argparse.Namespace, console: Console, paths: Paths) -> int:
    """List the lessons, print the teacher's page of one, or run one."""
    shelf = shelf_of(paths)
    if args.lesson is None:
        if args.page:
            raise Stopped(console.words.say("lesson: --page needs a lesson; `tiltbench lesson` lists them"))
        list_lessons(shelf, console)
        say_what_is_due(console, paths, code=args.learner)
        return 0
    if args.lesson == MIXED and args.text:
        play_mixed(args.seed, console, paths, code=args.learner)
        return 0
    if args.lesson == MIXED and not args.page:
        refuse_in_window(args.learner, console)
        return window_or_lines(
            console,
            window=lambda: open_window(paths, console, lesson=Path(MIXED), seed=args.seed),
            lines=lambda: play_mixed(args.seed, console, paths),
            from_pipe="tiltbench lesson mixed --text",
        )
    lesson = named_lesson(shelf, args.lesson, console)
    if args.page:
        print_page(lesson, args.seed, console)
        return 0
    if args.text:
        play_text(lesson, args.seed, console, paths, code=args.learner)
        return 0
    refuse_in_window(args.learner, console)
    return window_or_lines(
        console,
        window=lambda: open_window(paths, console, lesson=Path(lesson.file), seed=args.seed),
        lines=lambda: play_text(lesson, args.seed, console, paths),
        from_pipe="tiltbench lesson NAME --text",
    )


def list_lessons(shelf: Shelf, console: Console) -> None:
    """Print one lesson a line, its name first; lessons that cannot be used are named to the side."""
    lessons, faulty = shelf.read_all()
    width = max((len(lesson.name) for lesson in lessons), default=0)
    for lesson in lessons:
        questions = console.words.plural("{n} question", "{n} questions", len(lesson.questions))
        title = console.words.content(lesson.title)
        console.result(f"{lesson.name:<{width}}  {title} ({lesson.level}, {questions})")
    for faults in faulty:
        console.faults(faults.faults, as_json=False)


def say_what_is_due(console: Console, paths: Paths, *, code: str | None = None) -> None:
    """Say to the side whether anything has come back for a learner; nothing where nobody has answered anything yet."""
    if code is None and not paths.record.exists():
        return
    again = _come_back(console, paths, code)
    if again is not None:
        count = len(again.questions)
        console.talk(
            console.words.plural(
                "{n} question has come back: `tiltbench lesson mixed --text` asks it",
                "{n} questions have come back: `tiltbench lesson mixed --text` asks them",
                count,
            )
        )


def play_mixed(seed: int | None, console: Console, paths: Paths, *, code: str | None = None) -> None:
    """Ask what has come back for a learner.  Raises Stopped where nothing has."""
    again = _come_back(console, paths, code)
    if again is None:
        raise Stopped(
            console.words.say("lesson: nothing has come back yet; lessons do a day or more after they were met")
        )
    play_text(again, seed, console, paths, code=code)


def _come_back(console: Console, paths: Paths, code: str | None) -> Lesson | None:
    record = Record(paths.record)
    try:
        learner = learner_named(code, kept_settings(console, paths), record, console)
        return standing(paths, record, learner, now_s=time.time()).again
    finally:
        record.close()


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


def print_page(lesson: Lesson, seed: int | None, console: Console) -> None:
    """Print the teacher's page of a lesson with the numbers of a seed, of PAGE_SEED where none is given."""
    from lab.lesson.teaching import PAGE_SEED, teaching_sheet
    from lab.terminal.teachers_page import page_lines

    for line in page_lines(teaching_sheet(lesson, seed=PAGE_SEED if seed is None else seed), console.words):
        console.result(line)


def play_text(lesson: Lesson, seed: int | None, console: Console, paths: Paths, *, code: str | None = None) -> None:
    """Take a learner through a lesson in plain lines; every answer is kept, or it is said that it is not.

    code: whose answers they are, as typed; None for the present learner's.
    """
    with answers_kept(console, paths, code=code) as (learner, keep):
        play(
            lesson,
            seed=drawn_seed() if seed is None else seed,
            stdin=console.stdin,
            stdout=console.stdout,
            words=console.words,
            keep=keep,
            code=shown_code(learner),
        )
