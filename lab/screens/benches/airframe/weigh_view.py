"""An airframe on its three scales, as it is to be shown."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, sin

from lab.mechanics import MomentSum, Part, Toppling, Vector, attitude_of
from lab.scenes.readings import Readings
from lab.scenes.views.body import Body
from lab.scenes.views.view import BodyView, Hanging, PlaceMark, StandingScale
from lab.simulation.benches.airframe_places import Spans
from lab.simulation.benches.airframe_weighing import AirframeWeighing
from lab.simulation.benches.scales import LIFT_SHARE, Scale
from lab.ui.look import Look

SWINGS_RAD = 0.35
"""How far the picture lets an airframe tip until the table holds it."""

SCALE = "scale-"
"""Keys of the scales: scale-1-top is the first one, seen from above."""


LEVEL = (0.0, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class WeighView:
    """What is shown.

    parts, sum: all that weighs, and its moments.  spans_m: the box round it.  weighing: as it stands at the moment that
    is drawn.  told: whether numbers and the balance point are shown.  raise_rad: how far the nose would be raised.
    """

    look: Look
    readings: Readings
    body: Body
    parts: tuple[Part, ...]
    sum: MomentSum
    spans_m: Spans
    weighing: AirframeWeighing
    picked: str = ""
    told: bool = False
    raise_rad: float = 0.0
    covered_px: float = 0.0

    @property
    def picked_scale(self) -> Scale | None:
        """The scale that is picked in any view."""
        return next((s for s in self.weighing.scales if self.picked.startswith(f"{SCALE}{s.id}")), None)


def body_view(view: WeighView) -> BodyView:
    """The airframe from its three sides on its scales."""
    weighing, words = view.weighing, view.look.words
    at_m = view.sum.balance_point_m
    text = words.say("CG {place}", place=view.readings.length_with_unit(at_m[0]))
    scales = tuple(
        StandingScale(
            key=str(scale.id),
            at_m=scale.at_m,
            reading=window(view, number),
            name=words.content(scale.name),
            highlighted=view.picked_scale == scale,
            follows=bool(weighing.pitch_rad),
        )
        for number, scale in enumerate(weighing.scales)
    )
    return BodyView(
        body=view.body,
        look=view.look,
        readings=view.readings,
        faces=("side", "top", "front"),
        labels="none",
        scales=scales,
        hanging=_lies(view),
        balance=PlaceMark(at_m=at_m, text=text) if view.told else None,
        covered_px=view.covered_px,
    )


def window(view: WeighView, number: int) -> str:
    """What the window of a scale shows."""
    weighing = view.weighing
    if weighing.held:
        return view.look.words.say("?")
    return reading(view, weighing.readings_kg[number])


def reading(view: WeighView, mass_kg: float) -> str:
    """A reading with its unit, to a tenth of what is usually shown."""
    return view.look.words.say("{number} {unit}", number=read(view, mass_kg), unit=view.readings.units.weight_word)


def read(view: WeighView, mass_kg: float) -> str:
    """A reading without its unit."""
    decimals = min(view.readings.fineness.weight + 1, 3)
    return view.look.words.number(view.readings.units.from_kg(mass_kg), decimals)


def _lies(view: WeighView) -> Hanging:
    """How it lies: over its scales, on them, with its nose raised, or on its way off."""
    weighing = view.weighing
    if weighing.tipping is not None:
        return _tips(weighing, weighing.tipping)
    aft = max(weighing.places_m, key=lambda place: place[0])
    (nose, tail), _, _ = view.spans_m
    lift = (weighing.raised if not weighing.held else 1.0) * LIFT_SHARE * (tail - nose)
    # Room for all of the way as soon as it begins; raising turns it clockwise as seen from the left.
    room = max(weighing.pitch_rad, weighing.raise_rad)
    return Hanging(
        at_m=aft, pitch_rad=weighing.pitch_rad, side_rad=(-room, 0.0), front_rad=LEVEL, cord=False,
        shift_m=(0.0, 0.0, lift),
    )  # fmt: skip


def _tips(weighing: AirframeWeighing, tipping: Toppling) -> Hanging:
    """Turned about its balance point and gone with it, in the plane in which it tips."""
    motion, (x, y) = weighing.motion, tipping.way
    out = -motion.angle_rad
    pitch_rad, roll_rad = attitude_of((sin(out) * x, sin(out) * y, -cos(out)))
    # The plane holds how far out the balance point is; what lies across the plane stays as it is.
    cg: Vector = _balance_m(weighing)
    shift = (motion.x_m * x, motion.x_m * y, motion.z_m)
    room = (-SWINGS_RAD, SWINGS_RAD)
    return Hanging(
        at_m=cg, pitch_rad=pitch_rad, roll_rad=roll_rad or 0.0, side_rad=room, front_rad=room, cord=False, shift_m=shift
    )


def _balance_m(weighing: AirframeWeighing) -> Vector:
    mass = sum(part.signed_mass_kg for part in weighing.parts)
    x, y, z = (sum(part.signed_mass_kg * part.at_m[axis] for part in weighing.parts) / mass for axis in range(3))
    return x, y, z
