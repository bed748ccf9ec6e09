"""The hanging bar on the screen of free build."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import ClassVar

from lab.scenes.camera import Camera
from lab.scenes.hanging_view import HangingView, angle_between, stage_for
from lab.scenes.turning_areas import turning_view
from lab.screens.benches.areas import AreasPlot
from lab.screens.benches.face import Asked, Face, Shown, Stand
from lab.screens.benches.hanging_bar.hands import Hands
from lab.screens.benches.hanging_bar.moves import weight_of
from lab.screens.benches.hanging_bar.panel import called, panel_parts
from lab.screens.benches.hanging_bar.picture import picture
from lab.screens.benches.hanging_bar.strip import strip
from lab.screens.benches.hanging_bar.words import CAUTION, HELP
from lab.screens.benches.layout import AREAS
from lab.simulation import HangingBar
from lab.simulation.benches.bar_tasks import TASKS
from lab.simulation.benches.groups import in_group
from lab.ui.events import Event
from lab.ui.widgets.widget import Widget


class HangingBarFace(Face[HangingBar]):
    """A bar on a pin, and weights that are hung on it."""

    help: ClassVar = HELP
    caution: ClassVar = CAUTION
    tasks: ClassVar = TASKS
    _hands: Hands

    def __init__(self) -> None:
        self._hands = Hands()

    def shown(self, stand: Stand[HangingBar], asked: Asked) -> Shown:
        view, hands = self._view(stand), self._hands
        say = stand.look.words.say
        armed, taken_up = hands.armed, ""
        if armed is not None:
            taken_up = say("Tap the place where {weight} should hang.", weight=called(view, armed.key))

        def camera() -> Camera | None:
            above = asked.picture()
            return None if above is None else stage_for(view.bench, above, view.look).camera

        def areas(tall: float, *, to_scale: bool) -> Widget:
            return AreasPlot(AREAS, turning_view(view), tall, camera if to_scale else None)

        return Shown(
            picture=lambda foot_px: picture(replace(view, foot_px=foot_px), _angle(asked)),
            parts=panel_parts(
                view,
                tables=view.outcome_shown,
                shelf=hands.shelf,
                armed=armed.key if armed else "",
                task=self.task_shown(stand),
            ),
            strip=None if hands.carried else strip(view, hands.parts, armed_text=taken_up),
            areas=areas if view.outcome_shown else None,
        )

    def typed(self, event: Event, stand: Stand[HangingBar], *, focused: str | None) -> bool:
        weight = weight_of(self._view(stand), self._hands.picked)
        return weight is not None and self._hands.parts.naming.typed(event, in_group(weight.name), focused=focused)

    def only_moved(self, before: Stand[HangingBar], now: Stand[HangingBar]) -> bool:
        if not (before.bench.moving and now.bench.moving):
            return False
        return replace(now.bench, swing=before.bench.swing) == before.bench

    def _view(self, stand: Stand[HangingBar]) -> HangingView:
        bench, hands = stand.bench, self._hands
        told = bench.view == "all" or (bench.view == "numbers" and not bench.held)
        return HangingView(
            bench=bench,
            look=stand.look,
            readings=stand.readings,
            angle_rad=angle_between(stand.previous, bench, stand.fraction),
            picked=hands.picked,
            ghost=hands.ghost,
            numbers=bench.view != "plain",
            outcome_shown=told,
            lines=told,
            carried_at_m=hands.carried.at_m if hands.carried else None,
        )


def _angle(asked: Asked) -> Callable[[], float]:
    def angle_rad() -> float:
        stand = asked.stand()
        if isinstance(stand.bench, HangingBar) and isinstance(stand.previous, HangingBar):
            return angle_between(stand.previous, stand.bench, stand.fraction)
        return 0.0

    return angle_rad
