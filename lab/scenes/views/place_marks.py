"""Marks that belong to the thinking: balance points, lines across the body, bands, ghosts, turning."""

from __future__ import annotations

from math import cos, pi, sin

from lab.scenes.boxwood import draw_boxwood
from lab.scenes.labels import LabelBoard, Spot, label_box
from lab.scenes.marks import DASH_DOT, draw_quartered
from lab.scenes.tones import between
from lab.scenes.views.margins import here, home_of, rule_height
from lab.scenes.views.naming import obstacles
from lab.scenes.views.projections import right_axis
from lab.scenes.views.stage import Panel
from lab.scenes.views.things import places_m, things_of
from lab.scenes.views.view import Band, BodyView, LineMark, PlaceMark
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect, bounding

MARK_PX, BEFORE_PX = 12.0, 9.0
DOTTED = (2.0, 4.0)
DASHED = (6.0, 5.0)
FAINT_SHARE = 0.45


def draw_symmetry(canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """The plane of symmetry by its edge, and which side is whose: L and R, of the body, not of the page."""
    if panel.face == "side" or not view.symmetry:
        return
    theme, sizes = view.look.theme, view.look.sizes
    over = panel.camera.length_m(sizes.px(22))
    left, bottom, right, top = panel.bounds_m
    level = panel.face == "top"
    ends_m = ((left - over, 0.0), (right + over, 0.0)) if level else ((0.0, bottom - over), (0.0, top + over))
    ends = [panel.flat_px(end) for end in ends_m]
    dash = tuple(sizes.px(length) for length in DASH_DOT)
    canvas.line(ends, theme.soft, width=max(1.0, sizes.px(1)), dash=dash)
    if panel.angle_rad == 0.0:
        board.keep_clear([bounding(ends, 1.0)])


def draw_sides(canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """R and L at the wing tips."""
    if panel.face == "side" or not view.symmetry:
        return
    sizes, box = view.look.sizes, panel.body_px
    right, left = view.look.words.say("R"), view.look.words.say("L")
    gap, size, color = sizes.px(5), sizes.text("small"), view.look.theme.soft
    if panel.face == "top":
        over, under = _tip_middle_px(view, panel, 1.0), _tip_middle_px(view, panel, -1.0)
        ends: list[tuple[str, list[Spot]]] = [
            (right, [((over - gap, box.y - gap), "right bottom"), ((over + gap, box.y - gap), "left bottom")]),
            (left, [((under - gap, box.bottom + gap), "right top"), ((under + gap, box.bottom + gap), "left top")]),
        ]
    else:
        tips = [_tip_px(view, panel, -1.0), _tip_px(view, panel, 1.0)]
        ends = []
        for text, tip, inward in ((right, tips[0], "left"), (left, tips[1], "right")):
            spots: list[Spot] = [((tip[0], tip[1] - lift), f"{inward} bottom") for lift in (gap * 2, gap * 4)]  # type: ignore[misc]
            spots += [((tip[0], tip[1] + 2 * gap), f"{inward} top")]  # type: ignore[list-item]
            ends.append((text, spots))
    for text, spots in ends:
        board.place(text, spots, size=size, color=color)


def _tip_middle_px(view: BodyView, panel: Panel, sense: float) -> float:
    """The x of the middle of what reaches farthest up (sense 1) or down (−1)."""
    places = [place for thing in things_of(view.body) for place in places_m(thing, panel.face)]
    farthest = max(sense * y for _, y in places)
    ends = [x for x, y in places if sense * y > farthest - 1e-6]
    return panel.camera.x_px((min(ends) + max(ends)) / 2)


def _tip_px(view: BodyView, panel: Panel, sense: float) -> Point:
    """Where the end of the body that lies farthest to the right (sense 1) or left (−1) has come to."""
    places = [place for thing in things_of(view.body) for place in places_m(thing, panel.face)]
    return panel.flat_px(max(places, key=lambda place: (sense * place[0], place[1])))


def draw_reference(canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """Dash and dot, over the whole panel."""
    line = view.reference
    if line is None or home_of(view, line.axis) != panel.face:
        return
    sizes = view.look.sizes
    ends = _across(panel, line, sizes.px(6))
    dash = tuple(sizes.px(length) for length in DASH_DOT)
    canvas.line(ends, view.look.theme.ink, width=sizes.px(1.5), dash=dash)
    board.keep_clear([bounding(ends, 2.0)])


def name_reference(view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """The reference line's name at its foot, beside the learner's tag where that is there too."""
    line = view.reference
    if line is None or home_of(view, line.axis) != panel.face:
        return
    ends = _across(panel, line, view.look.sizes.px(6))
    _write_at_foot(view, panel, board, line, ends[1], color=view.look.theme.soft)


def draw_neutral(canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """Dotted, from its text down to the bands."""
    line = view.neutral
    if line is None or home_of(view, line.axis) != panel.face:
        return
    look, gap = view.look, view.look.sizes.px(8)
    dash = tuple(look.sizes.px(length) for length in DOTTED)
    if not panel.lies_level(line.axis):
        ends = _across(panel, line, look.sizes.px(6))
        canvas.line(ends, look.theme.ink, width=look.sizes.px(2), dash=dash)
        _write_at_foot(view, panel, board, line, ends[1], color=look.theme.ink)
        return
    row = panel.row("neutral")
    x = panel.axis_px(line.axis, line.at_m) or 0.0
    foot = marks_foot_px(view, panel)
    canvas.line(((x, row.y), (x, foot)), look.theme.ink, width=look.sizes.px(2), dash=dash)
    board.keep_clear([Rect(x - 1, row.y, 2, foot - row.y)])
    y = row.center[1]
    spots: list[Spot] = [((x + gap, y), "left middle"), ((x - gap, y), "right middle")]
    board.place(line.text, spots, size=look.sizes.text("small"), color=look.theme.ink)


def marks_foot_px(view: BodyView, panel: Panel) -> float:
    """How far down lines from marks go: through the bands, or a little below the body."""
    bands = [panel.row(f"band-{number}").bottom for number, band in enumerate(view.bands)
             if here(view, panel.face, band.axis)]  # fmt: skip
    below = panel.reach_px[1] + view.look.sizes.px(14)
    return min(max([below, *bands]), panel.frame.bottom - 2)


def _across(panel: Panel, line: LineMark, inset: float) -> tuple[Point, Point]:
    """The ends of a line over the whole panel at a place of an axis: the lower or the right one last."""
    at = panel.axis_px(line.axis, line.at_m) or 0.0
    frame = panel.frame.inset(inset)
    if panel.lies_level(line.axis):
        return (at, panel.row("title").bottom if panel.row("title").h else frame.y), (at, frame.bottom)
    return (frame.x, at), (frame.right, at)


def _write_at_foot(view: BodyView, panel: Panel, board: LabelBoard, line: LineMark, foot: Point, *, color: str) -> None:
    if not line.text:
        return
    sizes = view.look.sizes
    gap, size = sizes.px(7), sizes.text("small")
    if panel.lies_level(line.axis):
        y = panel.row("reference").center[1] if panel.row("reference").h else foot[1] - size
        spots: list[Spot] = [((foot[0] + gap, y), "left middle"), ((foot[0] - gap, y), "right middle")]
    else:
        spots = [((foot[0], foot[1] - gap / 2), "right bottom"), ((foot[0], foot[1] + gap / 2), "right top"),
                 ((panel.frame.x + gap, foot[1] - gap / 2), "left bottom")]  # fmt: skip
    board.place(line.text, spots, size=size, color=color)


def band_rect(view: BodyView, panel: Panel, number: int) -> Rect:
    """Where a band is drawn in its face."""
    band, sizes = view.bands[number], view.look.sizes
    first, last = panel.axis_px(band.axis, band.low_m) or 0.0, panel.axis_px(band.axis, band.high_m) or 0.0
    low, high = min(first, last), max(first, last)
    least = sizes.px(4)
    if panel.lies_level(band.axis):
        row = panel.row(f"band-{number}")
        thick = min(sizes.px(16), row.h)
        return Rect(low, row.center[1] - thick / 2, max(least, high - low), thick)
    x = panel.frame.right - panel.margins.right + sizes.px(6)
    return Rect(x, low, sizes.px(16), max(least, high - low))


def draw_bands(canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """Green stretches, each with its words beside it."""
    look = view.look
    for number, band in enumerate(view.bands):
        if home_of(view, band.axis) != panel.face:
            continue
        box = band_rect(view, panel, number)
        canvas.box(
            box, fill=look.theme.settled_fill, outline=look.theme.settled, width=look.sizes.px(2),
            radius=look.sizes.px(4),
        )  # fmt: skip
        board.keep_clear([box])
        _write_band(view, panel, board, band, box)


def _write_band(view: BodyView, panel: Panel, board: LabelBoard, band: Band, box: Rect) -> None:
    sizes = view.look.sizes
    gap, y = sizes.px(8), box.center[1]
    spots: list[Spot] = [((box.x - gap, y), "right middle"), ((box.right + gap, y), "left middle"),
                         ((box.center[0], box.bottom + gap / 2), "center top"),
                         ((box.right, box.bottom + gap / 2), "right top")]  # fmt: skip
    if band.text:
        board.place(band.text, spots, size=sizes.text("small"), color=view.look.theme.settled, bold=True)


def draw_balance(canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """Where it balances, and fainter where it did."""
    home = home_of(view, "along") == panel.face
    marks = [(view.before, "before", False), (view.balance, "balance", True)]
    top = panel.row("balance")
    if view.balance is not None and home and top.h:
        # The words of where it was keep off the line of where it is.
        board.keep_clear([Rect(panel.px(view.balance.at_m)[0] - 1, top.bottom, 2, panel.reach_px[0] - top.bottom)])
    for mark, row, strong in marks:
        if mark is not None:
            _draw_place(canvas, view, panel, board, mark, row if home else "", strong=strong)


def _draw_place(
    canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard, mark: PlaceMark, row: str, *, strong: bool
) -> None:
    look = view.look
    sizes, at = look.sizes, panel.px(mark.at_m)
    color = look.theme.ink if strong else look.theme.soft
    line = panel.row(row) if row else Rect(0, 0, 0, 0)
    if line.h and view.hanging is None:
        foot = marks_foot_px(view, panel)
        ends = ((at[0], line.y + sizes.px(2)), (at[0], foot))
        canvas.line(ends, color, width=sizes.px(1.5), dash=tuple(sizes.px(length) for length in DASHED))
        board.keep_clear([Rect(at[0] - 1, ends[0][1], 2, foot - ends[0][1])])
    radius = sizes.px(MARK_PX if strong else BEFORE_PX)
    board.keep_clear([Rect(at[0] - radius, at[1] - radius, 2 * radius, 2 * radius)])
    if strong:
        draw_quartered(canvas, look, at, radius, panel.angle_rad)
    else:
        _draw_faint(canvas, view, at, radius)
    if line.h and mark.text:
        gap, y = sizes.px(9), line.center[1]
        spots: list[Spot] = [((at[0] - gap, y), "right middle"), ((at[0] + gap, y), "left middle")]
        if view.hanging is not None:
            spots = _spots_off_body(canvas, view, panel, mark, radius + gap) + spots
        size = sizes.text("body" if strong else "small")
        usual = (size, sizes.text("small"))
        board.place_one_of((mark.text,), spots, sizes=usual, color=color, bold=strong)


def _spots_off_body(canvas: Canvas, view: BodyView, panel: Panel, mark: PlaceMark, gap: float) -> list[Spot]:
    """Places beside, over and under a mark on a body that hangs: those on bare ground first, then the nearer ones."""
    (x, y), size = panel.px(mark.at_m), view.look.sizes.text("body")
    levels = [y + sense * row * size for row in range(8) for sense in ((1,) if row == 0 else (1, -1))]
    spots: list[Spot] = []
    for level in levels:
        spots += [((x + gap, level), "left middle"), ((x - gap, level), "right middle")]
    solid = obstacles(view, panel)
    boxes = {spot: label_box(canvas, mark.text, spot, size=size, bold=True) for spot in spots}
    return sorted(spots, key=lambda spot: any(boxes[spot].intersects(piece) for piece in solid))


def _draw_faint(canvas: Canvas, view: BodyView, at: Point, radius: float) -> None:
    """The quartered disc, in second ink and without its fill: where it was."""
    theme, width = view.look.theme, view.look.sizes.px(2)
    canvas.circle(at, radius, fill=theme.panel)
    soft = between(theme.soft, theme.panel, FAINT_SHARE)
    for start in (0.0, pi):
        arc = [start + step * pi / 16 for step in range(9)]
        canvas.polygon([at, *((at[0] + radius * cos(a), at[1] - radius * sin(a)) for a in arc)], fill=soft)
    canvas.circle(at, radius, outline=theme.soft, width=width)


def rule_rect(view: BodyView, panel: Panel) -> Rect:
    """The ruler: as long as the body with its marks."""
    row, sizes = panel.row("ruler"), view.look.sizes
    over = sizes.px(10) + sizes.text("small")
    box = panel.body_px
    x, right = max(panel.frame.x + 4, box.x - over), min(panel.frame.right - 4, box.right + over)
    return Rect(x, row.y + sizes.px(3), right - x, rule_height(view))


def draw_ruler(canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """A boxwood rule below the body, along the axis that lies level."""
    if view.ruler is None or not here(view, panel.face, view.ruler):
        return
    rule, axis = rule_rect(view, panel), view.ruler
    sense = right_axis(panel.face)[1]
    low, high = sorted((sense * panel.bounds_m[0], sense * panel.bounds_m[2]))
    units, look = view.readings.units, view.look
    draw_boxwood(canvas, look, rule, units, x_px=lambda value: panel.axis_px(axis, value) or 0.0, span_m=(low, high))
    board.keep_clear([rule])


def name_unit(view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """The unit of the rule, wherever nothing else is."""
    if view.ruler is None or not here(view, panel.face, view.ruler):
        return
    rule, look, units = rule_rect(view, panel), view.look, view.readings.units
    gap, below, size = look.sizes.px(8), rule.bottom + look.sizes.px(4), look.sizes.text("small")
    spots: list[Spot] = [
        ((rule.right + gap, rule.center[1]), "left middle"),
        ((rule.right, below), "right top"),
        ((rule.x, below), "left top"),
    ]
    board.place(units.length_word, spots, size=size, color=look.theme.soft)
