"""What drawing speed is measured against: single operations of pygame, with nothing of ours in them."""

from collections.abc import Callable

import pygame

Size = tuple[int, int]


def full_blit(size: Size) -> Callable[[], object]:
    """One opaque blit of a whole window of this size."""
    target, source = pygame.Surface(size, 0, 32), pygame.Surface(size, 0, 32)
    source.fill("#F5F1E8")
    return lambda: target.blit(source, (0, 0))


def turned_bar(size: Size, angle_deg: float) -> Callable[[], object]:
    """One turning of a bar's picture of this size, drawn at twice that and halved while it is turned."""
    sprite = pygame.Surface((2 * size[0], 2 * size[1]), pygame.SRCALPHA, 32)
    sprite.fill("#D8B98A")
    return lambda: pygame.transform.rotozoom(sprite, angle_deg, 0.5)


def wait_for_events(wait_ms: int) -> None:
    """Wait for an event as pygame does it, and drop what came."""
    pygame.event.wait(wait_ms)
    pygame.event.clear()
