"""Every public function of the mechanics says where what it knows comes from, or stands here with the reason why."""

import ast
import re
from typing import Any

SOURCE = re.compile(r"Source:\s*S-\d\d")

#: module.function by the reason why there is nothing to cite.
NOTHING_TO_CITE = {
    "it checks what it is given, or looks it up by name": {
        "axes.axis_index", "checks.finite", "checks.not_negative", "checks.positive", "checks.vector",
        "moments.checked_arrays", "parts.checked", "polygons.checked_rings", "ring_crossings.holders",
        "ring_crossings.meeting_sides", "shifting.part_named", "surfaces.airframe_surfaces", "surfaces.main_surface",
        "tanks.tank_indices",
    },
    "it says the same in another form": {
        "axes.as_tensor", "axes.as_vector", "axes.on_axis", "motions.course_of", "motions.flat", "motions.motion_of",
        "motions.stilled", "pivots.on_edge",
    },
    "it measures a shape as it is drawn": {"shapes.bounds_m", "shapes.extent_m", "solids.beside"},
    "it adds up, as `math.fsum` does": {"parts.added"},
    "it keeps account of volumes: what leaves one tank is burned or comes into another": {
        "tank_courses.tank_course", "tank_flows.flows_at",
    },
    "it joins two laws that each have their source by a bridge of our own": {"airframes.attached_share"},
}  # fmt: skip


def without_source(modules: Any) -> set[str]:
    found = set()
    for module in modules:
        if module.package != "mechanics":
            continue
        for node in module.tree.body:
            if not isinstance(node, ast.FunctionDef) or node.name.startswith("_"):
                continue
            if not SOURCE.search(ast.get_docstring(node) or ""):
                found.add(f"{module.name.rpartition('.')[2]}.{node.name}")
    return found


def test_every_public_function_of_the_mechanics_names_its_source_or_has_a_reason(modules: Any):
    assert without_source(modules) - set().union(*NOTHING_TO_CITE.values()) == set()


def test_no_reason_is_given_for_a_function_that_has_a_source_or_is_gone(modules: Any):
    assert set().union(*NOTHING_TO_CITE.values()) - without_source(modules) == set()


def test_the_check_sees_functions_without_a_source(modules: Any):
    assert len(without_source(modules)) > 10
