"""Which face belongs to which bench."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

from lab.screens.benches.face import Face
from lab.screens.benches.hanging_bar.face import HangingBarFace
from lab.simulation import HangingBar

FACES: Mapping[type, Callable[[], Face[Any]]] = MappingProxyType({HangingBar: HangingBarFace})
"""Every bench of free build, by the class of its state."""


def face_of(bench: object) -> Face[Any]:
    """A fresh face for a bench: nothing is picked, nothing taken up."""
    return FACES[type(bench)]()
