"""Every test in a folder of its own, with no display, no sound and no clock of its own."""

import os
from pathlib import Path

import pytest
from hypothesis import settings

# Before anything imports pygame: it looks at these when it starts.
os.environ.setdefault("SDL_VIDEODRIVER", "dummy")
os.environ.setdefault("SDL_AUDIODRIVER", "dummy")
os.environ.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")

# No deadlines: a busy machine is no fault of the code.  The same examples every time: a failure that is
# found must be found again.
settings.register_profile("repeatable", deadline=None, derandomize=True, database=None)
settings.load_profile("repeatable")


@pytest.fixture(autouse=True)
def _own_home(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """No test reads or writes the data folder of whoever runs it."""
    home = tmp_path_factory.mktemp("home")
    monkeypatch.setenv("TILTBENCH_HOME", str(home))
    return home
