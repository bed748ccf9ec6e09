"""The mobile on the screen of free build."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import ClassVar

from lab.scenes.mobile.view import MobileView, angles_between
from lab.screens.benches.face import Asked, Face, Shown, Stand
from lab.screens.benches.mobile.hands import Hands
from lab.screens.benches.mobile.keys import tray_thing
from lab.screens.benches.mobile.moves import hanging, name_of
from lab.screens.benches.mobile.panel import panel_parts
from lab.screens.benches.mobile.picture import picture
from lab.screens.benches.mobile.strip import strip
from lab.screens.benches.mobile.words import CAUTION, HELP
from lab.simulation.benches import Mobile
from lab.simulation.benches.mobile_tasks import TASKS
from lab.simulation.command_table import carried_out
from lab.ui.events import Event


class MobileFace(Face[Mobile]):
    """Bars that hang from bars, and what is hung on them."""

    help: ClassVar = HELP
    caution: ClassVar = CAUTION
    tasks: ClassVar = TASKS
    _hands: Hands

    def __init__(self) -> None:
        self._hands = Hands()

    def shown(self, stand: Stand[Mobile], asked: Asked) -> Shown:
        view, hands = self._view(stand), self._hands
        armed, taken_up = hands.armed, ""
        if armed is not None:
            taken_up = stand.look.words.say("Tap the place where it should hang.")
        taken = armed.thing.key if armed else ""
        panel = panel_parts(replace(view, bench=stand.bench), shelf=hands.shelf, armed=taken)
        return Shown(
            picture=lambda foot_px: picture(
                replace(view, foot_px=foot_px), _angles(asked), armed=armed is not None and not hands.carried
            ),
            parts=replace(panel, task=self.task_shown(stand)),
            strip=strip(replace(view, picked=hands.strip_for), hands.parts, armed_text=taken_up),
        )

    def typed(self, event: Event, stand: Stand[Mobile], *, focused: str | None) -> bool:
        called = name_of(stand.bench, self._hands.picked)
        return called is not None and self._hands.parts.naming.typed(event, called, focused=focused)

    def only_moved(self, before: Stand[Mobile], now: Stand[Mobile]) -> bool:
        if not (before.bench.moving and now.bench.moving):
            return False
        return replace(now.bench, swings=before.bench.swings) == before.bench

    def _view(self, stand: Stand[Mobile]) -> MobileView:
        bench, hands = stand.bench, self._hands
        told = bench.view == "all" or (bench.view == "numbers" and not bench.held)
        drawn, coming = _with_coming(bench, hands)
        carried = hands.carried
        return MobileView(
            bench=drawn,
            look=stand.look,
            readings=stand.readings,
            angles_rad=() if coming is not None else angles_between(stand.previous, bench, stand.fraction),
            picked=hands.picked,
            carried=carried.key if carried and carried.place != carried.origin and not tray_thing(carried.key) else "",
            coming=coming,
            ghost=hands.ghost,
            numbers=bench.view != "plain",
            told=told and coming is None,
            lines=told,
            laid_for=hands.carrying.laid_for,
        )


def _with_coming(bench: Mobile, hands: Hands) -> tuple[Mobile, int | None]:
    """The bench as it would be with what is on its way, and the id of that; as it is where it can't hang."""
    if hands.coming is None or not bench.held:
        return bench, None
    thing, place = hands.coming
    after = carried_out(bench, hanging(thing, *place))  # type: ignore[arg-type]
    return (after, bench.next_id) if isinstance(after, Mobile) else (bench, None)


def _angles(asked: Asked) -> Callable[[], tuple[float, ...]]:
    def angles_rad() -> tuple[float, ...]:
        stand = asked.stand()
        if isinstance(stand.bench, Mobile) and isinstance(stand.previous, Mobile):
            return angles_between(stand.previous, stand.bench, stand.fraction)
        return ()

    return angles_rad
