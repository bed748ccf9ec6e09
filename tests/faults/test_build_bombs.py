"""Files made to hang or overflow whoever reads them are refused in words, and soon.

The limit is 2 s for any input. Processor time is measured, so that a busy machine fails nothing, and each of
these takes a tenth of the limit or less on a slow one; an answer that grows with the square of the input
would take minutes.
"""

import time
from math import cos, sin

import pytest

from lab.files import FileFaults, read_build, read_build_text
from lab.outline.words import Words
from lab.terminal.sums import sum_table

MIB = 1024 * 1024
HEAD = 'format = 1\ntitle = "T"\nunits = "g-cm"\n'

PART = "[[part]]\nname='p{}'\nweight=1\nat=1\n"


def spiral(corners):
    """A comb of a plate, every tooth beside every other, that crosses itself at its last corner only."""
    teeth = [f"[{at}, {(at % 2) * 1000}]" for at in range(corners - 2)]
    return f"[{', '.join(teeth)}, [{corners}, -1], [-1, 500]]"


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
    "groups in groups by the thousand": HEAD + PART + "".join(
        f"[[group]]\nname='g{n}'\ngroup='g{n + 1}'\n" for n in range(12_000)
    ),
    "groups that are not there": HEAD + "".join(PART.format(n) + f"group='left wing {n}'\n" for n in range(7_000)),
    "groups almost named": HEAD + "".join(
        PART.format(n) + f"group='left wing {n}x'\n[[group]]\nname='left wing {n}'\n" for n in range(4_500)
    ),
    "empty groups by the thousand": HEAD + PART + "".join(f"[[group]]\nname='g{n}'\n" for n in range(18_000)),
    "an outline of ten thousand corners": HEAD + PART + f"shape={{kind='polygon', outline={spiral(10_000)}}}\n",
    "plates that cross themselves": HEAD + "".join(
        PART.format(n) + f"shape={{kind='polygon', outline={spiral(490)}}}\n" for n in range(26)
    ),
    "holes by the thousand": HEAD + PART + f"shape={{kind='polygon', outline={spiral(490)}, "
    + f"holes=[{'[],' * 30_000}]}}\n",
    "limits of ten thousand corners": HEAD + PART + f"[limits]\noutline={spiral(10_000)}\n",
    "surfaces by the thousand": HEAD + PART + "".join(
        f"[[surface]]\nname='s{n}'\nroot_chord=1\ntip_chord=1\nspan=9\nat={n}\n" for n in range(6_000)
    ),
    "tanks that overflow": HEAD + "".join(
        f"[[tank]]\nname='t{n}'\nat=1\ncapacity=1\ncontents=2\ndensity=1\n" for n in range(6_000)
    ),
    "supports by the thousand": HEAD + PART + "".join(
        f"[[support]]\nname='s{n}'\nat=[{n},{n % 7},0]\n" for n in range(5_000)
    ),
}  # fmt: skip


SLOW_BUT_SOUND = {
    "parts by the thousand in one group off a bar": HEAD + "[bar]\nlength=100\nweight=1\n[[group]]\nname='g'\n"
    + "".join(PART.format(n) + "group='g'\n" for n in range(5_000)),
    "parts by the thousand twenty groups deep": HEAD + "[bar]\nlength=100\nweight=1\n"
    + "".join(f"[[group]]\nname='g{n}'\nturn=[1,2,3]\n" + (f"group='g{n - 1}'\n" if n else "") for n in range(20))
    + "".join(PART.format(n) + "group='g19'\n" for n in range(5_000)),
    "plates of many corners": HEAD + "".join(
        PART.format(n) + "shape={kind='polygon', outline=["
        + ", ".join(f"[{9 * cos(at / 78)}, {9 * sin(at / 78) + n}]" for at in range(490)) + "]}\n"
        for n in range(24)
    ),
    "limits of many corners": HEAD + PART + "[limits]\noutline=["
    + ", ".join(f"[{9 * cos(at / 9.6)}, {9 * sin(at / 9.6) + 20}]" for at in range(60)) + "]\n",
    "six surfaces of six widths": HEAD + PART + "".join(
        f"[[surface]]\nname='s{n}'\nroot_chord=10\ntip_chord=4\nspan={90 + 7 * n}\nat=[{30 * n}, {n}, {5 * n}]\n"
        for n in range(6)
    ),
}  # fmt: skip


@pytest.mark.parametrize("text", SLOW_BUT_SOUND.values(), ids=list(SLOW_BUT_SOUND))
def test_a_large_file_is_read_and_summed_soon(text):
    start = time.process_time()
    build = read_build_text(text, file="b.toml")
    read = time.process_time() - start
    assert sum_table(build, Words("en"))
    assert read < 2.0
    # Good input may take as long again for its sum.
    assert time.process_time() - start < 4.0


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
