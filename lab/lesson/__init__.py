"""Lesson files, question kinds, ways of thinking, and the run that takes a learner through them."""

from lab.lesson.actions import (
    SURENESS,
    Action,
    Again,
    Foresee,
    Give,
    Hint,
    Leave,
    LockIn,
    Next,
    Set,
    Skip,
    Sure,
    Sureness,
    Watched,
)
from lab.lesson.asked import SIDES, Asked, Side
from lab.lesson.asking import ask
from lab.lesson.checking import Report, check_lesson, lesson_report
from lab.lesson.contrast import Contrast
from lab.lesson.editors import lesson_schema
from lab.lesson.explaining import explain
from lab.lesson.explanation import Explanation
from lab.lesson.forms import Answer, Choice, Form, Number, Numbers, Option
from lab.lesson.happenings import Answered, Refusal, RunEvent, Unclear
from lab.lesson.lesson import Lesson, Question, TeachersPage
from lab.lesson.messages import Amount, Message, Wording, render, shown_amount
from lab.lesson.reading import lesson_files, read_lesson
from lab.lesson.run import Run, start, step
from lab.lesson.telling_apart import ToldApart
from lab.lesson.understanding import Understood, understand

__all__ = [
    "SIDES",
    "SURENESS",
    "Action",
    "Again",
    "Amount",
    "Answer",
    "Answered",
    "Asked",
    "Choice",
    "Contrast",
    "Explanation",
    "Foresee",
    "Form",
    "Give",
    "Hint",
    "Leave",
    "Lesson",
    "LockIn",
    "Message",
    "Next",
    "Number",
    "Numbers",
    "Option",
    "Question",
    "Refusal",
    "Report",
    "Run",
    "RunEvent",
    "Set",
    "Side",
    "Skip",
    "Sure",
    "Sureness",
    "TeachersPage",
    "ToldApart",
    "Unclear",
    "Understood",
    "Watched",
    "Wording",
    "ask",
    "check_lesson",
    "explain",
    "lesson_files",
    "lesson_report",
    "lesson_schema",
    "read_lesson",
    "render",
    "shown_amount",
    "start",
    "step",
    "understand",
]
