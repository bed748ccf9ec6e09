"""The moment sum of a build, as a JSON object or as a table to pin on a wall."""

from __future__ import annotations

from typing import Any

from lab.files import UNITS, Build
from lab.mechanics import Vector
from lab.outline.words import Words, msg
from lab.terminal.sum_document import sum_document
from lab.terminal.sum_layout import aligned, decimals_for, doubt_decimals, text_width
from lab.terminal.sum_sections import further_sections

__all__ = ["aligned", "decimals_for", "doubt_decimals", "sum_document", "sum_table"]

_AXES = (msg("along"), msg("across"), msg("up"))
_PLACES = (msg("{place} {unit} along"), msg("{place} {unit} across"), msg("{place} {unit} up"))
_ARMS = (msg("arm across {unit}"), msg("arm up {unit}"))
_MOMENTS = (msg("moment across {unit}"), msg("moment up {unit}"))
# What most people can hold on one finger without dropping it on a foot; heavier tools want two hands under them.
_HEAVY_KG = 2.0


def sum_table(build: Build, words: Words, *, reference: Vector | None = None, units: str | None = None) -> str:
    """The moment sum as lines of text with aligned columns, no line end after the last.

    Arguments and Raises as for ``sum_document``. Columns across and up show only where there is something
    in them.
    """
    document = sum_document(build, reference=reference, units=units)
    sheet = _Sheet(document, words)
    lines = [words.content(build.title), sheet.measured_from(), "", *sheet.table(), "", *sheet.balance()]
    if "pivot" in document:
        lines.append(sheet.pivot())
    if "reactions" in document:
        lines += sheet.reactions()
    for section in further_sections(document, words):
        lines += ["", *section]
    cautions = _cautions(build, document, words)
    if cautions:
        lines += ["", *cautions]
    return "\n".join(lines)


class _Sheet:
    """A sum document in words: it knows the axes that matter and how each column is written."""

    def __init__(self, document: dict[str, Any], words: Words) -> None:
        self._document = document
        self._words = words
        system = UNITS[document["units"]]
        self._weight_unit, self._length_unit = system.weight_word, system.length_word
        self._moment_unit = system.moment_word
        self._axes = [axis for axis in range(3) if axis == 0 or self._matters(axis)]
        parts = document["parts"]
        # Whole grams and tenths of a centimetre are what a scale and a ruler show; other units differ too much.
        self._least = 1 if system.name == "g-cm" else 2
        self._weight_decimals = decimals_for([*(part["weight"] for part in parts), document["weight"]], least=0)
        arms = [part["arm"][axis] for part in parts for axis in self._axes]
        moments = [part["moment"][axis] for part in parts for axis in self._axes]
        moments += [document["moment"][axis] for axis in self._axes]
        self._arm_decimals = decimals_for(arms, least=self._least)
        self._moment_decimals = decimals_for(moments, least=0)

    def _matters(self, axis: int) -> bool:
        document = self._document
        numbers = [part["arm"][axis] for part in document["parts"]]
        numbers += [document["balance_point"][axis], (document["doubt"] or [0.0] * 3)[axis]]
        return any(number != 0 for number in numbers)

    def measured_from(self) -> str:
        """Where the arms are measured from."""
        reference, words = self._document["reference"], self._words
        templates = _PLACES if len(self._axes) > 1 else (msg("{place} {unit}"),)
        place = ", ".join(
            words.say(templates[axis], place=self._length(reference[axis]), unit=self._length_unit)
            for axis in self._axes
        )
        return words.say("Arms are measured from {place}.", place=place)

    def table(self) -> list[str]:
        """Heading, one row a part, a rule, the sum."""
        words = self._words
        rows = [self._heading()]
        for part in self._document["parts"]:
            name = words.content(part["name"])
            rows.append([name, self._weight(part["weight"]), *self._arms_and_moments(part)])
        total = [words.say("sum"), self._weight(self._document["weight"])]
        for axis in self._axes:
            total += ["", self._moment(self._document["moment"][axis])]
        lines = aligned([*rows, total])
        rule = "─" * max(map(text_width, lines))
        return [*lines[:-1], rule, lines[-1]]

    def _heading(self) -> list[str]:
        words = self._words
        heading = [words.say("part"), words.say("weight {unit}", unit=self._weight_unit)]
        for axis in self._axes:
            arm = _ARMS[axis - 1] if axis else msg("arm {unit}")
            moment = _MOMENTS[axis - 1] if axis else msg("moment {unit}")
            heading += [words.say(arm, unit=self._length_unit), words.say(moment, unit=self._moment_unit)]
        return heading

    def _arms_and_moments(self, part: dict[str, Any]) -> list[str]:
        cells = []
        for axis in self._axes:
            cells.append(self._words.number(part["arm"][axis], self._arm_decimals))
            cells.append(self._moment(part["moment"][axis]))
        return cells

    def balance(self) -> list[str]:
        """The division that gives the balance point, and its doubt where that is stated; by axis."""
        lines = []
        for axis in self._axes:
            sentences = [self._division(axis)]
            doubt = (self._document["doubt"] or [0.0] * 3)[axis]
            if doubt > 0:
                sentences.append(self._doubt(axis, doubt))
            lines += sentences if len(self._axes) == 1 else [self._on_axis(axis, each) for each in sentences]
        return lines

    def _on_axis(self, axis: int, sentence: str) -> str:
        return self._words.say("{axis}: {sentence}", axis=self._words.say(_AXES[axis]), sentence=sentence)

    def _division(self, axis: int) -> str:
        document = self._document
        place, reference = document["balance_point"][axis], document["reference"][axis]
        values = {
            "moment": self._moment(document["moment"][axis]),
            "weight": self._weight(document["weight"]),
            "place": self._length(place),
            "unit": self._length_unit,
        }
        if reference == 0:
            return self._words.say("{moment} / {weight} = {place} {unit}", **values)
        return self._words.say(
            "{moment} / {weight} = {arm} {unit} from the reference line at {reference} {unit}; "
            "balance point {place} {unit}",
            arm=self._length(place - reference),
            reference=self._length(reference),
            **values,
        )

    def _doubt(self, axis: int, doubt: float) -> str:
        """The balance point with no more decimals than its doubt leaves worth reading."""
        decimals = doubt_decimals(doubt)
        return self._words.say(
            "{place} ± {doubt} {unit} (± one standard uncertainty)",
            place=self._words.number(self._document["balance_point"][axis], decimals),
            doubt=self._words.number(doubt, decimals),
            unit=self._length_unit,
        )

    def pivot(self) -> str:
        """What happens on the pivot, in one sentence."""
        pivot = self._document["pivot"]
        words, tilt = self._words, pivot["tilt"]
        at, unit = self._length(pivot["at"]), self._length_unit
        if pivot["goes"] == "level":
            return words.say("On the pivot at {at} {unit} it stays level.", at=at, unit=unit)
        # As many figures as it needs: what makes an end drop must not be written as 0.
        turning = abs(pivot["moment"])
        moment = words.number(turning, decimals_for([turning], least=self._moment_decimals))
        values = {"at": at, "unit": unit, "moment": moment, "moment_unit": self._moment_unit}
        if pivot["goes"] == "left":
            turns = words.say(
                "On the pivot at {at} {unit} the left end drops: {moment} {moment_unit} anticlockwise.", **values
            )
        else:
            turns = words.say(
                "On the pivot at {at} {unit} the right end drops: {moment} {moment_unit} clockwise.", **values
            )
        if tilt is None:
            rests = words.say("Nothing holds it before the stop.")
        else:
            shown = words.number(abs(tilt), max(1, doubt_decimals(abs(tilt))))
            rests = words.say("It comes to rest at a tilt of {tilt}°.", tilt=shown)
        return f"{turns} {rests}"

    def reactions(self) -> list[str]:
        """What each support carries, one line a support."""
        words, reactions = self._words, self._document["reactions"]
        if reactions is None:
            return [words.say("It tips: the balance point lies outside the supports.")]
        decimals = self._force_decimals([reaction["force"] for reaction in reactions])
        return [
            words.say(
                "{support} carries {force} {unit}",
                support=words.content(reaction["name"]),
                force=words.number(reaction["force"], decimals),
                unit=self._weight_unit,
            )
            for reaction in reactions
        ]

    def _force_decimals(self, forces: list[float]) -> int:
        """One more decimal than the weights have, so that the forces add up to the weight as they are written.

        Fewer where fewer say it all; more where a force would be written as 0 and is not.
        """
        carried = [force for force in forces if force > 0]
        most = self._weight_decimals + 1
        return max(min(decimals_for(forces, least=0), most), *(doubt_decimals(force) for force in carried))

    def _weight(self, weight: float) -> str:
        return self._words.number(weight, self._weight_decimals)

    def _moment(self, moment: float) -> str:
        return self._words.number(moment, self._moment_decimals)

    def _length(self, length: float) -> str:
        return self._words.number(length, decimals_for([length], least=self._least))


def _cautions(build: Build, document: dict[str, Any], words: Words) -> list[str]:
    """The lines that keep toes and fingers whole, and aircraft in the air, where there is something at stake."""
    cautions = []
    if any(part.hold == "hung" for part in build.loads):
        cautions.append(words.say("Caution: hung weights fall. Keep toes and fingers from under them."))
    elif sum(part.mass_kg for part in build.all_parts if not part.cut) >= _HEAVY_KG:
        cautions.append(words.say("Caution: this is heavy. Keep fingers from under it when you let go."))
    if "caution" in document:
        cautions.append(words.say(document["caution"]))
    return cautions
