"""What every place of the lab is to the laboratory, and what the laboratory is to every place."""

from __future__ import annotations

import time
from collections.abc import Callable, Mapping
from typing import Any, Protocol

from lab.app.paths import Paths
from lab.app.record import Record
from lab.app.settings import Settings
from lab.outline.words import Words
from lab.screens.intents import Intent
from lab.screens.screen import Notice, Screen, Setting
from lab.simulation import Command, LetGo, Session
from lab.ui.look import Look

NS = 1_000_000_000
#: A notice that only says something goes by itself after this long.
NOTICE_NS = 6 * NS


class House:
    """What all places share: folders, settings, the record, the time, and the notice over the screen.

    settings: as chosen now.  words: in the language chosen.  now_ns: of a monotonic clock, as of this frame.
    fresh_seed: draws the seed of a lesson that was opened without one.  calendar_s: the time of day, in seconds: what
    comes back after some days goes by it.
    """

    def __init__(
        self,
        *,
        paths: Paths,
        settings: Settings,
        record: Record,
        now_ns: int,
        fresh_seed: Callable[[], int],
        calendar_s: Callable[[], float] = time.time,
    ) -> None:
        self.paths = paths
        self.settings = settings
        self.record = record
        self.words = Words(settings.language)
        self.now_ns = now_ns
        self.fresh_seed = fresh_seed
        self.calendar_s = calendar_s
        self.notice: Notice | None = None
        self.notice_until_ns = 0

    @property
    def setting(self) -> Setting:
        """The settings as screens are shown them."""
        chosen = self.settings
        return Setting(
            language=chosen.language,
            theme=chosen.theme,
            text_scale=chosen.text_scale,
            units=chosen.units,
            sound=chosen.sound,
            balance_by_ear=chosen.balance_by_ear,
            reduced_motion=chosen.reduced_motion,
        )

    def say(self, template: str, values: Mapping[str, str] | None = None) -> None:
        """Show a sentence that goes by itself."""
        if self.notice is not None and self.notice.kind == "trouble":
            return  # what is not yet saved must not be covered by a nicety
        self.notice = Notice(template=template, values=dict(values or {}))
        self.notice_until_ns = self.now_ns + NOTICE_NS

    def warn(self, template: str, values: Mapping[str, str] | None = None, *, retry: bool = False) -> None:
        """Show a sentence that stays until it is dismissed or mended."""
        self.notice = Notice(template=template, values=dict(values or {}), kind="trouble", retry=retry)

    def hush(self) -> None:
        """Let a sentence go that goes by itself: whoever goes elsewhere has read it."""
        if self.notice is not None and self.notice.kind != "trouble":
            self.notice = None

    def turn(self) -> bool:
        """Let a notice go when its time has come; returns whether one went."""
        if self.notice is None or self.notice.kind == "trouble" or self.now_ns < self.notice_until_ns:
            return False
        self.notice = None
        return True


class Room(Protocol):
    """One place: start, lessons, lesson or build."""

    @property
    def moving(self) -> bool:
        """Whether something happens without anybody doing anything."""

    @property
    def wake_at_ns(self) -> int | None:
        """When time must be let pass here although nothing moves; None where it need not."""

    def make_screen(self, look: Look) -> Screen[Any]:
        """The screen of this place."""

    def model(self) -> object:
        """What the screen is to show now."""

    def perform(self, intent: Intent) -> bool:
        """Carry out an intent that is about this place; False where it is not."""

    def turn(self, now_ns: int) -> bool:
        """Let time pass; returns whether anything that is shown has changed."""

    def close(self) -> None:
        """The place is left: keep what is to be kept."""


class StillRoom:
    """A place where nothing moves and nothing is kept."""

    moving = False
    wake_at_ns: int | None = None

    def turn(self, now_ns: int) -> bool:
        """Nothing moves here."""
        return False

    def close(self) -> None:
        """Nothing is to be kept."""


class BenchRoom:
    """A place with one bench, whose session takes the commands and the time."""

    @property
    def wake_at_ns(self) -> int | None:
        """Nothing is to be done later."""
        return None

    def __init__(self, house: House, session: Session) -> None:
        self._house = house
        self._session = session
        self._now_ns = house.now_ns

    @property
    def moving(self) -> bool:
        """Whether the bar swings."""
        return self._session.moving

    def turn(self, now_ns: int) -> bool:
        """Let the bar swing."""
        elapsed_ns, self._now_ns = now_ns - self._now_ns, now_ns
        if not self.moving:
            return False
        self._session.advance(elapsed_ns)
        return True

    def do(self, command: Command) -> None:
        """Carry out a command, or say why not."""
        if isinstance(command, LetGo) and self._house.settings.reduced_motion:
            command = LetGo(at_once=True)
        refused = self._session.do(command)
        if refused is not None:
            self._house.say(refused.template, refused.values)

    def close(self) -> None:
        """Nothing is to be kept."""
