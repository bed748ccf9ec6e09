"""What is true: parts, moment sums, pivots, swings, supports, pads, airframes and doubt.

SI throughout.  x along (to the right), y across, z up; anticlockwise is positive.  Pure functions of frozen
values; numpy and nothing else of the lab.
"""

from lab.mechanics.airframes import Aerodynamics, Airframe, aerodynamics
from lab.mechanics.axes import AXES, Axis, Tensor
from lab.mechanics.bodies import PAD_FRICTION, PadBody, pad_body
from lab.mechanics.checks import STANDARD_GRAVITY_M_S2, MechanicsError, Vector
from lab.mechanics.doubt import balance_point_doubt_m
from lab.mechanics.groups import Group, Member, flattened
from lab.mechanics.modes import FlightMode, FlightModes, flight_modes
from lab.mechanics.moments import (
    MomentRow,
    MomentSum,
    balance_point_m,
    inertia_about_kg_m2,
    moment_sum,
)
from lab.mechanics.motions import PadMotion, Phase, pad_energy_j
from lab.mechanics.neutral_point import (
    NeutralPoint,
    PitchMargin,
    balance_for_margin_m,
    closed_neutral_share,
    neutral_point,
    neutral_point_m,
    pitch_margin,
)
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
from lab.mechanics.plates import Disc, HalfDisc, Polygon, Triangle
from lab.mechanics.polygons import MOST_CORNERS, PlaneMoments, checked_rings, polygon_moments
from lab.mechanics.shapes import (
    Box,
    Cylinder,
    Point,
    Rectangle,
    Rod,
    Shape,
    Turned,
    bounds_m,
    centre_m,
    extent_m,
    unit_inertia_m2,
)
from lab.mechanics.solids import Cone, Hemisphere, Sphere
from lab.mechanics.supports import two_support_reactions_n
from lab.mechanics.surfaces import MeanChord, Surface, main_surface, mean_chord, mean_chord_percent
from lab.mechanics.swing import TICK_S, Swing, swing_energy_j, swing_tick
from lab.mechanics.toss import Flight, Launch, Toss, TossMotion, launched, set_glide, toss, toss_tick
from lab.mechanics.vortex_lattice import PitchSlopes, SurfaceLift, pitch_slopes

__all__ = [
    "AXES",
    "MOST_CORNERS",
    "PAD_FRICTION",
    "STANDARD_GRAVITY_M_S2",
    "TICK_S",
    "Aerodynamics",
    "Airframe",
    "Axis",
    "Box",
    "Cone",
    "Cylinder",
    "Disc",
    "Flight",
    "FlightMode",
    "FlightModes",
    "Group",
    "HalfDisc",
    "Hemisphere",
    "Hold",
    "Launch",
    "MeanChord",
    "MechanicsError",
    "Member",
    "MomentRow",
    "MomentSum",
    "NeutralPoint",
    "PadBody",
    "PadMotion",
    "Part",
    "Phase",
    "PitchMargin",
    "PitchSlopes",
    "Pivot",
    "Pivoted",
    "PlaneMoments",
    "Point",
    "Polygon",
    "Rectangle",
    "Rod",
    "Shape",
    "Side",
    "Sphere",
    "Surface",
    "SurfaceLift",
    "Swing",
    "Tensor",
    "Toss",
    "TossMotion",
    "Triangle",
    "Turn",
    "Turned",
    "Vector",
    "aerodynamics",
    "balance_for_margin_m",
    "balance_point_doubt_m",
    "balance_point_m",
    "bounds_m",
    "centre_m",
    "checked_rings",
    "closed_neutral_share",
    "extent_m",
    "flattened",
    "flight_modes",
    "inertia_about_kg_m2",
    "inertia_tensor",
    "large_swing_period_s",
    "launched",
    "main_surface",
    "mean_chord",
    "mean_chord_percent",
    "moment_sum",
    "neutral_point",
    "neutral_point_m",
    "pad_body",
    "pad_energy_j",
    "pad_tick",
    "pitch_margin",
    "pitch_slopes",
    "pivoted",
    "polygon_moments",
    "rests_on",
    "set_glide",
    "small_swing_period_s",
    "swing_energy_j",
    "swing_tick",
    "toss",
    "toss_tick",
    "turn_about",
    "two_support_reactions_n",
    "unit_inertia_m2",
]
