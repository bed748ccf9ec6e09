"""Published centroids and moments of inertia, each from a shape of ours or a build of many parts.

Where a table has a shape that ours are not, parts stand for it: many corners for an arc, many points for a
wire, a solid less a slightly smaller one for a shell, many rods for a density that changes.
"""

from itertools import pairwise
from math import atan2, cos, hypot, pi, sin

import numpy as np

from lab.figures.published.check_values import CheckValue, Number
from lab.mechanics import (
    Box,
    Cone,
    Cylinder,
    Disc,
    Group,
    HalfDisc,
    Hemisphere,
    Part,
    Polygon,
    Rectangle,
    Rod,
    Shape,
    Sphere,
    Triangle,
    balance_point_m,
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


def _about(shape: Shape, axis: int) -> float:
    return float(unit_inertia_m2(shape)[axis, axis])


def _arc(from_rad: float, to_rad: float, count: int = MANY) -> Ring:
    return tuple((cos(a), sin(a)) for a in np.linspace(from_rad, to_rad, count))


def _grown(corners: int, sweep_rad: float) -> float:
    """How much farther out corners must lie so that their polygon has the arc's own centroid to fourth order."""
    step = sweep_rad / (corners - 1)
    return 1.0 + step * step / 12.0


def _balance(parts: list[Part]) -> tuple[float, float, float]:
    return moment_sum(parts).balance_point_m


def _g01() -> list[Number]:
    standing = Polygon(((0.0, 0.0), (0.4, 0.0), (0.4, 1.0), (0.0, 1.0)))
    return [
        Number(centre_m(standing)[2], 1 / 2, 1e-8),
        Number(centre_m(Triangle(((0.0, 0.0), (0.7, 0.0), (0.2, 1.0))))[2], 1 / 3, 1e-7),
    ]


def _g02() -> list[Number]:
    quarter = Polygon(((0.0, 0.0), *_arc(0.0, pi / 2)))
    return [
        Number(centre_m(HalfDisc(1.0))[2], 4 / (3 * pi), 1e-5),
        Number(centre_m(HalfDisc(1.0))[2], 0.4244, 5e-5),
        Number(centre_m(quarter)[0], 4 / (3 * pi), 1e-5),
        Number(centre_m(quarter)[2], 4 / (3 * pi), 1e-5),
    ]


def _g03() -> list[Number]:
    growth = _grown(MANY, 2 * HALF_ANGLE)
    rim = tuple((growth * x, growth * z) for x, z in _arc(-HALF_ANGLE, HALF_ANGLE))
    return [Number(centre_m(Polygon(((0.0, 0.0), *rim)))[0], 2 * sin(HALF_ANGLE) / (3 * HALF_ANGLE), 1e-7)]


def _g04() -> list[Number]:
    printed = 4 * sin(HALF_ANGLE) ** 3 / (3 * (2 * HALF_ANGLE - sin(2 * HALF_ANGLE)))
    return [Number(centre_m(Polygon(_arc(-HALF_ANGLE, HALF_ANGLE)))[0], printed, 1e-5)]


def _wire(from_rad: float, to_rad: float) -> tuple[float, float]:
    """Where a bent wire balances, along and up: as points in the middles of equal pieces."""
    edges = np.linspace(from_rad, to_rad, 20_001)
    middles = (edges[1:] + edges[:-1]) / 2
    places = np.stack([np.cos(middles), 0.0 * middles, np.sin(middles)], axis=1)
    along, _, up = balance_point_m(np.ones(20_000), places)
    return float(along), float(up)


def _g05() -> list[Number]:
    half, quarter = _wire(0.0, pi), _wire(0.0, pi / 2)
    return [
        Number(half[1], 2 / pi, 1e-8),
        Number(quarter[0], 2 / pi, 1e-8),
        Number(quarter[1], 2 / pi, 1e-8),
        Number(half[1], 0.6366, 5e-5),
    ]


def _g06() -> list[Number]:
    """Sides of a parabola under their chords: 400 of them leave out (2/400)² / 6 of it, some 10⁻⁶ and less."""
    across = np.linspace(-1.0, 1.0, 401)
    bowl = Polygon(tuple((float(x), float(x * x)) for x in across))
    spandrel = Polygon((*((float(x), float(x * x)) for x in np.linspace(0.0, 1.0, 401)), (1.0, 0.0)))
    return [
        Number(centre_m(bowl)[2], 3 / 5, 1e-5),
        Number(centre_m(spandrel)[0], 3 / 4, 1e-5),
        Number(centre_m(spandrel)[2], 3 / 10, 1e-5),
    ]


def _g07() -> list[Number]:
    return [Number(centre_m(Cone(0.3, 1.0, "up"))[2], 1 / 4, 1e-7)]


def _shell(outer: Shape, inner: Shape, mass_share: float) -> float:
    """How high a shell's centre lies over its base: the outer solid less the inner, both standing on it."""
    parts = [
        Part("outer", 1.0, centre_m(outer), outer),
        Part("inner", mass_share, centre_m(inner), inner, cut=True),
    ]
    return _balance(parts)[2]


def _conical_shell() -> tuple[float, float]:
    """A conical sheet as flat triangles round its axis, their tips together, each from a group of its own.

    How high it balances, and how far the worst gore lies from where it should.
    """
    count, radius, height = 240, 0.6, 1.0
    half = pi / count
    slant = hypot(radius * cos(half), height)
    gore = Triangle(((0.0, -radius * sin(half)), (slant, 0.0), (0.0, radius * sin(half))))
    part = Part("gore", 1.0, centre_m(gore), gore)
    lean = atan2(height, radius * cos(half))
    groups = []
    for n in range(count):
        yaw = 2 * pi * n / count
        # The foot of a gore lies at the rim; nose up by more than a right angle leans it in over the axis.
        foot = (radius * cos(half) * cos(yaw), -radius * cos(half) * sin(yaw), 0.0)
        groups.append(Group(name=f"g{n}", members=(part,), at_m=foot, turn_rad=(pi / 2, lean - pi, yaw)))
    gores = flattened(groups)
    # Leant rightly, each gore's centre is two thirds of the rim's way out.
    worst = max(abs(hypot(*gore.at_m[:2]) - 2 / 3 * radius * cos(half)) for gore in gores)
    return _balance(list(gores))[2], worst


def _g08() -> list[Number]:
    thin = 1.0 - SHELL
    sheet, leant = _conical_shell()
    # A wall of 10⁻⁶ of the size has its own thickness in the answer: 10⁻⁶.
    return [
        Number(centre_m(Hemisphere(1.0))[2], 3 / 8, 1e-7),
        Number(_shell(Hemisphere(1.0), Hemisphere(thin), thin**3), 1 / 2, 2e-6),
        Number(sheet, 1 / 3, 1e-7),
        Number(leant, 0.0, 1e-12),
    ]


def _g09() -> list[Number]:
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
        Number(_balance(plate)[0], 2.7741, 5e-5),
        Number(_balance(plate)[2], 2.0, 1e-12),
        Number(centre_m(corner)[0], 2.2, 1e-12),
        Number(centre_m(corner)[2], 2.2, 1e-12),
        Number(_balance(bars)[0], 2.2, 1e-12),
        Number(_balance(bars)[2], 2.2, 1e-12),
    ]


def _i01() -> list[Number]:
    rod = [Part("rod", 1.0, (0.5, 0.0, 0.0), Rod(1.0))]
    end = inertia_about_kg_m2(rod, (0.0, 0.0, 0.0))[1, 1]
    return [Number(_about(Rod(1.0), 1), 1 / 12, 1e-8), Number(float(end), 1 / 3, 1e-8)]


def _i02() -> list[Number]:
    bar = Cylinder(1.0, 2.0)
    return [
        Number(_about(bar, 0), 1 / 2, 1e-7),
        Number(_about(bar, 1), 1 / 4 + 4 / 12, 1e-5),
        Number(_about(Disc(1.0), 1), 1 / 2, 1e-7),
        Number(_about(Disc(1.0), 0), 1 / 4, 1e-5),
    ]


def _i03() -> list[Number]:
    # A hoop is a tube as thin and as short as can be: both count by their squares, the wall by itself.
    hoop = Cylinder(1.0, 1e-6, 1.0 - 1e-9, "up")
    return [
        Number(_about(hoop, 2), 1.0, 1e-8),
        Number(_about(hoop, 0), 1 / 2, 1e-8),
        Number(_about(Cylinder(1.0, 2.0, 0.5), 0), (0.25 + 1.0) / 2, 1e-7),
    ]


def _i04() -> list[Number]:
    thin = 1.0 - SHELL
    ball = [Part("outer", 1.0, (0, 0, 0), Sphere(1.0)), Part("inner", thin**3, (0, 0, 0), Sphere(thin), cut=True)]
    unit = inertia_about_kg_m2(ball, (0.0, 0.0, 0.0))[1, 1] / moment_sum(ball).mass_kg
    # The wall's own thickness, and the round-off of a difference of a millionth.
    return [Number(_about(Sphere(1.0), 0), 2 / 5, 1e-7), Number(float(unit), 2 / 3, 2e-6)]


def _i05() -> list[Number]:
    return [
        Number(_about(Rectangle(3.0, 2.0), 1), 13 / 12, 1e-7),
        Number(_about(Box((3.0, 0.01, 2.0)), 1), 13 / 12, 1e-7),
    ]


def _u25() -> list[Number]:
    """Rods in a row, each as heavy as Simpson makes its piece, balanced where its own density puts it."""
    low, high, count = 1.0, 4.0, 4000
    edges = np.linspace(0.0, 1.0, count + 1)
    parts = []
    for n, (start, end) in enumerate(pairwise(edges)):
        middle = (start + end) / 2
        mass = (end - start) * (low + (high - low) * middle**2)
        parts.append(Part(f"rod {n}", float(mass), (float(middle), 0.0, 0.0), Rod(float(end - start))))
    return [Number(_balance(parts)[0], 0.75 * (high + low) / (high + 2 * low), 1e-7)]


def _u26() -> list[Number]:
    """A strip's share of the mass is its x, whatever its y; middles of 20 000 leave 1/(4 n²) of the answer."""
    middles = (np.arange(20_000) + 0.5) / 20_000
    places = np.stack([middles, 0.0 * middles, 0.0 * middles], axis=1)
    return [Number(float(balance_point_m(middles, places)[0]), 2 / 3, 1e-8)]


CENTROIDS = (
    CheckValue("G01", "S-42", "seen", _g01),
    CheckValue("G02", "S-42", "seen", _g02),
    CheckValue("G03", "S-42", "seen", _g03),
    CheckValue("G04", "S-42", "seen", _g04),
    CheckValue("G05", "S-42", "seen", _g05),
    CheckValue("G06", "S-42", "seen", _g06),
    CheckValue("G07", "S-42", "seen", _g07),
    CheckValue("G08", "S-42", "memory", _g08),
    CheckValue("G09", "S-42", "ours", _g09),
    CheckValue("I01", "S-04", "seen", _i01),
    CheckValue("I02", "S-04", "seen", _i02),
    CheckValue("I03", "S-04", "seen", _i03),
    CheckValue("I04", "S-04", "seen", _i04),
    CheckValue("I05", "S-04", "seen", _i05),
    CheckValue("U25", "S-17", "seen", _u25),
    CheckValue("U26", "S-17", "seen", _u26),
)
