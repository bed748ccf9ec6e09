"""A body on a flat finger pad: it stays, or tips about the pad's edge, slides off and falls.

A body whose balance point is over the pad stays level for ever.  Beyond, it turns about the pad's edge; when
the friction that this needs is more than the pad can give, it slides; off the pad, it falls, turning evenly.
Plane motion: x along, z up, anticlockwise positive.  Places of the body are those before it moved; what
happens is a displacement of its centre of gravity and an angle.
"""

from dataclasses import dataclass
from typing import Literal

Phase = Literal["rests", "tips", "slides", "falls", "down"]

PAD_FRICTION = 0.4
"""Coulomb friction of a wooden tool on a fingertip, still and moving alike.  More, and it turns farther
before it slides.  A round number of common practice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PadBody:
    """A body that can lie on a pad.

    mass_kg, inertia_kg_m2: the latter about its CG, on the axis across.  cg_m: along and up.
    underside_m: height of the straight face that rests on the pad, which reaches from left_m to right_m.
    bottom_m, top_m: the lowest and highest it reaches.  friction: Coulomb's coefficient.
    """

    mass_kg: float
    inertia_kg_m2: float
    cg_m: tuple[float, float]
    underside_m: float
    left_m: float
    right_m: float
    bottom_m: float
    top_m: float
    friction: float = PAD_FRICTION


@dataclass(frozen=True, slots=True, kw_only=True)
class PadMotion:
    """Where the body is.  phase: what it does.  angle_rad, rate_rad_s: anticlockwise positive.  x_m, z_m: how
    far its CG is from where it lay.  vx_m_s, vz_m_s: how fast.  corner: the corner it lies on once it touches
    the floor (0 to 3, anticlockwise from its lower left), else None."""

    phase: Phase = "rests"
    angle_rad: float = 0.0
    rate_rad_s: float = 0.0
    x_m: float = 0.0
    z_m: float = 0.0
    vx_m_s: float = 0.0
    vz_m_s: float = 0.0
    corner: int | None = None
