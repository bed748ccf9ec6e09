"""Packages whose names load late: nothing is promised that is not there, and nobody waits for what they do not use."""

import ast
import subprocess
import sys
from importlib import import_module
from typing import Any

import pytest

LATE_PACKAGES = ("lab.attempts", "lab.files", "lab.mechanics", "lab.simulation", "lab.ui.widgets")


def _promised(tree: ast.Module) -> dict[str, str]:
    """What a package tells type checkers: each public name and its module, dotted."""
    under = [
        node for node in tree.body if isinstance(node, ast.If) and getattr(node.test, "id", None) == "TYPE_CHECKING"
    ]
    return {
        alias.name: node.module
        for block in under
        for node in block.body
        if isinstance(node, ast.ImportFrom) and node.module
        for alias in node.names
    }


@pytest.fixture
def tree_of(modules: Any) -> dict[str, ast.Module]:
    return {module.name: module.tree for module in modules}


@pytest.mark.parametrize("package", LATE_PACKAGES)
def test_table_and_type_checkers_are_told_the_same(package: str, tree_of: dict[str, ast.Module]):
    table = import_module(package)._MODULES
    told = {name: f"{package}.{module}" for module, names in table.items() for name in names.split()}
    assert told == _promised(tree_of[package])


@pytest.mark.parametrize("package", LATE_PACKAGES)
def test_every_public_name_is_the_one_of_its_module(package: str, tree_of: dict[str, ast.Module]):
    loaded = import_module(package)
    promised = _promised(tree_of[package])
    assert set(promised) <= set(loaded.__all__)
    for name in loaded.__all__:
        public = getattr(loaded, name)
        if name in promised:
            assert public is getattr(import_module(promised[name]), name)


@pytest.mark.parametrize("package", LATE_PACKAGES)
def test_no_late_name_is_a_module_s_too(package: str, tree_of: dict[str, ast.Module]):
    # Python puts a module that is loaded where the name would stand.
    assert not [name for name in _promised(tree_of[package]) if f"{package}.{name}" in tree_of]


@pytest.mark.parametrize("package", LATE_PACKAGES)
def test_a_name_that_is_not_there_is_said_to_be_missing(package: str):
    with pytest.raises(AttributeError, match="has no attribute 'nowhere'"):
        _ = import_module(package).nowhere


#: The start screen shows a bar with weights, and that is what it may wait for.
NOT_AT_THE_START = (
    "lab.mechanics.airframes",
    "lab.mechanics.ballast",
    "lab.mechanics.groups",
    "lab.mechanics.symmetry",
    "lab.mechanics.tanks",
    "lab.mechanics.tosses",
    "lab.mechanics.two_fingers",
    "lab.simulation.tape",
    "lab.ui.widgets.keypad",
    "lab.ui.widgets.number_field",
    "lab.ui.widgets.table",
    "lab.ui.widgets.tray",
    "pydantic",
    "sqlite3",
    "tomllib",
)


def test_the_start_screen_waits_for_nothing_that_it_does_not_show():
    program = (
        "import sys, lab.app.rooms.start, lab.app.laboratory\n"
        f"sys.stdout.write(' '.join(name for name in {NOT_AT_THE_START!r} if name in sys.modules))"
    )
    held = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, timeout=60)
    assert held.returncode == 0, held.stderr
    assert held.stdout == ""
