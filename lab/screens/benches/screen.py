"""Free build: any bench with everything that can be done to it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from lab.files import UNITS
from lab.outline import Node
from lab.scenes.readings import Readings
from lab.screens import top_bar
from lab.screens.benches.dialogs import Dialogs
from lab.screens.benches.doubts import DOUBT, switched
from lab.screens.benches.face import Asked, Face, Stand
from lab.screens.benches.faces import face_of
from lab.screens.benches.layout import PICTURE, Pieces, laid_out
from lab.screens.benches.panel import GUESS, HOLD, LET_GO, SHOW_END, VIEW, VIEWS
from lab.screens.benches.sides import SIDES
from lab.screens.intents import Back, ChangeSetting, Do, Intent, OpenBuild
from lab.screens.notices import notice_intents, notice_toast, with_notice
from lab.screens.screen import BuildModel, Outcome
from lab.screens.settings_panel import changed_setting
from lab.simulation import Command, Guess, HoldStill, LetGo, Redo, SetView, Undo
from lab.simulation.benches.catalogue import BENCHES
from lab.ui.canvas import Canvas
from lab.ui.desk import Desk
from lab.ui.events import Event, Key, PointerDown
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.outcomes import Chosen, Escaped, Pressed, WidgetEvent
from lab.ui.widgets.widget import Widget

_NO_ROOM = Rect(0.0, 0.0, 1.0, 1.0)


class FreeBuildScreen:
    """The screen of whichever bench the model holds. The bench's face keeps what is picked and half done."""

    def __init__(self, look: Look) -> None:
        self._look = look
        self._desk = Desk(look)
        self._face: Face[Any] | None = None
        self._dialogs = Dialogs()
        self._model: BuildModel | None = None
        self._turned_only = False

    def show(self, model: BuildModel) -> None:
        """Take a new model; what is picked stays picked while it is there."""
        before, self._model = self._model, model
        # In motion only the angle changes from frame to frame, and the picture asks for that itself.
        if self._face is None or before is None or type(before.bench) is not type(model.bench):
            self._face, before = face_of(model.bench), None
        self._turned_only = before is not None and self._only_moved(before, model)
        if not self._turned_only:
            self._refresh()

    def restyle(self, look: Look) -> None:
        """Take a new size, theme, language or text scale."""
        self._look = look
        self._desk.restyle(look)
        if self._model is not None:
            self._refresh()

    def choose_build(self) -> None:
        """Open the list of builds."""
        self._dialogs.show_builds()
        if self._model is not None:
            self._refresh()

    def draw(self, canvas: Canvas) -> None:
        """Draw the model that was shown last."""
        self._desk.draw(canvas)

    def outline(self) -> Node:
        """The screen as a tree."""
        if self._turned_only:
            self._refresh()
        return self._desk.outline()

    def handle(self, event: Event) -> Outcome:
        """Answer an event with intents; the laboratory shows the model that comes of them."""
        model = self._model
        if model is None:
            return Outcome()
        if self._turned_only:
            self._refresh()
        if self._typed(event, model):
            self._refresh()
            return Outcome(consumed=True)
        shortcut = _shortcut(event)
        if shortcut is not None and not self._dialogs.open:
            return Outcome(consumed=True, intents=(Do(command=shortcut),))
        if isinstance(event, PointerDown):
            self._on_bench.pointer_down(event.pointer, (event.x, event.y))
        events = self._desk.handle(event)
        intents: list[Intent] = []
        for one in events:
            intents += self._answer(one, model)
        if events:
            self._refresh()
        return Outcome(consumed=self._desk.consumed, intents=tuple(intents))

    def _typed(self, event: Event, model: BuildModel) -> bool:
        """Whether the event was typing into something."""
        focused = self._desk.focused
        if self._dialogs.open:
            return self._dialogs.typed(event, model, focused=focused)
        return self._on_bench.typed(event, self._stand(model), focused=focused)

    # --- what events ask for --------------------------------------------------------------------------------

    def _answer(self, event: WidgetEvent, model: BuildModel) -> list[Intent]:
        setting, about_notice = changed_setting(event), notice_intents(event)
        if setting is not None or about_notice:
            return [setting] if setting else list(about_notice)
        if isinstance(event, Escaped):
            return self._escaped(event)
        if isinstance(event, Chosen) and self._dialogs.chosen(event):
            return []
        if isinstance(event, Chosen) and event.key in (GUESS, VIEW):
            return [Do(command=_chosen(event, model))]
        if isinstance(event, Pressed):
            asked = self._pressed(event.key, model)
            if asked is not None:
                return asked
        rect = self._desk.rect(PICTURE) or _NO_ROOM
        return [Do(command=command) for command in self._on_bench.answer(event, self._stand(model), rect)]

    def _escaped(self, event: Escaped) -> list[Intent]:
        if event.key:
            self._dialogs.close()
            return []
        return [] if self._on_bench.let_all_go() else [Back()]

    def _pressed(self, key: str, model: BuildModel) -> list[Intent] | None:
        """What a button asks for; None where the key belongs to the picture, the tray or the strip."""
        command = _COMMANDS.get(key)
        if command is not None:
            self._on_bench.focus = _NEXT_FOCUS.get(key, "")
            at_once = LetGo(at_once=True) if key == LET_GO and self._look.reduced_motion else command
            return [Do(command=at_once)]
        if key == DOUBT:
            return [Do(command=switched(model.bench.parts))]
        if key == top_bar.BACK:
            return [Back()]
        if key == top_bar.UNITS:
            return [ChangeSetting(name="units", value=top_bar.next_units(_units_of(model)))]
        asked = self._dialogs.pressed(key, model)
        if asked and isinstance(asked[0], OpenBuild):
            self._on_bench.let_all_go()
        return asked

    # --- what is shown --------------------------------------------------------------------------------------

    def _refresh(self) -> None:
        model = self._model
        self._turned_only = False
        if model is None:
            return
        toast = notice_toast(self._look, model.notice)
        self._desk.show(self._root(model), dialog=self._dialogs.shown(self._look, model, self._on_bench), toast=toast)
        focus = self._on_bench.focus
        if focus and self._desk.rect(focus) is not None:
            self._on_bench.focus = ""
            if self._desk.by_keyboard:
                self._desk.focus(focus)

    @property
    def _on_bench(self) -> Face[Any]:
        """The face of the bench that is shown.  Raises RuntimeError before one is."""
        if self._face is None:
            raise RuntimeError("nothing has been shown yet")
        return self._face

    def _stand(self, model: BuildModel) -> Stand[Any]:
        return Stand(
            look=self._look,
            readings=Readings(words=self._look.words, units=UNITS[_units_of(model)]),
            bench=model.bench,
            previous=model.previous,
            fraction=model.fraction,
        )

    def _now(self) -> Stand[Any]:
        """The stand at the time of drawing: in motion the picture asks for it by itself."""
        if self._model is None:
            raise RuntimeError("nothing has been shown yet")
        return self._stand(self._model)

    def _only_moved(self, before: BuildModel, model: BuildModel) -> bool:
        still = replace(model, bench=before.bench, previous=before.previous, fraction=before.fraction)
        return still == before and self._on_bench.only_moved(self._stand(before), self._stand(model))

    def _root(self, model: BuildModel) -> Widget:
        look, say = self._look, self._look.words.say
        bar = top_bar.top_bar(
            look,
            title=look.words.content(model.bench.title),
            trail=say("Free build"),
            changes=(model.can_undo, model.can_redo),
            benches=len(BENCHES) > 1,
            builds=True,
            units=UNITS[_units_of(model)],
        )
        asked = Asked(picture=lambda: self._desk.rect(PICTURE), stand=self._now)
        shown = self._on_bench.shown(self._stand(model), asked)
        pieces = Pieces(
            look=look,
            bar=with_notice(look, bar, model.notice),
            picture=shown.picture,
            parts=shown.parts,
            strip=shown.strip,
            areas=shown.areas,
        )
        return laid_out(pieces)


_COMMANDS: Mapping[str, Command] = {
    top_bar.UNDO: Undo(),
    top_bar.REDO: Redo(),
    LET_GO: LetGo(),
    SHOW_END: LetGo(at_once=True),
    HOLD: HoldStill(),
}
_NEXT_FOCUS: Mapping[str, str] = {LET_GO: HOLD, SHOW_END: HOLD, HOLD: LET_GO}


def _units_of(model: BuildModel) -> str:
    return model.setting.units or model.bench.units


def _chosen(event: Chosen, model: BuildModel) -> Command:
    if event.key == VIEW:
        return SetView(next((view for view in VIEWS if view == event.value), model.bench.view))
    side = next((side for side in SIDES if side == event.value), None)
    return Guess(side)


def _shortcut(event: Event) -> Command | None:
    """Control with Z takes back, with Y (or Shift and Z) does again."""
    if not isinstance(event, Key) or not event.ctrl or event.name not in ("z", "y"):
        return None
    return Redo() if event.name == "y" or event.shift else Undo()
