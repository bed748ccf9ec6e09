"""What is wrong with a drawn screen, from its display list and its outline: what no eye should have to find."""

from collections.abc import Iterator, Sequence

from lab.outline import Node
from lab.ui.contrast import contrast, text_ratio
from lab.ui.geometry import Point, Rect
from lab.ui.list_canvas import body_list
from lab.ui.look import Look
from lab.ui.metrics import CAP_HEIGHT
from lab.ui.ops import BoxOp, CircleOp, Op, PolygonOp, TextOp, TurnedOp

_SLACK_PX = 1.5
_SLIVER_PX = 4.0  # of a text at the edge of a scroll column: too little to be read, whatever its colour
_TARGET_ROLES = frozenset({"button", "option", "item", "slider", "number"})


def faults_on(ops: Sequence[Op], outline: Node, look: Look) -> list[str]:
    """Every fault as a sentence: text clipped, overlapping, too faint, out of the window; targets too small.

    What lies under a dialog's veil is not looked at: it waits.
    """
    window = Rect(0.0, 0.0, look.sizes.width, look.sizes.height)
    start = max((i for i, op in enumerate(ops) if isinstance(op, BoxOp) and op.bounds.holds(window)), default=0)
    upper = ops[start:]
    scrolls = [Rect(*node.bounds) for node, _ in _nodes(outline) if "scroll" in node.actions]
    toasts = [Rect(*node.bounds) for node, _ in _nodes(outline) if node.role == "toast"]
    faults = [fault for op in upper if isinstance(op, TextOp) for fault in _misplaced(op, window, scrolls)]
    faults += _overlaps(upper, toasts)
    faults += _faint(upper, look)
    faults += _small_targets(outline, look, window)
    return faults


def core(op: TextOp) -> Rect:
    """Where a text's letters surely are: from its baseline to the top of its capitals."""
    tall = CAP_HEIGHT * op.size
    return Rect(op.box.x, op.baseline - tall, op.box.w, tall).inset(min(1.0, op.box.w / 2), 0)


def _nodes(node: Node, *, within: Rect | None = None) -> Iterator[tuple[Node, Rect | None]]:
    """Each node with the scroll column that it lies in, None for none."""
    yield node, within
    if "scroll" in node.actions:
        place = Rect(*node.bounds)
        within = place if within is None else place.common(within)
    for child in node.children:
        yield from _nodes(child, within=within)


def _misplaced(op: TextOp, window: Rect, scrolls: Sequence[Rect]) -> Iterator[str]:
    ink = core(op)
    if op.clip is None:
        if not window.holds(ink, _SLACK_PX):
            yield f"text {op.text!r} reaches out of the window"
        return
    if not op.clip.intersects(ink) or op.clip.holds(ink, _SLACK_PX):
        return
    scrolled = any(_near(op.clip, place) or place.holds(op.clip, _SLACK_PX) for place in scrolls)
    aside = ink.x < op.clip.x - _SLACK_PX or ink.right > op.clip.right + _SLACK_PX
    if not scrolled or aside:
        yield f"text {op.text!r} is clipped"


def _near(one: Rect, other: Rect) -> bool:
    return one.holds(other, _SLACK_PX) and other.holds(one, _SLACK_PX)


def _seen(op: TextOp) -> Rect:
    return core(op) if op.clip is None else core(op).common(op.clip)


def _overlaps(ops: Sequence[Op], toasts: Sequence[Rect]) -> Iterator[str]:
    """Texts upon texts, and texts that a later plain box covers in part."""
    shown: list[TextOp] = []
    for op in ops:
        if isinstance(op, BoxOp) and op.fill and len(op.fill) == 7:
            cover = op.bounds if op.clip is None else op.bounds.common(op.clip)
            shown = [text for text in shown if not cover.holds(_seen(text), _SLACK_PX)]
            if not any(_near(cover, toast) for toast in toasts):
                for text in shown:
                    if cover.inset(_SLACK_PX).intersects(_seen(text)):
                        yield f"text {text.text!r} is covered in part by a box"
        elif isinstance(op, TextOp):
            seen = _seen(op)
            if seen.area > 0:
                for text in shown:
                    if seen.inset(_SLACK_PX / 2).intersects(_seen(text)) and not _on_toast(text, toasts):
                        yield f"text {op.text!r} lies on text {text.text!r}"
                shown.append(op)


def _on_toast(op: TextOp, toasts: Sequence[Rect]) -> bool:
    return any(toast.intersects(op.box) for toast in toasts)


def _faint(ops: Sequence[Op], look: Look) -> Iterator[str]:
    for place, op in enumerate(ops):
        if isinstance(op, TextOp):
            if _seen(op).h < _SLIVER_PX:
                continue
            ground = _ground(ops[:place], _seen(op).center, look.theme.paper)
            yield from _too_faint(op, ground, look)
        elif isinstance(op, TurnedOp):
            held = body_list(op.body).ops
            for inner, part in enumerate(held):
                if isinstance(part, TextOp):
                    yield from _too_faint(part, _ground(held[:inner], core(part).center, ""), look)


def _too_faint(op: TextOp, ground: str, look: Look) -> Iterator[str]:
    if not ground:
        return
    ratio = contrast(op.color, ground)
    least = text_ratio(op.size, bold=op.bold, unit=look.sizes.unit)
    if ratio < least:
        yield f"text {op.text!r} in {op.color} on {ground} has a contrast of {ratio:.2f}; {least} would do"


def _ground(ops: Sequence[Op], point: Point, paper: str) -> str:
    """The colour of the topmost filled shape under a point."""
    for op in reversed(ops):
        if isinstance(op, BoxOp | CircleOp | PolygonOp) and op.fill and len(op.fill) == 7 and _covers(op, point):
            return op.fill
        if isinstance(op, TurnedOp) and op.bounds.contains(point):
            return ""
    return paper


def _covers(op: BoxOp | CircleOp | PolygonOp, point: Point) -> bool:
    if not op.bounds.contains(point) or (op.clip is not None and not op.clip.contains(point)):
        return False
    if isinstance(op, CircleOp):
        dx, dy = point[0] - op.center[0], point[1] - op.center[1]
        return bool(dx * dx + dy * dy <= op.radius * op.radius)
    return _inside(op.points, point) if isinstance(op, PolygonOp) else True


def _inside(points: Sequence[Point], point: Point) -> bool:
    """Whether a point lies in a polygon: a ray to the right crosses its edge an odd number of times."""
    x, y = point
    odd = False
    for (x0, y0), (x1, y1) in zip(points, (*points[1:], points[0]), strict=True):
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) / (y1 - y0) * (x1 - x0):
            odd = not odd
    return odd


def _small_targets(outline: Node, look: Look, window: Rect) -> Iterator[str]:
    """Controls drawn smaller than a target, out of the window for good, or upon each other."""
    least = look.sizes.target - _SLACK_PX
    modal = next((node for node in reversed(outline.children) if node.role == "dialog"), outline)
    found: list[tuple[Node, Rect]] = []
    for node, scroll in _nodes(modal):
        if node.role not in _TARGET_ROLES or not node.actions:
            continue
        rect = Rect(*node.bounds)
        if rect.w < least or rect.h < least:
            yield f"{node.role} {node.key!r} is {rect.w:.0f} x {rect.h:.0f} px; {look.sizes.target:.0f} would do"
        if scroll is None and not window.holds(rect, _SLACK_PX):
            yield f"{node.role} {node.key!r} reaches out of the window"
        seen = (rect if scroll is None else rect.common(scroll)).inset(_SLACK_PX)
        for other, taken in found:
            if seen.area > 0 and seen.intersects(taken):
                yield f"{node.role} {node.key!r} lies on {other.role} {other.key!r}"
        if seen.area > 0:
            found.append((node, seen))
