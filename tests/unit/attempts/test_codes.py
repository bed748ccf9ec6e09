import random

import pytest

from lab.attempts.codes import (
    ALPHABET,
    RANDOM_CHARACTERS,
    meant_code,
    near_code,
    new_code,
    shown_code,
    tidy_code,
    valid_code,
)

#: Pairs that people misread in print or by hand.
LOOK_ALIKES = ("0O", "0Q", "0D", "OQ", "1I", "1L", "IL", "2Z", "5S", "8B", "6G", "UV", "VY")


def test_a_code_has_at_least_six_random_characters_and_a_check_character():
    assert RANDOM_CHARACTERS >= 6
    assert len(new_code()) == RANDOM_CHARACTERS + 1


def test_no_two_characters_of_a_code_look_alike():
    for pair in LOOK_ALIKES:
        assert not set(pair) <= set(ALPHABET), pair


def test_a_code_spells_no_word_and_is_no_number_with_an_exponent():
    assert not set("AEIOUY") & set(ALPHABET)


def test_the_same_randomness_gives_the_same_code_and_fresh_randomness_another():
    assert new_code(random.Random(3)) == new_code(random.Random(3))
    assert len({new_code() for _ in range(200)}) == 200  # the chance of a clash is about 5 in 100 000


def test_every_new_code_is_valid():
    source = random.Random(11)
    assert all(valid_code(new_code(source)) for _ in range(500))


def test_one_wrong_character_is_always_noticed():
    code = new_code(random.Random(5))
    for place in range(len(code)):
        for other in set(ALPHABET) - {code[place]}:
            assert not valid_code(code[:place] + other + code[place + 1 :])


def test_two_exchanged_characters_are_always_noticed():
    source = random.Random(7)
    for _ in range(50):
        code = new_code(source)
        for first in range(len(code)):
            for second in range(first + 1, len(code)):
                if code[first] == code[second]:
                    continue
                swapped = list(code)
                swapped[first], swapped[second] = swapped[second], swapped[first]
                assert not valid_code("".join(swapped))


@pytest.mark.parametrize("text", ["", "K7MX", "K7MX34TCC", "k7mx34tc", "K7MX 34T", "ÄÖÜ34679"])
def test_what_is_no_code_is_not_valid(text: str):
    assert not valid_code(text)


def test_a_code_may_be_typed_with_dashes_spaces_and_small_letters():
    code = new_code(random.Random(5))
    assert tidy_code(f" {code[:4].lower()}-{code[4:]} ") == code


def test_a_code_is_shown_in_two_halves():
    assert shown_code("K7M4T9X3") == "K7M4-T9X3"


@pytest.mark.parametrize("typed", ["K7M4T9X3", "k7m4-t9x3", " k7m4 t9x3 ", "KZM4T9X3", "K7MAT9X3", "k7m4tgx3"])
def test_a_code_is_understood_in_small_letters_with_spaces_and_with_look_alikes(typed):
    known = ("K7M4T9X3", "R3WNJH74")
    meant = meant_code(typed, known)
    # The last reads a g for a 9: no code has it, and as a 6 or C it makes none.
    assert meant == (None if "g" in typed else "K7M4T9X3")


@pytest.mark.parametrize("typed", ["", "-", "K7M4", "K7M4T9X4", "K7M4T9X3K", "😀" * 8, "00000000"])
def test_what_is_no_code_is_not_taken_for_one(typed):
    assert meant_code(typed, ("K7M4T9X3",)) is None


def test_the_nearest_known_code_is_found():
    assert near_code("k7m4 t9x4", ("R3WNJH74", "K7M4T9X3")) == "K7M4T9X3"
    assert near_code("ZZZZ", ("R3WNJH74",)) is None
