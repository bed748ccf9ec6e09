"""How a body on a pad has moved: its displacement from where it lay, and its angle."""

from dataclasses import dataclass, replace
from typing import Literal

from lab.mechanics.bodies import Course, PadBody
from lab.mechanics.checks import STANDARD_GRAVITY_M_S2

Phase = Literal["rests", "tips", "slides", "falls", "down"]


@dataclass(frozen=True, slots=True, kw_only=True)
class PadMotion:
    """Where the body is.

    phase: what it does.  angle_rad, rate_rad_s: anticlockwise positive.  x_m, z_m: how far its CG is from
    where it lay.  vx_m_s, vz_m_s: how fast it moves.  corner: which corner of its outline it stands on, once
    it has landed.
    """

    phase: Phase = "rests"
    angle_rad: float = 0.0
    rate_rad_s: float = 0.0
    x_m: float = 0.0
    z_m: float = 0.0
    vx_m_s: float = 0.0
    vz_m_s: float = 0.0
    corner: int | None = None


def pad_energy_j(body: PadBody, motion: PadMotion) -> float:
    """Energy of motion and of height, J, from where the body lay.  Source: S-09."""
    speed2 = motion.vx_m_s**2 + motion.vz_m_s**2
    turning = body.inertia_kg_m2 * motion.rate_rad_s**2
    return body.mass_kg * (speed2 / 2.0 + STANDARD_GRAVITY_M_S2 * motion.z_m) + turning / 2.0


def course_of(body: PadBody, motion: PadMotion) -> Course:
    """Where the body is, in the places' own coordinates."""
    return Course(
        x_m=body.cg_m[0] + motion.x_m,
        z_m=body.cg_m[1] + motion.z_m,
        angle_rad=motion.angle_rad,
        vx_m_s=motion.vx_m_s,
        vz_m_s=motion.vz_m_s,
        rate_rad_s=motion.rate_rad_s,
    )


def motion_of(body: PadBody, course: Course, phase: Phase, corner: int | None = None) -> PadMotion:
    """The motion of a body that has come to a course."""
    return PadMotion(
        phase=phase,
        angle_rad=course.angle_rad,
        rate_rad_s=course.rate_rad_s,
        x_m=course.x_m - body.cg_m[0],
        z_m=course.z_m - body.cg_m[1],
        vx_m_s=course.vx_m_s,
        vz_m_s=course.vz_m_s,
        corner=corner,
    )


def stilled(motion: PadMotion) -> PadMotion:
    """The same place, without any motion."""
    return replace(motion, rate_rad_s=0.0, vx_m_s=0.0, vz_m_s=0.0)


def flat(body: PadBody, course: Course) -> PadMotion:
    """Back on the pad with its whole underside, without a bounce."""
    return PadMotion(x_m=course.x_m - body.cg_m[0])
