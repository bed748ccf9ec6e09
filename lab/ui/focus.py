"""Which spot has the keyboard: kept by key from tree to tree, into dialogs and back out of them."""

from collections.abc import Sequence

from lab.ui.arrangement import Target
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.keyboard import stops
from lab.ui.look import Look

_RING_AWAY_PX = 4.0
_RING_PX = 3.0


class Focus:
    """The focused key. by_keyboard: whether the keyboard was last used, for only then is it shown."""

    def __init__(self) -> None:
        self.key: str | None = None
        self.by_keyboard = False
        self._place = 0
        self._left: list[tuple[str, str | None]] = []

    @property
    def shown(self) -> str | None:
        """The key that is seen to have the focus."""
        return self.key if self.by_keyboard else None

    def give(self, key: str | None, active: Sequence[Target]) -> Target | None:
        """Gives the focus to a key.  Returns its target, None where there is none."""
        self.key = key
        places = [stop.key for stop in stops(active)]
        if key in places:
            self._place = places.index(key)
        return target_of(key, active)

    def keep(self, active: Sequence[Target], modals: Sequence[str]) -> None:
        """After a new tree: into a dialog that has opened, out of one that has closed, else by key, else by place.

        modals: the keys of the open dialogs, the lowest first.
        """
        while self._left and self._left[-1][0] not in modals:
            self.key = self._left.pop()[1]
        for modal in modals[len(self._left) :]:
            self._left.append((modal, self.key))
            inside = stops(active)
            self.key = inside[0].key if inside else None
        if self.key is not None and target_of(self.key, active) is None:
            # Whoever works by keys must not be thrown back to the start when a button makes way for another.
            reached = stops(active)
            by_place = reached[min(self._place, len(reached) - 1)].key if reached else None
            self.key = by_place if self.by_keyboard else None


def target_of(key: str | None, targets: Sequence[Target]) -> Target | None:
    """The target with a key, None for none."""
    return next((target for target in targets if target.key == key), None)


def draw_ring(canvas: Canvas, look: Look, target: Target) -> None:
    """The ring round what has the focus: outside it, so that it meets the ground and not the control."""
    away = look.sizes.px(_RING_AWAY_PX)
    whole = Rect(0.0, 0.0, look.sizes.width, look.sizes.height)
    with canvas.clipped(target.clip if target.clip is not None else whole):
        canvas.box(
            target.spot.rect.grown(away),
            outline=look.theme.focus,
            width=look.sizes.px(_RING_PX),
            radius=look.sizes.radius + away,
        )
