import math
from pathlib import Path

import pytest

from lab.app.paths import Paths, find_paths
from lab.app.workbench import Workbench
from lab.files import FileFaults, read_build
from lab.simulation import Hang
from lab.simulation.benches.poles import hangable

SHIPPED = find_paths()


@pytest.fixture
def paths(tmp_path: Path) -> Paths:
    return Paths(shipped_lessons=SHIPPED.shipped_lessons, shipped_builds=SHIPPED.shipped_builds, home=tmp_path)


def test_a_build_is_saved_under_its_title_and_opened_again(paths: Paths):
    bench = Workbench(paths)
    bench.session.do(Hang(0.1, 0.25))
    saved = bench.save(None)
    assert saved.parent == paths.builds
    other = Workbench(paths)
    assert other.open(saved) is None
    assert other.bench.weights == bench.bench.weights
    assert other.bench.bar == bench.bench.bar


def test_saving_again_writes_the_same_file_and_another_bench_gets_another(paths: Paths):
    bench = Workbench(paths)
    first = bench.save(None)
    assert bench.save(None) == first
    assert Workbench(paths).save(None) != first


def test_a_bare_name_goes_into_the_builders_own_folder_and_names_the_build(paths: Paths):
    bench = Workbench(paths)
    saved = bench.save(Path("kite-for-the-ferry.toml"))
    assert saved == paths.builds / "kite-for-the-ferry.toml"
    assert read_build(saved).title == "Kite for the ferry"


def test_another_builds_file_is_never_written_over(paths: Paths):
    first = Workbench(paths).save(Path("kite.toml"))
    before = first.read_bytes()
    second = Workbench(paths).save(Path("kite.toml"))
    assert second != first
    assert first.read_bytes() == before


def test_a_shipped_build_is_never_written_over(paths: Paths):
    bench = Workbench(paths)
    shipped = SHIPPED.shipped_builds / "survey-bar.toml"
    assert bench.open(shipped) is None
    before = shipped.read_bytes()
    assert bench.save(None).parent == paths.builds
    assert shipped.read_bytes() == before


#: Those with a bar hang; tools, parts beyond the ends of their poles and all, lie on a finger.
STANDS = {
    "bar": ("kite-spar", "survey-bar"),
    "tool": ("boat-hook", "camera-pole", "landing-net", "net-frame", "oar"),
}


@pytest.mark.parametrize(("kind", "name"), [(kind, name) for kind, names in STANDS.items() for name in names])
def test_a_shipped_build_stands_on_the_bench_that_it_is_for(kind: str, name: str, paths: Paths):
    bench = Workbench(paths)
    path = SHIPPED.shipped_builds / f"{name}.toml"
    assert bench.open(path) is None
    assert bench.kind.name == kind
    assert bench.bench.title == read_build(path).title


@pytest.mark.parametrize("build", sorted(SHIPPED.shipped_builds.glob("*.toml")), ids=lambda path: path.stem)
def test_every_build_that_ships_stands_on_a_bench_and_balances_there_as_its_file_says(paths: Paths, build: Path):
    bench = Workbench(paths)
    assert bench.open(build) is None
    parts = read_build(build).all_parts
    weight_kg = math.fsum(part.signed_mass_kg for part in parts)
    along_m = math.fsum(part.signed_mass_kg * part.at_m[0] for part in parts) / weight_kg
    # A plate's weight by area is kept to nine figures.
    assert bench.bench.sum.mass_kg == pytest.approx(weight_kg, rel=1e-8)
    assert bench.bench.sum.balance_point_m[0] == pytest.approx(along_m, abs=1e-8)


def test_what_no_bench_takes_is_refused_with_a_sentence(paths: Paths, tmp_path: Path):
    odd = tmp_path / "odd.toml"
    odd.write_text(
        'format = 1\ntitle = "Winged bar"\nunits = "g-cm"\nbar = { length = 90, weight = 100 }\n'
        'surface = [{ name = "wing", root_chord = 10, tip_chord = 8, span = 60, at = 0 }]\n'
    )
    bench = Workbench(paths)
    before = bench.bench
    refused = bench.open(odd)
    assert refused is not None
    assert "no part of an airframe" in refused.in_english()
    assert bench.bench == before


def test_a_tool_hangs_by_its_longest_pole_and_weighs_and_balances_as_before():
    tool = read_build(SHIPPED.shipped_builds / "boat-hook.toml")
    hung = hangable(tool)
    assert tool.bar is None
    assert hung.bar is not None
    assert hung.bar.length_m == pytest.approx(0.40, abs=1e-15)
    weight = sum(part.mass_kg for part in hung.all_parts)
    along = sum(part.mass_kg * part.at_m[0] for part in hung.all_parts) / weight
    assert weight == pytest.approx(0.600, abs=1e-15)
    assert along == pytest.approx(0.056, abs=1e-15)


def test_a_file_with_faults_leaves_the_bench_as_it_is(paths: Paths, tmp_path: Path):
    bench = Workbench(paths)
    before = bench.bench
    (tmp_path / "bad.toml").write_text("format = 1\nweight = 3\n")
    with pytest.raises(FileFaults):
        bench.open(tmp_path / "bad.toml")
    assert bench.bench == before


def test_the_builds_on_offer_are_the_saved_ones_and_the_shipped_ones(paths: Paths):
    bench = Workbench(paths)
    saved = bench.save(None)
    paths_on_offer = [entry.path for entry in bench.builds()]
    assert saved in paths_on_offer
    assert SHIPPED.shipped_builds / "survey-bar.toml" in paths_on_offer


def test_a_build_that_cannot_be_written_raises(paths: Paths, tmp_path: Path):
    with pytest.raises(OSError, match=r"no|No"):
        Workbench(paths).save(tmp_path / "nowhere" / "x.toml")
