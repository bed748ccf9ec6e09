"""The keys of what the strip for what is picked holds at every bench, and of what is taken up and on its way.

Apart from the widgets: what answers to them must not wait for those to load.
"""

from __future__ import annotations

STRIP, PLACE, WEIGHT_FIELD, REMOVE = "strip", "picked-place", "picked-weight", "picked-remove"
MORE, NAME, COPY, MIRROR = "picked-more", "picked-new-name", "picked-copy", "picked-mirror"
TIE, UNTIE, TIE_CANCEL = "picked-tie", "picked-untie", "tie-cancel"
WATER, BEADS = "picked-water", "picked-beads"
GHOST = "on-its-way"
