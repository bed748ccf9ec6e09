"""What the rules are held against: the checkout, its files as git knows them, and its modules as trees.

Away from a checkout (the tests of a built wheel) there is nothing to hold, and these tests are left out.
"""

import ast
import subprocess
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
IN_CHECKOUT = (ROOT / "pyproject.toml").is_file() and (ROOT / "lab").is_dir()

EVERYTHING = frozenset({
    "mechanics", "outline", "attempts", "files", "ui", "simulation",
    "lesson", "scenes", "screens", "terminal", "app", "figures",
})  # fmt: skip
MAY_IMPORT: dict[str, frozenset[str]] = {
    "mechanics": frozenset(),
    "outline": frozenset(),
    "attempts": frozenset(),
    "files": frozenset({"mechanics"}),
    "ui": frozenset({"outline"}),
    "simulation": frozenset({"mechanics", "files"}),
    "lesson": frozenset({"mechanics", "files", "simulation"}),
    "scenes": frozenset({"mechanics", "simulation", "outline", "ui"}),
    "screens": frozenset({"mechanics", "files", "simulation", "lesson", "attempts", "outline", "scenes", "ui"}),
    "terminal": frozenset({"mechanics", "files", "simulation", "lesson", "attempts", "outline"}),
    "app": EVERYTHING,
    "figures": EVERYTHING,
}

if not IN_CHECKOUT:
    collect_ignore_glob = ["test_*.py"]


@dataclass(frozen=True)
class Module:
    """A module of `lab`: its dotted name, its place, its text and its tree."""

    name: str
    path: Path
    text: str
    tree: ast.Module

    @property
    def package(self) -> str:
        """The package right below `lab`, or "" for the few modules at the top."""
        words = self.name.split(".")
        return words[1] if len(words) > 1 and (ROOT / "lab" / words[1]).is_dir() else ""

    @property
    def place(self) -> str:
        """The path as a person names it."""
        return self.path.relative_to(ROOT).as_posix()


@cache
def lab_modules() -> tuple[Module, ...]:
    found = []
    for path in sorted((ROOT / "lab").rglob("*.py")):
        if "shipped" in path.parts:
            continue
        words = path.relative_to(ROOT).with_suffix("").parts
        name = ".".join(words[:-1] if words[-1] == "__init__" else words)
        text = path.read_text(encoding="utf-8")
        found.append(Module(name=name, path=path, text=text, tree=ast.parse(text)))
    return tuple(found)


@cache
def repository_files() -> tuple[Path, ...]:
    """Every file that git has or would take; without git, every file that is no left-over of a tool."""
    try:
        listed = subprocess.run(
            ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
            cwd=ROOT, capture_output=True, check=True,
        ).stdout  # fmt: skip
        paths = [ROOT / name for name in listed.decode().split("\0") if name]
    except (OSError, subprocess.CalledProcessError):
        paths = [
            path
            for path in ROOT.rglob("*")
            if not {"__pycache__", ".git", ".venv", "build", "dist"} & set(path.parts) and "cache" not in str(path)
        ]
    return tuple(path for path in paths if path.is_file())


@pytest.fixture(scope="session")
def root() -> Path:
    return ROOT


@pytest.fixture(scope="session")
def modules() -> tuple[Module, ...]:
    return lab_modules()


@pytest.fixture(scope="session")
def files() -> tuple[Path, ...]:
    return repository_files()


@pytest.fixture(scope="session")
def may_import() -> dict[str, frozenset[str]]:
    return MAY_IMPORT
