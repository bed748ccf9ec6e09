"""A small toolkit: events, layout, canvas, theme, focus, widgets. Only the pygame_* modules import pygame."""

import os

from lab.ui.canvas import Canvas, Draw
from lab.ui.desk import Desk
from lab.ui.geometry import Point, Rect
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES, Theme

# Otherwise pygame greets on standard output, where results go.
os.environ.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")

__all__ = ["THEMES", "Canvas", "Desk", "Draw", "ListCanvas", "Look", "Point", "Rect", "Sizes", "Theme"]
