"""Plan-forms drawn from a fixed seed, and their neutral points by a lattice that is not ours.

aerosandbox is loaded when it is first asked: not every Python has it, and the plan-forms need it not.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import radians, sqrt, tan
from typing import TYPE_CHECKING, Literal

import numpy as np

from lab.mechanics import Surface, mean_chord

if TYPE_CHECKING:
    import aerosandbox  # type: ignore[import-untyped]

SEED = 20_040
COUNT = 200
SPANWISE = 24
"""Their strips between two cuts of a half-span.  Their error falls with the strips: 24 leave up to 0.009 of the
mean chord, see `extrapolated_m`."""

CHORDWISE = 4
SMALL_ANGLE_DEG = 0.01
"""Small enough that what grows with the angle's square is a ten-thousandth of the rest."""

Kind = Literal["tail", "foreplane", "no tail"]
KINDS: tuple[Kind, ...] = ("tail", "foreplane", "tail", "no tail")


@dataclass(frozen=True, slots=True)
class PlanForm:
    """One airframe: its surfaces, the wing first."""

    kind: Kind
    surfaces: tuple[Surface, ...]

    @property
    def chord_m(self) -> float:
        """Mean chord of the wing, m."""
        return mean_chord(self.surfaces[0]).length_m


def plan_forms(count: int = COUNT, seed: int = SEED) -> tuple[PlanForm, ...]:
    """Half of them with a tail, a quarter each with a foreplane and without either.

    Wings: aspect 4 to 14, taper 0.4 to 1, sweep 0 to 20 degrees.  Tails and foreplanes: volume 0.3 to 0.8, arm 2
    to 5 mean chords, aspect 3 to 6, a third of them at the wing's own height, the rest within a mean chord of it.
    """
    random = np.random.default_rng(seed)
    return tuple(_plan_form(random, KINDS[number % len(KINDS)]) for number in range(count))


def _plan_form(random: np.random.Generator, kind: Kind) -> PlanForm:
    wing = _surface(random, "wing", area_m2=0.15, aspect=random.uniform(4.0, 14.0))
    if kind == "no tail":
        return PlanForm(kind, (wing,))
    chord = mean_chord(wing)
    volume, arm = random.uniform(0.3, 0.8), random.uniform(2.0, 5.0)
    height = 0.0 if random.uniform() < 1.0 / 3.0 else random.uniform(-1.0, 1.0) * chord.length_m
    other = _surface(random, kind, area_m2=wing.area_m2 * volume / arm, aspect=random.uniform(3.0, 6.0))
    behind = (arm if kind == "tail" else -arm) * chord.length_m
    along = chord.quarter_m + behind - mean_chord(other).quarter_m
    return PlanForm(kind, (wing, _moved(other, along, height)))


def _surface(random: np.random.Generator, name: str, *, area_m2: float, aspect: float) -> Surface:
    taper, sweep = random.uniform(0.4, 1.0), random.uniform(0.0, 20.0)
    span = sqrt(aspect * area_m2)
    root = 2.0 * area_m2 / (span * (1.0 + taper))
    return Surface(name=name, root_chord_m=root, tip_chord_m=taper * root, span_m=span, sweep_rad=radians(sweep))


def _moved(surface: Surface, along_m: float, up_m: float) -> Surface:
    return Surface(
        name=surface.name,
        root_chord_m=surface.root_chord_m,
        tip_chord_m=surface.tip_chord_m,
        span_m=surface.span_m,
        sweep_rad=surface.sweep_rad,
        at_m=(along_m, 0.0, up_m),
    )


def theirs_m(form: PlanForm, *, spanwise: int = SPANWISE) -> float:
    """The neutral point along by aerosandbox's vortex lattice, m.

    Near-field forces on bound vortices; wakes straight along x, as by default; no camber.  Every surface is cut
    where the other one ends, so that both have the same strips there: without that its control points come to
    lie next to wake lines, and refining makes it worse.
    """
    import aerosandbox

    found = aerosandbox.VortexLatticeMethod(
        their_airplane(form),
        aerosandbox.OperatingPoint(velocity=10.0, alpha=SMALL_ANGLE_DEG),
        spanwise_resolution=spanwise,
        chordwise_resolution=CHORDWISE,
        chordwise_spacing_function=np.linspace,
    ).run()
    return float(-found["Cm"] / found["CL"] * form.chord_m)


def extrapolated_m(half_m: float, whole_m: float) -> float:
    """Theirs with what is left of its error taken off, from half the strips and from all: it halves with them."""
    return 2.0 * whole_m - half_m


def their_airplane(form: PlanForm) -> aerosandbox.Airplane:
    """The plan-form as aerosandbox has it; moments about the origin, over the wing's area and mean chord."""
    import aerosandbox

    wing = form.surfaces[0]
    return aerosandbox.Airplane(
        name="plan-form",
        xyz_ref=[0.0, 0.0, 0.0],
        wings=[_their_wing(surface, form.surfaces) for surface in form.surfaces],
        s_ref=wing.area_m2,
        c_ref=form.chord_m,
        b_ref=wing.span_m,
    )


def _their_wing(surface: Surface, surfaces: tuple[Surface, ...]) -> aerosandbox.Wing:
    import aerosandbox

    half = surface.span_m / 2.0
    cuts = sorted({0.0, *(each.span_m / 2.0 for each in surfaces if each.span_m <= surface.span_m)})
    taper = surface.tip_chord_m - surface.root_chord_m
    sections = [
        aerosandbox.WingXSec(
            xyz_le=[out * tan(surface.sweep_rad), out, 0.0],
            chord=surface.root_chord_m + taper * out / half,
            airfoil=aerosandbox.Airfoil("naca0010"),
        )
        for out in cuts
    ]
    return aerosandbox.Wing(name=surface.name, symmetric=True, xsecs=sections).translate(list(surface.at_m))
