"""Scenes of questions that move by the mechanics: a body that hangs by one point, and one let down on its scales.

They are only let go and held again; nothing on them is changed.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import exp

from lab.mechanics import Part, SpatialSwing
from lab.simulation.benches.airframe_hanging import AirframeHanging
from lab.simulation.benches.scales import LOWERS_S, SETTLES_S, STEADY
from lab.simulation.clock import TICK_S


@dataclass(frozen=True, slots=True, kw_only=True)
class HungScene:
    """A body that hangs by one point. parts: all that weighs.  hanging: the point, and how it hangs now."""

    parts: tuple[Part, ...]
    hanging: AirframeHanging

    @property
    def held(self) -> bool:
        """Whether it is held level."""
        return self.hanging.held

    @property
    def moving(self) -> bool:
        """Whether the next tick changes anything."""
        return self.hanging.moving

    @property
    def swing(self) -> SpatialSwing:
        """How it hangs now."""
        return self.hanging.swing

    def stilled(self) -> HungScene:
        """Held level."""
        return self if self.held else replace(self, hanging=self.hanging.stilled())

    def released(self) -> HungScene:
        """Just let go.  Raises MechanicsError."""
        return replace(self, hanging=self.hanging.released(self.parts)) if self.held else self

    def ticked(self) -> HungScene:
        """One tick later."""
        return replace(self, hanging=self.hanging.ticked()) if self.moving else self

    def at_end(self) -> HungScene:
        """Hanging still."""
        return replace(self, hanging=self.hanging.at_end()) if self.moving else self


@dataclass(frozen=True, slots=True, kw_only=True)
class WeighedScene:
    """A body that stands on its scales, for all that is asked about it.

    held: over them, by hand.  raised: how far, as a share of where it is held.  share: of what a scale bears, what it
    shows already, as on the bench of scales.
    """

    held: bool = True
    raised: float = 1.0
    share: float = 0.0

    @property
    def moving(self) -> bool:
        """Whether the next tick changes anything."""
        return not self.held and (self.raised > 0.0 or self.share < 1.0)

    def stilled(self) -> WeighedScene:
        """Held over the scales."""
        return self if self.held else WeighedScene()

    def released(self) -> WeighedScene:
        """Just let go of, on its way down."""
        return replace(self, held=False) if self.held else self

    def ticked(self) -> WeighedScene:
        """One tick later."""
        if not self.moving:
            return self
        if self.raised:
            return replace(self, raised=max(0.0, self.raised - TICK_S / LOWERS_S))
        share = 1.0 - (1.0 - self.share) * exp(-TICK_S / SETTLES_S)
        return replace(self, share=1.0 if 1.0 - share < STEADY else share)

    def at_end(self) -> WeighedScene:
        """Standing, with every window steady."""
        return replace(self, raised=0.0, share=1.0) if self.moving else self
