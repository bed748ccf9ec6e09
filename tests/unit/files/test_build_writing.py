"""A build is written as text that reads back to the same build."""

import dataclasses
from math import radians

import numpy
import pytest

from lab.files import UNITS, Bar, Build, Support, build_text, read_build_text
from lab.mechanics import (
    Box,
    Cone,
    Cylinder,
    Disc,
    Group,
    HalfDisc,
    Hemisphere,
    Limits,
    Part,
    Pivot,
    Point,
    Polygon,
    Rectangle,
    Rod,
    Sphere,
    Surface,
    Tank,
    Triangle,
)

FULL = Build(
    title='Odd "title" with a \\ and ünïcode',
    units="g-cm",
    reference_m=(0.1, 0.0, -0.02),
    view="all",
    bar=Bar(name="bar", length_m=1.0, mass_kg=0.15, left_m=-0.2, depth_m=0.034),
    parts=(
        Part("rod", 0.1, (0.1, 0.0, 0.0), Rod(0.4, axis="up")),
        Part("plate", 0.2, (0.123456789012345, 0.01, -0.3), Rectangle(0.3, 0.1), hold="hung"),
        Part("box", 1 / 3, (0.2, 0.0, 0.0), Box((0.1, 0.2, 0.3)), mass_doubt_kg=0.001, at_doubt_m=(0.001, 0.0, 0.0)),
        Part("tube", 0.3, (0.3, 0.0, 0.0), Cylinder(0.02, 0.5, inner_m=0.01, axis="across"), set_name="scale"),
        Part("numbers", 0.3, (0.4, 0.0, 0.0), inertia_kg_m2=(1e-4, 2e-4, 2.5e-4), cut=True),
        Part(
            "tensor", 0.3, (0.5, 0.0, 0.0),
            inertia_kg_m2=((2e-4, 1e-5, 0.0), (1e-5, 2e-4, 0.0), (0.0, 0.0, 2.5e-4)),
        ),
    ),
    pivot=Pivot(0.4, up_m=0.012, stop_rad=0.3, pad_m=0.01, damping_kg_m2_s=1e-4),
    supports=(Support(name="near", at_m=(0.0, 0.0, 0.0)), Support(name="far", at_m=(0.7, 0.0, -0.1))),
    looks={"rod": "pole", "box": "camera"},
)  # fmt: skip


@pytest.mark.parametrize("units", UNITS)
def test_every_kind_of_thing_comes_back_the_same_to_the_last_bit(units):
    written = read_build_text(build_text(FULL), file="b.toml")
    assert written == FULL
    # Written again in other units the numbers are other numbers; what they mean stays within their last place.
    other = Build(**{name: getattr(written, name) for name in written.__slots__} | {"units": units})
    again = read_build_text(build_text(other), file="b.toml")
    for before, after in zip(other.all_parts, again.all_parts, strict=True):
        assert after.mass_kg == pytest.approx(before.mass_kg, rel=3e-16)
        assert after.at_m == pytest.approx(before.at_m, rel=3e-16, abs=0)


def test_the_smallest_build_is_written_as_a_person_would_write_it():
    text = 'format = 1\ntitle = "Pole"\nunits = "g-cm"\n\n[[part]]\nname = "pole"\nweight = 120\nat = 20.5\n'
    assert build_text(read_build_text(text, file="b.toml")) == text


EVERY_SHAPE = (
    Point(),
    Rod(0.4, axis="up"),
    Rectangle(0.3, 0.1),
    Triangle(((0.0, 0.0), (0.3, 0.0), (0.0, 0.2))),
    Polygon(((0.0, 0.0), (0.3, 0.0), (0.3, 0.2), (0.0, 0.2)), (((0.1, 0.1), (0.2, 0.1), (0.1, 0.15)),)),
    Polygon(((0.0, 0.0), (0.3, 0.0), (0.1, 0.1), (0.0, 0.2))),
    Disc(0.1),
    HalfDisc(0.12),
    Box((0.1, 0.2, 0.3)),
    Cylinder(0.02, 0.5, inner_m=0.01, axis="across"),
    Cone(0.05, 0.3, axis="up"),
    Sphere(0.07),
    Hemisphere(0.07, axis="along"),
)
AIRFRAME = Build(
    title="Drone",
    parts=(Part("hull", 0.42, (0.44, 0.0, 0.0)),),
    groups=(
        Group(
            name="left wing",
            members=(
                Part("panel", 0.19, (0.1, -0.3, 0.0), Box((0.2, 0.6, 0.02)), at_doubt_m=(0.001, 0.0, 0.0)),
                Group(
                    name="pod",
                    members=(Part("motor", 0.05, (0.02, 0.0, 0.0), Cylinder(0.02, 0.04), hold="hung"),),
                    at_m=(0.0, -0.2, 0.03),
                    turn_rad=(0.0, radians(5), 0.0),
                ),
            ),
            at_m=(0.3, 0.0, 0.05),
            turn_rad=(radians(-4), 0.0, radians(2.5)),
        ),
        Group(name="right wing", members=(Part("panel", 0.19, (0.1, 0.3, 0.0), Box((0.2, 0.6, 0.02))),)),
    ),
    tanks=(Tank(name="left tank", at_m=(0.425, -0.2, 0.0), capacity_m3=2e-4, contents_m3=1.2e-4, density_kg_m3=800.0),),
    surfaces=(
        Surface(
            name="left wing",
            root_chord_m=0.2,
            tip_chord_m=0.14,
            span_m=1.4,
            sweep_rad=radians(3),
            at_m=(0.3, 0.0, 0.05),
        ),
        Surface(name="fin", root_chord_m=0.1, tip_chord_m=0.0, span_m=0.1, at_m=(0.9, 0.0, 0.0), vertical=True),
    ),
    limits=Limits(outline=((0.36, 1.0), (0.4, 1.0), (0.4, 1.7)), across_m=(-0.01, 0.01)),
    supports=tuple(
        Support(name=name, at_m=(at, across, 0.0)) for name, at, across in (("a", 0, 0), ("b", 1, -1), ("c", 1, 1))
    ),
    looks={"left wing/pod/motor": "weight", "hull": "box"},
)


@pytest.mark.parametrize("units", UNITS)
@pytest.mark.parametrize("shape", EVERY_SHAPE, ids=lambda shape: type(shape).__name__)
def test_every_shape_comes_back_the_same(units, shape):
    build = Build(title="T", units=units, parts=(Part("a", 0.5, (0.1, 0.0, 0.0), shape),))
    once = read_build_text(build_text(build), file="b.toml")
    (part,) = once.parts
    assert type(part.shape) is type(shape)
    assert part.own_inertia_kg_m2 == pytest.approx(numpy.array(build.parts[0].own_inertia_kg_m2), rel=1e-14, abs=1e-18)
    assert read_build_text(build_text(once), file="b.toml") == once


def test_groups_tanks_surfaces_and_limits_come_back_the_same_to_the_last_bit():
    assert read_build_text(build_text(AIRFRAME), file="b.toml") == AIRFRAME


def test_a_tank_taken_as_a_plain_part_still_looks_like_a_tank():
    loose = AIRFRAME.loose()
    assert loose.looks == {**AIRFRAME.looks, "left tank": "tank"}
    assert read_build_text(build_text(loose), file="b.toml").looks["left tank"] == "tank"


def test_a_build_with_its_groups_taken_apart_weighs_and_turns_the_same_after_it_was_written():
    loose = AIRFRAME.loose()
    assert loose.groups == loose.tanks == ()
    again = read_build_text(build_text(loose), file="b.toml")
    assert [part.name for part in again.parts] == [
        "hull", "left wing/panel", "left wing/pod/motor", "right wing/panel", "left tank",
    ]  # fmt: skip
    for before, after in zip(AIRFRAME.all_parts, again.all_parts, strict=True):
        # What was reckoned and not read may have no number of these units that is exactly it.
        assert after.at_m == pytest.approx(before.at_m, rel=3e-16)
        assert after.mass_kg == pytest.approx(before.mass_kg, rel=3e-16)
        inertia = numpy.array(before.own_inertia_kg_m2)
        assert after.own_inertia_kg_m2 == pytest.approx(inertia, rel=1e-14, abs=1e-18)


def test_a_shape_that_the_format_does_not_know_is_refused_and_not_written_without_its_sizes():
    part = dataclasses.replace(AIRFRAME.parts[0])
    object.__setattr__(part, "shape", object())
    with pytest.raises(ValueError, match="no shape object"):
        build_text(Build(title="Reel", parts=(part,)))
