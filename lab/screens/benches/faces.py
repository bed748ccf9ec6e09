"""Which face belongs to which bench."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

from lab.screens.benches.airframe.face import AirframeFace
from lab.screens.benches.face import Face
from lab.screens.benches.hanging_bar.face import HangingBarFace
from lab.screens.benches.mobile.face import MobileFace
from lab.screens.benches.plate.face import PlateFace
from lab.screens.benches.scales.face import ScalesFace
from lab.screens.benches.tool.face import ToolFace
from lab.screens.benches.two_fingers.face import TwoFingersFace
from lab.simulation import HangingBar
from lab.simulation.benches import BuiltTool, HungPlate, Mobile, ScalesBench
from lab.simulation.benches.airframe import AirframeBench
from lab.simulation.benches.two_fingers import TwoFingers

FACES: Mapping[type, Callable[[], Face[Any]]] = MappingProxyType(
    {
        HangingBar: HangingBarFace,
        BuiltTool: ToolFace,
        HungPlate: PlateFace,
        Mobile: MobileFace,
        ScalesBench: ScalesFace,
        TwoFingers: TwoFingersFace,
        AirframeBench: AirframeFace,
    }
)
"""Every bench of free build, by the class of its state."""


def face_of(bench: object) -> Face[Any]:
    """A fresh face for a bench: nothing is picked, nothing taken up."""
    return FACES[type(bench)]()
