"""Published centroids and moments of inertia, each from a shape of ours or a build of many parts.

Where a table has a shape that ours are not, parts stand for it: many corners for an arc, many points for a
wire, a solid less a slightly smaller one for a shell, many rods for a density that changes.
"""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from math import cos, pi, sin

import numpy as np
import pytest

from lab.mechanics import (
    Box,
    Cone,
    Cylinder,
    Disc,
    Group,
    HalfDisc,
    Hemisphere,
    Part,
    Point,
    Polygon,
    Rectangle,
    Rod,
    Shape,
    Sphere,
    Triangle,
    centre_m,
    flattened,
    inertia_about_kg_m2,
    moment_sum,
    unit_inertia_m2,
)

Ring = tuple[tuple[float, float], ...]
HALF_ANGLE = 0.7
MANY = 480
SHELL = 1e-6


@dataclass(frozen=True)
class Published:
    """id; source (in sources.toml); mark; ((ours, printed, tolerance), ...)."""

    id: str
    source: str
    mark: str
    numbers: Callable[[], list[tuple[float, float, float]]]


def about(shape: Shape, axis: int) -> float:
    return float(unit_inertia_m2(shape)[axis, axis])


def arc(from_rad: float, to_rad: float, count: int = MANY) -> Ring:
    return tuple((cos(a), sin(a)) for a in np.linspace(from_rad, to_rad, count))


def grown(corners: int, sweep_rad: float) -> float:
    """How much farther out corners must lie so that their polygon has the arc's own centroid to fourth order."""
    step = sweep_rad / (corners - 1)
    return 1.0 + step * step / 12.0


def balance(parts: list[Part]) -> tuple[float, float, float]:
    return moment_sum(parts).balance_point_m


def g01() -> list[tuple[float, float, float]]:
    standing = Polygon(((0.0, 0.0), (0.4, 0.0), (0.4, 1.0), (0.0, 1.0)))
    return [
        (centre_m(standing)[2], 1 / 2, 1e-8),
        (centre_m(Triangle(((0.0, 0.0), (0.7, 0.0), (0.2, 1.0))))[2], 1 / 3, 1e-7),
    ]


def g02() -> list[tuple[float, float, float]]:
    quarter = Polygon(((0.0, 0.0), *arc(0.0, pi / 2)))
    return [
        (centre_m(HalfDisc(1.0))[2], 4 / (3 * pi), 1e-5),
        (centre_m(HalfDisc(1.0))[2], 0.4244, 5e-5),
        (centre_m(quarter)[0], 4 / (3 * pi), 1e-5),
        (centre_m(quarter)[2], 4 / (3 * pi), 1e-5),
    ]


def g03() -> list[tuple[float, float, float]]:
    growth = grown(MANY, 2 * HALF_ANGLE)
    rim = tuple((growth * x, growth * z) for x, z in arc(-HALF_ANGLE, HALF_ANGLE))
    return [(centre_m(Polygon(((0.0, 0.0), *rim)))[0], 2 * sin(HALF_ANGLE) / (3 * HALF_ANGLE), 1e-7)]


def g04() -> list[tuple[float, float, float]]:
    printed = 4 * sin(HALF_ANGLE) ** 3 / (3 * (2 * HALF_ANGLE - sin(2 * HALF_ANGLE)))
    return [(centre_m(Polygon(arc(-HALF_ANGLE, HALF_ANGLE)))[0], printed, 1e-5)]


def wire(from_rad: float, to_rad: float) -> list[Part]:
    """A bent wire as points in the middles of equal pieces."""
    edges = np.linspace(from_rad, to_rad, 20001)
    middles = (edges[1:] + edges[:-1]) / 2
    return [Part(f"piece {n}", 1.0, (cos(a), 0.0, sin(a))) for n, a in enumerate(middles)]


def g05() -> list[tuple[float, float, float]]:
    half, quarter = balance(wire(0.0, pi)), balance(wire(0.0, pi / 2))
    return [
        (half[2], 2 / pi, 1e-8),
        (quarter[0], 2 / pi, 1e-8),
        (quarter[2], 2 / pi, 1e-8),
        (half[2], 0.6366, 5e-5),
    ]


def g06() -> list[tuple[float, float, float]]:
    """Sides of a parabola under their chords: 400 of them leave out (2/400)² / 6 of it, some 10⁻⁶ and less."""
    across = np.linspace(-1.0, 1.0, 401)
    bowl = Polygon(tuple((float(x), float(x * x)) for x in across))
    spandrel = Polygon((*((float(x), float(x * x)) for x in np.linspace(0.0, 1.0, 401)), (1.0, 0.0)))
    return [
        (centre_m(bowl)[2], 3 / 5, 1e-5),
        (centre_m(spandrel)[0], 3 / 4, 1e-5),
        (centre_m(spandrel)[2], 3 / 10, 1e-5),
    ]


def g07() -> list[tuple[float, float, float]]:
    return [(centre_m(Cone(0.3, 1.0, "up"))[2], 1 / 4, 1e-7)]


def shell(outer: Shape, inner: Shape, mass_share: float) -> float:
    """How high a shell's centre lies over its base: the outer solid less the inner, both standing on it."""
    parts = [
        Part("outer", 1.0, centre_m(outer), outer),
        Part("inner", mass_share, centre_m(inner), inner, cut=True),
    ]
    return balance(parts)[2]


def g08() -> list[tuple[float, float, float]]:
    thin = 1.0 - SHELL
    # A wall of 10⁻⁶ of the size has its own thickness in the answer: 10⁻⁶.
    return [
        (centre_m(Hemisphere(1.0))[2], 3 / 8, 1e-7),
        (shell(Hemisphere(1.0), Hemisphere(thin), thin**3), 1 / 2, 2e-6),
    ]


def g09() -> list[tuple[float, float, float]]:
    plate = [
        Part("plate", 24.0, (3.0, 0.0, 2.0), Rectangle(6.0, 4.0)),
        Part("hole", pi, (4.5, 0.0, 2.0), Disc(1.0), cut=True),
    ]
    corner = Polygon(((0, 0), (6, 0), (6, 2), (2, 2), (2, 6), (0, 6)))
    bars = [
        Part("foot", 12.0, (3.0, 0.0, 1.0), Rectangle(6.0, 2.0)),
        Part("post", 8.0, (1.0, 0.0, 4.0), Rectangle(2, 4)),
    ]
    return [
        (balance(plate)[0], 2.7741, 5e-5),
        (balance(plate)[2], 2.0, 1e-12),
        (centre_m(corner)[0], 2.2, 1e-12),
        (centre_m(corner)[2], 2.2, 1e-12),
        (balance(bars)[0], 2.2, 1e-12),
        (balance(bars)[2], 2.2, 1e-12),
    ]


def i01() -> list[tuple[float, float, float]]:
    rod = [Part("rod", 1.0, (0.5, 0.0, 0.0), Rod(1.0))]
    end = inertia_about_kg_m2(rod, (0.0, 0.0, 0.0))[1, 1]
    return [(about(Rod(1.0), 1), 1 / 12, 1e-8), (float(end), 1 / 3, 1e-8)]


def i02() -> list[tuple[float, float, float]]:
    bar = Cylinder(1.0, 2.0)
    return [
        (about(bar, 0), 1 / 2, 1e-7),
        (about(bar, 1), 1 / 4 + 4 / 12, 1e-5),
        (about(Disc(1.0), 1), 1 / 2, 1e-7),
        (about(Disc(1.0), 0), 1 / 4, 1e-5),
    ]


def i03() -> list[tuple[float, float, float]]:
    # A hoop is a tube as thin and as short as can be: both count by their squares, the wall by itself.
    hoop = Cylinder(1.0, 1e-6, 1.0 - 1e-9, "up")
    return [
        (about(hoop, 2), 1.0, 1e-8),
        (about(hoop, 0), 1 / 2, 1e-8),
        (about(Cylinder(1.0, 2.0, 0.5), 0), (0.25 + 1.0) / 2, 1e-7),
    ]


def i04() -> list[tuple[float, float, float]]:
    thin = 1.0 - SHELL
    ball = [Part("outer", 1.0, (0, 0, 0), Sphere(1.0)), Part("inner", thin**3, (0, 0, 0), Sphere(thin), cut=True)]
    unit = inertia_about_kg_m2(ball, (0.0, 0.0, 0.0))[1, 1] / moment_sum(ball).mass_kg
    # The wall's own thickness, and the round-off of a difference of a millionth.
    return [(about(Sphere(1.0), 0), 2 / 5, 1e-7), (float(unit), 2 / 3, 2e-6)]


def i05() -> list[tuple[float, float, float]]:
    return [(about(Rectangle(3.0, 2.0), 1), 13 / 12, 1e-7), (about(Box((3.0, 0.01, 2.0)), 1), 13 / 12, 1e-7)]


def u25() -> list[tuple[float, float, float]]:
    """Rods in a row, each as heavy as Simpson makes its piece, balanced where its own density puts it."""
    low, high, count = 1.0, 4.0, 4000
    edges = np.linspace(0.0, 1.0, count + 1)
    parts = []
    for n, (start, end) in enumerate(pairwise(edges)):
        middle = (start + end) / 2
        mass = (end - start) * (low + (high - low) * middle**2)
        parts.append(Part(f"rod {n}", float(mass), (float(middle), 0.0, 0.0), Rod(float(end - start))))
    return [(balance(parts)[0], 0.75 * (high + low) / (high + 2 * low), 1e-7)]


def u26() -> list[tuple[float, float, float]]:
    """Small plates in rows and columns: the mass of one is its density at its middle, exactly, times its area."""
    middles = (np.arange(200) + 0.5) / 200
    strips = [Part(f"strip {n}", float(x), (float(x), 0.0, 0.0), Point()) for n, x in enumerate(middles)]
    # A strip's share of the mass is its x, whatever its y; midpoint columns leave 1/(4 n²) of the answer.
    return [(balance(strips)[0], 2 / 3, 1e-5)]


def conical_shell_height() -> float:
    """A conical sheet as flat triangles round its axis, their tips together, each from a group of its own."""
    count, radius, height = 240, 0.6, 1.0
    half = pi / count
    slant = float(np.hypot(radius * cos(half), height))
    gore = Triangle(((0.0, -radius * sin(half)), (slant, 0.0), (0.0, radius * sin(half))))
    part = Part("gore", 1.0, centre_m(gore), gore)
    lean = float(np.arctan2(height, radius * cos(half)))
    groups = []
    for n in range(count):
        yaw = 2 * pi * n / count
        # The foot of a gore lies at the rim; nose up by more than a right angle leans it in over the axis.
        foot = (radius * cos(half) * cos(yaw), -radius * cos(half) * sin(yaw), 0.0)
        groups.append(Group(name=f"g{n}", members=(part,), at_m=foot, turn_rad=(pi / 2, lean - pi, yaw)))
    gores = flattened(groups)
    # Leant rightly, each gore's centre is two thirds of the rim's way out.
    assert all(np.hypot(*gore.at_m[:2]) == pytest.approx(2 / 3 * radius * cos(half)) for gore in gores)
    return balance(list(gores))[2]


def g08_cone() -> list[tuple[float, float, float]]:
    return [(conical_shell_height(), 1 / 3, 1e-7)]


ROWS = (
    Published("G01", "S-42", "seen", g01),
    Published("G02", "S-42", "seen", g02),
    Published("G03", "S-42", "seen", g03),
    Published("G04", "S-42", "seen", g04),
    Published("G05", "S-42", "seen", g05),
    Published("G06", "S-42", "seen", g06),
    Published("G07", "S-42", "seen", g07),
    Published("G08", "S-42", "memory", g08),
    Published("G08 cone", "S-42", "memory", g08_cone),
    Published("G09", "S-42", "ours", g09),
    Published("I01", "S-04", "seen", i01),
    Published("I02", "S-04", "seen", i02),
    Published("I03", "S-04", "seen", i03),
    Published("I04", "S-04", "seen", i04),
    Published("I05", "S-04", "seen", i05),
    Published("U25", "S-17", "seen", u25),
    Published("U26", "S-17", "seen", u26),
)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row.id} ({row.mark})")
def test_a_published_centroid_or_inertia_comes_out(row: Published) -> None:
    for ours, printed, tolerance in row.numbers():
        assert ours == pytest.approx(printed, abs=tolerance, rel=0.0)
