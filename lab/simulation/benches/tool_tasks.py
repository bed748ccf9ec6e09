"""Tasks that the tool sets by itself, from whatever it is built of."""

from __future__ import annotations

from lab.simulation.benches.finger_builds import span_m
from lab.simulation.benches.tasks import NEAR_M, TRAY_KG, Task, TaskKind, masses_of, one_more_kg, reaches
from lab.simulation.benches.tool import BuiltTool, handle_index
from lab.simulation.refused import msg


def _missing_kg_m(tool: BuiltTool) -> float:
    return tool.sum.mass_kg * (tool.finger_at_m - tool.sum.balance_point_m[0])


def _over_finger(tool: BuiltTool) -> bool:
    return abs(tool.sum.balance_point_m[0] - tool.finger_at_m) <= tool.pad_half_m


def _stays(task: Task[BuiltTool], tool: BuiltTool) -> bool:
    """Let go, and it lies there still, over the same finger."""
    return tool.outcome == "level" and tool.finger_at_m == task.goal


def _made_of(tool: BuiltTool) -> tuple[tuple[str, float], ...]:
    return masses_of([(part.name, part.mass_kg) for part in tool.parts])


# --- with what is on it --------------------------------------------------------------------------------------


def _shifted(tool: BuiltTool) -> float | None:
    """Where the finger is, if parts can be slid along the handle until it balances there, and it does not yet."""
    handle = handle_index(tool.parts)
    low_m, high_m = span_m(tool.handle)
    moving = [part for index, part in enumerate(tool.parts) if index != handle and not part.cut]
    fixed_kg_m = sum(part.signed_mass_kg * part.at_m[0] for part in tool.parts if part not in moving)
    loads = [(part.mass_kg, low_m, high_m) for part in moving]
    if _over_finger(tool) or not reaches(tool.finger_at_m, fixed_kg_m, tool.sum.mass_kg, loads):
        return None
    return tool.finger_at_m


def _is_shifted(task: Task[BuiltTool], tool: BuiltTool) -> bool:
    return _stays(task, tool) and _made_of(tool) == _made_of(task.start)


# --- with one more -------------------------------------------------------------------------------------------


def _one_more(tool: BuiltTool) -> float | None:
    """Where the finger is, if one of the tray's weights can make up what is missing on the lighter side."""
    low_m, high_m = span_m(tool.handle)
    if _over_finger(tool) or not low_m <= tool.finger_at_m <= high_m:
        return None
    arms_m = tool.finger_at_m - low_m, high_m - tool.finger_at_m
    return None if one_more_kg(_missing_kg_m(tool), arms_m) is None else tool.finger_at_m


def _has_one_more(task: Task[BuiltTool], tool: BuiltTool) -> bool:
    same = all(part in tool.parts for part in task.start.parts)
    return _stays(task, tool) and same and len(tool.parts) == len(task.start.parts) + 1


# --- half the brass ------------------------------------------------------------------------------------------


def _brass_kg(tool: BuiltTool) -> float:
    return sum(part.mass_kg for part in tool.parts if tool.looks.get(part.name) == "weight")


def _half(tool: BuiltTool) -> float | None:
    """Where it balances, if half of the brass can be made of the tray's weights and has a place on the handle."""
    half_kg = _brass_kg(tool) / 2
    pieces = half_kg / TRAY_KG[0]
    if half_kg < TRAY_KG[0] * 0.999 or abs(pieces - round(pieces)) > 1e-6:
        return None
    rest = [part for part in tool.parts if tool.looks.get(part.name) != "weight"]
    goal_m = tool.sum.balance_point_m[0]
    rest_kg_m = sum(part.signed_mass_kg * (goal_m - part.at_m[0]) for part in rest)
    low_m, high_m = span_m(tool.handle)
    return goal_m if low_m <= goal_m + rest_kg_m / half_kg <= high_m else None


def _has_half(task: Task[BuiltTool], tool: BuiltTool) -> bool:
    fixed = [part for part in task.start.parts if task.start.looks.get(part.name) != "weight"]
    same = all(part in tool.parts for part in fixed)
    half_kg = _brass_kg(task.start) / 2
    near = abs(tool.sum.balance_point_m[0] - task.goal) <= NEAR_M
    return same and near and abs(_brass_kg(tool) - half_kg) <= 1e-9


TASKS = (
    TaskKind(
        name="shifted",
        sentence=msg("Make it stay on the finger with just what is on it. The finger stays."),
        goal=_shifted,
        done=_is_shifted,
    ),
    TaskKind(
        name="one-more",
        sentence=msg("Make it stay with one part more. All else stays."),
        goal=_one_more,
        done=_has_one_more,
    ),
    TaskKind(name="half", sentence=msg("Keep the balance point, with half the brass."), goal=_half, done=_has_half),
)
"""Every kind of task of this bench, in the order in which they are set."""
