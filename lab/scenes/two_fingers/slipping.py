"""Which finger slips and which sticks, what each carries, and the frictions between them and the body."""

from __future__ import annotations

from lab.mechanics import STANDARD_GRAVITY_M_S2, Friction
from lab.outline import Words
from lab.scenes.labels import LabelBoard, Spot
from lab.scenes.two_fingers.view import Stage, TwoFingersView
from lab.simulation.benches.two_fingers import DRY, SOAPY
from lab.ui.canvas import Anchor, Canvas

ARROW_PX = 190.0
"""How long the arrow of a friction is that is as large as the whole weight."""
CHEVRONS = 3
SUDS = ((-0.02, 0.12, 4.0), (-0.12, 0.5, 5.0), (0.1, 0.75, 3.5), (-0.04, 1.05, 4.0))
"""Bubbles at either side of a finger: how far out, how far down its tip, both as shares of its width, and how large."""


def draw_slipping(canvas: Canvas, view: TwoFingersView, stage: Stage) -> None:
    """Behind a finger that slips, three strokes show where it comes from."""
    bench, sizes = view.bench, view.look.sizes
    if bench.leg is None or not bench.moving:
        return
    for number, side in enumerate(("left", "right")):
        if bench.leg.mover not in (side, "both"):
            continue
        finger, way = stage.fingers[number], 1 if number == 0 else -1
        edge = finger.x if way > 0 else finger.right
        y, half = finger.y + finger.h * 0.55, sizes.px(7)
        for count in range(CHEVRONS):
            x = edge - way * (sizes.px(8) + count * sizes.px(9))
            points = ((x - way * half * 0.7, y - half), (x, y), (x - way * half * 0.7, y + half))
            canvas.line(points, view.look.theme.ink, width=sizes.px(3 - count * 0.6))


def draw_frictions(canvas: Canvas, view: TwoFingersView, stage: Stage) -> None:
    """On the body, one arrow from each finger: as long as its friction is large. The two are always alike."""
    bench, sizes, theme = view.bench, view.look.sizes, view.look.theme
    if bench.forces is None or not bench.moving:
        return
    share = bench.forces.friction_n / (bench.forces.left_normal_n + bench.forces.right_normal_n)
    apart = stage.fingers[1].center[0] - stage.fingers[0].center[0]
    long = min(sizes.px(ARROW_PX) * share, apart * 0.46)
    y = stage.pads[0].y - sizes.px(7)
    head = min(sizes.px(9), long)
    for number, color in ((0, theme.anticlockwise), (1, theme.clockwise)):
        way = 1 if number == 0 else -1
        start = stage.fingers[number].center[0]
        tip = start + way * long
        canvas.line(((start, y), (tip - way * head, y)), color, width=sizes.px(4))
        back = tip - way * head
        canvas.polygon(((tip, y), (back, y - head * 0.6), (back, y + head * 0.6)), fill=color)


def say_forces(canvas: Canvas, view: TwoFingersView, stage: Stage, board: LabelBoard) -> None:
    """Beside each finger: whether it slips or sticks, and in numbers what it carries and its friction."""
    look = view.look
    sizes, theme = look.sizes, look.theme
    small = sizes.text("small")
    for number in (0, 1):
        lines = finger_lines(view, number)
        way = -1 if number == 0 else 1
        finger = stage.fingers[number]
        gap = sizes.px(10) if not view.bench.moving else sizes.px(40)
        outer = finger.x - gap if way < 0 else finger.right + gap
        inner = finger.right + gap if way < 0 else finger.x - gap
        top = finger.y + sizes.px(6)
        for row, (text, bold) in enumerate(lines):
            y = top + row * small * 1.32
            outwards: Anchor = "right top" if way < 0 else "left top"
            inwards: Anchor = "left top" if way < 0 else "right top"
            lower = y + len(lines) * small * 1.32
            spots: list[Spot] = [((outer, y), outwards), ((inner, y), inwards)]
            spots += [((outer, lower), outwards), ((inner, lower), inwards)]
            color = (theme.anticlockwise if number == 0 else theme.clockwise) if bold else theme.ink
            board.place(text, spots, size=small, color=color, bold=bold)


def finger_lines(view: TwoFingersView, number: int) -> list[tuple[str, bool]]:
    """What is said of a finger, each line with whether it is bold."""
    bench, say = view.bench, view.look.words.say
    lines: list[tuple[str, bool]] = []
    side = ("left", "right")[number]
    if not bench.moving:
        lines.append((grip_name(view.look.words, bench.right if number else bench.left), False))
    if bench.leg is not None and bench.moving:
        slips = bench.leg.mover in (side, "both")
        lines.append((say("slips") if slips else say("sticks"), True))
    if not view.numbers or (bench.held and not view.told):
        return lines
    forces, loads = bench.forces, bench.loads_n
    if forces is not None:
        loads = forces.left_normal_n, forces.right_normal_n
    if loads is not None:
        weight = view.readings.weight_with_unit(rounded_kg(view, loads[number]))
        lines.append((say("carries {weight}", weight=weight), False))
    if forces is not None and bench.moving:
        friction = view.readings.weight_with_unit(rounded_kg(view, forces.friction_n))
        lines.append((say("friction {weight}", weight=friction), False))
    return lines


def grip_name(words: Words, grip: Friction) -> str:
    """What a friction is called: dry, soapy, or its two numbers."""
    if grip == DRY:
        return words.say("dry")
    if grip == SOAPY:
        return words.say("soapy")
    return words.say("{static} / {kinetic}", static=words.number(grip.static, 2), kinetic=words.number(grip.kinetic, 2))


def draw_suds(canvas: Canvas, view: TwoFingersView, stage: Stage) -> None:
    """Bubbles round the tip of a finger that is as slippery as soap."""
    theme, sizes = view.look.theme, view.look.sizes
    for number, grip in enumerate((view.bench.left, view.bench.right)):
        if grip.static > SOAPY.static:
            continue
        finger = stage.fingers[number]
        for out, down, size in SUDS:
            for x in (finger.x - out * finger.w, finger.right + out * finger.w):
                at = (x, finger.y + down * finger.w)
                canvas.circle(at, sizes.px(size), fill=theme.panel, outline=theme.steel_edge, width=sizes.px(1.2))


def rounded_kg(view: TwoFingersView, force_n: float) -> float:
    """A force as the mass that weighs it, to the decimals that are shown."""
    units, decimals = view.readings.units, view.readings.fineness.weight
    value = round(units.from_kg(force_n / STANDARD_GRAVITY_M_S2), decimals)
    return value / units.from_kg(1.0)
