"""An airframe that is built, as it is to be shown: three views to one scale, with all that its balance point means."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from lab.mechanics import Axis, NeutralPoint, Part, PitchMargin, Standing, SymmetryPlane, Tank, Vector
from lab.scenes.readings import Readings
from lab.scenes.views.body import Body
from lab.scenes.views.projections import FACES, Face
from lab.scenes.views.stage import Panel, fitted, views_stage
from lab.scenes.views.view import Band, BodyView, GhostPart, LineMark, PlaceMark
from lab.screens.benches.airframe.body import room_of
from lab.simulation.benches.airframe import AirframeBench, AirframePart
from lab.ui.geometry import Rect
from lab.ui.look import Look

PART, TANK, REFERENCE = "part-", "tank-", "reference"
AXIS_INDEX: dict[Axis, int] = {"along": 0, "across": 1, "up": 2}
FACE_AXES: dict[Face, tuple[int, int]] = {"side": (0, 2), "top": (0, 1), "front": (1, 2)}
"""Which two axes a face shows: to the right, and upright."""

NO_NAME = "\u200b"
"""What is not on it yet is drawn without a name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BuildView:
    """What is shown.

    neutral, margin, plane, standing: what the balance point means, each None where there is no such thing.
    told: whether numbers and the balance point are shown.  coming: what was taken up from the tray, where it would go.
    laid_for: the picture as it was laid out when something was taken in hand.  room: whether a strip lies below.
    """

    bench: AirframeBench
    look: Look
    readings: Readings
    body: Body
    neutral: NeutralPoint | None = None
    margin: PitchMargin | None = None
    plane: SymmetryPlane | None = None
    standing: Standing | None = None
    picked: str = ""
    told: bool = False
    coming: Part | None = None
    laid_for: BodyView | None = None

    @property
    def picked_part(self) -> AirframePart | None:
        """The part that is picked."""
        return part_of(self.bench, self.picked)

    @property
    def picked_tank(self) -> Tank | None:
        """The tank that is picked."""
        return tank_of(self.bench, self.picked)


def part_of(bench: AirframeBench, key: str) -> AirframePart | None:
    """The part of a key, whichever face it is seen in; None for any other key."""
    wanted = key.partition("@")[0]
    return next((each for each in bench.parts_on if wanted == f"{PART}{each.id}"), None)


def tank_of(bench: AirframeBench, key: str) -> Tank | None:
    """The tank of a key; None for any other key."""
    wanted = key.partition("@")[0]
    return next((tank for number, tank in enumerate(bench.tanks) if wanted == f"{TANK}{number}"), None)


def place_of(bench: AirframeBench, key: str) -> Vector | None:
    """Where a part or a tank is; None for any other key."""
    found = part_of(bench, key) or tank_of(bench, key)
    return None if found is None else found.at_m


def face_of_key(key: str) -> Face | None:
    """The face that a key's thing is seen in."""
    name = key.partition("@")[2]
    return next((face for face in FACES if face == name), None)


def body_view(view: BuildView) -> BodyView:
    """The airframe from its three sides with its marks."""
    bench, say, readings = view.bench, view.look.words.say, view.readings
    at_m = bench.sum.balance_point_m
    balance = neutral = reference = None
    if view.told:
        balance = PlaceMark(at_m=at_m, text=say("CG {place}", place=readings.length_with_unit(at_m[0])))
        index = AXIS_INDEX[bench.axis]
        reference = LineMark(at_m=bench.reference_m[index], text=say("reference line"), axis=bench.axis)
    if view.neutral is not None:
        text = say("neutral point {place}", place=readings.length(view.neutral.at_m))
        neutral = LineMark(at_m=view.neutral.at_m, text=text)
    picked = view.picked_part or view.picked_tank
    found = BodyView(
        body=view.body,
        look=view.look,
        readings=readings,
        faces=FACES,
        labels="names",
        highlighted=frozenset() if picked is None else frozenset({picked.name}),
        picked="" if picked is None else picked.name,
        balance=balance,
        neutral=neutral,
        reference=reference,
        bands=tuple(_bands(view)),
        ghosts=() if view.coming is None else (GhostPart(part=view.coming),),
        symmetry=view.plane is not None,
    )
    return found if view.laid_for is None else replace(found, laid_for=view.laid_for)


def _bands(view: BuildView) -> Iterator[Band]:
    """What is allowed along at the weight that it has, and across."""
    limits, say, readings = view.bench.limits, view.look.words.say, view.readings
    if view.standing is not None:
        for low, high in view.standing.along_spans_m:
            text = say("allowed {low} to {high}", low=readings.short_length(low), high=readings.short_length(high))
            yield Band(low_m=low, high_m=high, text=text)
    if limits is not None and limits.across_m is not None:
        low, high = limits.across_m
        text = say("allowed {low} to {high}", low=readings.short_length(low), high=readings.short_length(high))
        yield Band(low_m=low, high_m=high, text=text, axis="across")


def fitted_view(view: BuildView, room: Rect) -> BodyView:
    """From as many sides as there is room for.  What is allowed across is drawn from the front alone."""
    found = fitted(body_view(view), room)
    if "front" in found.faces:
        return found
    return replace(found, bands=tuple(band for band in found.bands if band.axis != "across"))


def panels_of(view: BuildView, rect: Rect) -> dict[Face, Panel]:
    """The views that the rectangle has room for."""
    room = room_of(view.look, rect)
    return dict(views_stage(fitted_view(view, room), room).panels)
