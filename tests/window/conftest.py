"""The real program in its real window, and the hands on it."""

import os
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from lab.attempts import Attempt, AttemptStore

#: Beyond what the pilot needed: a busy machine starts slowly and drops ticks.
PATIENCE_S = 20.0


class RealWindow:
    """The program, running, and the hands on it."""

    def __init__(self, home: Path, *words: str) -> None:
        environment = {name: value for name, value in os.environ.items() if name != "SDL_VIDEODRIVER"}
        # Nobody manages windows here, so it says itself that its corner is the screen's.
        environment |= {"TILTBENCH_HOME": str(home), "SDL_VIDEO_WINDOW_POS": "0,0"}
        self.program = subprocess.Popen(
            [sys.executable, "-m", "lab", *words], env=environment, stdout=subprocess.PIPE, stderr=subprocess.PIPE
        )
        self.record = home / "attempts.sqlite3"

    def hands(self, *words: object) -> None:
        """Do something with xdotool."""
        subprocess.run(["xdotool", *map(str, words)], check=True, timeout=20)

    def wait_until(self, done: Callable[[], bool], what: str) -> None:
        """Wait for something to come true."""
        until = time.monotonic() + PATIENCE_S
        while not done():
            if self.program.poll() is not None:
                assert self.program.stderr is not None
                raise AssertionError(f"the program ended: {self.program.stderr.read().decode()}")
            assert time.monotonic() < until, f"waited in vain for {what}"
            time.sleep(0.05)

    def wait_for_window(self, size: tuple[int, int]) -> None:
        """Wait until the whole window has been drawn: a corner of it is no longer the empty screen's."""
        self.wait_until(lambda: _is_drawn(size), "the window")
        time.sleep(0.3)

    def attempts(self) -> list[Attempt]:
        """What the program has kept so far."""
        if not self.record.exists():
            return []
        with AttemptStore.open(self.record) as store:
            return list(store.attempts())

    def close(self) -> int:
        """Ask the program to end, as a session manager does, and wait for it."""
        if self.program.poll() is None:
            self.program.terminate()
        try:
            self.program.communicate(timeout=PATIENCE_S)
        except subprocess.TimeoutExpired:
            self.program.kill()
            self.program.communicate()
        return self.program.returncode


def _is_drawn(size: tuple[int, int]) -> bool:
    """Whether there is a window of this size on the screen."""
    found = subprocess.run(["xdotool", "getmouselocation", "--shell"], capture_output=True, text=True, timeout=20)
    if found.returncode != 0:
        # The window that was under the pointer went away while it was asked about; whoever waits asks again.
        return False
    subprocess.run(["xdotool", "mousemove", str(size[0] // 2), str(size[1] - 5)], check=True, timeout=20)
    window = dict(line.split("=") for line in found.stdout.split() if "=" in line)["WINDOW"]
    shown = subprocess.run(
        ["xdotool", "getwindowgeometry", "--shell", window], capture_output=True, text=True, timeout=20
    )
    return f"WIDTH={size[0]}\nHEIGHT={size[1]}" in shown.stdout


@pytest.fixture
def real_window() -> type[RealWindow]:
    return RealWindow
