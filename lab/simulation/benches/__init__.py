"""Benches: one module for each kind of thing that can be tried."""

from lab.simulation.benches.finger import FingerTool
from lab.simulation.benches.hanging_bar import HangingBar, Hung
from lab.simulation.benches.mobile import Beam, Mobile
from lab.simulation.benches.showing import Showing

BenchState = HangingBar | FingerTool | Mobile | Showing
"""The state of any bench."""

__all__ = ["Beam", "BenchState", "FingerTool", "HangingBar", "Hung", "Mobile", "Showing"]
