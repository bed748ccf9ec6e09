"""The question's screen: what can be done to it by pointer and by keys, and what it says."""

import re
from dataclasses import replace
from pathlib import Path

import pytest

from lab.lesson import (
    Again,
    Foresee,
    Hint,
    Lesson,
    LockIn,
    Next,
    Run,
    Set,
    Skip,
    Sure,
    Watched,
    lesson_files,
    read_lesson,
    start,
    step,
)
from lab.outline import Node, Words, find, spoken_lines
from lab.screens.gallery import GALLERY
from lab.screens.intents import Answer, Back, ChangeSetting, Go, RetrySave, ShowContrast
from lab.screens.questions.screen import QuestionScreen
from lab.screens.screen import Notice, QuestionModel, Setting
from lab.simulation.benches.bar_builds import hanging_bar_from_build
from lab.simulation.benches.finger_builds import finger_from_build
from lab.ui.events import Key, PointerDown, PointerMove, PointerUp
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.ops import TextOp
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

LESSONS = Path(__file__).parents[3] / "lessons"


def look_of(*, language: str = "en", size: tuple[int, int] = (1280, 720)) -> Look:
    words = Words(language)
    return Look(theme=THEMES["paper"], sizes=Sizes(*size, mirrored=words.mirrored), words=words)


class Pilot:
    """Drives the screen by key of its widgets, and lets its answers act on the run as the laboratory would."""

    def __init__(self, lesson: Lesson, index: int, *, language: str = "en") -> None:
        self.run: Run = start(lesson, seed=4711)
        while self.run.index < index:
            self.run, _ = step(self.run, Skip())
        self.screen = QuestionScreen(look_of(language=language))
        self.bench = self._bench()
        self.contrast = False
        self.notice: Notice | None = None
        self.show()

    def _bench(self):
        asked = self.run.asked
        if asked.kind == "side" and asked.pad_half_m == 0:
            return hanging_bar_from_build(asked.build)
        place = self.run.value if isinstance(self.run.value, float) else None
        return finger_from_build(asked.build, finger_at_m=place, pad_half_m=asked.pad_half_m)

    def show(self) -> None:
        bench = None if self.run.phase == "finished" else self.bench
        model = QuestionModel(
            setting=Setting(), run=self.run, bench=bench, previous=bench, contrast=self.contrast,
            learner="K7M4-QXRA", notice=self.notice,
        )  # fmt: skip
        self.screen.show(model)

    def act(self, *actions) -> None:
        for action in actions:
            phase = self.run.phase
            self.run, _ = step(self.run, action)
            if self.run.phase == "predict":
                self.bench = self._bench()
            elif self.run.phase == "watch" and phase == "predict":
                self.bench = self._bench().released()
        self.show()

    def node(self, key: str) -> Node:
        found = find(self.screen.outline(), key)
        assert found is not None, f"{key} is not on the screen"
        return found

    def there(self, key: str) -> bool:
        return find(self.screen.outline(), key) is not None

    def handle(self, event):
        outcome = self.screen.handle(event)
        for intent in outcome.intents:
            if isinstance(intent, Answer):
                self.act(intent.action)
        return outcome.intents

    def press(self, key: str):
        x, y, w, h = self.node(key).bounds
        at = (x + w / 2, y + h / 2)
        return (*self.handle(PointerDown(0, *at)), *self.handle(PointerUp(0, *at)))

    def keys(self, *names: str):
        return tuple(intent for name in names for intent in self.handle(Key(name)))


@pytest.fixture(scope="module")
def lessons() -> dict[str, Lesson]:
    return {path.stem: read_lesson(path) for path in lesson_files((LESSONS,))}


@pytest.fixture
def hook(lessons) -> Pilot:
    return Pilot(lessons["lopsided-tool"], 0)


@pytest.fixture
def oar(lessons) -> Pilot:
    return Pilot(lessons["lopsided-tool"], 1)


@pytest.fixture
def pinned(lessons) -> Pilot:
    return Pilot(lessons["bar-weighs-too"], 0)


def test_nothing_can_be_locked_in_before_a_place_and_how_sure_and_it_says_what_is_missing(hook):
    assert "disabled" in hook.node("lock").state
    assert "finger" in hook.node("why-not").name
    hook.press("place.more")
    assert "disabled" in hook.node("lock").state
    assert "sure" in hook.node("why-not").name
    hook.press("sure.fairly")
    assert "disabled" not in hook.node("lock").state
    assert not hook.there("why-not")


def test_a_disabled_lock_does_nothing(hook):
    assert hook.press("lock") == ()
    assert hook.run.phase == "predict"


def test_dragging_the_finger_gives_the_place_under_it_to_a_tenth_of_a_unit(hook):
    x, y, w, h = hook.node("finger").bounds
    start_x, level = x + w / 2, y + h / 2
    hook.handle(PointerDown(0, start_x, level))
    hook.handle(PointerMove(0, start_x - 60, level))
    hook.handle(PointerMove(0, start_x - 120, level - 40))
    hook.handle(PointerUp(0, start_x - 120, level - 40))
    shown = hook.run.asked.units.from_m(hook.run.value)
    assert shown == pytest.approx(round(shown, 1), abs=1e-12)
    # The finger began under the middle, at 20 cm, and the pointer went to its left.
    assert 5 < shown < 19
    assert hook.run.given == f"{shown:.1f} cm"
    moved = hook.node("finger").bounds
    assert moved[0] + moved[2] / 2 == pytest.approx(start_x - 120, abs=2)


def test_a_tap_on_the_rule_puts_the_finger_there(hook):
    x, y, w, h = hook.node("finger").bounds
    at = (x + w / 2 + 200, y + h + 10)
    hook.handle(PointerDown(0, *at))
    hook.handle(PointerUp(0, *at))
    moved = hook.node("finger").bounds
    assert moved[0] + moved[2] / 2 == pytest.approx(at[0], abs=2)


def test_a_tap_above_the_tool_moves_nothing(hook):
    x, y, w, _ = hook.node("picture").bounds
    hook.handle(PointerDown(0, x + w / 2, y + 5))
    hook.handle(PointerUp(0, x + w / 2, y + 5))
    assert hook.run.value is None


def test_the_arrow_keys_move_the_focused_finger_by_the_last_figure_and_by_ten_with_shift(hook):
    hook.screen._page.desk.focus("finger")
    before = hook.run.asked.units.from_m(hook.bench.finger_at_m)
    hook.keys("right")
    assert hook.run.asked.units.from_m(hook.run.value) == pytest.approx(before + 0.1)
    hook.handle(Key("left", shift=True))
    assert hook.run.asked.units.from_m(hook.run.value) == pytest.approx(before - 0.9)


def test_plus_and_minus_begin_where_the_finger_stands(hook):
    hook.press("place.more")
    assert hook.run.asked.units.from_m(hook.run.value) == pytest.approx(20.1)
    hook.press("place.less")
    hook.press("place.less")
    assert hook.run.asked.units.from_m(hook.run.value) == pytest.approx(19.9)


def test_a_typed_number_is_taken_as_it_is(hook):
    hook.press("place")
    hook.press("keypad.9")
    hook.press("keypad.done")
    assert hook.run.asked.units.from_m(hook.run.value) == pytest.approx(9.0)


def test_a_whole_question_goes_by_keys_alone(oar):
    for _ in range(30):
        if oar.screen._page.desk.focused == "side.left":
            break
        oar.keys("tab")
    oar.keys("right", "right")
    assert oar.run.value == "right"
    oar.keys("tab", "right")
    assert oar.run.sure == "fairly"
    for _ in range(10):
        if oar.screen._page.desk.focused == "lock":
            break
        oar.keys("tab")
    oar.keys("enter")
    assert oar.run.phase == "watch"
    assert "disabled" in oar.node("go-on").state


def test_left_stays_on_the_left_where_the_layout_is_mirrored(lessons):
    plain, mirrored = Pilot(lessons["lopsided-tool"], 1), Pilot(lessons["lopsided-tool"], 1, language="xr")
    for pilot in (plain, mirrored):
        assert pilot.node("side.left").bounds[0] < pilot.node("side.right").bounds[0]


def test_nobody_gets_on_while_it_moves(hook):
    hook.act(Set(value=0.1, given="10.0 cm"), Sure(how="guess"), LockIn())
    assert "disabled" in hook.node("go-on").state
    assert hook.press("go-on") == ()
    assert hook.keys("enter", "space") == ()
    assert hook.run.phase == "watch"


def test_once_it_has_settled_go_on_leads_to_the_explanation(hook):
    hook.act(Set(value=0.1, given="10.0 cm"), Sure(how="guess"), LockIn())
    hook.bench = hook.bench.at_end()
    hook.show()
    assert hook.press("go-on") == (Answer(action=Watched()),)
    assert hook.run.phase == "explain"


def test_a_right_answer_stays_up(hook):
    hook.act(Set(value=0.056, given="5.6 cm"), Sure(how="certain"), LockIn())
    assert not hook.bench.moving
    assert "disabled" not in hook.node("go-on").state


def test_the_explanation_says_what_happened_and_picks_out_the_deciding_row(hook):
    hook.act(Set(value=0.096, given="9.6 cm"), Sure(how="fairly"), LockIn(), Watched())
    spoken = spoken_lines(hook.screen.outline())
    assert "Too far right by 4.0 cm, heading" in spoken
    assert any("5.6 cm" in line for line in spoken)
    assert any("its middle" in line for line in spoken), "the idea that the answer fits"
    assert hook.node("row-pole").state == {"selected"}
    assert "you said 9.6 cm" in spoken
    assert "balances at 5.6 cm" in spoken


def test_the_changed_picture_is_asked_for_and_given_back(hook):
    hook.act(Set(value=0.096, given="9.6 cm"), Sure(how="fairly"), LockIn(), Watched())
    foreseen = Foresee(key="more", given="farther right")
    assert hook.press("foretell.more") == (Answer(action=foreseen), ShowContrast(shown=True))
    told = hook.run.explanation.contrast
    hook.bench = finger_from_build(told.build, finger_at_m=0.096, pad_half_m=0.003)
    hook.contrast = True
    hook.show()
    assert "You said: farther right." in hook.node("contrast.note").name
    assert hook.press("contrast") == (ShowContrast(shown=False),)
    hook.contrast = False
    hook.show()
    assert hook.press("contrast") == (ShowContrast(shown=True),)
    hook.contrast = True
    hook.show()
    balance = hook.bench.sum.balance_point_m[0] * 100
    assert f"balances at {balance:.1f} cm" in spoken_lines(hook.screen.outline())
    # The table goes on about the learner's own tool.
    assert any(
        "3 360".replace(" ", "\N{NARROW NO-BREAK SPACE}") in line for line in spoken_lines(hook.screen.outline())
    )


def test_again_and_next_and_skip_are_passed_on(hook):
    assert hook.press("skip") == (Answer(action=Skip()),)
    hook.act(Set(value="left", given="left"), Sure(how="guess"), LockIn(), Watched())
    assert hook.press("again") == (Answer(action=Again()),)
    assert hook.run.round == 1
    hook.act(Set(value="left", given="left"), Sure(how="guess"), LockIn(), Watched())
    assert hook.press("next") == (Answer(action=Next()),)


def test_hints_come_one_by_one_until_there_are_none(hook):
    for shown in range(1, 4):
        assert hook.press("hint") == (Answer(action=Hint()),)
        assert hook.there(f"hint-{shown}")
    assert "disabled" in hook.node("hint").state


def test_every_part_is_spoken_with_its_weight_and_place(pinned):
    spoken = spoken_lines(pinned.screen.outline())
    for part in pinned.bench.parts:
        weight, place = part.mass_kg * 1000, part.at_m[0] * 100
        assert any(line.startswith(f"{part.name}: {weight:.0f} g at {place:.1f} cm") for line in spoken)
    assert any(line.startswith("pivot at") for line in spoken)


def test_while_it_moves_the_row_of_progress_does_not_give_the_outcome_away(hook):
    hook.act(Set(value=0.056, given="5.6 cm"), Sure(how="certain"), LockIn())
    assert hook.run.marks[0] == "right"
    progress = next(widget for widget in _widgets(hook) if widget.__class__.__name__ == "Progress")
    assert progress.marks[0] == "now"


def _widgets(pilot: Pilot):
    def walk(placed):
        yield placed.widget
        for child in placed.children:
            yield from walk(child)

    for layer in pilot.screen._page.desk._scene.layers:
        yield from walk(layer)


def test_what_could_not_be_saved_stays_on_the_screen_with_a_way_to_try_again(hook):
    hook.notice = Notice(
        template="Your answer is not saved yet: {why}", values={"why": "disk full"}, kind="trouble", retry=True
    )
    hook.show()
    assert hook.node("notice-text").name == "Your answer is not saved yet: disk full"
    assert hook.press("notice-retry") == (RetrySave(),)


def test_units_go_round_and_the_given_numbers_with_them(hook):
    assert hook.press("units") == (ChangeSetting(name="units", value="kg-m"),)
    model = replace(hook.screen._model, setting=Setting(units="lb-in"))
    hook.screen.show(model)
    assert any("15.748 in long" in line for line in spoken_lines(hook.screen.outline()))


def test_escape_and_the_arrow_lead_back(hook):
    assert hook.keys("escape") == (Back(),)
    assert hook.press("back") == (Back(),)


def test_the_dialogs_open_and_close_by_key(hook):
    hook.press("looks")
    assert hook.there("looks-dialog")
    assert hook.press("setting-text_scale.2.0") == (ChangeSetting(name="text_scale", value=2.0),)
    hook.keys("escape")
    assert not hook.there("looks-dialog")
    hook.press("help")
    assert hook.there("help-dialog")
    hook.press("help-done")
    assert not hook.there("help-dialog")


def test_the_end_tells_what_was_done_the_ideas_that_came_up_and_the_code(hook):
    hook.act(Set(value=0.096, given="9.6 cm"), Sure(how="fairly"), LockIn(), Watched(), Next())
    # The screen only knows what it was shown.
    hook = Pilot(hook.run.lesson, 0)
    hook.act(Set(value=0.096, given="9.6 cm"), Sure(how="fairly"), LockIn(), Watched())
    hook.act(Next())
    hook.act(*(Skip() for _ in range(5)))
    assert hook.run.phase == "finished"
    spoken = " ".join(spoken_lines(hook.screen.outline()))
    assert "1 came out another way." in spoken
    assert "5 were left out." in spoken
    assert "its middle" in spoken
    assert "K7M4-QXRA" in spoken
    assert hook.press("to-lessons") == (Back(),)
    assert hook.press("to-build") == (Go(place="build"),)


def test_a_place_is_shown_to_its_usual_figures_where_a_weight_is_asked_for():
    (path,) = (path for path in lesson_files([LESSONS]) if path.stem == "limits")
    names = [question.name for question in read_lesson(path).questions]
    canvas = ListCanvas((1280, 720))
    GALLERY[f"limits-{names.index('back-into-limits') + 1}-asked"].make(look_of()).draw(canvas)
    (said,) = (op.text for op in canvas.ops if isinstance(op, TextOp) and op.text.startswith("balances at "))
    assert re.fullmatch(r"balances at \d+\.\d cm", said)


@pytest.mark.parametrize("index", [0, 2])
def test_a_number_given_to_a_question_that_is_skipped_is_none_of_the_next_ones(make_pilot, index):
    lab = make_pilot()
    lab.lab.open_lesson("two-scales", seed=4711)
    for _ in range(index):
        lab.press("skip")
    # A reading before a reading, and one place before two readings.
    lab.press("place.more" if lab.has("place.more") else "reading-1.more")
    lab.press("skip")
    assert [lab.node(f"reading-{scale}").value for scale in (1, 2)] == ["? g", "? g"]
