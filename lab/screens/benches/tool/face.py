"""The tool that is built on a finger, on the screen of free build."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import ClassVar

from lab.scenes.camera import Camera
from lab.scenes.tool.turning import turning_of
from lab.scenes.tool.view import ToolView
from lab.screens.benches.areas import AreasPlot
from lab.screens.benches.face import Asked, Face, Shown, Stand
from lab.screens.benches.layout import AREAS
from lab.screens.benches.tool.hands import Hands
from lab.screens.benches.tool.moves import part_of
from lab.screens.benches.tool.panel import panel_parts
from lab.screens.benches.tool.picture import picture
from lab.screens.benches.tool.strip import strip
from lab.screens.benches.tool.words import CAUTION, HELP
from lab.simulation.benches.groups import in_group
from lab.simulation.benches.tool import BuiltTool
from lab.simulation.benches.tool_tasks import TASKS
from lab.ui.events import Event
from lab.ui.widgets.widget import Widget


class ToolFace(Face[BuiltTool]):
    """A tool on a finger, and parts that are put on it."""

    help: ClassVar = HELP
    caution: ClassVar = CAUTION
    tasks: ClassVar = TASKS
    _hands: Hands

    def __init__(self) -> None:
        self._hands = Hands()

    def shown(self, stand: Stand[BuiltTool], asked: Asked) -> Shown:
        view, hands = self._view(stand), self._hands
        armed, taken_up = hands.armed, ""
        if armed is not None:
            taken_up = stand.look.words.say("Tap the place on the tool where it should go.")

        def camera() -> Camera | None:
            above = asked.picture()
            return None if above is None else view.stage(above).camera

        def areas(tall: float, *, to_scale: bool) -> Widget:
            return AreasPlot(AREAS, turning_of(view), tall, camera if to_scale else None)

        panel = panel_parts(view, shelf=hands.shelf, armed=armed.key if armed else "")
        return Shown(
            picture=lambda foot_px: picture(replace(view, foot_px=foot_px), _moved(asked)),
            parts=replace(panel, task=self.task_shown(stand)),
            strip=None if hands.carried else strip(view, hands.parts, armed_text=taken_up),
            areas=areas if view.outcome_shown else None,
        )

    def typed(self, event: Event, stand: Stand[BuiltTool], *, focused: str | None) -> bool:
        part = part_of(self._view(stand), self._hands.picked)
        return part is not None and self._hands.parts.naming.typed(event, in_group(part.name), focused=focused)

    def only_moved(self, before: Stand[BuiltTool], now: Stand[BuiltTool]) -> bool:
        if not (before.bench.moving and now.bench.moving):
            return False
        return replace(now.bench, motion=before.bench.motion) == before.bench

    def _view(self, stand: Stand[BuiltTool]) -> ToolView:
        bench, hands = stand.bench, self._hands
        told = bench.view == "all" or (bench.view == "numbers" and not bench.held)
        carried = hands.carried
        return ToolView(
            bench=bench,
            look=stand.look,
            readings=stand.readings,
            previous=stand.previous,
            fraction=stand.fraction,
            picked=hands.picked,
            ghost=hands.ghost(bench),
            numbers=bench.view != "plain",
            outcome_shown=told,
            lines=told,
            carried_at_m=carried.at_m if carried is not None else None,
            laid_for=hands.laid_for,
        )


def _moved(asked: Asked) -> Callable[[ToolView], ToolView]:
    def moved(view: ToolView) -> ToolView:
        stand = asked.stand()
        if isinstance(stand.bench, BuiltTool) and isinstance(stand.previous, BuiltTool):
            return replace(view, bench=stand.bench, previous=stand.previous, fraction=stand.fraction)
        return view

    return moved
