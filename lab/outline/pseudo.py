"""A made-up language that shows, before any translator is asked, what a translation would break.

Letters get accents (missing glyphs show), text grows by about 40 per cent (tight boxes show) and every whole
sentence stands in brackets (glued pieces and strings that miss the catalogue show).
"""

from string import Formatter

_PLAIN = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
_DRESSED = "åƀçðéƒğĥîĵķļɱñöþǫřšţûṽŵẋýžÅƁÇÐÉƑĞĤÎĴĶĻṀÑÖÞǪŘŠŢÛṼŴẊÝŽ"
_ACCENTS = str.maketrans(_PLAIN, _DRESSED)
_VOWELS = frozenset("aeiouyAEIOUY")
GROWTH = 0.4


def _grown(text: str) -> str:
    """The text with vowels repeated until it is longer by GROWTH; the debt is carried along the sentence."""
    grown: list[str] = []
    owed = 0.0
    for letter in text:
        grown.append(letter)
        owed += GROWTH
        if letter in _VOWELS and owed >= 0.5:
            repeats = round(owed)
            grown.append(letter.lower() * repeats)
            owed -= repeats
    return "".join(grown)


def dressed(text: str) -> str:
    """A finished text, accented, grown and bracketed. An empty text stays empty."""
    return f"[{_grown(text).translate(_ACCENTS)}]" if text else text


def dressed_template(template: str) -> str:
    """The same for a template: what stands in {braces} is kept as it is, so that it still formats."""
    if not template:
        return template
    pieces: list[str] = []
    for literal, field, spec, conversion in Formatter().parse(template):
        pieces.append(_grown(literal).translate(_ACCENTS).replace("{", "{{").replace("}", "}}"))
        if field is not None:
            tail = (f"!{conversion}" if conversion else "") + (f":{spec}" if spec else "")
            pieces.append("{" + field + tail + "}")
    return f"[{''.join(pieces)}]"
