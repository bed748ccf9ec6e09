"""The desk: a tree of widgets with its pointers, its keyboard focus, its dialog and its outline."""

from __future__ import annotations

from lab.outline import Node
from lab.ui import widgets
from lab.ui.arrangement import Target, arrange, renewed
from lab.ui.canvas import Canvas
from lab.ui.draw_memory import DrawMemory
from lab.ui.events import Event, FocusLost, Key, PointerCancel, PointerDown, PointerMove, PointerUp, Text, Wheel
from lab.ui.focus import Focus, draw_ring, target_of
from lab.ui.geometry import Point, Rect
from lab.ui.keyboard import answer_key
from lab.ui.look import Look
from lab.ui.outcomes import Escaped, Scrolled, WidgetEvent
from lab.ui.pointers import Pointers
from lab.ui.scrolling import WHEEL_PX, into_view, scrolled, scrolled_by_key
from lab.ui.widgets.dialog import Dialog, Toast
from lab.ui.widgets.widget import Mood, Widget


class Desk:
    """Shows a tree of widgets, tells what was done to them, draws them, says what is on it.

    A new tree may be shown at any time: focus, held pointers and scroll offsets are kept by key.
    """

    def __init__(self, look: Look) -> None:
        self._look = look
        self._root: Widget | None = None
        self._dialog: Dialog | None = None
        self._toast: Toast | None = None
        self._keypad: widgets.Keypad | None = None
        self._offsets: dict[str, float] = {}
        self._scene = arrange(look, (), {})
        self._memory = DrawMemory()
        self._pointers = Pointers()
        self._focus = Focus()
        self._consumed = False

    @property
    def look(self) -> Look:
        """Colours, sizes and words in force."""
        return self._look

    @property
    def focused(self) -> str | None:
        """The key that has the focus."""
        return self._focus.key

    @property
    def by_keyboard(self) -> bool:
        """Whether the keyboard was last used: only then is the focus shown."""
        return self._focus.by_keyboard

    @property
    def consumed(self) -> bool:
        """Whether the last event meant something here; if not, a screen may use it."""
        return self._consumed

    @property
    def dragging(self) -> bool:
        """Whether something is being dragged."""
        return self._pointers.dragging

    def show(self, root: Widget, *, dialog: Dialog | None = None, toast: Toast | None = None) -> None:
        """Puts a tree on the desk, with a dialog and a toast above it if there are any."""
        before = (self._root, self._dialog, self._toast)
        self._root, self._dialog, self._toast = root, dialog, toast
        scene = renewed(self._scene, root) if before == (root, dialog, toast) else None
        if scene is None:
            self._lay_out()
        else:
            self._scene = scene
            self._focus.keep(self._active, [shown.key for shown in self._modals])

    def restyle(self, look: Look) -> None:
        """Another look: a new window size, theme, text scale or language."""
        self._look = look
        self._memory.forget()
        self._lay_out()

    def draw(self, canvas: Canvas) -> None:
        """Draws everything on paper, the ring round the focus last."""
        whole = Rect(0.0, 0.0, self._look.sizes.width, self._look.sizes.height)
        canvas.box(whole, fill=self._look.theme.paper)
        self._scene.draw(canvas, self._mood(), self._memory)
        target = self._target(self._focus.shown)
        if target is not None:
            draw_ring(canvas, self._look, target)

    def outline(self) -> Node:
        """The screen as a tree of nodes with the bounds that were drawn."""
        return self._scene.outline(self._mood())

    def rect(self, key: str) -> Rect | None:
        """Where the widget or spot of a key lies; None if there is none."""
        return self._scene.rect(key)

    def focus(self, key: str | None) -> None:
        """Gives the focus to a key, brings it into view."""
        target = self._focus.give(key, self._active)
        offsets = into_view(self._scene, target) if target is not None else {}
        if offsets:
            self._offsets.update(offsets)
            self._lay_out()

    def handle(self, event: Event) -> tuple[WidgetEvent, ...]:
        """What a person did to the widgets, by one event. Nobody is called back."""
        self._consumed = False
        events: tuple[WidgetEvent, ...] = ()
        if isinstance(event, PointerDown | PointerMove | PointerUp | PointerCancel):
            events = self._pointed(event)
        elif isinstance(event, Key):
            events = self._keyed(event)
        elif isinstance(event, Text):
            self._typed(event.text)
        elif isinstance(event, Wheel):
            key = self._scene.scroll_at((event.x, event.y))
            events = self._scroll(
                scrolled(self._scene, key, -event.dy * self._look.sizes.px(WHEEL_PX)) if key else None
            )
        elif isinstance(event, FocusLost):
            events = self._pointers.cancel_all()
        self._consumed = self._consumed or bool(events)
        return events

    def _pointed(self, event: PointerDown | PointerMove | PointerUp | PointerCancel) -> tuple[WidgetEvent, ...]:
        if isinstance(event, PointerDown):
            self._focus.by_keyboard, self._consumed = False, True
        gesture = self._pointers.handle(event, self._scene, layer=self._layer)
        if gesture.focus is not None:
            self.focus(gesture.focus)
        events = gesture.events
        if gesture.scroll is not None:
            events = (*events, *self._scroll(scrolled(self._scene, *gesture.scroll)))
        if gesture.press is not None:
            if not gesture.press.spot.press_at:
                self.focus(gesture.press.key)
            events = (*events, *self._press(gesture.press, gesture.at))
        return events

    def _press(self, target: Target, at: Point) -> tuple[WidgetEvent, ...]:
        spot = target.spot
        self._consumed = True
        if self._keypad is not None:
            answer = widgets.press_keypad(self._keypad, spot.key)
            self._open(answer.keypad)
            return (answer.changed,) if answer.changed else ()
        if spot.field is not None:
            self._open(widgets.Keypad(spot.field))
            return ()
        if spot.press_at is not None:
            return (spot.press_at(at),)
        return (spot.effect,) if spot.effect is not None else ()

    def _keyed(self, key: Key) -> tuple[WidgetEvent, ...]:
        if key.name == "escape":
            return self._escaped()
        if self._keypad is not None and key.name in ("backspace", "delete"):
            self._open(self._keypad.rubbed_out())
            self._consumed = True
            return ()
        answer = answer_key(key, self._active, self._focus.key)
        if not answer.consumed:
            return self._scroll(scrolled_by_key(self._scene, key.name)) if not (key.ctrl or key.alt) else ()
        self._focus.by_keyboard = self._consumed = True
        if answer.focus is not None:
            self.focus(answer.focus)
        if answer.press is not None:
            return self._press(answer.press, answer.press.spot.rect.center)
        return answer.events

    def _escaped(self) -> tuple[WidgetEvent, ...]:
        self._consumed = True
        if self._pointers.dragging:
            return self._pointers.cancel_all()
        self._focus.by_keyboard = True
        if self._keypad is not None:
            self._open(None)
            return ()
        return (Escaped(self._dialog.key if self._dialog else ""),)

    def _typed(self, text: str) -> None:
        target = self._target(self._focus.key)
        keypad = self._keypad
        if keypad is None and target is not None and target.spot.field is not None and target.spot.enabled:
            keypad = widgets.Keypad(target.spot.field)
        entered = keypad.entered(text) if keypad is not None else None
        if entered is not None and entered != keypad:
            self._consumed = True
            self._open(entered)
            self.focus(widgets.KEYPAD_DONE)  # whoever types expects Enter to finish

    def _open(self, keypad: widgets.Keypad | None) -> None:
        self._keypad = keypad
        self._lay_out()

    def _scroll(self, moved: Scrolled | None) -> tuple[WidgetEvent, ...]:
        if moved is None:
            return ()
        self._offsets[moved.key] = moved.offset
        self._lay_out()
        return (moved,)

    @property
    def _modals(self) -> list[Dialog]:
        pad = widgets.keypad_dialog(self._look, self._keypad) if self._keypad is not None else None
        return [dialog for dialog in (self._dialog, pad) if dialog is not None]

    @property
    def _layer(self) -> int:
        """The lowest layer that takes pointers and focus."""
        return (self._dialog is not None) + (self._keypad is not None)

    @property
    def _active(self) -> tuple[Target, ...]:
        return tuple(target for target in self._scene.targets if target.layer >= self._layer)

    def _target(self, key: str | None) -> Target | None:
        return target_of(key, self._active)

    def _mood(self) -> Mood:
        return Mood(self._pointers.pressed, self._focus.shown)

    def _lay_out(self) -> None:
        if self._root is None:
            return
        modals = self._modals
        layers: tuple[Widget, ...] = (self._root, *modals, *((self._toast,) if self._toast else ()))
        self._scene = arrange(self._look, layers, self._offsets)
        self._offsets = {key: place.offset for key, place in self._scene.scrolls.items()}
        self._focus.keep(self._active, [dialog.key for dialog in modals])
