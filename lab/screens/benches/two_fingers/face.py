"""Two fingers on the screen of free build."""

from __future__ import annotations

from dataclasses import replace
from typing import ClassVar

from lab.scenes.two_fingers.view import TwoFingersView
from lab.screens.benches.face import Asked, Face, Shown, Stand
from lab.screens.benches.two_fingers.hands import Hands
from lab.screens.benches.two_fingers.moves import piece_of
from lab.screens.benches.two_fingers.panel import panel_parts
from lab.screens.benches.two_fingers.picture import Now, picture, strip_picture
from lab.screens.benches.two_fingers.strip import strip
from lab.screens.benches.two_fingers.words import CAUTION, HELP
from lab.simulation.benches.groups import in_group
from lab.simulation.benches.two_fingers import TwoFingers
from lab.simulation.benches.two_fingers_tasks import TASKS
from lab.ui.events import Event
from lab.ui.widgets.widget import Widget

LOW_PX = 680.0
"""A window lower than this, in design pixels, has no room for picture, strip and traces at once."""


class TwoFingersFace(Face[TwoFingers]):
    """A body on two fingers that slide together."""

    help: ClassVar = HELP
    caution: ClassVar = CAUTION
    tasks: ClassVar = TASKS
    _hands: Hands

    def __init__(self) -> None:
        self._hands = Hands()

    def shown(self, stand: Stand[TwoFingers], asked: Asked) -> Shown:
        view, hands = self._view(stand), self._hands
        now = self._now(view, asked)

        def areas(tall: float, *, to_scale: bool) -> Widget:
            return strip_picture(view, now, tall, asked.picture if to_scale else None)

        panel = None if hands.carries else strip(view, hands.parts, armed=hands.armed is not None)
        # In a low window the picture needs the room that would only say that nothing is drawn yet; whether or not
        # something is picked, or it would jump under the hand that picks.
        low = stand.look.sizes.height < stand.look.sizes.px(LOW_PX)
        nothing_yet = stand.bench.held and not view.told
        return Shown(
            picture=lambda foot_px: picture(replace(view, foot_px=foot_px), now),
            parts=replace(panel_parts(view, armed=hands.armed.key if hands.armed else ""), task=self.task_shown(stand)),
            strip=panel,
            areas=None if low and nothing_yet else areas,
        )

    def typed(self, event: Event, stand: Stand[TwoFingers], *, focused: str | None) -> bool:
        piece = piece_of(self._view(stand), self._hands.picked)
        return piece is not None and self._hands.parts.naming.typed(event, in_group(piece.part.name), focused=focused)

    def only_moved(self, before: Stand[TwoFingers], now: Stand[TwoFingers]) -> bool:
        if not (before.bench.moving and now.bench.moving):
            return False
        return replace(now.bench, gap_m=before.bench.gap_m, motion=before.bench.motion) == before.bench

    def _now(self, view: TwoFingersView, asked: Asked) -> Now:
        """While something moves only the bench is new, and the picture asks for that by itself."""

        def current() -> TwoFingersView:
            stand = asked.stand()
            if not isinstance(stand.bench, TwoFingers) or not isinstance(stand.previous, TwoFingers):
                return view
            return replace(view, bench=stand.bench, previous=stand.previous, fraction=stand.fraction)

        return current

    def _view(self, stand: Stand[TwoFingers]) -> TwoFingersView:
        bench, hands = stand.bench, self._hands
        return TwoFingersView(
            bench=bench,
            look=stand.look,
            readings=stand.readings,
            previous=stand.previous,
            fraction=stand.fraction,
            picked=hands.picked,
            coming=hands.coming,
            numbers=bench.view != "plain",
            told=bench.view == "all" or (bench.view == "numbers" and not bench.held),
        )
