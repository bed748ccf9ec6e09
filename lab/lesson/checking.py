"""What a lesson's writer is told: faults that stop it, and warnings about what it cannot tell apart."""

from __future__ import annotations

from pathlib import Path

from lab.files import Fault


def check_lesson(path: Path) -> tuple[tuple[Fault, ...], tuple[Fault, ...]]:
    """Return (faults, warnings) of a lesson file; never raises for what is in the file."""
    raise NotImplementedError
