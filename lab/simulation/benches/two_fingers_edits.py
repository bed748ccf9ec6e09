"""What each command does to a body on two fingers. Touching it holds it first, the fingers back where they were."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from lab import files
from lab.mechanics import Friction, Part, extent_m
from lab.simulation.benches.bar_edits import HEAVIEST_KG, NO_SUCH_WEIGHT, NOT_A_WEIGHT
from lab.simulation.benches.groups import copied_names, taken_names, tied_with, together_m
from lab.simulation.benches.named_edits import NAME_EDITS
from lab.simulation.benches.names import unused_name
from lab.simulation.benches.shared_edits import NOT_A_DOUBT, NOT_A_PLACE, SHARED, Does, clamped, is_measured
from lab.simulation.benches.two_fingers import Piece, TwoFingers
from lab.simulation.benches.two_fingers_builds import MOST_PIECES, kept_apart_m, two_fingers_from_build
from lab.simulation.benches.unfit import OPENED_TEXT, UnfitBuildError, unreadable
from lab.simulation.commands import Hang, Measure, Move, OpenBuild, Remove
from lab.simulation.part_commands import Copy, Reweigh
from lab.simulation.refused import Refused, msg
from lab.simulation.two_finger_commands import GuessMeeting, MoveFingers, SetFriction, StopFingers

LEAST_FRICTION, MOST_FRICTION = 0.02, 2.0
"""Coefficients that a finger can be given: wet ice, and rubber."""

NEAREST_RATIO = 0.98
"""Kinetic over static friction, of both fingers multiplied, is at most this, unless neither differs: nearer than that
and the fingers change more often than anybody can see."""

BESIDE = 0.05
"""How far from a weight its copy stands, as a share of what both stand on."""

_EDGE_M = 1e-9
"""A weight this far off the end is on it: pixels turned into metres miss by round-off."""

FULL = Refused(template=msg("There is no room for one more weight. Take one off first."))
NOT_ON_IT = Refused(template=msg("There is nothing there to stand it on, so it went back."))
FIXED = Refused(template=msg("That part is fixed to the tool."))
NOT_A_FRICTION = Refused(template=msg("Friction goes from 0.02 to 2, and is no more in sliding than in sticking."))
TOO_ALIKE = Refused(
    template=msg("Sliding and sticking would be too nearly alike. Make them the same, or further apart.")
)


def add_weight(state: TwoFingers, command: Hang) -> TwoFingers | Refused:
    """A new weight standing on the body, with an id and a name of its own."""
    if len(state.pieces) >= MOST_PIECES:
        return FULL
    if not 0.0 < command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    at_m = _on_beam_m(state, command.at_m)
    if at_m is None:
        return NOT_ON_IT
    name = unused_name(command.name or f"brass {command.mass_kg * 1000.0:.4g}", state.names)
    part = Part(name, command.mass_kg, (at_m, 0.0, state.top_m))
    piece = Piece(id=state.next_id, part=part, look="weight")
    return replace(_touched(state), pieces=(*state.pieces, piece), next_id=state.next_id + 1)


def move(state: TwoFingers, command: Move) -> TwoFingers | Refused:
    """Along the beam; off it, it stays where it was."""
    piece = _loose(state, command.id)
    if isinstance(piece, Refused):
        return piece
    part = piece.part
    at_m = _on_beam_m(state, command.at_m)
    if at_m is None:
        return Refused(
            template=msg("{name} would be off the end, so it went back to where it was."), values={"name": part.name}
        )
    tied = _tied(state, piece)
    spans_m = [_span_m(state, each) for each in tied]
    if len(tied) == 1:
        return _with_part(state, piece, replace(part, at_m=(clamped(at_m, spans_m[0]), *part.at_m[1:])))
    by_m = together_m(at_m - part.at_m[0], [each.part.at_m[0] for each in tied], spans_m)
    moved = {each.id: _shifted(each, by_m) for each in tied}
    return _with_pieces(state, tuple(moved.get(each.id, each) for each in state.pieces))


def remove(state: TwoFingers, command: Remove) -> TwoFingers | Refused:
    """Its id is not used again."""
    piece = _loose(state, command.id)
    if isinstance(piece, Refused):
        return piece
    names = taken_names(state.names, state.ids.index(piece.id))
    rest = tuple(each for each in state.pieces if each is not piece)
    return replace(_touched(state), pieces=rest).called(names)


def reweigh(state: TwoFingers, command: Reweigh) -> TwoFingers | Refused:
    """Heavier or lighter, spread out as it is."""
    piece = state.piece(command.id)
    if piece is None:
        return NO_SUCH_WEIGHT
    if not 0.0 < command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    part = piece.part
    given = part.inertia_kg_m2
    if given is not None:
        share = command.mass_kg / part.mass_kg
        given = tuple(tuple(share * value for value in row) for row in part.own_inertia_kg_m2)  # type: ignore[assignment]
    return _with_part(state, piece, replace(part, mass_kg=command.mass_kg, inertia_kg_m2=given))


def copy(state: TwoFingers, command: Copy) -> TwoFingers | Refused:
    """One more of the same and of all that is tied to it, as far beside it as there is room.

    mirrored: as far beyond the middle of what it is on.
    """
    piece = _loose(state, command.id)
    if isinstance(piece, Refused):
        return piece
    tied, (low_m, high_m) = _tied(state, piece), state.beam_m
    if len(state.pieces) + len(tied) > MOST_PIECES:
        return FULL
    at_m, spans_m = [each.part.at_m[0] for each in tied], [_span_m(state, each) for each in tied]
    if command.mirrored:
        places_m = [low_m + high_m - place_m for place_m in at_m]
    else:
        wide_m = max(extent_m(each.part.shape)[0] for each in tied)
        step_m = max(BESIDE * (high_m - low_m), wide_m)
        by_m = together_m(step_m, at_m, spans_m)
        by_m = by_m if by_m >= step_m else together_m(-step_m, at_m, spans_m)
        places_m = [place_m + by_m for place_m in at_m]
    names = copied_names(state.names, [each.part.name for each in tied])
    new = tuple(
        replace(each, id=state.next_id + number, part=_renewed(each.part, name, clamped(place_m, span_m)))
        for number, (each, name, place_m, span_m) in enumerate(zip(tied, names, places_m, spans_m, strict=True))
    )
    return replace(_touched(state), pieces=(*state.pieces, *new), next_id=state.next_id + len(new))


def move_fingers(state: TwoFingers, command: MoveFingers) -> TwoFingers | Refused:
    """They stop at the body's ends and beside each other. Where the body lay on them, it is held again."""
    wanted = command.left_at_m, command.right_at_m
    if not all(math.isfinite(at_m) for at_m in wanted):
        return NOT_A_PLACE
    fingers_m = kept_apart_m(state, wanted)
    if state.held and fingers_m == state.fingers_m:
        return state
    return replace(state.stilled(), fingers_m=fingers_m, guess=None)


def set_friction(state: TwoFingers, command: SetFriction) -> TwoFingers | Refused:
    """The guess is taken back: another finger may slip first now. Where they meet stays as it is."""
    if command.finger not in ("left", "right"):
        return NOT_A_FRICTION
    if not LEAST_FRICTION <= command.kinetic <= command.static <= MOST_FRICTION:
        return NOT_A_FRICTION
    friction = Friction(command.static, command.kinetic)
    left, right = (friction, state.right) if command.finger == "left" else (state.left, friction)
    if not are_apart(left, right):
        return TOO_ALIKE
    if (left, right) == (state.left, state.right):
        return state
    return replace(state.stilled(), left=left, right=right, guess=None)


def guess_meeting(state: TwoFingers, command: GuessMeeting) -> TwoFingers | Refused:
    """The mark stops at the body's ends."""
    if command.at_m is None:
        return replace(state, meeting_guess_m=None)
    if not math.isfinite(command.at_m):
        return NOT_A_PLACE
    return replace(state, meeting_guess_m=clamped(command.at_m, state.span_m))


def stop_fingers(state: TwoFingers, _: StopFingers) -> TwoFingers | Refused:
    """The hands stand still; nothing happens where they do so already."""
    return state.stilled_here()


def measure(state: TwoFingers, command: Measure) -> TwoFingers | Refused:
    """The pieces are as doubtful as said; a bar itself was weighed with greater care."""
    if not is_measured(command):
        return NOT_A_DOUBT
    doubt_m = (command.at_m, 0.0, 0.0)
    pieces = tuple(
        replace(piece, part=replace(piece.part, mass_doubt_kg=command.mass_kg, at_doubt_m=doubt_m))
        for piece in state.pieces
    )
    return replace(state, pieces=pieces)


def open_build(_: TwoFingers, command: OpenBuild) -> TwoFingers | Refused:
    """The saved build takes the place of everything."""
    try:
        return two_fingers_from_build(files.read_build_text(command.text, file=OPENED_TEXT))
    except files.FileFaults as faults:
        return unreadable(faults)
    except UnfitBuildError as unfit:
        return unfit.why


def are_apart(left: Friction, right: Friction) -> bool:
    """Whether sliding and sticking differ enough for two such fingers, or not at all."""
    shares = left.kinetic / left.static, right.kinetic / right.static
    return shares == (1.0, 1.0) or shares[0] * shares[1] <= NEAREST_RATIO


def _loose(state: TwoFingers, id: int) -> Piece | Refused:  # noqa: A002 - the field's own name
    piece = state.piece(id)
    if piece is None:
        return NO_SUCH_WEIGHT
    return piece if state.is_loose(piece) else FIXED


def _on_beam_m(state: TwoFingers, at_m: float) -> float | None:
    low_m, high_m = state.beam_m
    if not low_m - _EDGE_M <= at_m <= high_m + _EDGE_M:
        return None
    return clamped(at_m, (low_m, high_m))


def _tied(state: TwoFingers, piece: Piece) -> list[Piece]:
    """What moves with a piece, itself among it. What is fixed stays, whatever it is called."""
    numbers = tied_with(state.names, state.ids.index(piece.id))
    tied = [state.pieces[number] for number in numbers if number < len(state.pieces)]
    return [each for each in tied if each is piece or state.is_loose(each)]


def _span_m(state: TwoFingers, piece: Piece) -> tuple[float, float]:
    """Between which places a piece can be."""
    half_m, (low_m, high_m) = extent_m(piece.part.shape)[0] / 2, state.beam_m
    return low_m + half_m, high_m - half_m


def _shifted(piece: Piece, by_m: float) -> Piece:
    return replace(piece, part=_renewed(piece.part, piece.part.name, piece.part.at_m[0] + by_m + 0.0))


def _renewed(part: Part, name: str, at_m: float) -> Part:
    return replace(part, name=name, at_m=(at_m, *part.at_m[1:]))


def _with_part(state: TwoFingers, piece: Piece, part: Part) -> TwoFingers:
    if part == piece.part:
        return state
    changed = replace(piece, part=part)
    return _with_pieces(state, tuple(changed if each is piece else each for each in state.pieces))


def _with_pieces(state: TwoFingers, pieces: tuple[Piece, ...]) -> TwoFingers:
    return state if pieces == state.pieces else replace(_touched(state), pieces=pieces)


def _touched(state: TwoFingers) -> TwoFingers:
    """Held, and what was guessed taken back: it was about the body as it was."""
    return replace(state.stilled(), guess=None, meeting_guess_m=None)


EDITS: Mapping[type, Does] = MappingProxyType(
    {
        **SHARED,
        **NAME_EDITS,
        Hang: add_weight,
        Move: move,
        Remove: remove,
        Measure: measure,
        OpenBuild: open_build,
        Reweigh: reweigh,
        Copy: copy,
        MoveFingers: move_fingers,
        SetFriction: set_friction,
        GuessMeeting: guess_meeting,
        StopFingers: stop_fingers,
    }
)
"""What it does to this bench, by the class of the command."""
