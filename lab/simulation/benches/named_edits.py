"""What every bench does alike with what its parts are called, and by their names with which are tied together.

Nothing moves by any of it, so guesses stand.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Protocol, Self, TypeVar

from lab.simulation.benches.groups import renamed, tied_names, untied_names
from lab.simulation.benches.names import NOT_A_NAME
from lab.simulation.benches.shared_edits import Does
from lab.simulation.part_commands import Rename, Tie, Untie
from lab.simulation.refused import Refused, msg

NO_SUCH_PART = Refused(template=msg("That part is not there any more."))


class Named(Protocol):
    """A bench whose parts have names."""

    @property
    def ids(self) -> tuple[int, ...]:
        """Those of the parts that can be named, in order."""
        ...

    @property
    def names(self) -> tuple[str, ...]:
        """What those are called, in the same order, and then whatever else has a name."""
        ...

    def called(self, names: tuple[str, ...]) -> Self:
        """The same with these names, in that order."""
        ...


N = TypeVar("N", bound=Named)


def rename(state: N, command: Rename) -> N | Refused:
    """What it is called in the table and the file. It stays in its group."""
    if command.id not in state.ids:
        return NO_SUCH_PART
    index = state.ids.index(command.id)
    name = renamed(state.names, index, command.name)
    if name is None:
        return NOT_A_NAME
    return _called(state, (*state.names[:index], name, *state.names[index + 1 :]))


def tie(state: N, command: Tie) -> N | Refused:
    """A part with all its group to another with all of that's."""
    if command.id not in state.ids or command.to not in state.ids:
        return NO_SUCH_PART
    if command.id == command.to:
        return state
    return _called(state, tied_names(state.names, state.ids.index(command.id), state.ids.index(command.to)))


def untie(state: N, command: Untie) -> N | Refused:
    """One of a group; where only one other was in it, that is on its own again too."""
    if command.id not in state.ids:
        return NO_SUCH_PART
    return _called(state, untied_names(state.names, state.ids.index(command.id)))


def _called(state: N, names: tuple[str, ...]) -> N:
    return state if names == state.names else state.called(names)


NAME_EDITS: Mapping[type, Does] = MappingProxyType({Rename: rename, Tie: tie, Untie: untie})
"""What is done to names, by the class of the command."""
