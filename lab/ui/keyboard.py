"""What keys do: moving the focus in reading order, and pressing or stepping what has it."""

from collections.abc import Sequence
from typing import NamedTuple

from lab.ui.arrangement import Target
from lab.ui.events import Key
from lab.ui.outcomes import WidgetEvent


class KeyAnswer(NamedTuple):
    """Where the focus goes (None: stays where it is), the press (its target), what is reported."""

    focus: str | None = None
    press: Target | None = None
    events: tuple[WidgetEvent, ...] = ()
    consumed: bool = True


NOTHING = KeyAnswer(consumed=False)


def stops(targets: Sequence[Target]) -> list[Target]:
    """What Tab reaches, in order."""
    return [target for target in targets if target.spot.stop and target.spot.enabled]


def next_stop(targets: Sequence[Target], focused: str | None, *, step: int) -> str | None:
    """The stop after (or before) the focused spot, round the end; None if there is nothing to focus."""
    reached = stops(targets)
    if not reached:
        return None
    order = [target.key for target in targets]
    if focused not in order:
        return reached[0 if step > 0 else -1].key
    here = order.index(focused)
    places = [order.index(target.key) for target in reached]
    ahead = [place for place in places if (place > here if step > 0 else place < here)]
    if not ahead:
        return reached[0 if step > 0 else -1].key
    return order[ahead[0] if step > 0 else ahead[-1]]


def answer_key(key: Key, targets: Sequence[Target], focused: str | None) -> KeyAnswer:
    """What a key does with the focus where it is. Escape is the desk's."""
    if key.name == "tab" and not (key.ctrl or key.alt):
        return KeyAnswer(focus=next_stop(targets, focused, step=-1 if key.shift else 1))
    target = next((t for t in targets if t.key == focused), None)
    if target is None or not target.spot.enabled or key.ctrl or key.alt:
        return NOTHING
    if key.name in ("enter", "space"):
        return NOTHING if key.repeat else KeyAnswer(press=target)
    name = f"shift+{key.name}" if key.shift else key.name
    event = target.spot.keys.get(name)
    move = target.spot.moves.get(name)
    if event is None and move is None:
        return NOTHING
    return KeyAnswer(focus=move, events=(event,) if event else ())
