"""A task is set, carried out by hand, and found to be done."""

from typing import Any


def test_a_task_is_set_done_and_followed_by_another(pilot: Any):
    pilot.press("to-build")
    pilot.press("task")
    assert pilot.says("Make it hang level with just what is on it")
    pilot.press("weight-2")
    pilot.press("picked-place")
    for key in "50":
        pilot.press(f"keypad.{key}")
    pilot.press("keypad.done")
    assert pilot.says("Your task")
    pilot.press("let-go")
    pilot.wait(30.0)
    assert pilot.says("Done: that is it.")
    # Level as it is, with brass that cannot be halved, there is no other one; with a weight moved there is.
    assert "disabled" in pilot.node("task").state
    pilot.press("hold")
    pilot.press("weight-2")
    pilot.key("right", times=4)
    pilot.press("task")
    assert pilot.says("with one more weight")
    pilot.press("task-end")
    assert not pilot.has("task.panel")
