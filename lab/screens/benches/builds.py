"""The dialog behind *Builds*: save this one under a name, open another."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lab.outline import Node
from lab.screens.screen import BuildEntry
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.outcomes import Pressed
from lab.ui.paragraph import draw_middle, text_height
from lab.ui.widgets.arrange import Column, Row, Spacer
from lab.ui.widgets.button import Button
from lab.ui.widgets.dialog import Dialog
from lab.ui.widgets.label import Label
from lab.ui.widgets.widget import Mood, Plain, Spot, Widget, states

BUILDS_DIALOG, BUILD_NAME, SAVE, BUILDS_DONE = "builds-dialog", "build-name", "build-save", "builds-done"
OPEN_PREFIX = "open-"
LONGEST_NAME = 40


@dataclass(frozen=True, slots=True)
class NameField(Plain):
    """A line that is typed into; the screen changes the text, the field only shows it."""

    key: str
    name: str
    text: str

    def least_width(self, look: Look) -> float:
        """Room for a short name."""
        return look.sizes.px(200)

    def natural_width(self, look: Look) -> float:
        """Room for a usual name."""
        return look.sizes.px(280)

    def height(self, look: Look, width: float) -> float:
        """A target, or what its text takes."""
        inner = max(1.0, width - 2 * look.sizes.px(14))
        return max(look.sizes.target, text_height(look, f"{self.text}|", inner, "body") + look.sizes.px(12))

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the box, the text and, where one types, the stroke after it."""
        theme, sizes = look.theme, look.sizes
        canvas.box(rect, fill=theme.panel, outline=theme.ink, width=sizes.stroke, radius=sizes.radius)
        inner = rect.inset(sizes.px(14), 0)
        draw_middle(canvas, look, self._shown(mood), inner, align="start")

    def spots(self, look: Look, rect: Rect) -> tuple[Spot, ...]:
        """One: pressing it brings the typing here."""
        return (Spot(key=self.key, rect=rect, effect=Pressed(self.key)),)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """Read out as a button whose value is the text."""
        flags = states(focused=mood.focused == self.key)
        return Node(self.key, "button", self.name, value=self.text, state=flags, bounds=rect, actions=("press",))

    def _shown(self, mood: Mood) -> str:
        return f"{self.text}|" if mood.focused == self.key else self.text


def typed_into(name: str, text: str) -> str:
    """The name with characters typed after it: one line, no longer than a file name may well be."""
    return (name + "".join(letter for letter in text if letter.isprintable()))[:LONGEST_NAME]


def builds_dialog(look: Look, name: str, builds: Sequence[BuildEntry]) -> Dialog:
    """name: under which this build would be saved.  builds: what can be opened."""
    say = look.words.say
    title = say("Save this build as")
    save = Button(SAVE, say("Save"), enabled=bool(name.strip()))
    saving = Column(
        (
            Label("save-title", title, style="strong"),
            Row((NameField(BUILD_NAME, title, name), save), weights=(1.0, 0.0)),
        )
    )
    entries: tuple[Widget, ...] = tuple(
        Button(f"{OPEN_PREFIX}{number}", look.words.content(build.title), kind="quiet")
        for number, build in enumerate(builds)
    )
    opening: tuple[Widget, ...] = (Label("open-title", say("Open another"), style="strong"), *_in_pairs(entries))
    if not entries:
        opening = (Label("open-none", say("There is no other build yet."), color="soft"),)
    done = Button(BUILDS_DONE, say("Close"), kind="plain")
    return Dialog(BUILDS_DIALOG, say("Builds"), children=(saving, Column(opening)), buttons=(done,), width=620.0)


def _in_pairs(entries: tuple[Widget, ...]) -> list[Widget]:
    if len(entries) % 2:
        entries = (*entries, Spacer())
    return [Row(entries[index : index + 2]) for index in range(0, len(entries), 2)]


def opened(key: str, builds: Sequence[BuildEntry]) -> BuildEntry | None:
    """The build whose button has this key; None for any other key."""
    number = key.removeprefix(OPEN_PREFIX)
    if not key.startswith(OPEN_PREFIX) or not number.isdigit() or int(number) >= len(builds):
        return None
    return builds[int(number)]
