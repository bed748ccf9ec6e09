"""`tiltbench snap`: any screen in any state, drawn into a picture file without a display."""

from __future__ import annotations

import argparse
from pathlib import Path

from lab.app.console import Console, Stopped
from lab.app.paths import Paths
from lab.files import near
from lab.outline.words import LANGUAGES, Words
from lab.screens.gallery import GALLERY
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES


def run(args: argparse.Namespace, console: Console, paths: Paths) -> int:
    """List the screens, or draw one."""
    if args.list:
        width = max(map(len, GALLERY))
        for name, entry in GALLERY.items():
            console.result(f"{name:<{width}}  {console.words.say(entry.says)}")
        return 0
    say = console.words.say
    if args.screen is None or args.output is None:
        raise Stopped(
            say("tiltbench snap: a screen and a file are needed, as in `tiltbench snap start -o start.png`"), code=2
        )
    if args.screen not in GALLERY:
        nearest = near(args.screen, GALLERY)
        cure = say("the nearest is {near}", near=nearest) if nearest else say("`tiltbench snap --list` shows them")
        raise Stopped(say("snap: there is no screen {name}; {cure}", name=args.screen, cure=cure))
    if args.lang not in LANGUAGES:
        known = ", ".join(LANGUAGES)
        raise Stopped(say("snap: there is no language {name}; there are {known}", name=args.lang, known=known))
    _draw(args, console)
    return 0


def _draw(args: argparse.Namespace, console: Console) -> None:
    from lab.ui.pygame_offscreen import save_picture

    words = Words(args.lang)
    width, height = args.size
    sizes = Sizes(width=width, height=height, text_scale=args.scale, mirrored=words.mirrored)
    screen = GALLERY[args.screen].make(Look(theme=THEMES[args.theme], sizes=sizes, words=words))
    canvas = ListCanvas((width, height))
    screen.draw(canvas)
    try:
        save_picture(canvas.ops, (width, height), Path(args.output))
    except OSError as error:
        raise Stopped(
            console.words.say(
                "{file}: the picture cannot be written; name a file that ends in .png, in a folder that is there",
                file=args.output,
            )
        ) from error
