"""Every question of the shipped lessons in every state: unanswered, answered, on its way, explained, changed, over."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import lru_cache

from lab.lesson import (
    Action,
    Answer,
    Asked,
    Hint,
    Lesson,
    LockIn,
    Next,
    Run,
    Set,
    Sure,
    Watched,
    explain,
    lesson_files,
    read_lesson,
    start,
    step,
)
from lab.lesson.forms import Choice, Number, Numbers, from_si, to_si
from lab.lesson.matching import predictions
from lab.outline.words import msg
from lab.screens.gallery_parts import SETTING, Drawn, Entry, press, shown
from lab.screens.questions.bench import bench_of, changed_bench
from lab.screens.questions.screen import QuestionScreen
from lab.screens.screen import Bench, QuestionModel
from lab.ui.assets import asset_folder
from lab.ui.look import Look

SEED = 4711
LEARNER = "K7M4T9X3"
MOVING_TICKS = 45


@lru_cache(maxsize=1)
def shipped_lessons() -> tuple[Lesson, ...]:
    """The lessons that ship, read once."""
    return tuple(read_lesson(path) for path in lesson_files((asset_folder().parent / "lessons",)))


def lesson_entries(lesson: Lesson) -> Iterator[tuple[str, Entry]]:
    """All states of one lesson's questions, and its end."""
    for index in range(len(lesson.questions)):
        for state, (says, make) in _STATES.items():
            name = f"{lesson.name}-{index + 1}-{state}"
            yield name, Entry(says, lambda look, index=index, make=make: make(look, lesson, index))  # type: ignore[misc]
    yield f"{lesson.name}-end", Entry(msg("the end of a lesson"), lambda look: _end(look, lesson))


def run_at(lesson: Lesson, index: int) -> Run:
    """A run that has come to a question, the first ones answered and the rest skipped."""
    run = start(lesson, seed=SEED)
    while run.index < index:
        run = _walked(
            run, Set(value=right_answer(run.asked), given=""), Sure(how="fairly"), LockIn(), Watched(), Next()
        )
    return run


def right_answer(asked: Asked) -> Answer:
    """The truth as a learner can give it."""
    return _as_shown(asked, asked.truth)


def other_answer(asked: Asked) -> Answer:
    """An answer that comes out otherwise: one that fits exactly one way of thinking, where there is one."""
    wrong = [answer for answer in _answers(asked) if not explain(asked, answer).right]
    return next((answer for answer in wrong if explain(asked, answer).idea is not None), wrong[0])


def _answers(asked: Asked) -> Iterator[Answer]:
    """What ways of thinking answer, then whatever else there is to choose from."""
    for fit in predictions(asked.task):
        yield _as_shown(asked, fit.answer)
    form = asked.form
    if isinstance(form, Choice):
        yield from form.keys
    elif isinstance(form, Number):
        yield form.low
        yield form.high


def _as_shown(asked: Asked, value: Answer) -> Answer:
    """An answer rounded to the figures that the screen shows."""
    if isinstance(value, str):
        return value
    form = asked.form
    if isinstance(form, Numbers) and isinstance(value, tuple):
        return tuple(_rounded(asked, number, each) for number, each in zip(form.numbers, value, strict=True))
    if isinstance(form, Number) and isinstance(value, float):
        return min(max(_rounded(asked, form, value), form.low), form.high)
    raise TypeError(f"{value!r} is no answer to a question of kind {asked.kind}")


def _rounded(asked: Asked, number: Number, value: float) -> float:
    shown = round(from_si(number.quantity, value, asked.units), number.decimals)
    return to_si(number.quantity, shown, asked.units)


def _walked(run: Run, *actions: Action) -> Run:
    for action in actions:
        run, _ = step(run, action)
    return run


def _screen(look: Look, run: Run, bench: Bench | None, *, contrast: bool = False) -> Drawn:
    model = QuestionModel(setting=SETTING, run=run, bench=bench, previous=bench, contrast=contrast, learner=LEARNER)
    return shown(QuestionScreen(look), model)


def _unanswered(look: Look, lesson: Lesson, index: int) -> Drawn:
    run = run_at(lesson, index)
    return _screen(look, run, bench_of(run.asked, None))


def _hinted(look: Look, lesson: Lesson, index: int) -> Drawn:
    run = run_at(lesson, index)
    run = _walked(run, *(Hint() for _ in run.asked.hints))
    return _screen(look, run, bench_of(run.asked, None))


def _predicted(lesson: Lesson, index: int, choose: Callable[[Asked], Answer]) -> Run:
    run = run_at(lesson, index)
    return _walked(run, Set(value=choose(run.asked), given=""), Sure(how="fairly"))


def _predict(look: Look, lesson: Lesson, index: int) -> Drawn:
    run = _predicted(lesson, index, other_answer)
    return _screen(look, run, bench_of(run.asked, run.value))


def _moving(look: Look, lesson: Lesson, index: int) -> Drawn:
    run = _walked(_predicted(lesson, index, other_answer), LockIn())
    bench = bench_of(run.asked, run.value).released()
    for _ in range(MOVING_TICKS):
        bench = bench.ticked()
    return _screen(look, run, bench)


def _explained(look: Look, lesson: Lesson, index: int, choose: Callable[[Asked], Answer]) -> Drawn:
    run = _walked(_predicted(lesson, index, choose), LockIn(), Watched())
    return _screen(look, run, bench_of(run.asked, run.value).released().at_end())


def _right(look: Look, lesson: Lesson, index: int) -> Drawn:
    return _explained(look, lesson, index, right_answer)


def _other(look: Look, lesson: Lesson, index: int) -> Drawn:
    return _explained(look, lesson, index, other_answer)


def _changed(look: Look, lesson: Lesson, index: int) -> Drawn:
    run = _walked(_predicted(lesson, index, other_answer), LockIn(), Watched())
    told = run.explanation
    if told is None or told.contrast is None:
        return _explained(look, lesson, index, other_answer)
    bench = changed_bench(run.asked, told, run.value)
    return _screen(look, run, bench.released().at_end(), contrast=True)


def _end(look: Look, lesson: Lesson) -> Drawn:
    """The last page after a mixed lesson, whose other answers the screen has seen on the way."""
    screen = QuestionScreen(look)
    run = start(lesson, seed=SEED)
    while run.phase != "finished":
        choose = (right_answer, other_answer)[run.index % 2]
        run = _walked(run, Set(value=choose(run.asked), given=""), Sure(how="guess"), LockIn(), Watched())
        _show(screen, run, bench_of(run.asked, run.value).released().at_end())
        run = _walked(run, Next())
    return _show(screen, run, None)


def _show(screen: QuestionScreen, run: Run, bench: Bench | None) -> Drawn:
    return shown(screen, QuestionModel(setting=SETTING, run=run, bench=bench, previous=bench, learner=LEARNER))


def _keypad(look: Look, lesson: Lesson, index: int) -> Drawn:
    screen, asked = _unanswered(look, lesson, index), run_at(lesson, index).asked
    return press(screen, asked.kind) if isinstance(asked.form, Number) else screen


_STATES: dict[str, tuple[str, Callable[[Look, Lesson, int], Drawn]]] = {
    "asked": (msg("a question, nothing said yet"), _unanswered),
    "hints": (msg("a question with all its hints"), _hinted),
    "keypad": (msg("a question, its number being typed"), _keypad),
    "predict": (msg("a question, answered and not locked in"), _predict),
    "locked": (msg("locked in, moving"), _moving),
    "explain-right": (msg("explained, as the learner said"), _right),
    "explain-other": (msg("explained, other than the learner said"), _other),
    "changed": (msg("explained, one thing changed"), _changed),
}
