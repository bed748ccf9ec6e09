"""The table of published check values: ours, what is printed, the tolerance, and how well the source is known."""

from collections.abc import Iterator
from dataclasses import dataclass

from lab.figures.published.check_values import CheckValue, Mark, Number
from lab.figures.published.register import REGISTER


@dataclass(frozen=True, slots=True, kw_only=True)
class PublishedRow:
    """One published value.  name: its id.  mark, source: how well it is known, and where from.
    numbers: what it prints."""

    name: str
    mark: Mark
    source: str
    numbers: tuple[Number, ...]

    @property
    def met(self) -> bool:
        """Whether all of its numbers are."""
        return all(number.met for number in self.numbers)

    def as_line(self) -> str:
        """A line of the table."""
        columns = (
            f"{self.name}  {self.mark:6}  {'met' if self.met else 'missed':6}",
            "ours " + _joined(f"{number.ours:.7g}" for number in self.numbers),
            ("worked out " if self.mark == "ours" else "printed ") + _joined(_printed(each) for each in self.numbers),
            "to within " + _joined(f"{number.tolerance:g}" for number in self.numbers),
            self.source,
        )
        widths = (0, 40, 46, 36, 0)
        return "  ".join(f"{column:{width}}" for column, width in zip(columns, widths, strict=True))

    def as_json(self) -> dict[str, object]:
        """The same as JSON: a list of numbers for each column; `right` is null where the print is."""
        return {
            "name": self.name,
            "mark": self.mark,
            "source": self.source,
            "ours": [number.ours for number in self.numbers],
            "printed": [number.printed for number in self.numbers],
            "right": [number.right for number in self.numbers],
            "tolerance": [number.tolerance for number in self.numbers],
            "met": self.met,
        }


def published_row(value: CheckValue) -> PublishedRow:
    """A check value, worked out."""
    return PublishedRow(name=value.id, mark=value.mark, source=value.source, numbers=tuple(value.numbers()))


def published_rows() -> Iterator[PublishedRow]:
    """Every published value of the register, one at a time."""
    return map(published_row, REGISTER)


def _joined(texts: Iterator[str]) -> str:
    return " / ".join(texts)


def _printed(number: Number) -> str:
    if number.right is None:
        return f"{number.printed:.7g}"
    return f"{number.printed:.7g} (wrong in print: {number.right:.7g})"
