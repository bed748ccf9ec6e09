"""What is true: parts, moment sums, pivots, swings, supports, pads, airframes and doubt.

SI throughout.  x along (to the right), y across, z up; anticlockwise is positive.  Pure functions of frozen
values; numpy and nothing else of the lab.
"""

from typing import TYPE_CHECKING

from lab.late_names import late_names

if TYPE_CHECKING:
    from lab.mechanics.airframes import Aerodynamics, Airframe, aerodynamics
    from lab.mechanics.assemblies import AssemblySums, assembly_sums
    from lab.mechanics.axes import AXES, Axis, Tensor
    from lab.mechanics.balance_paths import BalancePath, PathLeg, PathPoint, balance_path
    from lab.mechanics.balancing import BalancingWay, balancing_ways
    from lab.mechanics.ballast import BallastPoint, CannotBeDone, ballast_curve, ballast_kg
    from lab.mechanics.ballast_loads import BallastLoad, BallastPlace, LightestBallast, lightest_ballast
    from lab.mechanics.bodies import PAD_FRICTION, PadBody, pad_body
    from lab.mechanics.checks import STANDARD_GRAVITY_M_S2, MechanicsError, Vector
    from lab.mechanics.doubt import balance_point_doubt_m
    from lab.mechanics.groups import Group, Member, flattened
    from lab.mechanics.hanging import HangingAttitude, attitude_of, hanging_attitude, plumb_line
    from lab.mechanics.inertia import PrincipalInertia, principal_inertia
    from lab.mechanics.limit_courses import Crossing, LimitCourse, Stretch, instants_at_m, limit_crossings
    from lab.mechanics.limits import Limits, Standing, standing
    from lab.mechanics.mobiles import HungBar, MobileBar, MobileLevel, MobileSum, mobile_sum
    from lab.mechanics.modes import FlightMode, FlightModes, flight_modes
    from lab.mechanics.moments import MomentRow, MomentSum, balance_point_m, inertia_about_kg_m2, moment_sum
    from lab.mechanics.motions import PadMotion, Phase, pad_energy_j
    from lab.mechanics.neutral_points import (
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
    from lab.mechanics.plumb_lines import PlumbCrossing, PlumbLine, plumb_crossing
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
    from lab.mechanics.shifting import balance_shift_m, loading_shift_m, move_m, moved_mass_kg, with_part_moved
    from lab.mechanics.solids import Cone, Hemisphere, Sphere
    from lab.mechanics.spatial_swing import HungBody, SpatialSwing, hung_body, spatial_energy_j, spatial_tick
    from lab.mechanics.supports import support_reactions_n, two_support_reactions_n
    from lab.mechanics.surfaces import MeanChord, Surface, main_surface, mean_chord, mean_chord_percent
    from lab.mechanics.swing import TICK_S, Swing, swing_energy_j, swing_tick
    from lab.mechanics.symmetry import SymmetryPlane, symmetry_planes
    from lab.mechanics.tank_courses import TankCourse, TankEvent, TankLeg, tank_course
    from lab.mechanics.tanks import Burn, BurnOrder, Pump, Tank, tank_parts
    from lab.mechanics.tipping import Footing, SlideOrTip, TippingEdge, footing, slide_or_tip, support_polygon_m
    from lab.mechanics.toppling import Toppling, pressed_kg, toppling_of
    from lab.mechanics.tosses import Flight, Launch, Toss, TossMotion, launched, set_glide, toss, toss_tick
    from lab.mechanics.two_fingers import FingerForces, FingerLeg, FingerSlide, FingerTips, Friction, two_finger_slide
    from lab.mechanics.vortex_lattice import PitchSlopes, SurfaceLift, pitch_slopes
    from lab.mechanics.weighing import ScaleReading, Weighing, weighed_balance_point, weighed_level_m
else:
    _MODULES = {
        "airframes": "Aerodynamics Airframe aerodynamics",
        "assemblies": "AssemblySums assembly_sums",
        "axes": "AXES Axis Tensor",
        "balance_paths": "BalancePath PathLeg PathPoint balance_path",
        "balancing": "BalancingWay balancing_ways",
        "ballast": "BallastPoint CannotBeDone ballast_curve ballast_kg",
        "ballast_loads": "BallastLoad BallastPlace LightestBallast lightest_ballast",
        "bodies": "PAD_FRICTION PadBody pad_body",
        "checks": "STANDARD_GRAVITY_M_S2 MechanicsError Vector",
        "doubt": "balance_point_doubt_m",
        "groups": "Group Member flattened",
        "hanging": "HangingAttitude attitude_of hanging_attitude plumb_line",
        "inertia": "PrincipalInertia principal_inertia",
        "limit_courses": "Crossing LimitCourse Stretch instants_at_m limit_crossings",
        "limits": "Limits Standing standing",
        "mobiles": "HungBar MobileBar MobileLevel MobileSum mobile_sum",
        "modes": "FlightMode FlightModes flight_modes",
        "moments": "MomentRow MomentSum balance_point_m inertia_about_kg_m2 moment_sum",
        "motions": "PadMotion Phase pad_energy_j",
        "neutral_points": "NeutralPoint PitchMargin balance_for_margin_m "
        "closed_neutral_share neutral_point neutral_point_m pitch_margin",
        "pads": "pad_tick rests_on",
        "parts": "Hold Part inertia_tensor",
        "pivots": "Pivot Pivoted Side Turn large_swing_period_s pivoted small_swing_period_s turn_about",
        "plates": "Disc HalfDisc Polygon Triangle",
        "plumb_lines": "PlumbCrossing PlumbLine plumb_crossing",
        "polygons": "MOST_CORNERS PlaneMoments checked_rings polygon_moments",
        "shapes": "Box Cylinder Point Rectangle Rod Shape Turned bounds_m centre_m extent_m unit_inertia_m2",
        "shifting": "balance_shift_m loading_shift_m move_m moved_mass_kg with_part_moved",
        "solids": "Cone Hemisphere Sphere",
        "spatial_swing": "HungBody SpatialSwing hung_body spatial_energy_j spatial_tick",
        "supports": "support_reactions_n two_support_reactions_n",
        "surfaces": "MeanChord Surface main_surface mean_chord mean_chord_percent",
        "swing": "TICK_S Swing swing_energy_j swing_tick",
        "symmetry": "SymmetryPlane symmetry_planes",
        "tank_courses": "TankCourse TankEvent TankLeg tank_course",
        "tanks": "Burn BurnOrder Pump Tank tank_parts",
        "tipping": "Footing SlideOrTip TippingEdge footing slide_or_tip support_polygon_m",
        "toppling": "Toppling pressed_kg toppling_of",
        "tosses": "Flight Launch Toss TossMotion launched set_glide toss toss_tick",
        "two_fingers": "FingerForces FingerLeg FingerSlide FingerTips Friction two_finger_slide",
        "vortex_lattice": "PitchSlopes SurfaceLift pitch_slopes",
        "weighing": "ScaleReading Weighing weighed_balance_point weighed_level_m",
    }
    __getattr__ = late_names(__name__, _MODULES)

__all__ = [
    "AXES",
    "MOST_CORNERS",
    "PAD_FRICTION",
    "STANDARD_GRAVITY_M_S2",
    "TICK_S",
    "Aerodynamics",
    "Airframe",
    "AssemblySums",
    "Axis",
    "BalancePath",
    "BalancingWay",
    "BallastLoad",
    "BallastPlace",
    "BallastPoint",
    "Box",
    "Burn",
    "BurnOrder",
    "CannotBeDone",
    "Cone",
    "Crossing",
    "Cylinder",
    "Disc",
    "FingerForces",
    "FingerLeg",
    "FingerSlide",
    "FingerTips",
    "Flight",
    "FlightMode",
    "FlightModes",
    "Footing",
    "Friction",
    "Group",
    "HalfDisc",
    "HangingAttitude",
    "Hemisphere",
    "Hold",
    "HungBar",
    "HungBody",
    "Launch",
    "LightestBallast",
    "LimitCourse",
    "Limits",
    "MeanChord",
    "MechanicsError",
    "Member",
    "MobileBar",
    "MobileLevel",
    "MobileSum",
    "MomentRow",
    "MomentSum",
    "NeutralPoint",
    "PadBody",
    "PadMotion",
    "Part",
    "PathLeg",
    "PathPoint",
    "Phase",
    "PitchMargin",
    "PitchSlopes",
    "Pivot",
    "Pivoted",
    "PlaneMoments",
    "PlumbCrossing",
    "PlumbLine",
    "Point",
    "Polygon",
    "PrincipalInertia",
    "Pump",
    "Rectangle",
    "Rod",
    "ScaleReading",
    "Shape",
    "Side",
    "SlideOrTip",
    "SpatialSwing",
    "Sphere",
    "Standing",
    "Stretch",
    "Surface",
    "SurfaceLift",
    "Swing",
    "SymmetryPlane",
    "Tank",
    "TankCourse",
    "TankEvent",
    "TankLeg",
    "Tensor",
    "TippingEdge",
    "Toppling",
    "Toss",
    "TossMotion",
    "Triangle",
    "Turn",
    "Turned",
    "Vector",
    "Weighing",
    "aerodynamics",
    "assembly_sums",
    "attitude_of",
    "balance_for_margin_m",
    "balance_path",
    "balance_point_doubt_m",
    "balance_point_m",
    "balance_shift_m",
    "balancing_ways",
    "ballast_curve",
    "ballast_kg",
    "bounds_m",
    "centre_m",
    "checked_rings",
    "closed_neutral_share",
    "extent_m",
    "flattened",
    "flight_modes",
    "footing",
    "hanging_attitude",
    "hung_body",
    "inertia_about_kg_m2",
    "inertia_tensor",
    "instants_at_m",
    "large_swing_period_s",
    "launched",
    "lightest_ballast",
    "limit_crossings",
    "loading_shift_m",
    "main_surface",
    "mean_chord",
    "mean_chord_percent",
    "mobile_sum",
    "moment_sum",
    "move_m",
    "moved_mass_kg",
    "neutral_point",
    "neutral_point_m",
    "pad_body",
    "pad_energy_j",
    "pad_tick",
    "pitch_margin",
    "pitch_slopes",
    "pivoted",
    "plumb_crossing",
    "plumb_line",
    "polygon_moments",
    "pressed_kg",
    "principal_inertia",
    "rests_on",
    "set_glide",
    "slide_or_tip",
    "small_swing_period_s",
    "spatial_energy_j",
    "spatial_tick",
    "standing",
    "support_polygon_m",
    "support_reactions_n",
    "swing_energy_j",
    "swing_tick",
    "symmetry_planes",
    "tank_course",
    "tank_parts",
    "toppling_of",
    "toss",
    "toss_tick",
    "turn_about",
    "two_finger_slide",
    "two_support_reactions_n",
    "unit_inertia_m2",
    "weighed_balance_point",
    "weighed_level_m",
    "with_part_moved",
]
