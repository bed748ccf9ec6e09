"""What a learner may say of the changed scene before it is shown: which of some options, the truth by the mechanics.

Whoever commits to an outcome beforehand sees it better, most of all one that surprises.
Source: Miller, Lasry, Chu and Mazur 2013, Physical Review ST: Physics Education Research 9(2); Brod 2021.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from lab.lesson.asked import Asked
from lab.lesson.contrast import Contrast
from lab.lesson.forms import Answer, Choice, Numbers, Option
from lab.lesson.kinds import kind_of
from lab.lesson.kinds.side import SIDE_FORM
from lab.lesson.matching import fits, way_names
from lab.lesson.messages import Message, message, msg
from lab.mechanics import MechanicsError, moment_sum

MARK = "+contrast"
"""Follows the name of a question in the record where its changed scene was foretold."""

KIND = "contrast"
"""The kind that such an answer has in the record."""

ALIKE_SHARE = 0.1
"""Of the tolerance: numbers that differ by less come out the same, and nobody could see it otherwise."""

Beside = Literal["less", "same", "more"]

_FILLERS = frozenset(("the", "it", "to", "at", "a", "farther", "further", "i", "think", "place", "then", "is", "would"))
_AGAIN = message(msg("I could not read that. Say one of those that are named."))


@dataclass(frozen=True, slots=True, kw_only=True)
class Foretelling:
    """What can be said beforehand of a changed scene.

    prompt: what is asked.  form: the options.  truth: the key of the one that comes out.
    """

    prompt: Message
    form: Choice
    truth: str

    def ways(self, asked: Asked, contrast: Contrast, said: str) -> tuple[str, ...]:
        """Names of the ways of thinking that an answer fits, where the changed scene is asked like the question was."""
        if asked.form is not self.form and self.form != asked.form:
            return ()
        changed = replace(asked, build=contrast.build, truth=self.truth)
        return way_names(fits(changed, said))


def foretelling(asked: Asked, contrast: Contrast | None) -> Foretelling | None:
    """Return what can be said of a contrast beforehand; None where nothing is changed, or it has no answer."""
    if contrast is None:
        return None
    if asked.kind in ("side", "weight", "arm"):
        # Of a weight or an arm too it is the end that goes down which is seen: what was hung hangs there still.
        return Foretelling(prompt=message(_SIDE), form=SIDE_FORM, truth=contrast.goes)
    try:
        outcome, was = _outcome(asked, contrast)
    except MechanicsError:
        return None
    if isinstance(asked.form, Choice):
        if not isinstance(outcome, str):
            return None
        return Foretelling(prompt=message(_CHOICES.get(asked.kind, _CHOICE)), form=asked.form, truth=outcome)
    beside = _beside(_first(outcome), _first(was), within=ALIKE_SHARE * (asked.tolerance or 0.0))
    prompt, texts = _words(asked)
    return Foretelling(prompt=prompt, form=_form(texts), truth=beside)


_SIDE = msg("Which end goes down then, if any?")
_CHOICE = msg("What would it be then?")
_CHOICES: dict[str, str] = {"attitude": msg("How would it hang then?"), "tank": msg("Which would it be then?")}
"""By the kind of question."""
_PLACE_TEXTS: dict[Beside, str] = {
    "less": msg("farther left"),
    "same": msg("the same place"),
    "more": msg("farther right"),
}
_SIZE_TEXTS: dict[Beside, str] = {"less": msg("less"), "same": msg("the same"), "more": msg("more")}


def _outcome(asked: Asked, contrast: Contrast) -> tuple[Answer, Answer]:
    """What would be right of the changed scene, and what it is to be compared with."""
    if contrast.outcome is not None:
        return contrast.outcome, asked.truth
    if asked.kind == "shift":
        # It is where the balance point ends up that is seen.
        before_m = moment_sum(asked.build.all_parts).balance_point_m[0]
        return contrast.balance_point_m, before_m + _first(asked.truth)
    return kind_of(asked.task).truth(replace(asked.task, build=contrast.build)), asked.truth


def _words(asked: Asked) -> tuple[Message, dict[Beside, str]]:
    if asked.kind in ("place", "shift"):
        return message(msg("Where would it balance then?")), _PLACE_TEXTS
    if isinstance(asked.form, Numbers):
        return message(msg("What would the {name} read then?"), name=asked.form.numbers[0].name), _SIZE_TEXTS
    return message(msg("Would it be more or less then?")), _SIZE_TEXTS


def _form(texts: dict[Beside, str]) -> Choice:
    options = tuple(Option(key=key, text=text, spoken=frozenset((text.split()[-1],))) for key, text in texts.items())
    return Choice(options=options, fillers=_FILLERS, again=_AGAIN)


def _first(value: Answer) -> float:
    number = value[0] if isinstance(value, tuple) else value
    if not isinstance(number, float):
        raise TypeError(f"a number is compared, not {value!r}")
    return number


def _beside(value: float, other: float, *, within: float) -> Beside:
    if abs(value - other) <= within:
        return "same"
    return "more" if value > other else "less"
