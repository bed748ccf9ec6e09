"""The register of sources and the places that use it agree, both ways."""

import re
import tomllib
from pathlib import Path

from lab.figures.published.register import REGISTER

HERE = Path(__file__).parent
USED = re.compile(r"\bS-\d\d\b")
IN_DOCSTRING = re.compile(r"Source:((?:\s*S-\d\d[,.]?)+)")


def registered() -> list[dict[str, str]]:
    table = tomllib.loads((HERE / "sources.toml").read_text(encoding="utf-8"))
    sources: list[dict[str, str]] = table["source"]
    return sources


def used_in_docstrings() -> set[str]:
    import lab

    texts = [path.read_text(encoding="utf-8") for path in Path(lab.__file__).parent.rglob("*.py")]
    return {each for text in texts for found in IN_DOCSTRING.findall(text) for each in USED.findall(found)}


def used_in_tests() -> set[str]:
    return {each for path in HERE.glob("test_*.py") for each in USED.findall(path.read_text(encoding="utf-8"))}


def test_every_source_has_an_id_a_citation_and_a_mark() -> None:
    sources = registered()
    ids = [source["id"] for source in sources]
    assert len(set(ids)) == len(ids)
    for source in sources:
        assert set(source) == {"id", "citation", "mark"}
        assert source["mark"] in {"seen", "part", "memory"}
        assert len(source["citation"]) > 20


def test_every_source_that_is_named_is_registered_and_every_registered_one_is_named() -> None:
    ids = {source["id"] for source in registered()}
    docstrings = used_in_docstrings()
    assert len(docstrings) >= 8, "the docstrings of the mechanics name their sources"
    assert docstrings | used_in_tests() | {value.source for value in REGISTER} == ids
