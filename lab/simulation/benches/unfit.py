"""Builds that a bench cannot show: they do not fit it, or cannot be read at all."""

from __future__ import annotations

from typing import TYPE_CHECKING

from lab.simulation.refused import Refused, msg

if TYPE_CHECKING:
    from lab.files import FileFaults

OPENED_TEXT = "build"
"""What faults call a build that was handed over as text: it has no file name."""


class UnfitBuildError(ValueError):
    """This bench cannot show this build. ``why`` says it in plain words."""

    def __init__(self, why: Refused) -> None:
        """why: as a session would refuse it."""
        self.why = why
        super().__init__(why.in_english())


def unreadable(faults: FileFaults) -> Refused:
    """Why a text could not be opened: its first fault."""
    return Refused(template=msg("This build can't be opened. {fault}."), values={"fault": faults.faults[0].as_text()})
