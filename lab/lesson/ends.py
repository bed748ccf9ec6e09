"""Which end drops, in words: `the hook end` of a tool, the left or right end of a bar."""

from __future__ import annotations

from lab.lesson.asked import Asked, Side
from lab.lesson.messages import Message, length, message, msg
from lab.lesson.situation import situation_of

END_SHARE = 0.25
"""How near to an end of a tool a part must sit to give that end its name, as a share of the whole length."""

_DROPS: dict[Side, str] = {
    "left": msg("Let go: the left end drops."),
    "right": msg("Let go: the right end drops."),
    "level": msg("Let go: it stays level."),
}
_DROPPED_PLACE: dict[Side, str] = {
    "left": msg("The left end dropped. The moment sum puts it at {place}."),
    "right": msg("The right end dropped. The moment sum puts it at {place}."),
    "level": msg("It stayed level. The moment sum puts it at {place}."),
}
_DROPPED_SIDE: dict[Side, str] = {
    "left": msg("The left end dropped."),
    "right": msg("The right end dropped."),
    "level": msg("It stayed level."),
}


def end_drops(asked: Asked, goes: Side, at_m: float) -> Message:
    """Return what is seen as it is let go.  at_m: where it rests."""
    if not asked.left_m <= at_m <= asked.right_m:
        return message(msg("Let go: the finger is past the end, so it falls."))
    name = end_name(asked, goes)
    if name is None:
        return message(_DROPS[goes])
    return message(msg("Let go: the {part} end drops."), part=name)


def end_dropped(asked: Asked, goes: Side, at_m: float) -> Message:
    """Return what was seen and, for a place, where the sum puts it.  at_m: where it rested."""
    name = end_name(asked, goes)
    if not isinstance(asked.truth, float):
        return end_went(asked, goes)
    place = length(asked.truth, decimals=asked.decimals)
    if not asked.left_m <= at_m <= asked.right_m:
        return message(msg("The finger was past the end. The moment sum puts it at {place}."), place=place)
    if name is None:
        return message(_DROPPED_PLACE[goes], place=place)
    return message(msg("The {part} end dropped. The moment sum puts it at {place}."), part=name, place=place)


def end_went(asked: Asked, goes: Side) -> Message:
    """Return which end dropped, as it was seen."""
    name = end_name(asked, goes)
    return message(_DROPPED_SIDE[goes]) if name is None else message(msg("The {part} end dropped."), part=name)


def end_name(asked: Asked, goes: Side) -> str | None:
    """Return the part that gives an end its name, or None: a bar's ends, and bare ends, are left and right."""
    seen = situation_of(asked.build)
    if goes == "level" or seen.bar is not None:
        return None
    end = seen.left if goes == "left" else seen.right
    near = [load for load in seen.riders if abs(load.place - end) <= END_SHARE * (seen.right - seen.left)]
    return min(near, key=lambda load: abs(load.place - end)).name if near else None
