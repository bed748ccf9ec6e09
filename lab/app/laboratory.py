"""The whole lab without a window: which place is shown, and what the intents of its screen lead to.

It reads no clock and opens no window: whoever drives it hands in events and the time.  So a test can
play through everything by keys and pointer without a display.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

from lab.app.hearing import Hearing
from lab.app.paths import Paths
from lab.app.record import Record
from lab.app.rooms.doors import room_at, way_back
from lab.app.rooms.room import House, Room
from lab.app.rooms.start import StartRoom
from lab.app.seeds import drawn_seed
from lab.app.settings import Settings, SettingsError, changed, save_settings
from lab.attempts import new_code, shown_code
from lab.outline.node import Node
from lab.outline.words import Words, msg
from lab.screens import intents
from lab.screens.intents import Intent
from lab.screens.screen import Screen
from lab.ui.canvas import Canvas
from lab.ui.events import Event, Exposed, FileDropped, Quit, Resized
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES


class Laboratory:
    """One window's worth of lab.

    finished: whether somebody asked to close it; `close` has then been called.  hearing: what is to be heard.
    """

    def __init__(
        self,
        *,
        paths: Paths,
        settings: Settings,
        record: Record,
        size: tuple[int, int] = (1280, 720),
        px_per_mm: float | None = None,
        now_ns: int = 0,
        fresh_seed: Callable[[], int] = drawn_seed,
    ) -> None:
        """size: of the window in pixels.  px_per_mm: None where the display's size is not known."""
        self.house = House(paths=paths, settings=settings, record=record, now_ns=now_ns, fresh_seed=fresh_seed)
        self.finished = False
        self.hearing = Hearing()
        self._size = size
        self._px_per_mm = px_per_mm
        self._look = self._make_look()
        self._room: Room = StartRoom(self.house)
        self._screen: Screen[Any] = self._room.make_screen(self._look)
        self._refresh()

    @property
    def size(self) -> tuple[int, int]:
        """The window's size in pixels."""
        return self._size

    @property
    def moving(self) -> bool:
        """Whether frames are wanted without anybody doing anything."""
        return self._room.moving

    @property
    def wake_at_ns(self) -> int | None:
        """When the next thing happens by itself although nothing moves, or None."""
        notice = self.house.notice
        hushed_at_ns = None if notice is None or notice.kind == "trouble" else self.house.notice_until_ns
        return min((at for at in (hushed_at_ns, self._room.wake_at_ns) if at is not None), default=None)

    def handle(self, event: Event) -> bool:
        """Answer an event; returns whether the screen is to be drawn again."""
        if isinstance(event, Quit):
            self._leave()
            return False
        if isinstance(event, Resized):
            self._size = (event.width, event.height)
            self._restyle()
            return True
        if isinstance(event, Exposed):
            return True
        if isinstance(event, FileDropped):
            self.open_build(event.path)
            return True
        outcome = self._screen.handle(event)
        for intent in outcome.intents:
            self._perform(intent)
        if outcome.intents:
            self._refresh()
        return outcome.consumed or bool(outcome.intents)

    def turn(self, now_ns: int) -> bool:
        """Let time pass up to now; returns whether the screen is to be drawn again."""
        self.house.now_ns = now_ns
        changed_here = self._room.turn(now_ns)
        notice_gone = self.house.turn()
        if changed_here or notice_gone:
            self._refresh()
        return changed_here or notice_gone

    def say_no_sound(self) -> None:
        """Say that there is no sound: in plain words, since the system's own are for whoever started the lab."""
        self.house.say(msg("There is no sound here. Everything works without it."))
        self._refresh()

    def draw(self, canvas: Canvas) -> None:
        """Draw the place that is shown."""
        self._screen.draw(canvas)

    def outline(self) -> Node:
        """What is on the screen, as a tree."""
        return self._screen.outline()

    def open_build(self, path: Path) -> None:
        """Show free build with a build file on the bench; what is wrong with the file is said there."""
        from lab.app.rooms.build import BuildRoom

        room = BuildRoom(self.house)
        room.open(path)
        self._enter(room)

    def open_lesson(self, name: str, *, seed: int | None = None) -> None:
        """Begin a lesson by its name or file, "" for the first; where it cannot be used, say so and stay."""
        self._go(intents.Go(place="lesson", name=name), seed=seed)

    def open_probe(self, *, seed: int | None = None) -> None:
        """Begin the probe."""
        self._go(intents.Go(place="probe"), seed=seed)

    def close(self) -> None:
        """Keep what is to be kept and let go of the record."""
        self._room.close()
        self.house.record.close()

    def _perform(self, intent: Intent) -> None:
        if self._room.perform(intent):
            return
        match intent:
            case intents.Go():
                self._go(intent)
            case intents.Back():
                self._go(way_back(self._room))
            case intents.OpenBuild():
                self.open_build(intent.path)
            case intents.ChangeSetting():
                self._change(intent.name, intent.value)
            case intents.NewLearner():
                self._change("learner", new_code())
                self.house.say(
                    msg("Answers are now kept under the code {code}."),
                    {"code": shown_code(self.house.settings.learner)},
                )
            case intents.RetrySave():
                self._retry()
            case intents.DismissNotice():
                self.house.notice = None
            case intents.Leave():
                self._leave()

    def _go(self, to: intents.Go, *, seed: int | None = None) -> None:
        self.house.hush()
        if to.place in ("lessons", "learner"):
            self._room.close()  # first, so that they know what was answered last
        room = room_at(self.house, to, seed=seed)
        if room is None:
            self._refresh()
        else:
            self._enter(room)

    def _enter(self, room: Room | None) -> None:
        """Show a place; where there is none, stay: why has been said."""
        if room is not None:
            self._room.close()
            self._room = room
            self._screen = room.make_screen(self._look)
        self._refresh()

    def _change(self, name: str, value: object) -> None:
        try:
            self.house.settings = changed(self.house.settings, name, value)
            save_settings(self.house.paths.settings, self.house.settings)
        except SettingsError as error:
            self.house.say(msg("{sentence}"), {"sentence": str(error)})
        self._restyle()

    def _retry(self) -> None:
        if self.house.record.retry():
            self.house.notice = None
            self.house.say(msg("Everything is saved."))
        else:
            why = self.house.record.trouble or ""
            self.house.warn(msg("Your answer is not saved yet: {why}"), {"why": why}, retry=True)

    def _leave(self) -> None:
        self.close()
        self.finished = True

    def _restyle(self) -> None:
        self.house.words = Words(self.house.settings.language)
        self._look = self._make_look()
        self._screen.restyle(self._look)
        self._refresh()

    def _make_look(self) -> Look:
        settings, words = self.house.settings, self.house.words
        sizes = Sizes(
            width=self._size[0],
            height=self._size[1],
            text_scale=settings.text_scale,
            px_per_mm=self._px_per_mm,
            mirrored=words.mirrored,
        )
        return Look(theme=THEMES[settings.theme], sizes=sizes, words=words, reduced_motion=settings.reduced_motion)

    def _refresh(self) -> None:
        model = self._room.model()
        self.hearing.notice(model)
        self._screen.show(model)
