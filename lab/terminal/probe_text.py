"""The probe in plain lines: asked on one stream, answered on another, nothing told between the questions."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import TextIO

from lab.files import UNITS
from lab.lesson import Answered, Message, Wording, render
from lab.lesson.asked import SIDES, Side
from lab.lesson.kinds.side import SIDE_FORM
from lab.lesson.messages import message, msg
from lab.lesson.probe.items import UNIT_NAME
from lab.lesson.probe.probe import Probe, answered, finding, go_on, start_probe
from lab.lesson.probe.record import recorded
from lab.lesson.probe.telling import BEGINS, PROMPT, TITLE, given_message, told
from lab.lesson.understanding import option_meant
from lab.terminal.plain_lines import PlainLines, whole_word

COMMANDS = ("?", "repeat", "quit")
Keep = Callable[[Answered], None]

_HELP = msg("Type left, right or level. At any time: repeat (the question), quit. Words may be shortened.")


def play_probe(
    *,
    seed: int,
    stdin: TextIO,
    stdout: TextIO,
    words: Wording,
    keep: Keep,
    code: str | None = None,
    clock: Callable[[], float] = time.monotonic,
) -> Probe:
    """Take a learner through a probe, from streams; return it as it ended.

    seed: draws the items.  keep: is handed every answer; if it fails that is said and the probe goes on.
    code: the learner's, said at the start.  clock: seconds, from any zero.
    End of input and an interrupt end it like `quit`: every answer given has been kept by then.
    """
    lines = PlainLines(stdin, stdout, words)
    return _Play(start_probe(seed=seed), lines, keep=keep, clock=clock).through(code)


class _Play:
    """One probe between two streams.  probe: where the learner is."""

    def __init__(self, probe: Probe, lines: PlainLines, *, keep: Keep, clock: Callable[[], float]) -> None:
        """Take a probe at its start; nothing is written yet."""
        self.probe = probe
        self._lines = lines
        self._keep = keep
        self._clock = clock
        self._since = 0.0
        self._left = False

    def through(self, code: str | None) -> Probe:
        """Ask to the end, or until the learner leaves."""
        # Typed again as it stands, so it is not grouped by thousands.
        self._lines.say(msg("{title}  (seed {seed})"), title=self._lines.words.say(TITLE), seed=str(self.probe.seed))
        if code is not None:
            self._lines.say(msg("Your answers are kept under the code {code}; nobody asks for your name."), code=code)
        self._lines.say(BEGINS)
        while not self._left:
            self._ask()
            while not self.probe.finished and not self._left:
                self._turn()
            self._tell()
            if not self._goes_on():
                break
        return self.probe

    # --- one question at a time ---

    def _ask(self) -> None:
        item, words = self.probe.item, self._lines.words
        if item is None:
            return
        self._lines.line("")
        asked, most = (words.number(number, 0) for number in (len(self.probe.given) + 1, self.probe.most))
        self._lines.say(msg("Question {number}, of {most} at most"), number=asked, most=most)
        self._worded(given_message(item))
        self._worded(message(PROMPT))
        self._since = self._clock()

    def _turn(self) -> None:
        said = self._lines.read(self._lines.words.say(msg("answer>")))
        if said is None:
            self._left = True
            return
        meant = option_meant(SIDE_FORM, said)
        side = next((each for each in SIDES if each == meant), None)
        if side is not None:
            self._answer(side, said)
            return
        word = whole_word(said, COMMANDS)
        if word == "?":
            self._lines.say(_HELP)
        elif word == "repeat":
            since = self._since
            self._ask()
            self._since = since
        elif word == "quit":
            self._left = True
        else:
            self._worded(SIDE_FORM.again)

    def _answer(self, side: Side, said: str) -> None:
        row = recorded(self.probe, side, given=said, seconds=max(0.0, self._clock() - self._since))
        self.probe = answered(self.probe, side)
        try:
            self._keep(row)
        except Exception as failure:  # noqa: BLE001 - no fault of the record, of whatever kind, may end the probe
            why = str(failure) or type(failure).__name__
            self._lines.say(msg("This answer could not be saved ({why}). The questions go on."), why=why)
        self._ask()

    # --- the end ---

    def _tell(self) -> None:
        self._lines.line("")
        if not self.probe.finished:
            self._lines.say(msg("Left before the end: nothing can be said yet of what your answers fit."))
            return
        found = finding(self.probe.given)
        end = told(found)
        self._worded(message(msg("Your answers fit: {rule}"), rule=end.fits))
        for line in (end.sure, end.runner_up, end.leads):
            if line is not None:
                self._worded(line)

    def _goes_on(self) -> bool:
        """Whether the learner wants the questions that are left, which make it surer."""
        while self.probe.can_go_on and not self._left:
            self._lines.line("")
            self._lines.say(msg("More questions would make it surer. Type more to go on, or done."))
            said = self._lines.read(self._lines.words.say(msg("more or done>")))
            word = None if said is None else whole_word(said, ("more", "done", "quit"))
            if word == "more":
                self.probe = go_on(self.probe)
                return True
            if said is None or word is not None:
                return False
        return False

    def _worded(self, sentence: Message) -> None:
        self._lines.line(render(sentence, self._lines.words, UNITS[UNIT_NAME]))
