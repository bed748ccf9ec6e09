"""What learners did: attempts kept for good in one SQLite file, under codes and never names."""

from typing import TYPE_CHECKING

from lab.late_names import late_names

if TYPE_CHECKING:
    from lab.attempts.attempt import Attempt, AttemptsError, attempt_of, new_attempt_id, time_now
    from lab.attempts.codes import meant_code, near_code, new_code, shown_code, tidy_code, valid_code
    from lab.attempts.export import write_csv
    from lab.attempts.store import AttemptStore, Erased, Used
else:
    _MODULES = {
        "attempt": "Attempt AttemptsError attempt_of new_attempt_id time_now",
        "codes": "meant_code near_code new_code shown_code tidy_code valid_code",
        "export": "write_csv",
        "store": "AttemptStore Erased Used",
    }
    __getattr__ = late_names(__name__, _MODULES)

__all__ = [
    "Attempt",
    "AttemptStore",
    "AttemptsError",
    "Erased",
    "Used",
    "attempt_of",
    "meant_code",
    "near_code",
    "new_attempt_id",
    "new_code",
    "shown_code",
    "tidy_code",
    "time_now",
    "valid_code",
    "write_csv",
]
