"""What is typed, chosen and pressed in the strip for what is picked, as commands."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from lab.mechanics import Friction
from lab.scenes.two_fingers.view import TwoFingersView
from lab.screens.benches.strip_keys import PLACE, WEIGHT_FIELD
from lab.screens.benches.two_fingers.keys import GRIP, KINETIC, STATIC
from lab.screens.benches.two_fingers.moves import finger_of, move_of, piece_of
from lab.simulation import Command
from lab.simulation.benches.two_fingers import DRY, SOAPY
from lab.simulation.part_commands import Reweigh
from lab.simulation.two_finger_commands import Finger, SetFriction
from lab.ui.outcomes import Changed, Chosen

GRIPS: Mapping[str, Friction] = MappingProxyType({"dry": DRY, "soapy": SOAPY})
"""How a finger can be chosen to grip."""


def typed(event: Changed, picked: str, view: TwoFingersView) -> tuple[Command, ...]:
    """A place, a weight or a friction of what is picked."""
    finger, piece, units = finger_of(picked), piece_of(view, picked), view.readings.units
    if event.key == PLACE:
        command = move_of(picked, units.to_m(event.value), view, joins=False)
        return () if command is None else (command,)
    if event.key == WEIGHT_FIELD and piece is not None:
        return (Reweigh(piece.id, event.value / units.from_kg(1.0)),)
    if finger is None:
        return ()
    grip, value = view.bench.left if finger == "left" else view.bench.right, event.value
    # Nothing sticks by less than it slides by: the one takes the other along.
    if event.key == STATIC:
        return (_rubbed(finger, Friction(value, min(grip.kinetic, value))),)
    if event.key == KINETIC:
        return (_rubbed(finger, Friction(max(grip.static, value), value)),)
    return ()


def gripped(event: Chosen, picked: str) -> tuple[Command, ...]:
    """Dry or soapy, for the finger that is picked."""
    finger, grip = finger_of(picked), GRIPS.get(event.value)
    return () if event.key != GRIP or finger is None or grip is None else (_rubbed(finger, grip),)


def _rubbed(finger: Finger, grip: Friction) -> SetFriction:
    return SetFriction(finger, grip.static, grip.kinetic)
