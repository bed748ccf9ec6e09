"""Who may import whom.  The table stands in DEVELOPERS.md; this holds it."""

import ast
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

THIRD_PARTY: dict[str, frozenset[str]] = {
    "mechanics": frozenset({"numpy"}),
    # pydantic_core is the part of pydantic that a custom type has to speak to.
    "files": frozenset({"pydantic", "pydantic_core"}),
    "simulation": frozenset({"numpy"}),
    "lesson": frozenset({"numpy", "pydantic"}),
    "scenes": frozenset({"numpy"}),
    "app": frozenset({"platformdirs"}),
    # What we claim is measured against the tests' own references.
    "figures": frozenset({"numpy", "scipy", "pymunk", "pygame", "aerosandbox"}),
}
PACKAGES = sorted(path.parent.name for path in (Path(__file__).parents[2] / "lab").glob("*/__init__.py"))
#: These open windows or draw with pygame and say so; everything else must be importable without it.
OPENS_WINDOWS = frozenset({"lab.app.loop", "lab.app.window_program"})
RUNTIME_PACKAGES = frozenset({"numpy", "pydantic", "pygame", "platformdirs"})


def _imported(tree: ast.AST) -> Iterator[tuple[int, str]]:
    """Every name that a module imports, wherever in it: (line, dotted name)."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"line {node.lineno}: imports are written from the top"
            yield from ((node.lineno, f"{node.module}.{alias.name}") for alias in node.names)


def test_every_package_is_in_the_table(modules: Any, may_import: dict[str, frozenset[str]]):
    assert {module.package for module in modules} - {""} == set(may_import)


def test_packages_import_only_what_their_row_allows(modules: Any, may_import: dict[str, frozenset[str]]):
    wrong = []
    for module in modules:
        for line, name in _imported(module.tree):
            words = name.split(".")
            if words[0] != "lab" or not module.package or len(words) < 2 or words[1] not in may_import:
                continue
            if words[1] not in may_import[module.package] | {module.package}:
                wrong.append(f"{module.place}:{line}: {module.package} may not import {words[1]}")
    assert not wrong, "\n".join(wrong)


def test_third_party_packages_stay_in_their_rows(modules: Any):
    wrong = []
    for module in modules:
        allowed = THIRD_PARTY.get(module.package, frozenset())
        if module.package == "ui" and module.path.name.startswith("pygame_"):
            allowed = allowed | {"pygame", "numpy"}
        for line, name in _imported(module.tree):
            top = name.split(".")[0]
            if top not in sys.stdlib_module_names and top not in allowed | {"lab", "__future__"}:
                wrong.append(f"{module.place}:{line}: {module.package} may not import {top}")
    assert not wrong, "\n".join(wrong)


def test_pygame_is_named_only_where_windows_and_pixels_are_made(modules: Any):
    wrong = [
        f"{module.place}:{line}"
        for module in modules
        for line, name in _imported(module.tree)
        if name.split(".")[0] == "pygame"
        and not (module.package == "ui" and module.path.name.startswith("pygame_"))
        and module.package != "figures"
    ]
    assert not wrong, "\n".join(wrong)


def _reached(packages: frozenset[str]) -> frozenset[str]:
    """Third-party packages that these packages may bring along."""
    return frozenset().union(*(THIRD_PARTY.get(name, frozenset()) for name in packages))


@pytest.mark.parametrize("package", [package for package in PACKAGES if package != "figures"])
def test_a_fresh_interpreter_that_imports_a_package_holds_no_pygame(
    package: str, modules: Any, may_import: dict[str, frozenset[str]]
):
    names = [
        module.name
        for module in modules
        if module.package == package
        and not module.path.name.startswith("pygame_")
        and not module.name.startswith(tuple(OPENS_WINDOWS))
    ]
    program = (
        "import importlib, sys\n"
        f"for name in {names!r}: importlib.import_module(name)\n"
        f"sys.stdout.write(' '.join(name for name in {sorted(RUNTIME_PACKAGES)!r} if name in sys.modules))"
    )
    held = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, timeout=120)
    assert held.returncode == 0, held.stderr
    allowed = RUNTIME_PACKAGES if package == "app" else _reached(may_import[package] | {package})
    assert set(held.stdout.split()) <= allowed - {"pygame"}
