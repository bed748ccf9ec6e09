"""What an airframe adds to a sum, as keys of its JSON object: tanks, limits, mean chord, neutral point, margin."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from lab.files import Build, UnitSystem
from lab.mechanics import (
    Limits,
    MeanChord,
    MechanicsError,
    Part,
    Surface,
    Tank,
    Vector,
    main_surface,
    mean_chord,
    neutral_point,
    pitch_margin,
    standing,
)
from lab.terminal.sum_settling import converted, settled


def tank_keys(build: Build, system: UnitSystem, parts: list[Part]) -> dict[str, Any]:
    """`tanks`, and weight and balance point with them all empty (null where nothing else weighs) and all full.

    parts: all of the build, in the file's numbers, the tanks' contents last.
    """
    holding = sum(tank.mass_kg > 0.0 for tank in build.tanks)
    still = [(part.signed_mass_kg, part.at_m) for part in parts[: len(parts) - holding]]
    full = [(_weight(tank, system, tank.capacity_m3), converted(tank.at_m, system)) for tank in build.tanks]
    limits = None if build.limits is None else _limits_in_units(build.limits, system)
    return {
        "tanks": [_tank(tank, system) for tank in build.tanks],
        "tanks_empty": _loaded(still, limits) if still else None,
        "tanks_full": _loaded([*still, *full], limits),
    }


def _tank(tank: Tank, system: UnitSystem) -> dict[str, Any]:
    return {
        "name": tank.name,
        "contents": system.from_m3(tank.contents_m3),
        "capacity": system.from_m3(tank.capacity_m3),
        "share": settled(tank.contents_m3 / tank.capacity_m3, 1.0),
        "density": system.from_kg_m3(tank.density_kg_m3),
        "weight": _weight(tank, system, tank.contents_m3),
    }


def _weight(tank: Tank, system: UnitSystem, volume_m3: float) -> float:
    weight = system.from_m3(volume_m3) * system.from_kg_m3(tank.density_kg_m3)
    return settled(weight, weight)


def _loaded(loads: list[tuple[float, Vector]], limits: Limits | None) -> dict[str, Any] | None:
    """Weight and balance point, and whether they are within the limits; null where cut-outs leave nothing."""
    total = sum(weight for weight, _ in loads)
    size = sum(abs(weight) for weight, _ in loads)
    if total <= 1e-9 * size:
        return None
    moments = [sum(weight * at[axis] for weight, at in loads) for axis in range(3)]
    terms = [sum(abs(weight * at[axis]) for weight, at in loads) for axis in range(3)]
    along, across, up = (settled(moments[axis] / total, terms[axis] / total) for axis in range(3))
    found: dict[str, Any] = {"weight": settled(total, size), "balance_point": [along, across, up]}
    if limits is not None:
        found["inside"] = standing(limits, (along, across, up), total).inside
    return found


def _limits_in_units(limits: Limits, system: UnitSystem) -> Limits:
    return Limits(
        outline=tuple((system.from_m(along_m), system.from_kg(mass_kg)) for along_m, mass_kg in limits.outline),
        across_m=None
        if limits.across_m is None
        else (system.from_m(limits.across_m[0]), system.from_m(limits.across_m[1])),
    )


def limit_keys(limits: Limits, system: UnitSystem, balance: Vector, weight: float) -> dict[str, Any]:
    """Whether the balance point is inside, what is allowed at this weight, and by how much it is out or in.

    balance, weight: in the file's numbers.
    """
    given = _limits_in_units(limits, system)
    found = standing(given, balance, weight)
    size = max(abs(each) for each in (*balance, *(along for along, _ in given.outline), *(given.across_m or ())))
    heaviest = max((mass for _, mass in given.outline), default=weight)

    def tidy(value: float | None) -> float | None:
        return None if value is None else settled(value, size)

    return {
        "inside": found.inside,
        "along": [[tidy(low), tidy(high)] for low, high in found.along_spans_m] if limits.outline else None,
        "along_out": tidy(found.along_out_m),
        "along_margin": tidy(found.along_margin_m),
        "weight_out": settled(found.mass_out_kg, heaviest),
        "across": None if given.across_m is None else list(given.across_m),
        "across_out": tidy(found.across_out_m),
        "across_margin": tidy(found.across_margin_m),
    }


def pitch_keys(build: Build, system: UnitSystem, along: float, doubt: float) -> dict[str, Any]:
    """`mean_chord`, `neutral_point`, `margin` and `pitch`; null where the surfaces have no answer, and `why`.

    along, doubt: the balance point along and its doubt, in the file's numbers.
    """
    surfaces = [_surface_in_units(surface, system) for surface in build.surfaces]
    keys: dict[str, Any] = {"mean_chord": None, "neutral_point": None, "margin": None}
    try:
        wing = main_surface(surfaces)
        keys["mean_chord"] = _chord(wing, mean_chord(wing), along)
        neutral = neutral_point(surfaces)
        margin = pitch_margin(neutral, along, doubt)
    except MechanicsError as why:
        return {**keys, "pitch": {"goes": None, "why": str(why).partition("; ")[0]}}
    return {
        **keys,
        "neutral_point": {
            "at": neutral.at_m,
            "percent": 100.0 * neutral.share,
            "by_short_formula": neutral.closed_at_m,
        },
        "margin": margin.margin,
        "pitch": {
            "goes": margin.goes,
            "margin_doubt": margin.doubt,
            "sureness": margin.sureness,
            "chance": margin.chance,
        },
    }


def _chord(wing: Surface, chord: MeanChord, along: float) -> dict[str, Any]:
    size = max(abs(chord.at_m), abs(along), chord.length_m)
    return {
        "surface": wing.name,
        "length": settled(chord.length_m, chord.length_m),
        "at": settled(chord.at_m, size),
        "balance_point_percent": settled(100.0 * chord.share(along), 100.0 * size / chord.length_m),
    }


def _surface_in_units(surface: Surface, system: UnitSystem) -> Surface:
    return replace(
        surface,
        root_chord_m=system.from_m(surface.root_chord_m),
        tip_chord_m=system.from_m(surface.tip_chord_m),
        span_m=system.from_m(surface.span_m),
        at_m=converted(surface.at_m, system),
    )
