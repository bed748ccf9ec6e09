"""The hung plate on the screen of free build."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import ClassVar

from lab.scenes.camera import Camera
from lab.scenes.plate_view import PlateView, plate_angle_between, turning_areas_of
from lab.screens.benches.areas import AreasPlot
from lab.screens.benches.face import Asked, Face, Shown, Stand
from lab.screens.benches.layout import AREAS
from lab.screens.benches.plate.hands import Hands
from lab.screens.benches.plate.keys import tray_mass_kg
from lab.screens.benches.plate.moves import clip_of
from lab.screens.benches.plate.panel import panel_parts
from lab.screens.benches.plate.picture import picture
from lab.screens.benches.plate.strip import is_high, strip
from lab.screens.benches.plate.words import CAUTION, HELP
from lab.simulation.benches import HungPlate
from lab.simulation.benches.groups import in_group
from lab.simulation.benches.plate_tasks import TASKS
from lab.ui.events import Event
from lab.ui.widgets.widget import Widget


class PlateFace(Face[HungPlate]):
    """A plate on a pin, its outline, its holes, and the lines drawn on it."""

    help: ClassVar = HELP
    caution: ClassVar = CAUTION
    tasks: ClassVar = TASKS
    _hands: Hands

    def __init__(self) -> None:
        self._hands = Hands()

    def shown(self, stand: Stand[HungPlate], asked: Asked) -> Shown:
        view, hands = self._view(stand), self._hands

        def camera() -> Camera | None:
            above = asked.picture()
            return None if above is None or not view.bench.held else view.stage(above).camera

        def areas(tall: float, *, to_scale: bool) -> Widget:
            return AreasPlot(AREAS, turning_areas_of(view), tall, camera if to_scale else None)

        panel = panel_parts(view, axis=hands.axis, armed=hands.armed.key if hands.armed else "")
        return Shown(
            picture=lambda foot_px: picture(replace(view, foot_px=foot_px), _angle(asked)),
            parts=replace(panel, task=self.task_shown(stand)),
            strip=None if hands.carrying.last else strip(view, hands.parts, armed_text=self._taken_up(stand)),
            # In the other views the swing needs the height; so does a strip of two rows.
            areas=areas if view.bench.view == "all" and not is_high(view) else None,
        )

    def typed(self, event: Event, stand: Stand[HungPlate], *, focused: str | None) -> bool:
        clip = clip_of(self._view(stand), self._hands.picked)
        return clip is not None and self._hands.parts.naming.typed(event, in_group(clip.name), focused=focused)

    def only_moved(self, before: Stand[HungPlate], now: Stand[HungPlate]) -> bool:
        if not (before.bench.moving and now.bench.moving):
            return False
        return replace(now.bench, swing=before.bench.swing) == before.bench

    def _taken_up(self, stand: Stand[HungPlate]) -> str:
        armed, say = self._hands.armed, stand.look.words.say
        if armed is None:
            return ""
        mass_kg = tray_mass_kg(armed.key)
        if mass_kg is None:
            return say("Tap the place where the hole should be.")
        return say("Tap the place where {weight} should go.", weight=stand.readings.weight_with_unit(mass_kg))

    def _view(self, stand: Stand[HungPlate]) -> PlateView:
        bench, hands = stand.bench, self._hands
        return PlateView(
            bench=bench,
            look=stand.look,
            readings=stand.readings,
            angle_rad=plate_angle_between(stand.previous, bench, stand.fraction),
            picked=hands.picked,
            row=hands.row,
            ghost=hands.ghost,
            numbers=bench.view != "plain",
            outcome_shown=bench.view == "all" or (bench.view == "numbers" and not bench.held),
            laid_for=hands.carrying.laid_for,
            laid_in=hands.carrying.laid_in,
        )


def _angle(asked: Asked) -> Callable[[], float]:
    def angle_rad() -> float:
        stand = asked.stand()
        if isinstance(stand.bench, HungPlate) and isinstance(stand.previous, HungPlate):
            return plate_angle_between(stand.previous, stand.bench, stand.fraction)
        return 0.0

    return angle_rad
