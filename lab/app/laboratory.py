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
from lab.app.rooms.room import House, Room
from lab.app.rooms.start import StartRoom
from lab.app.seeds import drawn_seed
from lab.app.settings import Settings, SettingsError, changed, save_settings
from lab.attempts import new_code
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
        return None if notice is None or notice.kind == "trouble" else self.house.notice_until_ns

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
        # Rooms are loaded when they are first entered, so that the start screen need not wait for them.
        from lab.app.rooms.lesson import lesson_room

        self._enter(lesson_room(self.house, name, seed=seed))

    def open_probe(self, *, seed: int | None = None) -> None:
        """Begin the probe."""
        from lab.app.rooms.probe import ProbeRoom

        self._enter(ProbeRoom(self.house, seed=self.house.fresh_seed() if seed is None else seed))

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
                self._back()
            case intents.OpenBuild():
                self.open_build(intent.path)
            case intents.ChangeSetting():
                self._change(intent.name, intent.value)
            case intents.NewLearner():
                self._change("learner", new_code())
                self.house.say(
                    msg("Answers are now kept under the code {code}."), {"code": self.house.settings.learner}
                )
            case intents.RetrySave():
                self._retry()
            case intents.DismissNotice():
                self.house.notice = None
            case intents.Leave():
                self._leave()

    def _go(self, to: intents.Go) -> None:
        match to.place:
            case "start":
                self._enter(StartRoom(self.house))
            case "lessons":
                from lab.app.rooms.lessons import LessonsRoom

                self._room.close()  # first, so that the list knows what was answered last
                self._enter(LessonsRoom(self.house))
            case "build":
                from lab.app.rooms.build import BuildRoom

                self._enter(BuildRoom(self.house, choosing=to.name == "builds"))
            case "lesson":
                self.open_lesson(to.name)
            case "probe":
                self.open_probe()
            case "page":
                from lab.app.rooms.teachers_page import teachers_page_room

                self._enter(teachers_page_room(self.house, to.name))

    def _back(self) -> None:
        from lab.app.rooms.lesson import LessonRoom
        from lab.app.rooms.probe import ProbeRoom
        from lab.app.rooms.teachers_page import TeachersPageRoom

        below = isinstance(self._room, LessonRoom | ProbeRoom | TeachersPageRoom)
        self._go(intents.Go(place="lessons" if below else "start"))

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
