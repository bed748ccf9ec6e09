"""A command that was not carried out, and why, as a sentence that can be put into any language."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

NO_VALUES: Mapping[str, str] = MappingProxyType({})


def msg(template: str) -> str:
    """The template unchanged. Marks it for the collector of messages; it is put into words when shown."""
    return template


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """Why a command left the bench as it was.

    template: a whole plain sentence with {names} in it.  values: what goes in for each name; all are
    texts of the learner's own bench (a weight's name, a fault of a file), never numbers.
    """

    template: str
    values: Mapping[str, str] = field(default_factory=lambda: NO_VALUES, hash=False)

    def in_english(self) -> str:
        """The sentence in the language it is written in, for logs and tests."""
        return self.template.format(**self.values)
