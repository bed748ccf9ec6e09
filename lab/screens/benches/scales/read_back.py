"""What the scales say: each reading times its place, added up, over what they read together: the balance point."""

from __future__ import annotations

from lab.mechanics import ScaleReading, Weighing, weighed_level_m
from lab.scenes.scales.view import ScalesView, decimals
from lab.ui.widgets.arrange import Row
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.table import Table, TableColumn, TableRow
from lab.ui.widgets.widget import Widget

RUNS = "…"
"""Stands for a figure that still runs in a window."""


def read_back(view: ScalesView) -> tuple[Widget, ...]:
    """Title, table and quotient; nothing where the windows show nothing that gives it back.

    While figures run in the windows they are not yet written down, but there is room for them.
    """
    shown = _shown_kg(view)
    if shown is None:
        return ()
    title = Panel("read-title", view.look.words.say("Read back from the scales"), "", fill="", pad=0)
    return title, _table(view, shown), *_quotients(view, shown)


def _shown_kg(view: ScalesView) -> tuple[float, ...] | None:
    """What the windows show in the end; None where that gives no balance point back."""
    bench = view.bench
    if view.tips or (bench.held and bench.view != "all"):
        return None
    # Seen already while it was held, or soon: the table is as high either way.
    return bench.reactions_kg


def _moments_kg_m(view: ScalesView, shown: tuple[float, ...]) -> list[float]:
    """Each reading times its scale's arm from the reference line."""
    pairs = zip(shown, view.bench.scales, strict=True)
    return [mass_kg * (scale.at_m[0] - view.bench.reference_m) for mass_kg, scale in pairs]


def _table(view: ScalesView, shown: tuple[float, ...]) -> Table:
    words, readings, bench = view.look.words, view.readings, view.bench
    say, units, moments = words.say, view.readings.units, _moments_kg_m(view, shown)
    columns = (
        TableColumn(say("scale"), align="start"),
        TableColumn(say("reads {unit}", unit=units.weight_word)),
        TableColumn(say("arm {unit}", unit=units.length_word)),
        TableColumn(say("moment {unit}", unit=units.moment_word)),
    )
    rows = [
        TableRow(
            f"row-scale-{scale.id}",
            (
                words.content(scale.name),
                _written(view, _read(view, mass_kg)),
                readings.length(scale.at_m[0] - bench.reference_m),
                _written(view, readings.moment(moment)),
            ),
            picked=view.picked == f"scale-{scale.id}",
        )
        for scale, mass_kg, moment in zip(bench.scales, shown, moments, strict=True)
    ]
    sums = _read(view, sum(shown)), readings.moment(sum(moments))
    total = (say("sum"), _written(view, sums[0]), "", _written(view, sums[1]))
    rows.append(TableRow("row-read-sum", total, kind="sum"))
    return Table("readings", columns, tuple(rows), name=say("Read back from the scales"))


def _quotients(view: ScalesView, shown: tuple[float, ...]) -> tuple[Widget, ...]:
    """Sum of the moments ÷ sum of the readings, and where that says it balances; with three scales across too."""
    say, readings, scales = view.look.words.say, view.readings, view.bench.scales
    each = zip(scales, shown, strict=True)
    found = tuple(ScaleReading(name=scale.name, mass_kg=mass_kg, at_m=scale.at_m) for scale, mass_kg in each)
    places_m = weighed_level_m(Weighing(readings=found))
    along, across = (_written(view, readings.length_with_unit(at_m)) for at_m in places_m)
    moment = _written(view, readings.moment(sum(_moments_kg_m(view, shown))))
    weight = _written(view, _read(view, sum(shown)))
    quotient = Label("read-quotient", say("{moment} ÷ {weight}", moment=moment, weight=weight), middle=True)
    place = Label("read-balance", say("the scales say {place}", place=along), style="strong", align="end", middle=True)
    row = Row((quotient, place), weights=(0.0, 1.0))
    if not view.three:
        return (row,)
    sideways = sum(mass_kg * scale.at_m[1] for scale, mass_kg in zip(scales, shown, strict=True))
    text = say(
        "across {moment} ÷ {weight} = {place}",
        moment=_written(view, readings.moment(sideways)),
        weight=weight,
        place=across,
    )
    return row, Label("read-across", text, align="end")


def _written(view: ScalesView, figure: str) -> str:
    """A figure, once it no longer runs; of what was to be seen before anything moved, at once."""
    return RUNS if view.bench.moving and view.bench.view != "all" else figure


def _read(view: ScalesView, mass_kg: float) -> str:
    """A reading without its unit."""
    return view.look.words.number(view.readings.units.from_kg(mass_kg), decimals(view))
