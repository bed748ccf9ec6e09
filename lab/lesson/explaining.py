"""From a locked answer to what is said of it."""

from __future__ import annotations

from lab.lesson.asked import Asked
from lab.lesson.explanation import Explanation
from lab.lesson.forms import Answer
from lab.lesson.kinds import kind_of
from lab.lesson.matching import fits, named, way_names


def explain(asked: Asked, value: Answer) -> Explanation:
    """Return what a learner is told after `value` was locked in.

    value: of the question's own form.  Raises MechanicsError only if the build itself is unsound.
    """
    found = fits(asked, value)
    return kind_of(asked.task).explain(asked, value, named(asked, found), way_names(found))
