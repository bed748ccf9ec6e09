"""Builds to be changed, drawn from a fixed seed, and references that solve them another way.

The references use none of our own mechanics but the parts and the points of a path: scipy's linear programme and
root finding, a finger slide stepped in time with the body's inertia, and trials drawn at random.
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import inf

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import brentq, linprog  # type: ignore[import-untyped]

from lab.mechanics import (
    AXES,
    STANDARD_GRAVITY_M_S2,
    Axis,
    BalancePath,
    BallastPlace,
    Burn,
    Friction,
    Limits,
    Part,
    Pump,
    Tank,
    Vector,
    balance_path,
    tank_course,
)

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True)
class BallastCase:
    """A build, where ballast may go, and where the balance point should be on which axes."""

    parts: tuple[Part, ...]
    places: tuple[BallastPlace, ...]
    target_m: dict[Axis, float]


def _vector(rng: np.random.Generator, reach_m: float) -> Vector:
    along, across, up = rng.uniform(-reach_m, reach_m, 3).tolist()
    return along, across, up


def ballast_cases(seed: int, count: int) -> list[BallastCase]:
    """Builds of a few parts with four to nine places, some strips, some with little room, on one to three axes."""
    rng = np.random.default_rng(seed)
    cases = []
    for _ in range(count):
        parts = tuple(Part(f"part {n}", float(rng.uniform(0.05, 1.0)), _vector(rng, 0.3)) for n in range(3))
        places = tuple(
            BallastPlace(
                f"place {n}",
                _vector(rng, 0.6),
                _vector(rng, 0.6) if rng.random() < 0.3 else None,
                most_kg=float(rng.uniform(0.05, 1.0)) if rng.random() < 0.4 else None,
            )
            for n in range(int(rng.integers(4, 10)))
        )
        axes: list[Axis] = [AXES[n] for n in sorted(rng.permutation(3)[: int(rng.integers(1, 4))].tolist())]
        cases.append(
            BallastCase(parts=parts, places=places, target_m={axis: float(rng.uniform(-0.2, 0.2)) for axis in axes})
        )
    return cases


def least_by_scipy_kg(case: BallastCase) -> float | None:
    """The least ballast by scipy's linear programme; None where it finds that none will do."""
    mass = np.array([part.mass_kg for part in case.parts])
    at = np.array([part.at_m for part in case.parts])
    columns = [(number, end) for number, place in enumerate(case.places) for end in place.ends_m]
    rows, right = [], []
    for axis, target in case.target_m.items():
        n = AXES.index(axis)
        rows.append([end[n] - target for _, end in columns])
        right.append(float(mass @ (target - at[:, n])))
    capped = [(number, place.most_kg) for number, place in enumerate(case.places) if place.most_kg is not None]
    found = linprog(
        np.ones(len(columns)),
        A_ub=[[float(of == number) for of, _ in columns] for number, _ in capped] or None,
        b_ub=[most for _, most in capped] or None,
        A_eq=rows,
        b_eq=right,
        options={"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10},
    )
    return float(found.fun) if found.status == 0 else None


def path_cases(seed: int, count: int) -> list[tuple[BalancePath, Limits]]:
    """Twin tanks and a third that burn and pump under a sloped outline and a range across."""
    rng = np.random.default_rng(seed)
    cases = []
    for _ in range(count):
        tanks = [
            Tank(
                name=name,
                at_m=(float(rng.uniform(-0.5, 0.9)), across, 0.0),
                capacity_m3=2e-3,
                contents_m3=float(rng.uniform(0.5e-3, 2e-3)),
                density_kg_m3=float(rng.uniform(650.0, 850.0)),
            )
            for name, across in (("left", -0.4), ("right", 0.4), ("tail", 0.0))
        ]
        plan = [
            Burn(rate_m3_s=1e-6, tanks=("left", "tail"), for_s=float(rng.uniform(300.0, 900.0))),
            Burn(rate_m3_s=float(rng.uniform(1e-6, 3e-6)), tanks=("tail", "left", "right"), order="in order"),
        ]
        pumps = [Pump(source="right", target="left", rate_m3_s=1e-6, from_s=float(rng.uniform(0.0, 600.0)))]
        path = balance_path([Part("frame", 3.0, (0.2, 0.0, 0.0))], tank_course(tanks, plan, pumps=pumps))
        low, high = sorted(rng.uniform(0.1, 0.4, 2).tolist())
        outline = ((low, 2.5), (low - 0.05, 5.0), (low, 7.5), (high + 0.03, 7.5), (high + 0.1, 4.0), (high, 2.5))
        cases.append((path, Limits(outline=outline, across_m=(-0.08, 0.08))))
    return cases


def crossings_by_scipy_s(path: BalancePath, limits: Limits, *, samples: int = 4000) -> list[float]:
    """Crossings found by watching for a change, then by scipy's root finding on the limit that changed."""
    signs: list[Callable[[float], float]] = [_beside(path, edge) for edge in limits.edges]
    signs += [_past(path, side) for side in limits.across_m or ()]
    times = np.linspace(path.legs[0].start_s, path.legs[-1].end_s, samples)
    inside = [_inside(path, limits, float(at)) for at in times]
    found = []
    for number in np.nonzero(np.diff(inside))[0]:
        start, end = float(times[number]), float(times[number + 1])
        roots = [brentq(sign, start, end, xtol=1e-13, rtol=1e-15) for sign in signs if sign(start) * sign(end) < 0.0]
        low, high, was = start, end, inside[number]
        for _ in range(40):
            middle = (low + high) / 2.0
            low, high = (middle, high) if _inside(path, limits, middle) == was else (low, middle)
        found.append(min(roots, key=lambda root: abs(root - low)))
    return found


def _beside(path: BalancePath, edge: tuple[tuple[float, float], tuple[float, float]]) -> Callable[[float], float]:
    """To which side of an edge's line the path is at an instant."""
    (a, low), (b, high) = edge

    def side(at_s: float) -> float:
        point = path.point_at(at_s)
        return (point.balance_point_m[0] - a) * (high - low) - (point.mass_kg - low) * (b - a)

    return side


def _past(path: BalancePath, side_m: float) -> Callable[[float], float]:
    """How far the path is past a limit across at an instant."""
    return lambda at_s: path.point_at(at_s).balance_point_m[1] - side_m


def _inside(path: BalancePath, limits: Limits, at_s: float) -> bool:
    """Even or odd number of edges to the right of the point, and the range across."""
    point = path.point_at(at_s)
    along, across, _ = point.balance_point_m
    odd = False
    for (a, low), (b, high) in limits.edges:
        if (low > point.mass_kg) != (high > point.mass_kg):
            odd ^= along < a + (b - a) * (point.mass_kg - low) / (high - low)
    left, right = limits.across_m or (-inf, inf)
    return odd and left <= across <= right


def fingers_stepped_m(
    mass_kg: float,
    places_m: tuple[float, float],
    grips: tuple[Friction, Friction],
    *,
    pace_m_s: float,
    step_s: float,
    turns: int,
) -> list[tuple[float, float]]:
    """Where the fingers are on the body, its balance point at 0, whenever the body goes over to the other finger.

    The fingers close in at the pace, each by half; the body has its inertia, and at each step either sticks to
    one finger or slides on both, by what friction can do.
    """
    left, right = places_m
    holding = 1 if grips[0].static * right < grips[1].static * -left else 0
    stuck: int | None = holding
    speed = (pace_m_s, -pace_m_s)[holding]
    turned: list[tuple[float, float]] = []
    weight = mass_kg * STANDARD_GRAVITY_M_S2
    while len(turned) < turns:
        on = weight * right / (right - left), weight * -left / (right - left)
        pulls = grips[0].kinetic * on[0], -grips[1].kinetic * on[1]
        if stuck is not None and abs(pulls[1 - stuck]) > grips[stuck].static * on[stuck]:
            turned.append((left, right))
            stuck = None
        if stuck is None:
            speed += (pulls[0] + pulls[1]) / mass_kg * step_s
            for number, finger in enumerate((pace_m_s, -pace_m_s)):
                if (speed - finger) * (1 if number == 0 else -1) >= 0.0:
                    speed, stuck = finger, number
        left += (pace_m_s - speed) * step_s
        right += (-pace_m_s - speed) * step_s
    return turned


def balance_trials_m(parts: tuple[Part, ...], seed: int, trials: int) -> Floats:
    """Balance points of as many builds, (trials, 3), each weight and place drawn from a normal distribution.

    Weights of one set err together, and so do its places, axis by axis.
    """
    rng = np.random.default_rng(seed)
    drawn: dict[tuple[str, object], Floats] = {}
    total, moment = np.zeros(trials), np.zeros((trials, 3))
    for number, part in enumerate(parts):
        group: object = number if part.set_name is None else part.set_name
        on_mass = drawn.setdefault(("mass", group), rng.standard_normal(trials))
        on_place = drawn.setdefault(("place", group), rng.standard_normal((trials, 3)))
        mass = (part.mass_kg + part.mass_doubt_kg * on_mass) * (-1.0 if part.cut else 1.0)
        total += mass
        moment += mass[:, np.newaxis] * (np.array(part.at_m) + np.array(part.at_doubt_m) * on_place)
    return moment / total[:, np.newaxis]
