"""Building the airframe: its parts placed in three views, with all that its balance point means beside them."""

from __future__ import annotations

from typing import ClassVar

from lab.outline.words import msg
from lab.screens.benches.airframe.activity import Activity, is_told
from lab.screens.benches.airframe.body import airframe_body
from lab.screens.benches.airframe.build_hands import BuildHands
from lab.screens.benches.airframe.build_panel import FIT, build_parts
from lab.screens.benches.airframe.build_picture import build_picture
from lab.screens.benches.airframe.build_strip import build_strip
from lab.screens.benches.airframe.build_view import BuildView, part_of
from lab.screens.benches.face import Asked, Shown, Stand
from lab.simulation.benches.airframe import AirframeBench
from lab.simulation.benches.airframe_balance import margin_of, neutral_of, plane_of, standing_of
from lab.simulation.benches.airframe_kinds import KINDS
from lab.simulation.benches.groups import in_group
from lab.ui.events import Event


class Build(Activity):
    """Put on, move, weigh, and see where it balances."""

    doing: ClassVar = "build"
    title: ClassVar = msg("Build")
    hands: BuildHands

    def __init__(self) -> None:
        self.hands = BuildHands()

    def shown(self, stand: Stand[AirframeBench], asked: Asked) -> Shown:
        view, hands = self.view(stand), self.hands
        say, armed = stand.look.words.say, hands.armed
        taken_up = ""
        if armed is not None:
            taken_up = say("Tap the place of the {name}.", name=say(KINDS[armed.key.removeprefix(FIT)].title))
        return Shown(
            picture=lambda foot_px: build_picture(view),
            parts=build_parts(view, armed=armed.key if armed else ""),
            strip=None if hands.carried else build_strip(view, hands.parts, armed_text=taken_up),
        )

    def view(self, stand: Stand[AirframeBench]) -> BuildView:
        bench = stand.bench
        told = is_told(bench)
        # A lattice is not worked out anew at every step of a wing that is on its way.
        steady = not any(self._has_surface(bench, key) for key in self.hands.carried_keys)
        return BuildView(
            bench=bench,
            look=stand.look,
            readings=stand.readings,
            body=airframe_body(bench.title, bench.parts_on, bench.tanks_now, bench.surfaces),
            neutral=neutral_of(bench) if steady else None,
            margin=margin_of(bench) if steady and (told or not bench.held) else None,
            plane=plane_of(bench),
            standing=standing_of(bench),
            picked=self.hands.picked,
            told=told,
            coming=self.hands.coming(),
            laid_for=self.hands.laid_for,
        )

    def typed(self, event: Event, stand: Stand[AirframeBench], *, focused: str | None) -> bool:
        part = part_of(stand.bench, self.hands.picked)
        return part is not None and self.hands.parts.naming.typed(event, in_group(part.name), focused=focused)

    def _has_surface(self, bench: AirframeBench, key: str) -> bool:
        part = part_of(bench, key)
        return part is not None and any(surface.name == in_group(part.name) for surface in bench.surfaces)
