"""Two fingers as a picture with bodies in it that can be grabbed, and the strip below as a picture of its own."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from lab.scenes.two_fingers.scene import coming_rect, draw_two_fingers
from lab.scenes.two_fingers.strip import draw_strip
from lab.scenes.two_fingers.view import (
    FINGER_KEYS,
    MEETING,
    REFERENCE,
    TwoFingersView,
    finger_bounds,
    meeting_flag,
    piece_bounds,
    piece_key,
    reference_knob,
    stage_for,
)
from lab.screens.benches.layout import AREAS, PICTURE
from lab.screens.benches.strip_keys import GHOST
from lab.screens.benches.two_fingers.words import finger_said, picture_said, piece_said, strip_said
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.widgets.picture import Handle, HandleAction, Picture

Now = Callable[[], TwoFingersView]
"""The view at the time of drawing."""


def picture(view: TwoFingersView, now: Now) -> Picture:
    """The bench as a picture with bodies in it.  now: asked for each time it is drawn."""
    say, foot_px = view.look.words.say, view.foot_px
    return Picture(
        PICTURE,
        say("Two fingers"),
        lambda canvas, rect: draw_two_fingers(canvas, rect, replace(now(), foot_px=foot_px)),
        handles=lambda rect: _handles(view, rect),
        value=picture_said(view.look.words, view.bench, view.readings),
        least=(320.0, 260.0),
    )


def strip_picture(view: TwoFingersView, now: Now, tall: float, above: Callable[[], Rect | None] | None) -> Picture:
    """What the fingers feel.  above: the picture's rectangle, whose scale it then shares."""

    def draw(canvas: Canvas, rect: Rect) -> None:
        frame = above() if above is not None else None
        current = now()
        camera = None if frame is None else stage_for(replace(current, foot_px=view.foot_px), frame).camera
        draw_strip(canvas, rect, current, camera=camera)

    return Picture(
        AREAS,
        view.look.words.say("What the fingers feel"),
        draw,
        value=strip_said(view.look.words, view.bench, view.readings),
        least=(240.0, tall),
        tappable=False,
    )


def _handles(view: TwoFingersView, rect: Rect) -> tuple[Handle, ...]:
    say, words, stage = view.look.words.say, view.look.words, stage_for(view, rect)
    target, place = view.look.sizes.target, view.readings.length_with_unit
    bench, picked = view.bench, view.picked
    fingers = finger_bounds(view, stage)
    found = [
        Handle(key, name, finger_said(words, view, number), fingers[number], selected=picked == key)
        for number, (key, name) in enumerate(zip(FINGER_KEYS, (say("left finger"), say("right finger")), strict=True))
    ]
    flag = meeting_flag(view, stage).at_least(target, target)
    said = say("not said") if bench.meeting_guess_m is None else place(bench.meeting_guess_m)
    actions: tuple[HandleAction, ...] = ("move", "press")
    if bench.meeting_guess_m is not None:
        actions = ("move", "press", "remove")
    found.append(Handle(MEETING, say("where they will meet"), said, flag, actions, selected=picked == MEETING))
    if view.told:
        box = reference_knob(view, stage).at_least(target, target)
        found.append(
            Handle(REFERENCE, say("reference line"), place(bench.reference_m), box, selected=picked == REFERENCE)
        )
    bounds = piece_bounds(view, stage) if bench.tipping is None else {}
    for piece in sorted(bench.pieces, key=lambda one: one.part.at_m[0]):
        key = piece_key(piece)
        if key in bounds:
            said = piece_said(words, piece, view.readings)
            name = words.content(piece.part.name)
            found.append(Handle(key, name, said, bounds[key], ("move", "press", "remove"), selected=picked == key))
    coming = view.coming
    if coming is not None and coming.pointer is None and coming.at_m is not None:
        name = say("{weight}, not put down yet", weight=view.readings.weight_with_unit(coming.mass_kg))
        ghost = coming_rect(view, stage)
        if ghost is not None:
            found.append(Handle(GHOST, name, place(coming.at_m), ghost.at_least(target, target), selected=True))
    return tuple(found)
