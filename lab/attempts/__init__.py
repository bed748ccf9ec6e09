"""What learners did: attempts kept for good in one SQLite file, under codes and never names."""

from typing import TYPE_CHECKING

from lab.late_names import late_names

if TYPE_CHECKING:
    from lab.attempts.attempt import Attempt, AttemptsError, attempt_of, new_attempt_id, time_now
    from lab.attempts.codes import new_code, tidy_code, valid_code
    from lab.attempts.export import write_csv
    from lab.attempts.store import AttemptStore, Erased
else:
    _MODULES = {
        "attempt": "Attempt AttemptsError attempt_of new_attempt_id time_now",
        "codes": "new_code tidy_code valid_code",
        "export": "write_csv",
        "store": "AttemptStore Erased",
    }
    __getattr__ = late_names(__name__, _MODULES)

__all__ = [
    "Attempt",
    "AttemptStore",
    "AttemptsError",
    "Erased",
    "attempt_of",
    "new_attempt_id",
    "new_code",
    "tidy_code",
    "time_now",
    "valid_code",
    "write_csv",
]
