"""The mobile: bars upon bars, their sums against closed forms, their swing against another solver, their files."""

import math
from dataclasses import replace

import pytest
from scipy.integrate import solve_ivp

from lab.app.paths import find_paths
from lab.files import build_text, read_build, read_build_text
from lab.mechanics import STANDARD_GRAVITY_M_S2, Swing
from lab.simulation import TICK_NS, Guess, LetGo, OpenBuild, Refused, Remove, Session, Undo, UnfitBuildError
from lab.simulation.benches.mobile import (
    MOST_BARS,
    MOST_LEVELS,
    MOST_ON_A_BAR,
    MOST_THINGS,
    RING_UP_M,
    STOP_RAD,
    Beam,
    Mobile,
)
from lab.simulation.benches.mobile_builds import build_from_mobile, mobile_from_build, workshop_mobile
from lab.simulation.command_table import carried_out
from lab.simulation.commands import Measure
from lab.simulation.mobile_commands import HangBar, HangOn, Rehang, SlideBar
from lab.simulation.part_commands import Copy, Reweigh
from lab.simulation.records import flat, recorded

ROUND_OFF = 1e-12
"""Sums of a dozen products of numbers under one: some 1e-16 each."""


def bar(number, *, above=None, hook_m=0.0, length_m=0.4, mass_kg=0.04, pin_m=0.2):
    return Beam(
        id=number, name=f"bar {number}", above=above, hook_m=hook_m, length_m=length_m, mass_kg=mass_kg, pin_m=pin_m
    )


def built(state, *commands):
    for command in commands:
        state = carried_out(state, command)
        assert not isinstance(state, Refused), (command, state.in_english())
    return state


def bits(state):
    return flat(recorded(state))


def by_name(state):
    return {level.name: level for level in state.levels.levels}


def opened_again(state):
    return mobile_from_build(read_build_text(build_text(build_from_mobile(state)), file="again.toml"))


# --- sums ---------------------------------------------------------------------------------------------------


def test_two_levels_balance_where_weight_times_arm_says():
    """A lower bar of 40 g with 60 g and 100 g hands up 200 g, which at 8 cm balances 160 g at 10 cm."""
    top, low = bar(1), bar(2, above=1, hook_m=0.12)
    state = Mobile(beams=(top, low), next_id=3)
    # 60 g at 20 cm against 100 g at 12 cm: both 1200 g·cm.
    state = built(state, HangOn(2, 0.060, 0.0), HangOn(2, 0.100, 0.32), HangOn(1, 0.160, 0.30))
    levels = by_name(state)
    assert levels["bar 2"].carried_kg == pytest.approx(0.200, abs=ROUND_OFF)
    assert levels["bar 1"].carried_kg == pytest.approx(0.400, abs=ROUND_OFF)
    assert state.levels.is_level
    assert state.sum.mass_kg == pytest.approx(0.400, abs=ROUND_OFF)
    # A mobile that is level hangs by the topmost cord, so the whole balances under it.
    assert state.sum.balance_point_m[0] == pytest.approx(state.top_at_m, abs=ROUND_OFF)


def test_three_levels_each_feel_the_whole_below_as_one_weight_at_its_hook():
    state = Mobile(beams=(bar(1), bar(2, above=1, hook_m=0.10), bar(3, above=2, hook_m=0.26)), next_id=4)
    state = built(state, HangOn(3, 0.050, 0.08), HangOn(3, 0.030, 0.35), HangOn(2, 0.020, 0.01), HangOn(1, 0.200, 0.33))
    levels = by_name(state)
    low = 0.050 * 0.12 - 0.030 * 0.15
    middle = 0.020 * 0.19 - 0.120 * 0.06
    top = 0.180 * 0.10 - 0.200 * 0.13
    assert levels["bar 3"].turn.moment_kg_m == pytest.approx(low, abs=ROUND_OFF)
    assert levels["bar 2"].turn.moment_kg_m == pytest.approx(middle, abs=ROUND_OFF)
    assert levels["bar 1"].turn.moment_kg_m == pytest.approx(top, abs=ROUND_OFF)
    assert [levels[f"bar {n}"].carried_kg for n in (3, 2, 1)] == pytest.approx([0.120, 0.180, 0.420], abs=ROUND_OFF)


def test_a_bar_out_of_balance_tilts_until_its_balance_point_is_below_its_ring():
    state = workshop_mobile().released().at_end()
    swings = dict(zip((beam.name for beam in state.beams), state.swings, strict=True))
    # 120 g·cm on 280 g, 50 g·cm on 110 g, each 3 cm under the ring.
    assert swings["long bar"].angle_rad == pytest.approx(-math.atan(120 / (280 * 100 * RING_UP_M)), abs=ROUND_OFF)
    assert swings["short bar"].angle_rad == pytest.approx(-math.atan(50 / (110 * 100 * RING_UP_M)), abs=ROUND_OFF)
    assert swings["low bar"] == Swing(settled=True)
    assert state.levels.askew == ("long bar", "short bar")


def test_moving_a_weight_on_a_lower_bar_changes_no_bar_above():
    state = workshop_mobile()
    above = by_name(state)["long bar"].turn
    for at_m in (0.0, 0.1, 0.36):
        assert by_name(built(state, Rehang(6, 2, at_m)))["long bar"].turn == above


def test_the_order_of_hanging_changes_nothing():
    """Every order of four commands on two bars: the same moments and weights to the last bit."""
    start = Mobile(beams=(bar(1), bar(2, above=1, hook_m=0.05)), next_id=3)
    loads = (HangOn(1, 0.07, 0.31), HangOn(2, 0.013, 0.017), HangOn(2, 0.05, 0.333), HangOn(1, 0.02, 0.11))
    seen = set()
    for turn in range(4):
        state = built(start, *loads[turn:], *loads[:turn])
        seen.add(tuple((level.turn.moment_kg_m, level.carried_kg) for level in state.levels.levels))
        seen.add(
            tuple((level.turn.moment_kg_m, level.carried_kg) for level in built(start, *loads[::-1]).levels.levels)
        )
    assert len(seen) == 1


def test_the_parts_weigh_what_the_topmost_cord_holds():
    state = workshop_mobile()
    assert sum(part.mass_kg for part in state.parts) == pytest.approx(state.levels.mass_kg, abs=ROUND_OFF)


# --- motion -------------------------------------------------------------------------------------------------


def test_every_bar_swings_as_another_solver_says_it_does():
    """scipy's Runge-Kutta of eighth order, tolerance 1e-10; a tick keeps some 1e-9, and rest is called at 1e-3."""
    session = Session(workshop_mobile())
    session.do(LetGo())
    turning, ticks = session.state.turnings[0], 300
    body, drag = turning.pivoted, turning.pivot.damping_kg_m2_s

    def push(_, values):
        angle, rate = values
        weight = body.lever_kg_m * math.cos(angle) + body.drop_kg_m * math.sin(angle)
        return rate, -(STANDARD_GRAVITY_M_S2 * weight + drag * rate) / body.inertia_kg_m2

    solved = solve_ivp(push, (0.0, ticks * 0.005), (0.0, 0.0), method="DOP853", rtol=1e-10, atol=1e-12)
    for _ in range(ticks):
        session.advance(TICK_NS)
    assert session.state.swings[0].angle_rad == pytest.approx(solved.y[0, -1], abs=1e-7)


def test_a_mobile_let_go_comes_to_rest_where_statics_says_within_ten_seconds():
    session = Session(workshop_mobile())
    session.do(LetGo())
    for _ in range(2000):
        session.advance(TICK_NS)
    assert not session.moving
    tilts = by_name(session.state)
    for beam, swing in zip(session.state.beams, session.state.swings, strict=True):
        assert swing.angle_rad == tilts[beam.name].tilt_rad
    assert session.state.outcome == "right"


def test_a_level_mobile_is_at_rest_as_soon_as_it_is_let_go():
    state = built(workshop_mobile(), Rehang(6, 2, 0.21), Rehang(4, 1, 0.16), LetGo())
    assert state.outcome == "level"
    assert not state.moving


def test_a_bar_far_out_of_balance_comes_to_rest_on_its_stop():
    state = built(workshop_mobile(), Rehang(8, 3, 0.26), HangOn(3, 0.2, 0.26), LetGo(at_once=True))
    assert state.swings[2].stop == -1
    assert state.swings[2].angle_rad == -STOP_RAD


def test_touching_anything_holds_everything_level_and_forgets_the_guess():
    moving = built(workshop_mobile(), Guess("left"), LetGo()).ticked()
    after = built(moving, SlideBar(2, 0.16))
    assert after.held
    assert after.guess is None
    assert after.swings == ()


# --- edits --------------------------------------------------------------------------------------------------


def test_bars_stand_in_reading_order_however_they_were_hung():
    state = built(
        workshop_mobile(), HangBar(2, 0.2, 0.02, 0.05), HangBar(1, 0.2, 0.02, 0.3), HangBar(9, 0.1, 0.01, 0.1)
    )
    assert [beam.id for beam in state.beams] == [1, 2, 9, 11, 3, 10]
    assert [beam.id for beam in built(state, Rehang(3, 11, 0.05)).beams] == [1, 2, 9, 11, 3, 10]
    assert [beam.id for beam in built(state, Rehang(9, 3, 0.05)).beams] == [1, 2, 3, 9, 11, 10]


def test_a_bar_takes_all_below_it_along_and_away():
    state = built(workshop_mobile(), Rehang(3, 2, 0.30))
    assert state.beam(3).above == 2
    assert {beam.id for beam in built(state, Remove(2)).beams} == {1}


def test_what_makes_no_mobile_is_refused_in_a_sentence():
    state = workshop_mobile()
    refusals = [
        (Rehang(2, 2, 0.1), "hangs below it"),
        (Rehang(1, 2, 0.1), "stays"),
        (Remove(1), "stays"),
        (Rehang(99, 1, 0.1), "any more"),
        (Rehang(5, 99, 0.1), "no bar there"),
        (Rehang(5, 1, 0.7), "no bar there"),
        (Rehang(5, 1, math.nan), "no bar there"),
        (SlideBar(99, 0.1), "any more"),
        (HangOn(1, -0.1, 0.1), "not a weight"),
        (HangBar(1, 0.0, 0.1, 0.1), "not a bar"),
        (Reweigh(5, math.inf), "not a weight"),
    ]
    for command, words in refusals:
        refused = carried_out(state, command)
        assert isinstance(refused, Refused), command
        assert words in refused.in_english(), command


def test_as_many_levels_and_bars_as_there_is_room_for_and_no_more():
    state = Mobile(beams=(bar(1),), next_id=2)
    for level in range(2, MOST_LEVELS + 1):
        state = built(state, HangBar(level - 1, 0.3, 0.02, 0.1))
    refused = carried_out(state, HangBar(MOST_LEVELS, 0.3, 0.02, 0.1))
    assert isinstance(refused, Refused)
    assert "so far down" in refused.in_english()
    state = Mobile(beams=(bar(1), bar(2, above=1)), next_id=3)
    for number in range(MOST_BARS - 2):
        state = built(state, HangBar(1 + number % 2, 0.3, 0.02, 0.1))
    refused = carried_out(state, HangBar(1, 0.3, 0.02, 0.1))
    assert isinstance(refused, Refused)
    assert "one more bar" in refused.in_english()


def test_a_full_bar_takes_no_more_but_what_hangs_there_can_move():
    state = Mobile(beams=(bar(1), bar(2, above=1)), next_id=3)
    for number in range(MOST_ON_A_BAR):
        state = built(state, HangOn(2, 0.01, number / 100))
    assert isinstance(carried_out(state, HangOn(2, 0.01, 0.3)), Refused)
    assert built(state, Rehang(3, 2, 0.3)).beam(2).weight(3).at_m == 0.3


def test_no_more_things_than_a_small_window_has_room_for():
    state = Mobile(beams=tuple(bar(n, above=n - 1 or None, hook_m=0.1) for n in range(1, 6)), next_id=6)
    for number in range(MOST_THINGS - 5):
        state = built(state, HangOn(1 + number % 5, 0.01, 0.3))
    for command in (HangOn(5, 0.01, 0.3), HangBar(5, 0.2, 0.01, 0.3), Copy(6), Copy(5)):
        refused = carried_out(state, command)
        assert isinstance(refused, Refused), command
        assert "one more thing" in refused.in_english()
    assert opened_again(state).parts == state.parts


def test_a_deep_branch_is_refused_where_it_would_reach_too_low():
    state = Mobile(beams=(bar(1),), next_id=2)
    for above in (1, 2, 3, 1, 5, 6, 7):
        state = built(state, HangBar(above, 0.3, 0.02, 0.1))
    assert isinstance(carried_out(state, Rehang(5, 4, 0.1)), Refused)
    assert built(state, Rehang(4, 8, 0.1)).beam(4).above == 8


def test_a_mirrored_branch_holds_the_whole_in_balance():
    """Whatever hangs to one side of the topmost ring, its image to the other side makes up for it."""
    state = Mobile(beams=(bar(1, length_m=0.6, pin_m=0.3), bar(2, above=1, hook_m=0.08, pin_m=0.13)), next_id=3)
    state = built(state, HangOn(2, 0.03, 0.07), HangBar(2, 0.2, 0.01, 0.3), HangOn(4, 0.02, 0.17, look="gull"))
    assert not state.levels.is_level
    state = built(state, Copy(2, mirrored=True))
    assert [beam.name for beam in state.beams] == ["bar 1", "bar 2", "bar 20", "bar 2 (2)", "bar 20 (2)"]
    levels = by_name(state)
    assert levels["bar 1"].turn.goes == "level"
    assert levels["bar 2"].turn.moment_kg_m == pytest.approx(-levels["bar 2 (2)"].turn.moment_kg_m, abs=ROUND_OFF)
    assert levels["bar 20"].turn.moment_kg_m == pytest.approx(-levels["bar 20 (2)"].turn.moment_kg_m, abs=ROUND_OFF)
    assert state.sum.balance_point_m[0] == pytest.approx(state.top_at_m, abs=ROUND_OFF)


def test_what_has_no_room_for_a_copy_is_refused():
    state = workshop_mobile()
    for command, words in ((Copy(1), "stays"), (Copy(99), "any more"), (Copy(7, mirrored=True), None)):
        after = carried_out(state, command)
        assert (words is None) is isinstance(after, Mobile)
        assert words is None or words in after.in_english()
    far = built(state, SlideBar(1, 0.05))
    assert "does not reach" in carried_out(far, Copy(3, mirrored=True)).in_english()


def test_doubts_are_stamped_on_every_weight():
    state = built(workshop_mobile(), Measure(0.001, 0.002))
    doubts = {(each.mass_doubt_kg, each.at_doubt_m) for beam in state.beams for each in beam.weights}
    assert doubts == {(0.001, (0.002, 0.0, 0.0))}


def test_a_drag_of_many_places_is_taken_back_by_one_undo():
    session = Session(workshop_mobile())
    first = bits(session.state)
    for step, (onto, at_m) in enumerate(((2, 0.23), (2, 0.30), (1, 0.20), (3, 0.10))):
        assert session.do(Rehang(6, onto, at_m, joins=step > 0)) is None
    assert session.state.carrier(6).id == 3
    session.do(Undo())
    assert bits(session.state) == first


# --- files --------------------------------------------------------------------------------------------------


def test_a_saved_mobile_opens_again_the_same_to_the_last_bit():
    state = workshop_mobile()
    for index, at_m in enumerate((0.1, 0.123456789, 1 / 3, 0.2 + 0.1)):
        state = built(state, SlideBar(2, at_m), Rehang(2, 1, at_m), HangOn(2, 0.1 / 3, at_m, look="float"))
        state = built(state, HangBar(2 + index % 2, 0.1 + at_m, 0.011, at_m * 0.7))
    again = opened_again(state)
    assert [bits(part) for part in again.parts] == [bits(part) for part in state.parts]
    assert [level.turn for level in again.levels.levels] == [level.turn for level in state.levels.levels]
    assert bits(opened_again(again)) == bits(again)
    assert build_text(build_from_mobile(again)) == build_text(build_from_mobile(state))


def test_the_sum_of_the_file_is_the_sum_of_the_bench():
    state = workshop_mobile()
    build = build_from_mobile(state)
    assert build.bench == "mobile"
    for ours, theirs in zip(state.parts, build.all_parts, strict=True):
        assert (ours.name, ours.mass_kg) == (theirs.name, theirs.mass_kg)
        assert ours.at_m[0] == pytest.approx(theirs.at_m[0], abs=ROUND_OFF)


def test_the_shipped_mobile_hangs_level_on_this_bench():
    state = mobile_from_build(read_build(find_paths().shipped_builds / "mobile-branch.toml"))
    assert [beam.name for beam in state.beams] == ["upper bar", "lower bar"]
    # 33 g at 20 cm against 16 + 8 + 9 g at 20 cm; below, 16 g at 6 cm against 8 g at 12 cm.
    assert built(state, LetGo()).outcome == "level"
    assert state.levels.is_level


def test_looks_view_title_and_reference_come_back():
    state = replace(workshop_mobile(), view="all", title="Gulls", reference_m=0.11, units="lb-in")
    again = opened_again(state)
    assert (again.view, again.title, again.units) == ("all", "Gulls", "lb-in")
    assert again.reference_m == pytest.approx(0.11, abs=ROUND_OFF)
    assert [each.look for beam in again.beams for each in beam.weights] == [None, "gull", None, "gull", "float"]


HEAD = 'format = 1\ntitle = "x"\nunits = "g-cm"\nbench = "mobile"\n'
TOP = '[[group]]\nname = "top"\nat = 0\n'
ROD = '[[part]]\nname = "bar"\ngroup = "top"\nweight = 60\nat = 4\nshape = { kind = "rod", length = 60 }\n'


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (HEAD + '[[part]]\nname = "a"\nweight = 1\nat = 0\n', "no mobile"),
        (HEAD + ROD + TOP + "[bar]\nlength = 60\nleft = -20\nweight = 3\n", "no mobile"),
        (HEAD + ROD.replace("rod", "box").replace("length = 60", "size = [1, 1, 1]") + TOP, "no bar"),
        (HEAD + ROD + TOP + "turn = [0, 5, 0]\n", "no bar"),
        (HEAD + ROD + TOP + "[pivot]\nat = 1\n", "topmost bar hangs"),
        (HEAD + ROD.replace("at = 4", "at = 40") + TOP, "not on it"),
        (HEAD + ROD + TOP + '[[part]]\nname = "b"\ngroup = "top"\nweight = 1\nat = 60\nhold = "hung"\n', "off the bar"),
    ],
)
def test_a_file_that_is_no_mobile_is_refused_in_a_sentence(text, words):
    with pytest.raises(UnfitBuildError) as unfit:
        mobile_from_build(read_build_text(text, file="x.toml"))
    assert words in str(unfit.value)
    assert isinstance(carried_out(workshop_mobile(), OpenBuild(text)), Refused)
