"""A picture for every kind of question; the screen asks this table and never looks at a kind's name."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from lab.screens.questions.bench import turns
from lab.screens.questions.pictures.attitude import HangsByPoint
from lab.screens.questions.pictures.ballast import Ballasted
from lab.screens.questions.pictures.doubt import Doubted
from lab.screens.questions.pictures.fingered import OnFinger
from lab.screens.questions.pictures.pictured import PICTURE, Pictured
from lab.screens.questions.pictures.pinned import OnPin
from lab.screens.questions.pictures.reading import OnScales
from lab.screens.questions.pictures.shift import Shifted
from lab.screens.questions.pictures.steady import Pushed
from lab.screens.questions.pictures.tank import Tanked
from lab.screens.questions.pictures.turning import ToBeHung, Turning, UnderFinger
from lab.screens.questions.scope import Scope

PICTURES: Mapping[str, Pictured] = MappingProxyType(
    {
        "side": Turning(),
        "place": UnderFinger(),
        "weight": Turning(),
        "arm": ToBeHung(),
        "reading": OnScales(),
        "shift": Shifted(),
        "ballast": Ballasted(),
        "tank": Tanked(),
        "attitude": HangsByPoint(),
        "steady": Pushed(),
        "doubt": Doubted(),
    }
)
"""Every kind's picture by the kind's name."""

ONLY_SHOWN: Mapping[str, Pictured] = MappingProxyType(
    {"side": OnPin(), "place": OnFinger(), "weight": OnPin(), "arm": OnPin()}
)
"""The pictures of what no bench has yet: airframes, and what turns about a pin and is no bar."""


def picture_of(scope: Scope) -> Pictured:
    """The picture of the question that is asked."""
    kind = scope.asked.kind
    return PICTURES[kind] if turns(scope.asked) else ONLY_SHOWN.get(kind, PICTURES[kind])


__all__ = ["PICTURE", "PICTURES", "Pictured", "picture_of"]
