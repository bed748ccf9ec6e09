"""Modules, classes and functions stay small enough to be read in one go; docstrings do not count."""

import ast
from typing import Any

MOST_LINES = {"module": 300, "class": 200, "function": 40}


def _docstring_lines(node: ast.AST) -> int:
    total = 0
    for inner in ast.walk(node):
        if not isinstance(inner, ast.Module | ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef):
            continue
        if ast.get_docstring(inner, clean=False) is not None:
            text = inner.body[0]
            assert text.end_lineno is not None
            total += text.end_lineno - text.lineno + 1
    return total


def _lines(node: ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    assert node.end_lineno is not None
    return node.end_lineno - node.lineno + 1 - _docstring_lines(node)


def test_modules_are_short(modules: Any):
    over = {
        module.place: lines
        for module in modules
        if (lines := len(module.text.splitlines()) - _docstring_lines(module.tree)) > MOST_LINES["module"]
    }
    assert not over


def test_classes_and_functions_are_short(modules: Any):
    over = {}
    for module in modules:
        for node in ast.walk(module.tree):
            if isinstance(node, ast.ClassDef) and _lines(node) > MOST_LINES["class"]:
                over[f"{module.place}:{node.lineno} {node.name}"] = _lines(node)
            if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and _lines(node) > MOST_LINES["function"]:
                over[f"{module.place}:{node.lineno} {node.name}"] = _lines(node)
    assert not over
