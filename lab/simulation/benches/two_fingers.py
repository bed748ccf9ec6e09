"""Two fingers under a body, slid together: which one slips, which one sticks, and where they meet.

Places are on the body, in its own coordinates: a finger that sticks stays where it is, and the other comes nearer
at the pace of both hands. A body whose balance point is not between the fingers tips off the nearer one.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from lab.files import Bar, View
from lab.mechanics import (
    FingerForces,
    FingerLeg,
    FingerSlide,
    FingerTips,
    Friction,
    MomentSum,
    PadBody,
    PadMotion,
    Part,
    extent_m,
    moment_sum,
    pad_body,
    pad_tick,
    two_finger_slide,
    two_support_reactions_n,
)
from lab.simulation.benches.finger import FLOOR_DROP
from lab.simulation.clock import TICK_S
from lab.simulation.commands import Side
from lab.simulation.two_finger_commands import Finger

CLOSING_M_S = 0.15
"""How fast the hands come together, m/s: slow enough to see each change, and a broom is through in ten seconds."""

TOUCH_SHARE = 0.04
"""How far apart the fingers' middles are when they touch, as a share of the body's length. On a bar of half a metre
that is a real finger; on a longer body it is drawn, and stops, as if it were thicker."""

NEAREST_SHARE = 0.08
"""How near each other hands can put the fingers, as a share of the body's length: there is a way to slide left."""

DRY, SOAPY = Friction(0.5, 0.35), Friction(0.2, 0.12)
"""A dry fingertip and a soapy one under varnished wood: round numbers of common practice."""

LYING = PadMotion()
"""Lying level on both fingers."""

_EDGE_M = 1e-9
"""A part that reaches this far over the end of what it sits on ends there: sums of lengths miss by round-off."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A part of the body. id: unlike any other ever on this bench.  look: how to draw it."""

    id: int
    part: Part
    look: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Tipping:
    """A body on its way off the finger that it turns about.

    goes: the end that drops.  beyond_m: how far past that finger its balance point is.
    still: whether it hangs there and has come to rest.
    """

    goes: Side
    over: Finger
    beyond_m: float
    body: PadBody
    still: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class TwoFingers:
    """The whole state of the bench.

    bar: what the pieces sit on; None for a tool that is all pieces.  underside_m: height of the face on the fingers.
    fingers_m: where hands have put the left and the right finger.  left, right: their frictions.
    guess: which finger slips first, ``level`` for both alike.  meeting_guess_m: where they will meet.
    held: the body still hangs on its cords.  slide, gap_m: the whole way in, and how far apart the fingers are on it;
    None while held and where the body tips.  stopped: the hands stand still on the way.
    """

    bar: Bar | None = None
    pieces: tuple[Piece, ...] = ()
    underside_m: float
    fingers_m: tuple[float, float]
    left: Friction = DRY
    right: Friction = DRY
    reference_m: float = 0.0
    guess: Side | None = None
    meeting_guess_m: float | None = None
    held: bool = True
    slide: FingerSlide | None = None
    gap_m: float = 0.0
    stopped: bool = False
    tipping: Tipping | None = None
    motion: PadMotion = LYING
    title: str = "Two fingers"
    units: str = "g-cm"
    view: View = "plain"
    next_id: int = 1

    @property
    def parts(self) -> tuple[Part, ...]:
        """Everything that weighs something, the bar first."""
        pieces = tuple(piece.part for piece in self.pieces)
        return pieces if self.bar is None else (self.bar.as_part(), *pieces)

    @property
    def sum(self) -> MomentSum:
        """The moment sum about the reference line, the bar's row first."""
        return moment_sum(self.parts, (self.reference_m, 0.0, 0.0))

    @property
    def outcome(self) -> Side | None:
        """Which finger slipped first, ``level`` where both were alike; None until they touch, or where it tips."""
        if self.slide is None or self.moving or self.stopped:
            return None
        first = self.slide.legs[0].mover
        return "level" if self.slide.tied or first == "both" else first

    @property
    def moving(self) -> bool:
        """Whether the next tick changes anything."""
        if self.tipping is not None:
            return self.motion.phase != "down" and not self.tipping.still
        return self.slide is not None and not self.stopped and self.gap_m > self.slide.legs[-1].gap_m[1]

    @property
    def beam_m(self) -> tuple[float, float]:
        """From where to where the bar reaches, or the tool's longest part: weights sit on that."""
        if self.bar is not None:
            return self.bar.left_m, self.bar.right_m
        return span_of_m(self._longest)

    @property
    def span_m(self) -> tuple[float, float]:
        """From the left end of everything to its right end."""
        spans = [span_of_m(part) for part in self.parts if not part.cut]
        return min(left for left, _ in spans), max(right for _, right in spans)

    @property
    def rail_m(self) -> tuple[float, float]:
        """Where the fingers and the reference line may be, along: under the body."""
        return self.span_m

    @property
    def floor_m(self) -> float:
        """The height of the floor."""
        left_m, right_m = self.span_m
        lowest_m = min(part.at_m[2] - extent_m(part.shape)[2] / 2 for part in self.parts)
        return min(self.underside_m, lowest_m) - FLOOR_DROP * (right_m - left_m)

    @property
    def top_m(self) -> float:
        """The height of the face that weights stand on."""
        middle_m = 0.0 if self.bar is not None else self._longest.at_m[2]
        return 2.0 * middle_m - self.underside_m

    @property
    def touch_m(self) -> float:
        """How far apart the fingers' middles are when they touch."""
        left_m, right_m = self.span_m
        return TOUCH_SHARE * (right_m - left_m)

    @property
    def places_m(self) -> tuple[float, float]:
        """Where the fingers are now."""
        return self.fingers_m if self.slide is None else self.slide.places_m(self.gap_m)

    @property
    def leg(self) -> FingerLeg | None:
        """The part of the way that the fingers are on; None where they are on none."""
        if self.slide is None:
            return None
        return next((leg for leg in self.slide.legs if self.gap_m > leg.gap_m[1]), self.slide.legs[-1])

    @property
    def forces(self) -> FingerForces | None:
        """What the fingers feel on their way; None where they are on none."""
        return None if self.slide is None else self.slide.forces_at(self.gap_m)

    @property
    def loads_n(self) -> tuple[float, float] | None:
        """What each finger carries, N, or would if the body lay on them; None where it tips."""
        return two_support_reactions_n(self.parts, *self.places_m)

    @property
    def ids(self) -> tuple[int, ...]:
        """Those of the pieces, in order."""
        return tuple(piece.id for piece in self.pieces)

    @property
    def names(self) -> tuple[str, ...]:
        """What all is called: the pieces in order, then the bar."""
        names = tuple(piece.part.name for piece in self.pieces)
        return names if self.bar is None else (*names, self.bar.name)

    def called(self, names: tuple[str, ...]) -> TwoFingers:
        """The same with other names of the pieces."""
        pieces = zip(self.pieces, names[: len(self.pieces)], strict=True)
        named = tuple(replace(piece, part=replace(piece.part, name=name)) for piece, name in pieces)
        return replace(self, pieces=named)

    def piece(self, id: int) -> Piece | None:  # noqa: A002 - the field's own name
        """The piece with this id, or None where it is no longer there."""
        return next((piece for piece in self.pieces if piece.id == id), None)

    def is_loose(self, piece: Piece) -> bool:
        """Whether a piece can be moved and taken off: it sits on the beam, and is not the beam or its end."""
        if piece.part.cut or (self.bar is None and piece.part is self._longest):
            return False
        left_m, right_m = span_of_m(piece.part)
        return self.beam_m[0] - _EDGE_M <= left_m and right_m <= self.beam_m[1] + _EDGE_M

    def stilled(self) -> TwoFingers:
        """The fingers back where hands had put them, the body held."""
        if self.held:
            return self
        return replace(self, held=True, slide=None, gap_m=0.0, stopped=False, tipping=None, motion=LYING)

    def stilled_here(self) -> TwoFingers:
        """The fingers stopped on their way; as it is where they slide no more."""
        return replace(self, stopped=True) if self.moving and self.slide is not None else self

    def released(self) -> TwoFingers:
        """The body just let down on the fingers, and the hands coming together; on from where they were stopped."""
        if not self.held and not self.stopped:
            return self
        way = two_finger_slide(self.parts, *self.places_m, left=self.left, right=self.right, touch_m=self.touch_m)
        if isinstance(way, FingerTips):
            return self._tipped(way)
        gap_m = way.legs[0].gap_m[0]
        if self.slide is not None:
            way = replace(way, legs=(*_gone(self.slide, gap_m), *way.legs), tied=self.slide.tied)
        return replace(self, held=False, stopped=False, slide=way, gap_m=gap_m)

    def ticked(self) -> TwoFingers:
        """The bench one tick later."""
        if not self.moving:
            return self
        if self.tipping is not None:
            return self._ticked_off(self.tipping)
        return replace(self, gap_m=max(self.gap_m - CLOSING_M_S * TICK_S, self._end_m))

    def at_end(self) -> TwoFingers:
        """The fingers together; a body that tips called down where it is, since it hardly moves any more."""
        if not self.moving:
            return self
        if self.tipping is None:
            return replace(self, gap_m=self._end_m)
        return replace(self, motion=replace(self.motion, phase="down", rate_rad_s=0.0, vx_m_s=0.0, vz_m_s=0.0))

    @property
    def _longest(self) -> Part:
        return max(
            (piece.part for piece in self.pieces if not piece.part.cut), key=lambda part: extent_m(part.shape)[0]
        )

    @property
    def _end_m(self) -> float:
        """How far apart the fingers are in the end."""
        return self.gap_m if self.slide is None else self.slide.legs[-1].gap_m[1]

    def _tipped(self, tips: FingerTips) -> TwoFingers:
        left_m, right_m = self.span_m
        body = pad_body(self.parts, underside_m=self.underside_m, left_m=left_m, right_m=right_m)
        tipping = Tipping(goes=tips.goes, over=tips.over, beyond_m=tips.beyond_m, body=body)
        return replace(self, held=False, tipping=tipping, motion=LYING)

    def _ticked_off(self, tipping: Tipping) -> TwoFingers:
        at_m = self.fingers_m[0 if tipping.over == "left" else 1]
        motion = pad_tick(tipping.body, at_m, 0.0, self.floor_m, self.motion, TICK_S)
        if motion is self.motion:  # it hangs on the finger and stays
            return replace(self, tipping=replace(tipping, still=True))
        return replace(self, motion=motion)


def span_of_m(part: Part) -> tuple[float, float]:
    """From where to where a part reaches, along."""
    half_m = extent_m(part.shape)[0] / 2
    return part.at_m[0] - half_m, part.at_m[0] + half_m


def _gone(slide: FingerSlide, gap_m: float) -> tuple[FingerLeg, ...]:
    """The legs of a slide that lie behind, the last cut off where the fingers stopped."""
    done = [leg for leg in slide.legs if leg.gap_m[1] >= gap_m]
    on = next((leg for leg in slide.legs if leg.gap_m[0] > gap_m > leg.gap_m[1]), None)
    if on is not None:
        done.append(replace(on, to_m=slide.places_m(gap_m)))
    return tuple(done)
