"""Scene files: a build that a lesson names, in the lesson's own folder and nowhere else."""

from __future__ import annotations

import re
from pathlib import Path

from lab.files import Keyed, KeyPath, load

LoadedScene = tuple[Keyed, str, KeyPath]
"""A scene file's table with its lines, the file's name, and the path of the table in it."""

LINK_OUT = "scene files lie in the lesson's own folder"

_DRIVE = re.compile(r"[A-Za-z]:")


class SceneRefusedError(Exception):
    """A scene's file name is refused.  what, cure: the two halves of a fault."""

    def __init__(self, what: str, cure: str) -> None:
        """what: what is wrong with the name.  cure: what would be right."""
        super().__init__(what)
        self.what = what
        self.cure = cure


def scene_path(lesson_file: Path, name: str) -> Path:
    """Return where a scene file is.

    name: as the lesson has it, with forward slashes.  Nothing is opened before the name is found to be harmless.
    Raises SceneRefusedError for an absolute path, `..`, a backslash, or a link anywhere on the way.
    """
    if "\0" in name or not name.strip():
        raise SceneRefusedError("no file name", 'write a name such as "boat-hook.toml"')
    if name.startswith(("/", "\\")) or _DRIVE.match(name):
        raise SceneRefusedError("an absolute path", f"{LINK_OUT}: write the name alone")
    if "\\" in name:
        raise SceneRefusedError("a backslash in a file name", "write / between folders")
    steps = name.split("/")
    if ".." in steps:
        raise SceneRefusedError("`..` leads out of the lesson's folder", f"{LINK_OUT}: put it there")
    if not name.endswith(".toml"):
        raise SceneRefusedError("a scene is a TOML file", 'write a name such as "boat-hook.toml"')
    path = lesson_file.parent
    for step in steps:
        path = path / step
        if path.is_symlink():
            raise SceneRefusedError("a link", f"{LINK_OUT}: copy the file there")
    return path


def load_scene(lesson_file: Path, name: str) -> LoadedScene:
    """Return a scene file's table with its lines, the file's name, and the path of its table in it.

    Raises SceneRefusedError as `scene_path` does, and FileFaults where the file cannot be read.
    """
    path = scene_path(lesson_file, name)
    return load(path), str(path), ()
