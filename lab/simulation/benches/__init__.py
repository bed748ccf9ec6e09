"""Benches: one module for each kind of thing that can be tried."""

from lab.simulation.benches.finger import FingerTool
from lab.simulation.benches.hanging_bar import HangingBar, Hung
from lab.simulation.benches.showing import Showing

BenchState = HangingBar | FingerTool | Showing
"""The state of any bench."""

__all__ = ["BenchState", "FingerTool", "HangingBar", "Hung", "Showing"]
