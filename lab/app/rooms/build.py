"""Free build."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from lab.app.rooms.room import NS, BenchRoom, House
from lab.app.workbench import Workbench
from lab.files import Bench, FileFaults
from lab.outline.words import msg
from lab.screens import intents
from lab.screens.benches.screen import FreeBuildScreen
from lab.screens.intents import Intent
from lab.screens.screen import BuildModel, Screen
from lab.simulation import SetUnits
from lab.simulation.benches.catalogue import BENCHES
from lab.ui.look import Look

KEEP_NS = NS // 2
"""What was built is kept this long after the first change since: often enough to lose next to nothing when the power
goes, and not with every step of a drag."""


class BuildRoom(BenchRoom):
    """Where anything is built on any bench."""

    def __init__(self, house: House, *, bench: Bench = "bar", choosing: bool = False) -> None:
        """bench: which one.  choosing: whether the list of builds is open when the place is entered."""
        self._choosing = choosing
        self._bench = Workbench(house.paths, bench)
        self._builds = self._bench.builds()
        self._changed_at_ns: int | None = None
        self._keeps = True
        super().__init__(house, self._bench.session)

    def make_screen(self, look: Look) -> Screen[Any]:
        """The screen of free build."""
        screen = FreeBuildScreen(look)
        if self._choosing:
            screen.choose_build()
        return screen

    def model(self) -> BuildModel:
        """The bench as it is."""
        session = self._session
        return BuildModel(
            setting=self._house.setting,
            bench=self._bench.bench,
            previous=self._bench.previous,
            fraction=session.fraction,
            can_undo=session.can_undo,
            can_redo=session.can_redo,
            builds=self._builds,
            notice=self._house.notice,
        )

    def perform(self, intent: Intent) -> bool:
        """Give commands to the bench; open and save builds; go to another bench."""
        match intent:
            case intents.Do():
                self.do(intent.command)
                self._note_change()
            case intents.OpenBuild():
                self.open(intent.path)
            case intents.SaveBuild():
                self._save(intent.path)
            case intents.Go(place="build", name=name) if name in BENCHES:
                self._go_to(bench_named(name))
            case intents.TakeAlong(bench=name) if name in BENCHES:
                self._take_along(bench_named(name))
            case intents.ChangeSetting(name="units", value=str(units)) if units:
                self.do(SetUnits(units))
                return False  # the whole lab keeps it too
            case _:
                return False
        return True

    def turn(self, now_ns: int) -> bool:
        """Let things move, and keep now and then what has been built."""
        moved = super().turn(now_ns)
        self._note_change()
        if self._changed_at_ns is not None and now_ns - self._changed_at_ns >= KEEP_NS:
            self._keep()
        return moved

    @property
    def wake_at_ns(self) -> int | None:
        """When what has been built is kept, even if nobody touches anything until then."""
        return None if self._changed_at_ns is None else self._changed_at_ns + KEEP_NS

    def close(self) -> None:
        """Keep what stands on the bench."""
        if self._keeps and self._bench.changed:
            self._keep()

    def open(self, path: Path) -> None:
        """Put a build on the bench that it is for, or say why not."""
        try:
            refused = self._bench.open(path)
        except FileFaults as faults:
            self._house.say(msg("This build cannot be opened: {fault}"), {"fault": faults.faults[0].as_text()})
            return
        self._session = self._bench.session
        self._note_change()
        if refused is not None:
            self._house.say(refused.template, refused.values)

    def _note_change(self) -> None:
        """Remember since when there is something to keep; what has been taken back needs no keeping."""
        if not (self._keeps and self._bench.changed):
            self._changed_at_ns = None
        elif self._changed_at_ns is None:
            self._changed_at_ns = self._house.now_ns

    def _go_to(self, name: Bench) -> None:
        self.close()
        self._bench = Workbench(self._house.paths, name)
        self._session = self._bench.session

    def _take_along(self, name: Bench) -> None:
        """What is built here goes on another bench, or it is said why it can't and one stays."""
        there = Workbench(self._house.paths, name)
        refused = there.take(self._bench.build)
        if refused is not None:
            self._house.say(refused.template, refused.values)
            return
        self.close()
        self._bench = there
        self._session = there.session
        self._note_change()

    def _keep(self) -> None:
        """A bench that cannot be kept is said once to be so; what can be built stays as it is."""
        self._changed_at_ns = None
        try:
            self._bench.keep()
        except OSError as error:
            self._keeps = False
            why = error.strerror or str(error)
            self._house.warn(msg("What you build here is not kept when you leave: {why}"), {"why": why})

    def _save(self, path: Path | None) -> None:
        try:
            saved = self._bench.save(path)
        except OSError as error:
            self._house.warn(msg("The build could not be saved: {why}"), {"why": error.strerror or str(error)})
            return
        self._builds = self._bench.builds()
        self._house.say(msg("Saved as {file}"), {"file": str(saved)})


def build_room(house: House, name: str) -> BuildRoom:
    """The room of a bench by its name; "builds" opens the list of builds, "" the hanging bar."""
    return BuildRoom(house, bench=bench_named(name), choosing=name == "builds")


def bench_named(name: str) -> Bench:
    """The bench of a name; the hanging bar for any other."""
    return next((bench for bench in BENCHES if bench == name), "bar")
