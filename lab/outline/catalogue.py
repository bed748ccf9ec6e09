"""Which sentences the sources hold, for whoever makes a translation catalogue."""

import ast
from collections.abc import Iterator

_SAYING = {"say": 1, "plural": 2, "msg": 1}


def _called_name(call: ast.Call) -> str:
    if isinstance(call.func, ast.Attribute):
        return call.func.attr
    return call.func.id if isinstance(call.func, ast.Name) else ""


def _found(tree: ast.AST) -> Iterator[tuple[int, str]]:
    for call in ast.walk(tree):
        if not isinstance(call, ast.Call):
            continue
        for argument in call.args[: _SAYING.get(_called_name(call), 0)]:
            if isinstance(argument, ast.Constant) and isinstance(argument.value, str) and argument.value:
                yield argument.lineno, argument.value


def catalogue_messages(source: str) -> tuple[tuple[int, str], ...]:
    """(line, message) for each literal handed to say, plural or msg in a module's source text, by line."""
    return tuple(sorted(set(_found(ast.parse(source)))))
