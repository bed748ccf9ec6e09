"""Rows of figures."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from lab.outline import Node
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.outcomes import Chosen
from lab.ui.paragraph import (
    Align,
    draw_middle,
    draw_text,
    least_width,
    line_step,
    natural_width,
    text_height,
)
from lab.ui.widgets.widget import Mood, Plain, Spot, Widget, facing, states

_ROW_PX = 32.0
_RULE_PX = 6.0
_GAP_PX = 12.0


@dataclass(frozen=True, slots=True)
class TableColumn:
    """What stands above a column, and to which side its cells keep."""

    text: str
    align: Align = "end"


@dataclass(frozen=True, slots=True)
class TableRow:
    """One row: kind "sum" stands below a rule, in bold; picked: shown on the marker's colour."""

    key: str
    cells: tuple[str, ...]
    kind: Literal["plain", "sum"] = "plain"
    picked: bool = False


def _style(row: TableRow) -> str:
    return "strong" if row.kind == "sum" else "body"


@dataclass(frozen=True, slots=True)
class Table(Plain):
    """A table. Where it is narrow, names and headings take more lines; where not even that is enough, each row
    becomes a short list of name and figure.

    columns: the first is usually aligned to the start.  rows: as many cells each as there are columns.
    pickable: whether a row can be chosen; then rows are targets.
    """

    key: str
    columns: tuple[TableColumn, ...]
    rows: tuple[TableRow, ...]
    name: str = ""
    pickable: bool = False

    def least_width(self, look: Look) -> float:
        """As a list: the widest heading and figure beside each other."""
        heads = max((least_width(look, column.text, "small") for column in self.columns), default=0.0)
        cells = [cell for row in self.rows for cell in row.cells]
        widest = max((least_width(look, cell, "strong") for cell in cells), default=0.0)
        return heads + look.sizes.px(12) + widest

    def natural_width(self, look: Look) -> float:
        """All columns beside each other."""
        return sum(self._wants(look)) + look.sizes.px(_GAP_PX) * (len(self.columns) - 1)

    def height(self, look: Look, width: float) -> float:
        """Headings, rows and the rule above the sum."""
        if self.as_list(look, width):
            return sum(self._list_height(look, row, width) for row in self.rows)
        widths = self._widths(look, width)
        rows = sum(self._row_height(look, row, widths) + self._rule(look, row) for row in self.rows)
        return self._head_height(look, widths) + rows

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """Its rows."""
        narrow, widths = self.as_list(look, rect.w), self._widths(look, rect.w)
        placed: list[tuple[Widget, Rect]] = []
        y = rect.y + (0.0 if narrow else self._head_height(look, widths))
        for row in self.rows:
            rule = 0.0 if narrow else self._rule(look, row)
            tall = self._list_height(look, row, rect.w) if narrow else self._row_height(look, row, widths)
            placed.append((RowView(row.key, self, row, narrow, widths), Rect(rect.x, y + rule, rect.w, tall)))
            y += rule + tall
        return tuple(placed)

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the headings and the rule above the sum."""
        if self.as_list(look, rect.w):
            return
        widths = self._widths(look, rect.w)
        head = rect.cut_top(self._head_height(look, widths))[0]
        for column, cell in zip(self.columns, self.cell_rects(look, head, widths), strict=True):
            low = cell.cut_bottom(text_height(look, column.text, cell.w, "small"))[0]
            draw_text(canvas, look, column.text, low, style="small", color="soft", align=column.align)
        y = head.bottom
        for row in self.rows:
            if row.kind == "sum":
                level = round(y + self._rule(look, row) / 2)
                ends = ((rect.x, level), (rect.right, level))
                canvas.line(ends, look.theme.ink, width=1.5 * look.sizes.unit)
            y += self._rule(look, row) + self._row_height(look, row, widths)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A table of rows of cells."""
        return Node(self.key, "table", self.name, bounds=rect, children=children)

    def as_list(self, look: Look, width: float) -> bool:
        """Whether it is too narrow for its columns."""
        return sum(self._least(look)) + look.sizes.px(_GAP_PX) * (len(self.columns) - 1) > width + 0.5

    def cell_rects(self, look: Look, row: Rect, widths: Sequence[float]) -> tuple[Rect, ...]:
        """Where the cells of a row lie; width left over goes between the columns.  widths: of the columns."""
        gap = look.sizes.px(_GAP_PX)
        spare = max(0.0, row.w - sum(widths) - gap * (len(widths) - 1))
        each = spare / max(1, len(widths) - 1)
        rects, x = [], row.x
        for width in widths:
            rects.append(facing(look, Rect(x, row.y, width, row.h), row))
            x += width + gap + each
        return tuple(rects)

    def _widths(self, look: Look, width: float) -> tuple[float, ...]:
        """Of the columns: what they want, or where that is too much their least and a part of what is left."""
        wants, least = self._wants(look), self._least(look)
        spare = width - look.sizes.px(_GAP_PX) * (len(wants) - 1) - sum(least)
        widths = []
        for want, small in zip(wants, least, strict=True):
            given = min(want, small + max(0.0, spare))
            spare -= given - small
            widths.append(given)
        return tuple(widths)

    def _wants(self, look: Look) -> list[float]:
        heads = [natural_width(look, column.text, "small") for column in self.columns]
        return [max(head, self._figures(look, number)) + 1 for number, head in enumerate(heads)]

    def _least(self, look: Look) -> list[float]:
        """The longest word of each heading, and of each name; figures are never broken."""
        heads = [least_width(look, column.text, "small") for column in self.columns]
        names = max((least_width(look, row.cells[0], _style(row)) for row in self.rows), default=0.0)
        cells = [self._figures(look, number) if number else names for number in range(len(heads))]
        return [max(head, cell) + 1 for head, cell in zip(heads, cells, strict=True)]

    def _figures(self, look: Look, number: int) -> float:
        return max((natural_width(look, row.cells[number], _style(row)) for row in self.rows), default=0.0)

    def _head_height(self, look: Look, widths: Sequence[float]) -> float:
        pairs = zip(self.columns, widths, strict=True)
        return max(text_height(look, column.text, wide, "small") for column, wide in pairs)

    def _row_height(self, look: Look, row: TableRow, widths: Sequence[float]) -> float:
        name = text_height(look, row.cells[0], widths[0], _style(row))
        usual = max(look.sizes.px(_ROW_PX), name + look.sizes.px(4))
        return max(usual, look.sizes.target) if self.pickable else usual

    def _rule(self, look: Look, row: TableRow) -> float:
        return look.sizes.px(_RULE_PX) if row.kind == "sum" else 0.0

    def _list_height(self, look: Look, row: TableRow, width: float) -> float:
        tall = sum(max(text_height(look, cell, width, "strong"), line_step(look, "body")) for cell in row.cells if cell)
        return max(tall + look.sizes.gap, look.sizes.target if self.pickable else 0.0)


@dataclass(frozen=True, slots=True)
class RowView(Plain):
    """One row of a table as it lies on the screen.  widths: of the columns."""

    key: str
    table: Table
    row: TableRow
    as_list: bool
    widths: tuple[float, ...]

    def least_width(self, look: Look) -> float:
        """The table's."""
        return self.table.least_width(look)

    def natural_width(self, look: Look) -> float:
        """The table's."""
        return self.table.natural_width(look)

    def height(self, look: Look, width: float) -> float:
        """What the table gave it."""
        return 0.0

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the cells, on the marker's colour if picked."""
        if self.row.picked:
            wide = Rect(rect.x - look.sizes.px(10), rect.y, rect.w + look.sizes.px(20), rect.h)
            canvas.box(wide, fill=look.theme.held_fill, radius=look.sizes.px(6))
        style = _style(self.row)
        if self.as_list:
            self._draw_list(canvas, look, rect, style)
            return
        cells = zip(self.table.columns, self.row.cells, self.table.cell_rects(look, rect, self.widths), strict=True)
        for column, text, cell in cells:
            draw_middle(canvas, look, text, cell, style=style, align=column.align)

    def spots(self, look: Look, rect: Rect) -> tuple[Spot, ...]:
        """One, if rows can be picked; arrows go to the next row."""
        if not self.table.pickable:
            return ()
        keys = [row.key for row in self.table.rows]
        place = keys.index(self.key)
        moves = {"up": keys[max(0, place - 1)], "down": keys[min(len(keys) - 1, place + 1)]}
        return (Spot(key=self.key, rect=rect, effect=Chosen(self.table.key, self.key), moves=moves),)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A row; each cell says its column where that has a name."""
        places = self.table.cell_rects(look, rect, self.widths)
        cells = tuple(
            Node(
                f"{self.key}.{number}", "cell", f"{column.text} {text}" if number and column.text else text, bounds=box
            )
            for number, (column, text, box) in enumerate(zip(self.table.columns, self.row.cells, places, strict=True))
            if text
        )
        flags = states(selected=self.row.picked, focused=mood.focused == self.key)
        actions = ("press",) if self.table.pickable else ()
        return Node(self.key, "row", "", state=flags, bounds=rect, actions=actions, children=cells)

    def _draw_list(self, canvas: Canvas, look: Look, rect: Rect, style: str) -> None:
        y = rect.y
        for number, (column, text) in enumerate(zip(self.table.columns, self.row.cells, strict=True)):
            if not text:
                continue
            tall = max(text_height(look, text, rect.w, "strong"), line_step(look, "body"))
            line = Rect(rect.x, y, rect.w, tall)
            if number:
                draw_middle(canvas, look, column.text, line, style="small", color="soft", align="start")
            align: Align = "end" if number else "start"
            draw_middle(canvas, look, text, line, style=style if number else "strong", align=align)
            y += tall
