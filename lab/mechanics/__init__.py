"""What is true: parts, moment sums, pivots, swings, supports, pads and doubt.

SI throughout.  x along (to the right), y across, z up; anticlockwise is positive.  Pure functions of frozen
values; numpy and nothing else of the lab.
"""

from lab.mechanics.bodies import PAD_FRICTION, PadBody, pad_body
from lab.mechanics.checks import STANDARD_GRAVITY_M_S2, MechanicsError, Vector
from lab.mechanics.doubt import balance_point_doubt_m
from lab.mechanics.moments import (
    MomentRow,
    MomentSum,
    balance_point_m,
    inertia_about_kg_m2,
    moment_sum,
)
from lab.mechanics.motions import PadMotion, Phase, pad_energy_j
from lab.mechanics.pads import pad_tick, rests_on
from lab.mechanics.parts import Hold, Part, inertia_tensor
from lab.mechanics.pivots import (
    Pivot,
    Pivoted,
    Side,
    Turn,
    large_swing_period_s,
    pivoted,
    small_swing_period_s,
    turn_about,
)
from lab.mechanics.shapes import (
    Axis,
    Box,
    Cylinder,
    Point,
    Rectangle,
    Rod,
    Shape,
    extent_m,
    unit_inertia_m2,
)
from lab.mechanics.supports import two_support_reactions_n
from lab.mechanics.swing import TICK_S, Swing, swing_energy_j, swing_tick

__all__ = [
    "PAD_FRICTION",
    "STANDARD_GRAVITY_M_S2",
    "TICK_S",
    "Axis",
    "Box",
    "Cylinder",
    "Hold",
    "MechanicsError",
    "MomentRow",
    "MomentSum",
    "PadBody",
    "PadMotion",
    "Part",
    "Phase",
    "Pivot",
    "Pivoted",
    "Point",
    "Rectangle",
    "Rod",
    "Shape",
    "Side",
    "Swing",
    "Turn",
    "Vector",
    "balance_point_doubt_m",
    "balance_point_m",
    "extent_m",
    "inertia_about_kg_m2",
    "inertia_tensor",
    "large_swing_period_s",
    "moment_sum",
    "pad_body",
    "pad_energy_j",
    "pad_tick",
    "pivoted",
    "rests_on",
    "small_swing_period_s",
    "swing_energy_j",
    "swing_tick",
    "turn_about",
    "two_support_reactions_n",
    "unit_inertia_m2",
]
