"""Units convert by the exact definitions, and a number that was read is written again as it was."""

import pytest

from lab.files import UNITS

# NIST SP 811 (2008), appendix B.8: lb avoirdupois, inch, gallon (US), all marked exact; standard gravity, exact.
POUND_KG, INCH_M, GALLON_M3, GRAVITY = 0.45359237, 0.0254, 3.785411784e-3, 9.80665


def test_there_are_four_unit_systems_by_the_names_that_files_use():
    assert list(UNITS) == ["g-cm", "kg-m", "N-m", "lb-in"]
    assert all(system.name == name for name, system in UNITS.items())


@pytest.mark.parametrize(
    ("name", "kg", "m", "m3"),
    [
        ("g-cm", 1e-3, 1e-2, 1e-6),
        ("kg-m", 1.0, 1.0, 1e-3),
        ("N-m", 1 / GRAVITY, 1.0, 1e-3),
        ("lb-in", POUND_KG, INCH_M, GALLON_M3),
    ],
)
def test_one_unit_of_each_is_what_the_standards_say(name, kg, m, m3):
    system = UNITS[name]
    # A conversion rounds once or twice: a few units in the last place.
    assert system.to_kg(1.0) == pytest.approx(kg, rel=5e-16)
    assert system.to_m(1.0) == pytest.approx(m, rel=5e-16)
    assert system.to_kg_m(1.0) == pytest.approx(kg * m, rel=5e-16)
    assert system.to_kg_m2(1.0) == pytest.approx(kg * m * m, rel=1e-15)
    assert system.to_m3(1.0) == pytest.approx(m3, rel=5e-16)


def test_words_are_the_symbols_a_person_reads():
    words = [(each.weight_word, each.length_word, each.moment_word, each.volume_word) for each in UNITS.values()]
    assert words == [
        ("g", "cm", "g·cm", "mL"),
        ("kg", "m", "kg·m", "L"),
        ("N", "m", "N·m", "L"),
        ("lb", "in", "lb·in", "US gal"),
    ]


@pytest.mark.parametrize("number", [120.0, 5.6, 0.1, 0.3, 2.675, 1e-9, 123456.789, -8.0, 0.0])
@pytest.mark.parametrize("system", UNITS.values(), ids=list(UNITS))
def test_a_number_that_was_read_is_written_again_as_it_was(system, number):
    pairs = [
        (system.to_kg, system.from_kg),
        (system.to_m, system.from_m),
        (system.to_kg_m, system.from_kg_m),
        (system.to_kg_m2, system.from_kg_m2),
        (system.to_m3, system.from_m3),
    ]
    assert [write(read(number)) for read, write in pairs] == [number] * len(pairs)


def test_120_grams_stay_120_and_not_a_hair_more():
    assert repr(UNITS["g-cm"].from_kg(0.12)) == "120.0"
