"""The teacher's page of every shipped lesson, and one whose file says nothing to the teacher."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from lab.lesson import Lesson
from lab.lesson.teaching import PAGE_SEED, teaching_sheet
from lab.outline.words import msg
from lab.screens.gallery_parts import SETTING, Drawn, Entry, press, shown
from lab.screens.questions.gallery import shipped_lessons
from lab.screens.screen import TeachersPageModel
from lab.screens.teachers_page import TeachersPageScreen
from lab.ui.look import Look


def page_entries() -> Iterator[tuple[str, Entry]]:
    """All pages."""
    lessons = shipped_lessons()
    for lesson in lessons:
        says = msg("a lesson's teacher's page")
        yield f"page-{lesson.name}", Entry(says, lambda look, lesson=lesson: _page(look, lesson))  # type: ignore[misc]
    if lessons:
        bare = replace(lessons[0], teacher=None)
        yield "page-without", Entry(msg("a page without its table"), lambda look: _page(look, bare))
        yield "page-help", Entry(msg("a page: what to do here"), lambda look: press(_page(look, bare), "help"))


def _page(look: Look, lesson: Lesson) -> Drawn:
    model = TeachersPageModel(setting=SETTING, name=lesson.name, sheet=teaching_sheet(lesson, seed=PAGE_SEED))
    return shown(TeachersPageScreen(look), model)
