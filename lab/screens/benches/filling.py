"""What typing the water of a tin, or how many beads are on a cord, comes to."""

from __future__ import annotations

from lab.screens.benches.strip_keys import WATER
from lab.simulation import Command, Hung
from lab.simulation.benches.bar_parts import filled_kg, strung_kg
from lab.simulation.part_commands import Reweigh
from lab.ui.outcomes import Changed


def refilled(event: Changed, weight: Hung | None) -> tuple[Command, ...]:
    """The command that fills a tin, or strings beads; none for anything else."""
    if weight is None:
        return ()
    mass_kg = filled_kg(event.value) if event.key == WATER else strung_kg(round(event.value))
    return (Reweigh(weight.id, mass_kg),)
