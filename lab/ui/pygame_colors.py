"""Colours as numbers."""

from functools import lru_cache

Rgba = tuple[int, int, int, int]


@lru_cache(maxsize=512)
def rgba(color: str) -> Rgba:
    """Red, green, blue, alpha of "#RRGGBB" or "#RRGGBBAA".  Raises ValueError for anything else."""
    if len(color) not in (7, 9) or color[0] != "#":
        raise ValueError(f"colour {color!r}; #RRGGBB or #RRGGBBAA would do")
    parts = [int(color[i : i + 2], 16) for i in range(1, len(color), 2)]
    return parts[0], parts[1], parts[2], parts[3] if len(parts) == 4 else 255


@lru_cache(maxsize=512)
def multiplied(color: str) -> Rgba:
    """The same with red, green and blue multiplied by alpha, as all our sprites hold them."""
    r, g, b, a = rgba(color)
    return r * a // 255, g * a // 255, b * a // 255, a
