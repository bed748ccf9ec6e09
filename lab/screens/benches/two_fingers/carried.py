"""What is on its way: carried by a pointer, or taken up by a press and waiting for a place."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lab.scenes.two_fingers.view import FINGER_KEYS, TwoFingersView
from lab.screens.benches.two_fingers.moves import piece_of
from lab.simulation import Command, Hang, Move
from lab.ui.geometry import Point


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """What a pointer carries. mass_kg: of a new weight, None for what is there already.

    origin_m: where it was.  offset_px: from the pointer to it.  at_m: where it would go, None while nothing is there.
    begun: whether a move was already sent, which the next one joins.
    """

    key: str
    mass_kg: float | None
    origin_m: float
    offset_px: float
    at_m: float | None
    pointer: Point
    begun: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Armed:
    """A weight taken up from the tray by a press, waiting for a place. at_m: where it would stand."""

    key: str
    mass_kg: float
    at_m: float


def off_the_end(carried: Carried, view: TwoFingersView) -> tuple[Command, ...]:
    """Dropped where nothing is: it is back where it came from, and the bench is asked so that it says why."""
    low_m, high_m = view.bench.span_m
    nowhere_m = 2 * high_m - low_m + 1.0
    if carried.mass_kg is not None:
        return (Hang(carried.mass_kg, nowhere_m, "clamped"),)
    piece = piece_of(view, carried.key)
    return () if piece is None else (Move(piece.id, nowhere_m),)


def other_hand_slides(carried: Mapping[int, Carried], pointer: int) -> bool:
    """Whether this pointer has a finger in hand while another slides the other one: the two are one drag."""
    others = (one for number, one in carried.items() if number != pointer)
    return carried[pointer].key in FINGER_KEYS and any(one.begun and one.key in FINGER_KEYS for one in others)
