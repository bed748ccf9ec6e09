"""What flows at one instant: who feeds the burn, and what each pump moves, where tanks are empty or full."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf

from lab.mechanics.checks import MechanicsError
from lab.mechanics.tanks import BurnOrder

MOST_ROUNDS = 200
"""Rounds in which draws and pumps are fitted to each other; each tank on its limit takes one or two."""

ROUND_OFF = 1e-12
"""Share of what passes through a tank under which a gain is round-off: some hundred times what it can be."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Draw:
    """A burn by number: so much a second out of these tanks, in this order."""

    rate_m3_s: float
    tanks: tuple[int, ...]
    order: BurnOrder


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A running pump by number: from a tank, to a tank, at most so much a second."""

    source: int
    target: int
    rate_m3_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Flows:
    """What is drawn from each tank to burn, what each line moves, what each tank gains; m³/s."""

    drawn_m3_s: tuple[float, ...]
    pumped_m3_s: tuple[float, ...]
    gained_m3_s: tuple[float, ...]


def flows_at(draw: Draw, lines: Sequence[Line], *, empty: Sequence[bool], full: Sequence[bool]) -> Flows:
    """The flows where some tanks are empty and some full.

    Out of an empty tank goes no more than comes in, the burn first; into a full one comes no more than goes
    out; otherwise everything runs at its rate.  Raises MechanicsError where lines run in a ring.
    """
    _check_no_ring(lines, count=len(empty))
    pumped = [line.rate_m3_s for line in lines]
    drawn = _drawn(draw, lines, pumped, empty)
    for _ in range(MOST_ROUNDS):
        # From full rates each round: less of one draw may be more of another, and frees what it held up.
        pumped = _pumped(lines, drawn, empty=empty, full=full)
        settled, drawn = drawn, _drawn(draw, lines, pumped, empty)
        if drawn == settled:
            break
    come, gone = _in_and_out(lines, pumped, len(empty))
    gained = [into - out - burned for into, out, burned in zip(come, gone, drawn, strict=True)]
    for number, gain in enumerate(gained):
        # What the shares round by must not take a tank over its limit, nor off it for an instant and back.
        on_limit = (empty[number] and gain < 0.0) or (full[number] and gain > 0.0)
        passes = come[number] + gone[number] + drawn[number]
        if on_limit or ((empty[number] or full[number]) and abs(gain) <= ROUND_OFF * passes):
            gained[number] = 0.0
    return Flows(drawn_m3_s=tuple(drawn), pumped_m3_s=tuple(pumped), gained_m3_s=tuple(gained))


def _drawn(draw: Draw, lines: Sequence[Line], pumped: Sequence[float], empty: Sequence[bool]) -> list[float]:
    """What each tank gives to the burn: an empty one at most what comes in."""
    come, _ = _in_and_out(lines, pumped, len(empty))
    most = {number: come[number] if empty[number] else inf for number in draw.tanks}
    drawn = [0.0] * len(empty)
    left = draw.rate_m3_s
    if draw.order == "in order":
        for number in draw.tanks:
            drawn[number] = min(left, most[number])
            left -= drawn[number]
        return drawn
    # Those that can give least first: what one falls short of its share goes to those after it.
    for place, number in enumerate(sorted(draw.tanks, key=lambda each: most[each])):
        drawn[number] = min(left / (len(draw.tanks) - place), most[number])
        left -= drawn[number]
    return drawn


def _pumped(
    lines: Sequence[Line], drawn: Sequence[float], *, empty: Sequence[bool], full: Sequence[bool]
) -> list[float]:
    """The most that each line can move beside these draws; lines that share what there is share it by rate."""
    pumped = [line.rate_m3_s for line in lines]
    for _ in range(MOST_ROUNDS):
        come, gone = _in_and_out(lines, pumped, len(empty))
        shares = []
        for line in lines:
            share = 1.0
            if empty[line.source]:
                share = _share(max(come[line.source] - drawn[line.source], 0.0), gone[line.source])
            if full[line.target]:
                share = min(share, _share(drawn[line.target] + gone[line.target], come[line.target]))
            shares.append(share)
        if all(share == 1.0 for share in shares):
            break
        pumped = [rate * share for rate, share in zip(pumped, shares, strict=True)]
    return pumped


def _share(room: float, wanted: float) -> float:
    """What share of the wanted there is room for; all of it where only round-off is missing."""
    return 1.0 if wanted <= room * (1.0 + 1e-14) else room / wanted


def _in_and_out(lines: Sequence[Line], pumped: Sequence[float], count: int) -> tuple[list[float], list[float]]:
    come, gone = [0.0] * count, [0.0] * count
    for line, rate in zip(lines, pumped, strict=True):
        come[line.target] += rate
        gone[line.source] += rate
    return come, gone


def _check_no_ring(lines: Sequence[Line], *, count: int) -> None:
    left = list(lines)
    for _ in range(count):
        fed = {line.target for line in left}
        left = [line for line in left if line.source in fed]
    if left:
        raise MechanicsError("pumps that run at the same time go round in a ring; at any time they must lead one way")
