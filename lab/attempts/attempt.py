"""One answer of one learner, as the record keeps it."""

from __future__ import annotations

import math
import uuid
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

#: SQLite keeps whole numbers in 64 bits; a larger seed could not be read back as it was.
LARGEST_SEED = 2**63 - 1


class AttemptsError(Exception):
    """The record cannot be read or written now.  Its text is a plain sentence with a way out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Attempt:
    """One answer: to which question, what was said, what was true, and which ideas it fits.

    id: a UUID, drawn before the first try to write it (`new_attempt_id`), so a retry changes nothing.
    learner: a code (`new_code`), never a name.
    kind: the question's kind, "side" or "place".  seed, round: what the question's numbers came from.
    scene: the question's build file, as text.
    given: the answer as the learner gave it.  understood, truth: a side, or a place in the scene's own
    length unit.  tolerance: in that unit, None for a side.
    sure: "guess", "fairly", "certain", or None where it was not said.
    seconds: from seeing the question to locking in (or leaving).
    ways: names of the ways of thinking whose answer this is.
    locked: False for an answer that was left before it was locked in.
    version: of the lab.  made_at: UTC, ISO 8601.
    Raises ValueError where a number is not finite or a whole number is out of range.
    """

    id: str
    learner: str
    lesson: str
    question: str
    kind: str
    seed: int
    round: int
    scene: str
    given: str
    understood: str | float
    truth: str | float
    tolerance: float | None
    right: bool
    sure: str | None
    seconds: float
    hints: int
    ways: tuple[str, ...]
    locked: bool
    version: str
    made_at: str

    def __post_init__(self) -> None:
        for name in ("understood", "truth", "tolerance", "seconds"):
            value = getattr(self, name)
            # SQLite would store NaN as NULL without a word.
            if isinstance(value, float) and not math.isfinite(value):
                raise ValueError(f"{name} is {value}; it must be a finite number")
        if not 0 <= self.seed <= LARGEST_SEED:
            raise ValueError(f"seed is {self.seed}; it must be from 0 to {LARGEST_SEED}")


def attempt_of(answer: Mapping[str, Any], *, learner: str, version: str) -> Attempt:
    """The attempt for one answer of a lesson run, with an id and a time of its own.

    answer: the plain values of an answer by the names of `Attempt`'s fields.  A place may come as its
    digits; it is kept as a number, so that a spreadsheet gets one.
    Raises ValueError as `Attempt` does, TypeError if a value is missing or unknown.
    """
    values = dict(answer)
    if values.get("kind") == "place":
        values["understood"] = float(values["understood"])
        values["truth"] = float(values["truth"])
    # A thousandth is as fine as a hand on a key; the rest is noise, and a wide column in a spreadsheet.
    if "seconds" in values:
        values["seconds"] = round(values["seconds"], 3)
    values["ways"] = tuple(values.get("ways", ()))
    return Attempt(id=new_attempt_id(), learner=learner, version=version, made_at=time_now(), **values)


def new_attempt_id() -> str:
    """An id that no other attempt has, on this machine or any other."""
    return str(uuid.uuid4())


def time_now() -> str:
    """The present time in UTC, for `Attempt.made_at`."""
    return datetime.now(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")
