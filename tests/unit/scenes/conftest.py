"""A moment of the hanging bar, ready to be drawn."""

from typing import Any

import pytest

from lab.files import UNITS
from lab.outline.words import Words
from lab.scenes.hanging_view import HangingView
from lab.scenes.readings import Readings
from lab.simulation import Session
from lab.simulation.benches.bar_builds import workshop_bar
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES


@pytest.fixture
def hanging_view() -> Any:
    def make(*commands: Any, text_scale: float = 1.0, **shown: Any) -> HangingView:
        session = Session(workshop_bar())
        for command in commands:
            assert session.do(command) is None
        look = Look(THEMES["paper"], Sizes(1280, 720, text_scale), Words())
        bench = session.state
        return HangingView(
            bench=bench,
            look=look,
            readings=Readings(words=look.words, units=UNITS["g-cm"]),
            angle_rad=bench.swing.angle_rad,
            **shown,
        )

    return make
