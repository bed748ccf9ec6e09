"""Every bench in the real window: built on by pointer and by keys, killed in the middle of a drag, dropped onto.

A pilot without a window does the same; what the window has kept must be the pilot's build to the letter, and must
balance where plain arithmetic says.
"""

import ctypes.util
import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from lab.app.settings import load_settings, save_settings
from lab.files import build_text, read_build, save_text
from lab.screens.intents import Go
from lab.simulation.benches.catalogue import BENCHES
from lab.ui.events import FileDropped, Text

pytestmark = [
    pytest.mark.window,
    pytest.mark.skipif(not os.environ.get("DISPLAY"), reason="there is no display"),
    pytest.mark.skipif(shutil.which("xdotool") is None, reason="xdotool is not there"),
]

Point = tuple[float, float]
X_KEYS = {"tab": "Tab", "enter": "Return", "left": "Left", "right": "Right", "escape": "Escape", "z": "ctrl+z"}
#: What is moved on each bench, what is taken from its tray, and how far from the moved thing that is put down.
HANDLED = {
    "bar": ("weight-2", "tray-100", (-60, 0)),
    "tool": ("part-3", "tray-hook", (250, 10)),
    "plate": ("pin", "tray-20", (60, 240)),
    "scales": ("load-1", "tray-100", (120, 0)),
    "fingers": ("piece-1", "tray-100", (110, 0)),
    "mobile": ("weight-5", "tray-20", (-60, -60)),
}  # fmt: skip


class Two:
    """A pilot and the real window, the same build on the same bench in both."""

    def __init__(self, pilot: Any, window: Any, kept: Path) -> None:
        self.pilot, self.window, self.kept = pilot, window, kept

    @property
    def state(self) -> Any:
        """What stands on the pilot's bench."""
        return self.pilot.lab._room._bench.session.state

    @property
    def text(self) -> str:
        """The pilot's build, as a file."""
        return build_text(self.pilot.lab._room._bench.kind.build_of(self.state))

    def drag(self, start: Point, end: Point, *, drops: bool = True) -> None:
        """Take something in hand and carry it, in both; the window's pointer may be left down."""
        points = [(round(x), round(y)) for x, y in (_between(start, end, step / 6) for step in range(7))]
        self.pilot.drag(points[0], points[-1])
        words: list[object] = ["mousemove", *points[0], "mousedown", 1]
        for point in points[1:]:
            words += ["mousemove", *point, "sleep", 0.03]
        self.window.hands(*words, *(["mouseup", 1] if drops else []))

    def press(self, key: str) -> None:
        """Press a thing, in both."""
        x, y = self.pilot.middle(key)
        self.pilot.press(key)
        self.window.hands("mousemove", round(x), round(y), "sleep", 0.45, "click", 1)

    def keys(self, *names: str) -> None:
        """Press keys, in both."""
        for name in names:
            self.pilot.key(name, ctrl=name == "z")
        self.window.hands("key", "--delay", 25, *(X_KEYS[name] for name in names))

    def tab_to(self, key: str) -> None:
        """Press Tab until a thing has the focus, in both."""
        before = 0
        while "focused" not in self.pilot.node(key).state:
            self.pilot.key("tab")
            before += 1
            assert before < 80, f"Tab never reaches {key}"
        if before:
            self.window.hands("key", "--delay", 12, *["Tab"] * before)

    def same_kept(self) -> None:
        """What the window has kept is the pilot's build, and balances where plain arithmetic says."""
        wanted = self.text
        self.window.wait_until(
            lambda: self.kept.exists() and self.kept.read_text(encoding="utf-8") == wanted, f"in {self.kept}:\n{wanted}"
        )
        parts = BENCHES[read_build(self.kept).bench].take(read_build(self.kept)).parts
        masses = [-part.mass_kg if part.cut else part.mass_kg for part in parts]
        along_m = sum(mass * part.at_m[0] for mass, part in zip(masses, parts, strict=True)) / sum(masses)
        # Both are sums of a few numbers below 10, in another order.
        assert self.state.sum.balance_point_m[0] == pytest.approx(along_m, abs=1e-12)


def _between(start: Point, end: Point, share: float) -> Point:
    return start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])


@pytest.fixture
def at_bench(
    make_pilot: Any, real_window: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> Iterator[Callable[[str], Two]]:
    opened: list[Any] = []

    def start(bench: str) -> Two:
        settings = load_settings(tmp_path / "none").settings
        for home in ("pilot", "window"):
            save_settings(tmp_path / home / "settings.json", settings)
        file = tmp_path / f"{bench}.toml"
        save_text(file, build_text(BENCHES[bench].build_of(BENCHES[bench].start())))
        monkeypatch.setenv("TILTBENCH_HOME", str(tmp_path / "pilot"))
        pilot = make_pilot()
        pilot.lab.open_build(file)
        window = real_window(tmp_path / "window", "open", file)
        opened.append(window)
        window.wait_for_window(pilot.lab.size)
        return Two(pilot, window, tmp_path / "window" / "builds" / f".left-{bench}.toml")

    yield start
    for window in opened:
        # Whoever was killed in the middle of a drag never saw the button come up.
        window.hands("mouseup", 1)
        window.close()


@pytest.mark.parametrize("bench", HANDLED)
def test_a_bench_is_built_on_by_pointer(bench: str, at_bench: Callable[[str], Two]):
    two = at_bench(bench)
    moved, item, (right, down) = HANDLED[bench]
    x, y = two.pilot.middle(moved)
    before = len(two.state.parts)
    two.drag((x, y), (x + 30, y))
    two.drag(two.pilot.middle(item), (x + right, y + down))
    assert len(two.state.parts) == before + 1
    two.same_kept()
    two.press("let-go")
    assert two.window.close() == 0


@pytest.mark.parametrize("bench", HANDLED)
def test_a_bench_is_built_on_by_keys_alone(bench: str, at_bench: Callable[[str], Two]):
    two = at_bench(bench)
    moved, item, _ = HANDLED[bench]
    before = two.text
    two.tab_to(moved)
    two.keys("right", "right", "left", "right")
    two.tab_to(item)
    two.keys("enter", "right", "right", "enter")
    built = two.text
    two.keys("right", "z")
    assert two.text == built != before
    two.same_kept()
    assert two.window.close() == 0


@pytest.mark.parametrize("bench", HANDLED)
def test_killed_in_the_middle_of_a_drag_a_bench_has_its_build_at_the_next_start(
    bench: str, at_bench: Callable[[str], Two], make_pilot: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    two = at_bench(bench)
    x, y = two.pilot.middle(HANDLED[bench][0])
    two.drag((x, y), (x + 30, y), drops=False)
    two.same_kept()
    two.window.program.kill()
    two.window.program.wait()
    monkeypatch.setenv("TILTBENCH_HOME", str(tmp_path / "window"))
    again = make_pilot()
    again.lab._go(Go(place="build", name=bench))
    room = again.lab._room._bench
    assert build_text(room.kind.build_of(room.session.state)) == two.text


def test_the_reference_line_is_dragged_onto_a_mark_and_a_place_is_typed(at_bench: Callable[[str], Two]):
    two = at_bench("bar")
    two.press("view.all")
    x, y = two.pilot.middle("reference")
    mark_px = two.pilot.middle("weight-3")[0] - two.pilot.middle("weight-2")[0]
    apart_m = two.state.weights[2].at_m - two.state.weights[1].at_m
    # A pixel beside a whole centimetre: within what the rule's marks pull, and more than the last shown decimal.
    goal_m = round(two.state.reference_m + 0.1, 2)
    two.drag((x, y), (x + (goal_m - two.state.reference_m) * mark_px / apart_m + 1, y))
    assert two.state.reference_m == goal_m
    two.same_kept()
    two.press("weight-2")
    two.tab_to("picked-place")
    for digit in ("2", "1", ".", "5"):
        two.pilot.lab.handle(Text(digit))
    two.window.hands("type", "--delay", 30, "21.5")
    two.keys("enter")
    assert two.state.weights[1].at_m == pytest.approx(0.215, abs=1e-12)
    two.same_kept()
    assert two.window.close() == 0


@pytest.mark.skipif(ctypes.util.find_library("X11") is None, reason="Xlib is not there")
def test_a_build_dropped_on_the_window_is_on_its_bench(at_bench: Callable[[str], Two], tmp_path: Path):
    two = at_bench("bar")
    file = tmp_path / "drop" / "a mobile.toml"
    file.parent.mkdir()
    save_text(file, build_text(BENCHES["mobile"].build_of(BENCHES["mobile"].start())))
    dropper = Path(__file__).with_name("drop_file.py")
    subprocess.run([sys.executable, dropper, "600", "400", file], check=True, timeout=30)
    two.pilot.lab.handle(FileDropped(file))
    two.kept = two.kept.with_name(".left-mobile.toml")
    two.same_kept()
    assert two.window.close() == 0
