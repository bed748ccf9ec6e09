"""A build file becomes a build in SI."""

import dataclasses
from math import radians

import pytest

from lab.files import FileFaults, build_from_table, parse, read_build_text
from lab.mechanics import Box, Cylinder, Point, Rectangle, Rod

HEAD = 'format = 1\ntitle = "T"\nunits = "g-cm"\n'
PART = '[[part]]\nname = "a"\nweight = 100\nat = 5\n'


def read(text):
    return read_build_text(HEAD + text, file="b.toml")


def test_a_part_is_read_in_si_with_its_defaults():
    (part,) = read(PART).parts
    assert (part.mass_kg, part.at_m, part.shape) == (0.1, (0.05, 0.0, 0.0), Point())
    assert (part.hold, part.cut, part.mass_doubt_kg, part.set_name) == ("clamped", False, 0.0, None)


def test_the_top_has_its_defaults():
    build = read(PART)
    assert (build.title, build.units, build.view, build.reference_m) == ("T", "g-cm", "plain", (0.0, 0.0, 0.0))
    assert (build.bar, build.pivot, build.supports, dict(build.looks)) == (None, None, (), {})


@pytest.mark.parametrize(
    ("shape", "made"),
    [
        ("{}", Point()),
        ('{ kind = "point" }', Point()),
        ('{ kind = "rod", length = 40, axis = "up" }', Rod(0.4, axis="up")),
        ('{ kind = "rectangle", length = 40, width = 10 }', Rectangle(0.4, 0.1)),
        ('{ kind = "box", size = [10, 20, 30] }', Box((0.1, 0.2, 0.3))),
        ('{ kind = "cylinder", radius = 2, length = 30, inner = 1 }', Cylinder(0.02, 0.3, inner_m=0.01)),
    ],
)
def test_every_shape_is_read(shape, made):
    assert read(f"{PART}shape = {shape}\n").parts[0].shape == made


@pytest.mark.parametrize(
    ("inertia", "diagonal"),
    [
        ("[100, 200, 250]", (1e-5, 2e-5, 2.5e-5)),
        ("[[100, 0, 0], [0, 200, 0], [0, 0, 250]]", (1e-5, 2e-5, 2.5e-5)),
        ("200", (0.0, 2e-5, 2e-5)),
    ],
)
def test_inertia_is_weight_times_length_squared(inertia, diagonal):
    tensor = read(f"{PART}inertia = {inertia}\n").parts[0].inertia_kg_m2
    # 1 g·cm² is 1e-7 kg·m²; one rounding.
    assert tuple(tensor[axis][axis] for axis in range(3)) == pytest.approx(diagonal, rel=1e-15)


def test_every_other_key_of_a_part_is_read():
    (part,) = read(
        PART + 'hold = "hung"\nweight_doubt = 1\nat_doubt = [0.1, 0.2, 0.3]\nset = "s"\nlook = "hook"\n'
    ).parts
    assert part.hold == "hung"
    assert part.mass_doubt_kg == 0.001
    assert part.at_doubt_m == (0.001, 0.002, 0.003)
    assert part.set_name == "s"


def test_a_cut_out_takes_weight_away_and_a_look_is_kept_by_name():
    build = read(PART + '[[part]]\nname = "hole"\nweight = 20\nat = 6\ncut = true\nlook = "ring"\n')
    assert build.parts[1].signed_mass_kg == -0.02
    assert dict(build.looks) == {"hole": "ring"}


def test_a_bar_is_a_rod_and_comes_first_of_all_parts():
    build = read("[bar]\nlength = 100\nweight = 150\nleft = -20\n" + PART)
    bar = build.all_parts[0]
    assert (bar.name, bar.mass_kg, bar.at_m, bar.shape) == ("bar", 0.15, (0.3, 0.0, 0.0), Rod(1.0))
    assert build.bar.depth_m == 0.02
    assert build.bar.right_m == 0.8
    assert [part.name for part in build.all_parts] == ["bar", "a"]


def test_a_pivot_is_read_with_its_defaults_and_its_keys():
    bare = read(f"{PART}[pivot]\nat = 4\n").pivot
    assert (bare.at_m, bare.up_m, bare.stop_rad, bare.pad_m, bare.damping_kg_m2_s) == (0.04, 0, radians(20), 0, 0)
    full = read(f"{PART}[pivot]\nat = 4\nup = 1\nstop = 35\npad = 0.5\ndamping = 100\n").pivot
    assert (full.up_m, full.stop_rad, full.pad_m) == (0.01, radians(35), 0.005)
    assert full.damping_kg_m2_s == 1e-5


def test_two_supports_are_read():
    build = read(f'{PART}[[support]]\nname = "l"\nat = 0\n[[support]]\nname = "r"\nat = [9, 1, 2]\n')
    assert [(each.name, each.at_m) for each in build.supports] == [("l", (0, 0, 0)), ("r", (0.09, 0.01, 0.02))]


def test_a_reference_may_be_one_number_or_three():
    assert read_build_text(HEAD + "reference = 10\n" + PART, file="b").reference_m == (0.1, 0.0, 0.0)
    assert read_build_text(HEAD + "reference = [1, 2, 3]\n" + PART, file="b").reference_m == (0.01, 0.02, 0.03)


def test_a_build_can_be_hashed_compared_and_not_changed():
    build = read(PART + 'look = "hook"\n')
    assert build == read(PART + 'look = "hook"\n')
    assert len({build, read(PART + 'look = "hook"\n')}) == 1
    with pytest.raises(dataclasses.FrozenInstanceError):
        build.title = "other"
    with pytest.raises(TypeError):
        build.looks["a"] = "pole"


SCENE = """\
[[question]]
name = "q"
[question.scene]
[[question.scene.part]]
name = "a"
weight = 100
at = 5
"""


def scene(text, **stand_ins):
    keyed = parse(text, file="l.toml")
    table = keyed.data["question"][0]["scene"]
    return build_from_table(table, keyed.lines, "l.toml", at=("question", 0, "scene"), **stand_ins)


def test_a_scene_inside_another_file_needs_no_format_and_takes_what_stands_in():
    build = scene(SCENE, title="Q", units="kg-m")
    assert (build.title, build.units, build.parts[0].mass_kg) == ("Q", "kg-m", 100.0)


def test_what_a_scene_says_goes_before_what_stands_in():
    text = SCENE.replace("[question.scene]\n", '[question.scene]\nunits = "g-cm"\n')
    assert scene(text, title="Q", units="kg-m").parts[0].mass_kg == 0.1


def test_a_fault_of_a_scene_names_its_place_in_the_whole_file():
    with pytest.raises(FileFaults) as caught:
        scene(SCENE.replace("100", "-1"), title="Q", units="kg-m")
    (fault,) = caught.value.faults
    assert (fault.line, fault.key) == (6, "question[1].scene.part[1].weight")
