"""What kinds whose answers are chosen have in common: the form, and how an answer is told."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import partial
from typing import TypeVar

from lab.files import Build
from lab.lesson.asked import Asked
from lab.lesson.contrast import HALF_AS_HEAVY, HEAVY, NO_WEIGHT, NOT_CUT, TWICE_AS_HEAVY, Contrast, weighed, weightless
from lab.lesson.explanation import Explanation
from lab.lesson.forms import Answer, Choice, Option
from lab.lesson.kinds.kind import Fit
from lab.lesson.messages import Message, Value, message, msg
from lab.lesson.ways.way import Way
from lab.mechanics import MechanicsError, MomentSum, moment_sum

Seen = TypeVar("Seen")

FILLERS = frozenset(
    ["the", "a", "it", "is", "i", "think", "goes", "go", "hangs", "flies", "comes", "first", "to", "of", "in"]
)
"""Words that say nothing about which option is meant."""


def choice_of(options: Sequence[Option], *, fillers: frozenset[str] = frozenset()) -> Choice:
    """The form of a choice.  Words that several options share tell nothing, and are fillers too."""
    counted = Counter(word for option in options for word in set(option.plain.casefold().split()))
    shared = frozenset(word for word, count in counted.items() if count > 1)
    names = listed([option.shown for option in options])
    return Choice(
        options=tuple(options),
        fillers=FILLERS | fillers | shared,
        again=message(msg("I could not read that. Say {names}."), names=names),
    )


def named_options(names: Iterable[str]) -> tuple[Option, ...]:
    """Options by a writer's own names."""
    return tuple(Option(key=name, text=msg("{name}"), values=(("name", name),)) for name in names)


def listed(names: Sequence[Message]) -> Message:
    """Names in a row: `a, b or c`."""
    if len(names) < 2:
        return names[0]
    if len(names) == 2:
        return message(msg("{first} or {last}"), first=names[0], last=names[1])
    return message(msg("{first}, {others}"), first=names[0], others=listed(names[1:]))


def choice_fits(
    ways: Iterable[Way[Seen, str]], seen: Seen, form: Choice, *, values: dict[str, Value] | None = None
) -> tuple[Fit, ...]:
    """What each way would choose; those with nothing to go by left out."""
    said = ((way, way.predict(seen)) for way in ways)
    return tuple(
        Fit(way=way.name, answer=key, sentence=way.sentence, values={**(values or {}), "given": form.shown(key)})
        for way, key in said
        if key is not None
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What a kind has to say of its truth: see `Explanation`."""

    happened: Message
    why: Message
    sum: MomentSum
    quotient: Message
    deciding: str
    working: tuple[Message, ...]
    contrast: Contrast | None


def chosen_explanation(
    asked: Asked, value: Answer, told: Told, *, idea: Message | None, ways: tuple[str, ...]
) -> Explanation:
    """How an option that was chosen is told."""
    right = value == asked.truth
    truth = asked.form.shown(asked.truth)
    headline = msg("As you said: {truth}") if right else msg("This time: {truth}")
    return Explanation(
        right=right,
        goes="level",
        headline=message(headline, truth=truth),
        going=told.happened,
        happened=told.happened,
        said=message(msg("You said {answer}."), answer=asked.form.shown(value)),
        sum=told.sum,
        quotient=told.quotient,
        deciding=told.deciding,
        idea=told.why if right else idea,
        why=told.why,
        ways=ways,
        contrast=told.contrast,
        working=told.working,
    )


_CHANGES: tuple[tuple[str, Callable[[Build, str], Build]], ...] = (
    (HALF_AS_HEAVY, partial(weighed, times=0.5)),
    (TWICE_AS_HEAVY, partial(weighed, times=HEAVY)),
    (NO_WEIGHT, weightless),
)
_CHANGES_OF_A_HOLE = ((NOT_CUT, weightless),)


def other_weight(
    asked: Asked, deciding: str, *, truth: Callable[[Build], Answer], then: str, still: str
) -> Contrast | None:
    """The scene with one weight changed that comes out another way; else one that comes out the same.

    truth: the answer for a changed scene.  then, still: templates with the {answer}; None where nothing can be changed.
    """
    build = asked.build
    cut = {part.name: part.cut for part in build.parts}
    ordered = dict.fromkeys(name for name in (deciding, *cut) if name in cut)
    changes = [(name, *change) for name in ordered for change in (_CHANGES_OF_A_HOLE if cut[name] else _CHANGES)]
    first: Contrast | None = None
    for name, label, change in changes:
        changed = change(build, name)
        try:
            answer = truth(changed)
        except MechanicsError:
            continue
        contrast = Contrast(
            label=message(label, part=name),
            build=changed,
            balance_point_m=moment_sum(changed.all_parts).balance_point_m[0],
            goes="level",
            happened=message(still if answer == asked.truth else then, answer=asked.form.shown(answer)),
        )
        if answer != asked.truth:
            return contrast
        first = first or contrast
    return first
