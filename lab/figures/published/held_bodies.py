"""Forearms, ladders, doors, struts: bodies held by a moment that a force must answer.

The moments of the weights are the lab's; a force is its moment over the arm that the book gives, and the
rest of the triangle of forces follows from it.  Their g is 9.8 m/s² where it is needed.
"""

from math import atan2, cos, degrees, hypot, radians, sin, sqrt

from lab.figures.published.builds import effort, moment, moment_sum_of, reactions
from lab.figures.published.check_values import CheckValue, Number


def _u08() -> list[Number]:
    pull = effort((50.0, 13.0), arm=1.5)
    elbow = pull - 50.0
    return [
        Number(pull, 433.3, 0.05),
        Number(elbow, 383.3, 0.05),
        Number(pull * 4.448, 1927, 0.5),
        Number(elbow * 4.448, 1705, 0.5),
    ]


def _u09() -> list[Number]:
    """Wrong in print by 3 N: 1963 and 1732, while the inputs give 1966 and 1735."""
    held = ((50.0 * 4.448, 13.0), (8.896, 6.5))
    pull = effort(*held, arm=1.5)
    return [
        Number(pull, 1963, 0.005, right=1966.02),
        Number(pull - moment_sum_of(*held).mass_kg, 1732, 0.005, right=1734.72),
    ]


def _u10() -> list[Number]:
    """The book squares the rounded 150.7, and cuts 69.35 to 69.3: hence 0.06."""
    lean = radians(53.0)
    wall = moment((400.0, 5.0 * cos(lean) / 2.0)) / (5.0 * sin(lean))
    return [
        Number(wall, 150.7, 0.05),
        Number(wall / 400.0, 0.377, 0.0005),
        Number(hypot(round(wall, 1), 400.0), 427.4, 0.05),
        Number(degrees(atan2(400.0, wall)), 69.3, 0.06),
    ]


def _u11() -> list[Number]:
    half, other = reactions((400.0, 0.5), first=0.0, second=1.0)
    return [
        Number(moment((400.0, 0.5)) / 2.00, 100.0, 0.05),
        Number(half, 200.0, 0.05),
        Number(other, 200.0, 0.05),
    ]


def _u12() -> list[Number]:
    """A cable from 3 m up the wall to 4 m out: its arm about the hinge is 12 / 5 m."""
    pull = moment((600.0, 2.0), (400.0, 4.0)) / (3.0 * 4.0 / 5.0)
    out, up = pull * 4.0 / 5.0, 1000.0 - pull * 3.0 / 5.0
    return [
        Number(pull, 1167, 0.5),
        Number(hypot(out, up), 980, 0.5),
        Number(degrees(atan2(up, out)), 18, 0.5),
    ]


def _u13() -> list[Number]:
    """A foot 2.00 m out; places on the ladder are measured along it."""
    loads = ((70.0 * 9.80, 3.00 * 2.00 / 6.00), (10.0 * 9.80, 2.00 * 2.00 / 6.00))
    gutter = moment(*loads) / sqrt(6.00**2 - 2.00**2)
    return [Number(moment_sum_of(*loads).mass_kg, 784, 0.5), Number(gutter, 132.8, 0.05)]


def _u14() -> list[Number]:
    held = ((5.0 * 9.8, 35.0), (3.0 * 9.8, 15.0))
    pull = effort(*held, arm=4.0)
    return [Number(pull, 539, 0.5), Number(pull - moment_sum_of(*held).mass_kg, 461, 0.5)]


def _c07() -> list[Number]:
    held = ((2.50 * 9.80, 16.0), (4.00 * 9.80, 38.0))
    pull, weight = effort(*held, arm=4.00), moment_sum_of(*held).mass_kg
    return [Number(pull, 470, 0.5), Number(pull / weight, 7.38, 0.01), Number(pull - weight, 407, 0.5)]


def _c08() -> list[Number]:
    held = ((55.0 * 9.80, 0.350), (30.0 * 9.80, 0.500))
    pull, slant = effort(*held, arm=0.0800), radians(29.0)
    up, along = moment_sum_of(*held).mass_kg + pull * sin(slant), pull * cos(slant)
    return [
        Number(pull, 4.20e3, 5.0),
        Number(up, 2.87e3, 5.0),
        Number(along, 3.67e3, 5.0),
        Number(hypot(along, up), 4.66e3, 5.0),
        Number(degrees(atan2(up, along)), 38.0, 0.05),
    ]


HELD = (
    CheckValue("U08", "S-17", "seen", _u08),
    CheckValue("U09", "S-17", "seen", _u09),
    CheckValue("U10", "S-17", "seen", _u10),
    CheckValue("U11", "S-17", "seen", _u11),
    CheckValue("U12", "S-17", "seen", _u12),
    CheckValue("U13", "S-17", "seen", _u13),
    CheckValue("U14", "S-17", "seen", _u14),
    CheckValue("C07", "S-18", "seen", _c07),
    CheckValue("C08", "S-18", "seen", _c08),
)
