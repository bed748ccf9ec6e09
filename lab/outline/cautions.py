"""What is said wherever the work can mislead or hurt someone, in the same words on every screen and in every text."""

from __future__ import annotations

from lab.outline.words import msg

LEARNING_ONLY = msg(
    "For learning only; a real aircraft is loaded by its approved data, local rules and licensed people."
)
"""With everything that flies."""
