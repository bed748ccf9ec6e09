"""Tasks that the mobile sets by itself, from whatever hangs in it."""

from __future__ import annotations

from lab.simulation.benches.mobile import Beam, Mobile
from lab.simulation.benches.tasks import Task, TaskKind, masses_of, reaches
from lab.simulation.refused import msg

LEVEL_RAD = 0.02
"""A bar that comes to rest no more askew than this, about 1°, is called level: the eye tells no better."""

END_SHARE = 0.05
"""How far from its ends a bar's loads are thought to hang: beside each other there is no room at the very end."""


def _tilts_rad(mobile: Mobile) -> list[float]:
    return [level.tilt_rad for level in mobile.levels.levels]


def _is_level(mobile: Mobile) -> bool:
    return all(abs(tilt_rad) <= LEVEL_RAD for tilt_rad in _tilts_rad(mobile))


def _made_of(mobile: Mobile) -> tuple[tuple[str, float], ...]:
    weights = [(weight.name, weight.mass_kg) for beam in mobile.beams for weight in beam.weights]
    return masses_of([*((beam.name, beam.mass_kg) for beam in mobile.beams), *weights])


def _hangs_level(task: Task[Mobile], mobile: Mobile) -> bool:
    """Let go and at rest, with the same bars and weights."""
    at_rest = not mobile.held and not mobile.moving
    return at_rest and _is_level(mobile) and _made_of(mobile) == _made_of(task.start)


def _askew(mobile: Mobile) -> float | None:
    """How far the most tilted bar is askew.  Each can be made level: its ring slides to where the bar balances."""
    return None if _is_level(mobile) else max(abs(tilt_rad) for tilt_rad in _tilts_rad(mobile))


def _by_hooks(mobile: Mobile) -> float | None:
    """The same, if every bar can be made level by moving what hangs on it."""
    carried_kg = mobile.carried_kg
    return _askew(mobile) if all(_can_balance(mobile, beam, carried_kg[beam.name]) for beam in mobile.beams) else None


def _can_balance(mobile: Mobile, beam: Beam, carried_kg: float) -> bool:
    below_kg = [mobile.carried_kg[each.name] for each in mobile.beams if each.above == beam.id]
    ends_m = END_SHARE * beam.length_m, (1.0 - END_SHARE) * beam.length_m
    loads = [(mass_kg, *ends_m) for mass_kg in (*(weight.mass_kg for weight in beam.weights), *below_kg)]
    own_kg_m = beam.mass_kg * beam.length_m / 2.0
    return reaches(beam.pin_m, own_kg_m, carried_kg, loads)


def _rings(mobile: Mobile) -> list[tuple[int, float]]:
    return [(beam.id, beam.pin_m) for beam in mobile.beams]


def _hangs_level_by_hooks(task: Task[Mobile], mobile: Mobile) -> bool:
    return _rings(mobile) == _rings(task.start) and _hangs_level(task, mobile)


def _by_rings(mobile: Mobile) -> float | None:
    """The same, by sliding rings alone: always, since a bar balances somewhere between its ends."""
    return _askew(mobile)


def _hooks(mobile: Mobile) -> list[tuple[int, int | None, float, tuple[float, ...]]]:
    return [(beam.id, beam.above, beam.hook_m, tuple(weight.at_m for weight in beam.weights)) for beam in mobile.beams]


def _hangs_level_by_rings(task: Task[Mobile], mobile: Mobile) -> bool:
    return _hooks(mobile) == _hooks(task.start) and _hangs_level(task, mobile)


TASKS = (
    TaskKind(
        name="hooks",
        sentence=msg("Make every bar hang level with what is there. The rings stay."),
        goal=_by_hooks,
        done=_hangs_level_by_hooks,
    ),
    TaskKind(
        name="rings",
        sentence=msg("Make every bar hang level by sliding the bars in their rings alone."),
        goal=_by_rings,
        done=_hangs_level_by_rings,
    ),
)
"""Every kind of task of this bench, in the order in which they are set."""
