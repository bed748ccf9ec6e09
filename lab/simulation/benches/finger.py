"""One finger under a tool: it stays while its balance point is over the finger's flat pad."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Self

from lab.files import View
from lab.mechanics import MomentSum, PadBody, PadMotion, Part, moment_sum, pad_body, pad_tick, rests_on
from lab.simulation.clock import TICK_S
from lab.simulation.commands import Side

FLOOR_DROP = 0.35
"""How far the floor lies under the tool, as a share of its length: far enough to slip off and fall."""

PAD_HALF_M = 0.003
"""Half the width of the pad where nothing else is said, m: a finger-tip touches about 6 mm."""

LYING = PadMotion()
"""Lying level where it was put, not yet let go."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FingerTool:
    """The whole state of the bench.

    looks: how to draw a part, by its name.  left_m, right_m: the tool's ends along.
    underside_m: the height of the face that the finger touches.  floor_m: the height of the floor.
    finger_at_m: the middle of the pad, along; pad_half_m: half its width.
    body: the tool as one body, worked out when let go; None while held and where it stays.
    """

    parts: tuple[Part, ...]
    looks: Mapping[str, str] = field(default_factory=dict, hash=False)
    left_m: float
    right_m: float
    underside_m: float
    floor_m: float
    finger_at_m: float
    pad_half_m: float = PAD_HALF_M
    held: bool = True
    motion: PadMotion = LYING
    title: str = "One finger"
    units: str = "g-cm"
    view: View = "plain"
    reference_m: float = 0.0
    guess: Side | None = None
    body: PadBody | None = None

    @property
    def sum(self) -> MomentSum:
        """The moment sum about the reference line."""
        return moment_sum(self.parts, (self.reference_m, 0.0, 0.0))

    @property
    def outcome(self) -> Side | None:
        """``level`` where it stays, else the end that dropped; None until let go and come to rest."""
        return None if self.held or self.moving else self._goes

    @property
    def moving(self) -> bool:
        """Whether the next tick changes anything."""
        return self.body is not None and self.motion.phase != "down"

    @property
    def rail_m(self) -> tuple[float, float]:
        """Where the finger and the reference line may be, along: under the tool."""
        return self.left_m, self.right_m

    def stilled(self) -> Self:
        """The tool lying level on the finger again, held."""
        return self if self.held else replace(self, held=True, motion=LYING, body=None)

    def released(self) -> Self:
        """The tool just let go. One that balances on the pad is at rest already."""
        if not self.held:
            return self
        body = None if self._goes == "level" else self._body()
        return replace(self, held=False, motion=LYING, body=body)

    def ticked(self) -> Self:
        """The tool one tick later."""
        if self.body is None or not self.moving:
            return self
        motion = pad_tick(self.body, self.finger_at_m, self.pad_half_m, self.floor_m, self.motion, TICK_S)
        # The very same motion back: it hangs on the pad's edge and stays.
        return replace(self, body=None) if motion is self.motion else replace(self, motion=motion)

    def at_end(self) -> Self:
        """The tool called down where it is: it has had its minute and hardly moves any more."""
        if not self.moving:
            return self
        still = replace(self.motion, phase="down", rate_rad_s=0.0, vx_m_s=0.0, vz_m_s=0.0)
        return replace(self, motion=still)

    @property
    def _goes(self) -> Side:
        return rests_on(self.parts, self.finger_at_m, self.pad_half_m)

    def _body(self) -> PadBody:
        return pad_body(self.parts, underside_m=self.underside_m, left_m=self.left_m, right_m=self.right_m)
