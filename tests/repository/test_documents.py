"""What README.md and DEVELOPERS.md say exists, exists."""

import re
import shlex
from collections.abc import Iterator
from pathlib import Path

import pytest

from lab.app.command_line import MODULES, parse

Table = dict[str, frozenset[str]]
DOCUMENTS = ("README.md", "DEVELOPERS.md")
FENCE = re.compile(r"^```(\w*)\n(.*?)^```", re.MULTILINE | re.DOTALL)
QUOTED = re.compile(r"(?<!`)`([^`\n]+)`(?!`)")
LINK = re.compile(r"\]\(([^)#:]+)\)")
#: Made by running a command that stands beside it, not kept.
MADE = frozenset({".venv/bin/tiltbench", "answers.csv", "start.png"})


def _commands(text: str) -> Iterator[list[str]]:
    """Every command line that names `tiltbench`, as words: in fences, and quoted in the running text."""
    lines = [line for _, block in FENCE.findall(text) for line in block.splitlines()]
    lines += QUOTED.findall(text)
    for line in lines:
        words = shlex.split(line.split("  #")[0].replace("\\", "/"))
        if words and words[0] == "tiltbench":
            yield words[1:]


@pytest.mark.parametrize("name", DOCUMENTS)
def test_every_command_that_a_document_shows_is_understood(root: Path, name: str):
    commands = list(_commands((root / name).read_text(encoding="utf-8")))
    assert commands
    for words in commands:
        assert parse(words).command in {*MODULES, None}, words


@pytest.mark.parametrize("name", DOCUMENTS)
def test_every_path_that_a_document_names_exists(root: Path, name: str):
    text = (root / name).read_text(encoding="utf-8")
    named = {word for word in QUOTED.findall(FENCE.sub("", text)) if re.fullmatch(r"\.?[\w.-]+(/[\w.-]+)+/?", word)}
    named |= {word for word in QUOTED.findall(text) if re.fullmatch(r"[\w-]+\.(py|toml|md)", word)}
    named |= set(LINK.findall(text))
    for _, words in ((None, words) for words in _commands(text)):
        named |= {word for word in words if "/" in word or word.endswith(".toml")}
    missing = sorted(word for word in named - MADE if not (root / word).exists())
    assert not missing


def test_the_map_names_every_package_and_no_other(root: Path, may_import: Table):
    text = (root / "DEVELOPERS.md").read_text(encoding="utf-8")
    drawn = FENCE.findall(text)[0][1]
    assert set(re.findall(r"^  (\w+)/", drawn, re.MULTILINE)) == set(may_import)
    for top in re.findall(r"^(\w+)/", drawn, re.MULTILINE):
        assert (root / top).is_dir()


def test_the_table_of_imports_is_the_one_that_is_held(root: Path, may_import: Table):
    text = (root / "DEVELOPERS.md").read_text(encoding="utf-8")
    said = {}
    for packages, may in re.findall(r"^\| ([\w, ]+) \| ([\w, ]+) \| .* \|$", text, re.MULTILINE):
        for package in packages.split(", "):
            if package in may_import:
                said[package] = set(may_import) if may == "everything" else set(may.split(", ")) - {"nothing"}
    assert said == {package: set(may) for package, may in may_import.items()}


def test_the_readme_has_the_two_commands_for_both_kinds_of_system(root: Path):
    text = (root / "README.md").read_text(encoding="utf-8")
    for kind, program, tests in (("sh", ".venv/bin/", "'.[test]'"), ("bat", r".venv\Scripts\ "[:-1], '".[test]"')):
        lines = [line for language, block in FENCE.findall(text) if language == kind for line in block.splitlines()]
        both = [line for line in lines if " -m venv .venv && " in line and "pip install" in line]
        assert len(both) == 2
        assert both[0].endswith(f"{program}tiltbench")
        assert tests in both[1]
        assert "pytest" in both[1]


def test_packages_that_the_project_needs_are_named_as_they_are_in_its_settings(root: Path):
    settings = (root / "pyproject.toml").read_text(encoding="utf-8")
    for package in ("numpy", "pydantic", "pygame", "platformdirs"):
        assert f'"{package}>=' in settings
        assert package in (root / "DEVELOPERS.md").read_text(encoding="utf-8")


def test_every_licence_that_the_readme_promises_is_there(root: Path):
    licences = {path.name for path in (root / "assets" / "licences").iterdir()}
    assert {"MIT.txt", "Andika-OFL.txt"} <= licences
