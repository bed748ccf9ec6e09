"""What the parts of a question's screen are made from: the model, how it looks, in which units."""

from __future__ import annotations

from dataclasses import dataclass

from lab.files import UNITS, UnitSystem
from lab.lesson import Asked, Explanation, Message, Run, render
from lab.lesson.forms import Numbers
from lab.scenes.readings import Readings
from lab.screens.screen import QuestionModel
from lab.simulation.benches.finger import FingerTool
from lab.ui.look import Look

FINGER, SURE = "finger", "sure"
LOCK, HINT, SKIP, GO_ON, AGAIN, NEXT, CONTRAST = "lock", "hint", "skip", "go-on", "again", "next", "contrast"
"""Keys of what can be done."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scope:
    """One showing of a question.

    dragging: whether something of the picture is being dragged just now.
    draft: the numbers of an answer that are set so far, in SI, where it takes several; () before the first.
    """

    look: Look
    model: QuestionModel
    dragging: bool = False
    draft: tuple[float | None, ...] = ()

    @property
    def run(self) -> Run:
        """Where the learner is."""
        return self.model.run

    @property
    def asked(self) -> Asked:
        """The question."""
        return self.run.asked

    @property
    def told(self) -> Explanation | None:
        """What is explained, from lock-in on."""
        return self.run.explanation

    @property
    def units(self) -> UnitSystem:
        """The units that are shown: those chosen for the whole lab, else the question's own."""
        return UNITS[self.model.setting.units] if self.model.setting.units else self.asked.units

    @property
    def readings(self) -> Readings:
        """Writes quantities."""
        return Readings(words=self.look.words, units=self.units)

    @property
    def finger(self) -> FingerTool | None:
        """The tool on the finger, None where a bar hangs."""
        return self.model.bench if isinstance(self.model.bench, FingerTool) else None

    @property
    def numbers(self) -> tuple[float | None, ...]:
        """The numbers of the answer, in SI; None for those that are not set yet."""
        value, form = self.run.value, self.asked.form
        if isinstance(value, tuple):
            return value
        if isinstance(form, Numbers):
            return self.draft or (None,) * len(form.numbers)
        return (value if isinstance(value, float) else None,)

    @property
    def place_m(self) -> float | None:
        """The place that was given, None before."""
        return self.run.value if isinstance(self.run.value, float) else None

    @property
    def decimals(self) -> int:
        """Figures after the point of a place, in the units that are shown."""
        own = self.units.name == self.asked.units.name
        return self.asked.decimals if own else self.readings.fineness.length

    @property
    def step(self) -> float:
        """The step of − and + in the units that are shown: the last figure."""
        return float(10.0**-self.decimals)

    def text(self, sentence: Message) -> str:
        """A sentence of the lesson in words."""
        return render(sentence, self.look.words, self.units)

    def say(self, template: str, /, **values: str) -> str:
        """A sentence of the screen."""
        return self.look.words.say(template, **values)

    def shown_place(self, place_m: float) -> str:
        """A place as it is written, with its unit; as finely as any place where the answer is none."""
        decimals = self.decimals if self.asked.form.quantity == "length" else self.readings.fineness.length
        number = self.look.words.number(self.units.from_m(place_m), decimals)
        return self.say("{number} {unit}", number=number, unit=self.units.length_word)

    def shown_weight(self, mass_kg: float) -> str:
        """A weight as an answer to this question is written, with its unit."""
        own = self.units.name == self.asked.units.name
        decimals = self.asked.decimals if own else self.readings.fineness.weight
        number = self.look.words.number(self.units.from_kg(mass_kg), decimals)
        return self.say("{number} {unit}", number=number, unit=self.units.weight_word)

    def snapped_m(self, place_m: float) -> float:
        """The place on the screen's own figures that is nearest, within the tool."""
        shown = round(self.units.from_m(place_m), self.decimals)
        return min(max(self.units.to_m(shown), self.asked.left_m), self.asked.right_m)
