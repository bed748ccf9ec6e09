"""What things on a bench are called: each by a name of its own."""

from __future__ import annotations

from collections.abc import Collection
from itertools import count

from lab.simulation.refused import Refused, msg

LONGEST_NAME = 40
"""Letters in a name that is typed. Longer ones leave a table no room for its numbers."""

NOT_A_NAME = Refused(template=msg("A name has 1 to 40 letters on one line, without a slash."))


def typed_name(typed: str) -> str | None:
    """What was typed, as a name; None where it is blank, too long, or holds what cannot be printed or a slash.

    A slash stands between a group and what is in it.
    """
    wanted = " ".join(typed.split())
    return wanted if 0 < len(wanted) <= LONGEST_NAME and wanted.isprintable() and "/" not in wanted else None


def unused_name(wanted: str, taken: Collection[str]) -> str:
    """The name wanted, or with the first number from 2 on after it that nothing else has: `brass 50 (2)`."""
    if wanted not in taken:
        return wanted
    return next(name for number in count(2) if (name := f"{wanted} ({number})") not in taken)
