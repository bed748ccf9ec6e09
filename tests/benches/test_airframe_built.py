"""The airframe is built on the screen: by a pointer in each view, two at once, by keys, and typed."""

from dataclasses import replace
from typing import Any

import pytest

from lab.mechanics import moment_sum
from lab.screens.benches.airframe.build_view import body_view, panels_of
from lab.screens.benches.airframe.gallery import drone
from lab.simulation import Undo
from lab.ui.events import PointerDown, PointerMove, PointerUp
from lab.ui.geometry import Rect


@pytest.fixture
def built(play: Any) -> Any:
    return play(replace(drone(), view="all"))


def _walk(node: Any) -> Any:
    yield node
    for child in node.children:
        yield from _walk(child)


def views(played: Any) -> tuple[Any, Any]:
    """The build view and its panels as drawn."""
    screen = played.screen
    view = screen._face._view(screen._now())
    rect = next(node for node in _walk(screen.outline()) if node.key == "picture").bounds
    return view, panels_of(view, Rect(*rect))


def drag(played: Any, key: str, dx: float, dy: float, pointer: int = 0) -> None:
    x, y = played.middle(key)
    played.send(
        PointerDown(pointer, x, y),
        PointerMove(pointer, x + dx / 2, y + dy / 2),
        PointerMove(pointer, x + dx, y + dy),
        PointerUp(pointer, x + dx, y + dy),
    )


@pytest.mark.parametrize(
    ("face", "changed", "senses"),
    [("side", (0, 2), (1, 1)), ("top", (0, 1), (1, 1)), ("front", (1, 2), (-1, 1))],
)
def test_a_part_is_dragged_in_each_view_along_its_two_axes(built: Any, face: str, changed: Any, senses: Any) -> None:
    before = built.bench.parts_on[3].at_m
    drag(built, f"part-4@{face}", 30, -20)
    after = built.bench.parts_on[3].at_m
    for axis in range(3):
        if axis in changed:
            assert (after[axis] - before[axis]) * senses[changed.index(axis)] > 0.01
        else:
            assert after[axis] == before[axis]
    assert built.session.do(Undo()) is None
    assert built.bench.parts_on[3].at_m == before


def test_two_pointers_carry_two_parts_at_once(built: Any) -> None:
    (x, y), (far_x, far_y) = built.middle("part-4@top"), built.middle("tank-1@top")
    built.send(PointerDown(0, x, y), PointerDown(1, far_x, far_y))
    for step in range(6, 31, 6):
        built.send(PointerMove(0, x + step, y), PointerMove(1, far_x, far_y + step))
    built.send(PointerUp(0, x + 30, y), PointerUp(1, far_x, far_y + 30))
    assert built.bench.parts_on[3].at_m[0] > 0.1
    assert built.bench.tanks[1].at_m[1] < 0.13


@pytest.mark.parametrize("face", ["side", "top", "front"])
def test_arrows_move_a_part_along_the_axes_of_the_view_that_has_the_focus(built: Any, face: str) -> None:
    before = built.bench.parts_on[3].at_m
    built.tab_to(f"part-4@{face}")
    built.keys("right", "up")
    after = built.bench.parts_on[3].at_m
    step = 0.005  # half a centimetre, that of the keys in g·cm
    moved = {
        "side": (before[0] + step, before[1], before[2] + step),
        "top": (before[0] + step, before[1] + step, before[2]),
        "front": (before[0], before[1] - step, before[2] + step),
    }[face]
    assert after == pytest.approx(moved, abs=1e-9)


def test_one_balance_point_is_drawn_where_the_sum_says_in_all_three_views(built: Any) -> None:
    drag(built, "part-4@top", 40, -30)
    view, panels = views(built)
    own = moment_sum(built.bench.parts).balance_point_m
    assert body_view(view).balance.at_m == own  # type: ignore[union-attr]
    assert set(panels) == {"side", "top", "front"}
    scales = {panel.camera.px_per_m for panel in panels.values()}
    assert len(scales) == 1
    # The same place along in side and top, the same up in side and front: to round-off of a pixel.
    side, top, front = (panels[face] for face in ("side", "top", "front"))
    assert side.value_m("along", side.px(own)) == pytest.approx(own[0], abs=1e-9)
    assert top.value_m("along", top.px(own)) == pytest.approx(own[0], abs=1e-9)
    assert top.value_m("across", top.px(own)) == pytest.approx(own[1], abs=1e-9)
    assert front.value_m("across", front.px(own)) == pytest.approx(own[1], abs=1e-9)
    assert front.value_m("up", front.px(own)) == pytest.approx(own[2], abs=1e-9)


def test_moments_are_shown_of_the_axis_that_is_chosen_and_the_line_is_dragged_on_it(built: Any) -> None:
    built.press("axis.across")
    assert built.bench.axis == "across"
    _, panels = views(built)
    x, y = built.middle("reference")[0], panels["front"].frame.bottom - 12  # below all parts
    built.send(PointerDown(0, x, y), PointerMove(0, x + 10, y), PointerMove(0, x + 20, y), PointerUp(0, x + 20, y))
    assert built.bench.reference_m[1] < 0.0  # seen from ahead, the right wing is at the left
    assert built.bench.reference_m[0] == 0.0


def test_ballast_is_taken_from_the_tray_and_dropped_on_a_view(built: Any) -> None:
    x, y = built.middle("fit-ballast")
    to = built.middle("part-4@side")
    built.send(PointerDown(0, x, y), PointerMove(0, x - 40, y), PointerMove(0, *to), PointerUp(0, *to))
    new = built.bench.parts_on[-1]
    assert new.name == "ballast"
    assert new.at_m[0] == pytest.approx(0.085, abs=0.01)
    assert new.at_m[1] == 0.0


def test_a_tank_is_taken_up_by_keys_and_put_on(built: Any) -> None:
    built.tab_to("fit-tank")
    built.keys("enter", "enter")
    assert [tank.name for tank in built.bench.tanks] == ["left tank", "right tank", "tank"]


def test_what_is_guessed_is_compared_when_it_is_looked_at(play: Any) -> None:
    played = play(drone())
    played.press("guess.right")
    played.press("let-go")
    said = "\n".join(node.name for node in _walk(played.screen.outline()))
    assert "The nose drops." in said
    assert "You said the tail." in said
    assert "Ahead of the neutral point: steady in pitch." in said
    assert "The left wing is heavy: left tank is fuller." in said
    played.press("hold")
    assert played.bench.held


def test_how_far_the_plane_of_symmetry_is_missed_is_said(built: Any) -> None:
    said = "\n".join(node.name for node in _walk(built.screen.outline()))
    # 60 g more at 16 cm of 1530 g: 0.63 cm.
    assert "CG 0.6 cm left of the plane of symmetry" in said
