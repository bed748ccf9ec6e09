"""How far two colours stand apart, as WCAG counts it."""

TEXT_RATIO = 4.5
LARGE_TEXT_RATIO = 3.0
GRAPHICS_RATIO = 3.0
# "Large" begins at 18 pt, 14 pt if bold: 24 and 18.7 CSS px.
LARGE_PX = 24.0
LARGE_BOLD_PX = 18.7


def _linear(channel: int) -> float:
    share = channel / 255
    return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)


def luminance(color: str) -> float:
    """Relative luminance of "#RRGGBB" (a further alpha is left out), 0 to 1.  Source: WCAG 2.2."""
    r, g, b = (_linear(int(color[i : i + 2], 16)) for i in (1, 3, 5))
    return 0.2126 * r + 0.7152 * g + 0.0722 * b


def contrast(one: str, other: str) -> float:
    """The contrast ratio of two colours, 1 to 21.  Source: WCAG 2.2."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def text_ratio(size_px: float, *, bold: bool, unit: float = 1.0) -> float:
    """The least ratio for text of that size.  unit: pixels for one CSS pixel."""
    large = size_px >= (LARGE_BOLD_PX if bold else LARGE_PX) * unit
    return LARGE_TEXT_RATIO if large else TEXT_RATIO
