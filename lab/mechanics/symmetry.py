"""Planes of symmetry: found from the parts alone, how far each is missed, and which sum each saves.

A plane mirrors a build where every part has a twin of the same mass and shape at its mirror place, or lies in
the plane itself.  The balance point then lies in the plane, and the sum across it need not be done.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from lab.mechanics.axes import AXES, Axis, as_vector
from lab.mechanics.checks import MechanicsError, Vector, positive
from lab.mechanics.moments import balance_of
from lab.mechanics.parts import Part, checked, inertia_array_kg_m2

Floats = NDArray[np.float64]

EXACT_SHARE = 1e-9
"""A miss under this share of the build's size, or of its weight, is round-off."""
ROUND_OFF_SHARE = 1e-14
"""A place is known from the balance point no nearer than this share of the farthest place from zero."""
NEAR_SHARE = 0.02
"""How far a twin may be from its mirror place, as a share of the build's size, and how far its mass may be off,
as a share of it.  A choice: what one takes for symmetrical by eye."""
MOST_ODD_SHARE = 0.25
"""Most of the weight that may have no twin in what is still called a plane of symmetry.  A choice."""
MOST_PARTS = 500
"""Most parts of a build that is searched: each is held against every other, for each plane that is tried."""
MOST_PAIRED_PARTS = 40
"""Up to so many parts, planes across the lines from part to part are tried too; their number grows with the
square."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SymmetryPlane:
    """A plane that mirrors a build, wholly or nearly.

    normal: the direction across it, of length one.  offset_m: how far it lies from zero along that.
    saves: the sum that need not be done, the axis that the plane lies across; None for a slanting plane, which
    saves the sum along its own normal.
    miss_m: how far the balance point lies off it, which is the error of leaving that sum out.
    miss_share: the same as a share of the build's size, the farthest that anything lies from its balance point.
    twin_miss_m: how far the worst twin is from its mirror place, or unlike in shape.  odd_share: the share of
    the weight that has no twin.  odd: the names of those parts.  exact: nothing is missed but round-off.
    """

    normal: Vector
    offset_m: float
    saves: Axis | None
    miss_m: float
    miss_share: float
    twin_miss_m: float
    odd_share: float
    odd: tuple[str, ...]
    exact: bool


def symmetry_planes(parts: Iterable[Part], *, near_share: float = NEAR_SHARE) -> tuple[SymmetryPlane, ...]:
    """The planes of symmetry of a build, the best first; among equals along, across, up and then slanting.

    near_share: how much twins may differ.  The three planes across the axes are tried, near ones included;
    slanting ones must be exact.  Of a build that is round, with no end of planes, only some are found.  Shapes
    are told apart by their inertia.  Raises MechanicsError.  Source: S-48.
    """
    build = checked(parts)
    if len(build) > MOST_PARTS:
        raise MechanicsError(
            f"the build has {len(build)} parts; it can have at most {MOST_PARTS} to be searched for planes of symmetry"
        )
    laid = _laid_out(build, positive("near_share", near_share, "(no unit)"))
    found: list[SymmetryPlane] = []
    for normal in _normals(laid):
        if any(abs(float(normal @ plane.normal)) > 1.0 - 1e-9 for plane in found):
            continue
        plane = _plane(laid, normal)
        if plane.odd_share <= MOST_ODD_SHARE and (plane.saves is not None or plane.exact):
            found.append(plane)
    return tuple(sorted(found, key=lambda plane: (not plane.exact, round(plane.odd_share, 9), plane.miss_share)))


@dataclass(frozen=True, slots=True, eq=False)
class _Build:
    """The parts as arrays.  balance: (3,).  at: from the balance point, (n, 3).  own: inertia over mass as of
    a whole body, (n, 3, 3).  alike: which may be twins by mass and kind, (n, n).  near_m: how near by place."""

    names: tuple[str, ...]
    balance: Floats
    mass: Floats
    at: Floats
    own: Floats
    alike: NDArray[np.bool_]
    size_m: float
    near_m: float


def _laid_out(build: tuple[Part, ...], near_share: float) -> _Build:
    balance = np.array(balance_of(build))
    mass = np.array([part.mass_kg for part in build])
    signed = np.array([part.signed_mass_kg for part in build])
    places = np.array([part.at_m for part in build])
    at = places - balance
    at[np.abs(at) <= ROUND_OFF_SHARE * np.abs(places).max()] = 0.0  # no shape is read out of round-off
    own = np.array([inertia_array_kg_m2(part) for part in build]) / signed[:, np.newaxis, np.newaxis]
    size = float((np.linalg.norm(at, axis=1) + np.sqrt(np.trace(own, axis1=1, axis2=2))).max())
    unlike = np.abs(signed[:, np.newaxis] - signed) > near_share * np.maximum(mass[:, np.newaxis], mass)
    return _Build(
        names=tuple(part.name for part in build),
        balance=balance,
        mass=mass,
        at=at,
        own=own,
        alike=~unlike,
        size_m=size,
        near_m=near_share * size,
    )


def _normals(laid: _Build) -> Iterator[Floats]:
    """Directions that a plane of symmetry may lie across: each must be a principal axis of the whole."""
    yield from np.eye(3)
    spread = np.trace(laid.own, axis1=1, axis2=2)[:, np.newaxis, np.newaxis] / 2.0 * np.eye(3) - laid.own
    second = np.einsum("n,nij->ij", laid.mass, laid.at[:, :, np.newaxis] * laid.at[:, np.newaxis, :] + spread)
    _, principal = np.linalg.eigh(second)
    yield from (_settled(normal) for normal in principal.T)
    if len(laid.mass) > MOST_PAIRED_PARTS:
        return
    scale = float(np.trace(second))
    for first, other in zip(*np.nonzero(np.triu(laid.alike, 1)), strict=True):
        apart = laid.at[other] - laid.at[first]
        length = float(np.linalg.norm(apart))
        if length > EXACT_SHARE * laid.size_m:
            normal = apart / length
            if np.linalg.norm(second @ normal - (normal @ second @ normal) * normal) <= EXACT_SHARE * scale:
                yield _settled(normal)


def _settled(normal: Floats) -> Floats:
    """The same direction, or its opposite: the way that its largest number is above 0."""
    largest = normal[np.argmax(np.abs(normal))]
    return normal if largest > 0.0 else -normal


def _plane(laid: _Build, normal: Floats) -> SymmetryPlane:
    """How well the best plane across a direction mirrors the build."""
    mirror = np.eye(3) - 2.0 * np.outer(normal, normal)
    unlike = np.linalg.norm((mirror @ laid.own @ mirror)[:, np.newaxis] - laid.own, axis=(2, 3))
    unlike_m = unlike / (laid.size_m or 1.0)
    off = _best_offset(laid, normal, unlike_m)
    mirrored = laid.at @ mirror + 2.0 * off * normal
    distance = np.hypot(np.linalg.norm(mirrored[:, np.newaxis] - laid.at, axis=2), unlike_m)
    twins = _twins(distance, laid.alike & (distance <= laid.near_m))
    odd = [n for n in range(len(laid.mass)) if n not in twins]
    odd_kg = sum(laid.mass[odd]) + sum(abs(laid.mass[n] - laid.mass[twin]) / 2.0 for n, twin in twins.items())
    odd_share = float(odd_kg / laid.mass.sum())
    twin_miss = max((float(distance[n, twin]) for n, twin in twins.items()), default=0.0)
    return SymmetryPlane(
        normal=as_vector(normal),
        offset_m=float(laid.balance @ normal) + off,
        saves=next((axis for axis, unit in zip(AXES, np.eye(3), strict=True) if np.array_equal(unit, normal)), None),
        miss_m=abs(off),
        miss_share=abs(off) / laid.size_m if laid.size_m else 0.0,
        twin_miss_m=twin_miss,
        odd_share=odd_share,
        odd=tuple(laid.names[n] for n in odd),
        exact=odd_share <= EXACT_SHARE and max(twin_miss, abs(off)) <= EXACT_SHARE * laid.size_m,
    )


def _best_offset(laid: _Build, normal: Floats, unlike_m: Floats) -> float:
    """The place along a normal that most of the weight is mirrored by, from the balance point, m.

    Each part that is its own mirror image votes for the plane through itself, each pair that could be twins
    for the plane midway; the votes are counted within reach of one another, and their middle one taken.
    """
    along = laid.at @ normal
    flat = laid.at - along[:, np.newaxis] * normal
    beside = np.hypot(np.linalg.norm(flat[:, np.newaxis] - flat, axis=2), unlike_m)
    first, second = np.nonzero(np.triu(laid.alike & (beside <= laid.near_m)))
    if not len(first):
        return 0.0
    votes = (along[first] + along[second]) / 2.0
    weights = np.where(first == second, laid.mass[first], laid.mass[first] + laid.mass[second])
    order = np.argsort(votes, kind="stable")
    votes, counted = votes[order], np.concatenate([[0.0], np.cumsum(weights[order])])
    low = np.searchsorted(votes, votes - laid.near_m / 2.0, side="left")
    high = np.searchsorted(votes, votes + laid.near_m / 2.0, side="right")
    inside = counted[high] - counted[low]
    best = np.nonzero(inside >= inside.max() * (1.0 - EXACT_SHARE))[0]
    chosen = best[np.argmin(np.abs(votes[best]))]
    half = (counted[low[chosen]] + counted[high[chosen]]) / 2.0
    middle = min(max(int(np.searchsorted(counted, half, side="left")) - 1, low[chosen]), high[chosen] - 1)
    return float(votes[middle])


def _twins(distance: Floats, may: NDArray[np.bool_]) -> dict[int, int]:
    """Each part's twin by number, its own where it lies in the plane: nearest first."""
    first, second = np.nonzero(np.triu(may))
    twins: dict[int, int] = {}
    for pair in np.argsort(distance[first, second], kind="stable"):
        one, other = int(first[pair]), int(second[pair])
        if one not in twins and other not in twins:
            twins[one], twins[other] = other, one
    return twins
