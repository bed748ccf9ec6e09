"""The state of any bench, as one type: tapes read it by that."""

from __future__ import annotations

from lab.simulation.benches.airframe import AirframeBench
from lab.simulation.benches.finger import FingerTool
from lab.simulation.benches.hanging_bar import HangingBar
from lab.simulation.benches.held_scenes import HungScene, WeighedScene
from lab.simulation.benches.mobile import Mobile
from lab.simulation.benches.plate import HungPlate
from lab.simulation.benches.scales import ScalesBench
from lab.simulation.benches.showing import Showing
from lab.simulation.benches.tool import BuiltTool
from lab.simulation.benches.two_fingers import TwoFingers

BenchState = (
    HangingBar
    | FingerTool
    | BuiltTool
    | Mobile
    | ScalesBench
    | HungPlate
    | TwoFingers
    | AirframeBench
    | Showing
    | HungScene
    | WeighedScene
)
"""The state of any bench."""
