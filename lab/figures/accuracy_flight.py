"""How right airframes are in pitch: neutral points of 200 plan-forms, and the flight of a toss."""

from collections.abc import Iterator
from math import hypot, inf

import numpy as np

from lab.figures import path_flight, plan_forms
from lab.figures.rows import Row, row
from lab.mechanics import (
    TICK_S,
    Aerodynamics,
    Airframe,
    Launch,
    Surface,
    aerodynamics,
    flight_modes,
    launched,
    neutral_point,
    toss_tick,
)

PROMISED_PERCENT = 2.0
QUICK_COUNT = 8
FLIGHT_S = 10.0
PLACE_FLOOR_M = 1e-6
PERCENT = "% of mean chord"

GLIDER = Airframe(
    surfaces=(
        Surface(name="wing", root_chord_m=0.16, tip_chord_m=0.10, span_m=1.0),
        Surface(name="tail", root_chord_m=0.09, tip_chord_m=0.07, span_m=0.32, at_m=(0.52, 0.0, 0.0)),
    ),
    mass_kg=0.12,
    balance_point_m=(0.06, 0.0, 0.0),
    pitch_inertia_kg_m2=0.003,
)


def flight_rows(*, quick: bool = False) -> Iterator[Row]:
    """Every accuracy of airframes that is measured here."""
    yield from neutral_rows(QUICK_COUNT if quick else plan_forms.COUNT)
    air = aerodynamics(GLIDER)
    yield place_beside_floor(air)
    yield roots_beside_path_axes(air)


def neutral_rows(count: int) -> Iterator[Row]:
    """Ours and the teaching formula's, off aerosandbox's lattice: as it is, and with its own error taken off."""
    half, whole = plan_forms.SPANWISE // 2, plan_forms.SPANWISE
    errors = np.array([errors_percent(form) for form in plan_forms.plan_forms(count)])
    names = (
        (f"ours beside aerosandbox, {half} strips", 1.0),
        (f"ours beside aerosandbox, {whole} strips", 1.0),
        ("ours beside aerosandbox, extrapolated", 1.0),
        ("teaching formula beside the same", inf),
    )
    for (name, goal), column in zip(names, errors.T, strict=True):
        for how, error in (("worst", np.max(column)), ("median", np.median(column))):
            yield row(
                f"neutral point: {how} of {count} plan-forms, {name}",
                float(error),
                PROMISED_PERCENT,
                goal=goal,
                unit=PERCENT,
                beside="the 2 % promised",
            )


def errors_percent(form: plan_forms.PlanForm) -> tuple[float, float, float, float]:
    """Ours off theirs with half their strips, with all, and extrapolated; the teaching formula off the last."""
    ours = neutral_point(form.surfaces)
    half = plan_forms.theirs_m(form, spanwise=plan_forms.SPANWISE // 2)
    whole = plan_forms.theirs_m(form)
    settled = plan_forms.extrapolated_m(half, whole)
    percent = 100.0 / form.chord_m
    return (
        percent * abs(ours.at_m - half),
        percent * abs(ours.at_m - whole),
        percent * abs(ours.at_m - settled),
        percent * abs(ours.closed_at_m - settled),
    )


def place_beside_floor(air: Aerodynamics) -> Row:
    """Where ten seconds of ticks end, off an adaptive solution in other axes."""
    motion = launched(air, Launch())
    ahead, up = path_flight.solved_place_m(air, motion, FLIGHT_S)
    for _ in range(round(FLIGHT_S / TICK_S)):
        motion = toss_tick(air, motion)
    error = hypot(motion.ahead_m - ahead, motion.up_m - up)
    return row("toss: error in place after 10 s", error, PLACE_FLOOR_M, goal=1.0, unit="m", beside="floor promised")


def roots_beside_path_axes(air: Aerodynamics) -> Row:
    """The modes' roots, off those of the equations in other axes; what is left is the differences' round-off."""
    ours = [complex(mode.growth_s, mode.pace_s) for mode in flight_modes(air).modes]
    theirs = [root for root in path_flight.solved_roots_s(air) if root.imag >= 0.0]
    worst = max(abs(one - other) / abs(other) for one, other in zip(ours, theirs, strict=True))
    return row("toss: roots of the modes", worst, 1e-6, goal=1.0, unit="of a root", beside="floor promised")
