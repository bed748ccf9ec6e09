"""Where the views of a body lie in a rectangle: a panel for each face, all to one scale."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import atan2, cos, sin

from lab.mechanics import Axis, Vector
from lab.scenes.camera import Camera, turned_m
from lab.scenes.views.margins import Margins, home_of, margins
from lab.scenes.views.projections import Face, Flat, flat_m, right_axis, up_axis
from lab.scenes.views.things import places_m, things_of
from lab.scenes.views.view import BodyView, Hanging
from lab.ui.geometry import Point, Rect

Bounds = tuple[float, float, float, float]
"""Left, bottom, right, top in a face, m."""

Needs = Mapping[Face, tuple[Bounds, Margins]]
Way = tuple[Mapping[Face, Rect], Rect | None]

SWING_STEPS = 8
CROWDED_SHARE = 0.6
LEAST_BODY_SHARE = 0.18
"""Of a panel's height and width: what margins leave to the body at least."""

LEAST_BODY_PX = 60.0
"""A body that would be drawn shorter than this is shown from fewer sides."""

FAR_SHARE = 1.0
"""Marks that lie farther from the body than so many of its lengths are not kept in the picture."""

COLUMN_SHARES = (0.42, 0.74)


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """One face in its frame.

    camera: from metres of the face.  hook_m, angle_rad: the body is turned by so much about there, anticlockwise
    as seen.  moved_px: and is so far from where it lay.  bounds_m: of the body as it lies level.  margins: what is kept
    free round it.  reach_px: the highest and the lowest y that the body comes to.
    """

    face: Face
    frame: Rect
    camera: Camera
    margins: Margins
    bounds_m: Bounds
    reach_px: tuple[float, float]
    hook_m: Flat = (0.0, 0.0)
    angle_rad: float = 0.0
    moved_px: Point = (0.0, 0.0)

    def px(self, place_m: Vector) -> Point:
        """The pixel of a place of the body, as the body lies now."""
        return self.flat_px(flat_m(self.face, place_m))

    def flat_px(self, place_m: Flat) -> Point:
        """The pixel of a place in the face, turned and moved with the body."""
        x, y = self.camera.at(*turned_m(place_m, self.hook_m, self.angle_rad))
        return x + self.moved_px[0], y + self.moved_px[1]

    def axis_px(self, axis: Axis, value_m: float) -> float | None:
        """The x of a place of the axis that lies level here, the y of one that stands upright; else None."""
        (right, sense), (up, upright) = right_axis(self.face), up_axis(self.face)
        if axis == right:
            return self.camera.x_px(sense * value_m)
        return self.camera.y_px(upright * value_m) if axis == up else None

    def lies_level(self, axis: Axis) -> bool:
        """Whether an axis lies level in this face."""
        return right_axis(self.face)[0] == axis

    def value_m(self, axis: Axis, point: Point) -> float | None:
        """The place of an axis that a pixel means; None where the face does not show that axis."""
        (right, sense), (up, upright) = right_axis(self.face), up_axis(self.face)
        if axis == right:
            return sense * self.camera.along_m(point[0])
        return upright * self.camera.up_m(point[1]) if axis == up else None

    def row(self, name: str) -> Rect:
        """A row above or below the body, as wide as the panel; of no height where there is none."""
        level = self.reach_px
        y = max(level[0] - self.margins.top, self.frame.y)
        for called, high in self.margins.above:
            if called == name:
                return Rect(self.frame.x, y, self.frame.w, high)
            y += high
        y = min(level[1], self.frame.bottom - self.margins.bottom)
        for called, high in self.margins.below:
            if called == name:
                return Rect(self.frame.x, y, self.frame.w, high)
            y += high
        return Rect(self.frame.x, y, self.frame.w, 0.0)

    @property
    def body_px(self) -> Rect:
        """The body's bounds as it lies level."""
        left, bottom, right, top = self.bounds_m
        x, y = self.camera.at(left, top)
        return Rect(x, y, self.camera.length_px(right - left), self.camera.length_px(top - bottom))


@dataclass(frozen=True, slots=True, kw_only=True)
class ViewsStage:
    """Where everything lies.  panels: by face, in the order shown.  spare: a quarter left free; None for none."""

    rect: Rect
    panels: Mapping[Face, Panel]
    spare: Rect | None = None

    @property
    def px_per_m(self) -> float:
        """The one scale."""
        return next(iter(self.panels.values())).camera.px_per_m


def views_stage(view: BodyView, rect: Rect) -> ViewsStage:
    """The stage for a body in a rectangle: of the ways to lay its panels out, the one that draws it largest."""
    needs = _needs(view)
    frames, spare = _way(view, rect, needs)
    scale = _scale(frames, needs)
    panels = {face: _panel(view, face, frames[face], needs[face], scale) for face in view.faces}
    return ViewsStage(rect=rect, panels=panels, spare=spare)


def fitted(view: BodyView, rect: Rect) -> BodyView:
    """The view, without its last faces where a rectangle is too small for all; never without the learner's mark."""
    while len(view.faces) > 1:
        needs = _needs(view)
        frames, _ = _way(view, rect, needs)
        longest = max(max(bounds[2] - bounds[0], bounds[3] - bounds[1]) for bounds, _ in needs.values())
        full = any(
            needs[face][1].fitting(frame.h).all_high > (1.0 - LEAST_BODY_SHARE) * frame.h
            or needs[face][1].least_wide > frame.w
            for face, frame in frames.items()
        )
        if not full and _scale(frames, needs) * longest >= view.look.sizes.px(LEAST_BODY_PX):
            break
        kept = None if view.told is None else home_of(view, view.told.axis)
        gone = next(face for face in reversed(view.faces) if face != kept)
        view = replace(view, faces=tuple(face for face in view.faces if face != gone))
    return view


def _needs(view: BodyView) -> Needs:
    plan = view.laid_for or view
    return {face: (bounds_m(plan, face, room=True), margins(plan, face)) for face in view.faces}


def _way(view: BodyView, rect: Rect, needs: Needs) -> Way:
    ways = [_stacked(view, rect, needs)]
    if len(view.faces) == 2:
        ways.append(_beside(view, rect, needs))
    elif len(view.faces) == 3:
        ways.append(_quartered(view, rect, needs))
    return max(ways, key=lambda way: _scale(way[0], needs) * _kept_share(way[0], needs))


def _kept_share(frames: Mapping[Face, Rect], needs: Needs) -> float:
    """A way in which names have to be given up is worth less."""
    lost = any(needs[face][1].fitting(frame.h) != needs[face][1] for face, frame in frames.items())
    return CROWDED_SHARE if lost else 1.0


def bounds_m(view: BodyView, face: Face, *, room: bool = False) -> Bounds:
    """What the body covers in a face; with room, also while it swings, and with the marks that lie near it."""
    body = view.body
    places = [place for thing in things_of(body) for place in places_m(thing, face)]
    places += [flat_m(face, part.at_m) for part in body.parts]
    if room:
        places = _swung(view, face, places) + _marked(view, face, places)
    xs, ys = zip(*places, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _swung(view: BodyView, face: Face, places: list[Flat]) -> list[Flat]:
    if view.hanging is None or face == "top":
        return places
    hook, (low, high) = flat_m(face, view.hanging.at_m), _turns_rad(view, view.hanging, face)
    if low == high == 0.0:
        return [*places, hook]
    angles = [low + (high - low) * step / (2 * SWING_STEPS) for step in range(2 * SWING_STEPS + 1)]
    corners = _corners(places)
    return [hook, *(turned_m(place, hook, angle) for place in corners for angle in angles)]


def _turns_rad(view: BodyView, hanging: Hanging, face: Face) -> tuple[float, float]:
    """From where to where it may turn in a face, anticlockwise as seen."""
    reach = max(hanging.reach_rad, abs(seen_angle_rad(view, face)))
    room = hanging.side_rad if face == "side" else hanging.front_rad
    return (-reach, reach) if room is None else room


def _corners(places: list[Flat]) -> list[Flat]:
    """As few places as reach as far in sixteen directions."""
    directions = [(cos(step * 0.3927), sin(step * 0.3927)) for step in range(16)]
    return [max(places, key=lambda place: place[0] * x + place[1] * y) for x, y in directions]


def _marked(view: BodyView, face: Face, places: list[Flat]) -> list[Flat]:
    """The ends of marks on the axis that lies level, unless they are far away; ghosts too."""
    xs = [place[0] for place in places]
    (axis, sense), up = right_axis(face), places[0][1]
    span = max(max(xs) - min(xs), 1e-6)
    lines = [line for line in (view.told, view.neutral, view.reference) if line is not None and line.axis == axis]
    values = [line.at_m for line in lines]
    values += [end for band in view.bands if band.axis == axis for end in (band.low_m, band.high_m)]
    found = [(sense * value, up) for value in values]
    found += [flat_m(face, ghost.part.at_m) for ghost in view.ghosts]
    return [place for place in found if min(xs) - FAR_SHARE * span <= place[0] <= max(xs) + FAR_SHARE * span]


def seen_angle_rad(view: BodyView, face: Face) -> float:
    """How far the body is turned in a face, anticlockwise as seen.

    Each face is looked at square on and goes with the body in its other turns, so that in both of them what lies below
    the hook is drawn below it.  Of a body that is not rolled the side view is turned by its pitch.
    """
    if view.hanging is None or face == "top":
        return 0.0
    pitch, roll = view.hanging.pitch_rad, view.hanging.roll_rad
    # From the left, with the nose at the left, nose up is clockwise; from ahead, right wing down is not.
    return roll if face == "front" else -atan2(sin(pitch), cos(pitch) * cos(roll))


def _scale(frames: Mapping[Face, Rect], needs: Needs) -> float:
    """Pixels for a metre: the most that every panel has room for."""
    return min(_own_scale(frames[face], *needs[face]) for face in frames)


def _own_scale(frame: Rect, bounds: Bounds, margin: Margins) -> float:
    margin = margin.fitting(frame.h)
    wide = max(frame.w - margin.left - margin.right, LEAST_BODY_SHARE * frame.w, 1.0)
    high = max(frame.h - margin.top - margin.bottom, LEAST_BODY_SHARE * frame.h, 1.0)
    left, bottom, right, top = bounds
    return min(wide / max(right - left, 1e-6), high / max(top - bottom, 1e-6))


def _panel(view: BodyView, face: Face, frame: Rect, need: tuple[Bounds, Margins], scale: float) -> Panel:
    (left, bottom, right, top), margin = need[0], need[1].fitting(frame.h)
    wide, high = scale * (right - left), scale * (top - bottom)
    room = frame.h - margin.top - margin.bottom - high
    above = margin.top + room / 2 if room >= 0 else max(0.0, (frame.h - high) * margin.top / max(margin.all_high, 1.0))
    spare = frame.w - margin.left - margin.right - wide
    beside = margin.left + spare / 2 if spare >= 0 else (frame.w - wide) / 2
    origin = (frame.x + beside - scale * left, frame.y + above + scale * top)
    hook = (0.0, 0.0) if view.hanging is None else flat_m(face, view.hanging.at_m)
    right, up = (0.0, 0.0) if view.hanging is None else flat_m(face, view.hanging.shift_m)
    return Panel(
        face=face, frame=frame, camera=Camera(px_per_m=scale, origin=origin), margins=margin,
        bounds_m=bounds_m(view, face), hook_m=hook, angle_rad=seen_angle_rad(view, face),
        reach_px=(frame.y + above, frame.y + above + high), moved_px=(scale * right, -scale * up),
    )  # fmt: skip


def _stacked(view: BodyView, rect: Rect, needs: Needs) -> Way:
    return _column(view, rect, view.faces, needs), None


def _column(view: BodyView, rect: Rect, faces: tuple[Face, ...], needs: Needs) -> dict[Face, Rect]:
    """Panels below each other, as high as what they show."""
    gap = view.look.sizes.gap
    highs = [(needs[face][0][3] - needs[face][0][1], needs[face][1].all_high) for face in faces]
    shares = _shares(rect.h - gap * (len(faces) - 1), highs)
    frames, y = {}, rect.y
    for face, high in zip(faces, shares, strict=True):
        frames[face] = Rect(rect.x, y, rect.w, high)
        y += high + gap
    return frames


def _shares(length: float, wanted: list[tuple[float, float]]) -> list[float]:
    """A length shared out: each its margin, what is left by size in metres; by both where there is not enough."""
    fixed = sum(margin for _, margin in wanted)
    sizes = sum(size for size, _ in wanted)
    if fixed > (1.0 - LEAST_BODY_SHARE) * length:
        least = 0.5 / len(wanted)
        return [length * (least + 0.5 * (0.5 * margin / fixed + 0.5 * size / sizes)) for size, margin in wanted]
    return [margin + (length - fixed) * size / sizes for size, margin in wanted]


def _beside(view: BodyView, rect: Rect, needs: Needs) -> Way:
    left, right = _columns(view, rect, (view.faces[:1], view.faces[1:]), needs)
    return {view.faces[0]: left, view.faces[1]: right}, None


def _quartered(view: BodyView, rect: Rect, needs: Needs) -> Way:
    """Two faces below each other, the third beside the first; the fourth quarter is left free."""
    first, second, third = view.faces
    left, right = _columns(view, rect, ((first, second), (third,)), needs)
    frames = _column(view, left, (first, second), needs)
    upper, lower = frames[first], frames[second]
    frames[third] = Rect(right.x, upper.y, right.w, upper.h)
    return frames, Rect(right.x, lower.y, right.w, lower.h)


def _columns(
    view: BodyView, rect: Rect, columns: tuple[tuple[Face, ...], tuple[Face, ...]], needs: Needs
) -> tuple[Rect, Rect]:
    gap = view.look.sizes.gap
    wanted = [
        (max(needs[face][0][2] - needs[face][0][0] for face in faces), max(needs[face][1].all_wide for face in faces))
        for faces in columns
    ]
    first = _shares(rect.w - gap, wanted)[0]
    first = min(max(first, COLUMN_SHARES[0] * rect.w), COLUMN_SHARES[1] * rect.w)
    left = Rect(rect.x, rect.y, first, rect.h)
    right = Rect(rect.x + first + gap, rect.y, rect.w - first - gap, rect.h)
    if view.look.sizes.mirrored:
        return left.mirrored_in(rect), right.mirrored_in(rect)
    return left, right
