"""What a sum says below its table: tanks, limits, mean chord and margin, inertia, symmetry."""

from __future__ import annotations

from typing import Any

from lab.files import UNITS
from lab.outline.words import Words, msg
from lab.terminal.sum_layout import aligned, decimals_for, doubt_decimals

_AXES = (msg("along"), msg("across"), msg("up"))

_GOES = {
    "steady": msg("steady in pitch"),
    "neutral": msg("neutral in pitch"),
    "runs away": msg("runs away in pitch"),
}
_SURENESS = {
    "sure": msg("This is sure."),
    "likely": msg("This is likely, not sure."),
    "open": msg("So close to the line it is open."),
}
_SAVES = {
    "along": msg("Front and back are alike: the sum along may be left out."),
    "across": msg("Left and right are alike: the sum across may be left out."),
    "up": msg("Above and below are alike: the sum up may be left out."),
}
_NEARLY = {
    "along": msg("Front and back are nearly alike: without the sum along it would be {miss} {unit} out."),
    "across": msg("Left and right are nearly alike: without the sum across it would be {miss} {unit} out."),
    "up": msg("Above and below are nearly alike: without the sum up it would be {miss} {unit} out."),
}


def further_sections(document: dict[str, Any], words: Words) -> list[list[str]]:
    """Groups of lines, each to stand below an empty one; none where a build has nothing but parts."""
    sections = _Sections(document, words)
    found = []
    if "tanks" in document:
        found.append(sections.tanks())
    if "limits" in document:
        found.append(sections.limits())
    if "pitch" in document:
        found.append(sections.pitch())
    if "caution" in document or any("/" in part["name"] for part in document["parts"]):
        found.append([*sections.symmetry(), *sections.inertia()])
    return [section for section in found if section]


class _Sections:
    def __init__(self, document: dict[str, Any], words: Words) -> None:
        self._document = document
        self._words = words
        self._system = UNITS[document["units"]]
        self._least = 1 if self._system.name == "g-cm" else 2

    def tanks(self) -> list[str]:
        """What is in each tank, and where it balances with all of them empty or full."""
        words, tanks = self._words, self._document["tanks"]
        volumes = [each[key] for each in tanks for key in ("contents", "capacity")]
        decimals = decimals_for(volumes, least=0)
        weight_decimals = decimals_for([each["weight"] for each in tanks], least=0)
        unit = self._system.volume_word
        rows = [
            [
                words.say("tank"),
                words.say("contents {unit}", unit=unit),
                words.say("capacity {unit}", unit=unit),
                words.say("full %"),
                words.say("weight {unit}", unit=self._system.weight_word),
            ]
        ]
        for tank in tanks:
            contents, capacity = (words.number(tank[key], decimals) for key in ("contents", "capacity"))
            full = words.number(100 * tank["share"], 0)
            name = words.content(tank["name"])
            rows.append([name, contents, capacity, full, words.number(tank["weight"], weight_decimals)])
        lines = aligned(rows)
        empty, full_up = self._document["tanks_empty"], self._document["tanks_full"]
        if empty is not None:
            lines.append(words.say("With the tanks empty: {where}.", where=self._loaded(empty)))
        if full_up is not None:
            lines.append(words.say("With the tanks full: {where}.", where=self._loaded(full_up)))
        return lines

    def _loaded(self, loaded: dict[str, Any]) -> str:
        template = msg("{weight} {weight_unit}, balance point {place} {unit} along")
        if loaded.get("inside") is True:
            template = msg("{weight} {weight_unit}, balance point {place} {unit} along, inside the limits")
        elif loaded.get("inside") is False:
            template = msg("{weight} {weight_unit}, balance point {place} {unit} along, OUTSIDE the limits")
        return self._words.say(
            template,
            weight=self._weight(loaded["weight"]),
            weight_unit=self._system.weight_word,
            place=self._length(loaded["balance_point"][0]),
            unit=self._system.length_word,
        )

    def limits(self) -> list[str]:
        """Inside, or out by how much; then what is allowed."""
        words, limits = self._words, self._document["limits"]
        lines = [words.say("Inside the limits.") if limits["inside"] else words.say("OUTSIDE the limits.")]
        weight_out = limits["weight_out"]
        if weight_out:
            template = (
                msg("It weighs {weight} {unit} more than they allow.")
                if weight_out > 0
                else msg("It weighs {weight} {unit} less than they allow for.")
            )
            lines.append(words.say(template, weight=self._weight(abs(weight_out)), unit=self._system.weight_word))
        if limits["along"]:
            spans = [self._span(*span) for span in limits["along"]]
            line = words.say("Allowed along at this weight: {span}.", span=words.say("; ").join(spans))
            lines.append(f"{line} {self._room(limits['along_out'], limits['along_margin'])}")
        if limits["across"] is not None:
            line = words.say("Allowed across: {span}.", span=self._span(*limits["across"]))
            lines.append(f"{line} {self._room(limits['across_out'], limits['across_margin'])}")
        return lines

    def _span(self, low: float, high: float) -> str:
        return self._words.say(
            "{low} to {high} {unit}",
            low=self._length(low),
            high=self._length(high),
            unit=self._system.length_word,
        )

    def _room(self, out: float | None, margin: float | None) -> str:
        template = msg("The balance point is {distance} {unit} from the nearer edge.")
        if out:
            template = (
                msg("The balance point is {distance} {unit} beyond.")
                if out > 0
                else msg("The balance point is {distance} {unit} short of it.")
            )
        distance = abs(out) if out else margin or 0.0
        return self._words.say(template, distance=self._length(distance), unit=self._system.length_word)

    def pitch(self) -> list[str]:
        """Mean chord, neutral point, margin, and what the margin means."""
        words, document = self._words, self._document
        unit, chord, neutral = self._system.length_word, document["mean_chord"], document["neutral_point"]
        lines = []
        if chord is not None:
            lines.append(
                words.say(
                    "Mean chord of {surface}: {length} {unit}, from {at} {unit}; the balance point lies at {percent} % "
                    "of it.",
                    surface=words.content(chord["surface"]),
                    length=self._length(chord["length"]),
                    at=self._length(chord["at"]),
                    percent=words.number(chord["balance_point_percent"], 1),
                    unit=unit,
                )
            )
        if neutral is None:
            return [*lines, words.say("No neutral point: {why}.", why=document["pitch"]["why"])]
        lines.append(
            words.say(
                "Neutral point {at} {unit}, at {percent} % of the mean chord; by the short formula {short} {unit}.",
                at=self._modelled(neutral["at"]),
                percent=words.number(neutral["percent"], 1),
                short=self._modelled(neutral["by_short_formula"]),
                unit=unit,
            )
        )
        pitch = document["pitch"]
        goes = words.say(
            "Margin {margin} % ± {doubt} % of the mean chord (± one standard uncertainty): {goes}.",
            margin=words.number(100 * document["margin"], 1),
            doubt=words.number(100 * pitch["margin_doubt"], 1),
            goes=words.say(_GOES[pitch["goes"]]),
        )
        return [*lines, f"{goes} {words.say(_SURENESS[pitch['sureness']])}"]

    def symmetry(self) -> list[str]:
        """The sums that a plane of symmetry saves, where there is anything to save."""
        lines = []
        for plane in self._document["symmetry"] or ():
            axis = plane["saves"]
            if axis is None or not self._reaches(axis):
                continue
            miss = self._length(plane["miss"])
            template = _SAVES[axis] if plane["exact"] else _NEARLY[axis]
            lines.append(self._words.say(template, miss=miss, unit=self._system.length_word))
        return lines

    def _reaches(self, axis: str) -> bool:
        """Whether anything lies off the middle on an axis."""
        index = ("along", "across", "up").index(axis)
        return len({part["arm"][index] for part in self._document["parts"]}) > 1

    def inertia(self) -> list[str]:
        """How hard it is to turn about its balance point."""
        inertia, words = self._document["inertia"], self._words
        if inertia is None:
            return []
        diagonal = [inertia["tensor"][axis][axis] for axis in range(3)]
        decimals = decimals_for(diagonal, least=0)
        about = ", ".join(
            f"{words.number(value, decimals)} {words.say(axis)}" for value, axis in zip(diagonal, _AXES, strict=True)
        )
        principal = ", ".join(words.number(value, decimals) for value in inertia["principal"])
        unit = f"{self._system.moment_word}²"
        lines = [words.say("Inertia about the balance point, in {unit}, about: {about}.", unit=unit, about=about)]
        if sorted(diagonal) != inertia["principal"]:
            lines.append(words.say("About its principal axes: {principal}.", principal=principal))
        return lines

    def _weight(self, weight: float) -> str:
        return self._words.number(weight, decimals_for([weight], least=0))

    def _length(self, length: float) -> str:
        return self._words.number(length, decimals_for([length], least=self._least))

    def _modelled(self, length: float) -> str:
        """A place that a model gives: no more figures than it is good for, a few hundredths of the mean chord."""
        good_for = self._document["mean_chord"]["length"] / 30
        return self._words.number(length, max(self._least, doubt_decimals(good_for)))
