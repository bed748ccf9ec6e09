"""Benches: one module for each kind of thing that can be tried."""

from lab.simulation.benches.finger import FingerTool
from lab.simulation.benches.hanging_bar import HangingBar, Hung

BenchState = HangingBar | FingerTool
"""The state of any bench."""

__all__ = ["BenchState", "FingerTool", "HangingBar", "Hung"]
