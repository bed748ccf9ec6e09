"""A small toolkit: events, layout, canvas, theme, focus, widgets. Only the pygame_* modules import pygame."""

from lab.ui.canvas import Canvas, Draw
from lab.ui.desk import Desk
from lab.ui.geometry import Point, Rect
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES, Theme

__all__ = ["THEMES", "Canvas", "Desk", "Draw", "ListCanvas", "Look", "Point", "Rect", "Sizes", "Theme"]
