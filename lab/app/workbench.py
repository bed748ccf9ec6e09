"""Free build: one bench, the builds that can be put on it, and the files that it is kept in."""

from __future__ import annotations

import re
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

from lab.app.paths import Paths
from lab.files import Bench, Build, FileFaults, build_text, read_build, save_text
from lab.screens.screen import BuildEntry, Workpiece
from lab.simulation import Refused, Session
from lab.simulation.benches import BenchState, HungScene, Showing, WeighedScene
from lab.simulation.benches.catalogue import BENCHES, BenchKind, bench_for
from lab.simulation.benches.unfit import UnfitBuildError
from lab.simulation.commands import OpenBuild

LEFT = ".left-{bench}.toml"
"""What stood on a bench when it was left, or when the power went: a file beside the builder's own, never listed."""


class Workbench:
    """The bench of free build.

    kind: which bench.  session: what is on it.  path: the file it was saved to or opened from, if ours.
    """

    def __init__(self, paths: Paths, bench: Bench = "bar") -> None:
        self._paths = paths
        self.kind: BenchKind = BENCHES[bench]
        self.session = Session(self._left() or self.kind.start())
        self.path: Path | None = None
        self._kept = self.session.state

    @property
    def bench(self) -> Workpiece:
        """What stands on it."""
        return _workpiece(self.session.state)

    @property
    def previous(self) -> Workpiece:
        """The same as it was one tick before."""
        return _workpiece(self.session.previous)

    def open(self, path: Path) -> Refused | None:
        """Put a build file on the bench that it is for; says why where it does not fit.  Raises FileFaults."""
        read = read_build(path)
        kind = bench_for(read)
        try:
            state = kind.take(read)
        except UnfitBuildError as unfit:
            return unfit.why
        if kind is not self.kind:
            self.keep()
            self.kind = kind
            self.session = Session(state)
        else:
            refused = self.session.do(OpenBuild(text=build_text(kind.build_of(state))))
            if refused is not None:
                return refused
        # A bar keeps no groups, tanks or surfaces: saving must not take them out of the file that has them.
        whole = (read is read.loose() and not read.is_airframe) or kind.build_of(state) == read
        self.path = path if whole and path.parent == self._paths.builds else None
        return None

    @property
    def build(self) -> Build:
        """What stands on it, as it would be saved."""
        return self.kind.build_of(self.session.state)

    def take(self, build: Build) -> Refused | None:
        """Put a build of another bench on this one, in one step that can be taken back; says why where it can't."""
        try:
            state = self.kind.take(build)
        except UnfitBuildError as unfit:
            return unfit.why
        return self.session.do(OpenBuild(text=build_text(self.kind.build_of(state))))

    def save(self, path: Path | None) -> Path:
        """Write the bench to a file and return it; without a path, to the file it has or to a new one.

        A bare file name goes into the builder's own folder and gives the build its title.  Another build's
        file is never written over.  Raises OSError if it cannot be written.
        """
        build = self.build
        target = self.path or self._unused(_stem(build.title))
        if path is not None:
            bare = path.name == str(path)
            build = replace(build, title=_title(path)) if bare else build
            target = self._own(path.stem) if bare else path
        if target.parent == self._paths.builds:
            target.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        save_text(target, build_text(build))
        self.path = target
        return target

    @property
    def changed(self) -> bool:
        """Whether something has been built since the bench was last kept."""
        return self.session.state.stilled() != self._kept.stilled()

    def keep(self) -> None:
        """Keep what stands on the bench, so that it is there again next time.  Raises OSError."""
        self._paths.builds.mkdir(mode=0o700, parents=True, exist_ok=True)
        save_text(self._left_file, build_text(self.build))
        self._kept = self.session.state

    def builds(self) -> tuple[BuildEntry, ...]:
        """Every build that can be put on a bench: those that were saved, then those that ship."""
        entries = []
        for folder in (self._paths.builds, self._paths.shipped_builds):
            for path in sorted(folder.glob("[!.]*.toml")):
                try:
                    build = read_build(path)
                    bench_for(build).take(build)
                except (FileFaults, UnfitBuildError):
                    continue
                entries.append(BuildEntry(title=build.title, path=path))
        return tuple(entries)

    @property
    def _left_file(self) -> Path:
        return self._paths.builds / LEFT.format(bench=self.kind.name)

    def _left(self) -> BenchState | None:
        """What was left on this bench; None where nothing was, or nothing that it can use."""
        with suppress(FileFaults, UnfitBuildError, OSError):
            if self._left_file.exists():
                return self.kind.take(read_build(self._left_file))
        return None

    def _own(self, stem: str) -> Path:
        """The file of this name in the builder's own folder, or beside it where another build has that."""
        target = self._paths.builds / f"{stem}.toml"
        return target if target == self.path else self._unused(stem)

    def _unused(self, stem: str) -> Path:
        path = self._paths.builds / f"{stem}.toml"
        number = 2
        while path.exists():
            path = self._paths.builds / f"{stem}-{number}.toml"
            number += 1
        return path


def _workpiece(state: BenchState) -> Workpiece:
    if isinstance(state, Showing | HungScene | WeighedScene):
        raise TypeError("nothing is built on a scene that is only shown")
    return state


def _stem(title: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", title.lower()).strip("-")[:40] or "build"


def _title(path: Path) -> str:
    words = path.stem.replace("-", " ").replace("_", " ").strip()
    return words[:1].upper() + words[1:]
