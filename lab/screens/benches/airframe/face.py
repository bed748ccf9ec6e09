"""The airframe on the screen of free build: what is done with it, each with its own picture, panel and hands."""

from __future__ import annotations

from dataclasses import replace
from typing import Any, ClassVar

from lab.outline.cautions import LEARNING_ONLY
from lab.outline.words import msg
from lab.screens.benches.airframe.activity import Activity
from lab.screens.benches.airframe.build import Build
from lab.screens.benches.airframe.hang import Hang
from lab.screens.benches.airframe.weigh import Weigh
from lab.screens.benches.face import Asked, Face, Shown, Stand
from lab.simulation import Command
from lab.simulation.airframe_commands import DoWith
from lab.simulation.benches.airframe import AirframeBench
from lab.ui.events import Event
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look
from lab.ui.outcomes import Chosen, WidgetEvent
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.label import Label
from lab.ui.widgets.widget import Widget

DOING = "doing"
HELP = (
    msg("Build it: drag a part in any of the three views; what one view does not show of its place stays."),
    msg("Guess which end drops, then see where it balances and what that means."),
    msg("Hang it by any of its points: drag the hook, say how it will hang, and let go."),
    msg("Draw the plumb line while it hangs still. Two lines cross at its CG."),
    msg("Weigh it: place the three scales and let it down. Raise its nose to find how high its CG is."),
    msg("Arrow keys move what is picked; its place can be typed."),
)


class AirframeFace(Face[AirframeBench]):
    """What flies, and what is being done with it."""

    help: ClassVar = HELP
    caution: ClassVar = LEARNING_ONLY
    tasks: ClassVar = ()

    def __init__(self) -> None:
        self._activities: tuple[Activity, ...] = (Build(), Hang(), Weigh())

    def shown(self, stand: Stand[AirframeBench], asked: Asked) -> Shown:
        now = self._now(stand.bench)
        shown = now.shown(stand, asked)
        look, parts = stand.look, shown.parts
        below: tuple[Widget, ...] = (*parts.view, Label("caution", look.words.say(LEARNING_ONLY), style="small"))
        return replace(shown, parts=replace(parts, head=(self._choice(look, now),), view=below))

    def answer(self, event: WidgetEvent, stand: Stand[AirframeBench], rect: Rect) -> tuple[Command, ...]:
        if isinstance(event, Chosen) and event.key == DOING:
            chosen = next((each.doing for each in self._activities if each.doing == event.value), None)
            return () if chosen is None else (DoWith(chosen),)
        now = self._now(stand.bench)
        commands = now.answer(event, stand, rect)
        self.focus, now.hands.focus = now.hands.focus, ""
        return commands

    def let_all_go(self) -> bool:
        # All of them let go, whichever had anything.
        had = [each.hands.let_all_go() for each in self._activities]
        return any(had)

    def pointer_down(self, pointer: int, at: Point) -> None:
        for each in self._activities:
            each.hands.pointer_down(pointer, at)

    def only_moved(self, before: Stand[AirframeBench], now: Stand[AirframeBench]) -> bool:
        return self._now(now.bench).only_moved(before, now)

    def typed(self, event: Event, stand: Stand[AirframeBench], *, focused: str | None) -> bool:
        return self._now(stand.bench).typed(event, stand, focused=focused)

    def _view(self, stand: Stand[AirframeBench]) -> Any:
        return self._now(stand.bench).view(stand)

    def _now(self, bench: AirframeBench) -> Activity:
        return next((each for each in self._activities if each.doing == bench.doing), self._activities[0])

    def _choice(self, look: Look, now: Activity) -> Widget:
        say = look.words.say
        options = tuple((each.doing, say(each.title)) for each in self._activities)
        return ChoiceRow(DOING, say("What to do with it"), options, now.doing, show_name=False)
