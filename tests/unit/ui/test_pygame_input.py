"""pygame's queue as our events: each touch once, whatever the system makes of it besides."""

import os
import subprocess
import sys
from pathlib import Path

import pygame
import pytest

from lab.ui import Rect
from lab.ui.events import (
    Exposed,
    FileDropped,
    FocusLost,
    Key,
    PointerDown,
    PointerMove,
    PointerUp,
    Quit,
    Resized,
    Text,
    Wheel,
)
from lab.ui.pygame_events import EventReader
from lab.ui.pygame_window import Window

SIZE = (1000, 500)


@pytest.fixture(autouse=True)
def display():
    """Names of keys are known only while the display is on."""
    pygame.display.init()
    yield
    pygame.display.quit()


def read(stream, px_per_mm=4.0):
    """Our events for (milliseconds, type, attributes)."""
    reader = EventReader(px_per_mm=px_per_mm)
    return [
        event
        for when, kind, attributes in stream
        for event in reader.read(pygame.event.Event(kind, attributes), size=SIZE, now_ms=when)
    ]


def finger(kind, x, y, number=7):
    return kind, {"x": x / SIZE[0], "y": y / SIZE[1], "finger_id": number, "touch_id": 1, "dx": 0, "dy": 0}


def mouse(kind, x, y, *, touch=False, button=1):
    attributes = {"pos": (x, y), "touch": touch}
    attributes |= {"rel": (0, 0), "buttons": (0, 0, 0)} if kind == pygame.MOUSEMOTION else {"button": button}
    return kind, attributes


DOWN, UP = pygame.MOUSEBUTTONDOWN, pygame.MOUSEBUTTONUP
FINGER = [(0, *finger(pygame.FINGERDOWN, 200, 100)), (80, *finger(pygame.FINGERUP, 200, 100))]
STREAMS = {
    "fingers only": FINGER,
    "a mouse that says it is a touch": [
        FINGER[0],
        (0, *mouse(DOWN, 200, 100, touch=True)),
        FINGER[1],
        (80, *mouse(UP, 200, 100, touch=True)),
    ],
    "a mouse at once that does not say so": [
        FINGER[0],
        (1, *mouse(DOWN, 201, 100)),
        FINGER[1],
        (81, *mouse(UP, 201, 100)),
    ],
    "a mouse after the lift": [*FINGER, (300, *mouse(DOWN, 200, 101)), (301, *mouse(UP, 200, 101))],
    "a mouse alone": [(0, *mouse(DOWN, 200, 100)), (80, *mouse(UP, 200, 100))],
}


@pytest.mark.parametrize("name", STREAMS)
def test_one_touch_is_one_press(name):
    events = read(STREAMS[name])
    assert [type(event) for event in events] == [PointerDown, PointerUp]
    assert (events[0].x, events[0].y) == pytest.approx((200, 100))


def test_a_mouse_far_from_the_finger_or_long_after_it_counts():
    # 12 mm at 4 px/mm are 48 px.
    for when, x in ((100, 260), (900, 200)):
        events = read([*FINGER, (when, *mouse(DOWN, x, 100)), (when + 1, *mouse(UP, x, 100))])
        assert [type(event) for event in events[2:]] == [PointerDown, PointerUp]


def test_two_fingers_have_two_pointers_and_numbers_are_used_again():
    stream = [
        (0, *finger(pygame.FINGERDOWN, 10, 10, 100)),
        (5, *finger(pygame.FINGERDOWN, 90, 10, 200)),
        (10, *finger(pygame.FINGERMOTION, 95, 10, 200)),
        (15, *finger(pygame.FINGERUP, 10, 10, 100)),
        (20, *finger(pygame.FINGERDOWN, 50, 10, 300)),
    ]
    assert [event.pointer for event in read(stream)] == [1, 2, 2, 1, 1]


def test_only_the_left_button_presses():
    assert read([(0, *mouse(DOWN, 1, 1, button=3)), (1, *mouse(UP, 1, 1, button=3))]) == []


def key(code, mod=0):
    return {"key": code, "mod": mod, "unicode": "", "scancode": 0}


@pytest.mark.parametrize(
    ("code", "mod", "expected"),
    [
        (pygame.K_RETURN, 0, Key("enter")),
        (pygame.K_KP_ENTER, 0, Key("enter")),
        (pygame.K_TAB, pygame.KMOD_LSHIFT, Key("tab", shift=True)),
        (pygame.K_z, pygame.KMOD_LCTRL, Key("z", ctrl=True)),
        (pygame.K_PAGEDOWN, 0, Key("page down")),
        (pygame.K_KP4, 0, Key("left")),
    ],
)
def test_keys_have_names(code, mod, expected):
    assert read([(0, pygame.KEYDOWN, key(code, mod))]) == [expected]


def test_a_figure_of_the_number_block_comes_as_text_only():
    stream = [(0, pygame.KEYDOWN, key(pygame.K_KP4, pygame.KMOD_NUM)), (0, pygame.TEXTINPUT, {"text": "4"})]
    assert read(stream) == [Text("4")]


def test_a_held_key_repeats_and_says_so():
    down = (0, pygame.KEYDOWN, key(pygame.K_LEFT))
    up = (0, pygame.KEYUP, key(pygame.K_LEFT))
    assert [event.repeat for event in read([down, down, up, down])] == [False, True, False]


def test_the_window_tells_of_itself():
    stream = [
        (0, pygame.WINDOWSIZECHANGED, {"x": 800, "y": 600}),
        (0, pygame.WINDOWEXPOSED, {}),
        (0, pygame.WINDOWFOCUSLOST, {}),
        (0, pygame.DROPFILE, {"file": "boat-hook.toml"}),
        (0, pygame.QUIT, {}),
    ]
    assert read(stream) == [Resized(800, 600), Exposed(), FocusLost(), FileDropped(Path("boat-hook.toml")), Quit()]


def test_the_wheel_scrolls():
    assert read([(0, pygame.MOUSEWHEEL, {"x": 0, "y": 2, "flipped": False})])[0] == Wheel(0, 0, 2, 0)


def test_moving_the_mouse_is_told():
    assert read([(3, *mouse(pygame.MOUSEMOTION, 5, 6))]) == [PointerMove(0, 5, 6, 3)]


def test_a_window_opens_no_larger_than_the_desktop_and_shows_what_changed():
    window = Window("Tiltbench", size=(5000, 5000))
    desktop = pygame.display.get_desktop_sizes()[0]
    assert window.size[0] <= desktop[0]
    assert window.size[1] <= desktop[1]
    assert window.notices == ()
    window.canvas.box(Rect(0, 0, 20, 20), fill="#C81E1E")
    window.present(window.canvas.paint())
    assert pygame.display.get_surface().get_at((5, 5))[:3] == (200, 30, 30)
    window.close()


def test_a_missing_font_is_told_and_the_window_opens_all_the_same(tmp_path):
    window = Window("Tiltbench", size=(300, 200), fonts=tmp_path)
    assert [notice.values["file"] for notice in window.notices] == ["Andika-Regular.ttf", "Andika-Bold.ttf"]
    window.close()


def test_without_a_display_it_says_so_in_one_sentence():
    program = (
        "from lab.ui.pygame_window import NoDisplay, Window\n"
        "try:\n    Window('x')\nexcept NoDisplay as none:\n    print('none:', none)\n"
    )
    environment = {name: value for name, value in os.environ.items() if name not in ("DISPLAY", "WAYLAND_DISPLAY")}
    environment["SDL_VIDEODRIVER"] = "x11"
    done = subprocess.run([sys.executable, "-c", program], env=environment, capture_output=True, text=True, timeout=60)
    assert done.stdout.startswith("none: no window can be opened: ")
    assert done.stderr == ""
