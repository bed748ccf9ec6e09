"""From the tables of a lesson file to a lesson, or to everything that is wrong with them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from lab.files import UNITS, Fault, FileFaults, Keyed, KeyPath, load, shown
from lab.lesson.fault_places import FaultPlaces
from lab.lesson.lesson import Lesson, Question, Range, SceneSource, TeachersPage
from lab.lesson.scene_files import LoadedScene, SceneRefusedError, load_scene
from lab.lesson.schema import KEYS_BY_KIND, LessonTable, QuestionTable, TeacherTable
from lab.lesson.schema_faults import table_faults, what_can_be_read
from lab.lesson.soundness import build_of, question_faults


def lesson_or_faults(
    path: Path, keyed: Keyed | None = None
) -> tuple[Lesson | None, tuple[Fault, ...], Mapping[KeyPath, int]]:
    """Return the lesson, or None, every fault of its file, and the lines of its keys; nothing in it makes it raise.

    keyed: what is in the file, where it has been read already.
    """
    try:
        keyed = load(path) if keyed is None else keyed
    except FileFaults as unreadable:
        return None, unreadable.faults, {}
    places = FaultPlaces(str(path), keyed.lines)
    faults: list[Fault] = []
    table: LessonTable | None = None
    try:
        table = LessonTable.model_validate(keyed.data)
    except ValidationError as refused:
        faults += table_faults(refused, LessonTable, (), places)
    listed = keyed.data.get("question")
    named = keyed.data.get("units")
    units = named if isinstance(named, str) and named in UNITS else "g-cm"
    questions = []
    scenes: dict[str, LoadedScene] = {}
    for index, data in enumerate(listed if isinstance(listed, list) else []):
        question, found = _question(path, keyed, index, data, units, scenes)
        faults += found
        if question is not None:
            questions.append(question)
    faults += _names_used_twice(listed if isinstance(listed, list) else [], places)
    faults.sort(key=lambda fault: (fault.file != str(path), fault.file, fault.line))
    if faults or table is None:
        return None, tuple(faults), keyed.lines
    lesson = Lesson(
        name=path.stem,
        title=table.title,
        level=table.level,
        aim=table.aim,
        units=table.units,
        questions=tuple(questions),
        file=str(path),
        teacher=_teachers_page(table.teacher),
    )
    return lesson, (), keyed.lines


def _teachers_page(table: TeacherTable | None) -> TeachersPage | None:
    if table is None:
        return None
    return TeachersPage(
        minutes=table.minutes,
        have=tuple(table.have),
        do=tuple(table.do),
        expect=tuple(table.expect),
        cautions=tuple(table.cautions),
    )


def _question(
    path: Path, keyed: Keyed, index: int, data: Any, units: str, scenes: dict[str, LoadedScene]
) -> tuple[Question | None, list[Fault]]:
    """Return a question, or None where its table or its scene cannot be read, and everything wrong with it.

    scenes: the scene files that earlier questions named; this one's is added.
    """
    at: KeyPath = ("question", index)
    places = FaultPlaces(str(path), keyed.lines)
    if not isinstance(data, dict):
        return None, [places.fault(at, f"{shown(data)} is not a table", "write `[[question]]` and its keys below it")]
    faults: list[Fault] = []
    unread: frozenset[str] = frozenset()
    try:
        table = QuestionTable.model_validate(data)
    except ValidationError as refused:
        faults += table_faults(refused, QuestionTable, at, places)
        table, unread = what_can_be_read(data, refused)
    scene = None
    if "scene" in data:
        scene, found = _scene(path, keyed, data["scene"], at, places, scenes)
        faults += found
    if scene is None:
        scene, unread = SceneSource(table={}, lines={}, file=str(path), at=(*at, "scene")), unread | {"scene"}
    keys = {key: data[key] for key in KEYS_BY_KIND if key in data and key not in unread}
    question = _from_tables(table, scene, keys)
    build = None
    if "scene" not in unread:
        build, found = build_of(question, index=index, units=units, places=places)
        faults += found
    faults += question_faults(question, build, index=index, places=places, unread=unread)
    return replace(question, build=build), faults


def _scene(
    path: Path, keyed: Keyed, value: Any, at: KeyPath, places: FaultPlaces, scenes: dict[str, LoadedScene]
) -> tuple[SceneSource | None, list[Fault]]:
    here = (*at, "scene")
    if isinstance(value, dict):
        return SceneSource(table=value, lines=keyed.lines, file=str(path), at=here), []
    if not isinstance(value, str):
        cure = 'write `[question.scene]` and its keys below it, or a file name such as "boat-hook.toml"'
        return None, [places.fault(here, f"{shown(value)} is no scene", cure)]
    try:
        if value not in scenes:
            scenes[value] = load_scene(path, value)
        loaded, file, at_in_file = scenes[value]
    except SceneRefusedError as refused:
        return None, [places.fault(here, f"{shown(value)}: {refused.what}", refused.cure)]
    except FileFaults as unreadable:
        return None, list(unreadable.faults)
    return SceneSource(table=loaded.data, lines=loaded.lines, file=file, at=at_in_file), []


def _from_tables(table: QuestionTable, scene: SceneSource, keys: dict[str, Any]) -> Question:
    return Question(
        name=table.name,
        ask=table.ask,
        title=table.title,
        say=table.say,
        scene=scene,
        keys=keys,
        tolerance=table.tolerance,
        claims=tuple(table.ways or ()),
        is_silent=table.ways is None,
        hints=tuple(table.hints),
        ranges=tuple(
            Range(keys=tuple(name.strip() for name in names.split(",")), low=each.low, high=each.to, step=each.step)
            for names, each in table.vary.items()
        ),
        as_written_first=table.as_written_first,
        expect=tuple(table.expect) if isinstance(table.expect, list) else table.expect,
    )


def _names_used_twice(listed: list[Any], places: FaultPlaces) -> list[Fault]:
    seen: set[str] = set()
    faults = []
    for index, data in enumerate(listed):
        name = data.get("name") if isinstance(data, dict) else None
        if not isinstance(name, str):
            continue
        if name in seen:
            what = f"the name {shown(name)} is used twice"
            faults.append(places.fault(("question", index, "name"), what, "give each question a name of its own"))
        seen.add(name)
    return faults
