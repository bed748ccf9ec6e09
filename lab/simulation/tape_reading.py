"""Tapes read back: each line checked, and the first that is wrong said with its number."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass

from lab.files import Fault, FileFaults
from lab.mechanics import MechanicsError
from lab.simulation.benches import BenchState
from lab.simulation.command_table import COMMANDS
from lab.simulation.commands import Command
from lab.simulation.records import IS, Json, RecordError, command_from_record, from_record
from lab.simulation.tape import FORMAT, GONE, MAKER, Plain

LAST_TICK = 24 * 3600 * 200
"""A day of ticks. A tape that claims more is damaged, and replaying it would not end."""

AS_WRITTEN = "it must be as the lab wrote it"

_PLAIN = (str, int, bool, type(None))


@dataclass(frozen=True, slots=True, kw_only=True)
class Commanded:
    """A command that came before this tick. refused: the template it was refused with, or None."""

    line: int
    tick: int
    command: Command
    refused: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Checkpoint:
    """What was different in the state at this tick. gone: paths that were no longer in it."""

    line: int
    tick: int
    changed: Mapping[str, Plain]
    gone: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Recording:
    """A tape, read. start: the state that the session began with."""

    version: str
    platform: str
    start: BenchState
    entries: tuple[Commanded | Checkpoint, ...]


class _BadLineError(ValueError):
    """What is wrong with a line, under which key, and what would be right."""

    def __init__(self, key: str, what: str, cure: str) -> None:
        self.key, self.what, self.cure = key, what, cure
        super().__init__(what)


def read_tape(text: str, *, file: str = "tape") -> Recording:
    """A tape from its text.

    file: named in faults.  Raises FileFaults with the first line that can't be used.
    """
    # Not splitlines: a learner's text may hold other line ends than the tape's own.
    first, *rest = text.removesuffix("\n").split("\n")
    number = 1
    try:
        version, platform, start = _header(_table(first))
        entries: list[Commanded | Checkpoint] = []
        tick = 0
        for number, line in enumerate(rest, start=2):
            entries.append(_entry(number, _table(line), earliest=tick))
            tick = entries[-1].tick
    except _BadLineError as bad:
        fault = Fault(file=file, line=number, key=bad.key, what=bad.what, cure=bad.cure)
        raise FileFaults([fault]) from bad
    return Recording(version=version, platform=platform, start=start, entries=tuple(entries))


def _table(line: str) -> dict[str, Json]:
    cure = "each line must be one JSON object, as the lab wrote it"
    try:
        table = json.loads(line)
    # A line of a million brackets is not JSON either, and must not take the lab down.
    except (ValueError, RecursionError) as error:
        raise _BadLineError("line", "this is not JSON", cure) from error
    if not isinstance(table, dict):
        raise _BadLineError("line", "this is not a JSON object", cure)
    return table


def _header(table: dict[str, Json]) -> tuple[str, str, BenchState]:
    if table.get("tape") != MAKER:
        raise _BadLineError("tape", "this is not a tape", f'the first line must have "tape": "{MAKER}"')
    made = table.get("format")
    if type(made) is not int or made != FORMAT:
        raise _BadLineError(
            "format",
            f"this tape has format {made!r}, and this lab reads only format {FORMAT}",
            "replay it with the version that recorded it" + _by(table),
        )
    try:
        start: BenchState = from_record(table.get("start"), BenchState)
        # Whatever the bench will be asked for later must have an answer now.
        _ = start.stilled().released(), getattr(start, "sum", None)
    except (RecordError, MechanicsError) as error:
        raise _BadLineError("start", str(error), AS_WRITTEN) from error
    if table.get("bench") != type(start).__name__:
        raise _BadLineError("bench", "the bench is not the one that the tape starts with", type(start).__name__)
    return str(table.get("version")), str(table.get("platform")), start


def _by(table: dict[str, Json]) -> str:
    version = table.get("version")
    return f", {version}" if isinstance(version, str) else ""


def _entry(number: int, table: dict[str, Json], *, earliest: int) -> Commanded | Checkpoint:
    tick = table.get("tick")
    if type(tick) is not int or not 0 <= tick <= LAST_TICK:
        raise _BadLineError("tick", f"the tick is {tick!r}", f"a whole number from 0 to {LAST_TICK}")
    if tick < earliest:
        raise _BadLineError("tick", f"tick {tick} comes after tick {earliest}", "ticks must not go back")
    keys = set(table)
    if keys in ({"tick", "do", "with"}, {"tick", "do", "with", "refused"}):
        return _commanded(number, tick, table)
    if keys in ({"tick", "state"}, {"tick", "end"}):
        key = "state" if "state" in keys else "end"
        return _checkpoint(number, tick, table[key], key)
    cure = 'tick with "do" and "with", "state", or "end"'
    raise _BadLineError("line", "this is neither a command nor a checkpoint", cure)


def _commanded(number: int, tick: int, table: dict[str, Json]) -> Commanded:
    name, values, refused = table["do"], table["with"], table.get("refused")
    row = COMMANDS.get(name) if isinstance(name, str) else None
    if row is None:
        raise _BadLineError("do", f"there is no command {name!r}", f"one of {', '.join(COMMANDS)}")
    if not isinstance(values, dict):
        raise _BadLineError("with", "the command's values are not an object", 'such as {"id": 1}')
    if refused is not None and not isinstance(refused, str):
        raise _BadLineError("refused", f"the reason is {refused!r}", "a sentence")
    try:
        command: Command = command_from_record({**values, IS: row.kind.__name__}, row.kind)
    except RecordError as error:
        raise _BadLineError("with", str(error), AS_WRITTEN) from error
    return Commanded(line=number, tick=tick, command=command, refused=refused)


def _checkpoint(number: int, tick: int, state: Json, key: str) -> Checkpoint:
    if not isinstance(state, dict):
        raise _BadLineError(key, "the checkpoint is not an object", "paths of the state with their values")
    gone = state.get(GONE, [])
    if not isinstance(gone, list) or not all(isinstance(path, str) for path in gone):
        raise _BadLineError(key, "the paths that are gone are not a list", f'"{GONE}" with a list of paths')
    changed: dict[str, Plain] = {}
    for path, value in state.items():
        if path == GONE:
            continue
        if not isinstance(value, _PLAIN):
            raise _BadLineError(key, f"{path} is {value!r}", "a text, a whole number, true, false or null")
        changed[path] = value
    return Checkpoint(line=number, tick=tick, changed=changed, gone=tuple(str(path) for path in gone))
