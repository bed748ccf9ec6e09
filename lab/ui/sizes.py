"""Every size on a screen comes from here: design pixels, millimetres, the text scale."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

TextStyle = Literal["small", "body", "strong", "number", "figure", "title", "heading"]

# Design pixels at 1280 x 720; "strong" and "title" are drawn bold, see is_bold.
TEXT_PX: Mapping[str, float] = {
    "small": 15,
    "body": 18,
    "strong": 18,
    "number": 20,
    "figure": 22,
    "title": 21,
    "heading": 28,
}
BOLD_STYLES = frozenset({"strong", "title", "heading", "figure"})
TEXT_SCALES = (1.0, 1.5, 2.0)
# Fingers miss smaller targets; people who stand at a kiosk do no better above 20 mm (Colle and Hiszem 2004).
TOUCH_MM = 10.0
KIOSK_MM = 15.0
KIOSK_MAIN_MM = 20.0


def is_bold(style: str) -> bool:
    """Whether a text style is set in bold."""
    return style in BOLD_STYLES


@dataclass(frozen=True, slots=True)
class Sizes:
    """How large things are in this window.

    width, height: of the window in pixels.  text_scale: 1, 1.5 or 2.  px_per_mm: None where it is not known.
    touch, kiosk: targets also keep their floors in millimetres.  mirrored: read from right to left.
    unit: pixels for one design pixel; never under 1, for a small window must not shrink what is touched.
    Raises ValueError if a size is not positive.
    """

    width: float
    height: float
    text_scale: float = 1.0
    px_per_mm: float | None = None
    touch: bool = False
    mirrored: bool = False
    kiosk: bool = False
    unit: float = field(init=False)

    def __post_init__(self) -> None:
        for name in ("width", "height", "text_scale"):
            if not getattr(self, name) > 0:
                raise ValueError(f"{name} is {getattr(self, name)}; a value above 0 would do")
        if self.px_per_mm is not None and not self.px_per_mm > 0:
            raise ValueError(f"px_per_mm is {self.px_per_mm}; a value above 0 would do")
        long, short = max(self.width, self.height), min(self.width, self.height)
        object.__setattr__(self, "unit", max(1.0, min(long / 1280, short / 720)))

    @property
    def portrait(self) -> bool:
        """Whether the window is higher than wide."""
        return self.height > self.width

    def px(self, design_px: float) -> float:
        """Pixels for design pixels, whole."""
        return float(round(design_px * self.unit))

    def mm(self, millimetres: float) -> float:
        """Pixels for millimetres; 0 where nobody told how large the screen is."""
        return millimetres * self.px_per_mm if self.px_per_mm else 0.0

    def text(self, style: str = "body") -> float:
        """The height of a text style in pixels, whole.  Raises KeyError for an unknown style."""
        return float(round(TEXT_PX[style] * self.unit * self.text_scale))

    @property
    def target(self) -> float:
        """The least side of anything that can be pressed."""
        floor = KIOSK_MM if self.kiosk else TOUCH_MM if self.touch else 0.0
        return max(self.px(48), self.mm(floor))

    @property
    def main_target(self) -> float:
        """The height of the one main action."""
        return max(self.px(64), self.mm(KIOSK_MAIN_MM) if self.kiosk else self.target)

    @property
    def gap(self) -> float:
        """Between two targets."""
        return self.px(8)

    @property
    def margin(self) -> float:
        """Between a panel's edge and what is in it."""
        return self.px(24)

    @property
    def radius(self) -> float:
        """Of a control's corners."""
        return self.px(8)

    @property
    def stroke(self) -> float:
        """The width of a control's outline."""
        return max(2.0, self.px(2))
