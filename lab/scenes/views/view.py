"""A moment of a body as it is to be drawn: from which sides, and with which marks."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from lab.mechanics import Axis, Part, Vector
from lab.scenes.readings import Readings
from lab.scenes.views.body import Body
from lab.scenes.views.projections import Face
from lab.ui.look import Look

Labels = Literal["none", "names", "weights"]
Sense = Literal["anticlockwise", "clockwise"]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceMark:
    """The quartered disc at a place of the body, say its balance point.  text: "CG 37.7 cm"; "" for none."""

    at_m: Vector
    text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class LineMark:
    """A line across the body at one place of an axis.

    at_m: where, in metres of that axis.  text: what is written at it.
    """

    at_m: float
    text: str = ""
    axis: Axis = "along"


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """A green stretch of an axis: limits, or where something is to come to lie.  text: "allowed 36 to 40"."""

    low_m: float
    high_m: float
    text: str = ""
    axis: Axis = "along"


@dataclass(frozen=True, slots=True, kw_only=True)
class StandingScale:
    """A scale under the body.

    key: unique among them.  at_m: where the body stands on it.  reading: what its window shows, "?" before.
    name: written below its window; "" for none.  highlighted: the one that is asked about.
    follows: whether its post stays under the body however that is turned; else it stands where the body lay level.
    """

    key: str
    at_m: Vector
    reading: str = "?"
    name: str = ""
    highlighted: bool = False
    follows: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Hanging:
    """The body hangs on a cord from a rail, or is turned about a place.

    at_m: the place that the cord is tied to.  pitch_rad: nose up positive, turns the side view.  roll_rad: right
    wing down positive, turns the front view.  reach_rad: how far it may turn later; the picture keeps room for
    it, so that nothing jumps.  side_rad, front_rad: from where to where it may turn in these faces, anticlockwise as
    seen; None for as far as it reaches, both ways.  plumb: whether a plumb line falls from that place.  cord: whether
    it hangs at all; else it is only turned about that place, as a push does in flight, or scales of unlike heights do.
    shift_m: how far that place itself has gone from where the body lay.
    """

    at_m: Vector
    pitch_rad: float = 0.0
    roll_rad: float = 0.0
    reach_rad: float = 0.0
    side_rad: tuple[float, float] | None = None
    front_rad: tuple[float, float] | None = None
    plumb: bool = False
    cord: bool = True
    shift_m: Vector = (0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class GhostPart:
    """A part where it is not: where it was, or where it goes.

    part: as it would be there.  look: its hint, "" for none.  text: written at it.  to_m, from_m: an arrow from
    the ghost to there, or from there to the ghost; None for none.
    """

    part: Part
    look: str = ""
    text: str = ""
    to_m: Vector | None = None
    from_m: Vector | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TurningArrow:
    """Which way the body turns, as seen in a face, in the colour of that sense.  text: written at it."""

    face: Face
    sense: Sense
    text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class BodyView:
    """A moment of a body as it is to be drawn.

    faces: from where it is seen, in any choice: ("side",), ("side", "top"), ("side", "top", "front"), ("front",).
    labels: what is written at parts.  highlighted: names of the parts that decide.  picked: the part, or "told",
    that is being dragged.
    balance: the balance point; before: a fainter one, where it was.  told: the learner's marker.  neutral: the
    neutral point, dotted.  reference: what arms are measured from, dash and dot.  bands: below the body.
    ruler: the axis that a ruler below the body measures; None for none.  scales, hanging: what holds the body.
    pencil: lines drawn on the body itself, each by two places.  ghosts: parts that are elsewhere.
    symmetry: whether the plane of symmetry is drawn in the top and front views.
    laid_for: the view that the picture is laid out for, with every mark that is still to come; None for this one: so
    nothing changes its place while a mark comes or goes.
    covered_px: how much of the picture's top lies under something else.
    """

    body: Body
    look: Look
    readings: Readings
    faces: tuple[Face, ...] = ("side",)
    labels: Labels = "weights"
    highlighted: frozenset[str] = frozenset()
    picked: str = ""
    balance: PlaceMark | None = None
    before: PlaceMark | None = None
    told: LineMark | None = None
    neutral: LineMark | None = None
    reference: LineMark | None = None
    bands: tuple[Band, ...] = ()
    ruler: Axis | None = None
    scales: tuple[StandingScale, ...] = ()
    hanging: Hanging | None = None
    turning: TurningArrow | None = None
    pencil: tuple[tuple[Vector, Vector], ...] = ()
    ghosts: tuple[GhostPart, ...] = ()
    symmetry: bool = True
    laid_for: BodyView | None = None
    covered_px: float = 0.0
