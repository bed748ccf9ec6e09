"""What is on a screen, as values: one tree for drawing order, focus, speech and checks."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Literal

Role = Literal[
    "screen", "heading", "text", "button", "choice", "option", "slider", "number", "table", "row", "cell",
    "panel", "dialog", "toast", "tray", "item", "picture", "handle", "mark",
]  # fmt: skip
Bounds = tuple[float, float, float, float]
NOWHERE: Bounds = (0.0, 0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Node:
    """One thing on a screen.

    key: unique in its tree.  role: what kind of thing.  name: what it is called.  value: what it shows now.
    state: words such as "selected", "disabled", "focused".  bounds: (x, y, width, height) in window pixels.
    actions: what can be done with it: "press", "move", "remove", "scroll".  children: in reading order.
    """

    key: str
    role: Role
    name: str
    value: str = ""
    state: frozenset[str] = frozenset()
    bounds: Bounds = NOWHERE
    actions: tuple[str, ...] = ()
    children: tuple["Node", ...] = ()


def walk(node: Node) -> Iterator[Node]:
    """The node and everything under it, in reading order."""
    yield node
    for child in node.children:
        yield from walk(child)


def find(node: Node, key: str) -> Node | None:
    """The first node with this key, or None."""
    return next((found for found in walk(node) if found.key == key), None)


# Roles whose names say enough: nobody needs to hear "text" after every sentence.
_SILENT_ROLES = frozenset({"screen", "text", "panel", "row", "cell", "mark", "item", "toast"})


def spoken_line(node: Node, say: Callable[[str], str] = str) -> str:
    """One node as it is read out: name, value, role, state. Empty where there is nothing to say.

    say: turns a role or state word into the listener's language.
    """
    said = [part for part in (node.name, node.value) if part]
    if not said and not node.actions:
        return ""
    if node.role not in _SILENT_ROLES:
        said.append(say(node.role))
    said.extend(say(word) for word in sorted(node.state))
    return ", ".join(said)


def spoken_lines(node: Node, say: Callable[[str], str] = str) -> list[str]:
    """The whole tree as it is read out, one line a thing; a table row is one line with all its cells."""
    if node.role == "row":
        cells = [cell.name for cell in node.children if cell.name]
        words = [part for part in (node.name, *cells) if part] + [say(word) for word in sorted(node.state)]
        return [", ".join(words)] if words else []
    line = spoken_line(node, say)
    lines = [line] if line else []
    for child in node.children:
        lines.extend(spoken_lines(child, say))
    return lines
