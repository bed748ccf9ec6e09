"""Ways of thinking about how a body hangs from a hook: which of its two ends comes down.

Each is a small function from what hangs on either side of the hook to the end it would say: "near" (the nose, or the
left wing), "far" (the tail, or the right wing), or "level".
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from lab.lesson.messages import msg
from lab.lesson.situation import SAME
from lab.lesson.ways.way import Way

End = Literal["near", "level", "far"]


@dataclass(frozen=True, slots=True, kw_only=True)
class HungLoad:
    """A part.  offset: how far from the hook along the axis that is asked about; below 0 at the near end."""

    weight: float
    offset: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FromHook:
    """Everything that hangs there."""

    loads: tuple[HungLoad, ...]


def moment(seen: FromHook) -> End:
    """Weight times offset on both sides: the truth, but for what is too little to be seen."""
    return _down([load.weight * load.offset for load in seen.loads])


def as_carried(seen: FromHook) -> End:
    """It hangs as it is carried, wherever the hook is."""
    return "level"


def weight_only(seen: FromHook) -> End:
    """The end with more weight on its side of the hook comes down."""
    return _down([load.weight * _sign(load.offset) for load in seen.loads])


def counts_pieces(seen: FromHook) -> End:
    """The end with more pieces on its side of the hook comes down."""
    return _down([_sign(load.offset) for load in seen.loads])


def distance_only(seen: FromHook) -> End:
    """The end that reaches farther from the hook comes down."""
    offsets = [load.offset for load in seen.loads]
    return _down([min(0.0, min(offsets)), max(0.0, max(offsets))])


def swapped(seen: FromHook) -> End:
    """The heavy end goes up."""
    return {"near": "far", "far": "near"}.get(moment(seen), "level")  # type: ignore[return-value]


def _down(turns: list[float]) -> End:
    total = sum(turns)
    if abs(total) <= SAME * sum(abs(turn) for turn in turns):
        return "level"
    return "far" if total > 0 else "near"


def _sign(offset: float) -> float:
    return 0.0 if offset == 0 else 1.0 if offset > 0 else -1.0


ATTITUDE_WAYS: tuple[Way[FromHook, End], ...] = (
    Way(name="moment", predict=moment, sentence=msg("It turns until its balance point is right below the cord.")),
    Way(
        name="as_carried",
        predict=as_carried,
        sentence=msg("It hangs level only where the cord is right over its balance point."),
    ),
    Way(
        name="weight_only",
        predict=weight_only,
        sentence=msg("There is more weight on that side. How far out it sits counts too."),
    ),
    Way(
        name="counts_pieces",
        predict=counts_pieces,
        sentence=msg("That counts the pieces. What each one weighs and how far out it sits counts too."),
    ),
    Way(
        name="distance_only",
        predict=distance_only,
        sentence=msg("That side reaches farther. What sits far out there is light."),
    ),
    Way(
        name="swapped",
        predict=swapped,
        sentence=msg("That is the other way round: the side with the larger sum comes down."),
    ),
)
"""Every way of thinking about an attitude; the first one is the truth."""
