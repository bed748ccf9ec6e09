"""What is to be heard when one model takes the place of another: brass hung, wood at work, a pencil."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, Literal

from lab.screens.screen import QuestionModel

if TYPE_CHECKING:
    # For the annotations alone: a bench that nobody has been at yet is not loaded to be listened to.
    from lab.simulation.benches.finger import FingerTool
    from lab.simulation.benches.hanging_bar import HangingBar
    from lab.simulation.benches.mobile import Mobile
    from lab.simulation.benches.plate import HungPlate
    from lab.simulation.benches.scales import ScalesBench
    from lab.simulation.benches.tool import BuiltTool
    from lab.simulation.benches.two_fingers import TwoFingers

Cue = Literal["clink", "creak", "knock", "scratch"]


def cues(before: object, after: object) -> tuple[Cue, ...]:
    """The sounds of a change, at most one of each; none where another place is shown.

    before, after: what a screen was shown and is shown now (`lab/screens/screen.py`).
    """
    if type(before) is not type(after):
        return ()
    found = _bench_cues(getattr(before, "bench", None), getattr(after, "bench", None))
    return (*found, "scratch") if _locked_in(before, after) else found


def _bench_cues(before: object, after: object) -> tuple[Cue, ...]:
    heard = _HEARD.get(type(after).__name__)
    if heard is None or type(before) is not type(after):
        return ()
    return ("creak",) if _creaks(before, after) else heard(before, after)


def _creaks(before: Any, after: Any) -> bool:
    """Whether wood has just been let go and begins to swing; a bar without weights is too light to be heard."""
    swings = before.held and not after.held and after.moving and type(after).__name__ in _CREAKING
    return swings and bool(getattr(after, "weights", True))


def _more(before: Any, after: Any, by: int) -> bool:
    """Whether so many new things have come: one from the tray, or a copy of several that are tied."""
    return by > 0 and after.next_id == before.next_id + by


def _bar_cues(before: HangingBar, after: HangingBar) -> tuple[Cue, ...]:
    """A weight more hangs there; the bar has come to its stop."""
    found: list[Cue] = []
    if _more(before, after, len(after.weights) - len(before.weights)):
        found.append("clink")
    if after.swing.stop and not before.swing.stop:
        found.append("knock")
    return tuple(found)


def _built_tool_cues(before: BuiltTool, after: BuiltTool) -> tuple[Cue, ...]:
    """A part more is put on; else as of any tool."""
    if after.next_id != before.next_id:
        return ("clink",) if _more(before, after, len(after.parts) - len(before.parts)) else ()
    return _tool_cues(before, after)


def _tool_cues(before: FingerTool | BuiltTool, after: FingerTool | BuiltTool) -> tuple[Cue, ...]:
    """The first of the tool strikes the floor, still on the finger or off it."""
    falling = before.motion.corner is None and before.motion.phase != "down"
    struck = after.motion.corner is not None or after.motion.phase == "down"
    return ("knock",) if falling and struck else ()


def _mobile_cues(before: Mobile, after: Mobile) -> tuple[Cue, ...]:
    """Something more hangs there; a bar has come to its stop."""
    found: list[Cue] = []
    if _more(before, after, len(after.parts) - len(before.parts)):
        found.append("clink")
    if sum(bool(swing.stop) for swing in after.swings) > sum(bool(swing.stop) for swing in before.swings):
        found.append("knock")
    return tuple(found)


def _plate_cues(before: HungPlate, after: HungPlate) -> tuple[Cue, ...]:
    """A weight more is clipped on; a plumb line is drawn."""
    if _more(before, after, len(after.clips) - len(before.clips)):
        return ("clink",)
    return ("scratch",) if len(after.lines) == len(before.lines) + 1 else ()


def _scales_cues(before: ScalesBench, after: ScalesBench) -> tuple[Cue, ...]:
    """A weight more stands there; the body has been set down on its scales, or has come down beside them."""
    if _more(before, after, len(after.loads) - len(before.loads)):
        return ("clink",)
    set_down = not before.held and before.raised > 0.0 and after.raised == 0.0
    landed = after.motion.phase == "down" and before.motion.phase != "down"
    return ("knock",) if set_down or landed else ()


def _two_finger_cues(before: TwoFingers, after: TwoFingers) -> tuple[Cue, ...]:
    """A weight more stands there; the body has come down, or the fingers have met."""
    if _more(before, after, len(after.pieces) - len(before.pieces)):
        return ("clink",)
    landed = after.motion.corner is not None and before.motion.corner is None
    met = before.moving and after.outcome is not None
    return ("knock",) if landed or met else ()


def _locked_in(before: object, after: object) -> bool:
    if not isinstance(before, QuestionModel) or not isinstance(after, QuestionModel):
        return False
    same = (before.run.index, before.run.round) == (after.run.index, after.run.round)
    return same and before.run.phase == "predict" and after.run.phase == "watch"


_HEARD: Mapping[str, Callable[[Any, Any], tuple[Cue, ...]]] = MappingProxyType(
    {
        "HangingBar": _bar_cues,
        "FingerTool": _tool_cues,
        "BuiltTool": _built_tool_cues,
        "Mobile": _mobile_cues,
        "HungPlate": _plate_cues,
        "ScalesBench": _scales_cues,
        "TwoFingers": _two_finger_cues,
    }
)
"""What is heard of a bench, by the class of its state."""

_CREAKING = frozenset({"HangingBar", "FingerTool", "BuiltTool", "Mobile", "HungPlate"})
"""What turns on wood when it is let go."""
