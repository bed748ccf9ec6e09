"""The moment table of a bench, and under it the division that gives the balance point."""

from __future__ import annotations

from collections.abc import Sequence

from lab.mechanics import MomentSum, Part
from lab.scenes.readings import Readings
from lab.screens.benches.doubts import doubt_lines, place_with_doubt
from lab.ui.look import Look
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.table import Table, TableColumn, TableRow
from lab.ui.widgets.widget import Widget

MOMENTS, ROW = "moments", "row-"
"""Keys of the table, and of a row before the key of its part."""


def moment_table(
    look: Look,
    readings: Readings,
    total: MomentSum,
    keys: Sequence[str],
    *,
    picked: str = "",
    pickable: bool = True,
    axis: int = 0,
) -> tuple[Widget, ...]:
    """Title and table.

    keys: of the parts, in the order of the sum.  pickable: whether a row picks its part.  axis: 0 along, 2 up.
    """
    say, units = look.words.say, readings.units
    columns = (
        TableColumn(say("part"), align="start"),
        TableColumn(say("weight {unit}", unit=units.weight_word)),
        TableColumn(say("arm {unit}", unit=units.length_word)),
        TableColumn(say("moment {unit}", unit=units.moment_word)),
    )
    rows = [
        TableRow(
            f"{ROW}{key}",
            (
                look.words.content(row.name),
                readings.weight(row.mass_kg),
                readings.length(row.arm_m[axis]),
                readings.moment(row.moment_kg_m[axis]),
            ),
            picked=picked == key,
        )
        for key, row in zip(keys, total.rows, strict=True)
    ]
    sums = (say("sum"), readings.weight(total.mass_kg), "", readings.moment(total.moment_kg_m[axis]))
    rows.append(TableRow(f"{ROW}sum", sums, kind="sum"))
    table = Table(MOMENTS, columns, tuple(rows), name=say("Moment table"), pickable=pickable)
    return Panel("moments-title", say("Moment table"), say("from the reference line"), fill="", pad=0), table


def balance_panel(
    look: Look, readings: Readings, total: MomentSum, parts: tuple[Part, ...], *, place: str = ""
) -> Widget:
    """Sum of moments ÷ sum of weights, and the balance point that it gives, from the rule's zero.

    place: the balance point as it is said, where more than its place along is to be said.
    """
    words = look.words
    moment, weight = readings.moment(total.moment_kg_m[0]), readings.weight(total.mass_kg)
    at = place or place_with_doubt(look, readings, parts, total.balance_point_m[0])
    line = Row(
        (
            Label("quotient", words.say("{moment} ÷ {weight}", moment=moment, weight=weight), middle=True),
            Label("balances", words.say("balances at {place}", place=at), style="strong", align="end", middle=True),
        ),
        weights=(0.0, 1.0),
    )
    children: list[Widget] = [line]
    if total.reference_m[0] != 0.0:
        arm = readings.length(total.balance_point_m[0] - total.reference_m[0])
        reference = readings.length_with_unit(total.reference_m[0])
        text = words.say("{arm} from the reference line at {line}", arm=arm, line=reference)
        children.append(Label("quotient-from", text, style="small", color="soft"))
    children += doubt_lines(look, parts)
    return Panel("balance", children=(Column(tuple(children), gap=0),), fill="paper", pad=8, round=True)
