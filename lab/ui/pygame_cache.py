"""Surfaces kept for the next frame, the least lately used ones dropped when they fill their room."""

from collections import OrderedDict
from collections.abc import Callable, Hashable

import pygame

MIB = 1 << 20


class SurfaceCache:
    """Surfaces by key, at most `room_bytes` of them."""

    def __init__(self, room_bytes: int) -> None:
        self._room = room_bytes
        self._held: OrderedDict[Hashable, pygame.Surface] = OrderedDict()
        self.used_bytes = 0

    def __len__(self) -> int:
        return len(self._held)

    def get(self, key: Hashable, make: Callable[[], pygame.Surface]) -> pygame.Surface:
        """The surface of a key, made if it is not there."""
        found = self._held.get(key)
        if found is not None:
            self._held.move_to_end(key)
            return found
        made = make()
        self.put(key, made)
        return made

    def put(self, key: Hashable, surface: pygame.Surface) -> None:
        """Keeps a surface in place of what the key had."""
        self.drop(key)
        self._held[key] = surface
        self.used_bytes += _bytes(surface)
        while self.used_bytes > self._room and len(self._held) > 1:
            _, old = self._held.popitem(last=False)
            self.used_bytes -= _bytes(old)

    def drop(self, key: Hashable) -> None:
        """Forgets a key."""
        old = self._held.pop(key, None)
        if old is not None:
            self.used_bytes -= _bytes(old)


def _bytes(surface: pygame.Surface) -> int:
    return surface.get_width() * surface.get_height() * surface.get_bytesize()
