"""Every string that a person sees or hears passes here: whole sentences, plurals, numbers by language."""

import gettext
import math
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from lab.outline.pseudo import dressed, dressed_template

DOMAIN = "tiltbench"
PSEUDO = "xx"
MIRRORED_PSEUDO = "xr"
MINUS = "\N{MINUS SIGN}"
NARROW_SPACE = "\N{NARROW NO-BREAK SPACE}"


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberForm:
    """How a language writes numbers: the mark before decimals, the space between thousands."""

    decimal: str = "."
    group: str = NARROW_SPACE


NUMBER_FORMS: Mapping[str, NumberForm] = {
    "en": NumberForm(),
    PSEUDO: NumberForm(),
    MIRRORED_PSEUDO: NumberForm(),
}
RIGHT_TO_LEFT = frozenset({MIRRORED_PSEUDO})
LANGUAGES = tuple(NUMBER_FORMS)


def msg(template: str) -> str:
    """Marks a template that is kept as a value, so that catalogue_messages finds it. Returns it unchanged."""
    return template


class Words:
    """One language's way of saying things."""

    __slots__ = ("_catalogue", "_form", "_pseudo", "language", "mirrored")

    def __init__(self, language: str = "en", *, catalogues: Path | None = None) -> None:
        """language: one of LANGUAGES.  catalogues: folder with compiled gettext files, None for none.

        Raises ValueError for a language that is not there.
        """
        if language not in NUMBER_FORMS:
            raise ValueError(f"language {language!r} is not there; there are {', '.join(LANGUAGES)}")
        self.language = language
        self.mirrored = language in RIGHT_TO_LEFT
        self._pseudo = language in (PSEUDO, MIRRORED_PSEUDO)
        self._form = NUMBER_FORMS[language]
        self._catalogue: gettext.NullTranslations = gettext.NullTranslations()
        if catalogues is not None and not self._pseudo:
            self._catalogue = gettext.translation(DOMAIN, catalogues, [language], fallback=True)

    def say(self, msgid: str, /, **values: str) -> str:
        """A sentence of the catalogue with its values put in.

        values: text already finished; a number goes through `number` first.  Raises TypeError otherwise.
        """
        return self._filled(self._catalogue.gettext(msgid) if msgid else "", values)

    def plural(self, one: str, many: str, n: int, /, **values: str) -> str:
        """The sentence that fits the count; {n} in it is the count, written as this language does."""
        return self._filled(self._catalogue.ngettext(one, many, n), {"n": self.number(n, 0), **values})

    def content(self, text: str) -> str:
        """Text by a lesson's writer: shown as written; the made-up languages dress it, to test the layout."""
        return dressed(text) if self._pseudo else text

    def number(self, value: float, decimals: int = 0) -> str:
        """A number as it is written: 22 200 with narrow no-break spaces, 44.4, a true minus sign, never −0.

        Raises ValueError if the value is not finite.
        """
        if not math.isfinite(value):
            raise ValueError(f"number: {value} cannot be written; a finite value would do")
        text = f"{value:,.{decimals}f}"
        if not text.strip("-0,."):
            text = text.lstrip("-")
        marks = {ord(","): self._form.group, ord("."): self._form.decimal, ord("-"): MINUS}
        return text.translate(marks)

    def _filled(self, template: str, values: Mapping[str, str]) -> str:
        for name, value in values.items():
            if not isinstance(value, str):
                raise TypeError(f"{name}={value!r} is not text; words.number would make it so")
        shown = dressed_template(template) if self._pseudo else template
        return shown.format_map(values) if values or "{" in shown else shown
