"""Tins, beads, rods and plates on the hanging bar."""

import random

import pytest

from lab.files import build_text, read_build_text
from lab.simulation import (
    Hang,
    HoldStill,
    LetGo,
    Move,
    Refused,
    Remove,
    Session,
    SetHold,
    Undo,
    build_from_hanging_bar,
    empty_bar,
    hanging_bar_from_build,
    workshop_bar,
)
from lab.simulation.benches.bar_parts import KINDS, bead_count, filled_kg, kind_of, strung_kg, water_kg
from lab.simulation.benches.bar_tasks import TASKS
from lab.simulation.benches.tasks import next_task
from lab.simulation.part_commands import Copy, Rename, Reweigh
from lab.simulation.records import flat, recorded
from lab.simulation.tool_commands import FitPart


def after(*commands, bar=None):
    session = Session(bar or empty_bar())
    for command in commands:
        assert session.do(command) is None, command
    return session.state


def test_a_tin_weighs_what_it_is_and_what_is_in_it():
    bar = after(FitPart("tin", 0.3), Reweigh(1, filled_kg(250.0)))
    tin = bar.weights[0]
    assert tin.mass_kg == 0.290
    assert water_kg(tin) == pytest.approx(0.250, abs=1e-12)  # round-off of one subtraction
    # 150 g at 50 cm and 290 g at 30 cm.
    assert bar.sum.balance_point_m[0] == pytest.approx((150 * 0.5 + 290 * 0.3) / 440, abs=1e-12)


@pytest.mark.parametrize("mass_kg", [0.039, 0.441])
def test_a_tin_holds_no_less_than_nothing_and_no_more_than_it_does(mass_kg):
    session = Session(after(FitPart("tin", 0.3)))
    assert isinstance(session.do(Reweigh(1, mass_kg)), Refused)


def test_beads_are_counted_from_one_to_ten():
    bar = after(FitPart("beads", 0.3), Reweigh(1, strung_kg(3)))
    assert bead_count(bar.weights[0]) == 3
    assert bar.weights[0].mass_kg == 0.06
    session = Session(bar)
    for wrong in (strung_kg(0), strung_kg(11), 0.05):
        assert isinstance(session.do(Reweigh(1, wrong)), Refused)
    for count in range(1, 11):
        session.do(Reweigh(1, strung_kg(count)))
        assert bead_count(session.state.weights[0]) == count


def test_a_rod_lies_on_the_bar_with_its_whole_length():
    assert after(FitPart("rod", 1.0)).weights[0].at_m == pytest.approx(0.9, abs=1e-12)  # half of 20 cm from the end
    assert after(FitPart("rod", 0.5), Move(1, 0.02)).weights[0].at_m == pytest.approx(0.1, abs=1e-12)


def test_such_parts_hang_only_as_they_do():
    for name, kind in KINDS.items():
        session = Session(after(FitPart(name, 0.5)))
        other = "hung" if kind.hold == "clamped" else "clamped"
        assert isinstance(session.do(SetHold(1, other)), Refused)


def test_a_name_is_taken_and_a_second_of_it_numbered():
    bar = after(Rename(1, "  the   big one "), Rename(2, "the big one"), bar=workshop_bar())
    assert [weight.name for weight in bar.weights[:2]] == ["the big one", "the big one (2)"]
    session = Session(bar)
    assert isinstance(session.do(Rename(1, "  ")), Refused)
    assert isinstance(session.do(Rename(9, "x")), Refused)


def test_what_is_saved_opens_the_same_bit_for_bit():
    bar = after(*(FitPart(name, 0.2 + 0.1 * at) for at, name in enumerate(KINDS)),
                Reweigh(1, filled_kg(123.0)), Reweigh(2, strung_kg(7)), Rename(1, "rain"))  # fmt: skip
    again = hanging_bar_from_build(read_build_text(build_text(build_from_hanging_bar(bar)), file="bar.toml"))
    assert flat(recorded(again)) == flat(recorded(bar))
    assert [kind_of(weight) for weight in again.weights] == list(KINDS.values())


def test_half_the_brass_is_asked_only_where_all_is_brass():
    brass = after(Hang(0.2, 0.3), Hang(0.2, 0.7))
    task = next_task(TASKS, brass, after="one-more")
    assert task is not None
    assert task.kind.name == "half"
    mixed = after(FitPart("tin", 0.5), bar=brass)
    kinds = {found.kind for kind in ("level", "one-more", "half") if (found := next_task(TASKS, mixed, after=kind))}
    assert "half" not in kinds
    assert not task.is_done(after(FitPart("tin", 0.5), Reweigh(1, 0.2)))


def test_random_commands_are_all_taken_back_bit_for_bit():
    dice = random.Random(31)
    first = workshop_bar()
    session = Session(first)
    for _ in range(1000):
        number, at_m = dice.randint(1, 40), dice.uniform(-0.1, 1.1)
        session.do(
            dice.choice(
                [
                    FitPart(dice.choice([*KINDS, "anvil"]), at_m), Move(number, at_m), Remove(number),
                    Reweigh(number, dice.choice([filled_kg(dice.randint(0, 500)), strung_kg(dice.randint(0, 12))])),
                    Rename(number, dice.choice(["", "rain", "tin"])), Copy(number, mirrored=dice.random() < 0.5),
                    SetHold(number, dice.choice(["hung", "clamped"])), LetGo(), HoldStill(),
                ]
            )
        )  # fmt: skip
    session.do(HoldStill())
    while session.can_undo:
        assert session.do(Undo()) is None
    assert flat(recorded(session.state)) == flat(recorded(first))
