"""Bodies on two fingers out of saved builds and into them, and the one that the bench starts with."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from lab.files import Bar, Build, Support
from lab.mechanics import Friction, MechanicsError, Part, Turned
from lab.simulation.benches.finger_builds import finger_from_build
from lab.simulation.benches.groups import as_groups
from lab.simulation.benches.two_fingers import DRY, NEAREST_SHARE, Piece, TwoFingers
from lab.simulation.benches.unfit import UnfitBuildError
from lab.simulation.refused import Refused, msg

MOST_PIECES = 40
"""Pieces on one body. More cannot be told apart or grabbed at any window size."""

FINGER_NAMES = ("left finger", "right finger")
"""What the two supports are called in a build file."""

START_SHARES = (0.06, 0.90)
"""Where the fingers are in a build that has none, as shares of the length: not as far from the middle as each other."""

ASKEW = Refused(template=msg("Parts of this build lie askew, so two fingers can't slide under it."))
TOO_MANY = Refused(template=msg("This build has more parts than two fingers have room for."))


def two_fingers_from_build(build: Build) -> TwoFingers:
    """The build lying level over two fingers, held, with nothing guessed. Pieces get the ids 1, 2, … in file order.

    What hangs by a cord would be in the fingers' way: it is stood on top, at the same place along.
    Raises UnfitBuildError where nothing is long enough, parts lie askew or are too many, or mechanics cannot use them.
    """
    build = build.loose()
    if len(build.parts) > MOST_PIECES:
        raise UnfitBuildError(TOO_MANY)
    if any(isinstance(part.shape, Turned) for part in build.parts):
        raise UnfitBuildError(ASKEW)
    tool = finger_from_build(build)
    pieces = [Piece(id=n, part=part, look=build.looks.get(part.name)) for n, part in enumerate(build.parts, start=1)]
    named = {support.name: support for support in build.supports}
    left, right = (named.get(name) for name in FINGER_NAMES)
    state = TwoFingers(
        bar=build.bar,
        pieces=tuple(pieces),
        underside_m=tool.underside_m,
        fingers_m=(tool.left_m, tool.right_m),
        left=_friction(left),
        right=_friction(right),
        reference_m=build.reference_m[0],
        title=build.title,
        units=build.units,
        view=build.view,
        next_id=len(pieces) + 1,
    )
    state = replace(state, pieces=tuple(_stood(piece, state.top_m) for piece in pieces))
    length_m = tool.right_m - tool.left_m
    if left is not None and right is not None:
        wanted = left.at_m[0], right.at_m[0]
    else:
        wanted = tool.left_m + START_SHARES[0] * length_m, tool.left_m + START_SHARES[1] * length_m
    state = replace(state, fingers_m=kept_apart_m(state, wanted))
    _check_sums(state)
    return state


def build_from_two_fingers(state: TwoFingers) -> Build:
    """The build to be saved. Reading it back gives the same bench, held, with nothing guessed."""
    looks = {piece.part.name: piece.look for piece in state.pieces if piece.look is not None}
    parts, groups = as_groups(piece.part for piece in state.pieces)
    places = zip(FINGER_NAMES, state.fingers_m, (state.left, state.right), strict=True)
    return Build(
        title=state.title,
        units=state.units,
        reference_m=(state.reference_m, 0.0, 0.0),
        view=state.view,
        bar=state.bar,
        parts=parts,
        groups=groups,
        supports=tuple(
            Support(name=name, at_m=(at_m, 0.0, state.underside_m), friction=(grip.static, grip.kinetic))
            for name, at_m, grip in places
        ),
        looks=MappingProxyType(looks),
    )


def workshop_pole() -> TwoFingers:
    """The bar that the bench starts with: 100 cm, 150 g, a heavy brass weight left and a light one right."""
    bar = Bar(name="bar", length_m=1.0, mass_kg=0.150, left_m=0.0, depth_m=0.035)
    top_m = bar.depth_m / 2
    brass = (("brass 200", 0.200, 0.25), ("brass 50", 0.050, 0.70))
    pieces = tuple(
        Piece(id=number, part=Part(name, mass_kg, (at_m, 0.0, top_m)), look="weight")
        for number, (name, mass_kg, at_m) in enumerate(brass, start=1)
    )
    return TwoFingers(bar=bar, pieces=pieces, underside_m=-top_m, fingers_m=(0.06, 0.90), next_id=len(pieces) + 1)


def kept_apart_m(state: TwoFingers, wanted_m: tuple[float, float]) -> tuple[float, float]:
    """Where fingers come to stand that are wanted somewhere: under the body, and never nearer than hands can put them.

    A finger that is not moved stays, and the other stops beside it; of two that are, both give way.
    """
    low_m, high_m = state.span_m
    least_m = NEAREST_SHARE * (high_m - low_m)
    left_m, right_m = (min(max(at_m, low_m), high_m) + 0.0 for at_m in wanted_m)
    if right_m - left_m >= least_m:
        return left_m, right_m
    if right_m == state.places_m[1] != state.places_m[0]:
        left_m = right_m - least_m
    elif left_m != state.places_m[0]:
        left_m = (left_m + right_m - least_m) / 2
    left_m = min(max(left_m, low_m), high_m - least_m) + 0.0
    return left_m, max(left_m + least_m, min(right_m, high_m)) + 0.0


def _friction(support: Support | None) -> Friction:
    return DRY if support is None or support.friction is None else Friction(*support.friction)


def _stood(piece: Piece, top_m: float) -> Piece:
    part = piece.part
    if part.hold == "clamped":
        return piece
    return replace(piece, part=replace(part, hold="clamped", at_m=(part.at_m[0], part.at_m[1], top_m)))


def _check_sums(state: TwoFingers) -> None:
    """Whatever the bench will be asked for later must have an answer now."""
    try:
        _ = state.sum, state.released()
    except MechanicsError as error:
        raise UnfitBuildError(
            Refused(template=msg("This build can't lie on two fingers: {why}."), values={"why": str(error)})
        ) from error
