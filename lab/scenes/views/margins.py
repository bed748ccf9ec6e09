"""What is kept free round a body in a panel: rows above and below it, for texts, rails, scales and rulers."""

from __future__ import annotations

from dataclasses import dataclass, replace

from lab.mechanics import Axis
from lab.scenes.views.projections import Face, right_axis, up_axis
from lab.scenes.views.view import BodyView
from lab.ui.metrics import text_width
from lab.ui.sizes import TextStyle

LINE = 1.4
"""Of the text size: from one row of text to the next."""

RAIL_PX, POST_PX = 54.0, 18.0
RULE_PX = 16.0
SCALE_GAP_PX = 8.0
SIDE_PX = 18.0

BODY_SHARE = 0.24
"""Of a panel's height: with less than that for the body, the rows for names are given up."""

MISSED = frozenset({"names", "edge"})

Row = tuple[str, float]
"""What a row is for, and its height in pixels."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Margins:
    """above, below: rows from the top down.  left, right: in pixels.  least_wide: of the panel."""

    above: tuple[Row, ...]
    below: tuple[Row, ...]
    left: float
    right: float
    least_wide: float = 0.0

    def fitting(self, high_px: float) -> Margins:
        """These, or where they leave too little of a height to the body, without the rows that can be missed."""
        if self.all_high <= (1.0 - BODY_SHARE) * high_px:
            return self
        above, below = (tuple(row for row in rows if row[0] not in MISSED) for rows in (self.above, self.below))
        return replace(self, above=above, below=below)

    @property
    def top(self) -> float:
        """The height of all rows above the body."""
        return sum(high for _, high in self.above)

    @property
    def bottom(self) -> float:
        """The height of all rows below the body."""
        return sum(high for _, high in self.below)

    @property
    def all_high(self) -> float:
        """What is kept free above and below."""
        return self.top + self.bottom

    @property
    def all_wide(self) -> float:
        """What is kept free at both sides."""
        return self.left + self.right


def home_of(view: BodyView, axis: Axis) -> Face | None:
    """The face in which marks on an axis are drawn: the first where it lies level, else where it stands upright."""
    level = (face for face in view.faces if right_axis(face)[0] == axis)
    upright = (face for face in view.faces if up_axis(face)[0] == axis)
    return next(level, None) or next(upright, None)


def margins(view: BodyView, face: Face) -> Margins:
    """The room that a face needs for what it carries."""
    sizes = view.look.sizes
    side = sizes.px(SIDE_PX)
    if view.ruler is not None and here(view, face, view.ruler):
        # The ruler's caps lie beyond its last number.
        side += 1.2 * sizes.text("small")
    beside = side
    if any(home_of(view, axis) == face and up_axis(face)[0] == axis for axis in _marked_axes(view)):
        beside = side + 4.0 * sizes.text("small")
    wide = 0.0 if face == "top" else sum(scale_widths(view, "small"))
    return Margins(above=_above(view, face), below=_below(view, face), left=side, right=beside, least_wide=wide)


def scale_widths(view: BodyView, style: TextStyle) -> list[float]:
    """How wide each scale's case is with its reading in a text style, and the gap beside it."""
    sizes = view.look.sizes
    size, least = sizes.text(style), sizes.px(56)
    return [
        max(least, text_width(scale.reading, size=size, bold=True) + sizes.px(26)) + sizes.px(SCALE_GAP_PX)
        for scale in view.scales
    ]


def _marked_axes(view: BodyView) -> list[Axis]:
    lines = [line.axis for line in (view.told, view.neutral, view.reference) if line is not None]
    return [*lines, *(band.axis for band in view.bands)]


def here(view: BodyView, face: Face, axis: Axis) -> bool:
    """Whether marks on an axis belong in this face, and the axis lies level in it."""
    return home_of(view, axis) == face and right_axis(face)[0] == axis


def is_titled(view: BodyView) -> bool:
    """Whether it is written from where the body is seen: alone from its side it need not be."""
    return view.faces != ("side",)


def _above(view: BodyView, face: Face) -> tuple[Row, ...]:
    sizes = view.look.sizes
    small, body = LINE * sizes.text("small"), LINE * sizes.text("body")
    rows: list[Row] = [("edge", sizes.px(6))]
    if view.covered_px and face == view.faces[0]:
        rows.append(("covered", view.covered_px))
    if is_titled(view):
        rows.append(("title", small))
    if view.hanging is not None and view.hanging.cord and face != "top":
        rows.append(("rail", sizes.px(RAIL_PX)))
    if face == home_of(view, "along"):
        rows += [("balance", body)] if view.balance is not None and view.balance.text else []
        rows += [("before", small)] if view.before is not None and view.before.text else []
    if view.neutral is not None and here(view, face, view.neutral.axis):
        rows.append(("neutral", small))
    if face == "top" and view.symmetry:
        rows.append(("letters", small))
    if view.labels != "none":
        rows.append(("names", small))
    return tuple(rows)


def _below(view: BodyView, face: Face) -> tuple[Row, ...]:
    sizes = view.look.sizes
    small, body = LINE * sizes.text("small"), LINE * sizes.text("body")
    rows: list[Row] = []
    if face == "top" and view.symmetry:
        rows.append(("letters", small))
    if view.labels != "none":
        rows.append(("names", small + (small if face == view.faces[0] else 0.0)))
    rows += [(f"band-{number}", small * 1.1) for number, band in enumerate(view.bands) if here(view, face, band.axis)]
    if view.scales and face != "top":
        named = small if any(scale.name for scale in view.scales) else 0.0
        rows.append(("scales", sizes.px(POST_PX + 26) + body * 1.1 + named))
    if view.turning is not None and view.turning.face == face:
        rows.append(("turning", sizes.px(34) + (body if view.turning.text else 0.0)))
    if view.ruler is not None and here(view, face, view.ruler):
        rows.append(("ruler", rule_height(view) + sizes.px(6)))
    if view.told is not None and here(view, face, view.told.axis):
        rows.append(("told", body + sizes.px(20)))
    if view.reference is not None and view.reference.text and here(view, face, view.reference.axis):
        rows.append(("reference", small))
    rows.append(("edge", sizes.px(6)))
    return tuple(rows)


def rule_height(view: BodyView) -> float:
    """How high the ruler is."""
    return float(round(view.look.sizes.text("small") * 1.32 + view.look.sizes.px(RULE_PX)))
