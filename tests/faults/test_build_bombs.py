"""Files made to hang or overflow whoever reads them are refused in words, and soon.

The limit is 2 s for any input. Processor time is measured, so that a busy machine fails nothing, and each of
these takes a tenth of the limit or less on a slow one; an answer that grows with the square of the input
would take minutes.
"""

import time

import pytest

from lab.files import FileFaults, read_build, read_build_text

MIB = 1024 * 1024
HEAD = 'format = 1\ntitle = "T"\nunits = "g-cm"\n'

BOMBS = {
    "ten megabytes on one line": "a = '" + "x" * 10_000_000 + "'",
    "arrays in arrays": "a=" + "[" * 500_000,
    "tables in tables": "a=" + "{a=" * 300_000,
    "a dotted key without end": "a." * 500_000 + "a=1",
    "a dotted header without end": "[" + "a." * 500_000 + "a]",
    "half a million list items": "a=[" + "1," * 500_000 + "]",
    "a hundred thousand tables": "[[part]]\n" * 104_000,
    "inline tables by the thousand": "a=[" + "{b=1}," * 170_000 + "]",
    "ninety thousand keys": "\n".join(f"k{number}=1" for number in range(90_000)),
    "one name for thousands of parts": HEAD + "[[part]]\nname='a'\nweight=1\nat=1\n" * 9_000,
    "misspelt keys by the thousand": HEAD + "\n".join(f"titl{number}=1" for number in range(20_000)),
    "a text that never ends": 'a="' + "x" * (MIB - 10),
    "quotes and backslashes": 'a="""' + '""\\' * (MIB // 3 - 10),
    "nothing but quotes": "a=" + "'" * (MIB - 10),
    "a million digits": "a=" + "9" * (MIB - 10),
    "a million spaces": "a=" + " " * (MIB - 10),
    "a million empty lines": "a=[" + "\n" * (MIB - 10),
    "a million brackets": "[" * (MIB - 10),
    "comments only": "#\n" * (MIB // 2 - 10),
}


@pytest.mark.parametrize("text", BOMBS.values(), ids=list(BOMBS))
def test_a_bomb_is_refused_within_two_seconds(text):
    start = time.process_time()
    with pytest.raises(FileFaults):
        read_build_text(text, file="b.toml")
    assert time.process_time() - start < 2.0


def test_a_bomb_on_the_disk_is_refused_before_it_is_read(tmp_path):
    path = tmp_path / "large.toml"
    with path.open("wb") as stream:
        # A hole: ten gigabytes that take no room on the disk, and would take all the memory if read.
        stream.truncate(10 * 1024**3)
    with pytest.raises(FileFaults, match="larger than 1 MiB"):
        read_build(path)
