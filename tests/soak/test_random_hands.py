"""Hands that do anything at all, on every screen: nothing breaks, nothing sticks, nothing grows."""

import random
import tracemalloc
from pathlib import Path
from typing import Any

import pytest

from lab.lesson import lesson_files
from lab.outline.node import walk
from lab.screens.intents import Go
from lab.simulation.benches.catalogue import BENCHES
from lab.ui.events import (
    Event,
    Exposed,
    FocusLost,
    Key,
    PointerCancel,
    PointerDown,
    PointerMove,
    PointerUp,
    Resized,
    Text,
    Wheel,
)

KEYS = (
    "tab", "enter", "space", "escape", "left", "right", "up", "down", "home", "end", "page up", "page down",
    "delete", "backspace", "z", "y", "a", "5", "-", ".",
)  # fmt: skip
SIZES = ((1280, 720), (1024, 600), (1080, 1920), (640, 480))
LESSONS = sorted(path.stem for path in lesson_files([Path(__file__).parents[2] / "lessons"]))
PLACES = (
    *(Go(place="lesson", name=name) for name in LESSONS),
    *(Go(place=place) for place in ("probe", "lessons", "learner", "page")),
)
BENCH_PLACES = tuple(Go(place="build", name=name) for name in BENCHES)
#: Events between two looks at whether the hands have left the place that is tried.
STAY = 60
#: Growth that is allowed: caches fill, and a thousand undo steps are kept on purpose.
MOST_GROWTH_BYTES = 24_000_000


def _place(pilot: Any, hand: random.Random) -> tuple[float, float]:
    """Mostly on something that can be pressed, sometimes anywhere, sometimes outside."""
    width, height = pilot.lab.size
    pressable = [node for node in walk(pilot.outline) if node.actions]
    if pressable and hand.random() < 0.7:
        x, y, w, h = hand.choice(pressable).bounds
        return x + hand.random() * w, y + hand.random() * h
    return hand.uniform(-20, width + 20), hand.uniform(-20, height + 20)


def _event(pilot: Any, hand: random.Random) -> Event:
    x, y = _place(pilot, hand)
    pointer = hand.choice((0, 0, 0, 1, 2))
    chance = hand.random()
    if chance < 0.25:
        return PointerDown(pointer, x, y, pilot.now_ns // 1_000_000)
    if chance < 0.5:
        return PointerUp(pointer, x, y, pilot.now_ns // 1_000_000)
    if chance < 0.7:
        return PointerMove(pointer, x, y)
    if chance < 0.9:
        return Key(hand.choice(KEYS), shift=hand.random() < 0.2, ctrl=hand.random() < 0.1)
    rest: tuple[Event, ...] = (
        Wheel(x, y, hand.choice((-3.0, -1.0, 1.0, 3.0))),
        Text(hand.choice(("9", ".", "-", "x", "é", "\x00", "123456789"))),
        PointerCancel(pointer),
        FocusLost(),
        Exposed(),
        Resized(*hand.choice(SIZES)),
    )
    return hand.choice(rest)


def _play(pilot: Any, hand: random.Random, events: int) -> None:
    for number in range(events):
        pilot.lab.handle(_event(pilot, hand))
        if number % 3 == 0:
            pilot.wait(1 / 60)
        if number % 50 == 0:
            pilot.draw()


def _stay(pilot: Any, hand: random.Random, to: Go, events: int) -> None:
    """Play in one place: whoever leaves it is brought back, to a question of the lesson further on."""
    to = Go(place=to.place, name=to.name or (hand.choice(LESSONS) if to.place == "page" else ""))
    for _ in range(0, events, STAY):
        if pilot.has("to-saved"):
            _go(pilot, hand, to)
        _play(pilot, hand, STAY)


def _go(pilot: Any, hand: random.Random, to: Go) -> None:
    if to.place == "lesson":
        pilot.lab.open_lesson(to.name, seed=hand.randrange(1000))
        for _ in range(hand.randrange(8)):
            if pilot.has("skip"):
                pilot.press("skip")
    elif to.place == "probe":
        pilot.lab.open_probe(seed=hand.randrange(1000))
    else:
        pilot.lab._go(to)


def _can_still_be_left(pilot: Any) -> None:
    """Escape and Back lead home from wherever the hands ended up."""
    pilot.lab.handle(PointerCancel(0))
    pilot.lab.handle(FocusLost())
    for _ in range(12):
        pilot.key("escape")
        pilot.wait(0.1)
        if pilot.has("to-saved"):
            return
    raise AssertionError(f"stuck at {[node.key for node in walk(pilot.outline)]}")


@pytest.mark.parametrize("seed", range(3))
def test_a_thousand_random_events_break_nothing(seed: int, pilot: Any):
    _play(pilot, random.Random(seed), 1000)
    _can_still_be_left(pilot)


@pytest.mark.parametrize("to", PLACES[::4], ids=lambda to: f"{to.place} {to.name}")
def test_random_events_break_no_place_of_the_course(to: Go, pilot: Any):
    hand = random.Random(to.name)
    _stay(pilot, hand, to, 5 * STAY)
    _can_still_be_left(pilot)


@pytest.mark.parametrize("to", BENCH_PLACES, ids=lambda to: to.name)
def test_random_events_break_no_bench(to: Go, pilot: Any):
    hand = random.Random(to.name)
    _stay(pilot, hand, to, 5 * STAY)
    _can_still_be_left(pilot)


@pytest.mark.soak
@pytest.mark.parametrize("to", [*PLACES, *BENCH_PLACES], ids=lambda to: f"{to.place} {to.name}")
def test_ten_thousand_random_events_break_no_place(to: Go, pilot: Any):
    hand = random.Random(f"{to.place} {to.name}")
    _stay(pilot, hand, to, 10_000)
    _can_still_be_left(pilot)


@pytest.mark.soak
@pytest.mark.parametrize("to", BENCH_PLACES, ids=lambda to: to.name)
def test_a_hundred_thousand_random_events_break_no_bench(to: Go, pilot: Any):
    hand = random.Random(f"long {to.name}")
    _stay(pilot, hand, to, 100_000)
    _can_still_be_left(pilot)


@pytest.mark.soak
@pytest.mark.parametrize("seed", range(10))
def test_a_hundred_thousand_random_events_break_nothing_and_memory_stays_flat(seed: int, pilot: Any):
    hand = random.Random(1000 + seed)
    _play(pilot, hand, 10_000)
    tracemalloc.start()
    _play(pilot, hand, 10_000)
    before, _ = tracemalloc.get_traced_memory()
    _play(pilot, hand, 80_000)
    after, _ = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    _can_still_be_left(pilot)
    assert after - before < MOST_GROWTH_BYTES
