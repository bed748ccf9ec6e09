"""What flies is for learning only, and every question about it says so."""

import pytest

from lab.lesson import ask
from lab.outline import Words, find
from lab.screens.gallery import GALLERY
from lab.screens.questions.gallery import shipped_lessons
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

CAUTION = "For learning only; a real aircraft is loaded by its approved data, local rules and licensed people."


@pytest.mark.parametrize("scale", [1.0, 2.0])
@pytest.mark.parametrize("state", ["asked", "locked", "explain-right"])
def test_every_question_about_an_airframe_says_that_it_is_for_learning_only_and_no_other_does(state, scale):
    look = Look(theme=THEMES["paper"], sizes=Sizes(1280, 720, text_scale=scale), words=Words("en"))
    said = 0
    for lesson in shipped_lessons():
        for index in range(0, len(lesson.questions), 3):
            node = find(GALLERY[f"{lesson.name}-{index + 1}-{state}"].make(look).outline(), "caution")
            assert (node is not None) == ask(lesson, index, seed=1).build.is_airframe
            assert node is None or node.name == CAUTION
            said += node is not None
    # Six lessons of airframes, three questions of each.
    assert said > 12
