"""The screen of a lesson: predict, let go, explain, and the end."""

from __future__ import annotations

from lab.lesson import (
    SURENESS,
    Action,
    Again,
    Asked,
    Hint,
    LockIn,
    Message,
    Next,
    Skip,
    Sure,
    Watched,
    render,
)
from lab.outline.words import msg
from lab.screens.intents import Answer, Back, ChangeSetting, Go, Intent, ShowContrast
from lab.screens.notices import with_notice
from lab.screens.page import PageScreen
from lab.screens.questions.answering import chosen, drafted, first_key, given
from lab.screens.questions.contrast import FORETELL, foretell
from lab.screens.questions.layout import Spread
from lab.screens.questions.lesson_end import TO_BUILD, TO_LESSONS, lesson_end, lesson_end_foot
from lab.screens.questions.picture import picture_side
from lab.screens.questions.pictures import PICTURE, picture_of
from lab.screens.questions.scope import (
    AGAIN,
    CONTRAST,
    GO_ON,
    HINT,
    LOCK,
    NEXT,
    SKIP,
    SURE,
    Scope,
)  # fmt: skip
from lab.screens.questions.text import text_sheet
from lab.screens.reading_page import ReadingPage
from lab.screens.screen import QuestionModel
from lab.screens.top_bar import UNITS, next_units, top_bar
from lab.ui.look import Look
from lab.ui.outcomes import (
    Changed,
    Chosen,
    DragBegan,
    DragCancelled,
    Dragged,
    Dropped,
    Nudged,
    Pressed,
    Tapped,
    WidgetEvent,
)  # fmt: skip
from lab.ui.widgets.widget import Widget

HELP_LINES = (
    msg("Say what you think will happen before anything moves. A guess will do."),
    msg("Choose an answer or set a number; a place can be slid or tapped in the picture."),
    msg("Then say how sure you are and lock it in."),
    msg("Then it is let go, and you see what decides."),
)
LARGE_STEP = 10
"""Steps that a nudge with Shift is worth."""

_ACTIONS: dict[str, Action] = {
    LOCK: LockIn(),
    HINT: Hint(),
    SKIP: Skip(),
    GO_ON: Watched(),
    AGAIN: Again(),
    NEXT: Next(),
}


class QuestionScreen(PageScreen[QuestionModel]):
    """Shows one question after the other; keeps what is half done: a drag, an open dialog."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, help_lines=HELP_LINES)
        self._drag_from: tuple[float | None] | None = None
        self._draft: tuple[float | None, ...] = ()
        self._ideas: dict[tuple[int, int], tuple[Asked, Message]] = {}
        self._at: tuple[int, int, str] | None = None

    def show(self, model: QuestionModel) -> None:
        """Take a new model."""
        hinted = self._model is not None and model.run.hints > self._model.run.hints
        at = (model.run.index, model.run.round, model.run.phase)
        moved_on = at != self._at
        if moved_on:
            # Before anything is shown: what was half given or still held belongs to another question.
            self._at, self._draft, self._drag_from = at, (), None
        self._remember(model)
        super().show(model)
        if hinted:
            # A hint pushes its button down; what was asked for, just above it, must be seen.
            self._page.desk.focus(HINT)
        if moved_on and self._page.desk.by_keyboard:
            self._page.desk.focus(self._first_key(model))

    # --- answering --------------------------------------------------------------------------------------------

    def _answer(self, event: WidgetEvent, model: QuestionModel) -> list[Intent]:
        scope = self._scope(model)
        match event:
            case Pressed(key=key) if key in _ACTIONS:
                return [Answer(action=_ACTIONS[key])]
            case Pressed(key=key) if key == CONTRAST:
                return [ShowContrast(shown=not model.contrast)]
            case Pressed(key=key) if key.startswith(FORETELL):
                return foretell(scope, key)
            case Pressed(key=key) if key == UNITS:
                return [ChangeSetting(name="units", value=next_units(scope.units.name))]
            case Pressed(key=key) if key == TO_LESSONS:
                return [Back()]
            case Pressed(key=key) if key == TO_BUILD:
                return [Go(place="build")]
            case Chosen(key=key, value=value) if key == SURE:
                return [Answer(action=Sure(how=how)) for how in SURENESS if how == value]
            case Chosen(key=key, value=value):
                return _answers(chosen(scope, key, value))
            case Changed(key=key, value=shown):
                return self._number(scope, key, shown)
            case Nudged():
                return self._nudge(scope, event)
            case Tapped(key=key, at=at) if key == PICTURE:
                rect = self._page.desk.rect(PICTURE)
                return [] if rect is None else self._place(scope, picture_of(scope).tapped_m(scope, rect, at))
            case DragBegan() | Dragged() | Dropped() | DragCancelled():
                return self._drag(scope, event)
        return []

    def _number(self, scope: Scope, key: str, shown: float) -> list[Intent]:
        draft = drafted(scope, key, shown)
        if draft is None:
            return []
        self._draft = draft
        return _answers(given(scope, draft))

    def _place(self, scope: Scope, place_m: float | None) -> list[Intent]:
        if scope.run.phase != "predict" or place_m is None:
            return []
        return _answers(given(scope, (scope.snapped_m(place_m),)))

    def _nudge(self, scope: Scope, event: Nudged) -> list[Intent]:
        start_m = picture_of(scope).carried_m(scope, event.key)
        if start_m is None:
            return []
        steps = event.dx * (LARGE_STEP if event.large else 1)
        return self._place(scope, scope.units.to_m(scope.units.from_m(start_m) + steps * scope.step))

    def _drag(self, scope: Scope, event: DragBegan | Dragged | Dropped | DragCancelled) -> list[Intent]:
        picture = picture_of(scope)
        if picture.carried_m(scope, event.key) is None:
            return []
        if isinstance(event, DragCancelled):
            before = self._drag_from[0] if self._drag_from else None
            self._drag_from = None
            return self._place(scope, before)
        if isinstance(event, DragBegan):
            self._drag_from = (scope.place_m,)
        elif isinstance(event, Dropped):
            self._drag_from = None
        rect = self._page.desk.rect(PICTURE)
        return [] if rect is None else self._place(scope, picture.dragged_m(scope, rect, event.at))

    # --- showing ----------------------------------------------------------------------------------------------

    def _scope(self, model: QuestionModel) -> Scope:
        return Scope(look=self._page.look, model=model, dragging=self._drag_from is not None, draft=self._draft)

    def _first_key(self, model: QuestionModel) -> str:
        """What the keyboard is put on when another question or step comes up."""
        if model.run.phase == "predict":
            return first_key(self._scope(model))
        return {"watch": GO_ON, "explain": NEXT}.get(model.run.phase, TO_LESSONS)

    def _remember(self, model: QuestionModel) -> None:
        """Keep what other answers were the answer to: the end of the lesson tells them once more."""
        run, told = model.run, model.run.explanation
        if run.phase != "explain" or told is None or told.right or told.idea is None:
            return
        self._ideas[(run.index, run.round)] = (run.asked, told.idea)

    def _ideas_told(self) -> tuple[tuple[str, str], ...]:
        """What came up, in the words and units of now: (what was asked about, the idea)."""
        words = self._page.look.words
        return tuple(
            (words.content(asked.build.title), render(idea, words, asked.units)) for asked, idea in self._ideas.values()
        )

    def _root(self, model: QuestionModel) -> Widget:
        look, run, scope = self._page.look, model.run, self._scope(model)
        content = look.words.content
        if run.phase == "finished":
            bar = top_bar(look, title=content(run.lesson.title), trail=look.words.say("Lessons"))
            page = lesson_end(look, run, ideas=self._ideas_told(), learner=model.learner)
            return ReadingPage(with_notice(look, bar, model.notice), page, foot=lesson_end_foot(look))
        bar = top_bar(
            look,
            title=scope.text(run.asked.title),
            trail=content(run.lesson.title),
            units=scope.units,
            sound=self._page.sound_shown(model.setting),
        )
        return Spread(with_notice(look, bar, model.notice), text_sheet(scope), picture_side(scope))


def _answers(action: Action | None) -> list[Intent]:
    """What an action asks for; nothing where there is none."""
    return [] if action is None else [Answer(action=action)]
