"""What a build holds in groups and tanks weighs on a bench too, and is not lost from its file by saving the bench."""

import dataclasses

import pytest

from lab.app.paths import find_paths
from lab.app.workbench import Workbench
from lab.files import read_build, read_build_text
from lab.mechanics import moment_sum
from lab.simulation.benches.bar_builds import hanging_bar_from_build
from lab.simulation.benches.finger_builds import finger_from_build
from lab.simulation.benches.poles import hangable
from lab.simulation.benches.unfit import UnfitBuildError

HEAD = 'format = 1\ntitle = "T"\nunits = "g-cm"\n'
LOADED_BAR = (
    HEAD
    + "[bar]\nlength = 100\nweight = 150\n"
    + '[[part]]\nname = "a"\nweight = 50\nat = 5\n'
    + '[[group]]\nname = "g"\nat = 60\nturn = [0, 180, 0]\n'
    + '[[part]]\nname = "b"\ngroup = "g"\nweight = 40\nat = 15\nshape = { kind = "rod", length = 10 }\n'
    + '[[tank]]\nname = "t"\nat = 80\ncapacity = 200\ncontents = 50\ndensity = 0.8\n'
)
ALL_IN_A_GROUP = (
    HEAD
    + '[[group]]\nname = "net"\nat = [10, 0, 0]\nturn = [0, 0, 0]\n'
    + '[[part]]\nname = "handle"\ngroup = "net"\nweight = 300\nat = 40\nshape = { kind = "rod", length = 80 }\n'
)


def test_on_the_hanging_bar_hang_a_groups_parts_and_a_tanks_contents():
    build = read_build_text(LOADED_BAR, file="b.toml")
    bench = hanging_bar_from_build(build)
    assert [part.name for part in bench.parts] == ["bar", "a", "g/b", "t"]
    # 150 × 50 + 50 × 5 + 40 × 45 + 40 × 80, in grams and centimetres; the bench rounds a few times.
    assert bench.sum.moment_kg_m[0] == pytest.approx(12750e-5, rel=1e-14)


def test_a_tool_that_is_all_one_group_lies_on_a_finger_and_hangs():
    build = read_build_text(ALL_IN_A_GROUP, file="b.toml")
    tool = finger_from_build(build)
    # 40 within the group is 50 in the file.
    assert tool.sum.balance_point_m[0] == pytest.approx(0.5, rel=1e-14)
    assert hanging_bar_from_build(hangable(build)).bar.name == "net/handle"


def test_saving_a_bench_leaves_the_file_whose_groups_and_tanks_it_took_apart(tmp_path):
    paths = dataclasses.replace(find_paths(), home=tmp_path)
    paths.builds.mkdir()
    own = paths.builds / "loaded.toml"
    own.write_text(LOADED_BAR)
    bench = Workbench(paths)
    assert bench.open(own) is None
    assert bench.save(None) != own
    assert own.read_text() == LOADED_BAR


def test_an_airframe_is_no_bar():
    with pytest.raises(UnfitBuildError, match="no bar to hang"):
        hanging_bar_from_build(hangable(read_build(find_paths().shipped_builds / "glider.toml")))


@pytest.mark.parametrize("path", sorted(find_paths().shipped_builds.glob("*.toml")), ids=lambda path: path.stem)
def test_every_shipped_build_lies_on_a_finger_with_all_that_it_weighs(path):
    build = read_build(path)
    tool = finger_from_build(build)
    assert tool.sum.mass_kg == moment_sum(build.all_parts).mass_kg
