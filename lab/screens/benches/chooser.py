"""The dialog behind *Benches*: a card for each bench, with a picture of it and what one does there."""

from __future__ import annotations

from lab.screens.benches.bench_pictures import bench_picture
from lab.screens.place_card import PlaceCard
from lab.simulation.benches.catalogue import BENCHES, BenchKind
from lab.ui.look import Look
from lab.ui.widgets.arrange import Column, Row, Spacer
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.dialog import Dialog
from lab.ui.widgets.widget import Widget

BENCHES_DIALOG, BENCHES_DONE = "benches-dialog", "benches-done"
BENCH_PREFIX = "bench-"
ALONG, STAYS, COMES = "bench-load", "stays", "comes"
_PICTURE_PX, _WIDE_PX, _GAP_PX = 70.0, 1100.0, 10.0
_LARGE_TEXT = 1.6
"""From here on one card has the width to itself."""


def benches_dialog(look: Look, now: BenchKind, *, along: bool = False) -> Dialog:
    """now: the bench that is shown.  along: whether what is built there comes along."""
    cards: list[Widget] = [_card(look, kind, here=kind is now) for kind in BENCHES.values()]
    large, narrow = look.sizes.text_scale > _LARGE_TEXT, look.sizes.text_scale > 1.0 or look.sizes.portrait
    beside = 1 if large else 2 if narrow else 3
    cards += [Spacer()] * (-len(cards) % beside)
    rows = tuple(Row(tuple(cards[first : first + beside]), gap=_GAP_PX) for first in range(0, len(cards), beside))
    say = look.words.say
    done = Button(BENCHES_DONE, say("Stay here"), kind="main")
    options = ((STAYS, say("stays on this bench")), (COMES, say("comes along")))
    choice = ChoiceRow(ALONG, say("What you have built here"), options, COMES if along else STAYS)
    children = (choice, Column(rows, gap=_GAP_PX))
    return Dialog(BENCHES_DIALOG, say("Where to build"), children=children, buttons=(done,), width=_WIDE_PX)


def bench_chosen(key: str) -> str | None:
    """The bench that a press asks for; None for any other key."""
    name = key.removeprefix(BENCH_PREFIX)
    return name if key.startswith(BENCH_PREFIX) and name in BENCHES else None


def _card(look: Look, kind: BenchKind, *, here: bool) -> PlaceCard:
    say = look.words.say
    told = say("You are here.") if here else ""
    picture = bench_picture(look, kind.name)
    return PlaceCard(
        f"{BENCH_PREFIX}{kind.name}", say(kind.title), say(kind.note), picture, side=_PICTURE_PX, here=told
    )
