"""Habits that keep the sources honest: names that say something, no shortcuts, nothing of the workshop floor."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

SAYS_NOTHING = re.compile(r"^(utils?|utilities|helpers?|commons?|core|base|misc|managers?)$")
REFUSED_MODULES = frozenset({"pickle", "shelve", "marshal", "socket", "urllib", "http", "ctypes", "code"})
REFUSED_CALLS = frozenset({"eval", "exec", "compile", "print", "breakpoint", "__import__"})
#: Where this was written is nobody's business; written in pieces, so that this file passes its own test.
PLACES = ("/" + "work/", "/" + "tmp/", "/" + "root/", ".." + "/shared", "shared" + "/reference", "shared" + "/design")
#: Notes that do not ship cannot be looked up by whoever reads the sources.
NOTES = re.compile(
    r"\b(architecture|interface|mechanics|lessons|quality|product|practice|learning|worked-examples)" + r"\.md\b"
)
TEXT_ENDINGS = frozenset({".py", ".toml", ".md", ".txt", ".json", ".cfg", ".css", ""})
TOP_LEVEL = frozenset({"README.md", "DEVELOPERS.md", "pyproject.toml", "lab", "tests", "lessons", "assets"})


def _texts(files: tuple[Path, ...]) -> Iterator[tuple[Path, str]]:
    for path in files:
        if path.suffix in TEXT_ENDINGS:
            yield path, path.read_text(encoding="utf-8")


def _calls(tree: ast.AST) -> Iterator[tuple[int, str]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            yield node.lineno, node.func.id


def test_no_module_has_a_name_that_says_nothing(files: tuple[Path, ...], root: Path):
    bad = [
        path.relative_to(root).as_posix()
        for path in files
        if path.suffix == ".py"
        for word in path.relative_to(root).with_suffix("").parts
        if SAYS_NOTHING.match(word)
    ]
    assert not bad


def test_the_library_calls_nothing_that_runs_text_or_prints(modules: Any):
    bad = [
        f"{module.place}:{line}: {name}"
        for module in modules
        for line, name in _calls(module.tree)
        if name in REFUSED_CALLS
    ]
    assert not bad


def test_the_library_imports_no_network_and_nothing_that_loads_code_from_data(modules: Any):
    bad = []
    for module in modules:
        for node in ast.walk(module.tree):
            names = [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
            if isinstance(node, ast.ImportFrom) and node.module:
                names = [node.module]
            bad += [f"{module.place}: {name}" for name in names if name.split(".")[0] in REFUSED_MODULES]
    assert not bad


def test_subprocesses_are_started_only_where_the_start_itself_is_measured(modules: Any):
    bad = [module.place for module in modules if "subprocess" in module.text and module.package != "figures"]
    assert not bad


def test_input_is_never_checked_by_assert_and_no_error_is_caught_unnamed(modules: Any):
    bad = []
    for module in modules:
        for node in ast.walk(module.tree):
            if isinstance(node, ast.Assert):
                bad.append(f"{module.place}:{node.lineno}: assert")
            if isinstance(node, ast.ExceptHandler) and node.type is None:
                bad.append(f"{module.place}:{node.lineno}: bare except")
            if isinstance(node, ast.ImportFrom) and any(alias.name == "*" for alias in node.names):
                bad.append(f"{module.place}:{node.lineno}: import *")
    assert not bad


def test_nothing_is_left_to_do_in_a_comment(modules: Any):
    marks = re.compile(r"#.*\b(" + "TO" + "DO|FIX" + "ME|X" + r"XX|HA" + r"CK)\b")
    bad = [
        f"{module.place}:{number}"
        for module in modules
        for number, line in enumerate(module.text.splitlines(), start=1)
        if marks.search(line)
    ]
    assert not bad


def test_every_module_class_and_public_function_says_what_it_is_for(modules: Any):
    bad = []
    for module in modules:
        if ast.get_docstring(module.tree) is None:
            bad.append(module.place)
        for node in module.tree.body:
            if not isinstance(node, ast.ClassDef | ast.FunctionDef) or node.name.startswith("_"):
                continue
            if ast.get_docstring(node) is None:
                bad.append(f"{module.place}:{node.lineno}: {node.name}")
    assert not bad


def test_no_file_names_the_place_where_it_was_written(files: tuple[Path, ...], root: Path):
    bad = [
        f"{path.relative_to(root)}:{number}: {line.strip()[:80]}"
        for path, text in _texts(files)
        for number, line in enumerate(text.splitlines(), start=1)
        if any(place in line for place in PLACES)
    ]
    assert not bad, "\n".join(bad)


def test_no_file_points_to_notes_that_do_not_ship(files: tuple[Path, ...], root: Path):
    bad = [
        f"{path.relative_to(root)}:{number}: {line.strip()[:80]}"
        for path, text in _texts(files)
        for number, line in enumerate(text.splitlines(), start=1)
        if NOTES.search(line)
    ]
    assert not bad, "\n".join(bad)


def test_the_top_of_the_repository_holds_what_it_should_and_nothing_else(files: tuple[Path, ...], root: Path):
    tops = {path.relative_to(root).parts[0] for path in files}
    assert {top for top in tops if not top.startswith(".")} == TOP_LEVEL


def test_the_library_reads_no_clock_and_no_randomness_inside_the_mechanics_or_a_tick(modules: Any):
    bad = []
    for module in modules:
        if module.package not in ("mechanics", "simulation", "lesson", "scenes"):
            continue
        for node in ast.walk(module.tree):
            names = [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
            if isinstance(node, ast.ImportFrom) and node.module:
                names = [node.module]
            refused = {"time", "datetime", "secrets", "uuid"}
            if module.package != "lesson":  # a question's numbers are drawn there, always from a seed
                refused |= {"random"}
            bad += [f"{module.place}: {name}" for name in names if name.split(".")[0] in refused]
    assert not bad
