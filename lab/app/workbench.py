"""Free build: one bench, the builds that can be put on it, and the file that it is kept in."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

from lab.app.paths import Paths
from lab.files import Bar, Build, FileFaults, build_text, read_build, save_text
from lab.mechanics import Part, extent_m
from lab.screens.screen import BuildEntry
from lab.simulation import HangingBar, Refused, Session
from lab.simulation.benches.bar_builds import build_from_hanging_bar, hanging_bar_from_build, workshop_bar
from lab.simulation.benches.unfit import UnfitBuildError
from lab.simulation.commands import OpenBuild

#: A pole's thickness as drawn where its file states none, as a share of its length.
POLE_DEPTH = 0.02


class Workbench:
    """The bench of free build.  session: what is on it.  path: the file it was saved to or opened from, if ours."""

    def __init__(self, paths: Paths) -> None:
        self._paths = paths
        self.session = Session(workshop_bar())
        self.path: Path | None = None

    @property
    def bench(self) -> HangingBar:
        """The bench as it is."""
        return _hanging(self.session.state)

    @property
    def previous(self) -> HangingBar:
        """The bench as it was one tick before."""
        return _hanging(self.session.previous)

    def open(self, path: Path) -> Refused | None:
        """Put a build file on the bench; says why where it does not fit.  Raises FileFaults."""
        read = read_build(path)
        build = hangable(read)
        try:
            hanging_bar_from_build(build)
        except UnfitBuildError as unfit:
            return unfit.why
        refused = self.session.do(OpenBuild(text=build_text(build)))
        if refused is None:
            # A bar keeps no groups, tanks or surfaces: saving must not take them out of the file that has them.
            whole = read is read.loose() and not read.is_airframe
            self.path = path if whole and path.parent == self._paths.builds else None
        return refused

    def save(self, path: Path | None) -> Path:
        """Write the bench to a file and return it; without a path, to the file it has or to a new one.

        A bare file name goes into the builder's own folder and gives the build its title.  Another build's
        file is never written over.  Raises OSError if it cannot be written.
        """
        build = build_from_hanging_bar(self.bench)
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

    def builds(self) -> tuple[BuildEntry, ...]:
        """Every build that this bench can show: those that were saved, then those that ship."""
        entries = []
        for folder in (self._paths.builds, self._paths.shipped_builds):
            for path in sorted(folder.glob("*.toml")):
                try:
                    build = read_build(path)
                    hanging_bar_from_build(hangable(build))
                except (FileFaults, UnfitBuildError):
                    continue
                entries.append(BuildEntry(title=build.title, path=path))
        return tuple(entries)

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


def _stem(title: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", title.lower()).strip("-")[:40] or "build"


def _title(path: Path) -> str:
    words = path.stem.replace("-", " ").replace("_", " ").strip()
    return words[:1].upper() + words[1:]


def hangable(build: Build) -> Build:
    """A build for the hanging bar, which takes the place of supports.

    A tool without a bar hangs by its longest pole, which becomes the bar, if all its other parts lie on it. An
    airframe is no tool.
    """
    build = build.loose()
    standing_on_nothing = replace(build, supports=())
    if build.bar is not None or build.is_airframe:
        return standing_on_nothing
    poles = [part for part in build.parts if _is_pole(part)]
    if not poles:
        return standing_on_nothing
    pole = max(poles, key=_length_m)
    length_m = _length_m(pole)
    left_m = pole.at_m[0] - length_m / 2
    others = tuple(part for part in build.parts if part is not pole)
    if not all(left_m <= part.at_m[0] <= left_m + length_m for part in others):
        return standing_on_nothing
    bar = Bar(name=pole.name, length_m=length_m, mass_kg=pole.mass_kg, left_m=left_m, depth_m=POLE_DEPTH * length_m)
    return replace(standing_on_nothing, bar=bar, parts=others)


def _is_pole(part: Part) -> bool:
    """Whether a part is slender along: then a rod of its length turns as it does, to a few parts in a thousand."""
    along_m, across_m, up_m = extent_m(part.shape)
    return along_m > 0 and not part.cut and max(across_m, up_m) < along_m / 10


def _length_m(pole: Part) -> float:
    return extent_m(pole.shape)[0]


def _hanging(state: object) -> HangingBar:
    if not isinstance(state, HangingBar):
        raise TypeError(f"free build shows a hanging bar, not {type(state).__name__}")
    return state
