"""Two fingers under a body, tick by tick, held against closed forms: who slips, who sticks, and where they meet."""

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from lab.files import build_text, read_build, read_build_text
from lab.mechanics import STANDARD_GRAVITY_M_S2, Friction, pad_energy_j
from lab.simulation import TICK_S, Guess, Hang, HoldStill, LetGo, Move, Refused, Remove, Session, Undo
from lab.simulation.benches.two_fingers import CLOSING_M_S, DRY, SOAPY
from lab.simulation.benches.two_fingers_builds import build_from_two_fingers, two_fingers_from_build, workshop_pole
from lab.simulation.benches.unfit import UnfitBuildError
from lab.simulation.commands import Measure, OpenBuild
from lab.simulation.part_commands import Copy, Rename, Reweigh
from lab.simulation.two_finger_commands import GuessMeeting, MoveFingers, SetFriction, StopFingers
from lab.ui.assets import asset_folder

OAR = """
format = 1
title = "Oar"
units = "lb-in"
part = [
  { name = "loom", weight = 4.2, at = 41, shape = { kind = "cylinder", radius = 0.9, length = 82 }, look = "pole" },
  { name = "blade", weight = 1.6, at = 93, shape = { kind = "rectangle", length = 26, width = 5.5 }, look = "blade" },
  { name = "collar", weight = 0.5, at = 27, shape = { kind = "cylinder", radius = 1.4, length = 8, inner = 0.9 } },
]
"""
HUNG = """
format = 1
title = "Survey bar"
units = "g-cm"
bar = { length = 100, weight = 150, depth = 3.4 }
part = [{ name = "brass 200", weight = 200, at = 15, hold = "hung", look = "weight" }]
pivot = { at = 40, up = 1.2 }
"""

SHIPPED = sorted((asset_folder() / "builds").glob("*.toml"))
ASKEW = ("camera-boom", "tailless-wing")

places = st.floats(0.0, 1.0)
frictions = st.builds(
    lambda static, share: Friction(static, static * share), st.floats(0.05, 1.5), st.floats(0.2, 0.95)
)


def oar():
    return two_fingers_from_build(read_build_text(OAR, file="oar.toml"))


def on_fingers(state, left_m, right_m):
    session = Session(state)
    session.do(MoveFingers(left_m, right_m))
    return session.state


def ticks_of(state):
    """Every state from letting go to the end."""
    state = state.released()
    yield state
    while state.moving:
        state = state.ticked()
        yield state


def loads_n(state):
    """What the fingers carry, by moments about each other: N1 = W (x2 − g) / (x2 − x1)."""
    left_m, right_m = state.places_m
    weight_n = sum(part.mass_kg for part in state.parts) * STANDARD_GRAVITY_M_S2
    balance_m = sum(part.mass_kg * part.at_m[0] for part in state.parts) / sum(part.mass_kg for part in state.parts)
    apart_m = right_m - left_m
    return weight_n * (right_m - balance_m) / apart_m, weight_n * (balance_m - left_m) / apart_m


@settings(max_examples=60, deadline=None)
@given(places, places, frictions, frictions)
# The balance point's own place as it is written down, and by a sum that ends a bit short of it.
@example(0.4, 0.5, DRY, DRY)
@example(0.3, 0.4, DRY, SOAPY)
@example(0.4 - 1e-15, 0.9, SOAPY, DRY)
def test_from_anywhere_they_meet_under_the_balance_point_or_the_body_tips(first, second, left, right):
    held = replace(on_fingers(workshop_pole(), min(first, second), max(first, second)), left=left, right=right)
    balance_m = held.sum.balance_point_m[0]
    end = Session(held)
    end.do(LetGo(at_once=True))
    # A balance point that misses a finger by this share of what is between them is on it: sums of products round so.
    slack_m = 1e-9 * (held.fingers_m[1] - held.fingers_m[0])
    spans = held.fingers_m[0] - slack_m <= balance_m <= held.fingers_m[1] + slack_m
    if not spans:
        assert end.state.slide is None
        assert end.state.tipping.goes == ("left" if balance_m < held.fingers_m[0] else "right")
        return
    left_m, right_m = end.state.places_m
    assert left_m - slack_m <= balance_m <= right_m + slack_m
    assert right_m - left_m == pytest.approx(held.touch_m, rel=1e-9)
    assert end.state.slide.meeting_m == pytest.approx(balance_m, abs=1e-12)


@pytest.mark.parametrize("grips", [(DRY, DRY), (SOAPY, DRY), (DRY, SOAPY), (Friction(0.4, 0.4), Friction(0.4, 0.4))])
@pytest.mark.parametrize("make", [workshop_pole, oar])
def test_loads_and_frictions_are_the_closed_forms_at_every_tick(make, grips):
    state = replace(make(), left=grips[0], right=grips[1])
    for now in ticks_of(state):
        on_left_n, on_right_n = loads_n(now)
        forces = now.forces
        # Quotients of sums of a few products: some units of the last place.
        assert forces.left_normal_n == pytest.approx(on_left_n, rel=1e-9)
        assert forces.right_normal_n == pytest.approx(on_right_n, rel=1e-9)
        assert min(on_left_n, on_right_n, forces.friction_n) >= 0.0
        slips = {"left": (grips[0], on_left_n), "right": (grips[1], on_right_n)}
        grip, load_n = slips["left" if now.leg.mover == "both" else now.leg.mover]
        if now.gap_m not in [leg.gap_m[1] for leg in now.slide.legs]:
            assert forces.friction_n == pytest.approx(grip.kinetic * load_n, rel=1e-9)
        # What sticks can give what it must.
        assert forces.friction_n <= max(forces.left_holds_n, forces.right_holds_n) * (1 + 1e-9)
        for mover, holds_n in (("left", forces.right_holds_n), ("right", forces.left_holds_n)):
            if now.leg.mover == mover:
                assert forces.friction_n <= holds_n * (1 + 1e-9)


@pytest.mark.parametrize("grips", [(DRY, DRY), (SOAPY, DRY), (DRY, SOAPY), (Friction(0.9, 0.3), Friction(0.5, 0.4))])
def test_a_finger_stops_where_its_friction_is_all_that_the_other_can_hold(grips):
    """The same walk in small steps of our own: switch when μ_k N of the slider is μ_s N of the one that holds."""
    state = replace(workshop_pole(), left=grips[0], right=grips[1])
    balance_m = state.sum.balance_point_m[0]
    far = [balance_m - state.fingers_m[0], state.fingers_m[1] - balance_m]
    mover = 0 if grips[0].static * far[1] < grips[1].static * far[0] else 1
    step_m, corners = 1e-5, []
    while far[0] + far[1] > state.touch_m:
        far[mover] -= step_m
        # Each finger's load goes with the other's distance.
        if grips[mover].kinetic * far[1 - mover] >= grips[1 - mover].static * far[mover]:
            corners.append((balance_m - far[0], balance_m + far[1]))
            mover = 1 - mover
    legs = state.released().slide.legs
    assert len(legs) == len(corners) + 1
    for leg, corner in zip(legs, corners, strict=False):
        # Each corner is passed by at most one of the small steps, and the next begins there.
        assert leg.to_m == pytest.approx(corner, abs=10 * step_m)
    assert [a.mover != b.mover for a, b in pairwise(legs)] == [True] * (len(legs) - 1)


def test_hands_close_at_one_pace_and_only_one_finger_slips():
    for before, after in pairwise(ticks_of(workshop_pole())):
        moved = [abs(b - a) for a, b in zip(before.places_m, after.places_m, strict=True)]
        if after.moving:
            assert sum(moved) == pytest.approx(CLOSING_M_S * TICK_S, rel=1e-9)
        if before.leg is not None and before.leg == after.leg:
            assert min(moved) == pytest.approx(0.0, abs=1e-15)


def test_who_slips_first_is_the_outcome_once_they_touch():
    session = Session(workshop_pole())
    session.do(LetGo())
    assert session.state.outcome is None
    session.do(LetGo(at_once=True))
    assert session.state.outcome == "right"
    even = on_fingers(workshop_pole(), 0.3, 0.5).released().at_end()
    assert even.slide.tied
    assert even.outcome == "level"


def test_a_soapy_finger_slips_first_and_they_meet_at_the_same_place():
    session = Session(workshop_pole())
    for finger, first in (("left", "left"), ("right", "right")):
        session.do(SetFriction("left", DRY.static, DRY.kinetic))
        session.do(SetFriction("right", DRY.static, DRY.kinetic))
        session.do(SetFriction(finger, SOAPY.static, SOAPY.kinetic))
        session.do(LetGo(at_once=True))
        assert session.state.outcome == first
        assert session.state.places_m[0] <= 0.4 <= session.state.places_m[1]


def test_hands_that_stop_on_the_way_begin_anew_and_still_meet_there():
    session = Session(workshop_pole())
    session.do(LetGo())
    for _ in range(60):
        session.advance(20_000_000)
    assert session.do(StopFingers()) is None
    stopped = session.state
    assert not stopped.moving
    assert stopped.outcome is None
    session.advance(20_000_000)
    assert session.state == stopped
    # Static friction decides anew: the finger that carries less slips, whichever slid before.
    weaker = "left" if stopped.loads_n[0] < stopped.loads_n[1] else "right"
    session.do(LetGo())
    assert session.state.places_m == pytest.approx(stopped.places_m, abs=1e-15)
    assert session.state.leg.mover == weaker
    assert session.state.slide.legs[0].from_m == pytest.approx(workshop_pole().fingers_m, abs=1e-15)
    for before, after in pairwise(session.state.slide.legs):
        assert before.to_m == pytest.approx(after.from_m, abs=1e-12)
    session.do(LetGo(at_once=True))
    assert session.state.places_m[0] <= 0.4 <= session.state.places_m[1]
    session.do(HoldStill())
    assert session.state == workshop_pole()


def test_a_body_that_is_not_over_both_fingers_tips_off_and_falls():
    session = Session(on_fingers(workshop_pole(), 0.6, 0.9))
    session.do(LetGo())
    assert (session.state.tipping.goes, session.state.tipping.over) == ("left", "left")
    assert session.state.tipping.beyond_m == pytest.approx(0.2, abs=1e-12)
    for _ in range(10):
        session.advance(20_000_000)
    assert session.state.motion.angle_rad > 0.0
    session.do(LetGo(at_once=True))
    assert not session.state.moving
    assert session.state.motion.phase == "down"
    assert session.state.outcome is None
    session.do(Undo())
    assert session.state.fingers_m == (0.6, 0.9)
    assert session.state.held


def test_a_body_that_tips_gains_no_energy():
    state = on_fingers(workshop_pole(), 0.6, 0.9).released()
    energies = []
    while state.moving:
        energies.append(pad_energy_j(state.tipping.body, state.motion))
        state = state.ticked()
    # The symplectic step keeps the energy of a fall of some tenths of a joule to far better than this.
    assert max(energies) <= 1e-6
    assert energies[-1] < 0.0


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_under_every_build_that_ships_they_meet_at_its_balance_point_or_it_is_refused_in_words(path):
    if path.stem in ASKEW:
        with pytest.raises(UnfitBuildError, match="askew"):
            two_fingers_from_build(read_build(path))
        return
    held = two_fingers_from_build(read_build(path))
    end = held.released().at_end()
    assert end.slide is not None
    assert end.places_m[0] <= held.sum.balance_point_m[0] <= end.places_m[1]
    assert build_text(build_from_two_fingers(held)) == build_text(
        build_from_two_fingers(
            two_fingers_from_build(read_build_text(build_text(build_from_two_fingers(held)), file="again.toml"))
        )
    )


def test_fingers_stop_at_the_ends_and_beside_each_other():
    assert on_fingers(workshop_pole(), -1.0, 3.0).fingers_m == (0.0, 1.0)
    # Only the left one is moved: it stops beside the other.
    assert on_fingers(workshop_pole(), 0.95, 0.90).fingers_m == pytest.approx((0.82, 0.90))
    assert on_fingers(workshop_pole(), 0.06, 0.01).fingers_m == pytest.approx((0.06, 0.14))
    assert on_fingers(workshop_pole(), 0.5, 0.5).fingers_m == pytest.approx((0.46, 0.54))
    assert on_fingers(workshop_pole(), 1.0, 1.0).fingers_m == pytest.approx((0.92, 1.0))


def test_a_drag_of_both_hands_is_one_step_back():
    session = Session(workshop_pole())
    session.do(MoveFingers(0.1, 0.9))
    session.do(MoveFingers(0.1, 0.8, joins=True))
    session.do(MoveFingers(0.2, 0.7, joins=True))
    session.do(Undo())
    assert session.state == workshop_pole()


def test_weights_are_stood_on_it_moved_and_taken_off():
    session = Session(workshop_pole())
    session.do(Guess("left"))
    session.do(GuessMeeting(0.5))
    assert session.do(Hang(0.5, 0.9)) is None
    assert (session.state.guess, session.state.meeting_guess_m) == (None, None)
    added = session.state.pieces[-1]
    assert (added.id, added.part.name, added.part.at_m) == (3, "brass 500", (0.9, 0.0, 0.0175))
    session.do(Move(3, 0.8))
    session.do(LetGo(at_once=True))
    # (150 × 50 + 200 × 25 + 50 × 70 + 500 × 80) / 900
    assert session.state.slide.meeting_m == pytest.approx(56.0 / 90.0, abs=1e-12)
    assert session.do(Remove(3)) is None
    assert session.state.held
    assert session.do(Move(1, 1.4)) is not None
    assert session.do(Hang(0.1, -0.2)) is not None


def test_a_piece_is_weighed_anew_and_renamed():
    session = Session(workshop_pole())
    assert session.do(Reweigh(2, 0.25)) is None
    assert session.do(Rename(2, "  tin   of water ")) is None
    assert session.do(Rename(1, "tin of water")) is None
    assert [piece.part.name for piece in session.state.pieces] == ["tin of water (2)", "tin of water"]
    # (150 × 50 + 200 × 25 + 250 × 70) / 600
    assert session.state.sum.balance_point_m[0] == pytest.approx(0.5)
    assert session.do(Reweigh(2, -1.0)) is not None
    assert session.do(Rename(2, " ")) is not None


def test_the_head_of_a_tool_is_fixed_and_what_sits_on_its_pole_is_not():
    session = Session(oar())
    assert [session.state.is_loose(piece) for piece in session.state.pieces] == [False, False, True]
    assert isinstance(session.do(Move(2, 0.5)), Refused)
    assert isinstance(session.do(Remove(1)), Refused)
    assert session.do(Move(3, 0.0)) is None
    # It stops with its own end at the pole's.
    assert session.state.pieces[2].part.at_m[0] == pytest.approx(4 * 0.0254, abs=1e-12)
    span_m = session.state.span_m
    assert session.do(Remove(3)) is None
    assert session.state.span_m == span_m


def test_a_copy_stands_beside_it_and_a_mirrored_one_beyond_the_middle():
    session = Session(workshop_pole())
    assert session.do(Copy(1)) is None
    assert session.do(Copy(1, mirrored=True)) is None
    names = [(piece.id, piece.part.name, round(piece.part.at_m[0], 9)) for piece in session.state.pieces[2:]]
    assert names == [(3, "brass 200 (2)", 0.3), (4, "brass 200 (3)", 0.75)]
    session.do(Move(2, 1.0))
    session.do(Copy(2))
    assert session.state.pieces[-1].part.at_m[0] == pytest.approx(0.95)
    assert isinstance(Session(oar()).do(Copy(2)), Refused)
    assert session.do(Copy(77)) is not None


@pytest.mark.parametrize(
    "grip", [(0.5, 0.6), (0.0, 0.0), (3.0, 0.5), (0.5, 0.499), (float("nan"), 0.1), (0.5, float("nan"))]
)
def test_a_friction_that_makes_no_sense_is_refused(grip):
    session = Session(replace(workshop_pole(), right=Friction(0.5, 0.5)))
    assert session.do(SetFriction("left", *grip)) is not None


def test_what_hangs_in_the_way_is_stood_on_top():
    state = two_fingers_from_build(read_build_text(HUNG, file="bar.toml"))
    (piece,) = state.pieces
    assert piece.part.hold == "clamped"
    assert piece.part.at_m == pytest.approx((0.15, 0.0, 0.017))
    assert state.sum.balance_point_m[0] == pytest.approx((150 * 50 + 200 * 15) / 35000)


def test_what_has_no_length_is_refused_in_words():
    build = read_build_text(
        'format = 1\ntitle = "Nut"\nunits = "g-cm"\npart = [{name = "nut", weight = 5, at = 1}]', file="n"
    )
    with pytest.raises(UnfitBuildError) as refused:
        two_fingers_from_build(build)
    assert "length" in refused.value.why.template


@pytest.mark.parametrize("make", [workshop_pole, oar])
def test_saved_and_opened_it_is_the_same_to_the_last_bit(make):
    session = Session(make())
    low_m, high_m = session.state.span_m
    session.do(MoveFingers(low_m + 0.07, high_m - 0.11))
    session.do(SetFriction("right", 0.2, 0.12))
    session.do(Hang(0.1, 0.31))
    session.do(Measure(0.001, 0.0005))
    text = build_text(build_from_two_fingers(session.state))
    again = two_fingers_from_build(read_build_text(text, file="again.toml"))
    # Places and weights go through the file's own units: once written, they come back to the last bit.
    assert build_text(build_from_two_fingers(again)) == text
    assert again.right == session.state.right
    assert again.fingers_m == pytest.approx(session.state.fingers_m, abs=1e-15)
    for ours, theirs in zip(again.parts, session.state.parts, strict=True):
        assert ours.mass_kg == pytest.approx(theirs.mass_kg, rel=1e-15)
        assert ours.at_m == pytest.approx(theirs.at_m, abs=1e-15)
    session.do(OpenBuild(text))
    assert session.state == again
