"""A twin-tank drone, a plate and a bar, ready to be drawn from their sides."""

from typing import Any

import pytest

from lab.files import UNITS
from lab.mechanics import Box, Cylinder, Part, Rod, Surface, Tank
from lab.outline.words import Words
from lab.scenes.readings import Readings
from lab.scenes.views.body import Body
from lab.scenes.views.view import BodyView
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

LITRE_M3 = 1e-3


def drone() -> Body:
    tanks = tuple(
        Tank(name=name, at_m=(0.425, across, 0.03), capacity_m3=0.2 * LITRE_M3, contents_m3=litres * LITRE_M3,
             density_kg_m3=800.0)
        for name, across, litres in (("left tank", -0.16, 0.15), ("right tank", 0.16, 0.075))
    )  # fmt: skip
    surfaces = (
        Surface(name="wing", root_chord_m=0.2, tip_chord_m=0.1, span_m=0.54, sweep_rad=0.175, at_m=(0.32, 0, 0.035)),
        Surface(name="tail", root_chord_m=0.1, tip_chord_m=0.06, span_m=0.18, at_m=(0.87, 0, 0.02)),
        Surface(name="fin", root_chord_m=0.1, tip_chord_m=0.08, span_m=0.1, at_m=(0.88, 0, 0.03), vertical=True),
    )  # fmt: skip
    parts = (
        Part("fuselage", 0.42, (0.44, 0, 0), Cylinder(radius_m=0.042, length_m=0.88)),
        Part("wing", 0.38, (0.425, 0, 0.035), Box((0.15, 0.54, 0.015))),
        Part("battery", 0.30, (0.085, 0, 0), Box((0.06, 0.04, 0.04))),
        Part("camera", 0.16, (0.29, 0, 0), Box((0.07, 0.05, 0.04))),
        *(Part(tank.name, tank.mass_kg, tank.at_m) for tank in tanks),
    )
    looks = {"fuselage": "fuselage", "battery": "battery", "camera": "camera"}
    return Body(name="Survey drone", parts=parts, surfaces=surfaces, tanks=tanks, looks=looks)


def pole() -> Body:
    parts = (
        Part("pole", 2.4, (1.6, 0, 0), Rod(3.2)),
        Part("nest box", 1.35, (3.05, 0, 0), Box((0.3, 0.22, 0.25))),
        Part("lead", 0.9, (0.1, 0, 0)),
    )
    looks = {"nest box": "box"}
    return Body(name="Nest-box pole", parts=parts, looks=looks, bar_name="pole", bar_depth_m=0.045)


@pytest.fixture
def view_of() -> Any:
    def make(body: Body | None = None, *, theme: str = "paper", scale: float = 1.0, lang: str = "en", **shown: Any):
        words = Words(lang)
        look = Look(THEMES[theme], Sizes(1280, 720, scale, mirrored=words.mirrored), words)
        readings = Readings(words=words, units=UNITS["g-cm"])
        return BodyView(body=body or drone(), look=look, readings=readings, **shown)

    return make


@pytest.fixture
def nest_box_pole() -> Body:
    return pole()
