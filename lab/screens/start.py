"""The start screen: a bar that asks to be let go, and the ways on."""

from __future__ import annotations

from collections.abc import Mapping

from lab.attempts import shown_code
from lab.files import UNITS
from lab.outline.words import msg
from lab.scenes.hanging_view import HangingView, angle_between
from lab.scenes.readings import Readings
from lab.screens.benches.hanging_bar.hands import Hands
from lab.screens.intents import Do, Go, Intent
from lab.screens.notices import with_notice
from lab.screens.page import PageScreen
from lab.screens.place_card import PlaceCard
from lab.screens.screen import StartModel
from lab.screens.start_layout import LEARNER, StartSheet, has_room, masthead
from lab.screens.start_picture import PICTURE, PIN, build_card_picture, lesson_card_picture, start_picture
from lab.simulation import HangingBar, HoldStill, LetGo
from lab.ui.look import Look
from lab.ui.outcomes import DragBegan, DragCancelled, Dragged, Dropped, Nudged, Pressed, Tapped, WidgetEvent
from lab.ui.widgets.arrange import Column, Row, Steady
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.picture import Picture
from lab.ui.widgets.widget import Widget

LET_GO, LESSONS, BUILD, SAVED = "let-go", "to-lessons", "to-build", "to-saved"
HELP_LINES = (
    msg("Tap the yellow pin: the bar is let go. Tap it again and the bar is held level."),
    msg("Drag a weight along the bar, or slide the dark carriage on the rail, and let go again."),
)


class StartScreen(PageScreen[StartModel]):
    """Shows the bar and the ways on; keeps what is being dragged."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, help_lines=HELP_LINES, can_go_back=False)
        self._hands = Hands()
        self._was_loose = False

    def _answer(self, event: WidgetEvent, model: StartModel) -> list[Intent]:
        match event:
            case Pressed(key=key) if key in _WAYS_ON:
                return [_WAYS_ON[key]]
            case Pressed(key=key) if key in (PIN, LET_GO):
                return self._toggled(model)
            case Tapped(key=key) if key == PICTURE and model.bench is not None and model.bench.held:
                # Whoever taps the bar itself wants to see it go.
                return self._toggled(model)
            case DragBegan() | Dragged() | Dropped() | DragCancelled() | Nudged():
                return self._moved(event, model)
        return []

    def _toggled(self, model: StartModel) -> list[Intent]:
        if model.bench is None:
            return []
        at_once = self._page.look.reduced_motion
        return [Do(command=LetGo(at_once=at_once) if model.bench.held else HoldStill())]

    def _moved(self, event: WidgetEvent, model: StartModel) -> list[Intent]:
        """A weight or the carriage is moved; a bar that was loose before is let go again once it is put down."""
        bench, rect = model.bench, self._page.desk.rect(PICTURE)
        if bench is None or rect is None:
            return []
        if isinstance(event, DragBegan | Nudged):
            self._was_loose = not bench.held
        intents: list[Intent] = [
            Do(command=command) for command in self._hands.answer(event, self._view(model, bench), rect)
        ]
        self._hands.let_all_go()
        if isinstance(event, Dropped | Nudged) and self._was_loose:
            intents.append(Do(command=LetGo(at_once=self._page.look.reduced_motion)))
        return intents

    def _view(self, model: StartModel, bench: HangingBar) -> HangingView:
        look = self._page.look
        return HangingView(
            bench=bench,
            look=look,
            readings=Readings(words=look.words, units=UNITS[model.setting.units or bench.units]),
            angle_rad=angle_between(model.previous or bench, bench, model.fraction),
            picked=self._hands.picked,
            carried_at_m=self._hands.carried.at_m if self._hands.carried else None,
        )

    # --- showing ----------------------------------------------------------------------------------------------

    def _root(self, model: StartModel) -> Widget:
        look = self._page.look
        code = look.words.say("Code {code}", code=shown_code(model.learner)) if model.learner else ""
        head = with_notice(look, masthead(look, code=code if has_room(look) else ""), model.notice)
        picture: Picture | Label = Label("no-bar", "")
        if model.bench is not None:
            picture = start_picture(self._view(model, model.bench))
        return StartSheet(head, picture, _onward(look, model.bench, code="" if has_room(look) else code))


_WAYS_ON: dict[str, Intent] = {
    LESSONS: Go(place="lessons"),
    BUILD: Go(place="build"),
    SAVED: Go(place="build", name="builds"),
    LEARNER: Go(place="learner"),
}


def _onward(look: Look, bench: HangingBar | None, *, code: str) -> Widget:
    """What to do with the bar, and where to go from here.  code: of the learner, where the masthead has no room."""
    say = look.words.say
    held = bench is None or bench.held
    told = Steady(_told(look, "held" if bench is None else _state(bench)), tuple(_told(look, each) for each in _TOLD))
    let_go = Button(LET_GO, say("Let go") if held else say("Hold it level"), kind="main")
    saved = Button(SAVED, say("Open a saved build"), kind="quiet")
    cards = Row(
        (
            PlaceCard(LESSONS, say("Lessons"), say("Say what will happen. Then see it."), lesson_card_picture(look)),
            PlaceCard(BUILD, say("Free build"), say("Hang anything anywhere."), build_card_picture(look)),
        ),
        gap=16,
    )
    whose = (Button(LEARNER, code, kind="quiet"),) if code else ()
    if look.sizes.portrait:
        return Column((told, Row((let_go, saved), weights=(1.6, 1.0), gap=16), cards, *whose), gap=16)
    return Row((Column((told, let_go, saved, *whose), gap=10), cards), weights=(1.0, 2.4), gap=24)


_TOLD: Mapping[str, tuple[str, str]] = {
    "held": (msg("Which end will drop?"), msg("Say it aloud, then let go.")),
    "going": (msg("There it goes…"), msg("Watch.")),
    "left": (msg("The left end dropped."), msg("Now move a weight!")),
    "right": (msg("The right end dropped."), msg("Now move a weight!")),
    "level": (msg("It stays level."), msg("Now move a weight!")),
}
"""The question, or what came of it, and what to do next."""


def _state(bench: HangingBar) -> str:
    return "held" if bench.held else bench.outcome or "going"


def _told(look: Look, state: str) -> Widget:
    what, then = (look.words.say(text) for text in _TOLD[state])
    return Column((Label("question", what, style="title"), Label("then", then, color="soft")), gap=0)
