"""The scales bench on the screen of free build."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import ClassVar

from lab.scenes.camera import Camera
from lab.scenes.scales.stage import stage_of
from lab.scenes.scales.view import Moment, ScalesView, moment_between
from lab.screens.benches.areas import AreasPlot
from lab.screens.benches.face import Asked, Face, Shown, Stand
from lab.screens.benches.layout import AREAS
from lab.screens.benches.scales.areas import areas_about_balance
from lab.screens.benches.scales.hands import Hands
from lab.screens.benches.scales.moves import load_of
from lab.screens.benches.scales.panel import panel_parts
from lab.screens.benches.scales.picture import picture
from lab.screens.benches.scales.strip import strip
from lab.screens.benches.scales.words import CAUTION, HELP
from lab.simulation.benches.groups import in_group
from lab.simulation.benches.scales import ScalesBench
from lab.simulation.benches.scales_tasks import TASKS
from lab.ui.events import Event
from lab.ui.widgets.widget import Widget


class ScalesFace(Face[ScalesBench]):
    """A body that is set on two or three scales."""

    help: ClassVar = HELP
    caution: ClassVar = CAUTION
    tasks: ClassVar = TASKS
    _hands: Hands

    def __init__(self) -> None:
        self._hands = Hands()

    def shown(self, stand: Stand[ScalesBench], asked: Asked) -> Shown:
        view, hands = self._view(stand), self._hands
        armed, taken_up = hands.armed, ""
        if armed is not None:
            weight = view.readings.weight_with_unit(armed.mass_kg)
            taken_up = stand.look.words.say("Tap the place where {weight} should stand.", weight=weight)

        def areas(tall: float, *, to_scale: bool) -> Widget:
            return AreasPlot(AREAS, areas_about_balance(view), tall, _camera(view, asked) if to_scale else None)

        return Shown(
            picture=lambda foot_px: picture(replace(view, foot_px=foot_px), _moment(asked)),
            parts=replace(
                panel_parts(view, shelf=hands.shelf, armed=armed.key if armed else ""), task=self.task_shown(stand)
            ),
            strip=None if hands.carried else strip(view, hands.parts, armed_text=taken_up),
            areas=areas if view.told and not view.three else None,
        )

    def typed(self, event: Event, stand: Stand[ScalesBench], *, focused: str | None) -> bool:
        load = load_of(self._view(stand), self._hands.picked)
        return load is not None and self._hands.parts.naming.typed(event, in_group(load.name), focused=focused)

    def only_moved(self, before: Stand[ScalesBench], now: Stand[ScalesBench]) -> bool:
        first, last = before.bench, now.bench
        if not (first.moving and last.moving):
            return False
        if last.tipping is None:
            return replace(last, raised=first.raised, given=first.given) == first
        return replace(last, motion=first.motion, pressed_kg=first.pressed_kg) == first

    def _view(self, stand: Stand[ScalesBench]) -> ScalesView:
        bench, hands = stand.bench, self._hands
        carried = hands.carried
        return ScalesView(
            bench=bench,
            look=stand.look,
            readings=stand.readings,
            moment=moment_between(stand.previous, bench, stand.fraction),
            picked=hands.picked,
            carried="" if carried is None or carried.mass_kg is not None else carried.key,
            ghost=hands.ghost(bench.top_m),
            told=bench.view == "all" or (bench.view == "numbers" and not bench.held),
        )


def _moment(asked: Asked) -> Callable[[], Moment]:
    def moment() -> Moment:
        stand = asked.stand()
        bench, previous = stand.bench, stand.previous
        if not isinstance(bench, ScalesBench):
            raise TypeError("the picture of the scales bench shows only what stands on scales")
        return moment_between(previous if isinstance(previous, ScalesBench) else bench, bench, stand.fraction)

    return moment


def _camera(view: ScalesView, asked: Asked) -> Callable[[], Camera | None]:
    def camera() -> Camera | None:
        rect = asked.picture()
        return None if rect is None else stage_of(view, rect).camera

    return camera
