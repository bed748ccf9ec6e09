"""How far scroll columns stand from their top."""

from collections.abc import Mapping

from lab.ui.arrangement import Arrangement, Target
from lab.ui.outcomes import Scrolled

WHEEL_PX = 64.0
_BY_KEY = {"page up": -0.8, "page down": 0.8, "up": -0.15, "down": 0.15, "home": -1e6, "end": 1e6}


def scrolled(scene: Arrangement, key: str, by_px: float) -> Scrolled | None:
    """A scroll column moved by so many pixels, kept within its ends; None if it stays where it was."""
    place = scene.scrolls.get(key)
    if place is None:
        return None
    offset = min(max(0.0, place.offset + by_px), place.furthest)
    return Scrolled(key, offset) if offset != place.offset else None


def scrolled_by_key(scene: Arrangement, name: str) -> Scrolled | None:
    """What Page, arrow, Home and End keys do to the last scroll column that has somewhere to go."""
    share = _BY_KEY.get(name)
    places = [(key, place) for key, place in scene.scrolls.items() if place.furthest > 0]
    if share is None or not places:
        return None
    key, place = places[-1]
    return scrolled(scene, key, share * place.rect.h)


def into_view(scene: Arrangement, target: Target) -> Mapping[str, float]:
    """The offsets that bring a spot wholly into view, as far as its scroll columns can."""
    offsets: dict[str, float] = {}
    margin = scene.look.sizes.px(12)
    rect = target.spot.rect
    for key in target.scrolls:
        place = scene.scrolls[key]
        by = 0.0
        if rect.bottom + margin > place.rect.bottom:
            by = rect.bottom + margin - place.rect.bottom
        if rect.y - margin - by < place.rect.y:
            by = rect.y - margin - place.rect.y
        moved = scrolled(scene, key, by)
        if moved is not None:
            offsets[key] = moved.offset
            rect = rect.moved(0.0, place.offset - moved.offset)
    return offsets
