"""A body on a flat finger pad: it stays, or tips about the pad's edge, slides off and falls.

A body whose balance point is over the pad stays level for ever.  Beyond, it turns about the pad's edge; when
the friction that this needs is more than the pad can give, it slides; off the pad it falls, turning evenly;
on the floor it topples over the corner it landed on, without a bounce, until it lies or leans, and is down.

Plane motion: x along, z up, anticlockwise positive.  The body's places are those before it moved; what happens
is a displacement of its centre of gravity and an angle.  Falling past the finger it does not touch it again;
toppling on the floor it does, and leans there.  A corner on the floor stays where it landed.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from math import copysign

from lab.mechanics.bodies import Course, PadBody, Place, turn_m2
from lab.mechanics.checks import finite, not_negative
from lab.mechanics.contacts import (
    contact_m,
    dropped,
    grip,
    landed,
    slid,
    sliding_normal_n,
    slip_m_s,
    tipped,
    tipping_push_s2,
    toppled,
)
from lab.mechanics.motions import PadMotion, Phase, course_of, flat, motion_of, stilled
from lab.mechanics.parts import Part, added, checked
from lab.mechanics.pivots import LEVEL_SHARE, Side, side_of

BISECTIONS = 48
"""Halvings to the instant something changes: a tick over 2⁴⁸ is round-off beside any time."""

MOST_EVENTS = 8
"""Most changes of phase in one tick; what is left of its time is then dropped.  Tipping, sliding, falling and
landing in one tick are four."""

SUNK_M = 1e-9
"""How far a corner is under the floor before it counts as touching: above round-off, below sight."""

STUCK_M_S = 1e-9
"""Rate of a contact along the underside under which it is stuck: above round-off, below sight."""

ROCK_KEEPS = 0.7
"""Share of its rate that a body keeps as it rocks from one corner to the next, beyond what turning about another
corner takes.  At 1 a pole would stand rocking on its end for a minute; no floor is that hard.  A choice."""

STEADY_RAD_S = 0.05
"""Rate under which a body that rocks from corner to corner lies still: it would lift by a hair."""

STILL_RAD_S = 1e-4
"""Rate under which a body that hangs on the pad's edge has come to rest."""

FLUNG_RAD_S = 400.0
"""What spins faster than this, or slips its whole length in a tick, is flung off the edge at once: so far a turn in
a tick leaves no contact to follow, and the steps of sliding would go beyond all numbers. Nothing that tips off a
finger by itself comes near it."""


@dataclass(frozen=True, slots=True)
class _Scene:
    """What surrounds the body: the pad's two edges, from which its finger reaches down, and the floor."""

    body: PadBody
    left: Place
    right: Place
    floor_m: float

    def edge(self, course: Course) -> Place:
        """The edge that the body turns about: it lies to that side of the pad, or leans to it."""
        lean = course.angle_rad or (self.left[0] + self.right[0]) / 2.0 - course.x_m
        return self.left if lean > 0.0 else self.right


Stretch = tuple[PadMotion, float]


def rests_on(parts: Iterable[Part], pad_at_m: float, pad_half_m: float) -> Side:
    """Whether a build stays level on a pad, or which end drops.

    pad_at_m: the pad's middle.  pad_half_m: half its width, 0 or above.  Level where the balance point lies
    over the pad, its edges included.  Raises MechanicsError.  Source: S-03.
    """
    build = checked(parts)
    at = finite("place of the pad", pad_at_m, "m")
    half = not_negative("half-width of the pad", pad_half_m, "m")
    return side_of(
        added(part.signed_mass_kg * (at - part.at_m[0]) for part in build),
        over_kg_m=half * added(part.signed_mass_kg for part in build),
        scale_kg_m=added(part.mass_kg * abs(at - part.at_m[0]) for part in build),
    )


def pad_tick(
    body: PadBody, pad_at_m: float, pad_half_m: float, floor_m: float, motion: PadMotion, dt_s: float
) -> PadMotion:
    """The motion one tick later; the very same object where it rests or is down.

    The pad lies under the body, its top at the body's underside, from pad_at_m − pad_half_m to
    pad_at_m + pad_half_m.  floor_m: height of the floor, below it.  dt_s: above 0.  Source: S-09.
    """
    if motion.phase == "down":
        return motion
    scene = _Scene(
        body,
        (pad_at_m - pad_half_m, body.underside_m),
        (pad_at_m + pad_half_m, body.underside_m),
        floor_m,
    )
    left_s = dt_s
    for _ in range(MOST_EVENTS):
        if motion.phase == "rests":
            woken = _woken(scene, motion)
            if woken is motion:
                return motion
            motion = woken
        motion, left_s = _STRETCHES[motion.phase](scene, motion, left_s)
        if left_s <= 0.0 or motion.phase == "down":
            break
    return motion


def _woken(scene: _Scene, motion: PadMotion) -> PadMotion:
    """The motion as it is where it stays at rest, else tipping, or falling where no pad is under it."""
    body = scene.body
    if motion.angle_rad != 0.0:
        return motion
    at = body.cg_m[0] + motion.x_m
    slack = LEVEL_SHARE * (body.right_m - body.left_m)
    if scene.left[0] - slack <= at <= scene.right[0] + slack:
        return motion
    run = contact_m(body, course_of(body, motion), scene.edge(course_of(body, motion)))
    first, last = body.ends_m
    return replace(motion, phase="tips" if first <= run <= last else "falls")


def _tips(scene: _Scene, motion: PadMotion, left_s: float) -> Stretch:
    body, start = scene.body, course_of(scene.body, motion)
    edge = scene.edge(start)
    if not grip(body, start, edge).holds(body.friction):
        return replace(motion, phase="slides"), left_s
    lean = start.angle_rad or tipping_push_s2(body, start, edge)

    def keeps(course: Course) -> bool:
        held = grip(body, course, edge).holds(body.friction)
        return held and course.angle_rad * lean > 0.0 and _clear(scene, course)

    after, used_s, kept = _until(lambda step_s: tipped(body, start, edge, step_s), keeps, left_s)
    if kept:
        return _swung(scene, motion_of(body, after, "tips"), edge), 0.0
    if after.angle_rad * lean <= 0.0:
        return flat(body, after), left_s - used_s
    if not _clear(scene, after):
        return stilled(motion_of(body, after, "down")), left_s - used_s
    return motion_of(body, after, "slides"), left_s - used_s


def _swung(scene: _Scene, motion: PadMotion, edge: Place) -> PadMotion:
    """At rest where it hangs on the edge and has all but stopped; as it is otherwise."""
    body = scene.body
    if body.rise_m >= 0.0 or abs(motion.rate_rad_s) > STILL_RAD_S:
        return motion
    if abs(tipping_push_s2(body, course_of(body, motion), edge)) > STILL_RAD_S:
        return motion
    return stilled(replace(motion, phase="rests"))


def _slides(scene: _Scene, motion: PadMotion, left_s: float) -> Stretch:
    body, start = scene.body, course_of(scene.body, motion)
    edge = scene.edge(start)
    # A contact that has just let go has no slip yet: it starts the way the friction could not stop it.
    slip = slip_m_s(body, start)
    sense = copysign(1.0, slip if abs(slip) > STUCK_M_S else grip(body, start, edge).friction_n)
    first, last = body.ends_m

    def on_pad(course: Course) -> bool:
        touching = first <= contact_m(body, course, edge) <= last
        return touching and sliding_normal_n(body, course, edge, sense) > 0.0

    def keeps(course: Course) -> bool:
        going = sense * slip_m_s(body, course) >= -STUCK_M_S and course.angle_rad * start.angle_rad >= 0.0
        return going and on_pad(course) and _clear(scene, course)

    flung = abs(start.rate_rad_s) > FLUNG_RAD_S or abs(slip) * left_s > body.right_m - body.left_m
    if flung or not on_pad(start):
        return replace(motion, phase="falls"), left_s
    after, used_s, kept = _until(lambda step_s: slid(body, start, edge, sense, step_s), keeps, left_s)
    if kept:
        return motion_of(body, after, "slides"), 0.0
    if not _clear(scene, after):
        return stilled(motion_of(body, after, "down")), left_s - used_s
    if after.angle_rad * start.angle_rad < 0.0:
        return flat(body, after), left_s - used_s
    return motion_of(body, after, "tips" if on_pad(after) else "falls"), left_s - used_s


def _falls(scene: _Scene, motion: PadMotion, left_s: float) -> Stretch:
    if motion.corner is not None:
        return _topples(scene, motion, left_s)
    body, start = scene.body, course_of(scene.body, motion)
    after, used_s, kept = _until(lambda step_s: dropped(start, step_s), lambda course: _clear(scene, course), left_s)
    if kept:
        return motion_of(body, after, "falls"), 0.0
    corner = after.lowest_m(body.corners_m)[1]
    return motion_of(body, landed(body, after, corner), "falls", corner), left_s - used_s


def _topples(scene: _Scene, motion: PadMotion, left_s: float) -> Stretch:
    """Over the corner it stands on, until the finger or another corner stops it."""
    body, start, stands = scene.body, course_of(scene.body, motion), motion.corner or 0
    others = tuple(corner for number, corner in enumerate(body.corners_m) if number != stands)
    past = _touches_finger(scene, start)

    def keeps(course: Course) -> bool:
        above = course.lowest_m(others)[0] >= scene.floor_m - SUNK_M
        return above and (past or not _touches_finger(scene, course))

    after, used_s, kept = _until(lambda step_s: toppled(body, start, stands, step_s), keeps, left_s)
    if kept:
        return motion_of(body, after, "falls", stands), 0.0
    low_m, number = after.lowest_m(others)
    if low_m >= scene.floor_m - SUNK_M:
        return stilled(motion_of(body, after, "down", stands)), left_s - used_s
    meets = number + 1 if number >= stands else number
    return _rocks(body, after, stands, meets), left_s - used_s


def _rocks(body: PadBody, course: Course, stands: int, meets: int) -> PadMotion:
    """From one corner on to the next: it lies still on both, or goes on over the new one."""
    on = landed(body, course, meets, keeps=ROCK_KEEPS)
    first, second = (course.place_m(body.corners_m[corner])[0] for corner in (stands, meets))
    if (first - course.x_m) * (second - course.x_m) <= 0.0:
        going = on.rate_rad_s * course.rate_rad_s > 0.0
        if not going or abs(on.rate_rad_s) <= STEADY_RAD_S:
            return stilled(motion_of(body, course, "down", stands))
    return motion_of(body, on, "falls", meets)


_STRETCHES: dict[Phase, Callable[[_Scene, PadMotion, float], Stretch]] = {
    "tips": _tips,
    "slides": _slides,
    "falls": _falls,
}


def _until(
    moved: Callable[[float], Course], keeps: Callable[[Course], bool], left_s: float
) -> tuple[Course, float, bool]:
    """The course after the time left, or just after the first thing that ends this stretch."""
    after = moved(left_s)
    if keeps(after):
        return after, left_s, True
    kept_s, ended_s = 0.0, left_s
    for _ in range(BISECTIONS):
        middle_s = (kept_s + ended_s) / 2.0
        course = moved(middle_s)
        if keeps(course):
            kept_s = middle_s
        else:
            ended_s, after = middle_s, course
    return after, ended_s, False


def _clear(scene: _Scene, course: Course) -> bool:
    """Whether the whole body is above the floor."""
    return course.lowest_m(scene.body.corners_m)[0] >= scene.floor_m


def _touches_finger(scene: _Scene, course: Course) -> bool:
    """Whether body and finger overlap: a corner of the one inside the other."""
    outline = [course.place_m(corner) for corner in scene.body.corners_m]
    (left, top), (right, _) = scene.left, scene.right
    if any(left < x < right and scene.floor_m < z < top for x, z in outline):
        return True
    sides = tuple(zip(outline, [*outline[1:], outline[0]], strict=True))
    return any(all(turn_m2(a, b, edge) > 0.0 for a, b in sides) for edge in (scene.left, scene.right))
