"""A lesson in plain lines: asked on one stream, answered on another; a pipe or a screen reader will do.

Nothing here knows a window.  What is kept of an answer is handed to whoever started the lesson.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import TextIO

from lab.lesson import (
    SURENESS,
    Action,
    Again,
    Answered,
    Choice,
    Foresee,
    Give,
    Hint,
    Leave,
    Lesson,
    LockIn,
    Message,
    Next,
    Run,
    Skip,
    Sure,
    Understood,
    Watched,
    Wording,
    render,
    start,
    step,
    understand,
)
from lab.lesson.kinds import kind_of
from lab.lesson.messages import message, msg, number
from lab.lesson.understanding import option_meant
from lab.outline.cautions import LEARNING_ONLY
from lab.terminal.changed_scene import change_asked, change_told, foreseen, pending
from lab.terminal.lesson_sums import given_lines, sum_lines
from lab.terminal.plain_lines import PlainLines, whole_word

COMMANDS = ("?", "hint", "repeat", "table", "again", "skip", "quit")

Keep = Callable[[Answered], None]

_HELP = msg(
    "At any time: hint, repeat (the question), table (the numbers), again (new numbers), skip, quit. "
    "Words may be shortened, units left out."
)


def play(
    lesson: Lesson,
    *,
    seed: int,
    stdin: TextIO,
    stdout: TextIO,
    words: Wording,
    keep: Keep,
    code: str | None = None,
    clock: Callable[[], float] = time.monotonic,
) -> Run:
    """Take a learner through a lesson, from streams; return the run as it ended.

    seed: fixes the numbers.  keep: is handed every answer; if it fails that is said and play goes on.
    code: the learner's, said at the start.  clock: seconds, from any zero.
    End of input and an interrupt end the lesson like `quit`: what was locked in has been kept by then.
    """
    lines = PlainLines(stdin, stdout, words)
    return _Play(start(lesson, seed=seed), lines, keep=keep, clock=clock).through(code)


class _Play:
    """One lesson between two streams.  run: where the learner is."""

    def __init__(self, run: Run, lines: PlainLines, *, keep: Keep, clock: Callable[[], float]) -> None:
        """Take a run at its start; nothing is written yet."""
        self.run = run
        self._lines = lines
        self._words = lines.words
        self._keep = keep
        self._clock = clock
        self._since = 0.0
        self._told_since = 0.0
        self._cautioned = False

    def through(self, code: str | None) -> Run:
        """Play to the end, or until the learner leaves."""
        self._lines.line(self._words.content(self.run.lesson.title))
        if code is not None:
            self._lines.say(msg("Your answers are kept under the code {code}; nobody asks for your name."), code=code)
        self._ask()
        while self.run.phase != "finished":
            self._turn()
        self._end()
        return self.run

    # --- one prompt at a time ---

    def _turn(self) -> None:
        run = self.run
        if run.phase == "explain":
            prompt = self._words.say(msg("again or next>"))
        elif run.value is None:
            prompt = self._words.say(msg("answer>"))
        else:
            prompt = self._words.say(msg("how sure (guess, fairly, certain)>"))
        said = self._lines.read(prompt)
        if said is None:
            self._do(Leave(seconds=self._seconds()))
        elif not self._command(said):
            self._answer(said)

    def _answer(self, said: str) -> None:
        if self.run.phase == "explain":
            key = foreseen(self.run, said, commands=COMMANDS)
            if key is not None:
                self._do(Foresee(key=key, given=said, seconds=max(0.0, self._clock() - self._told_since)))
                self._line_or_none(change_told(self.run, self._worded))
            elif whole_word(said, ("next",)) == "next":
                if pending(self.run) is not None:
                    self._line_or_none(change_told(self.run, self._worded))
                self._go(Next())
            else:
                self._lines.say(msg("Type next to go on, or again for new numbers."))
                if pending(self.run) is not None:
                    self._line_or_none(change_asked(self.run, self._worded))
        elif self.run.value is None:
            self._do(Give(text=said))
        else:
            self._how_sure(said)

    def _how_sure(self, said: str) -> None:
        word = whole_word(said, SURENESS)
        how = next((each for each in SURENESS if each == word), None)
        if how is None:
            self._answer_anew(said)
            return
        self._do(Sure(how=how))
        self._do(LockIn(seconds=self._seconds()))
        self._explain()
        self._do(Watched())

    def _answer_anew(self, said: str) -> None:
        """Take another answer before it is locked in; whatever else was typed is asked for again."""
        heard = understand(self.run.asked, said)
        if isinstance(heard, Understood):
            self._do(Give(text=said))
            self._lines.say(msg("Your answer is now {answer}."), answer=self._worded(heard.shown))
        self._lines.say(msg("Type guess, fairly or certain: one letter will do."))

    def _command(self, said: str) -> bool:
        """Do what a command says; whether it was one."""
        run = self.run
        form = run.asked.form
        if foreseen(run, said, commands=COMMANDS) is not None:
            return False
        if run.phase == "predict" and run.value is None and isinstance(form, Choice) and option_meant(form, said):
            # `r` is right, not repeat, while a side is asked for.
            return False
        word = whole_word(said, COMMANDS)
        if word is None:
            return False
        actions: dict[str, Callable[[], None]] = {
            "?": lambda: self._lines.say(_HELP),
            "hint": self._hint,
            "repeat": self._repeat,
            "table": self._table,
            "again": lambda: self._go(Again(seconds=self._seconds())),
            "skip": lambda: self._go(Skip(seconds=self._seconds())),
            "quit": lambda: self._do(Leave(seconds=self._seconds())),
        }
        actions[word]()
        return True

    # --- what is written ---

    def _ask(self) -> None:
        asked = self.run.asked
        self._lines.line("")
        where = self._words.say(
            msg("(question {index} of {count}, seed {seed})"),
            index=self._words.number(asked.index + 1, 0),
            count=self._words.number(asked.count, 0),
            # Typed again as it stands, so it is not grouped by thousands.
            seed=str(asked.seed),
        )
        self._lines.line(f"{self._worded(asked.title)}  {where}")
        if asked.build.is_airframe and not self._cautioned:
            self._cautioned = True
            self._lines.say(LEARNING_ONLY)
        self._lines.line(self._worded(asked.text))
        self._lines.line(f"{self._worded(asked.prompt)} {self._worded(kind_of(asked.task).what_to_type(asked))}")
        self._since = self._clock()

    def _explain(self) -> None:
        run = self.run
        told = run.explanation
        if told is None:
            return
        self._lines.line(self._worded(told.going))
        for line in sum_lines(run.asked, told, self._words):
            self._lines.line(line)
        self._lines.line(f"{self._worded(told.said)} {self._worded(told.idea or told.why)}")
        self._line_or_none(change_asked(run, self._worded))
        self._told_since = self._clock()

    def _hint(self) -> None:
        before = self.run.hints
        self._do(Hint())
        for hint in self.run.hints_shown[before:]:
            self._lines.line(self._worded(hint))

    def _repeat(self) -> None:
        since = self._since
        self._ask()
        self._since = since
        if self.run.phase == "explain":
            self._explain()

    def _table(self) -> None:
        told = self.run.explanation
        lines = (
            given_lines(self.run.asked, self._words) if told is None else sum_lines(self.run.asked, told, self._words)
        )
        for line in lines:
            self._lines.line(line)

    def _end(self) -> None:
        within = sum(mark == "right" for mark in self.run.marks)
        answered = within + sum(mark == "off" for mark in self.run.marks)
        closing = message(
            msg("End of the lesson. Questions you answered: {answered}. You and the sum agreed on: {within}."),
            answered=number(answered),
            within=number(within),
        )
        self._lines.line("")
        self._lines.line(self._worded(closing))

    # --- the run and the streams ---

    def _go(self, action: Action) -> None:
        """Do what may bring another question, and ask it if it does."""
        before = self.run.asked
        self._do(action)
        if self.run.phase != "finished" and self.run.asked is not before:
            self._ask()

    def _do(self, action: Action) -> None:
        self.run, events = step(self.run, action)
        for event in events:
            if isinstance(event, Answered):
                self._kept(event)
            else:
                self._lines.line(self._worded(event.message))

    def _kept(self, answered: Answered) -> None:
        try:
            self._keep(answered)
        except Exception as failure:  # noqa: BLE001 - no fault of the record, of whatever kind, may end a lesson
            why = str(failure) or type(failure).__name__
            self._lines.say(msg("This answer could not be saved ({why}). The lesson goes on."), why=why)

    def _line_or_none(self, line: str | None) -> None:
        if line is not None:
            self._lines.line(line)

    def _seconds(self) -> float:
        return max(0.0, self._clock() - self._since)

    def _worded(self, sentence: Message) -> str:
        return render(sentence, self._words, self.run.asked.units)
