"""Benches: one module for each kind of thing that can be tried, loaded when it is first asked for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from lab.late_names import late_names

if TYPE_CHECKING:
    from lab.simulation.benches.finger import FingerTool
    from lab.simulation.benches.hanging_bar import HangingBar, Hung
    from lab.simulation.benches.held_scenes import HungScene, WeighedScene
    from lab.simulation.benches.mobile import Beam, Mobile
    from lab.simulation.benches.plate import HungPlate
    from lab.simulation.benches.scales import Scale, ScalesBench
    from lab.simulation.benches.showing import Showing
    from lab.simulation.benches.states import BenchState
    from lab.simulation.benches.tool import BuiltTool
    from lab.simulation.benches.two_fingers import TwoFingers
else:
    _MODULES = {
        "finger": "FingerTool",
        "hanging_bar": "HangingBar Hung",
        "held_scenes": "HungScene WeighedScene",
        "mobile": "Beam Mobile",
        "plate": "HungPlate",
        "scales": "Scale ScalesBench",
        "showing": "Showing",
        "states": "BenchState",
        "tool": "BuiltTool",
        "two_fingers": "TwoFingers",
    }
    __getattr__ = late_names(__name__, _MODULES)

__all__ = [
    "Beam",
    "BenchState",
    "BuiltTool",
    "FingerTool",
    "HangingBar",
    "Hung",
    "HungPlate",
    "HungScene",
    "Mobile",
    "Scale",
    "ScalesBench",
    "Showing",
    "TwoFingers",
    "WeighedScene",
]
