"""The teacher's page in plain lines, to be read, kept or printed."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from lab.files import UnitSystem
from lab.lesson import Message, Wording, render
from lab.lesson.messages import msg
from lab.lesson.teaching import KeyedQuestion, Section, TeachingSheet

WIDTH = 96
"""Characters of a line, which a page across holds."""


def page_lines(sheet: TeachingSheet, words: Wording) -> Iterator[str]:
    """Yield the page line by line."""
    yield from _title(render(sheet.title, words, sheet.units), "=")
    for section in sheet.before:
        yield from _section(section, words, sheet.units)
    yield from _heading(words.say(msg("The questions and their answers")))
    if sheet.note is not None:
        yield from _wrapped(render(sheet.note, words, sheet.units))
    for place, question in enumerate(sheet.questions, start=1):
        yield ""
        yield from _question(place, question, words)
    for section in sheet.after:
        yield from _section(section, words, sheet.units)


def _section(section: Section, words: Wording, units: UnitSystem) -> Iterator[str]:
    yield from _heading(words.say(section.heading))
    single = len(section.lines) == 1
    for place, line in enumerate(section.lines, start=1):
        sign = f"{words.number(place, 0)}. " if section.numbered else "- "
        yield from _wrapped(render(line, words, units), first="" if single else sign)


def _question(place: int, question: KeyedQuestion, words: Wording) -> Iterator[str]:
    def text(sentence: Message) -> str:
        return render(sentence, words, question.units)

    inner = "   "
    yield from _wrapped(text(question.title), first=f"{words.number(place, 0)}. ")
    for line in question.lines:
        yield from _wrapped(" ".join(text(line).split()), first=inner)
    right = words.say(msg("The sum says {answer}. {why}"), answer=text(question.answer), why=text(question.why))
    yield from _wrapped(right, first=inner)
    for thought in question.thoughts:
        says = words.say(msg("{answer} ({way}): {told}"), answer=text(thought.answer), way=thought.way,
                         told=text(thought.told))  # fmt: skip
        yield from _wrapped(says, first=f"{inner}- ")


def _heading(text: str) -> Iterator[str]:
    yield ""
    yield from _title(text, "-")


def _title(text: str, sign: str) -> Iterator[str]:
    lines = wrap(text, WIDTH) or [text]
    yield from lines
    yield sign * max(len(line) for line in lines)


def _wrapped(text: str, *, first: str = "") -> list[str]:
    """Lines of at most WIDTH, the later ones beneath the text of the first."""
    return wrap(text, WIDTH, initial_indent=first, subsequent_indent=" " * len(first), break_long_words=False,
                break_on_hyphens=False)  # fmt: skip
