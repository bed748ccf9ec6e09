"""Character widths measured from the font files: how the shipped table is made and checked."""

from pathlib import Path
from typing import Any

import pygame

from lab.ui.assets import font_file

UNITS_PER_EM = 2048
# Latin with its extensions, Greek, punctuation, currency, letter-like, number forms, arrows, mathematics,
# technical and geometric signs: what a screen or a translation may hold.
RANGES = (
    (0x20, 0x7E), (0xA0, 0x2DD), (0x370, 0x3FF), (0x400, 0x45F), (0x1E00, 0x1EFF),
    (0x2000, 0x206F), (0x2070, 0x209C), (0x20A0, 0x20BF), (0x2100, 0x214F), (0x2150, 0x218B),
    (0x2190, 0x21FF), (0x2200, 0x22FF), (0x25A0, 0x25FF), (0x2700, 0x27BF),
)  # fmt: skip


def _face(file: Path) -> dict[str, Any]:
    font = pygame.font.Font(str(file), UNITS_PER_EM)
    # The shape of a missing character is what stands for every character that the table leaves out.
    missing = font.metrics("\uffff")[0]
    other = round(font.size("\uffff")[0]) if missing is None else missing[4]
    widths = {}
    for first, last in RANGES:
        for code in range(first, last + 1):
            found = font.metrics(chr(code))[0]
            if found is not None and found[4] != other:
                widths[f"{code:x}"] = found[4]
    return {"other": other, "widths": widths}


def measured_table(folder: Path | None = None) -> dict[str, Any]:
    """What assets/fonts/andika-widths.json holds, measured anew; written there with json.dumps(indent=0)."""
    pygame.font.init()
    return {
        "units_per_em": UNITS_PER_EM,
        "regular": _face(font_file(bold=False, folder=folder)),
        "bold": _face(font_file(bold=True, folder=folder)),
    }
