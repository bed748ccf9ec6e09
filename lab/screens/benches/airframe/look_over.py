"""Looking the airframe over: its three views, and the moment sum beside them."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import ClassVar

from lab.outline.words import msg
from lab.scenes.readings import Readings
from lab.scenes.views.nodes import view_nodes
from lab.scenes.views.scene import draw_views
from lab.scenes.views.view import BodyView, LineMark, PlaceMark
from lab.screens.benches.airframe.activity import Activity
from lab.screens.benches.airframe.body import airframe_body
from lab.screens.benches.face import Asked, Shown, Stand
from lab.screens.benches.hands import BenchHands, TakenUp
from lab.screens.benches.layout import PICTURE
from lab.screens.benches.panel import PanelParts, view_choice
from lab.screens.benches.sums import balance_panel, moment_table
from lab.simulation import Command
from lab.simulation.benches.airframe import AirframeBench
from lab.ui.geometry import Point, Rect
from lab.ui.outcomes import Changed, Chosen, DragBegan, Nudged
from lab.ui.widgets.picture import Picture


@dataclass(slots=True)
class Eyes(BenchHands[BodyView, TakenUp]):
    """Hands that only look: nothing is moved here."""

    nothing: tuple[Command, ...] = field(default=())

    def pointer_down(self, pointer: int, at: Point) -> None:
        """Nothing is carried."""

    def _pressed(self, key: str, view: BodyView, rect: Rect) -> tuple[Command, ...]:
        return self.nothing

    def _tapped(self, at: Point, view: BodyView, rect: Rect) -> tuple[Command, ...]:
        return self.nothing

    def _began(self, event: DragBegan, view: BodyView, rect: Rect) -> tuple[Command, ...]:
        return self.nothing

    def _carry(self, pointer: int, at: Point, view: BodyView, rect: Rect) -> tuple[Command, ...]:
        return self.nothing

    def _put_down(self, pointer: int, at: Point, view: BodyView, rect: Rect) -> tuple[Command, ...]:
        return self.nothing

    def _put_back(self, pointer: int, view: BodyView) -> tuple[Command, ...]:
        return self.nothing

    def _nudged(self, event: Nudged, view: BodyView) -> tuple[Command, ...]:
        return self.nothing

    def _removed(self, key: str, view: BodyView) -> tuple[Command, ...]:
        return self.nothing

    def _typed(self, event: Changed, view: BodyView) -> tuple[Command, ...]:
        return self.nothing

    def _chosen(self, event: Chosen, view: BodyView) -> tuple[Command, ...]:
        return self.nothing


class LookOver(Activity):
    """Nothing is done with it: it is looked at."""

    doing: ClassVar = "build"
    title: ClassVar = msg("Look at it")
    hands: Eyes

    def __init__(self) -> None:
        self.hands = Eyes()

    def shown(self, stand: Stand[AirframeBench], asked: Asked) -> Shown:
        bench, look, readings = stand.bench, stand.look, stand.readings
        view = self.view(stand)
        told = bench.view != "plain"
        keys = [*(f"part-{each.id}" for each in bench.parts_on), *(f"tank-{tank.name}" for tank in bench.tanks)]
        return Shown(
            picture=lambda foot_px: Picture(
                PICTURE,
                look.words.say("Airframe from three sides"),
                lambda canvas, rect: draw_views(canvas, rect, view),
                nodes=lambda rect: view_nodes(view, rect),
                value=look.words.content(bench.title),
                least=(320.0, 260.0),
                tappable=False,
            ),
            parts=PanelParts(
                sums=moment_table(look, readings, bench.sum, keys, pickable=False) if told else (),
                result=(balance_panel(look, readings, bench.sum, bench.parts),) if told else (),
                action=(),
                tray=(),
                view=(view_choice(look, bench.view),),
            ),
        )

    def view(self, stand: Stand[AirframeBench]) -> BodyView:
        bench, say, readings = stand.bench, stand.look.words.say, stand.readings
        told = bench.view != "plain"
        at_m = bench.sum.balance_point_m
        return BodyView(
            body=airframe_body(bench.title, bench.parts_on, bench.tanks, bench.surfaces),
            look=stand.look,
            readings=readings,
            faces=("side", "top", "front"),
            labels="names",
            balance=PlaceMark(at_m=at_m, text=_cg(stand, readings, at_m[0])) if told else None,
            reference=LineMark(at_m=bench.reference_m[0], text=say("reference line")) if told else None,
        )


def _cg(stand: Stand[AirframeBench], readings: Readings, along_m: float) -> str:
    return stand.look.words.say("CG {place}", place=readings.length_with_unit(along_m))
