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


def test_behind_more_a_weight_is_weighed_anew_copied_and_mirrored(pilot: Any):
    pilot.press("to-build")
    pilot.press("weight-1")
    pilot.press("picked-more")
    pilot.press("picked-weight.more")
    bench = pilot.lab._room._bench
    assert [round(weight.mass_kg, 6) for weight in bench.session.state.weights] == [0.21, 0.1, 0.05]
    pilot.press("picked-mirror")
    assert round(bench.session.state.weights[-1].at_m, 9) == 0.65
    pilot.press("picked-more")
    assert pilot.has("picked-hold")
