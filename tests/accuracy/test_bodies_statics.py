"""Turned groups, hanging, weighing, standing and sliding, each against a way of doing it that is not ours."""

import random
from math import atan, cos, radians, sin, sqrt, tan

import numpy as np
import pytest
import shapely
from numpy.typing import NDArray
from scipy.optimize import linprog, minimize
from scipy.spatial.transform import Rotation

from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    Box,
    Group,
    Part,
    ScaleReading,
    Vector,
    Weighing,
    flattened,
    footing,
    hanging_attitude,
    inertia_about_kg_m2,
    moment_sum,
    slide_or_tip,
    support_polygon_m,
    support_reactions_n,
    weighed_balance_point,
    weighed_level_m,
)

Floats = NDArray[np.float64]
SEED = 4711
#: Forward, right, down, the axes in which airframe angles are defined, seen from along, across, up.
AIRFRAME = np.diag([-1.0, 1.0, -1.0])


def turned(turn_rad: Vector) -> Floats:
    """Scipy's rotation by yaw, pitch, roll about a body's own axes, seen in ours."""
    roll, pitch, yaw = turn_rad
    found: Floats = AIRFRAME @ Rotation.from_euler("ZYX", [yaw, pitch, roll]).as_matrix() @ AIRFRAME
    return found


def random_vector(generator: random.Random, size: float) -> Vector:
    return generator.uniform(-size, size), generator.uniform(-size, size), generator.uniform(-size, size)


def random_build(generator: random.Random, count: int = 6) -> list[Part]:
    return [
        Part(
            f"part {n}",
            generator.uniform(0.1, 2.0),
            random_vector(generator, 1.0),
            Box((generator.uniform(0.1, 0.5), generator.uniform(0.1, 0.5), generator.uniform(0.1, 0.5))),
        )
        for n in range(count)
    ]


def test_nested_turned_groups_are_scipys_rotations_one_after_another() -> None:
    generator = random.Random(SEED)
    for _ in range(50):
        depth = generator.randint(1, 5)
        (part,) = random_build(generator, 1)
        place, inertia = np.array(part.at_m), np.array(part.own_inertia_kg_m2)
        member: Part | Group = part
        for level in range(depth):
            turn, at = random_vector(generator, 3.1), random_vector(generator, 2.0)
            member = Group(name=f"level {level}", members=(member,), at_m=at, turn_rad=turn)
            matrix = turned(turn)
            place, inertia = np.array(at) + matrix @ place, matrix @ inertia @ matrix.T
        (found,) = flattened([member])
        # Five products of matrices of ones: round-off of some 1e-15.
        assert found.at_m == pytest.approx(place, abs=1e-13)
        assert np.array(found.own_inertia_kg_m2) == pytest.approx(inertia, abs=1e-13)


def test_a_hung_body_rests_where_its_potential_energy_is_least() -> None:
    generator = random.Random(SEED)
    for _ in range(30):
        build, hook = random_build(generator), random_vector(generator, 1.5)
        masses = np.array([part.mass_kg for part in build])
        away = np.array([part.at_m for part in build]) - hook

        def energy(angles: Floats, masses: Floats = masses, away: Floats = away) -> float:
            heights = away @ turned((angles[1], angles[0], 0.0)).T[:, 2]
            return float(masses @ heights)

        starts = [(pitch, roll) for pitch in (-1.0, 0.5) for roll in (-2.0, 0.3, 2.5)]
        tries = [minimize(energy, start, method="BFGS", options={"gtol": 1e-12}) for start in starts]
        lowest = min(tries, key=lambda tried: float(tried.fun))
        found = hanging_attitude(build, hook)
        assert found is not None
        assert found.roll_rad is not None
        # The bottom of a bowl: the angle is known to the root of the energy's own round-off.
        best = turned((lowest.x[1], lowest.x[0], 0.0)).T @ (0.0, 0.0, -1.0)
        ours = turned((found.roll_rad, found.pitch_rad, 0.0)).T @ (0.0, 0.0, -1.0)
        assert ours == pytest.approx(best, abs=1e-6)
        assert float(lowest.fun) == pytest.approx(-masses.sum() * found.drop_m, rel=1e-10)
        assert energy(np.array([found.pitch_rad, found.roll_rad])) <= float(lowest.fun) + 1e-12


def read_scales(build: list[Part], feet: list[Vector], pitch: float, roll: float) -> Weighing:
    """What three scales would show under a body held at a tilt: forces and moments by numpy, in the world's axes."""
    turn = turned((roll, pitch, 0.0))
    places = np.array([part.at_m for part in build]) @ turn.T
    masses = np.array([part.mass_kg for part in build])
    spots = np.array(feet) @ turn.T
    rows = np.array([np.ones(3), spots[:, 0], spots[:, 1]])
    shown = np.linalg.solve(rows, [masses.sum(), masses @ places[:, 0], masses @ places[:, 1]])
    readings = [
        ScaleReading(name=f"scale {n}", mass_kg=float(mass), at_m=foot)
        for n, (mass, foot) in enumerate(zip(shown, feet, strict=True))
    ]
    return Weighing(readings=tuple(readings), pitch_rad=pitch, roll_rad=roll)


def test_the_balance_point_comes_back_out_of_what_the_scales_would_show() -> None:
    generator = random.Random(SEED)
    feet: list[Vector] = [(-4.0, 0.0, -1.0), (3.0, -4.0, -1.1), (3.0, 4.0, -1.2)]
    for _ in range(50):
        build = random_build(generator)
        balance = moment_sum(build).balance_point_m
        level = read_scales(build, feet, 0.0, 0.0)
        assert weighed_level_m(level) == pytest.approx(balance[:2], abs=1e-12)
        pitched = read_scales(build, feet, generator.uniform(0.1, 0.4), 0.0)
        rolled = read_scales(build, feet, generator.uniform(-0.2, 0.2), generator.uniform(0.1, 0.3))
        # The height costs 1 / sin 0.1, ten times, the round-off of the readings.
        assert weighed_balance_point([level, pitched]).at_m == pytest.approx(balance, abs=1e-11)
        assert weighed_balance_point([level, pitched, rolled]).at_m == pytest.approx(balance, abs=1e-11)
        assert weighed_balance_point([level, pitched, rolled]).scatter_m < 1e-12


def test_the_height_from_two_weighings_is_the_closed_form() -> None:
    # A wheelbase L, the front end lifted by θ: h = L (F' − F) / (W tan θ) above the line of the wheels.
    wheelbase, weight, front, tilt = 2.5, 1000.0, 480.0, radians(12.0)
    for lifted in (430.0, 455.0, 475.0):
        level = [
            ScaleReading(name="front", mass_kg=front, at_m=(0.0, 0.0, 0.0)),
            ScaleReading(name="rear", mass_kg=weight - front, at_m=(wheelbase, 0.0, 0.0)),
        ]
        nose_up = [
            ScaleReading(name="front", mass_kg=lifted, at_m=(0.0, 0.0, 0.0)),
            ScaleReading(name="rear", mass_kg=weight - lifted, at_m=(wheelbase, 0.0, 0.0)),
        ]
        found = weighed_balance_point(
            [Weighing(readings=tuple(level)), Weighing(readings=tuple(nose_up), pitch_rad=tilt)]
        )
        assert found.at_m[2] == pytest.approx(wheelbase * (front - lifted) / (weight * tan(tilt)), rel=1e-12)


def test_three_supports_carry_what_scipys_linear_programme_finds_or_none_can() -> None:
    generator = random.Random(SEED)
    stood = tipped = 0
    for _ in range(200):
        build = random_build(generator, 3)
        feet: list[Vector] = [random_vector(generator, 2.0) for _ in range(3)]
        along, across, _ = moment_sum(build).balance_point_m
        weight = sum(part.mass_kg for part in build) * STANDARD_GRAVITY_M_S2
        rows = [[1.0] * 3, [foot[0] for foot in feet], [foot[1] for foot in feet]]
        answer = linprog([1.0] * 3, A_eq=rows, b_eq=[weight, weight * along, weight * across], method="highs")
        found = support_reactions_n(build, feet)
        assert (found is not None) == answer.success
        if found is None:
            tipped += 1
            continue
        stood += 1
        # The programme's own feasibility tolerance is 1e-7.
        assert found == pytest.approx(answer.x, abs=1e-6)
        assert sum(found) == pytest.approx(weight, rel=1e-12)
    assert min(stood, tipped) > 10


def test_the_support_polygon_is_shapelys_hull() -> None:
    generator = random.Random(SEED)
    for _ in range(200):
        # On a grid of eighths, so that many feet are in line and some twice there.
        feet = [(generator.randint(0, 8) / 8, generator.randint(0, 8) / 8) for _ in range(generator.randint(3, 12))]
        hull = shapely.MultiPoint(feet).convex_hull
        if hull.geom_type != "Polygon":
            continue
        ours = shapely.Polygon(support_polygon_m(feet))
        assert ours.exterior.is_ccw
        assert ours.equals(hull)
        assert len(ours.exterior.coords) == len(hull.normalize().exterior.coords)


def test_it_stands_just_where_shapely_finds_its_balance_point_over_its_feet() -> None:
    generator = random.Random(SEED)
    for _ in range(500):
        feet = [(generator.uniform(-1, 1), generator.uniform(-1, 1)) for _ in range(generator.randint(3, 7))]
        at = (generator.uniform(-1, 1), generator.uniform(-1, 1))
        body = footing([Part("lead", 1.0, (at[0], at[1], 0.3))], feet)
        hull = shapely.MultiPoint(feet).convex_hull
        assert body.stands == hull.contains(shapely.Point(at))
        if body.stands:
            assert body.margin_m == pytest.approx(hull.exterior.distance(shapely.Point(at)), abs=1e-14)


def leans_over(at: Vector, feet: Floats, slope_rad: float, downhill: tuple[float, float]) -> bool:
    """Brute force: tilt feet and body in the world, and see whether the upright falls outside the feet."""
    axis = np.array([-downhill[1], downhill[0], 0.0])
    # Downhill goes down: a turn about the level axis to its left that takes downhill to below.
    turn = Rotation.from_rotvec(axis * slope_rad).as_matrix()
    spots, place = feet @ turn.T, turn @ at
    return not shapely.MultiPoint(spots[:, :2]).convex_hull.contains(shapely.Point(place[:2]))


def test_the_slope_at_which_it_tips_is_where_brute_force_finds_it() -> None:
    generator = random.Random(SEED)
    for _ in range(40):
        flat = [(generator.uniform(-1, 1), generator.uniform(-1, 1)) for _ in range(5)]
        middle = np.mean(flat, axis=0)
        at: Vector = (float(middle[0]), float(middle[1]), generator.uniform(0.2, 2.0))
        angle = generator.uniform(0.0, 6.28)
        downhill = (cos(angle), sin(angle))
        body = footing([Part("lead", 1.0, at)], flat)
        tips = slide_or_tip(body, 0.5, downhill).tips_at_rad
        feet = np.array([(*spot, 0.0) for spot in flat])
        low, high = 0.0, radians(89.9)
        for _ in range(50):
            half = (low + high) / 2
            low, high = (low, half) if leans_over(at, feet, half, downhill) else (half, high)
        assert tips == pytest.approx(low, abs=1e-9)
        # Tilted any way, it needs at least the least edge's angle; straight over that edge, no more.
        assert body.tip_rad <= tips + 1e-12
        edge = body.first_edge
        out = (edge.end_m[1] - edge.start_m[1], edge.start_m[0] - edge.end_m[0])
        assert slide_or_tip(body, 0.5, out).tips_at_rad == pytest.approx(body.tip_rad, rel=1e-12)


def test_a_block_on_a_slope_slides_or_tips_as_the_closed_form_says() -> None:
    generator = random.Random(SEED)
    for _ in range(200):
        base, height, grip = (generator.uniform(0.1, 1.0) for _ in range(3))
        block = Part("block", 3.0, (base / 2, base / 2, height / 2), Box((base, base, height)))
        body = footing([block], [(0, 0), (base, 0), (base, base), (0, base)])
        found = slide_or_tip(body, grip)
        # A block slides at tan = μ and tips at tan = base / height.
        assert found.first == ("slides" if grip < base / height else "tips")
        assert found.slides_at_rad == pytest.approx(atan(grip), rel=1e-14)
        assert found.tips_at_rad == pytest.approx(atan(base / height), rel=1e-12)


def test_the_work_to_tip_a_block_over_its_edge_is_the_rise_of_its_balance_point() -> None:
    # Turned by the tipping angle its balance point stands highest: √(margin² + height²) over the edge.
    body = footing(
        [Part("block", 2.0, (0.1, 0.1, 0.3), Box((0.2, 0.2, 0.6)))], [(0, 0), (0.2, 0), (0.2, 0.2), (0, 0.2)]
    )
    edge = body.edges[1]
    angles = np.linspace(0.0, 1.5, 100001)
    heights = edge.margin_m * np.sin(angles) + body.height_m * np.cos(angles)
    assert angles[int(np.argmax(heights))] == pytest.approx(edge.tip_rad, abs=1.5e-5)
    assert heights.max() == pytest.approx(sqrt(0.1**2 + 0.3**2), rel=1e-9)


def test_inertia_about_any_point_is_the_sum_over_grains_at_its_gauss_points() -> None:
    generator = random.Random(SEED)
    build, point = random_build(generator, 4), random_vector(generator, 1.0)
    total = np.zeros((3, 3))
    # Two grains a side, at ± half the side / √3, have a box's own second moments (two-point Gauss).
    for part in build:
        half = np.array(part.shape.extent_m) / (2 * sqrt(3))
        for corner in np.ndindex(2, 2, 2):
            away = np.array(part.at_m) + (2 * np.array(corner) - 1) * half - point
            total += part.mass_kg / 8 * (away @ away * np.eye(3) - np.outer(away, away))
    assert inertia_about_kg_m2(build, point) == pytest.approx(total, rel=1e-12, abs=1e-13)
