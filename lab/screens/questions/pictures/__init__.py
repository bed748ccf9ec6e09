"""A picture for every kind of question; the screen asks this table and never looks at a kind's name."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from lab.screens.questions.pictures.pictured import PICTURE, Pictured
from lab.screens.questions.pictures.turning import ToBeHung, Turning, UnderFinger
from lab.screens.questions.scope import Scope

PICTURES: Mapping[str, Pictured] = MappingProxyType(
    {"side": Turning(), "place": UnderFinger(), "weight": Turning(), "arm": ToBeHung()}
)
"""Every kind's picture by the kind's name."""


def picture_of(scope: Scope) -> Pictured:
    """The picture of the question that is asked."""
    return PICTURES[scope.asked.kind]


__all__ = ["PICTURE", "PICTURES", "Pictured", "picture_of"]
