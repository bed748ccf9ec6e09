"""Every word that is shown or said goes through one place."""

import gettext
import string

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lab.outline import LANGUAGES, Words, catalogue_messages, msg
from lab.outline.pseudo import dressed, dressed_template


def test_english_is_said_as_written_with_its_values_put_in():
    assert Words().say("balances at {place} cm", place="44.4") == "balances at 44.4 cm"


def test_a_number_must_be_written_before_it_is_said():
    with pytest.raises(TypeError, match=r"place=44\.4 is not text; words\.number"):
        Words().say("balances at {place} cm", place=44.4)


def test_braces_in_a_value_are_shown_and_never_filled():
    assert Words().say("{title} is open", title="{0.__class__}") == "{0.__class__} is open"


@pytest.mark.parametrize(
    ("value", "decimals", "written"),
    [
        (22200, 0, "22\u202f200"),
        (44.44, 1, "44.4"),
        (-2640, 0, "\u22122\u202f640"),
        (-0.04, 1, "0.0"),
        (0.05, 2, "0.05"),
        (1234567.5, 1, "1\u202f234\u202f567.5"),
    ],
)
def test_numbers_have_narrow_spaces_a_true_minus_and_no_minus_nought(value, decimals, written):
    assert Words().number(value, decimals) == written


@pytest.mark.parametrize("value", [float("nan"), float("inf"), float("-inf")])
def test_what_is_no_number_is_not_written(value):
    with pytest.raises(ValueError, match="cannot be written"):
        Words().number(value)


def test_the_count_decides_between_one_and_many():
    words = Words()
    assert words.plural("{n} part", "{n} parts", 1) == "1 part"
    assert words.plural("{n} part", "{n} parts", 2000) == "2\u202f000 parts"


def test_an_unknown_language_is_refused_with_those_there_are():
    with pytest.raises(ValueError, match="en, xx, xr"):
        Words("tlh")


def test_the_made_up_language_brackets_accents_and_grows_but_keeps_values():
    said = Words("xx").say("balances at {place} cm", place="44.4")
    assert said.startswith("[")
    assert said.endswith("]")
    assert " 44.4 " in said
    assert "balances" not in said
    plain = len("balances at 44.4 cm")
    # 40 per cent of the letters, in whole letters, and the two brackets.
    assert len(said) >= 1.2 * plain + 2


def test_a_writers_text_is_kept_in_english_and_dressed_in_the_made_up_language():
    assert Words().content("A {boat} hook") == "A {boat} hook"
    assert Words("xx").content("A {boat} hook").startswith("[Å {ƀ")


def test_only_the_mirrored_language_is_mirrored():
    assert [language for language in LANGUAGES if Words(language).mirrored] == ["xr"]
    assert Words("xr").say("level") == Words("xx").say("level")


@given(st.text(alphabet=string.ascii_letters + " ", min_size=12))
def test_dressing_grows_long_texts_and_never_loses_a_letter(text):
    grown = dressed(text)
    assert len(grown) >= len(text) + 2


@given(st.lists(st.sampled_from(["{a}", "{b}", "let go ", "{{x}}"]), min_size=1, max_size=6))
def test_a_dressed_template_takes_the_same_values(pieces):
    template = "".join(pieces)
    filled = dressed_template(template).format(a="12", b="34")
    assert filled.count("12") >= template.count("{a}")
    assert filled.count("34") >= template.count("{b}")


def test_a_translation_is_used_where_a_catalogue_has_one(tmp_path):
    folder = tmp_path / "en" / "LC_MESSAGES"
    folder.mkdir(parents=True)
    _write_catalogue(folder / "tiltbench.mo", {"Let go": "Release"})
    words = Words("en", catalogues=tmp_path)
    assert words.say("Let go") == "Release"
    assert words.say("Undo") == "Undo"


def test_a_folder_without_catalogues_changes_nothing(tmp_path):
    assert Words("en", catalogues=tmp_path).say("Let go") == "Let go"


def test_the_messages_of_a_source_are_collected_by_line():
    source = 'a = words.say("Let go")\nb = words.plural("{n} part", "{n} parts", n)\nC = msg("{w} g")\nsay(name)\n'
    assert catalogue_messages(source) == (
        (1, "Let go"),
        (2, "{n} part"),
        (2, "{n} parts"),
        (3, "{w} g"),
    )


def test_marking_a_template_does_not_change_it():
    assert msg("{w} g") == "{w} g"


def _write_catalogue(file, messages):
    """A gettext catalogue as its manual lays it out: header, two tables of (length, offset), the texts."""
    texts = {"": "Content-Type: text/plain; charset=UTF-8\n", **messages}
    keys = sorted(texts)
    head = 28
    at = head + 16 * len(keys)
    tables, body = [[], []], b""
    for table, column in enumerate((keys, [texts[key] for key in keys])):
        for text in column:
            raw = text.encode()
            tables[table].append((len(raw), at + len(body)))
            body += raw + b"\0"
    numbers = [0x950412DE, 0, len(keys), head, head + 8 * len(keys), 0, 0]
    numbers += [n for table in tables for pair in table for n in pair]
    file.write_bytes(b"".join(n.to_bytes(4, "little") for n in numbers) + body)
    with file.open("rb") as stream:
        assert gettext.GNUTranslations(stream).gettext("Let go") == "Release"
