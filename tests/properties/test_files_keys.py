"""The line scanner finds exactly the key paths that tomllib finds, each on the line where it stands."""

import contextlib
import tomllib

from hypothesis import example, given, settings
from hypothesis import strategies as st

from lab.files import FileFaults, parse

WORDS = ["a", "b", "c-d", "1", '"q k"', "'l.k'", '"e\\u0041\\""', '""', '"#]"']
words = st.sampled_from(WORDS)
gaps = st.sampled_from(["", " ", "\t "])
breaks = st.sampled_from(["", " ", "\n", "\n  ", ' # ], } "\n', "\r\n"])
keys = st.lists(words, min_size=1, max_size=3).flatmap(lambda parts: gaps.map(lambda gap: f"{gap}.{gap}".join(parts)))
scalars = st.sampled_from(
    [
        "1", "-0.5e3", "inf", "true", "1979-05-27", "1979-05-27 07:32:00", "07:32:00", "0x1F", "1_000",
        '"x"', '""', "''", "'x # [ { '", '"a \\" ] # b"', '"\\\\"', "'\\'",
        '"""\n[a]\nb = 1\n"""', '"""x""y\\""""', '"""two quotes"""""', "'''\n# '' [\n'''",
        '"""a\\\n   b"""', "''''q'''",
    ]
)  # fmt: skip


def listed(values):
    items = st.lists(st.tuples(breaks, values, breaks), max_size=3)
    return st.tuples(items, st.booleans()).map(
        lambda drawn: "[" + ",".join("".join(item) for item in drawn[0]) + ("," if drawn[0] and drawn[1] else "") + "]"
    )


def tabled(values):
    pairs = st.lists(st.tuples(gaps, keys, gaps, values, gaps), max_size=3)
    return pairs.map(
        lambda drawn: (
            "{" + ",".join(f"{before}{key}{gap}={gap}{value}{after}" for before, key, gap, value, after in drawn) + "}"
        )
    )


values = st.recursive(scalars, lambda inner: listed(inner) | tabled(inner), max_leaves=6)
assignments = st.tuples(gaps, keys, gaps, values).map(lambda drawn: f"{drawn[0]}{drawn[1]}{drawn[2]}= {drawn[3]}")
headers = keys.map(lambda key: f"[{key}]") | keys.map(lambda key: f"[[ {key} ]]")
statements = st.tuples(assignments | headers, st.sampled_from(["\n", "\r\n", " # note\n", "\n\n"])).map("".join)


def valid_text(pieces):
    """As many of the statements as make valid TOML together."""
    text = ""
    for piece in pieces:
        with contextlib.suppress(tomllib.TOMLDecodeError):
            tomllib.loads(text + piece)
            text += piece
    return text


def key_paths(value, path=()):
    children = []
    if isinstance(value, dict):
        children = list(value.items())
    elif isinstance(value, list):
        children = list(enumerate(value))
    for step, child in children:
        yield (*path, step)
        yield from key_paths(child, (*path, step))


@settings(max_examples=400)
@given(st.lists(statements, min_size=1, max_size=10).map(valid_text))
@example("[a.b]\n[a]\n[[c.d]]\n[c.d.e]\nx.y = [{z = 1}]\n[[c.d]]\n[[c.d.f]]\n")
@example("a = [[], [1, [2]], {}]\r\n")
def test_the_scanner_finds_the_key_paths_of_tomllib_and_no_others(text):
    keyed = parse(text, file="f.toml")
    assert set(keyed.lines) == set(key_paths(keyed.data))


@settings(max_examples=200)
@given(st.lists(st.tuples(values, st.sampled_from(["", "[t{}]\n", "[[s]]\n", "# n\n\n"])), min_size=1, max_size=8))
def test_a_key_is_on_the_line_where_it_stands(drawn):
    text = ""
    expected = {}
    for number, (value, before) in enumerate(drawn):
        piece = before.format(number) + f"mark{number} = {value}\n"
        try:
            tomllib.loads(text + piece)
        except tomllib.TOMLDecodeError:
            continue
        expected[f"mark{number}"] = (text + before.format(number)).count("\n") + 1
        text += piece
    lines = parse(text, file="f.toml").lines
    found = {path[-1]: line for path, line in lines.items() if str(path[-1]).startswith("mark")}
    assert found == expected


@settings(max_examples=300)
@given(st.lists(statements | st.text(alphabet="ab.=[]{}\"'\\#,\n 1é", max_size=12), max_size=8).map("".join))
def test_whatever_the_text_it_is_read_as_tomllib_does_or_refused_in_words(text):
    try:
        data = tomllib.loads(text)
    except ValueError:
        data = None
    try:
        keyed = parse(text, file="f.toml")
    except FileFaults as refused:
        (fault,) = refused.faults
        assert data is None or "nested more" in fault.what
        assert 1 <= fault.line <= text.count("\n") + 1
    else:
        assert repr(keyed.data) == repr(data)  # by repr, since nan is not equal to itself
