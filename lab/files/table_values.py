"""The kinds of value that stand in the tables of a file, each refused in words a writer can act on."""

from __future__ import annotations

import math
import unicodedata
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, WithJsonSchema
from pydantic_core import PydanticCustomError

from lab.files.build import Tensor
from lab.files.faults import shown
from lab.mechanics import MechanicsError, inertia_tensor

LARGEST = 1e9
"""The largest number a file may hold, in its own units: a thousand tonnes in grams. Beyond it sums of
moments and inertias would in the end overflow to infinity."""

SMALLEST = 1e-9
"""The smallest number above 0 where one above 0 is asked for; below it a mass in kg could round to 0."""

LONGEST_NAME = 60
LONGEST_TITLE = 120

Triple = tuple[float, float, float]


def refusal(what: str, cure: str) -> PydanticCustomError:
    """The error that carries a fault's two halves through pydantic."""
    # pydantic fills braces in the message from the context; the text itself must not be a template.
    return PydanticCustomError("refused", "{what}", {"what": what, "cure": cure})


def plain_number(value: Any) -> float:
    """A finite number within ± LARGEST; true and false are not numbers."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        quoted = isinstance(value, str) and _reads_as_number(value)
        cure = "write it without quotes" if quoted else "write a plain number such as 12.5"
        raise refusal(f"{shown(value)} is not a number", cure)
    if isinstance(value, float) and not math.isfinite(value):
        raise refusal(f"{shown(value)} is not a number one can reckon with", "write a plain number such as 12.5")
    if abs(value) > LARGEST:
        raise refusal(f"{shown(value)} is too large", "write a number of at most 1e9, or choose larger units")
    return float(value)


def number_above_0(value: Any) -> float:
    """A number of at least SMALLEST."""
    number = plain_number(value)
    if number <= 0:
        raise refusal(f"{shown(value)} is not above 0", "write a number above 0")
    if number < SMALLEST:
        raise refusal(f"{shown(value)} is too small", "write a number of at least 1e-9, or choose smaller units")
    return number


def weight_above_0(value: Any) -> float:
    """A weight; where it is negative the cure says how weight is taken away."""
    if isinstance(value, int | float) and not isinstance(value, bool) and -LARGEST <= value < 0:
        raise refusal(
            f"{shown(value)} is a negative weight",
            "write it without the minus; a part that takes weight away has `cut = true`",
        )
    return number_above_0(value)


def number_from_0(value: Any) -> float:
    """A number that is 0 or more."""
    number = plain_number(value)
    if number < 0:
        raise refusal(f"{shown(value)} is below 0", "write 0 or more")
    return number


def angle_of_stop(value: Any) -> float:
    """Degrees between level and a stop: above 0, below 90."""
    number = number_above_0(value)
    if number >= 90:
        raise refusal(f"{shown(value)} degrees is no stop", "write an angle below 90, such as 20")
    return number


def place(value: Any) -> Triple:
    """A number (along) or a list of three (along, across, up)."""
    if isinstance(value, list):
        return _triple(value, "write one number (along) or three: [along, across, up]")
    return (plain_number(value), 0.0, 0.0)


def doubt_of_place(value: Any) -> Triple:
    """A standard uncertainty along, or along, across and up; none below 0."""
    doubt = place(value)
    if min(doubt) < 0:
        raise refusal(f"{min(doubt):g} is below 0", "write standard uncertainties of 0 or more")
    return doubt


def box_size(value: Any) -> Triple:
    """Three lengths above 0."""
    size = _triple(value, "write three lengths: [along, across, up]")
    if min(size) < SMALLEST:
        raise refusal(f"{min(size):g} is not a length above 0", "write three lengths above 0")
    return size


def inertia(value: Any) -> Tensor:
    """A number (a slender part along: the same about across and up), three, or three rows of three, such as a
    body can have."""
    cure = "write [about along, about across, about up], or three rows of three"
    given: Triple | Tensor
    if not isinstance(value, list):
        number = number_from_0(value)
        given = (0.0, number, number)
    elif len(value) == 3 and all(isinstance(row, list) for row in value):
        given = (_triple(value[0], cure), _triple(value[1], cure), _triple(value[2], cure))
    else:
        given = _triple(value, cure)
    try:
        return inertia_tensor("this inertia", given, "in the file's units")
    except MechanicsError as why:
        what, _, would_do = str(why).partition("; ")
        raise refusal(what, would_do) from why


def name(value: Any) -> str:
    """A short name on one line."""
    return _text(value, longest=LONGEST_NAME)


def title(value: Any) -> str:
    """A title on one line."""
    return _text(value, longest=LONGEST_TITLE)


def _text(value: Any, *, longest: int) -> str:
    if not isinstance(value, str):
        raise refusal(f"{shown(value)} is not text", "write it in quotes")
    if not value.strip():
        raise refusal("the text is empty", "write a few words")
    if len(value) > longest:
        raise refusal(f"a text of {len(value)} characters", f"write at most {longest}")
    if any(unicodedata.category(char) in ("Cc", "Zl", "Zp") for char in value):
        raise refusal("the text holds a line break or another control character", "write it on one line")
    return value


def _triple(value: Any, cure: str) -> Triple:
    if not isinstance(value, list) or len(value) != 3:
        raise refusal(f"{shown(value)} where three numbers belong", cure)
    return (plain_number(value[0]), plain_number(value[1]), plain_number(value[2]))


def _reads_as_number(text: str) -> bool:
    try:
        return len(text) <= LONGEST_NAME and math.isfinite(float(text))
    except ValueError:
        return False


_NUMBER_OR_THREE: dict[str, Any] = {
    "anyOf": [
        {"type": "number"},
        {"type": "array", "items": {"type": "number"}, "minItems": 3, "maxItems": 3},
    ]
}

Number = Annotated[float, BeforeValidator(plain_number)]
Above0 = Annotated[float, Field(gt=0), BeforeValidator(number_above_0)]
Weight = Annotated[float, Field(gt=0), BeforeValidator(weight_above_0)]
From0 = Annotated[float, Field(ge=0), BeforeValidator(number_from_0)]
StopAngle = Annotated[float, Field(gt=0, lt=90), BeforeValidator(angle_of_stop)]
Place = Annotated[Triple, BeforeValidator(place), WithJsonSchema(_NUMBER_OR_THREE)]
PlaceDoubt = Annotated[Triple, BeforeValidator(doubt_of_place), WithJsonSchema(_NUMBER_OR_THREE)]
BoxSize = Annotated[Triple, BeforeValidator(box_size)]
Inertia = Annotated[
    Tensor,
    BeforeValidator(inertia),
    WithJsonSchema(
        {
            "anyOf": [
                *_NUMBER_OR_THREE["anyOf"],
                {"type": "array", "items": _NUMBER_OR_THREE["anyOf"][1], "minItems": 3, "maxItems": 3},
            ]
        }
    ),
]
Name = Annotated[str, Field(min_length=1, max_length=LONGEST_NAME), BeforeValidator(name)]
Title = Annotated[str, Field(min_length=1, max_length=LONGEST_TITLE), BeforeValidator(title)]
