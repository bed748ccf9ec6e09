"""Tapes: everything that happened in a session, as lines of JSON that replay to the last bit.

The first line is the header: format, bench, version, platform, and the state that the session began with.
Then, in order, each command with the tick before which it came, and checkpoints: what is different in
the state since the checkpoint before, floats in hex. Two tapes of the same session are the same text.
"""

from __future__ import annotations

import json
import platform
import sys
from collections.abc import Mapping
from typing import TYPE_CHECKING

import numpy

import lab
from lab.simulation.command_table import row_of
from lab.simulation.commands import Command
from lab.simulation.records import IS, Json, flat, recorded
from lab.simulation.refused import Refused

if TYPE_CHECKING:
    from lab.simulation.benches import BenchState

FORMAT = 1
"""The number of this format. Raise it when an older lab would read a tape wrongly."""

MAKER = "tiltbench"
"""The first word of every tape, by which one is known."""

GONE = ""
"""The key, in a checkpoint, of the paths that are no longer in the state. No path is empty."""

CHECKPOINT_TICKS = 200
"""A checkpoint every second of motion. Fewer, and a difference is found long after it began; more, and
tapes grow."""

Plain = str | int | bool | None
"""A value at a path of a checkpoint."""


def platform_key() -> str:
    """What must be the same for two runs to agree to the last bit, as one word."""
    python = f"py{sys.version_info.major}.{sys.version_info.minor}"
    return f"{sys.platform}-{platform.machine()}-{python}-numpy{numpy.__version__}"


class Tape:
    """Records one session, in memory; whoever owns it writes ``text()`` where it should go.

    A tape belongs to one session: give each a new one.
    """

    __slots__ = ("_kept", "_last", "_lines", "_now")

    def __init__(self) -> None:
        self._lines: list[str] = []
        self._last: Mapping[str, Plain] = {}
        self._kept: BenchState | None = None
        self._now: tuple[int, BenchState] | None = None

    def begin(self, state: BenchState) -> None:
        """The session begins.  Raises ValueError where one was recorded already."""
        if self._lines:
            raise ValueError("this tape holds a session already; it must be given a new one")
        record = recorded(state)
        self._last = flat(record)
        self._now, self._kept = (0, state), state
        self._lines.append(
            _line(
                {
                    "tape": MAKER,
                    "format": FORMAT,
                    "bench": type(state).__name__,
                    "version": lab.__version__,
                    "platform": platform_key(),
                    "start": record,
                }
            )
        )

    def commanded(self, tick: int, command: Command, why: Refused | None, state: BenchState) -> None:
        """A command came before this tick. why: what it was refused for.  state: after it."""
        held = recorded(command)
        values = {key: each for key, each in held.items() if key != IS} if isinstance(held, dict) else {}
        line: dict[str, Json] = {"tick": tick, "do": row_of(command).name, "with": values}
        if why is not None:
            line["refused"] = why.template
        self._lines.append(_line(line))
        self._now = (tick, state)
        if why is None:
            self._checkpoint(tick, state)

    def ticked(self, tick: int, state: BenchState) -> None:
        """A tick was done. Every second of them makes a checkpoint."""
        self._now = (tick, state)
        if tick % CHECKPOINT_TICKS == 0:
            self._checkpoint(tick, state)

    def text(self) -> str:
        """The tape so far, JSON lines; the last is the state as it is now."""
        if self._now is None:
            return ""
        tick, state = self._now
        end = _line({"tick": tick, "end": _difference(self._last, flat(recorded(state)))})
        return "".join(f"{line}\n" for line in (*self._lines, end))

    def _checkpoint(self, tick: int, state: BenchState) -> None:
        """Write down what is different since the last checkpoint; nothing where nothing is."""
        if state is self._kept:
            return
        self._kept = state
        now = flat(recorded(state))
        difference = _difference(self._last, now)
        if difference:
            self._lines.append(_line({"tick": tick, "state": difference}))
            self._last = now


def _difference(was: Mapping[str, Plain], now: Mapping[str, Plain]) -> dict[str, Json]:
    """What to set, and under ``GONE`` which paths to forget, to make ``now`` out of ``was``."""
    difference: dict[str, Json] = {
        path: value for path, value in now.items() if path not in was or not same(was[path], value)
    }
    gone: list[Json] = [path for path in was if path not in now]
    return {**difference, GONE: gone} if gone else difference


def _line(values: Mapping[str, Json]) -> str:
    return json.dumps(values, ensure_ascii=False, separators=(",", ":"))


def same(one: Plain, other: Plain) -> bool:
    """Whether two plain values are the same, type and all: True is not 1."""
    return type(one) is type(other) and one == other
