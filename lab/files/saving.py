"""Saves files so that none is ever half there."""

from __future__ import annotations

import os
import tempfile
from contextlib import suppress
from pathlib import Path


def save_text(path: str | os.PathLike[str], text: str) -> None:
    """Save a text so that the file holds either all of the old one or all of the new one, at any instant.

    Raises OSError where the folder can't be written or the disk is full; the old file is then untouched.
    The order is what makes it safe: a temporary file in the same folder, flush, fsync, replace, fsync of the
    folder. Without the first fsync a power cut can leave an empty file under the new name.
    """
    target = Path(os.path.realpath(path))  # of a link, what it leads to; replacing the link would leave two files
    handle, temporary = tempfile.mkstemp(prefix=f".{target.name[:40]}.", suffix=".part", dir=target.parent)
    try:
        with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as stream:
            stream.write(text)
            stream.flush()
            os.fsync(stream.fileno())
        os.chmod(temporary, _mode_of(target))
        os.replace(temporary, target)
    except BaseException:
        with suppress(OSError):
            os.unlink(temporary)
        raise
    _sync_folder(target.parent)


def _mode_of(target: Path) -> int:
    """The permissions of the file that is there; for a new one what the user's umask would give."""
    try:
        return target.stat().st_mode & 0o777
    except OSError:
        mask = os.umask(0)
        os.umask(mask)
        return 0o666 & ~mask


def _sync_folder(folder: Path) -> None:
    # Windows can't open a folder, and doesn't need to: its file system keeps the rename itself. Some file systems
    # of networks and sticks can't sync one either; the file is in its place by then, so that is no failure.
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
