"""What fingers and the mouse do: each pointer has at most one thing in hand."""

from dataclasses import dataclass
from typing import Literal

from lab.ui.arrangement import Arrangement, Target
from lab.ui.events import PointerCancel, PointerDown, PointerEvent, PointerMove, PointerUp
from lab.ui.geometry import Point
from lab.ui.outcomes import DragBegan, DragCancelled, Dragged, DragSource, Dropped, WidgetEvent

Phase = Literal["press", "drag", "slide", "scroll", "dead"]
DOUBLE_TAP_MS = 350
"""A second tap this soon after the first belongs to it: it must not press what has just appeared there."""
DRAG_PX = 10.0
DRAG_MM = 2.0


@dataclass(slots=True)
class Capture:
    """What one pointer has in hand since it went down."""

    key: str
    start: Point
    at: Point
    phase: Phase
    scroll: str | None = None
    source: DragSource = "picture"


@dataclass(frozen=True, slots=True)
class Gesture:
    """What a pointer event came to: reports, a press that is complete, a scroll by so many pixels.

    focus: the key that was taken in hand.
    """

    events: tuple[WidgetEvent, ...] = ()
    focus: str | None = None
    press: Target | None = None
    at: Point = (0.0, 0.0)
    scroll: tuple[str, float] | None = None


class Pointers:
    """The captures of all pointers; kept by key, so that a new tree under a held finger changes nothing."""

    def __init__(self) -> None:
        self._held: dict[int, Capture] = {}
        self._last_press: tuple[str, Point, int] | None = None

    @property
    def pressed(self) -> frozenset[str]:
        """Keys held down and still under their pointer."""
        return frozenset(c.key for c in self._held.values() if c.phase in ("press", "slide", "drag"))

    @property
    def dragging(self) -> bool:
        """Whether anything is being dragged."""
        return any(capture.phase == "drag" for capture in self._held.values())

    def handle(self, event: PointerEvent, scene: Arrangement, *, layer: int) -> Gesture:
        """One pointer event.  layer: the lowest that pointers reach."""
        if isinstance(event, PointerDown):
            return self.down(event, scene, layer=layer)
        if isinstance(event, PointerMove):
            return self.move(event, scene)
        if isinstance(event, PointerUp):
            return self.up(event, scene, layer=layer)
        return self.cancel(event)

    def down(self, event: PointerDown, scene: Arrangement, *, layer: int) -> Gesture:
        """A pointer goes down: it takes what it hits, unless another pointer has that already."""
        point = (event.x, event.y)
        target = scene.hit(point, layer=layer)
        scroll = scene.scroll_at(point)
        taken = target is not None and any(c.key == target.key and c.phase != "dead" for c in self._held.values())
        if target is not None and (taken or not target.spot.enabled or self._is_second_tap(event, target)):
            self._held[event.pointer] = Capture(target.key, point, point, "dead")
            return Gesture()
        if target is None:
            phase: Phase = "press" if scroll else "dead"
            self._held[event.pointer] = Capture("", point, point, phase, scroll)
            return Gesture()
        source: DragSource = target.spot.drag or "picture"
        self._held[event.pointer] = Capture(target.key, point, point, "press", scroll, source)
        return Gesture()

    def move(self, event: PointerMove, scene: Arrangement) -> Gesture:
        """A pointer moves: beyond the threshold a press becomes a drag or a scroll, or it is off."""
        capture = self._held.get(event.pointer)
        if capture is None:
            return Gesture()
        before, capture.at = capture.at, (event.x, event.y)
        target = _target(scene, capture.key)
        if capture.phase == "slide" and target is not None and target.spot.slide:
            return Gesture(events=(target.spot.slide(capture.at),))
        if capture.phase == "drag":
            return Gesture(events=(Dragged(capture.key, capture.at, event.pointer, capture.source),))
        if capture.phase == "scroll" and capture.scroll:
            return Gesture(scroll=(capture.scroll, before[1] - event.y))
        if capture.phase == "press" and self._beyond(capture, scene):
            return self._leave_press(event, capture, target)
        return Gesture()

    def up(self, event: PointerUp, scene: Arrangement, *, layer: int) -> Gesture:
        """A pointer is lifted: a press counts if it is still where it began."""
        capture = self._held.pop(event.pointer, None)
        if capture is None:
            return Gesture()
        point = (event.x, event.y)
        if capture.phase == "drag":
            return Gesture(events=(Dropped(capture.key, point, event.pointer, capture.source),))
        target = _target(scene, capture.key)
        if capture.phase != "press" or target is None or target.layer < layer or not target.spot.enabled:
            return Gesture()
        if not target.reach(scene.look.sizes.target).contains(point):
            return Gesture()
        if event.time_ms is not None:
            self._last_press = (capture.key, point, event.time_ms)
        if target.spot.slide:
            return Gesture(events=(target.spot.slide(point),), focus=capture.key)
        return Gesture(press=target, at=point)

    def cancel(self, event: PointerCancel) -> Gesture:
        """A pointer is lost: what it dragged goes back."""
        capture = self._held.pop(event.pointer, None)
        if capture is None or capture.phase != "drag":
            return Gesture()
        return Gesture(events=(DragCancelled(capture.key, capture.at, event.pointer, capture.source),))

    def cancel_all(self) -> tuple[WidgetEvent, ...]:
        """All pointers are lost."""
        gestures = [self.cancel(PointerCancel(pointer)) for pointer in tuple(self._held)]
        return tuple(event for gesture in gestures for event in gesture.events)

    def _leave_press(self, event: PointerMove, capture: Capture, target: Target | None) -> Gesture:
        """The threshold was passed: what the pointer does from now on."""
        if target is not None and target.spot.drag:
            capture.phase = "drag"
            began = DragBegan(capture.key, capture.at, event.pointer, capture.source)
            return Gesture(events=(began,), focus=capture.key)
        along = abs(capture.at[1] - capture.start[1]) >= abs(capture.at[0] - capture.start[0])
        if capture.scroll and along:
            capture.phase = "scroll"
            return Gesture(scroll=(capture.scroll, capture.start[1] - capture.at[1]))
        if target is not None and target.spot.slide:
            capture.phase = "slide"
            return Gesture(events=(target.spot.slide(capture.at),), focus=capture.key)
        return Gesture()

    def _beyond(self, capture: Capture, scene: Arrangement) -> bool:
        limit = max(scene.look.sizes.px(DRAG_PX), scene.look.sizes.mm(DRAG_MM))
        dx, dy = capture.at[0] - capture.start[0], capture.at[1] - capture.start[1]
        return dx * dx + dy * dy > limit * limit

    def _is_second_tap(self, event: PointerDown, target: Target) -> bool:
        """Whether this tap belongs to the one before, although something else is under it by now."""
        if self._last_press is None or event.time_ms is None:
            return False
        key, _, when = self._last_press
        return key != target.key and 0 <= event.time_ms - when < DOUBLE_TAP_MS and self._is_near(event)

    def _is_near(self, event: PointerDown) -> bool:
        if self._last_press is None:
            return False
        _, (x, y), _ = self._last_press
        return abs(event.x - x) < 3 * DRAG_PX and abs(event.y - y) < 3 * DRAG_PX


def _target(scene: Arrangement, key: str) -> Target | None:
    return next((target for target in scene.targets if target.key == key), None) if key else None
