"""Hanging the airframe by one of its points."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import ClassVar

from lab.mechanics import Vector
from lab.outline.words import msg
from lab.scenes.views.swinging import between_downs
from lab.screens.benches.airframe.activity import Activity, is_told
from lab.screens.benches.airframe.body import airframe_body
from lab.screens.benches.airframe.hang_hands import HangHands
from lab.screens.benches.airframe.hang_panel import hang_parts, hang_strip
from lab.screens.benches.airframe.hang_picture import hang_picture
from lab.screens.benches.airframe.hang_view import HangView
from lab.screens.benches.face import Asked, Shown, Stand
from lab.simulation.benches.airframe import AirframeBench
from lab.simulation.benches.airframe_hanging import HELD_LEVEL
from lab.simulation.benches.airframe_hanging_edits import hanging_of
from lab.simulation.benches.airframe_places import spans_m


class Hang(Activity):
    """Choose a point, guess, let go, draw the plumb line."""

    doing: ClassVar = "hang"
    title: ClassVar = msg("Hang it")
    hands: HangHands

    def __init__(self) -> None:
        self.hands = HangHands()

    def shown(self, stand: Stand[AirframeBench], asked: Asked) -> Shown:
        view = self.view(stand)
        return Shown(
            picture=lambda foot_px: hang_picture(view, _down(asked)),
            parts=hang_parts(view, stand.bench.view),
            strip=hang_strip(view) if self.hands.laid_for is None else None,
        )

    def view(self, stand: Stand[AirframeBench]) -> HangView:
        bench = stand.bench
        return HangView(
            look=stand.look,
            readings=stand.readings,
            body=airframe_body(bench.title, bench.parts_on, bench.tanks, bench.surfaces),
            parts=bench.parts,
            sum=bench.sum,
            spans_m=spans_m(bench.parts, bench.surfaces),
            hanging=hanging_of(bench),
            down=_between(stand),
            picked=self.hands.picked,
            told=is_told(bench),
            laid_for=self.hands.laid_for,
        )

    def only_moved(self, before: Stand[AirframeBench], now: Stand[AirframeBench]) -> bool:
        first, last = before.bench, now.bench
        if not (first.moving and last.moving and first.hang and last.hang):
            return False
        return replace(last, hang=replace(last.hang, swing=first.hang.swing)) == first


def _between(stand: Stand[AirframeBench]) -> Vector:
    now, before = stand.bench.hang, stand.previous.hang
    swing = HELD_LEVEL if now is None else now.swing
    return between_downs(swing.down if before is None else before.swing.down, swing.down, stand.fraction)


def _down(asked: Asked) -> Callable[[], Vector]:
    def down() -> Vector:
        stand = asked.stand()
        if isinstance(stand.bench, AirframeBench) and isinstance(stand.previous, AirframeBench):
            return _between(stand)  # type: ignore[arg-type]
        return HELD_LEVEL.down

    return down
