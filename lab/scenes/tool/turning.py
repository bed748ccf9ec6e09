"""The turning areas of a tool about the finger under it."""

from __future__ import annotations

from lab.outline.words import msg
from lab.scenes.tool.view import ToolView, part_key
from lab.scenes.turning_areas import LEAST_ARM, TurningArea, TurningView
from lab.simulation.benches.tool import BuiltTool


def turning_of(view: ToolView) -> TurningView:
    """Every part that turns the tool about the middle of the pad."""
    return TurningView(
        title=msg("Turning areas about the finger"),
        areas=areas_of(view.bench),
        about_m=view.bench.finger_at_m,
        look=view.look,
        readings=view.readings,
        picked=view.picked,
    )


def areas_of(tool: BuiltTool) -> tuple[TurningArea, ...]:
    """Each part's area; a gap turns the other way than what is cut out would."""
    least_m = LEAST_ARM * (tool.right_m - tool.left_m)
    areas = []
    for id_, part in zip(tool.ids, tool.parts, strict=True):
        arm_m = tool.finger_at_m - part.at_m[0]
        if abs(arm_m) > least_m:
            left = (arm_m > 0) != part.cut
            # The name of a brass weight is its weight, which is written anyway.
            named = tool.looks.get(part.name) != "weight"
            area = TurningArea(
                key=part_key(id_), name=part.name, mass_kg=part.mass_kg, arm_m=abs(arm_m), left=left, named=named
            )
            areas.append(area)
    return tuple(areas)
