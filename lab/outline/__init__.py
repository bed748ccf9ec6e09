"""What is on a screen, as values: nodes with role, name, value, state, actions; and every word said."""

from lab.outline.catalogue import catalogue_messages
from lab.outline.node import Bounds, Node, Role, find, spoken_line, spoken_lines, walk
from lab.outline.words import LANGUAGES, Words, msg

__all__ = [
    "LANGUAGES",
    "Bounds",
    "Node",
    "Role",
    "Words",
    "catalogue_messages",
    "find",
    "msg",
    "spoken_line",
    "spoken_lines",
    "walk",
]
