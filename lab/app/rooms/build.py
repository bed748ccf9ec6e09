"""Free build."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from lab.app.rooms.room import BenchRoom, House
from lab.app.workbench import Workbench
from lab.files import FileFaults
from lab.outline.words import msg
from lab.screens import intents
from lab.screens.benches.screen import FreeBuildScreen
from lab.screens.intents import Intent
from lab.screens.screen import BuildModel, Screen
from lab.simulation import SetUnits
from lab.ui.look import Look


class BuildRoom(BenchRoom):
    """Where anything is hung anywhere."""

    def __init__(self, house: House, *, choosing: bool = False) -> None:
        """choosing: whether the list of builds is open when the place is entered."""
        self._choosing = choosing
        self._bench = Workbench(house.paths)
        self._builds = self._bench.builds()
        super().__init__(house, self._bench.session)

    def make_screen(self, look: Look) -> Screen[Any]:
        """The hanging bar's screen."""
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
        """Give commands to the bench; open and save builds."""
        match intent:
            case intents.Do():
                self.do(intent.command)
            case intents.OpenBuild():
                self.open(intent.path)
            case intents.SaveBuild():
                self._save(intent.path)
            case intents.ChangeSetting(name="units", value=str(units)) if units:
                self.do(SetUnits(units))
                return False  # the whole lab keeps it too
            case _:
                return False
        return True

    def open(self, path: Path) -> None:
        """Put a build on the bench, or say why not."""
        try:
            refused = self._bench.open(path)
        except FileFaults as faults:
            self._house.say(msg("This build cannot be opened: {fault}"), {"fault": faults.faults[0].as_text()})
            return
        if refused is not None:
            self._house.say(refused.template, refused.values)

    def _save(self, path: Path | None) -> None:
        try:
            saved = self._bench.save(path)
        except OSError as error:
            self._house.warn(msg("The build could not be saved: {why}"), {"why": error.strerror or str(error)})
            return
        self._builds = self._bench.builds()
        self._house.say(msg("Saved as {file}"), {"file": str(saved)})
