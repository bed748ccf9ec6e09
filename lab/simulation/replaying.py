"""Replay: the same commands at the same ticks must lead to the same states, and the first that is not is named."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

import lab
from lab.simulation.clock import TICK_NS
from lab.simulation.records import flat, recorded
from lab.simulation.session import Session
from lab.simulation.tape import Plain, platform_key, same
from lab.simulation.tape_reading import Commanded, Recording

ELSEWHERE = 1e-6
"""How far floats may be apart (m, kg, rad, …) on another platform or version, whose sines may end in other
bits. A swing is right to 1e-6 rad, so nothing closer is claimed."""

_HEX_FLOAT = re.compile(r"-?0x[01]\.[0-9a-f]+p[+-]\d+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Same:
    """The replay came out as the tape says. exact: to the last bit, else within ELSEWHERE."""

    commands: int
    ticks: int
    exact: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstDifference:
    """Where a replay first came out otherwise.

    tick, line: when, and where on the tape.  field: the path in the state, or ``refused``.
    was: on the tape; now: in the replay; None also stands for *not there*.
    """

    tick: int
    line: int
    field: str
    was: Plain
    now: Plain

    def as_text(self) -> str:
        """The difference as one line."""
        return f"tick {self.tick} (line {self.line}): {self.field} was {_shown(self.was)}, is {_shown(self.now)}"


def replay(recording: Recording, *, exact: bool | None = None) -> Same | FirstDifference:
    """Do again what was recorded, and compare at every checkpoint.

    exact: whether floats must be the same to the last bit, else they may be ELSEWHERE apart; left out, they
    must be on the version and platform that recorded them.
    """
    if exact is None:
        exact = (recording.version, recording.platform) == (lab.__version__, platform_key())
    session = Session(recording.start)
    expected = flat(recorded(recording.start))
    commands = tick = 0
    for entry in recording.entries:
        _run(session, entry.tick - tick)
        tick = entry.tick
        if isinstance(entry, Commanded):
            commands += 1
            why = session.do(entry.command)
            refused = None if why is None else why.template
            if refused != entry.refused:
                return FirstDifference(tick=tick, line=entry.line, field="refused", was=entry.refused, now=refused)
            continue
        gone = set(entry.gone)
        expected = {path: value for path, value in expected.items() if path not in gone}
        expected.update(entry.changed)
        difference = _first_difference(expected, flat(recorded(session.state)), exact=exact)
        if difference is not None:
            field, was, now = difference
            return FirstDifference(tick=tick, line=entry.line, field=field, was=was, now=now)
    return Same(commands=commands, ticks=tick, exact=exact)


def _run(session: Session, ticks: int) -> None:
    for _ in range(ticks):
        if not session.moving:
            return
        session.advance(TICK_NS)


def _first_difference(
    expected: Mapping[str, Plain], found: Mapping[str, Plain], *, exact: bool
) -> tuple[str, Plain, Plain] | None:
    for path in [*expected, *(path for path in found if path not in expected)]:
        was, now = expected.get(path), found.get(path)
        if path in expected and path in found and (same(was, now) or (not exact and _near(was, now))):
            continue
        return path, was, now
    return None


def _near(was: Plain, now: Plain) -> bool:
    return _is_hex(was) and _is_hex(now) and abs(float.fromhex(str(was)) - float.fromhex(str(now))) <= ELSEWHERE


def _is_hex(value: Plain) -> bool:
    return isinstance(value, str) and _HEX_FLOAT.fullmatch(value) is not None


def _shown(value: Plain) -> str:
    return f"{value} ({float.fromhex(str(value)):.9g})" if _is_hex(value) else repr(value)
