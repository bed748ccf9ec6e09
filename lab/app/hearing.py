"""What is to be heard: gathered as models are shown, taken by whoever has a speaker."""

from __future__ import annotations

from lab.screens.sound_cues import Cue, cues
from lab.screens.tilts import Tilt, tilt_of


class Hearing:
    """Compares each model with the one before it."""

    def __init__(self) -> None:
        self._shown: object = None
        self._cues: tuple[Cue, ...] = ()

    def notice(self, model: object) -> None:
        """Take note of a model that is being shown."""
        self._cues += cues(self._shown, model)
        self._shown = model

    def tilt(self, *, wanted: bool) -> Tilt | None:
        """How what is shown is tilted; None where it is held or level, and where that is not wanted."""
        return tilt_of(self._shown) if wanted else None

    def take(self, *, wanted: bool) -> tuple[Cue, ...]:
        """What has come up since the last time; nothing, and that forgotten, where it is not wanted."""
        taken, self._cues = self._cues, ()
        return taken if wanted else ()
