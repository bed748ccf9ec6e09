"""Values that outlines, limits, frictions and turns are made of, each refused in words a writer can act on."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, ValidationInfo, WithJsonSchema

from lab.files.faults import shown
from lab.files.table_values import SMALLEST, Triple, number_above_0, plain_number, refusal
from lab.mechanics import MOST_CORNERS, Limits, MechanicsError, checked_rings

Corner = tuple[float, float]
Ring = tuple[Corner, ...]

MOST_HOLES = 100
"""Most holes in one plate. Each is held against every other."""

MOST_LIMIT_CORNERS = 60
"""Most corners of the outline of limits. Each edge is held against every other; no outline in use has twenty."""

MOST_SWEEP = 60.0
"""Most sweep of a leading edge either way, in degrees: what the mechanics take."""

_A_RING = "write corners [along, up], such as [[0, 0], [30, 0], [0, 20]]"


def ring(value: Any) -> Ring:
    """An outline: three corners or more, that does not cross itself."""
    corners = _corners(value, cure=_A_RING, most=MOST_CORNERS)
    _by_the_mechanics(lambda: checked_rings("this shape", corners))
    return corners


def three_corners(value: Any) -> Ring:
    """The outline of a triangle."""
    corners = _corners(value, cure=_A_RING, most=MOST_CORNERS)
    _by_the_mechanics(lambda: checked_rings("this triangle", corners, corners=3))
    return corners


def holes(value: Any, info: ValidationInfo) -> tuple[Ring, ...]:
    """Outlines inside the shape's own and apart from one another."""
    cure = "write a list of outlines, such as [[[1, 1], [2, 1], [1, 2]]]"
    if not isinstance(value, list):
        raise refusal(f"{shown(value)} where a list of outlines belongs", cure)
    if len(value) > MOST_HOLES:
        raise refusal(f"{len(value)} holes", f"cut at most {MOST_HOLES}")
    rings = tuple(_corners(each, cure=cure, most=MOST_CORNERS) for each in value)
    outline = info.data.get("outline")
    if outline is not None:
        _by_the_mechanics(lambda: checked_rings("this shape", outline, rings))
    return rings


def limit_outline(value: Any) -> Ring:
    """Corners (balance point along, weight) of where the balance point may lie."""
    cure = "write corners [along, weight], such as [[36, 1300], [40, 1300], [40, 1700], [36, 1700]]"
    corners = _corners(value, cure=cure, most=MOST_LIMIT_CORNERS)
    for number, (_, weight) in enumerate(corners, start=1):
        if weight < SMALLEST:
            raise refusal(f"the weight of corner {number} is {weight:g}", "write a weight above 0")
    closed = corners[:-1] if len(corners) > 3 and corners[0] == corners[-1] else corners
    _by_the_mechanics(lambda: Limits(outline=closed))
    return closed


def limits_across(value: Any) -> Corner:
    """How far left and how far right the balance point may lie."""
    cure = "write [left, right], such as [-1, 1]"
    if not isinstance(value, list) or len(value) != 2:
        raise refusal(f"{shown(value)} where two numbers belong", cure)
    left, right = plain_number(value[0]), plain_number(value[1])
    if not left < right:
        raise refusal(f"the left limit {left:g} is not below the right one, {right:g}", cure)
    return left, right


def frictions(value: Any) -> Corner:
    """The static and the kinetic coefficient of a support."""
    cure = "write [static, kinetic], such as [0.5, 0.35]"
    if not isinstance(value, list) or len(value) != 2:
        raise refusal(f"{shown(value)} where two numbers belong", cure)
    static, kinetic = number_above_0(value[0]), number_above_0(value[1])
    if kinetic > static:
        raise refusal(f"the kinetic friction {kinetic:g} is above the static one, {static:g}", cure)
    return static, kinetic


def turn(value: Any) -> Triple:
    """Roll, pitch and yaw in degrees."""
    if not isinstance(value, list) or len(value) != 3:
        raise refusal(f"{shown(value)} where three angles belong", "write [roll, pitch, yaw] in degrees")
    return plain_number(value[0]), plain_number(value[1]), plain_number(value[2])


def sweep(value: Any) -> float:
    """Degrees that a leading edge runs aft."""
    number = plain_number(value)
    if abs(number) > MOST_SWEEP:
        largest = f"{MOST_SWEEP:g}"
        raise refusal(f"a sweep of {number:g} degrees is too much", f"write an angle between -{largest} and {largest}")
    return number


def _corners(value: Any, *, cure: str, most: int) -> Ring:
    """Pairs of numbers, as they are written."""
    if not isinstance(value, list):
        raise refusal(f"{shown(value)} where a list of corners belongs", cure)
    if len(value) < 3:
        raise refusal(f"an outline of {len(value)} corners", "give it three or more")
    if len(value) > most:
        raise refusal(f"an outline of {len(value)} corners", f"give it at most {most}")
    corners = []
    for number, corner in enumerate(value, start=1):
        if not isinstance(corner, list) or len(corner) != 2:
            raise refusal(f"corner {number} is {shown(corner)}, where two numbers belong", cure)
        corners.append((plain_number(corner[0]), plain_number(corner[1])))
    return tuple(corners)


def _by_the_mechanics(check: Callable[[], object]) -> None:
    """Let the mechanics judge, and pass on what it says."""
    try:
        check()
    except MechanicsError as why:
        what, _, cure = str(why).partition("; ")
        raise refusal(what, cure or "give the corners in order, once round") from why


_NUMBER = {"type": "number"}
_PAIR: dict[str, Any] = {"type": "array", "items": _NUMBER, "minItems": 2, "maxItems": 2}
_RING: dict[str, Any] = {"type": "array", "items": _PAIR, "minItems": 3, "maxItems": MOST_CORNERS}
_TRIANGLE = _RING | {"maxItems": 4}
_HOLES: dict[str, Any] = {"type": "array", "items": _RING, "maxItems": MOST_HOLES}
_THREE: dict[str, Any] = {"type": "array", "items": _NUMBER, "minItems": 3, "maxItems": 3}

Outline = Annotated[Ring, BeforeValidator(ring), WithJsonSchema(_RING)]
ThreeCorners = Annotated[Ring, BeforeValidator(three_corners), WithJsonSchema(_TRIANGLE)]
Holes = Annotated[tuple[Ring, ...], BeforeValidator(holes), WithJsonSchema(_HOLES)]
LimitOutline = Annotated[Ring, BeforeValidator(limit_outline), WithJsonSchema(_RING | {"maxItems": MOST_LIMIT_CORNERS})]
LimitsAcross = Annotated[Corner, BeforeValidator(limits_across), WithJsonSchema(_PAIR)]
Frictions = Annotated[Corner, BeforeValidator(frictions), WithJsonSchema(_PAIR)]
Turn = Annotated[Triple, BeforeValidator(turn), WithJsonSchema(_THREE)]
Sweep = Annotated[float, Field(ge=-MOST_SWEEP, le=MOST_SWEEP), BeforeValidator(sweep)]
