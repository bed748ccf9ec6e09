"""Sums of groups, tanks, cut-outs, three supports, surfaces and limits: as JSON and as a table."""

import json
import math
import re

import pytest

from lab.app.paths import find_paths
from lab.files import UNITS, read_build, read_build_text
from lab.mechanics import mean_chord, neutral_point
from lab.outline.words import Words
from lab.terminal.sums import sum_document, sum_table

CAUTION = "For learning only; a real aircraft is loaded by its approved data, local rules and licensed people."


def shipped(name):
    return read_build(find_paths().shipped_builds / f"{name}.toml")


def written(text, units="g-cm"):
    return read_build_text(f'format = 1\ntitle = "T"\nunits = "{units}"\n{text}', file="b.toml")


def part(name, weight, at, more=""):
    return f'[[part]]\nname = "{name}"\nweight = {weight}\nat = {at}\n{more}'


def group(name, at, more=""):
    return f'[[group]]\nname = "{name}"\nat = {at}\n{more}'


def tank(name, at, contents, capacity=200, density=0.8):
    return f'[[tank]]\nname = "{name}"\nat = {at}\ncapacity = {capacity}\ncontents = {contents}\ndensity = {density}\n'


def support(name, at):
    return f'[[support]]\nname = "{name}"\nat = {at}\n'


def table(build, **chosen):
    return sum_table(build, Words("en"), **chosen).replace("\N{NARROW NO-BREAK SPACE}", " ").split("\n")


def rows(document):
    return {row["name"]: (row["weight"], row["arm"], row["moment"]) for row in document["parts"]}


# --- the survey drone: the numbers of the drawing, worked by hand ---

DRONE_MOMENTS = {
    "fuselage": (420.0, 44.0, 18480.0),
    "wing": (380.0, 42.5, 16150.0),
    "tail": (90.0, 92.0, 8280.0),
    "battery": (300.0, 8.5, 2550.0),
    "camera": (160.0, 29.0, 4640.0),
    "left tank": (120.0, 42.5, 5100.0),
    "right tank": (60.0, 42.5, 2550.0),
}


def test_the_survey_drone_has_the_rows_and_the_balance_point_of_its_drawing():
    document = sum_document(shipped("survey-drone"))
    found = {name: (weight, arm[0], moment[0]) for name, (weight, arm, moment) in rows(document).items()}
    assert found == DRONE_MOMENTS
    assert (document["weight"], document["moment"][0]) == (1530.0, 57750.0)
    assert document["balance_point"][0] == 57750 / 1530
    assert document["balance_point"][1] == (60 - 120) * 16 / 1530


def test_the_drone_is_inside_its_limits_by_the_distance_to_the_nearer_edge():
    limits = sum_document(shipped("survey-drone"))["limits"]
    assert limits["inside"] is True
    assert limits["along"] == [[36.0, 40.0]]
    assert (limits["along_out"], limits["weight_out"], limits["across_out"]) == (0.0, 0.0, 0.0)
    # Differences of numbers near 38: round-off of some 1e-14.
    assert limits["along_margin"] == pytest.approx(57750 / 1530 - 36, rel=1e-12)
    assert limits["across_margin"] == pytest.approx(1 - 960 / 1530, rel=1e-12)


def test_the_drones_tanks_are_listed_and_its_balance_point_empty_and_full():
    document = sum_document(shipped("survey-drone"))
    assert document["tanks"][0] == {
        "name": "left tank", "contents": 150.0, "capacity": 200.0, "share": 0.75, "density": 0.8, "weight": 120.0,
    }  # fmt: skip
    empty, full = document["tanks_empty"], document["tanks_full"]
    assert (empty["weight"], full["weight"]) == (1350.0, 1670.0)
    # Without tanks 57750 − 180 × 42.5 = 50100; full 50100 + 320 × 42.5 = 63700.
    assert empty["balance_point"][0] == pytest.approx(50100 / 1350, rel=1e-14)
    assert full["balance_point"][0] == pytest.approx(63700 / 1670, rel=1e-14)
    assert (empty["balance_point"][1], empty["inside"], full["inside"]) == (0.0, True, True)


def test_mean_chord_neutral_point_and_margin_are_those_of_the_mechanics():
    build = shipped("survey-drone")
    document = sum_document(build)
    chord, neutral = mean_chord(build.surfaces[0]), neutral_point(build.surfaces)
    # A root of 20 and a tip of 10: ⅔ (400 + 200 + 100) / 30.
    assert document["mean_chord"]["length"] == pytest.approx(140 / 9, rel=1e-14)
    assert document["mean_chord"]["surface"] == "wing"
    # The lattice is solved in other units, so its round-off differs: some thousand operations.
    assert document["neutral_point"]["at"] == pytest.approx(100 * neutral.at_m, rel=1e-10)
    margin = (neutral.at_m - 0.5775 / 1.53) / chord.length_m
    assert document["margin"] == pytest.approx(margin, rel=1e-9)
    assert (document["pitch"]["goes"], document["pitch"]["sureness"]) == ("steady", "sure")


@pytest.mark.parametrize("units", UNITS)
def test_the_margin_and_the_verdicts_are_the_same_in_all_units(units):
    document = sum_document(shipped("survey-drone"), units=units)
    own = sum_document(shipped("survey-drone"))
    # Converting rounds each length once.
    assert document["margin"] == pytest.approx(own["margin"], rel=1e-10)
    assert document["limits"]["inside"] is True
    assert [plane["saves"] for plane in document["symmetry"]] == ["across"]
    length = UNITS[units].from_m(0.01)
    assert document["neutral_point"]["at"] == pytest.approx(own["neutral_point"]["at"] * length, rel=1e-10)
    weight = UNITS[units].from_kg(0.001)
    for name, (grams, _, _) in rows(own).items():
        assert rows(document)[name][0] == pytest.approx(grams * weight, rel=1e-14)
    moments = [own["inertia"]["principal"], document["inertia"]["principal"]]
    assert moments[1] == pytest.approx([each * weight * length**2 for each in moments[0]], rel=1e-10)


def test_the_drones_table_says_what_decides():
    lines = table(shipped("survey-drone"))
    assert "along: 57 750 / 1 530 = 37.745 cm" in lines
    assert "left tank            150           200       75        120" in lines
    assert "With the tanks empty: 1 350 g, balance point 37.111 cm along, inside the limits." in lines
    assert "Inside the limits." in lines
    assert (
        "Allowed along at this weight: 36.0 to 40.0 cm. The balance point is 1.7451 cm from the nearer edge." in lines
    )
    margin = "Margin 16.3 % ± 3.1 % of the mean chord (± one standard uncertainty): steady in pitch."
    assert any(line.startswith(margin) for line in lines)
    assert "Left and right are nearly alike: without the sum across it would be 0.62745 cm out." in lines
    assert lines[-1] == CAUTION


@pytest.mark.parametrize(
    ("units", "neutral"), [("g-cm", "40.3 cm"), ("kg-m", "0.403 m"), ("N-m", "0.403 m"), ("lb-in", "15.86 in")]
)
def test_the_neutral_point_has_figures_enough_for_its_chord_in_all_units(units, neutral):
    lines = table(shipped("survey-drone"), units=units)
    assert any(line.startswith(f"Neutral point {neutral}, at 39.6 % of the mean chord;") for line in lines)


# --- groups ---


def test_a_groups_parts_are_rows_in_the_files_own_coordinates():
    document = sum_document(written(group("pod", "[30, 5, 1]") + part("motor", 60, "[2, 0.3, 0]", 'group = "pod"\n')))
    assert rows(document) == {"pod/motor": (60.0, [32.0, 5.3, 1.0], [1920.0, 318.0, 60.0])}


def test_turned_by_right_angles_a_group_leaves_no_round_off_where_nothing_is_meant():
    # Yawed nose right by 90° a part behind the group's zero comes to its left: along turns into −across.
    text = group("boom", 10, "turn = [0, 0, 90]\n") + part("tip", 50, 7, 'group = "boom"\n') + part("root", 50, 10)
    document = sum_document(written(text))
    assert rows(document)["boom/tip"] == (50.0, [10.0, -7.0, 0.0], [500.0, -350.0, 0.0])
    assert document["balance_point"] == [10.0, -3.5, 0.0]
    assert "e-1" not in json.dumps(document)
    assert "arm up cm" not in table(written(text))[3]


def test_groups_in_groups_are_named_by_their_way_and_turned_with_it():
    # The inner zero comes to (10, −20, 0); there, twice turned by 90°, what lies 3 along is 3 forward.
    text = (
        group("outer", 10, "turn = [0, 0, 90]\n")
        + group("inner", 20, 'turn = [0, 0, 90]\ngroup = "outer"\n')
        + part("p", 5, 3, 'group = "inner"\n')
    )
    assert rows(sum_document(written(text))) == {"outer/inner/p": (5.0, [7.0, -20.0, 0.0], [35.0, -100.0, 0.0])}


def test_a_turned_rod_has_its_inertia_turned_with_it():
    rod = part("rod", 12, 0, 'group = "g"\nshape = { kind = "rod", length = 10 }\n')
    inertia = sum_document(written(group("g", 4, "turn = [0, 90, 0]\n") + rod))["inertia"]
    # 12 × 10² / 12 about both axes across the rod, which now stands up.
    assert inertia["tensor"] == [[100.0, 0.0, 0.0], [0.0, 100.0, 0.0], [0.0, 0.0, 0.0]]
    assert inertia["principal"] == [0.0, 100.0, 100.0]


# --- cut-outs, tanks ---


def test_a_hole_as_a_cut_out_weighs_less_than_nothing_and_turns_the_sum_with_it():
    disc = 'shape = {{ kind = "disc", radius = {} }}\n'
    text = part("board", 400, 0, disc.format(20)) + part("hole", 100, 10, disc.format(10) + "cut = true\n")
    document = sum_document(written(text))
    assert rows(document)["hole"] == (-100.0, [10.0, 0.0, 0.0], [-1000.0, 0.0, 0.0])
    assert document["balance_point"][0] == -1000 / 300
    # About the balance point, up: 400 × 20²/4 + 400 × (10/3)² − 100 × 10²/4 − 100 × (10 + 10/3)².
    expected = 40000 + 400 * 100 / 9 - 2500 - 100 * 1600 / 9
    assert document["inertia"]["tensor"][2][2] == pytest.approx(expected, rel=1e-13)


def test_cut_outs_that_take_away_what_is_not_there_leave_a_sum_and_no_inertia():
    text = part("a", 100, 0) + part("b", 90, 50, "cut = true\n")
    document = sum_document(written(text))
    assert document["balance_point"][0] == -450.0
    assert document["inertia"] is None
    assert table(written(text))


def test_an_empty_tank_is_a_row_of_no_weight():
    document = sum_document(written(part("a", 100, 10) + tank("t", "[30, 2, 0]", 0)), reference=(10.0, 0.0, 0.0))
    assert document["parts"][1] == {"name": "t", "weight": 0.0, "arm": [20.0, 2.0, 0.0], "moment": [0.0, 0.0, 0.0]}
    assert document["weight"] == 100.0
    assert table(written(part("a", 100, 10) + tank("t", 30, 0)))


@pytest.mark.parametrize(
    ("units", "density", "weight"),
    # mL of 0.8 g, L of 0.8 kg, L of 7.9 N and US gallons of 6 lb.
    [("g-cm", 0.8, 8.0), ("kg-m", 0.8, 8.0), ("N-m", 7.9, 79.0), ("lb-in", 6, 60.0)],
)
def test_ten_of_the_files_volumes_weigh_ten_times_the_density(units, density, weight):
    document = sum_document(written(tank("t", 3, 10, density=density), units))
    assert rows(document)["t"][0] == weight
    assert document["tanks"][0]["contents"] == 10.0
    assert document["tanks_empty"] is None


# --- three supports ---

TRIPOD = support("front", 0) + support("left", "[90, -30, 0]") + support("right", "[90, 30, 0]")


def test_three_supports_carry_by_their_triangle():
    document = sum_document(written(part("a", 900, "[60, 10, 5]") + TRIPOD))
    # By moments about the rear line 900 × 30/90 = 300 in front; of the other 600 the right has 900 × 10 / 30 more.
    assert document["reactions"] == [
        {"name": "front", "force": 300.0},
        {"name": "left", "force": 150.0},
        {"name": "right", "force": 450.0},
    ]
    assert document["tips"] is False
    assert "right carries 450 g" in table(written(part("a", 900, "[60, 10, 5]") + TRIPOD))


def test_outside_the_triangle_it_tips_and_nothing_is_carried():
    document = sum_document(written(part("a", 900, "[30, 20, 5]") + TRIPOD))
    assert (document["reactions"], document["tips"]) == (None, True)


def test_over_a_corner_one_support_carries_all_and_none_less_than_nothing():
    document = sum_document(written(part("a", 900, "[90, 30, 5]") + TRIPOD))
    assert [each["force"] for each in document["reactions"]] == [0.0, 0.0, 900.0]


# --- limits and surfaces ---

WING = '[[surface]]\nname = "w"\nroot_chord = 20\ntip_chord = 20\nspan = 160\nat = 30\n'
FIN = '[[surface]]\nname = "f"\nroot_chord = 9\ntip_chord = 6\nspan = 9\nat = 80\nvertical = true\n'
LIMITS = "[limits]\noutline = [[30, 90], [40, 90], [36, 200], [30, 200]]\nacross = [-1, 2]\n"


@pytest.mark.parametrize(
    ("at", "weight", "out"),
    [
        ("[41, 0, 0]", 90, {"along_out": 1.0, "weight_out": 0.0, "across_out": 0.0}),
        ("[28.5, 0, 0]", 100, {"along_out": -1.5, "weight_out": 0.0, "across_out": 0.0}),
        ("[33, 2.5, 0]", 100, {"along_out": 0.0, "weight_out": 0.0, "across_out": 0.5}),
        ("[33, -4, 0]", 100, {"along_out": 0.0, "weight_out": 0.0, "across_out": -3.0}),
        ("[33, 0, 0]", 230, {"along_out": None, "weight_out": 30.0, "across_out": 0.0}),
        ("[33, 0, 0]", 80, {"along_out": None, "weight_out": -10.0, "across_out": 0.0}),
    ],
)
def test_outside_the_limits_it_says_by_how_much_and_in_words(at, weight, out):
    build = written(part("a", weight, at) + LIMITS)
    limits = sum_document(build)["limits"]
    assert limits["inside"] is False
    assert {key: limits[key] for key in out} == out
    lines = table(build)
    assert "OUTSIDE the limits." in lines
    assert lines[-1] == CAUTION


@pytest.mark.parametrize(
    ("at", "weight", "sentence"),
    [
        ("[41, 0, 0]", 90, "30.0 to 40.0 cm. The balance point is 1.0 cm beyond."),
        ("[28.5, 0, 0]", 90, "30.0 to 40.0 cm. The balance point is 1.5 cm short of it."),
        ("[33, 2.5, 0]", 100, "Allowed across: −1.0 to 2.0 cm. The balance point is 0.5 cm beyond."),
        ("[33, 0, 0]", 230, "It weighs 30 g more than they allow."),
        ("[33, 0, 0]", 80, "It weighs 10 g less than they allow for."),
    ],
)
def test_how_far_out_it_is_stands_in_the_table(at, weight, sentence):
    assert any(sentence in line for line in table(written(part("a", weight, at) + LIMITS)))


def test_a_straight_wing_alone_has_its_neutral_point_near_a_quarter_of_its_chord():
    document = sum_document(written(part("a", 100, 33) + WING))
    # A lattice of finite span sits a little ahead of the quarter that a thin section has; never by 2 % of the chord.
    assert document["neutral_point"]["percent"] == pytest.approx(25, abs=2)
    assert document["mean_chord"] == {"surface": "w", "length": 20.0, "at": 30.0, "balance_point_percent": 15.0}
    assert document["pitch"]["goes"] == "steady"
    assert sum_document(written(part("a", 100, 38) + WING))["pitch"]["goes"] == "runs away"
    assert any("runs away in pitch. This is sure." in line for line in table(written(part("a", 100, 38) + WING)))


def test_a_doubtful_balance_point_makes_the_margin_doubtful():
    sharp = sum_document(written(part("a", 100, 33) + WING))["pitch"]
    blurred = sum_document(written(part("a", 100, 33, "at_doubt = 0.8\n") + WING))["pitch"]
    # 0.8 of a chord of 20 is 4 %, beside the model's own.
    assert blurred["margin_doubt"] == pytest.approx(math.hypot(sharp["margin_doubt"], 0.04), rel=1e-12)


def test_a_fin_alone_has_no_neutral_point_and_says_why():
    document = sum_document(written(part("a", 100, 33) + FIN))
    assert (document["neutral_point"], document["margin"], document["mean_chord"]) == (None, None, None)
    assert document["pitch"] == {"goes": None, "why": "no surface lies flat"}
    assert "No neutral point: no surface lies flat." in table(written(part("a", 100, 33) + FIN))


def test_two_surfaces_that_lie_in_each_other_have_a_mean_chord_and_no_neutral_point():
    other = WING.replace('"w"', '"v"').replace("at = 30", "at = 35")
    document = sum_document(written(part("a", 100, 33) + WING + other))
    assert document["neutral_point"] is None
    assert document["pitch"]["why"]
    assert document["mean_chord"]["length"] == 20.0


@pytest.mark.parametrize(
    ("other", "why"),
    [
        ("root_chord = 0.001\ntip_chord = 0\nspan = 3\nat = 50\n", "root chord of surface 'far' is 5e-05 mean chords"),
        ("root_chord = 9\ntip_chord = 9\nspan = 1e-6\nat = 90\n", "span of surface 'far' is 5e-08 mean chords"),
        ("root_chord = 9\ntip_chord = 9\nspan = 9\nat = [9e8, 0, 0]\n", "'far' is 4.5e+07 mean chords from the wing"),
    ],
)
def test_surfaces_out_of_all_proportion_have_no_neutral_point_and_say_why(other, why):
    build = written(part("a", 100, 33) + WING + f'[[surface]]\nname = "far"\n{other}')
    assert why in sum_document(build)["pitch"]["why"]
    assert any(why in line for line in table(build))


@pytest.mark.parametrize("name", ["survey-drone", "glider", "tailless-wing", "foreplane", "one-motor"])
def test_the_caution_stands_below_every_airframe(name):
    assert table(shipped(name))[-1] == CAUTION
    assert sum_document(shipped(name))["caution"] == CAUTION
    assert sum_document(shipped(name))["pitch"]["goes"] == "steady"


@pytest.mark.parametrize("name", ["boat-hook", "camera-boom", "boat-cradle"])
def test_what_does_not_fly_has_no_such_caution(name):
    assert CAUTION not in table(shipped(name))
    assert "caution" not in sum_document(shipped(name))


def test_the_motor_off_centre_is_evened_by_the_battery():
    assert sum_document(shipped("one-motor"))["balance_point"][1] == 0.0


def test_a_plane_of_symmetry_saves_its_sum():
    document = sum_document(shipped("tailless-wing"))
    assert [plane["saves"] for plane in document["symmetry"] if plane["exact"]] == ["across", "up"]
    assert "Left and right are alike: the sum across may be left out." in table(shipped("tailless-wing"))


def test_among_very_many_parts_no_twins_are_sought():
    text = "".join(part(f"p{n}", 1, n) for n in range(121))
    assert sum_document(written(text))["symmetry"] is None


@pytest.mark.parametrize("language", ["xx", "xr"])
@pytest.mark.parametrize("name", ["survey-drone", "camera-boom", "boat-cradle", "mobile-branch"])
def test_every_word_of_an_airframes_table_passes_the_catalogue(language, name):
    text = sum_table(shipped(name), Words(language))
    for word in ("contents", "Inside", "Mean chord", "Neutral", "Margin", "alike", "Inertia", "learning", "carries"):
        assert word not in text


@pytest.mark.parametrize("path", sorted(find_paths().shipped_builds.glob("*.toml")), ids=lambda path: path.stem)
def test_every_shipped_build_has_a_sum_in_all_units_that_json_can_hold(path):
    for units in UNITS:
        document = sum_document(read_build(path), units=units)
        assert json.loads(json.dumps(document, allow_nan=False)) == document
        assert not re.search(r"-0\.0[],]", json.dumps(document))
        assert table(read_build(path), units=units)
