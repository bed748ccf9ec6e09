"""A build is written as text that reads back to the same build."""

import pytest

from lab.files import UNITS, Bar, Build, Support, build_text, read_build_text
from lab.mechanics import Box, Cylinder, Disc, Part, Pivot, Rectangle, Rod

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


def test_a_shape_that_the_format_does_not_know_is_refused_and_not_written_without_its_sizes():
    with pytest.raises(ValueError, match="no kind 'disc'"):
        build_text(Build(title="Reel", parts=(Part("reel", 0.1, (0.0, 0.0, 0.0), Disc(0.1)),)))
