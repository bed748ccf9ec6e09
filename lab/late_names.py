"""Public names of a package that load their module when they are first asked for.

A package that many begin with holds much that few of them need, and loading it takes time that a person
waits.  Such a package imports nothing: it names each public name with its module in one table.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping
from importlib import import_module


def late_names(package: str, modules: Mapping[str, str]) -> Callable[[str], object]:
    """The `__getattr__` of a package, as PEP 562 has it.

    package: its dotted name.  modules: the name of each module in it, with the public names that live there,
    as words.  No public name may be a module's too, for Python puts a module that is loaded where the name
    would stand.
    """
    module_of = {name: module for module, names in modules.items() for name in names.split()}

    def load(name: str) -> object:
        module = module_of.get(name)
        if module is None:
            raise AttributeError(f"module {package!r} has no attribute {name!r}")
        value: object = getattr(import_module(f"{package}.{module}"), name)
        setattr(sys.modules[package], name, value)  # asked for once only
        return value

    return load
