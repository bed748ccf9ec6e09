"""Solids, plates and whole builds against triangle meshes of trimesh, which integrates over their surfaces."""

from collections.abc import Callable
from math import pi

import numpy as np
import pytest
import shapely
import trimesh
from numpy.typing import NDArray

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
    Shape,
    Sphere,
    Triangle,
    centre_m,
    extent_m,
    flattened,
    inertia_about_kg_m2,
    moment_sum,
    principal_inertia,
    unit_inertia_m2,
)

Floats = NDArray[np.float64]
SECTIONS = 512
# A round solid of 512 flat strips is short of a true one by (2π/512)² / 6 in area and 10⁻⁴ in inertia at most.
ROUND_REL = 1e-4
# A solid with flat sides is the mesh itself: round-off of some hundred triangles.
FLAT_REL = 1e-10
THIN_M = 1e-3

OUTLINE = ((0.0, 0.0), (0.5, -0.1), (0.7, 0.3), (0.3, 0.2), (0.1, 0.5))
HOLES = (((0.2, 0.05), (0.3, 0.05), (0.25, 0.12)), ((0.45, 0.05), (0.55, 0.05), (0.55, 0.15), (0.45, 0.15)))


def revolved(profile: list[tuple[float, float]]) -> trimesh.Trimesh:
    """A solid of revolution about up; profile: (radius, height), from the bottom."""
    return trimesh.creation.revolve(np.array(profile), sections=SECTIONS)


def dome(radius: float) -> list[tuple[float, float]]:
    angles = np.linspace(0.0, pi / 2, SECTIONS // 4)
    return [(0.0, 0.0), *((radius * float(np.cos(a)), radius * float(np.sin(a))) for a in angles)]


def extruded(polygon: shapely.Polygon) -> trimesh.Trimesh:
    """A plate of THIN_M, the polygon's own coordinates along and up, its thickness across."""
    pieces = shapely.constrained_delaunay_triangles(polygon).geoms
    corners = np.array([piece.exterior.coords[:3] for piece in pieces])
    vertices, index = np.unique(corners.reshape(-1, 2), axis=0, return_inverse=True)
    plate = trimesh.creation.extrude_triangulation(vertices, index.reshape(-1, 3), height=THIN_M)
    # x, y, z of the mesh become along, up and minus across, its middle at 0 across.
    plate.apply_transform([[1, 0, 0, 0], [0, 0, -1, THIN_M / 2], [0, 1, 0, 0], [0, 0, 0, 1]])
    return plate


def about_centre(mesh: trimesh.Trimesh) -> Floats:
    """The mesh's inertia per kilogram about its own centre."""
    inertia: Floats = np.array(mesh.moment_inertia) / mesh.volume
    return inertia


def without_thickness(inertia: Floats) -> Floats:
    """A plate's inertia less what its thickness adds: t²/12 about the two axes in it."""
    return inertia - THIN_M**2 / 12 * np.diag([1.0, 0.0, 1.0])


SOLIDS: dict[str, tuple[Shape, Callable[[], trimesh.Trimesh], float]] = {
    "box": (Box((0.3, 0.2, 0.1)), lambda: trimesh.creation.box((0.3, 0.2, 0.1)), FLAT_REL),
    "cylinder": (
        Cylinder(0.1, 0.4, axis="up"),
        lambda: revolved([(0, 0), (0.1, 0), (0.1, 0.4), (0, 0.4)]),
        ROUND_REL,
    ),
    "tube": (
        Cylinder(0.1, 0.4, 0.06, axis="up"),
        lambda: revolved([(0.06, 0), (0.1, 0), (0.1, 0.4), (0.06, 0.4), (0.06, 0)]),
        ROUND_REL,
    ),
    "cone": (Cone(0.1, 0.4, "up"), lambda: revolved([(0, 0), (0.1, 0), (0, 0.4)]), ROUND_REL),
    "sphere": (Sphere(0.2), lambda: trimesh.creation.uv_sphere(0.2, count=[SECTIONS // 2, SECTIONS]), ROUND_REL),
    "hemisphere": (Hemisphere(0.2), lambda: revolved(dome(0.2)), ROUND_REL),
}


@pytest.mark.parametrize("name", SOLIDS)
def test_a_solid_has_the_centre_the_size_and_the_inertia_of_its_mesh(name: str) -> None:
    shape, make, rel = SOLIDS[name]
    mesh = make()
    assert mesh.is_watertight
    size = max(extent_m(shape))
    if isinstance(shape, Cone | Hemisphere):
        assert np.array(mesh.center_mass) == pytest.approx(centre_m(shape), abs=rel * size)
    assert mesh.extents == pytest.approx(extent_m(shape), abs=rel * size)
    assert about_centre(mesh) == pytest.approx(unit_inertia_m2(shape), abs=rel * size**2)


def test_a_polygon_with_holes_has_the_centre_and_inertia_of_a_thin_plate() -> None:
    plate = extruded(shapely.Polygon(OUTLINE, HOLES))
    shape = Polygon(OUTLINE, HOLES)
    assert plate.is_watertight
    assert np.array(plate.center_mass) == pytest.approx(centre_m(shape), abs=FLAT_REL)
    assert without_thickness(about_centre(plate)) == pytest.approx(unit_inertia_m2(shape), abs=FLAT_REL)
    assert plate.volume == pytest.approx(shape.moments.area_m2 * THIN_M, rel=FLAT_REL)


@pytest.mark.parametrize(
    ("shape", "polygon", "tolerance"),
    [
        (Rectangle(0.4, 0.3), shapely.box(-0.2, -0.15, 0.2, 0.15), FLAT_REL),
        (Triangle(OUTLINE[:3]), shapely.Polygon(OUTLINE[:3]), FLAT_REL),
        (Disc(0.2), shapely.Point(0, 0).buffer(0.2, quad_segs=SECTIONS // 4), ROUND_REL),
        (
            HalfDisc(0.2),
            shapely.Polygon([(0.2 * np.cos(a), 0.2 * np.sin(a)) for a in np.linspace(0, pi, SECTIONS // 2)]),
            ROUND_REL,
        ),
    ],
    ids=["rectangle", "triangle", "disc", "half disc"],
)
def test_a_plate_has_the_centre_and_inertia_of_a_thin_one(
    shape: Shape, polygon: shapely.Polygon, tolerance: float
) -> None:
    plate = extruded(polygon)
    assert np.array(plate.center_mass) == pytest.approx(centre_m(shape), abs=tolerance)
    assert without_thickness(about_centre(plate)) == pytest.approx(unit_inertia_m2(shape), abs=tolerance)


def turning(roll: float, pitch: float, yaw: float, at: tuple[float, float, float]) -> Floats:
    """The same turn by trimesh: about axes forward, right, down, which are ours turned half about across."""
    ours = np.diag([-1.0, 1.0, -1.0, 1.0])
    turn: Floats = ours @ trimesh.transformations.euler_matrix(yaw, pitch, roll, axes="rzyx") @ ours
    turn[:3, 3] = at
    return turn


def test_a_build_of_nested_turned_groups_is_the_mesh_of_all_of_them() -> None:
    inner_turn, outer_turn = (0.3, -0.5, 1.1), (-0.7, 0.2, 0.4)
    inner_at, outer_at = (0.2, 0.1, -0.3), (1.0, -2.0, 0.5)
    density = 500.0
    boxes = {"hull": ((0.6, 0.2, 0.1), (0.1, 0.0, 0.0)), "pod": ((0.1, 0.1, 0.3), (-0.2, 0.4, 0.1))}
    plate = extruded(shapely.Polygon(OUTLINE, HOLES))

    parts = [Part(name, density * size[0] * size[1] * size[2], at, Box(size)) for name, (size, at) in boxes.items()]
    fin_shape = Polygon(OUTLINE, HOLES)
    fin = Part("fin", density * plate.volume, centre_m(fin_shape), fin_shape)
    inner = Group(name="inner", members=(parts[1], fin), at_m=inner_at, turn_rad=inner_turn)
    found = flattened([Group(name="outer", members=(parts[0], inner), at_m=outer_at, turn_rad=outer_turn)])

    meshes = []
    for name, (size, at) in boxes.items():
        mesh = trimesh.creation.box(size)
        mesh.apply_translation(at)
        meshes.append((name, mesh))
    meshes.append(("fin", plate))
    for name, mesh in meshes:
        if name != "hull":
            mesh.apply_transform(turning(*inner_turn, inner_at))
        mesh.apply_transform(turning(*outer_turn, outer_at))
    whole = trimesh.util.concatenate([mesh for _, mesh in meshes])
    whole.density = density

    balance = moment_sum(found).balance_point_m
    assert balance == pytest.approx(whole.center_mass, abs=1e-12)
    # The fin's thickness, which ours has not, adds t²/12 per kilogram of it.
    thickness = fin.mass_kg * THIN_M**2 / 12
    assert inertia_about_kg_m2(found, balance) == pytest.approx(whole.moment_inertia, abs=2 * thickness)
    principal = principal_inertia(found)
    assert principal.moments_kg_m2 == pytest.approx(whole.principal_inertia_components, abs=2 * thickness)
    # Each axis is the same line; the mesh's may point the other way.
    for ours, theirs in zip(principal.axes, whole.principal_inertia_vectors, strict=True):
        assert abs(float(np.dot(ours, theirs))) == pytest.approx(1.0, abs=1e-7)


def test_a_cut_out_is_a_mesh_with_a_hollow() -> None:
    block, hollow = trimesh.creation.box((0.4, 0.3, 0.2)), trimesh.creation.box((0.1, 0.1, 0.1))
    hollow.apply_translation((0.1, 0.05, 0.0))
    hollow.invert()
    whole = trimesh.util.concatenate([block, hollow])
    parts = [
        Part("block", 0.4 * 0.3 * 0.2, (0.0, 0.0, 0.0), Box((0.4, 0.3, 0.2))),
        Part("hollow", 0.001, (0.1, 0.05, 0.0), Box((0.1, 0.1, 0.1)), cut=True),
    ]
    balance = moment_sum(parts).balance_point_m
    assert balance == pytest.approx(whole.center_mass, abs=1e-15)
    assert inertia_about_kg_m2(parts, balance) == pytest.approx(whole.moment_inertia, abs=1e-15)
