"""The moment sum as JSON and as a table."""

import dataclasses
import json
import math

import pytest

from lab.app.paths import find_paths
from lab.files import UNITS, read_build, read_build_text
from lab.mechanics import MechanicsError
from lab.outline.words import Words
from lab.terminal.sums import aligned, decimals_for, doubt_decimals, sum_document, sum_table

BOAT_HOOK = """\
format = 1
title = "Boat hook"
units = "g-cm"
reference = 0.0

[[part]]
name = "pole"
weight = 120
at = 20.0
shape = { kind = "rod", length = 40 }

[[part]]
name = "hook"
weight = 480
at = 2.0
weight_doubt = 1
at_doubt = 0.1
"""
# As the example of the command's description prints it, all but the doubt, which it rounds.
PRINTED = {
    "title": "Boat hook",
    "units": "g-cm",
    "reference": [0.0, 0.0, 0.0],
    "parts": [
        {"name": "pole", "weight": 120.0, "arm": [20.0, 0.0, 0.0], "moment": [2400.0, 0.0, 0.0]},
        {"name": "hook", "weight": 480.0, "arm": [2.0, 0.0, 0.0], "moment": [960.0, 0.0, 0.0]},
    ],
    "weight": 600.0,
    "moment": [3360.0, 0.0, 0.0],
    "balance_point": [5.6, 0.0, 0.0],
}


def build(text=BOAT_HOOK):
    return read_build_text(text, file="b.toml")


def head(units="g-cm"):
    return f'format = 1\ntitle = "T"\nunits = "{units}"\n'


def part(name, weight, at, more=""):
    return f'[[part]]\nname = "{name}"\nweight = {weight}\nat = {at}\n{more}'


def shown(document):
    """What is described of a sum as it is printed, without its doubt: equal text is equal to the last bit, and no
    -0.0."""
    return json.dumps({key: value for key, value in document.items() if key in PRINTED})


def table(text=BOAT_HOOK, **chosen):
    return sum_table(build(text), Words("en"), **chosen).replace("\N{NARROW NO-BREAK SPACE}", " ").split("\n")


# --- the document ---


def test_the_boat_hook_prints_exactly_as_described():
    document = sum_document(build())
    assert shown(document) == json.dumps(PRINTED)
    # √((480/600 × 0.1)² + ((2 − 5.6)/600 × 1)²), JCGM 100 equation 10 worked by hand: √(0.0064 + 0.000036).
    assert document["doubt"] == pytest.approx([math.sqrt(0.006436), 0.0, 0.0], rel=1e-12)


@pytest.mark.parametrize("from_file", [True, False], ids=["by the file", "for this one sum"])
def test_from_10_the_arms_and_moments_change_and_the_balance_point_does_not(from_file):
    if from_file:
        document = sum_document(build(BOAT_HOOK.replace("reference = 0.0", "reference = 10")))
    else:
        document = sum_document(build(), reference=(10.0, 0.0, 0.0))
    assert document["reference"] == [10.0, 0.0, 0.0]
    assert [row["arm"][0] for row in document["parts"]] == [10.0, -8.0]
    assert [row["moment"][0] for row in document["parts"]] == [1200.0, -3840.0]
    assert document["moment"] == [-2640.0, 0.0, 0.0]
    assert document["balance_point"] == [5.6, 0.0, 0.0]
    assert document["doubt"] == sum_document(build())["doubt"]
    assert "-0.0" not in json.dumps(document)


def test_with_other_units_every_number_in_and_out_is_in_them():
    document = sum_document(build(), units="kg-m", reference=(0.1, 0.0, 0.0))
    assert document["units"] == "kg-m"
    assert document["parts"][0] == {
        "name": "pole", "weight": 0.12, "arm": [0.1, 0.0, 0.0], "moment": [0.012, 0.0, 0.0],
    }  # fmt: skip
    assert (document["weight"], document["moment"][0], document["balance_point"][0]) == (0.6, -0.0264, 0.056)


def test_in_newtons_a_weight_is_mass_times_standard_gravity():
    document = sum_document(build(), units="N-m")
    assert document["parts"][0]["weight"] == 1.176798  # 0.12 kg × 9.80665 m/s², exact
    assert document["moment"][0] == 0.32950344  # 0.0336 kg·m × 9.80665 m/s², exact
    assert document["balance_point"][0] == 0.056


def test_in_pounds_and_inches_the_definitions_hold():
    document = sum_document(build(), units="lb-in")
    assert document["weight"] == pytest.approx(0.6 / 0.45359237, rel=1e-15)
    assert document["balance_point"][0] == pytest.approx(0.056 / 0.0254, rel=1e-15)


@pytest.mark.parametrize("units", UNITS)
def test_tenths_come_out_as_tenths_in_the_files_own_units(units):
    text = head(units) + part("a", 0.3, 15.3) + part("b", 0.1, 0.7)
    document = sum_document(build(text), reference=(10.0, 0.0, 0.0))
    # 15.3 − 10 is 5.300000000000001 in floats; 5.3 is what a person with a pencil gets.
    assert [row["arm"][0] for row in document["parts"]] == [5.3, -9.3]
    assert document["moment"][0] == 0.66
    assert document["balance_point"][0] == 11.65


def test_what_is_no_short_decimal_keeps_its_full_precision():
    document = sum_document(build(head() + part("a", 1, 0) + part("b", 2, 1)))
    assert document["balance_point"][0] == 2 / 3


def test_without_doubts_the_doubt_is_null_as_a_whole():
    text = BOAT_HOOK.replace("weight_doubt = 1\n", "").replace("at_doubt = 0.1\n", "")
    assert sum_document(build(text))["doubt"] is None


def test_a_bar_and_a_cut_out_are_rows_and_the_cut_out_weighs_less_than_nothing():
    text = head() + "[bar]\nlength = 100\nweight = 150\n" + part("hole", 30, 20, "cut = true\n")
    document = sum_document(build(text))
    assert [(row["name"], row["weight"]) for row in document["parts"]] == [("bar", 150.0), ("hole", -30.0)]
    assert document["parts"][1]["moment"] == [-600.0, 0.0, 0.0]
    assert (document["weight"], document["balance_point"][0]) == (120.0, 57.5)


def test_without_pivot_supports_tanks_surfaces_and_limits_there_is_nothing_about_them():
    assert set(sum_document(build())) == {*PRINTED, "doubt", "inertia", "symmetry"}


PIVOT_BAR = "[bar]\nlength = 100\nweight = 150\n"


@pytest.mark.parametrize(
    ("parts", "pivot", "moment", "goes"),
    [
        # The survey bar by hand: 200 × 25 − 100 × 32 − 50 × 50 − 150 × 10 = −2200.
        (part("a", 200, 15) + part("b", 100, 72) + part("c", 50, 90), "at = 40", -2200.0, "right"),
        (part("a", 200, 15), "at = 50", 7000.0, "left"),
        (part("a", 200, 25) + part("b", 100, 100), "at = 50", 0.0, "level"),
        (part("a", 10, 40), "at = 50\npad = 1", 100.0, "level"),
    ],
)
def test_the_pivot_says_which_end_drops_and_by_what_moment(parts, pivot, moment, goes):
    found = sum_document(build(f"{head()}{PIVOT_BAR}{parts}[pivot]\n{pivot}\n"))["pivot"]
    assert (found["moment"], found["goes"]) == (moment, goes)
    assert found["tilt"] == (0.0 if goes == "level" else None)


@pytest.mark.parametrize("units", UNITS)
def test_the_tilt_is_in_degrees_anticlockwise_and_the_same_in_all_units(units):
    # Lever 100 × 10 to the left and 100 × 40 below the pin: tan θ = 1/4 by the static balance of moments.
    text = head() + part("a", 100, "[40, 0, -40]") + "[pivot]\nat = 50\n"
    found = sum_document(build(text), units=units)["pivot"]
    assert found["goes"] == "left"
    assert found["tilt"] == pytest.approx(math.degrees(math.atan(0.25)), rel=1e-12)
    assert found["at"] == pytest.approx(UNITS[units].from_m(0.5), rel=1e-15)


SUPPORTED = part("bar", 100, 50) + '[[support]]\nname = "l"\nat = {}\n[[support]]\nname = "r"\nat = {}\n'


def test_reactions_are_in_the_files_weight_unit_and_add_up_to_the_weight():
    document = sum_document(build(head() + SUPPORTED.format(0, 80)))
    # 100 g at 50 of 80: 5/8 on the right by the lever.
    assert document["reactions"] == [{"name": "l", "force": 37.5}, {"name": "r", "force": 62.5}]
    assert document["tips"] is False


def test_reactions_in_newtons_are_forces():
    document = sum_document(build(head() + SUPPORTED.format(0, 80)), units="N-m")
    # 37.5 g and 62.5 g times 9.80665 m/s², written to eight figures.
    assert [each["force"] for each in document["reactions"]] == pytest.approx([0.36774938, 0.61291563], rel=1e-7)


def test_where_it_tips_there_are_no_reactions():
    document = sum_document(build(head() + SUPPORTED.format(0, 40)))
    assert (document["reactions"], document["tips"]) == (None, True)


def test_units_that_are_not_there_are_refused():
    with pytest.raises(ValueError, match="use one of g-cm, kg-m, N-m, lb-in"):
        sum_document(build(), units="stone")


def test_a_build_of_nothing_has_no_sum():
    with pytest.raises(MechanicsError):
        sum_document(dataclasses.replace(build(), parts=()))


# --- the reference ---


@pytest.mark.parametrize("along", [1e300, -1.1e9, math.inf, math.nan])
def test_a_reference_out_of_reach_is_refused_with_what_would_do(along):
    with pytest.raises(MechanicsError, match="write a place within"):
        sum_document(build(), reference=(along, 0.0, 0.0))


@pytest.mark.parametrize("along", [1e9, -1e9, 12345.678901234, -0.0])
def test_the_balance_point_is_the_same_to_the_last_bit_from_any_reference(along):
    # Thirds and sevenths: no short decimal that rounding could bring back.
    text = head() + part("a", 1, 0.1) + part("b", 2, 1.7) + part("c", 4, 1.1)
    document = sum_document(build(text), reference=(along, 0.0, along))
    assert document["balance_point"] == sum_document(build(text))["balance_point"]
    assert "-0.0" not in json.dumps(document["reference"])


# --- the table ---


def test_the_table_of_the_boat_hook():
    assert table() == [
        "Boat hook",
        "Arms are measured from 0.0 cm.",
        "",
        "part   weight g   arm cm   moment g·cm",
        "pole        120     20.0         2 400",
        "hook        480      2.0           960",
        "──────────────────────────────────────",
        "sum         600                  3 360",
        "",
        "3 360 / 600 = 5.6 cm",
        "5.60 ± 0.08 cm (± one standard uncertainty)",
    ]


def test_from_another_reference_the_table_says_how_the_arm_leads_to_the_same_place():
    lines = table(reference=(10.0, 0.0, 0.0))
    assert lines[1] == "Arms are measured from 10.0 cm."
    assert "hook        480     −8.0        −3 840" in lines
    assert "−2 640 / 600 = −4.4 cm from the reference line at 10.0 cm; balance point 5.6 cm" in lines


def test_across_and_up_show_where_there_is_something_in_them_only():
    up = head() + part("a", 100, "[5, 0, 2]") + part("b", 100, 7)
    lines = table(up)
    assert lines[1] == "Arms are measured from 0.0 cm along, 0.0 cm up."
    assert "arm up cm" in lines[3]
    assert "across" not in "".join(lines)
    assert lines[-2:] == ["along: 1 200 / 200 = 6.0 cm", "up: 200 / 200 = 1.0 cm"]
    assert "arm across cm" in table(head() + part("a", 100, "[5, 1, 0]"))[3]


def test_columns_stay_aligned_whatever_the_letters():
    lines = aligned([["név", "1"], ["魚", "22"], ["e\u0301e", "333"]])
    assert lines == ["név     1", "魚     22", "e\u0301e    333"]


@pytest.mark.parametrize(
    ("pivot", "sentence"),
    [
        (
            "at = 50",
            "On the pivot at 50.0 cm the left end drops: 7 000 g·cm anticlockwise. Nothing holds it before the stop.",
        ),
        (
            "at = 15\nup = 90",
            "On the pivot at 15.0 cm the right end drops: 5 250 g·cm clockwise. It comes to rest at a tilt of 9.5°.",
        ),
        (
            "at = 29.999\nup = 90",
            "On the pivot at 29.999 cm the right end drops: 0.35 g·cm clockwise. "
            "It comes to rest at a tilt of 0.0006°.",
        ),
        ("at = 30", "On the pivot at 30.0 cm it stays level."),
    ],
)
def test_what_the_pivot_does_is_said_in_words(pivot, sentence):
    text = head() + "[bar]\nlength = 100\nweight = 150\n" + part("a", 200, 15) + f"[pivot]\n{pivot}\n"
    assert sentence in table(text)


def test_reactions_are_a_line_a_support():
    lines = table(head() + SUPPORTED.format(0, 80))
    assert lines[-2:] == ["l carries 37.5 g", "r carries 62.5 g"]
    assert table(head() + SUPPORTED.format(0, 40))[-1] == "It tips: the balance point lies outside the supports."


def test_reactions_add_up_to_the_weight_as_they_are_written():
    supports = "".join(f'[[support]]\nname = "{name}"\nat = {at}\n' for name, at in (("l", 0.6), ("r", 2.6)))
    lines = table(head("kg-m") + part("a", 2.4, 1.6) + part("b", 1.35, 3.05) + part("c", 0.9, 0.1) + supports)
    assert lines[-4:-2] == ["l carries 2.021 kg", "r carries 2.629 kg"]
    assert 2021 + 2629 == 4650, "in grams, as written"


def test_a_reaction_that_is_little_is_not_written_as_none():
    lines = table(head() + SUPPORTED.format(0, 50.002))
    assert lines[-2:] == ["l carries 0.004 g", "r carries 99.996 g"]


@pytest.mark.parametrize(
    ("parts", "caution"),
    [
        (part("a", 200, 15, 'hold = "hung"\n'), "hung weights fall"),
        (part("a", 2500, 15), "this is heavy"),
        (part("a", 200, 15), None),
    ],
)
def test_a_caution_stands_where_something_can_hurt(parts, caution):
    text = "\n".join(table(head() + parts))
    assert (caution in text) if caution else ("Caution" not in text)


@pytest.mark.parametrize("language", ["xx", "xr"])
def test_every_word_of_the_table_passes_the_catalogue(language):
    build_file = find_paths().shipped_builds / "survey-bar.toml"
    text = sum_table(read_build(build_file), Words(language))
    for word in ("part", "weight", "moment", "sum", "Caution", "brass", "drops"):
        assert word not in text


def test_a_table_without_end_of_line_is_never_wider_than_its_rule():
    lines = table()
    rule = next(line for line in lines if line.startswith("─"))
    rows = lines[3 : lines.index(rule) + 2]
    assert {len(row) for row in rows} == {len(rule)}


@pytest.mark.parametrize(
    ("values", "least", "decimals"),
    [
        ([120.0, 480.0], 0, 0),
        ([20.0, 2.0], 1, 1),
        ([20.25, 2.0], 1, 2),
        ([1 / 3], 0, 5),
        ([1000 / 3], 1, 2),
        ([1e6 / 3], 1, 1),
        ([0.0], 1, 1),
        ([], 0, 0),
    ],
)
def test_a_column_has_as_many_decimals_as_its_numbers_need(values, least, decimals):
    assert decimals_for(values, least=least) == decimals


@pytest.mark.parametrize(
    ("doubt", "decimals"), [(0.0802, 2), (0.14, 2), (0.2, 1), (0.96, 1), (1.4, 1), (3.0, 0), (25.0, 0), (1e-9, 6)]
)
def test_a_doubt_shows_one_figure_or_two_where_the_first_is_a_1(doubt, decimals):
    assert doubt_decimals(doubt) == decimals
