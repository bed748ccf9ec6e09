"""Drops a file on a window, as a file manager does: `drop_file.py X Y FILE`, the source's half of XDND version 5.

xdotool sends no client messages and the tests install no X library for Python, so this speaks to Xlib itself.
"""

import ctypes
import ctypes.util
import sys
import time
from pathlib import Path

CLIENT_MESSAGE, SELECTION_REQUEST, SELECTION_NOTIFY = 33, 30, 31
PATIENCE_S = 10.0
LONGS = ctypes.c_long * 24
"""As large as any event of X; every field of those used here begins at a multiple of a long."""

X = ctypes.CDLL(ctypes.util.find_library("X11") or "libX11.so.6")
X.XOpenDisplay.restype = ctypes.c_void_p
X.XInternAtom.restype = X.XDefaultRootWindow.restype = X.XCreateSimpleWindow.restype = ctypes.c_ulong
WINDOW = ctypes.c_ulong


class Source:
    """Whoever drags the file."""

    def __init__(self, path: Path) -> None:
        self.text = path.resolve().as_uri().encode() + b"\r\n"
        self.display = ctypes.c_void_p(X.XOpenDisplay(None))
        self.root = WINDOW(X.XDefaultRootWindow(self.display))
        self.window = WINDOW(X.XCreateSimpleWindow(self.display, self.root, 0, 0, 1, 1, 0, WINDOW(0), WINDOW(0)))
        X.XSetSelectionOwner(self.display, WINDOW(self.atom("XdndSelection")), self.window, WINDOW(0))

    def atom(self, name: str) -> int:
        """The number of a name."""
        return int(X.XInternAtom(self.display, name.encode(), 0))

    def under(self, x: int, y: int) -> int:
        """The window under a place of the screen."""
        child, out = WINDOW(), (ctypes.c_int * 2)()
        places = ctypes.byref(out, 0), ctypes.byref(out, ctypes.sizeof(ctypes.c_int)), ctypes.byref(child)
        X.XTranslateCoordinates(self.display, self.root, self.root, x, y, *places)
        return int(child.value)

    def tell(self, target: int, name: str, *values: int) -> None:
        """Send a client message."""
        event = LONGS()
        # type, serial, send_event, display, window, message_type, format, five longs
        event[0], event[4], event[5], event[6] = CLIENT_MESSAGE, target, self.atom(name), 32
        for place, value in enumerate((self.window.value, *values)):
            event[7 + place] = value
        X.XSendEvent(self.display, WINDOW(target), 0, ctypes.c_long(0), ctypes.byref(event))
        X.XFlush(self.display)

    def answer(self) -> int:
        """Wait for the next message, handing out the file's name on the way; returns what the message is."""
        until = time.monotonic() + PATIENCE_S
        event = LONGS()
        while time.monotonic() < until:
            if not X.XPending(self.display):
                time.sleep(0.01)
                continue
            X.XNextEvent(self.display, ctypes.byref(event))
            kind = event[0] & 0xFFFFFFFF
            if kind == CLIENT_MESSAGE:
                return int(event[5])
            if kind == SELECTION_REQUEST:
                self._hand_out(event)
        sys.exit("the window does not answer")

    def _hand_out(self, asked: "ctypes.Array[ctypes.c_long]") -> None:
        """The name of the file, into the property that was asked for."""
        # type, serial, send_event, display, owner, requestor, selection, target, property, time
        requestor, selection, target, where, when = asked[5:10]
        X.XChangeProperty(
            self.display, WINDOW(requestor), WINDOW(where), WINDOW(target), 8, 0, self.text, len(self.text)
        )
        event = LONGS()
        event[0], event[4], event[5], event[6], event[7], event[8] = (
            SELECTION_NOTIFY, requestor, selection, target, where, when,
        )  # fmt: skip
        X.XSendEvent(self.display, WINDOW(requestor), 0, ctypes.c_long(0), ctypes.byref(event))
        X.XFlush(self.display)


def drop(x: int, y: int, path: Path) -> None:
    """Bring the file over whatever window is there, let it go, and wait until it has been taken."""
    source = Source(path)
    target = source.under(x, y)
    source.tell(target, "XdndEnter", 5 << 24, source.atom("text/uri-list"), 0, 0)
    source.tell(target, "XdndPosition", 0, x << 16 | y, 0, source.atom("XdndActionCopy"))
    while source.answer() != source.atom("XdndStatus"):
        pass
    source.tell(target, "XdndDrop", 0, 0, 0, 0)
    while source.answer() != source.atom("XdndFinished"):
        pass


if __name__ == "__main__":
    drop(int(sys.argv[1]), int(sys.argv[2]), Path(sys.argv[3]))
