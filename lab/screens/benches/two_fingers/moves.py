"""Where things of the two fingers are, and the commands that move them."""

from __future__ import annotations

from lab.scenes.two_fingers.view import FINGER_KEYS, MEETING, REFERENCE, SITTING, TwoFingersView, stage_for
from lab.screens.benches.snapping import MARK_PULL_PX, snapped_m
from lab.simulation import Command, Move, MoveReference
from lab.simulation.benches.two_fingers import Piece
from lab.simulation.two_finger_commands import Finger, GuessMeeting, MoveFingers
from lab.ui.geometry import Rect


def snapped_place_m(along_m: float, view: TwoFingersView, rect: Rect) -> float:
    """The place that a pointer means: a mark of the rule where it is near one, else to the last shown decimal."""
    pull_m = stage_for(view, rect).camera.length_m(MARK_PULL_PX * view.look.sizes.unit)
    return snapped_m(along_m, view.readings, pull_m=pull_m)


def finger_of(key: str) -> Finger | None:
    """Which finger a key means, if any."""
    if key not in FINGER_KEYS:
        return None
    return "left" if key == FINGER_KEYS[0] else "right"


def piece_of(view: TwoFingersView, key: str) -> Piece | None:
    """The loose piece of a key, if it is there."""
    number = key.removeprefix(SITTING)
    if not key.startswith(SITTING) or not number.isdigit():
        return None
    piece = view.bench.piece(int(number))
    return piece if piece is not None and view.bench.is_loose(piece) else None


def where_is(key: str, view: TwoFingersView) -> float | None:
    """Where a thing of the picture is now; None for what is none."""
    if key in FINGER_KEYS:
        return view.bench.places_m[FINGER_KEYS.index(key)]
    if key == REFERENCE:
        return view.bench.reference_m
    if key == MEETING:
        right_m = view.bench.span_m[1]
        return right_m if view.bench.meeting_guess_m is None else view.bench.meeting_guess_m
    piece = piece_of(view, key)
    return None if piece is None else piece.part.at_m[0]


def move_of(key: str, at_m: float, view: TwoFingersView, *, joins: bool) -> Command | None:
    """The command that moves a thing of the picture; a weight never past the ends of what it sits on."""
    at_m = round(at_m, 9)
    if key in FINGER_KEYS:
        left_m, right_m = view.bench.places_m
        places = (at_m, right_m) if key == FINGER_KEYS[0] else (left_m, at_m)
        return MoveFingers(*places, joins=joins)
    if key == REFERENCE:
        return MoveReference(at_m, joins=joins)
    if key == MEETING:
        return GuessMeeting(at_m, joins=joins)
    piece = piece_of(view, key)
    if piece is None:
        return None
    low_m, high_m = view.bench.beam_m
    return Move(piece.id, min(max(at_m, low_m), high_m), joins=joins)
