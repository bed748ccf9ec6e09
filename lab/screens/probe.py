"""The screen of the probe: one bar after the other, nothing told in between, and at the end what the answers fit."""

from __future__ import annotations

from lab.files import UNITS
from lab.lesson import SIDES, Message, Side, render
from lab.lesson.probe.items import UNIT_NAME, Item
from lab.lesson.probe.telling import BEGINS, PROMPT, TITLE, given_message
from lab.outline.words import msg
from lab.scenes.pair_bar import PairView, draw_pair_bar
from lab.screens.intents import AskMore, Back, Go, Intent, SaySide
from lab.screens.notices import with_notice
from lab.screens.page import PageScreen
from lab.screens.probe_end import MORE, TO_BUILD, TO_LESSONS, probe_end, probe_end_foot
from lab.screens.questions.layout import Spread, TextSheet
from lab.screens.reading_page import ReadingPage
from lab.screens.screen import ProbeModel
from lab.screens.top_bar import top_bar
from lab.simulation.benches.hanging_bar import HangingBar
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.outcomes import Chosen, Pressed, WidgetEvent
from lab.ui.widgets.arrange import Column
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow, option_key
from lab.ui.widgets.label import Label
from lab.ui.widgets.picture import Picture
from lab.ui.widgets.widget import Widget

SIDE, NEXT, PICTURE = "side", "next", "picture"
HELP_LINES = (
    msg("Say which end drops, or that it stays level. Then go on to the next bar."),
    msg("Nothing moves and nothing is told in between: that would change how you think. The end says what fits."),
)


class ProbeScreen(PageScreen[ProbeModel]):
    """Shows what is asked; keeps what was chosen and not yet given."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, help_lines=HELP_LINES)
        self._chosen: Side | None = None

    def show(self, model: ProbeModel) -> None:
        """Take a new model."""
        before = self._model
        another = before is None or len(before.probe.given) != len(model.probe.given) or before.item != model.item
        if another:
            self._chosen = None
        super().show(model)
        if another and self._page.desk.by_keyboard:
            self._page.desk.focus(TO_LESSONS if model.item is None else option_key(SIDE, "left"))

    def _answer(self, event: WidgetEvent, model: ProbeModel) -> list[Intent]:
        match event:
            case Chosen(key=key, value=value) if key == SIDE:
                self._chosen = next((side for side in SIDES if side == value), None)
            case Pressed(key=key) if key == NEXT and self._chosen is not None:
                return [SaySide(side=self._chosen)]
            case Pressed(key=key) if key == MORE:
                return [AskMore()]
            case Pressed(key=key) if key == TO_LESSONS:
                return [Back()]
            case Pressed(key=key) if key == TO_BUILD:
                return [Go(place="build")]
        return []

    # --- showing ----------------------------------------------------------------------------------------------

    def _root(self, model: ProbeModel) -> Widget:
        look = self._page.look
        say = look.words.say
        bar = top_bar(look, title=say(TITLE), trail=say("Lessons"), sound=self._page.sound_shown(model.setting))
        header = with_notice(look, bar, model.notice)
        if model.item is None or model.bench is None:
            end = probe_end(look, model.probe, learner=model.learner, gain=model.gain)
            return ReadingPage(header, end, foot=probe_end_foot(look, model.probe))
        return Spread(header, self._sheet(model, model.item), _picture(look, model.bench, model.item))

    def _sheet(self, model: ProbeModel, item: Item) -> TextSheet:
        """Which question it is, what hangs there, what is asked, the one action."""
        look, asked = self._page.look, len(model.probe.given)
        say, number = look.words.say, look.words.number
        count = say("question {number} of {count} at most", number=number(asked + 1), count=number(model.probe.most))
        options = [("left", say("left")), ("level", say("level")), ("right", say("right"))]
        if look.sizes.mirrored:
            # Left and right are those of the picture, which is never mirrored.
            options.reverse()
        begins = (Label("begins", say(BEGINS), color="soft"),) if asked == 0 else ()
        body = (
            Label("count", count, style="small", color="soft"),
            Label("given", worded(look, given_message(item))),
            ChoiceRow(SIDE, say(PROMPT), tuple(options), self._chosen),
            *begins,
        )
        onward = Button(NEXT, say("Next"), kind="main", enabled=self._chosen is not None)
        if self._chosen is not None:
            return TextSheet(f"probe-{asked}", body, (onward,))
        why = Label("why-not", say("First say which end."), style="small", color="soft", align="center")
        return TextSheet(f"probe-{asked}", body, (why, onward))


def worded(look: Look, sentence: Message) -> str:
    """A sentence in words: always in the units of the items, since adding works on the very numbers that are seen."""
    return render(sentence, look.words, UNITS[UNIT_NAME])


def _picture(look: Look, bench: HangingBar, item: Item) -> Widget:
    def draw(canvas: Canvas, rect: Rect) -> None:
        draw_pair_bar(canvas, rect, PairView(bench=bench, look=look, units=UNITS[UNIT_NAME]))

    name = look.words.content(bench.title)
    picture = Picture(PICTURE, name, draw, value=worded(look, given_message(item)), least=(240.0, 200.0))
    return Column((picture,), gap=0, weights=(1.0,))
