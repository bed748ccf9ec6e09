"""The start screen: something tips within a tap, and big targets lead on."""

import pytest

from lab.outline import Words, find, walk
from lab.screens.intents import ChangeSetting, Do, Go
from lab.screens.screen import Setting, StartModel
from lab.screens.start import StartScreen
from lab.simulation import HoldStill, LetGo, Move, MovePivot
from lab.simulation.benches.bar_builds import workshop_bar
from lab.ui.events import Key, PointerDown, PointerMove, PointerUp
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES


def screen_with(bench, *, reduced_motion: bool = False, size: tuple[int, int] = (1280, 720)) -> StartScreen:
    look = Look(theme=THEMES["paper"], sizes=Sizes(*size), words=Words(), reduced_motion=reduced_motion)
    screen = StartScreen(look)
    screen.show(StartModel(setting=Setting(), learner="K7M", first_lesson="", bench=bench, previous=bench))
    return screen


@pytest.fixture
def held() -> StartScreen:
    return screen_with(workshop_bar())


def middle(screen: StartScreen, key: str) -> tuple[float, float]:
    node = find(screen.outline(), key)
    assert node is not None, f"{key} is not on the screen"
    x, y, w, h = node.bounds
    return x + w / 2, y + h / 2


def tap(screen: StartScreen, at: tuple[float, float]):
    down, up = screen.handle(PointerDown(0, *at)), screen.handle(PointerUp(0, *at))
    return (*down.intents, *up.intents)


def test_a_tap_on_the_yellow_pin_lets_the_bar_go(held):
    assert tap(held, middle(held, "pin")) == (Do(command=LetGo()),)


def test_so_does_the_dark_button_and_a_tap_on_the_bar_itself(held):
    assert tap(held, middle(held, "let-go")) == (Do(command=LetGo()),)
    x, y = middle(held, "picture")
    assert tap(held, (x, y - 60)) == (Do(command=LetGo()),)


def test_with_less_motion_it_is_shown_where_it_ends():
    screen = screen_with(workshop_bar(), reduced_motion=True)
    assert tap(screen, middle(screen, "pin")) == (Do(command=LetGo(at_once=True)),)


def test_a_second_tap_holds_it_level_again():
    screen = screen_with(workshop_bar().released())
    assert tap(screen, middle(screen, "pin")) == (Do(command=HoldStill()),)


def test_a_weight_that_is_dragged_moves_and_a_loose_bar_goes_on_by_itself():
    screen = screen_with(workshop_bar().released().at_end())
    x, y = middle(screen, "weight-2")
    screen.handle(PointerDown(0, x, y))
    intents = list(screen.handle(PointerMove(0, x - 40, y)).intents)
    intents += screen.handle(PointerMove(0, x - 80, y)).intents
    intents += screen.handle(PointerUp(0, x - 80, y)).intents
    moves = [intent.command for intent in intents if isinstance(intent.command, Move)]
    assert moves
    assert moves[-1].id == 2
    assert moves[-1].at_m < 0.72
    assert intents[-1] == Do(command=LetGo())


def test_a_weight_on_a_held_bar_is_moved_and_the_bar_stays_held(held):
    x, y = middle(held, "weight-2")
    held.handle(PointerDown(0, x, y))
    held.handle(PointerMove(0, x - 40, y))
    intents = held.handle(PointerUp(0, x - 40, y)).intents
    assert all(isinstance(intent.command, Move) for intent in intents)


def test_the_carriage_slides_by_key(held):
    held._page.desk.focus("pivot")
    (intent,) = held.handle(Key("right")).intents
    assert isinstance(intent.command, MovePivot)
    assert intent.command.at_m > 0.40


@pytest.mark.parametrize(
    ("key", "intent"),
    [
        ("to-lessons", Go(place="lessons")),
        ("to-build", Go(place="build")),
        ("to-saved", Go(place="build", name="builds")),
    ],
)
def test_the_cards_lead_on(held, key, intent):
    assert tap(held, middle(held, key)) == (intent,)


def test_the_ways_on_are_large():
    screen = screen_with(workshop_bar())
    for key in ("to-lessons", "to-build"):
        node = find(screen.outline(), key)
        assert node is not None
        assert node.bounds[2] >= 300
        assert node.bounds[3] >= 100


def test_everything_is_reached_by_tab(held):
    wanted = {"pin", "pivot", "weight-1", "weight-2", "weight-3", "let-go", "to-lessons", "to-build", "to-saved"}
    reached = set()
    for _ in range(30):
        held.handle(Key("tab"))
        reached.add(held._page.desk.focused)
    assert wanted <= reached


def test_enter_on_the_pin_lets_go(held):
    held._page.desk.focus("pin")
    assert held.handle(Key("enter")).intents == (Do(command=LetGo()),)


def test_escape_leads_nowhere_from_the_first_screen(held):
    assert held.handle(Key("escape")).intents == ()


def test_it_says_what_came_of_it():
    screen = screen_with(workshop_bar().released().at_end())
    assert any("The right end dropped" in node.name for node in walk(screen.outline()))


def test_the_text_can_be_made_larger_at_once(held):
    tap(held, middle(held, "looks"))
    assert tap(held, middle(held, "setting-text_scale.1.5")) == (ChangeSetting(name="text_scale", value=1.5),)
