"""The turning areas of what stands on scales: about its balance point both sides are the same."""

from __future__ import annotations

from lab.outline.words import msg
from lab.scenes.scales.view import ScalesView
from lab.scenes.turning_areas import LEAST_ARM, TurningArea, TurningView


def areas_about_balance(view: ScalesView) -> TurningView:
    """Every part that lies off the balance point."""
    bench = view.bench
    about_m, least_m = bench.sum.balance_point_m[0], LEAST_ARM * bench.size_m
    keys = [*(["bar"] if bench.bar is not None else []), *(f"load-{load.id}" for load in bench.loads)]
    areas = []
    for key, part in zip(keys, bench.parts, strict=True):
        arm_m = about_m - part.at_m[0]
        if abs(arm_m) > least_m:
            areas.append(
                TurningArea(
                    key=key, name=part.name, mass_kg=part.mass_kg, arm_m=abs(arm_m), left=arm_m > 0.0, named=True
                )
            )
    return TurningView(
        title=msg("Turning areas about the balance point"),
        areas=tuple(areas),
        about_m=about_m,
        look=view.look,
        readings=view.readings,
        picked=view.picked,
    )
