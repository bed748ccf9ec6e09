"""What there is to draw of a body: each part, surface and tank with its outline in every face, in metres."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from lab.mechanics import (
    Box,
    Cone,
    Cylinder,
    Disc,
    HalfDisc,
    Hemisphere,
    Part,
    Point,
    Polygon,
    Rectangle,
    Rod,
    Sphere,
    Surface,
    Tank,
    Triangle,
    Turned,
    Vector,
    extent_m,
)
from lab.scenes.finger_parts import FLAT_RING
from lab.scenes.views.airframe_outlines import fuselage_m, surface_m
from lab.scenes.views.body import Body
from lab.scenes.views.projections import FACES, Face, Flat, flat_m
from lab.scenes.views.solids import Rings, silhouette_m

THIN_SHARE = 0.012
"""How thick a rod or a sheet's edge is drawn, as a share of the body's size."""

ROD_SHARE = 0.02
"""How thick a rod is drawn at most, as a share of its own length."""

# How large a part is drawn whose shape the build leaves open: along, across, up, as shares of the body's size.
_DRAWN_SHARE: Mapping[str, Vector] = {
    "hook": (0.10, 0.03, 0.13), "blade": (0.24, 0.03, 0.09), "ring": (0.20, 0.20, 0.07),
    "camera": (0.075, 0.06, 0.055), "box": (0.11, 0.10, 0.12), "pole": (0.10, 0.03, 0.03),
    "fuselage": (0.70, 0.08, 0.08), "wing": (0.20, 0.80, 0.02), "tail": (0.10, 0.24, 0.012),
    "fin": (0.08, 0.012, 0.10), "motor": (0.06, 0.045, 0.045), "propeller": (0.014, 0.22, 0.22),
    "battery": (0.08, 0.05, 0.045), "tank": (0.09, 0.06, 0.05), "sail": (0.5, 0.5, 0.01),
    "plate": (0.16, 0.10, 0.012),
}  # fmt: skip
SURFACE_LOOKS = frozenset({"wing", "tail", "fin"})
_LIGHT_SHARE, _HEAVY_SHARE = 0.022, 0.052
_CORD_SHARE = 0.05
_FUSELAGE_THICK = 0.075
"""Of its length: how thick a fuselage is drawn that is stated as a rod."""

_LAYERS = {"wing": 1, "tail": 1, "fin": 1, "sail": 0, "boom": 1, "fuselage": 2, "pole": 3, "bar": 3}


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """One thing as it is drawn.

    key: unique in its body.  name: of the part, surface or tank.  look: which picture it gets.
    patches: in each face, its outlines (each with its holes), farther ones first.  at_m: its place.
    mass_kg: 0 for a surface.  cut: it takes mass away.  level: how full a tank is, 0 to 1; None for no tank.
    hung: on a cord below its place; its patches then lie about (0, 0), the upper end of what hangs.
    """

    key: str
    name: str
    look: str
    patches: Mapping[Face, tuple[Rings, ...]]
    at_m: Vector
    mass_kg: float = 0.0
    cut: bool = False
    level: float | None = None
    hung: bool = False

    @property
    def layer(self) -> int:
        """What lies under what, whatever is nearer: one can look into a fuselage."""
        return _LAYERS.get(self.look, 4)


@lru_cache(maxsize=128)
def things_of(body: Body) -> tuple[Thing, ...]:
    """Everything to draw, surfaces first, then parts, then tanks."""
    size = size_m(body)
    tank_names = {tank.name for tank in body.tanks}
    parts = [part for part in body.parts if part.name not in tank_names]
    drawn = [part for part in parts if surface_of(body, part) is None]
    heaviest = max((part.mass_kg for part in body.parts), default=1.0)
    things = [_surface_thing(surface) for surface in body.surfaces]
    fuselage = _fuselage_name(body, drawn)
    for part in drawn:
        look = _hint(body, part) or ("fuselage" if part.name == fuselage else _look_by_shape(body, part))
        things.append(part_thing(part, look, size_m=size, share=part.mass_kg / heaviest, bar_m=_bar_m(body, part)))
    things += [_tank_thing(tank, size) for tank in body.tanks]
    boom = _boom(body, things, size)
    return tuple(things) if boom is None else (boom, *things)


def called(name: str) -> str:
    """What a part in a group is called by itself."""
    return name.rsplit("/", 1)[-1]


def surface_of(body: Body, part: Part) -> Surface | None:
    """The surface that a part is drawn as: the one called the same, or the nearest of its kind; None for none."""
    for surface in body.surfaces:
        if surface.name == called(part.name):
            return surface
    look = body.looks.get(part.name, "")
    if look not in SURFACE_LOOKS:
        return None
    kind = [surface for surface in body.surfaces if surface.vertical == (look == "fin")]
    return min(kind, key=lambda surface: abs(surface.at_m[0] - part.at_m[0]), default=None)


@lru_cache(maxsize=128)
def size_m(body: Body) -> float:
    """The longest way through a body along any axis, m; above 0."""
    lows, highs = [], []
    for part in body.parts:
        reach = [side / 2.0 for side in extent_m(part.shape)]
        lows.append([at - half for at, half in zip(part.at_m, reach, strict=True)])
        highs.append([at + half for at, half in zip(part.at_m, reach, strict=True)])
    for surface in body.surfaces:
        x, y, z = surface.at_m
        half = 0.0 if surface.vertical else surface.half_span_m
        lows.append([x, y - half, z])
        highs.append([x + surface.root_chord_m, y + half, z + (surface.span_m if surface.vertical else 0.0)])
    spans = [max(high) - min(low) for low, high in zip(zip(*lows, strict=True), zip(*highs, strict=True), strict=True)]
    return float(max(*spans, 1e-3))


def part_thing(part: Part, look: str, *, size_m: float, share: float = 1.0, bar_m: float = 0.0) -> Thing:
    """A part as it is drawn.

    look: its hint; "" to go by its shape.  size_m: of the body.  share: its mass of the heaviest part's.
    bar_m: how high a bar is drawn; 0 for what is no bar.
    """
    look = look or _bare_look(part)
    hung = part.hold == "hung"
    centre = (0.0, 0.0, 0.0) if hung else part.at_m
    patches = {face: _part_patches(part, look, face, centre, size_m=size_m, share=share, bar_m=bar_m) for face in FACES}
    if hung:
        patches = {face: _lowered(found, size_m) for face, found in patches.items()}
    return Thing(
        key=f"part:{part.name}", name=part.name, look=look, patches=patches, at_m=part.at_m,
        mass_kg=part.mass_kg, cut=part.cut, hung=hung,
    )  # fmt: skip


def _part_patches(
    part: Part, look: str, face: Face, centre_m: Vector, *, size_m: float, share: float, bar_m: float
) -> tuple[Rings, ...]:
    shape = part.shape
    if look == "fuselage":
        return (fuselage_m(face, centre_m, _fuselage_size_m(part, size_m)),)
    if isinstance(shape, Point):
        side = size_m * max(_LIGHT_SHARE, _HEAVY_SHARE * share ** (1 / 3))
        drawn = _DRAWN_SHARE.get(look)
        shape = Box((side, side, side) if drawn is None else (drawn[0] * size_m, drawn[1] * size_m, drawn[2] * size_m))
    thin = bar_m or min(THIN_SHARE * size_m, ROD_SHARE * max(extent_m(shape)))
    rings = silhouette_m(shape, face, thin_m=thin)
    if look == "ring" and face == "side":
        rings = _opened(rings)
    right, up = flat_m(face, centre_m)
    return (tuple(tuple((right + x, up + y) for x, y in ring) for ring in rings),)


def _opened(rings: Rings) -> Rings:
    """A hoop that lies flat would be a stick from straight beside it; it is drawn as if seen a little from above."""
    xs, ys = zip(*rings[0], strict=True)
    wide, high = max(xs) - min(xs), max(ys) - min(ys)
    half = max(high, FLAT_RING * wide) / 2.0
    return (((min(xs), -half), (max(xs), -half), (max(xs), half), (min(xs), half)),)


def _fuselage_size_m(part: Part, size_m: float) -> Vector:
    along, across, up = extent_m(part.shape)
    along = along or _DRAWN_SHARE["fuselage"][0] * size_m
    thick = _FUSELAGE_THICK * along
    return along, across or thick, up or thick


def _lowered(patches: tuple[Rings, ...], size_m: float) -> tuple[Rings, ...]:
    """So that its upper end hangs a cord's length below (0, 0)."""
    top = max(y for rings in patches for ring in rings for _, y in ring)
    drop = top + _CORD_SHARE * size_m
    return tuple(tuple(tuple((x, y - drop) for x, y in ring) for ring in rings) for rings in patches)


def _bar_m(body: Body, part: Part) -> float:
    return body.bar_depth_m if part.name == body.bar_name else 0.0


def _fuselage_name(body: Body, parts: list[Part]) -> str:
    """Of a body with surfaces, the longest part that nothing says how to draw."""
    if not body.surfaces or "fuselage" in body.looks.values():
        return ""
    long = [part for part in parts if part.name not in body.looks and isinstance(part.shape, Rod | Cylinder | Box)]
    best = max(long, key=lambda part: extent_m(part.shape)[0], default=None)
    if best is None or extent_m(best.shape)[0] < max(extent_m(best.shape)[1:]):
        return ""
    return best.name


def _hint(body: Body, part: Part) -> str:
    """The look that its build gives; a box on board of what flies is no nest box."""
    look = body.looks.get(part.name, "")
    return "battery" if look == "box" and body.surfaces else look


def _look_by_shape(body: Body, part: Part) -> str:
    return "bar" if part.name == body.bar_name else _bare_look(part)


def _bare_look(part: Part) -> str:
    shape = part.shape
    while isinstance(shape, Turned):
        shape = shape.shape
    match shape:
        case Point():
            return "weight"
        case Rod():
            return "spar"
        case Box():
            return "block"
        case Polygon() | Triangle() | Rectangle() | Disc() | HalfDisc():
            return "board"
        case Sphere() | Cone() | Cylinder() | Hemisphere():
            return "metal"


def _surface_thing(surface: Surface) -> Thing:
    patches = {face: surface_m(surface, face) for face in FACES}
    look = "fin" if surface.vertical else "wing"
    return Thing(key=f"surface:{surface.name}", name=surface.name, look=look, patches=patches, at_m=surface.at_m)


def _tank_thing(tank: Tank, size: float) -> Thing:
    """A vessel half as long again as wide, of the tank's capacity."""
    wide = max((tank.capacity_m3 / 1.2) ** (1 / 3), 0.035 * size)
    shape = Box((1.5 * wide, wide, 0.8 * wide))
    patches = {}
    for face in FACES:
        right, up = flat_m(face, tank.at_m)
        rings = silhouette_m(shape, face, thin_m=wide)
        patches[face] = (tuple(tuple((right + x, up + y) for x, y in ring) for ring in rings),)
    return Thing(
        key=f"tank:{tank.name}", name=tank.name, look="tank", patches=patches, at_m=tank.at_m,
        mass_kg=tank.mass_kg, level=tank.contents_m3 / tank.capacity_m3,
    )  # fmt: skip


def _boom(body: Body, things: list[Thing], size: float) -> Thing | None:
    """From a fuselage's tail end to a tail that stands behind it; None where none does."""
    hull = next((thing for thing in things if thing.look == "fuselage"), None)
    if hull is None:
        return None
    end, up = max(_places(hull, "side"), key=lambda place: place[0])
    middle = flat_m("top", hull.at_m)[1]
    behind = [surface for surface in body.surfaces if surface.at_m[0] + 0.5 * surface.root_chord_m > end]
    if not behind:
        return None
    last = max(behind, key=lambda surface: surface.at_m[0] + 0.6 * surface.root_chord_m)
    goal = last.at_m[0] + 0.6 * last.root_chord_m
    up = flat_m("side", hull.at_m)[1]
    half, start = 0.5 * THIN_SHARE * size, end - 0.1 * (goal - end)
    high = last.at_m[2] - half
    beside = ((start, up - half), (goal, high - half), (goal, high + half), (start, up + half))
    above = ((start, middle - half), (goal, middle - half), (goal, middle + half), (start, middle + half))
    patches: dict[Face, tuple[Rings, ...]] = {"side": ((beside,),), "top": ((above,),), "front": ()}
    return Thing(key="boom", name="", look="boom", patches=patches, at_m=hull.at_m)


def _places(thing: Thing, face: Face) -> Iterator[Flat]:
    for rings in thing.patches[face]:
        yield from rings[0]


def places_m(thing: Thing, face: Face) -> Iterator[Flat]:
    """Every corner of a thing's outlines in a face; of what hangs, as it hangs from its place."""
    right, up = flat_m(face, thing.at_m) if thing.hung else (0.0, 0.0)
    for x, y in _places(thing, face):
        yield right + x, up + y
