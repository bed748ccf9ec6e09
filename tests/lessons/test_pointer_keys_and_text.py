"""Each shipped lesson played to its end three times: by pointer alone, by keys alone, and as text.

The three records agree in everything but their ids, the clock and the seconds taken.
"""

import io
from collections.abc import Callable
from dataclasses import asdict, dataclass, replace
from typing import Any

import pytest

import lab
from lab.app.paths import find_paths
from lab.app.shelf import shelf_of
from lab.attempts import Attempt, attempt_of
from lab.lesson import Answered, read_lesson
from lab.lesson.forms import Choice, Numbers, from_si
from lab.outline.words import Words
from lab.terminal.lesson_text import play
from lab.ui.events import Text

SEED = 4711
SHELF = shelf_of(find_paths())
NAMES = [path.stem for path in SHELF.files()]
#: Where a finger is dragged to, as a share of the picture's width; how sure.  By question, in turn.
PLACES = (0.3, 0.62, 0.75)
SURE = ("guess", "fairly", "certain")
#: Longer than any fall or swing takes to come to rest.
REST_S = 30.0


@dataclass(frozen=True)
class Said:
    """What one question is answered with: an option's key, or the numbers as the screen showed them."""

    given: tuple[str, ...]
    sure: str
    hints: int


def _watch(pilot: Any) -> None:
    """Look on until it has come to rest and is explained."""
    for _ in range(round(REST_S / 0.25)):
        if pilot.lab._room._sitting.run.phase == "explain":
            return
        pilot.wait(0.25)


def _asked(pilot: Any) -> Any:
    return pilot.lab._room._sitting.run.asked


def _sitting_done(pilot: Any) -> bool:
    return bool(pilot.lab._room._sitting.run.phase == "finished")


def _fields(asked: Any) -> tuple[str, ...]:
    """The keys of the number fields of an answer."""
    if isinstance(asked.form, Numbers):
        return tuple(f"{asked.kind}-{place + 1}" for place in range(len(asked.form.numbers)))
    return (asked.kind,)


def _figures(asked: Any, number: int) -> tuple[str, ...]:
    """Numbers to type: now what is right, now half of it; as a screen shows them."""
    truth = asked.truth if isinstance(asked.truth, tuple) else (asked.truth,)
    forms = asked.form.numbers if isinstance(asked.form, Numbers) else (asked.form,)
    return tuple(
        f"{from_si(form.quantity, each * (1.0, 0.5)[number % 2], asked.units):.{form.decimals}f}"
        for form, each in zip(forms, truth, strict=True)
    )


def _by_pointer(pilot: Any) -> list[Said]:
    """Play with taps and drags; returns what was said, for the other two to say again."""
    said = []
    for number in range(len(read_lesson(SHELF.file(_asked(pilot).lesson)).questions)):
        asked = _asked(pilot)
        hints = number % 2 if asked.hints else 0
        if hints:
            pilot.press("hint")
        if isinstance(asked.form, Choice):
            given = (asked.form.keys[number % len(asked.form.keys)],)
            pilot.press(f"{asked.kind}.{given[0]}")
        elif asked.kind == "place":
            x, _, width, _ = pilot.node("picture").bounds
            start = pilot.middle("finger")
            pilot.drag(start, (x + PLACES[number % 3] * width, start[1]))
            given = (pilot.node("place").value,)
        else:
            for key, figures in zip(_fields(asked), _figures(asked, number), strict=True):
                pilot.press(key)
                for figure in figures.lstrip("-"):
                    pilot.press(f"keypad.{figure}")
                if figures.startswith("-"):
                    pilot.press("keypad.sign")
                pilot.press("keypad.done")
            given = tuple(pilot.node(key).value for key in _fields(asked))
        pilot.press(f"sure.{SURE[number % 3]}")
        pilot.press("lock")
        _watch(pilot)
        pilot.press("next")
        said.append(Said(given, SURE[number % 3], hints))
    assert _sitting_done(pilot)
    return said


def _by_keys(pilot: Any, said: list[Said]) -> None:
    for answer in said:
        asked = _asked(pilot)
        for _ in range(answer.hints):
            pilot.tab_to("hint")
            pilot.key("enter")
        if isinstance(asked.form, Choice):
            _choose(pilot, f"{asked.kind}.{answer.given[0]}")
        elif asked.kind == "place":
            _nudge(pilot, answer.given[0])
        else:
            for key, shown in zip(_fields(asked), answer.given, strict=True):
                pilot.tab_to(key)
                pilot.lab.handle(Text(f"{_number(shown):.9g}"))
                pilot.key("enter")
                assert pilot.node(key).value == shown
        _choose(pilot, f"sure.{answer.sure}")
        pilot.tab_to("lock")
        pilot.key("enter")
        _watch(pilot)
        pilot.tab_to("next")
        pilot.key("enter")
    assert _sitting_done(pilot)


def _nudge(pilot: Any, given: str) -> None:
    """Move the finger by arrow keys to a place as the screen shows it."""
    asked, wanted = _asked(pilot), _number(given)
    pilot.tab_to("finger")
    for _ in range(2000):
        now = pilot.node("place").value
        at = _number(now) if now[0] != "?" else asked.units.from_m((asked.left_m + asked.right_m) / 2)
        if now == given:
            break
        pilot.key("right" if wanted > at else "left", shift=abs(wanted - at) > 6)
    assert pilot.node("place").value == given


def _number(shown: str) -> float:
    return float("".join(shown.replace("\N{MINUS SIGN}", "-").split()[:-1]))


def _choose(pilot: Any, option: str) -> None:
    """Go to a row of choices by Tab and along it by arrows; Space takes the one that has the focus."""
    row, _, _ = option.partition(".")
    options = [node.key for node in pilot.node(row).children]
    for _ in range(80):
        if any("focused" in pilot.node(key).state for key in (row, *options)):
            break
        pilot.key("tab")
    for _ in range(2 * len(options)):
        if "focused" in pilot.node(option).state:
            break
        pilot.key("right")
    if "selected" not in pilot.node(option).state:
        pilot.key("space")
    assert "selected" in pilot.node(option).state


def _by_text(name: str, by_pointer: list[Attempt], learner: str) -> list[Attempt]:
    """Type what the screen recorded as given: its own words are understood, too."""
    lines = []
    for attempt in by_pointer:
        lines += ["hint"] * attempt.hints + [attempt.given, str(attempt.sure), "next"]
    kept: list[Attempt] = []

    def keep(answer: Answered) -> None:
        kept.append(attempt_of(asdict(answer), learner=learner, version=lab.__version__))

    run = play(
        read_lesson(SHELF.file(name)),
        seed=SEED,
        stdin=io.StringIO("\n".join(lines) + "\n"),
        stdout=io.StringIO(),
        words=Words(),
        keep=keep,
    )
    assert run.phase == "finished"
    return kept


def _comparable(attempts: Any) -> list[Attempt]:
    return [replace(attempt, id="", made_at="", seconds=0.0, learner="") for attempt in attempts]


@pytest.mark.parametrize("name", NAMES)
def test_a_lesson_leaves_the_same_record_by_pointer_by_keys_and_as_text(
    name: str, make_pilot: Callable[..., Any], monkeypatch: pytest.MonkeyPatch, tmp_path: Any
):
    monkeypatch.setenv("TILTBENCH_HOME", str(tmp_path / "pointer"))
    pointer = make_pilot()
    pointer.lab.open_lesson(name, seed=SEED)
    said = _by_pointer(pointer)

    monkeypatch.setenv("TILTBENCH_HOME", str(tmp_path / "keys"))
    keys = make_pilot()
    keys.lab.open_lesson(name, seed=SEED)
    _by_keys(keys, said)

    by_pointer = _comparable(pointer.attempts())
    text = _by_text(name, by_pointer, "34679CF7")
    assert len(by_pointer) == len(said)
    assert all(attempt.locked for attempt in by_pointer)
    assert _comparable(keys.attempts()) == by_pointer
    assert _comparable(text) == by_pointer
