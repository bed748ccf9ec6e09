"""The airframe on the screen, by a pointer and by keys: hung, weighed, and drawn where the numbers say."""

from dataclasses import replace
from math import dist, radians
from typing import Any

import pytest

from lab.outline.cautions import LEARNING_ONLY
from lab.screens.benches.airframe.gallery import STATES, drone
from lab.screens.benches.airframe.hang_picture import panels_of
from lab.simulation import Undo
from lab.simulation.airframe_commands import DoWith
from lab.simulation.clock import TICK_NS
from lab.ui.events import PointerDown, PointerMove, PointerUp
from lab.ui.geometry import Rect


@pytest.fixture
def flown(play: Any) -> Any:
    return play(drone())


def settle(played: Any) -> None:
    for _ in range(3000):
        if not played.session.moving:
            break
        played.session.advance(TICK_NS)
    played._show()


def texts(played: Any) -> str:
    found = []

    def walk(node: Any) -> None:
        found.extend((node.name, node.value))
        for child in node.children:
            walk(child)

    walk(played.screen.outline())
    return "\n".join(found)


def panels(played: Any) -> Any:
    """The views as they are drawn, and the hang view they are drawn from."""
    screen = played.screen
    view = screen._face._view(screen._now())
    rect = next(node for node in _walk(screen.outline()) if node.key == "picture").bounds
    return panels_of(view, Rect(*rect))


def _walk(node: Any) -> Any:
    yield node
    for child in node.children:
        yield from _walk(child)


def test_it_is_hung_by_a_pointer_where_the_hook_is_dragged_and_comes_to_rest_with_its_cg_below(flown: Any) -> None:
    flown.press("doing.hang")
    start = flown.middle("hook-top")
    flown.send(PointerDown(0, *start), PointerMove(0, start[0] + 20, start[1] - 12))
    flown.send(PointerMove(0, start[0] + 40, start[1] - 24), PointerUp(0, start[0] + 40, start[1] - 24))
    hook = flown.bench.hang.hook_m
    assert hook[0] > 0.36
    assert hook[1] > 0.0  # upwards from above is to the right wing
    flown.press("guess-nose.down")
    flown.press("guess-wing.left")
    flown.press("let-go")
    assert flown.session.moving
    settle(flown)
    assert flown.bench.hang.guess_nose == "down"
    balance = flown.bench.sum.balance_point_m
    for name, panel in panels(flown).items():
        if name != "top":
            # Half a pixel is what the eye could tell; round-off is far below it.
            assert panel.px(balance)[0] == pytest.approx(panel.px(hook)[0], abs=0.5), name
            assert panel.px(balance)[1] > panel.px(hook)[1]
    flown.press("draw-line")
    assert len(flown.bench.hang.lines) == 1
    assert "One line is drawn." in texts(flown)


def test_a_drag_of_the_hook_is_one_step_back(flown: Any) -> None:
    flown.press("doing.hang")
    before = flown.bench.hang.hook_m
    x, y = flown.middle("hook-side")
    flown.send(
        PointerDown(0, x, y), *(PointerMove(0, x + step, y) for step in range(5, 60, 5)), PointerUp(0, x + 55, y)
    )
    assert flown.bench.hang.hook_m != before
    # Nothing was moved under the pointer: the hook is where the pointer let it go, to a mark of the rule.
    panel = panels(flown)["side"]
    assert flown.bench.hang.hook_m[0] - before[0] == pytest.approx(55 / panel.camera.px_per_m, rel=0.6)
    flown.session.do(Undo())
    assert flown.bench.hang.hook_m == before


def test_it_is_hung_and_weighed_by_keys_alone(flown: Any) -> None:
    flown.tab_to("doing.build")
    flown.keys("right")
    flown.keys("enter")
    assert flown.bench.doing == "hang"
    flown.tab_to("hook-side")
    flown.keys("left", "left", "up")
    assert flown.bench.hang.hook_m[0] == pytest.approx(0.338, abs=2e-3)
    flown.tab_to("let-go")
    flown.keys("enter")
    settle(flown)
    assert flown.bench.hang.at_rest
    flown.session.do(DoWith("weigh"))
    flown._show()
    flown.tab_to("scale-1-top")
    flown.keys("right", "up")
    assert flown.bench.weighing.scales[0].at_m[:2] == pytest.approx((0.0442, 0.005), abs=1e-3)
    flown.tab_to("let-go")
    flown.keys("enter")
    settle(flown)
    assert flown.bench.weighing.steady
    flown.tab_to("raise-nose")
    flown.keys("enter")
    settle(flown)
    assert flown.bench.weighing.pitch_rad == radians(10.0)
    # What the bench promises.
    assert dist(flown.bench.weighing.read_m, flown.bench.sum.balance_point_m) < 1e-9
    assert "the sum" in texts(flown)


def test_scales_are_dragged_until_it_tips_and_that_is_said(flown: Any) -> None:
    flown.press("doing.weigh")
    flown.press("let-go")
    settle(flown)
    x, y = flown.middle("scale-1-top")
    right = flown.middle("scale-2-top")[0]
    flown.send(PointerDown(0, x, y), PointerMove(0, (x + right) / 2, y), PointerMove(0, right - 12, y))
    flown.send(PointerUp(0, right - 12, y))
    settle(flown)
    assert flown.bench.weighing.tipped or flown.bench.weighing.held
    if flown.bench.weighing.held:
        flown.press("let-go")
        settle(flown)
    assert "It tips over" in texts(flown)
    assert abs(flown.bench.weighing.motion.angle_rad) > radians(3.0)


@pytest.mark.parametrize("name", sorted(STATES))
def test_the_caution_stands_on_every_screen_of_it(play: Any, name: str) -> None:
    played = play(replace(STATES[name][1](), view="all"))
    assert LEARNING_ONLY in texts(played)
