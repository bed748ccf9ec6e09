"""Weighing the airframe on three scales, level and with its nose raised."""

from __future__ import annotations

from collections.abc import Callable
from typing import ClassVar

from lab.outline.words import msg
from lab.screens.benches.airframe.activity import Activity, is_told
from lab.screens.benches.airframe.body import airframe_body
from lab.screens.benches.airframe.weigh_hands import WeighHands
from lab.screens.benches.airframe.weigh_panel import weigh_parts, weigh_strip
from lab.screens.benches.airframe.weigh_picture import weigh_picture
from lab.screens.benches.airframe.weigh_view import WeighView
from lab.screens.benches.face import Asked, Shown, Stand
from lab.simulation.benches.airframe import AirframeBench
from lab.simulation.benches.airframe_hanging_edits import weighing_of
from lab.simulation.benches.airframe_places import spans_m
from lab.simulation.benches.airframe_weighing import AirframeWeighing


class Weigh(Activity):
    """Place the scales, let it down, read the balance point back."""

    doing: ClassVar = "weigh"
    title: ClassVar = msg("Weigh it")
    hands: WeighHands

    def __init__(self) -> None:
        self.hands = WeighHands()

    def shown(self, stand: Stand[AirframeBench], asked: Asked) -> Shown:
        view = self.view(stand)
        return Shown(
            picture=lambda foot_px: weigh_picture(view, _weighing(asked, view.weighing)),
            parts=weigh_parts(view, stand.bench.view),
            strip=None if self.hands.carries else weigh_strip(view),
        )

    def view(self, stand: Stand[AirframeBench]) -> WeighView:
        bench = stand.bench
        return WeighView(
            look=stand.look,
            readings=stand.readings,
            body=airframe_body(bench.title, bench.parts_on, bench.tanks, bench.surfaces),
            parts=bench.parts,
            sum=bench.sum,
            spans_m=spans_m(bench.parts, bench.surfaces),
            weighing=weighing_of(bench),
            picked=self.hands.picked,
            told=is_told(bench),
            raise_rad=self.hands.raise_rad,
        )


def _weighing(asked: Asked, otherwise: AirframeWeighing) -> Callable[[], AirframeWeighing]:
    def weighing() -> AirframeWeighing:
        bench = asked.stand().bench
        return weighing_of(bench) if isinstance(bench, AirframeBench) else otherwise

    return weighing
