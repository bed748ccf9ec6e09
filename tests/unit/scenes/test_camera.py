"""The camera: metres to pixels and back, y turned over once."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lab.scenes.camera import Camera, turned_m

METRES = st.floats(-50.0, 50.0)


def test_right_is_right_and_up_is_up():
    camera = Camera(px_per_m=800.0, origin=(100.0, 300.0))
    assert camera.at(0.5, 0.25) == (500.0, 100.0)


@given(along_m=METRES, up_m=METRES, px_per_m=st.floats(1.0, 5000.0))
def test_a_pixel_shows_the_place_that_it_was_made_from(along_m: float, up_m: float, px_per_m: float):
    camera = Camera(px_per_m=px_per_m, origin=(64.0, 262.0))
    x, y = camera.at(along_m, up_m)
    # Two roundings of numbers up to 250 000 px, seen through 1 px per metre at worst: 1e-9 m leaves a margin of ten.
    assert camera.along_m(x) == pytest.approx(along_m, abs=1e-9)
    assert camera.up_m(y) == pytest.approx(up_m, abs=1e-9)


def test_a_quarter_turn_anticlockwise_brings_what_lay_to_the_right_above():
    along, up = turned_m((1.0, 0.0), (0.4, 0.0), math.pi / 2)
    assert (along, up) == pytest.approx((0.4, 0.6), abs=1e-12)


@given(at=st.tuples(METRES, METRES), about=st.tuples(METRES, METRES), angle=st.floats(-math.pi, math.pi))
def test_turning_keeps_the_distance(at: tuple[float, float], about: tuple[float, float], angle: float):
    turned = turned_m(at, about, angle)
    # Round-off of products of numbers up to 100.
    assert math.dist(turned, about) == pytest.approx(math.dist(at, about), abs=1e-11)
