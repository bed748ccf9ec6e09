"""What shapes cover when they are looked at from a side."""

from math import pi, radians

import pytest

from lab.mechanics import Box, Cone, Cylinder, Disc, HalfDisc, Part, Point, Polygon, Rod, Sphere, Tank, Turned, extent_m
from lab.mechanics.axes import as_tensor, rotation
from lab.mechanics.plates import Triangle
from lab.scenes.views.body import Body
from lab.scenes.views.projections import FACES, flat_m
from lab.scenes.views.solids import silhouette_m
from lab.scenes.views.things import part_thing, things_of

THIN_M = 0.004


def area_m2(ring):
    pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
    return abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs)) / 2


def bounds(ring):
    xs, ys = zip(*ring, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


@pytest.mark.parametrize(
    "shape",
    [Box((0.3, 0.2, 0.1)), Cylinder(0.05, 0.4), Cylinder(0.05, 0.4, axis="up"), Sphere(0.1), Cone(0.1, 0.3, axis="up")],
)
def test_a_solid_covers_its_extent_in_every_face(shape):
    size = extent_m(shape)
    for face in FACES:
        low_x, low_y, high_x, high_y = bounds(silhouette_m(shape, face, thin_m=THIN_M)[0])
        right, up = (abs(side) for side in flat_m(face, size))
        # Circles are drawn with forty corners: they miss a third of a per cent at most.
        assert (high_x - low_x, high_y - low_y) == pytest.approx((right, up), rel=4e-3)


def test_round_things_are_round_from_one_side_and_square_from_another():
    drum = Cylinder(0.05, 0.4)
    assert area_m2(silhouette_m(drum, "front", thin_m=THIN_M)[0]) == pytest.approx(pi * 0.05**2, rel=5e-3)
    assert area_m2(silhouette_m(drum, "side", thin_m=THIN_M)[0]) == pytest.approx(0.1 * 0.4, rel=4e-3)


def test_a_cone_lies_about_its_own_centre():
    _, low, _, high = bounds(silhouette_m(Cone(0.1, 0.4, axis="up"), "side", thin_m=THIN_M)[0])
    assert (low, high) == pytest.approx((-0.1, 0.3))


def test_a_plate_keeps_its_holes_and_lies_about_its_own_centre():
    plate = Polygon(((0, 0), (0.3, 0), (0.3, 0.2), (0, 0.2)), (((0.02, 0.02), (0.1, 0.02), (0.1, 0.1), (0.02, 0.1)),))
    outline, hole = silhouette_m(plate, "side", thin_m=THIN_M)
    whole, gone = 0.3 * 0.2, 0.08 * 0.08
    assert area_m2(outline) - area_m2(hole) == pytest.approx(whole - gone)
    x, _, z = plate.centre_m
    assert bounds(outline) == pytest.approx((-x, -z, 0.3 - x, 0.2 - z))


@pytest.mark.parametrize("plate", [Disc(0.1), HalfDisc(0.1), Triangle(((0, 0), (0.2, 0), (0, 0.1)))])
def test_a_plate_seen_by_its_edge_is_thin(plate):
    _, low, _, high = bounds(silhouette_m(plate, "top", thin_m=THIN_M)[0])
    assert high - low == pytest.approx(THIN_M)


def test_a_turned_rod_is_seen_turned():
    tilted = Turned(Rod(1.0), as_tensor(rotation((0.0, radians(-30), 0.0))))
    low_x, low_y, high_x, high_y = bounds(silhouette_m(tilted, "side", thin_m=1e-6)[0])
    assert (high_x - low_x, high_y - low_y) == pytest.approx((3**0.5 / 2, 0.5), abs=1e-5)


def test_a_point_is_brass_that_grows_with_its_weight():
    sides = []
    for share in (0.1, 0.5, 1.0):
        thing = part_thing(Part("lead", 0.1, (0.0, 0.0, 0.0), Point()), "", size_m=1.0, share=share)
        low_x, _, high_x, _ = bounds(thing.patches["side"][0][0])
        sides.append(high_x - low_x)
        assert thing.look == "weight"
    assert sides == sorted(sides)
    assert sides[0] < sides[-1]


def test_what_a_tank_holds_is_drawn_as_the_tank():
    tank = Tank(name="tank", at_m=(0.4, 0.1, 0.0), capacity_m3=2e-4, contents_m3=5e-5, density_kg_m3=800.0)
    body = Body(
        name="Tank", parts=(Part("hull", 1.0, (0.5, 0, 0), Rod(1.0)), Part("tank", 0.04, tank.at_m)), tanks=(tank,)
    )
    things = {thing.key: thing for thing in things_of(body)}
    assert set(things) == {"part:hull", "tank:tank"}
    assert things["tank:tank"].level == pytest.approx(0.25)
