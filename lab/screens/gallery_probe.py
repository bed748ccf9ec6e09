"""The probe in every state: asked, chosen, and what can come out of it."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from lab.lesson import Message, Side
from lab.lesson.course_gain import Gain, RuleGain
from lab.lesson.course_telling import gain_lines
from lab.lesson.probe.items import Item, build_of_item, situation_of_item, truth_of_item
from lab.lesson.probe.probe import Form, Probe, answered, finding, go_on, start_probe
from lab.lesson.ways.side import weight_only
from lab.outline.words import msg
from lab.screens.gallery_parts import SETTING, Drawn, Entry, press, shown
from lab.screens.probe import SIDE, ProbeScreen
from lab.screens.screen import ProbeModel
from lab.simulation.benches.bar_builds import hanging_bar_from_build
from lab.ui.look import Look
from lab.ui.widgets.choice import option_key

SEED = 4711
LEARNER = "K7M4T9X3"
Answering = Callable[[Item, int], Side]


def probe_entries() -> Iterator[tuple[str, Entry]]:
    """All states of the probe."""
    yield "probe-asked", Entry(msg("the probe: the first bar"), lambda look: _screen(look, start_probe(seed=SEED)))
    yield (
        "probe-chosen",
        Entry(
            msg("the probe: an answer chosen"),
            lambda look: press(_screen(look, start_probe(seed=SEED)), option_key(SIDE, "left")),
        ),
    )
    yield "probe-later", Entry(msg("the probe: a bar further on"), lambda look: _screen(look, _after(5, _by_truth)))
    yield "probe-fits", Entry(msg("the probe's end: a rule fits"), lambda look: _screen(look, _ended(_by_weight)))
    yield "probe-moment", Entry(msg("the probe's end: it all fits"), lambda look: _screen(look, _ended(_by_truth)))
    yield "probe-mixed", Entry(msg("the probe's end: no single rule"), lambda look: _screen(look, _ended(_in_turns)))
    yield (
        "probe-gain",
        Entry(
            msg("the probe's end after a course"),
            lambda look: _screen(look, _ended(_by_truth), gain=gain_lines(Gain(rule=_learned(), share=None))),
        ),
    )
    yield (
        "probe-four",
        Entry(msg("the probe's end after four bars"), lambda look: _screen(look, _ended(_by_truth, form="kiosk"))),
    )
    yield (
        "probe-help",
        Entry(msg("the probe: what to do here"), lambda look: press(_screen(look, _ended(_by_truth)), "help")),
    )


def _learned() -> RuleGain:
    return RuleGain(before=finding(_ended(_by_weight).given), after=finding(_ended(_by_truth).given))


def _screen(look: Look, probe: Probe, *, gain: tuple[Message, ...] = ()) -> Drawn:
    bench = None if probe.item is None else hanging_bar_from_build(build_of_item(probe.item))
    return shown(ProbeScreen(look), ProbeModel(setting=SETTING, probe=probe, bench=bench, learner=LEARNER, gain=gain))


def _after(count: int, answering: Answering, *, form: Form = "full") -> Probe:
    probe = start_probe(seed=SEED, form=form)
    while probe.item is not None and len(probe.given) < count:
        probe = answered(probe, answering(probe.item, len(probe.given)))
        if answering is _in_turns:
            probe = go_on(probe)
    return probe


def _ended(answering: Answering, *, form: Form = "full") -> Probe:
    probe = start_probe(seed=SEED, form=form)
    return _after(probe.most, answering, form=form)


def _by_weight(item: Item, number: int) -> Side:
    return weight_only(situation_of_item(item))


def _by_truth(item: Item, number: int) -> Side:
    return truth_of_item(item)


def _in_turns(item: Item, number: int) -> Side:
    return (_by_weight, _by_truth)[number % 2](item, number)
