"""What a learner's words or figures mean."""

from __future__ import annotations

import re
from dataclasses import dataclass

from lab.files import UNITS
from lab.lesson.asked import Answer, Asked, Side
from lab.lesson.messages import Amount, Message, length, message, msg

LONGEST_ANSWER = 60
"""Characters; nobody needs more for a place or a side, and a pasted book is not searched for one."""

_NUMBER = re.compile(
    r"(?:at|about|around)?\s*"
    r"(?P<figures>[+\-\u2212]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+))"
    r"\s*(?P<unit>[a-z\"]*)\.?"
)
_UNIT_M = {
    "mm": 0.001, "cm": 0.01, "m": 1.0,
    "in": UNITS["lb-in"].to_m(1.0), "inch": UNITS["lb-in"].to_m(1.0), "inches": UNITS["lb-in"].to_m(1.0),
    '"': UNITS["lb-in"].to_m(1.0),
}  # fmt: skip

_SHORT_SIDES: tuple[Side, ...] = ("left", "right", "level")
_LEVEL_WORDS = frozenset(
    ("stay", "stays", "balance", "balances", "balanced", "neither", "even", "equal", "same", "flat", "straight")
)
_FILLERS = frozenset(("the", "it", "a", "side", "end", "goes", "go", "down", "drops", "drop", "i", "think", "is"))

_SIDE_AGAIN = msg("I could not read that. Say left, right or level: l, r or lev will do.")
_PLACE_AGAIN = msg("I could not read that as a place. Type a number, for example {example}.")
_TOO_FAR = msg("That is far off. It lies between {left} and {right}: type a place there, for example {example}.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Understood:
    """An answer that was understood.  value: a side, or metres along.  shown: the same, to say back."""

    value: Answer
    shown: Message


@dataclass(frozen=True, slots=True, kw_only=True)
class Unclear:
    """An answer that was not understood.  message: asks again, kindly, with an example."""

    message: Message


def understand(asked: Asked, text: str) -> Understood | Unclear:
    """Return what `text` means as an answer to `asked`; never raises, whatever was typed."""
    said = text.strip().casefold()
    if asked.kind == "side":
        side = side_meant(said)
        return (
            Unclear(message=message(_SIDE_AGAIN)) if side is None else Understood(value=side, shown=shown(asked, side))
        )
    return _place(asked, said)


def shown(asked: Asked, value: Answer) -> Message:
    """Return an answer as it is said back to the learner."""
    if isinstance(value, float):
        return message(msg("{place}"), place=length(value, decimals=asked.decimals))
    return message({"left": msg("left"), "right": msg("right"), "level": msg("level")}[value])


def side_meant(said: str) -> Side | None:
    """Return the side that words mean, whole or shortened; None where they name none, or two."""
    if len(said) > LONGEST_ANSWER:
        return None
    words = [word for word in re.findall(r"[^\s.,!?]+", said) if word not in _FILLERS]
    meant = {_side_of_word(word) for word in words}
    return meant.pop() if len(meant) == 1 else None


def _side_of_word(word: str) -> Side | None:
    if word in _LEVEL_WORDS:
        return "level"
    # One letter is left, which a learner means far more often than level.
    found = [side for side in _SHORT_SIDES if side.startswith(word)]
    return "left" if word == "l" else found[0] if len(found) == 1 else None


def _place(asked: Asked, said: str) -> Understood | Unclear:
    example = _example(asked)
    found = _NUMBER.fullmatch(said) if len(said) <= LONGEST_ANSWER else None
    unit = "" if found is None else found["unit"]
    if found is None or (unit and unit not in _UNIT_M):
        return Unclear(message=message(_PLACE_AGAIN, example=example))
    number = float(found["figures"].replace(",", ".").replace("\u2212", "-"))
    value_m = number * _UNIT_M[unit] if unit else asked.units.to_m(number)
    body_m = asked.right_m - asked.left_m
    # Past an end is an answer like any other (some ways of thinking land there); a body's length past it is a slip.
    if not asked.left_m - body_m <= value_m <= asked.right_m + body_m:
        left, right = length(asked.left_m), length(asked.right_m)
        return Unclear(message=message(_TOO_FAR, left=left, right=right, example=example))
    # A nanometre is far below any tolerance; without it 56 mm and 5.6 cm would differ in their last bit.
    value_m = round(value_m, 9)
    return Understood(value=value_m, shown=shown(asked, value_m))


def _example(asked: Asked) -> Amount:
    """Return a place that shows how to write one and gives nothing away: the far end, which is never the answer."""
    return length(asked.right_m)
