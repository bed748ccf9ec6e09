"""Benches: one module for each kind of thing that can be tried."""

from lab.simulation.benches.finger import FingerTool
from lab.simulation.benches.hanging_bar import HangingBar, Hung
from lab.simulation.benches.mobile import Beam, Mobile
from lab.simulation.benches.plate import Clip, HungPlate
from lab.simulation.benches.scales import Scale, ScalesBench
from lab.simulation.benches.showing import Showing
from lab.simulation.benches.tool import BuiltTool
from lab.simulation.benches.two_fingers import TwoFingers

BenchState = HangingBar | FingerTool | BuiltTool | Mobile | ScalesBench | HungPlate | Showing | TwoFingers
"""The state of any bench."""

__all__ = [
    "Beam",
    "BenchState",
    "BuiltTool",
    "Clip",
    "FingerTool",
    "HangingBar",
    "Hung",
    "HungPlate",
    "Mobile",
    "Scale",
    "ScalesBench",
    "Showing",
    "TwoFingers",
]
