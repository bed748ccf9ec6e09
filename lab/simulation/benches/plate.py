"""The plate: any outline cut from a sheet, hung by a pin through it, that swings to rest under its balance point."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal

from lab.files import View
from lab.mechanics import (
    MechanicsError,
    MomentSum,
    Part,
    Pivot,
    Pivoted,
    PlumbLine,
    Polygon,
    Swing,
    Triangle,
    Turn,
    Vector,
    moment_sum,
    pivoted,
    plumb_crossing,
    swing_tick,
    turn_about,
)
from lab.simulation.benches.hanging_bar import REST_RAD, Hung, settling_damping_kg_m2_s
from lab.simulation.benches.plate_rings import Corner, Ring, triangles_of
from lab.simulation.clock import TICK_S
from lab.simulation.commands import Side

RAIL_OVERHANG = 0.08
"""How far the reference line may go beyond the plate on each side, as a share of its width."""

HALF_TURN = math.pi
"""A plate on a pin turns freely: its stop is where none is reached, half a turn from straight down."""

HELD = Swing()
"""Held as it was cut, not yet let go."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PencilLine:
    """A plumb line drawn on the plate. through_m: the pin, along and up.  down: its direction, of length one."""

    through_m: Corner
    down: Corner


@dataclass(frozen=True, slots=True, kw_only=True)
class Fall:
    """What decides the motion, worked out once when the plate is let go, since it then stays the same.

    body: as the pin feels it, in axes that hang plumb: its lever is nought.  pivot: with the damping that is used.
    rest_rad: the plate's tilt when its balance point is straight below the pin, anticlockwise positive.
    """

    body: Pivoted
    pivot: Pivot
    rest_rad: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """One row of the sum over triangles. kind, number: which.  ring: its corners; none of a clipped weight's."""

    kind: Literal["triangle", "hole", "clip"]
    number: int
    ring: Ring
    part: Part

    @property
    def key(self) -> str:
        """Its name among the rows."""
        return f"{self.kind}-{self.number}"


@dataclass(frozen=True, slots=True, kw_only=True)
class HungPlate:
    """The whole state of the bench.

    outline_m, holes_m: corners along and up, in the plate's own coordinates, to the nanometre.
    area_kg_m2: what a square metre of the sheet weighs.  clips: small weights on it.  pivot: the pin it hangs by.
    lines: plumb lines drawn so far.  reference_m: where arms along are measured from.  held: as it was cut.
    swing: its angle is the plate's tilt less the tilt of its rest; meaningless while held.  fall: None while held.
    next_id: the id of the next weight to be clipped on.  The doubts and names are the plate's own.
    """

    name: str = "plate"
    outline_m: Ring
    holes_m: tuple[Ring, ...] = ()
    across_m: float = 0.0
    area_kg_m2: float
    clips: tuple[Hung, ...] = ()
    pivot: Pivot
    lines: tuple[PencilLine, ...] = ()
    reference_m: float = 0.0
    guess: Side | None = None
    held: bool = True
    swing: Swing = HELD
    fall: Fall | None = None
    mass_doubt_kg: float = 0.0
    at_doubt_m: Vector = (0.0, 0.0, 0.0)
    set_name: str | None = None
    look: str | None = None
    title: str = "Plate"
    units: str = "g-cm"
    view: View = "plain"
    next_id: int = 1

    @property
    def ids(self) -> tuple[int, ...]:
        """Those of the weights that are clipped on, in order."""
        return tuple(clip.id for clip in self.clips)

    @property
    def names(self) -> tuple[str, ...]:
        """What all is called: the weights in order, then the plate."""
        return (*(clip.name for clip in self.clips), self.name)

    def called(self, names: tuple[str, ...]) -> HungPlate:
        """The same with other names."""
        *clips, plate = names
        named = tuple(replace(clip, name=name) for clip, name in zip(self.clips, clips, strict=True))
        return replace(self, clips=named, name=plate)

    @property
    def rings_m(self) -> tuple[Ring, ...]:
        """The outline and then the holes."""
        return (self.outline_m, *self.holes_m)

    @property
    def shape(self) -> Polygon:
        """The plate without its weights."""
        return _polygon(self.outline_m, self.holes_m)

    @property
    def parts(self) -> tuple[Part, ...]:
        """Everything that weighs something, the plate first."""
        shape = self.shape
        along_m, _, up_m = shape.centre_m
        plate = Part(
            name=self.name,
            mass_kg=shape.moments.area_m2 * self.area_kg_m2,
            at_m=(along_m, self.across_m, up_m),
            shape=shape,
            mass_doubt_kg=self.mass_doubt_kg,
            at_doubt_m=self.at_doubt_m,
            set_name=self.set_name,
        )
        return (plate, *(clip.part for clip in self.clips))

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """The plate as triangles, less its holes, and the weights on it."""
        return _pieces(self.rings_m, self.clips, self.area_kg_m2, self.across_m)

    @property
    def sum(self) -> MomentSum:
        """The moment sum about the reference line, the plate's row first."""
        return moment_sum(self.parts, (self.reference_m, 0.0, 0.0))

    @property
    def sum_of_pieces(self) -> MomentSum:
        """The same from triangles, holes and weights; a row each, named by the piece's key."""
        return moment_sum((piece.part for piece in self.pieces), (self.reference_m, 0.0, 0.0))

    @property
    def turn(self) -> Turn:
        """How strongly it turns about the pin, and which side that makes drop."""
        return turn_about(self.parts, self.pivot)

    @property
    def outcome(self) -> Side | None:
        """Which side dropped, or ``level`` where it stays; None until it has been let go and hangs still."""
        return None if self.held or not self.swing.settled else self.turn.goes

    @property
    def moving(self) -> bool:
        """Whether the next tick changes anything."""
        return not self.held and not self.swing.settled

    @property
    def angle_rad(self) -> float:
        """The plate's tilt now, anticlockwise positive."""
        if self.held:
            return 0.0
        return (self.fall.rest_rad if self.fall else 0.0) + self.swing.angle_rad

    @property
    def rail_m(self) -> tuple[float, float]:
        """Where the reference line may be, along."""
        places = [corner[0] for corner in self.outline_m]
        left_m, right_m = min(places), max(places)
        overhang_m = RAIL_OVERHANG * (right_m - left_m)
        return left_m - overhang_m, right_m + overhang_m

    @property
    def crossing_m(self) -> Corner | None:
        """Where the plumb lines cross, along and up; None with fewer than two, or all the same way."""
        return _crossing(self.lines)

    def clip(self, id: int) -> Hung | None:  # noqa: A002 - the field's own name
        """The weight with this id, or None where it is no longer on the plate."""
        return next((clip for clip in self.clips if clip.id == id), None)

    def touched(self) -> HungPlate:
        """Held, with what was guessed or drawn about it before forgotten."""
        return replace(self.stilled(), guess=None, lines=())

    def stilled(self) -> HungPlate:
        """The plate held as it was cut."""
        return self if self.held else replace(self, held=True, swing=HELD, fall=None)

    def released(self) -> HungPlate:
        """The plate just let go. One whose balance point is at the pin, or plumb with it, stays as it is."""
        if not self.held:
            return self
        fall = _fall(self.parts, self.pivot)
        if fall is None:
            return replace(self, held=False, swing=Swing(settled=True))
        return replace(self, held=False, swing=Swing(angle_rad=-fall.rest_rad), fall=fall)

    def ticked(self) -> HungPlate:
        """The plate one tick later."""
        if not self.moving or self.fall is None:
            return self
        swing = swing_tick(self.fall.body, self.fall.pivot, self.swing, TICK_S)
        if abs(swing.angle_rad) < REST_RAD and abs(swing.rate_rad_s) < REST_RAD:
            swing = Swing(settled=True)
        return replace(self, swing=swing)

    def at_end(self) -> HungPlate:
        """The plate where it comes to rest in the end, however long it would take to get there."""
        return replace(self, swing=Swing(settled=True)) if self.moving else self


@lru_cache(maxsize=32)
def _pieces(rings: tuple[Ring, ...], clips: tuple[Hung, ...], area_kg_m2: float, across_m: float) -> tuple[Piece, ...]:
    """While a plate swings its pieces are asked for at every frame, and are the same."""

    def cut_out(kind: Literal["triangle", "hole"], number: int, ring: Ring) -> Piece:
        shape = Triangle(ring) if kind == "triangle" else _polygon(ring, ())
        along_m, _, up_m = shape.centre_m
        part = Part(
            name=f"{kind}-{number}",
            mass_kg=shape.moments.area_m2 * area_kg_m2,
            at_m=(along_m, across_m, up_m),
            shape=shape,
            cut=kind == "hole",
        )
        return Piece(kind=kind, number=number, ring=ring, part=part)

    triangles = (cut_out("triangle", number, ring) for number, ring in enumerate(triangles_of(rings[0]), start=1))
    holes = (cut_out("hole", number, ring) for number, ring in enumerate(rings[1:], start=1))
    loads = (
        Piece(kind="clip", number=clip.id, ring=(), part=replace(clip.part, name=f"clip-{clip.id}")) for clip in clips
    )
    return (*triangles, *holes, *loads)


@lru_cache(maxsize=256)
def _polygon(outline_m: Ring, holes_m: tuple[Ring, ...]) -> Polygon:
    return Polygon(outline_m, holes_m)


@lru_cache(maxsize=64)
def _crossing(lines: tuple[PencilLine, ...]) -> Corner | None:
    plumb = [
        PlumbLine(through_m=(line.through_m[0], 0.0, line.through_m[1]), down=(line.down[0], 0.0, line.down[1]))
        for line in lines
    ]
    try:
        at = plumb_crossing(plumb).at_m
    except MechanicsError:
        return None
    return at[0], at[2]


def _fall(parts: tuple[Part, ...], pivot: Pivot) -> Fall | None:
    """How it will move; None where nothing turns it."""
    as_cut = pivoted(parts, pivot)
    if as_cut.lever_kg_m == 0.0 or as_cut.inertia_kg_m2 <= 0.0:
        return None
    body = Pivoted(
        inertia_kg_m2=as_cut.inertia_kg_m2,
        mass_kg=as_cut.mass_kg,
        lever_kg_m=0.0,
        drop_kg_m=math.hypot(as_cut.lever_kg_m, as_cut.drop_kg_m),
    )
    damping = pivot.damping_kg_m2_s or settling_damping_kg_m2_s(body)
    return Fall(
        body=body,
        pivot=replace(pivot, stop_rad=HALF_TURN, damping_kg_m2_s=damping),
        rest_rad=math.atan2(-as_cut.lever_kg_m, as_cut.drop_kg_m),
    )
