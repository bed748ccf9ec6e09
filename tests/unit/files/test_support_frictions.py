"""A support may say how it grips; a file that says so comes back the same."""

import pytest

from lab.files import FileFaults, build_text, read_build_text

ON_TWO = """
format = 1
title = "Oar"
units = "lb-in"
bar = { name = "loom", length = 90, weight = 4 }
support = [{ name = "left finger", at = 7, friction = GRIP }, { name = "right finger", at = 80 }]
"""


def read(grip: str):
    return read_build_text(ON_TWO.replace("GRIP", grip), file="oar.toml")


def test_frictions_come_back_to_the_last_bit():
    build = read("[0.5, 0.35]")
    assert [support.friction for support in build.supports] == [(0.5, 0.35), None]
    assert read_build_text(build_text(build), file="again.toml") == build


@pytest.mark.parametrize("grip", ["0.5", "[0.5]", "[0.3, 0.5]", "[0, 0]", "[0.5, -0.1]", '["a", 1]', "[nan, 0.1]"])
def test_frictions_that_nothing_has_are_refused_with_their_place(grip: str):
    with pytest.raises(FileFaults) as refused:
        read(grip)
    (fault,) = refused.value.faults
    assert fault.key == "support[1].friction"
    assert fault.cure
