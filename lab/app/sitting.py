"""A learner at a lesson: the run, the bench that is asked about, and the time that passes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from lab.lesson import (
    Action,
    Again,
    Answered,
    Asked,
    Foresee,
    Leave,
    Lesson,
    LockIn,
    Message,
    Refusal,
    Run,
    Skip,
    Unclear,
    Watched,
    start,
    step,
)
from lab.lesson.forms import Answer
from lab.screens.questions.bench import bench_of, changed_bench
from lab.simulation import FingerTool, LetGo, MoveFinger, Session

#: How long a body that has come to rest is looked at before the explanation, s: it must be seen how it ended.
WATCH_AT_LEAST_S = 0.9
NS = 1_000_000_000


class Sitting:
    """One lesson being taken.

    run: where the learner is.  contrast: whether the contrasting bench is shown.
    keep: called with every answer, locked in or left open.
    """

    def __init__(self, lesson: Lesson, *, seed: int, now_ns: int, keep: Callable[[Answered], None]) -> None:
        self.run: Run = start(lesson, seed=seed)
        self.contrast = False
        self.reduced_motion = False
        self._keep = keep
        self._now_ns = now_ns
        self._asked_at_ns = now_ns
        self._still_since_ns = now_ns
        self._told_at_ns = now_ns
        self._session = Session(bench_of(self.run.asked, None))
        self._contrast_session: Session | None = None

    @property
    def session(self) -> Session:
        """The session of the bench that is shown."""
        return self._contrast_session if self.contrast and self._contrast_session else self._session

    @property
    def moving(self) -> bool:
        """Whether something happens without anybody doing anything."""
        return self.session.moving or self.run.phase == "watch"

    def act(self, action: Action) -> Message | None:
        """Give an action to the run, with the time it took, and let the bench follow.

        Returns what to say to the learner, None where there is nothing to say.
        """
        before = self.run
        self.run, happenings = step(before, self._timed(action))
        self._follow(before)
        told = None
        for happening in happenings:
            if isinstance(happening, Answered):
                self._keep(happening)
            elif isinstance(happening, Unclear | Refusal):
                told = happening.message
        return told

    def show_contrast(self, *, shown: bool) -> None:
        """Let the explanation's contrasting bench go, or show the learner's own again."""
        explanation = self.run.explanation
        if shown and self.run.phase == "explain" and explanation is not None and explanation.contrast is not None:
            self._contrast_session = Session(changed_bench(self.run.asked, explanation, self.run.value))
            self._contrast_session.do(LetGo(at_once=self.reduced_motion))
            self.contrast = True
        else:
            self.contrast = False
            self._contrast_session = None

    def turn(self, now_ns: int) -> bool:
        """Let time pass; returns whether anything that is shown has changed."""
        elapsed_ns = now_ns - self._now_ns
        self._now_ns = now_ns
        changed = False
        if self._session.moving:
            self._still_since_ns = now_ns
        if self.session.moving:
            changed = self.session.advance(elapsed_ns) > 0 or self.session.moving
        if self.run.phase == "watch" and not self._session.moving and self._watched_long_enough():
            self.act(Watched())
            changed = True
        return changed

    def _carry_out(self, asked: Asked, value: Answer | None) -> None:
        """Show the bench with the answer as it is now."""
        if isinstance(self._session.state, FingerTool) and asked.kind == "place" and isinstance(value, float):
            self._session.do(MoveFinger(value, joins=True))
        elif asked.kind != "side":
            self._session = Session(bench_of(asked, value))

    def _watched_long_enough(self) -> bool:
        return self.reduced_motion or self._now_ns - self._still_since_ns >= WATCH_AT_LEAST_S * NS

    def _timed(self, action: Action) -> Action:
        if isinstance(action, LockIn | Again | Skip | Leave):
            return replace(action, seconds=round((self._now_ns - self._asked_at_ns) / NS, 3))
        if isinstance(action, Foresee):
            return replace(action, seconds=round((self._now_ns - self._told_at_ns) / NS, 3))
        return action

    def _follow(self, before: Run) -> None:
        """Bring the bench to where the run now is."""
        run = self.run
        if run.asked is not before.asked:
            self.show_contrast(shown=False)
            self._session = Session(bench_of(run.asked, None))
            self._asked_at_ns = self._now_ns
        elif run.phase == "predict" and run.value != before.value:
            self._carry_out(run.asked, run.value)
        if run.phase == "watch" and before.phase == "predict":
            self._still_since_ns = self._now_ns
            self._session.do(LetGo(at_once=self.reduced_motion))
        if run.phase == "explain" and before.phase == "watch":
            self._told_at_ns = self._now_ns
            if self._session.moving:
                # The motion was skipped: the explanation is about how it ended.
                self._session.do(LetGo(at_once=True))
