"""The toolkit's tests need no display."""

import os

import pytest

os.environ.setdefault("SDL_VIDEODRIVER", "dummy")
os.environ.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")

from lab.outline import Words
from lab.ui import THEMES, Desk, ListCanvas, Look, Sizes


@pytest.fixture
def look():
    """Paper, 1280 x 720, English."""
    return Look(THEMES["paper"], Sizes(1280, 720), Words())


@pytest.fixture
def desk(look):
    """An empty desk."""
    return Desk(look)


@pytest.fixture
def canvas():
    """A list of 1280 x 720."""
    return ListCanvas((1280, 720))
