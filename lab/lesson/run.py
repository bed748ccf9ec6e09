"""One learner going through one lesson: a pure state machine.

predict → lock in → watch → explain → next.  `step` takes a run and one action and returns the next run and what
came of it.  No clock, no file, no random number that the seed does not fix: whoever drives it hands in the seconds.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Literal

from lab.files import build_text
from lab.lesson.actions import (
    Action,
    Again,
    Foresee,
    Give,
    Hint,
    Leave,
    LockIn,
    Next,
    Set,
    Skip,
    Sure,
    Watched,
)
from lab.lesson.asked import Asked
from lab.lesson.asking import ask
from lab.lesson.explaining import explain
from lab.lesson.explanation import Explanation
from lab.lesson.foretelling import KIND, MARK, Foretelling, foretelling
from lab.lesson.forms import Answer, from_si
from lab.lesson.happenings import Answered, Refusal, RunEvent, Unclear
from lab.lesson.lesson import Lesson
from lab.lesson.messages import Message, message, msg
from lab.lesson.understanding import Understood, understand

Phase = Literal["predict", "watch", "explain", "finished"]
Mark = Literal["todo", "right", "off", "skipped"]
Stepped = tuple["Run", tuple[RunEvent, ...]]

_TODO: Mark = "todo"
_IS_LOCKED = msg("That answer is locked in. Go on to the next question, or ask for it again.")
_NOT_SEEN = msg("See what happens first.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """Where a learner is in a lesson.

    given: the answer as it was given.  value: as it was understood, None before.
    hints: how many have been asked for.  explanation: from lock-in on.  marks: one a question, for the row of progress.
    foretold: what can be said of the changed scene before it is shown; from lock-in on, where there is such a scene.
    foreseen: the option that was said of it, None before.
    """

    lesson: Lesson
    seed: int
    index: int
    round: int
    phase: Phase
    asked: Asked
    marks: tuple[Mark, ...]
    given: str = ""
    value: Answer | None = None
    sure: str | None = None
    hints: int = 0
    explanation: Explanation | None = None
    foretold: Foretelling | None = None
    foreseen: str | None = None

    @property
    def hints_shown(self) -> tuple[Message, ...]:
        """The hints asked for so far, in order."""
        return self.asked.hints[: self.hints]

    @property
    def can_lock_in(self) -> bool:
        """Whether an answer and how sure the learner is are both there."""
        return self.phase == "predict" and self.value is not None and self.sure is not None


def start(lesson: Lesson, *, seed: int) -> Run:
    """Return a run at the first question.  seed: fixes every number drawn in this run."""
    return _asking(lesson, seed=seed, index=0, round_=_first_round(lesson, 0), marks=(_TODO,) * len(lesson.questions))


def step(run: Run, action: Action) -> Stepped:
    """Return the run after one action, and what came of it.

    An action that does not belong to the phase changes nothing and yields a Refusal that says what would do.
    """
    if run.phase == "finished":
        return _refused(run, msg("This lesson is over."))
    return _STEPS[type(action)](run, action)


def _refused(run: Run, template: str) -> Stepped:
    return run, (Refusal(message=message(template)),)


def _give(run: Run, action: Give) -> Stepped:
    if run.phase != "predict":
        return _refused(run, _IS_LOCKED)
    heard = understand(run.asked, action.text)
    if not isinstance(heard, Understood):
        return run, (Unclear(message=heard.message),)
    return replace(run, given=action.text, value=heard.value), ()


def _set(run: Run, action: Set) -> Stepped:
    if run.phase != "predict":
        return _refused(run, _IS_LOCKED)
    if not run.asked.form.takes(action.value):
        raise TypeError(f"a {run.asked.kind} question cannot take {action.value!r}")
    return replace(run, given=action.given, value=action.value), ()


def _sure(run: Run, action: Sure) -> Stepped:
    if run.phase != "predict":
        return _refused(run, _IS_LOCKED)
    return replace(run, sure=action.how), ()


def _hint(run: Run, action: Hint) -> Stepped:
    if run.phase != "predict":
        return _refused(run, msg("Hints come before the answer is locked in."))
    if run.hints >= len(run.asked.hints):
        return _refused(run, msg("There is no further hint. Say what you think: a guess will do."))
    return replace(run, hints=run.hints + 1), ()


def _lock_in(run: Run, action: LockIn) -> Stepped:
    if run.phase != "predict":
        return _refused(run, _IS_LOCKED)
    if run.value is None:
        return _refused(run, msg("Say what you think first: a guess will do."))
    if run.sure is None:
        return _refused(run, msg("Say how sure you are first: guess, fairly or certain."))
    told = explain(run.asked, run.value)
    marks = list(run.marks)
    marks[run.index] = "right" if told.right else "off"
    foretold = foretelling(run.asked, told.contrast)
    locked = replace(run, phase="watch", explanation=told, foretold=foretold, marks=tuple(marks))
    return locked, (_answered(locked, told, seconds=action.seconds, locked=True),)


def _watched(run: Run, action: Watched) -> Stepped:
    if run.phase != "watch":
        return _refused(run, msg("There is nothing to watch yet. Lock your answer in first."))
    return replace(run, phase="explain"), ()


def _foresee(run: Run, action: Foresee) -> Stepped:
    told, foretold = run.explanation, run.foretold
    if run.phase != "explain" or told is None or told.contrast is None or foretold is None:
        return _refused(run, msg("There is no changed picture to say anything of now."))
    if run.foreseen is not None:
        return _refused(run, msg("You have said what you think of the changed picture."))
    if not foretold.form.takes(action.key):
        raise TypeError(f"{action.key!r} is none of {foretold.form.keys}")
    answer = replace(
        _answered(run, told, seconds=action.seconds, locked=True),
        question=f"{run.asked.question_name}{MARK}",
        kind=KIND,
        scene=build_text(told.contrast.build),
        given=action.given,
        understood=action.key,
        truth=foretold.truth,
        tolerance=None,
        right=action.key == foretold.truth,
        sure=None,
        hints=0,
        ways=foretold.ways(run.asked, told.contrast, action.key),
    )
    return replace(run, foreseen=action.key), (answer,)


def _again(run: Run, action: Again) -> Stepped:
    return _put(run, index=run.index, round_=run.round + 1), _unlocked(run, seconds=action.seconds)


def _next(run: Run, action: Next) -> Stepped:
    if run.phase == "predict":
        return _refused(run, msg("Lock your answer in first, or skip this question."))
    if run.phase == "watch":
        return _refused(run, _NOT_SEEN)
    return _onward(run), ()


def _skip(run: Run, action: Skip) -> Stepped:
    if run.phase == "watch":
        return _refused(run, _NOT_SEEN)
    marks = list(run.marks)
    if marks[run.index] == "todo":
        marks[run.index] = "skipped"
    return _onward(replace(run, marks=tuple(marks))), _unlocked(run, seconds=action.seconds)


def _leave(run: Run, action: Leave) -> Stepped:
    return replace(run, phase="finished"), _unlocked(run, seconds=action.seconds)


def _onward(run: Run) -> Run:
    if run.index + 1 == len(run.lesson.questions):
        return replace(run, phase="finished")
    return _put(run, index=run.index + 1, round_=_first_round(run.lesson, run.index + 1))


def _first_round(lesson: Lesson, index: int) -> int:
    borrowed = lesson.questions[index].borrowed
    return 0 if borrowed is None else borrowed.round


def _put(run: Run, *, index: int, round_: int) -> Run:
    """Return the run with a fresh question before the learner; only the row of progress goes along."""
    return _asking(run.lesson, seed=run.seed, index=index, round_=round_, marks=run.marks)


def _asking(lesson: Lesson, *, seed: int, index: int, round_: int, marks: tuple[Mark, ...]) -> Run:
    asked = ask(lesson, index, seed=seed, round=round_)
    return Run(lesson=lesson, seed=seed, index=index, round=round_, phase="predict", asked=asked, marks=marks)


def _unlocked(run: Run, *, seconds: float) -> tuple[RunEvent, ...]:
    """Return the answer that was given but never locked in, so that a window closed mid-question loses nothing."""
    if run.phase != "predict" or run.value is None:
        return ()
    return (_answered(run, explain(run.asked, run.value), seconds=seconds, locked=False),)


def _answered(run: Run, told: Explanation, *, seconds: float, locked: bool) -> Answered:
    asked = run.asked
    return Answered(
        lesson=asked.lesson,
        question=asked.question_name,
        kind=asked.kind,
        seed=asked.seed,
        round=asked.round,
        scene=build_text(asked.build),
        given=run.given,
        understood=as_recorded(asked, run.value),
        truth=as_recorded(asked, asked.truth),
        tolerance=tolerance_recorded(asked),
        right=told.right,
        sure=run.sure,
        seconds=seconds,
        hints=run.hints,
        ways=told.ways,
        locked=locked,
    )


def as_recorded(asked: Asked, value: Answer | None) -> str:
    """Return an answer as the record keeps it: an option's key, or numbers in the scene's own unit."""
    return "" if value is None else asked.form.recorded(value, asked.units)


def tolerance_recorded(asked: Asked) -> float | None:
    """Return the tolerance in the scene's own unit; None where one chooses."""
    quantity = asked.form.quantity
    return None if asked.tolerance is None or quantity is None else from_si(quantity, asked.tolerance, asked.units)


_STEPS: dict[type[object], Callable[..., Stepped]] = {
    Give: _give,
    Set: _set,
    Sure: _sure,
    Hint: _hint,
    LockIn: _lock_in,
    Watched: _watched,
    Foresee: _foresee,
    Again: _again,
    Next: _next,
    Skip: _skip,
    Leave: _leave,
}
