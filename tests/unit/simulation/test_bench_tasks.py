"""Tasks that benches set by themselves: none is done already, each can be done, and cheating does none."""

import pytest

from lab.simulation import Hang, LetGo, Move, MoveFinger, Refused, Session
from lab.simulation.benches import mobile_tasks, plate_tasks, scales_tasks, tool_tasks, two_fingers_tasks
from lab.simulation.benches.mobile_builds import workshop_mobile
from lab.simulation.benches.plate_builds import BLANKS, workshop_plate
from lab.simulation.benches.scales_builds import workshop_scales
from lab.simulation.benches.tasks import next_task
from lab.simulation.benches.tool_builds import workshop_tool
from lab.simulation.benches.two_fingers_builds import workshop_pole
from lab.simulation.commands import Remove
from lab.simulation.mobile_commands import Rehang, SlideBar
from lab.simulation.plate_commands import ClipOn, DrawPlumbLine, MovePin
from lab.simulation.scales_commands import MoveScale, PutOn, Shift
from lab.simulation.two_finger_commands import MoveFingers

END = LetGo(at_once=True)
STARTS = {
    "tool": (tool_tasks.TASKS, workshop_tool),
    "scales": (scales_tasks.TASKS, workshop_scales),
    "fingers": (two_fingers_tasks.TASKS, workshop_pole),
    "mobile": (mobile_tasks.TASKS, workshop_mobile),
    "plate": (plate_tasks.TASKS, workshop_plate),
}


def done(state, *commands):
    """The bench after commands, each of which it carries out."""
    session = Session(state)
    for command in commands:
        assert not isinstance(session.do(command), Refused), command
    return session.state


def task_named(kinds, state, name):
    """The task of a kind, which the bench sets."""
    kind = next(kind for kind in kinds if kind.name == name)
    task = next_task((kind,), state)
    assert task is not None, name
    return task


@pytest.mark.parametrize("bench", STARTS)
def test_what_the_bench_starts_with_sets_a_task_that_is_not_done_by_letting_go(bench):
    kinds, start = STARTS[bench]
    task = next_task(kinds, start())
    assert task is not None
    assert not task.is_done(start())
    assert not task.is_done(done(start(), END))
    another = next_task(kinds, start(), after=task.kind.name)
    assert another is not None
    # Of the L that the plate starts as, no weight of the tray and no pin but the crossing can be asked.
    assert (another.kind.name == task.kind.name) is (bench == "plate")


# --- the tool ------------------------------------------------------------------------------------------------


def test_the_tool_is_made_to_stay_by_shifting_a_part():
    tool = workshop_tool()
    task = task_named(tool_tasks.TASKS, tool, "shifted")
    whole = tool.sum
    # The hook alone makes up what is missing; a sum by hand of the three parts.
    hook = next(part for part in tool.parts if part.name == "hook")
    rest_kg_m = whole.moment_kg_m[0] - hook.mass_kg * hook.at_m[0]
    at_m = (tool.finger_at_m * whole.mass_kg - rest_kg_m) / hook.mass_kg
    number = tool.ids[tool.parts.index(hook)]
    assert task.is_done(done(tool, Move(number, at_m), END))
    assert not task.is_done(done(tool, MoveFinger(whole.balance_point_m[0]), END))


def test_the_tool_is_made_to_stay_by_one_part_more():
    tool = done(workshop_tool(), MoveFinger(0.62))
    task = task_named(tool_tasks.TASKS, tool, "one-more")
    missing_kg_m = tool.sum.mass_kg * (tool.finger_at_m - tool.sum.balance_point_m[0])
    assert task.is_done(done(tool, Hang(0.2, tool.finger_at_m + missing_kg_m / 0.2, "clamped"), END))


def test_half_the_brass_keeps_the_balance_point_of_the_tool():
    tool = done(workshop_tool(), Hang(0.1, 0.4, "clamped"))
    task = task_named(tool_tasks.TASKS, tool, "half")
    brass = tool.ids[-1]
    rest_kg_m = sum(part.mass_kg * (task.goal - part.at_m[0]) for part in tool.parts[:-1])
    placed = done(tool, Remove(brass), Hang(0.05, task.goal + rest_kg_m / 0.05, "clamped"))
    assert task.is_done(placed)


# --- scales --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("name", "share"), [("same", 0.5), ("twice", 1 / 3)])
def test_readings_are_shared_as_asked_by_moving_loads(name, share):
    bench = workshop_scales()
    task = task_named(scales_tasks.TASKS, bench, name)
    left_m, right_m = (scale.at_m[0] for scale in bench.scales)
    goal_m = left_m + share * (right_m - left_m)
    # Camera and nest box, moved by the same distance, carry the balance point along with 600 of 900 g.
    by_m = (goal_m - bench.sum.balance_point_m[0]) * bench.sum.mass_kg / 0.6
    moves = [Shift(load.id, load.at_m + by_m, 0.0) for load in bench.loads]
    assert task.is_done(done(bench, *moves, END))
    assert not task.is_done(done(bench, *moves, PutOn(0.05, goal_m), END))


def test_both_scales_read_the_same_after_they_were_slid():
    bench = done(workshop_scales(), MoveScale(1, 0.3, 0.0))
    task = task_named(scales_tasks.TASKS, bench, "slid")
    balance_m = bench.sum.balance_point_m[0]
    slid = done(bench, MoveScale(1, balance_m - 0.2, 0.0), MoveScale(2, balance_m + 0.2, 0.0), END)
    assert task.is_done(slid)


# --- two fingers ---------------------------------------------------------------------------------------------


def test_the_fingers_meet_in_the_middle_once_the_weight_is_there():
    bench = workshop_pole()
    task = task_named(two_fingers_tasks.TASKS, bench, "middle")
    # 200 g left of the middle against 50 g right of it: 10 cm against 40.
    assert task.is_done(done(bench, Move(1, 0.40), Move(2, 0.90), END))
    assert not task.is_done(done(bench, Remove(1), Remove(2), END))


def test_the_other_finger_slips_first_from_farther_out():
    bench = workshop_pole()
    task = task_named(two_fingers_tasks.TASKS, bench, "other-first")
    first = done(bench, END).outcome
    moved = (0.0, 0.55) if first == "right" else (0.25, 1.0)
    assert task.is_done(done(bench, MoveFingers(*moved), END))
    assert not task.is_done(done(bench, END))


def test_one_more_weight_brings_the_meeting_to_the_middle():
    bench = workshop_pole()
    task = task_named(two_fingers_tasks.TASKS, bench, "one-more")
    missing_kg_m = bench.sum.mass_kg * (task.goal - bench.sum.balance_point_m[0])
    assert task.is_done(done(bench, Hang(0.1, task.goal + missing_kg_m / 0.1, "clamped"), END))


# --- mobile --------------------------------------------------------------------------------------------------


def test_bars_hang_level_once_each_is_slid_to_its_balance_point():
    mobile = workshop_mobile()
    task = task_named(mobile_tasks.TASKS, mobile, "rings")
    state = mobile
    # What a bar carries does not hang on where its own ring is: any order will do.
    for beam in mobile.beams:
        below = {each.hook_m: mobile.carried_kg[each.name] for each in mobile.beams if each.above == beam.id}
        loads = [(beam.length_m / 2, beam.mass_kg), *((each.at_m, each.mass_kg) for each in beam.weights)]
        loads += below.items()
        state = done(state, SlideBar(beam.id, sum(at * kg for at, kg in loads) / sum(kg for _, kg in loads)))
    assert task.is_done(done(state, END))
    hooks = task_named(mobile_tasks.TASKS, mobile, "hooks")
    assert not hooks.is_done(done(state, END))


def test_bars_hang_level_once_what_hangs_on_them_is_moved():
    mobile = workshop_mobile()
    task = task_named(mobile_tasks.TASKS, mobile, "hooks")
    state = mobile
    for beam in reversed(mobile.beams):
        carried = {each.id: mobile.carried_kg[each.name] for each in mobile.beams if each.above == beam.id}
        things = [(each.id, each.at_m, each.mass_kg) for each in beam.weights]
        things += [(each.id, each.hook_m, carried[each.id]) for each in mobile.beams if each.above == beam.id]
        own_kg_m = beam.mass_kg * (beam.length_m / 2 - beam.pin_m)
        # One thing after the other goes as far as it can to take the turning away.
        for number, at_m, mass_kg in sorted(things, key=lambda thing: thing[2]):
            turning = own_kg_m + sum(kg * (at - beam.pin_m) for _, at, kg in things)
            goal_m = min(max(at_m - turning / mass_kg, 0.0), beam.length_m)
            things = [(n, goal_m if n == number else at, kg) for n, at, kg in things]
            state = done(state, Rehang(number, beam.id, goal_m))
    assert task.is_done(done(state, END))


# --- plate ---------------------------------------------------------------------------------------------------


def test_a_plate_hangs_as_it_was_held_from_a_pin_over_its_balance_point():
    plate = BLANKS["window"]
    task = task_named(plate_tasks.TASKS, plate, "other-pin")
    along_m, _, up_m = plate.sum.balance_point_m
    pins = [(along_m, up_m + step / 1000.0) for step in range(10, 200, 10)]
    hung = [session.state for pin in pins if (session := Session(plate)).do(MovePin(*pin)) is None]
    assert any(task.is_done(done(state, END)) for state in hung)


def test_the_balance_point_of_a_plate_is_found_by_two_lines_that_cross_widely():
    plate = workshop_plate()
    task = task_named(plate_tasks.TASKS, plate, "cross")
    one = done(plate, END, DrawPlumbLine())
    assert not task.is_done(one)
    assert task.is_done(done(one, MovePin(0.32, 0.02), END, DrawPlumbLine()))


@pytest.mark.parametrize("name", ["corner", "window"])
def test_a_plate_hangs_as_it_was_held_with_one_weight_more(name):
    plate = BLANKS[name]
    kind = next(kind for kind in plate_tasks.TASKS if kind.name == "one-more")
    task = next_task((kind,), plate)
    if task is None:
        # The sum by hand says so too: on no height of the wood does the heaviest weight make up what is missing.
        missing_kg_m = plate.sum.mass_kg * (plate.pivot.at_m - plate.sum.balance_point_m[0])
        lefts = [at_m for at_m, _ in plate.outline_m]
        at_m = plate.pivot.at_m + missing_kg_m / plate_tasks.CLIPS_KG[-1]
        assert not min(lefts) <= at_m <= max(lefts)
        return
    missing_kg_m = plate.sum.mass_kg * (plate.pivot.at_m - plate.sum.balance_point_m[0])
    at_m = plate.pivot.at_m + missing_kg_m / task.goal
    heights = [step / 200.0 for step in range(80)]
    sessions = [(Session(plate), ClipOn(task.goal, at_m, up_m)) for up_m in heights]
    clipped = [session.state for session, command in sessions if session.do(command) is None]
    assert any(task.is_done(done(state, END)) for state in clipped)
