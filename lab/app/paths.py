"""Where things are: what ships with the lab, and the folder that is the user's own."""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

import lab

HOME_VARIABLE = "TILTBENCH_HOME"


@dataclass(frozen=True, slots=True, kw_only=True)
class Paths:
    """Every place that the lab reads from or writes to.

    shipped_lessons, shipped_builds: read only.  home: the user's own folder, which may not exist yet.
    """

    shipped_lessons: Path
    shipped_builds: Path
    home: Path

    @property
    def record(self) -> Path:
        """The record of attempts."""
        return self.home / "attempts.sqlite3"

    @property
    def settings(self) -> Path:
        """What was chosen for the whole lab."""
        return self.home / "settings.json"

    @property
    def builds(self) -> Path:
        """Builds that were saved."""
        return self.home / "builds"

    @property
    def lessons(self) -> Path:
        """A teacher's own lessons."""
        return self.home / "lessons"

    @property
    def crash_notes(self) -> Path:
        """What is known about the last times something went wrong."""
        return self.home / "crashes"


def find_paths(environment: Mapping[str, str] | None = None) -> Paths:
    """The places for this process.

    environment: `TILTBENCH_HOME` in it takes the place of the system's folder for user data.
    """
    chosen = (os.environ if environment is None else environment).get(HOME_VARIABLE, "")
    shipped = shipped_folder()
    return Paths(
        shipped_lessons=shipped / "lessons",
        shipped_builds=shipped / "assets" / "builds",
        home=Path(chosen).absolute() if chosen else _system_home(),
    )


def shipped_folder() -> Path:
    """The folder with `lessons` and `assets`: the checkout's top, or `lab/shipped` where a wheel put it."""
    package = Path(lab.__file__).resolve().parent
    inside = package / "shipped"
    return inside if inside.is_dir() else package.parent


def _system_home() -> Path:
    # Here and not at the top: most commands get by without it, and every import is felt at the start.
    from platformdirs import user_data_path

    return user_data_path("tiltbench", appauthor=False)
