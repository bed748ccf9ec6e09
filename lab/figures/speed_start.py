"""How long it takes from starting the program to its first picture."""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile

from lab.figures.rows import Row, row
from lab.figures.timing import best_s

ROUNDS, QUICK_ROUNDS = 9, 3

BARE = """
import sys
import numpy
import pygame
pygame.display.init()
screen = pygame.display.set_mode((1280, 720), pygame.RESIZABLE)
pygame.display.set_caption("bare")
screen.fill("#F5F1E8")
pygame.display.flip()
pygame.quit()
"""

OURS = """
import lab.app.main
from lab.app.window_program import show_first_picture
show_first_picture()
"""


def start_rows(*, quick: bool = False) -> tuple[Row, ...]:
    """The start screen's first picture, beside a ten-line program that opens a window and flips.

    Both run from bytecode, as what is installed does: a first run of each, which compiles, is not counted.
    """
    with tempfile.TemporaryDirectory() as home:
        environment = {
            **{name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"},
            "PYTHONPYCACHEPREFIX": os.path.join(home, "bytecode"),
            "TILTBENCH_HOME": home,
            "PYGAME_HIDE_SUPPORT_PROMPT": "1",
        }
        if not environment.get("DISPLAY") and not environment.get("WAYLAND_DISPLAY"):
            environment["SDL_VIDEODRIVER"] = "dummy"

        def run(program: str) -> None:
            subprocess.run([sys.executable, "-c", program], env=environment, check=True)

        run(OURS)
        run(BARE)
        ours_s, bare_s = best_s((lambda: run(OURS), lambda: run(BARE)), rounds=QUICK_ROUNDS if quick else ROUNDS)
    return (row("start: process to first picture", ours_s, bare_s, goal=1.6, beside="a ten-line pygame program"),)
