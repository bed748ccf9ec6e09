"""What the parts of a tool are called, and by their names which of them are tied together. Nothing moves by it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from lab.mechanics import Part
from lab.simulation.benches.groups import renamed, tied_names, untied_names
from lab.simulation.benches.names import NOT_A_NAME
from lab.simulation.benches.tool import BuiltTool
from lab.simulation.part_commands import Rename, Tie, Untie
from lab.simulation.refused import Refused, msg

NO_SUCH_PART = Refused(template=msg("That part is not on the tool any more."))


def rename(state: BuiltTool, command: Rename) -> BuiltTool | Refused:
    """What it is called in the table and the file; the guess stands."""
    if command.id not in state.ids:
        return NO_SUCH_PART
    index = state.ids.index(command.id)
    name = renamed(state.names, index, command.name)
    return NOT_A_NAME if name is None else _called(state, (*state.names[:index], name, *state.names[index + 1 :]))


def tie(state: BuiltTool, command: Tie) -> BuiltTool | Refused:
    """Nothing moves, so the guess stands."""
    if command.id not in state.ids or command.to not in state.ids:
        return NO_SUCH_PART
    if command.id == command.to:
        return state
    return _called(state, tied_names(state.names, state.ids.index(command.id), state.ids.index(command.to)))


def untie(state: BuiltTool, command: Untie) -> BuiltTool | Refused:
    """Nothing moves, so the guess stands."""
    if command.id not in state.ids:
        return NO_SUCH_PART
    return _called(state, untied_names(state.names, state.ids.index(command.id)))


def _called(state: BuiltTool, names: tuple[str, ...]) -> BuiltTool:
    parts, looks = named(state.parts, state.looks, names)
    return state if parts == state.parts else replace(state, parts=parts, looks=MappingProxyType(looks))


def named(
    parts: tuple[Part, ...], looks: Mapping[str, str], names: tuple[str, ...]
) -> tuple[tuple[Part, ...], dict[str, str]]:
    """The parts with other names, and how they are drawn by those."""
    after = dict(zip((part.name for part in parts), names, strict=True))
    named = tuple(replace(part, name=name) for part, name in zip(parts, names, strict=True))
    return named, {after.get(name, name): look for name, look in looks.items()}
