"""Numbers that go in steps between limits."""

from lab.ui.look import Look
from lab.ui.outcomes import Changed, WidgetEvent
from lab.ui.widgets.widget import forwards

LARGE_STEPS = 10


def on_step(value: float, low: float, high: float, step: float) -> float:
    """The nearest value within the limits that is a whole number of steps: 210 after 200, and not 211 after 1 g.

    Both limits count too, so that they can always be reached.
    """
    inside = min(high, max(low, value))
    if step <= 0:
        return inside
    # Rounded far below any step, so that 0.1 + 0.2 shows and compares as 0.3.
    return min(high, max(low, round(round(inside / step) * step, 9)))


def stepping_keys(look: Look, key: str, value: float, low: float, high: float, step: float) -> dict[str, WidgetEvent]:
    """What the arrow keys, Page keys, Home and End report for such a number."""

    def to(goal: float) -> WidgetEvent:
        return Changed(key, on_step(goal, low, high, step))

    back, on = forwards(look)
    steps = {back: -1, "down": -1, on: 1, "up": 1}
    keys = {name: to(value + count * step) for name, count in steps.items()}
    keys |= {f"shift+{name}": to(value + count * LARGE_STEPS * step) for name, count in steps.items()}
    keys |= {"page up": to(value + LARGE_STEPS * step), "page down": to(value - LARGE_STEPS * step)}
    return keys | {"home": to(low), "end": to(high)}
