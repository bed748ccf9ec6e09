"""What every widget, scene and screen is given to look right: colours, sizes, words."""

from dataclasses import dataclass

from lab.outline import Words
from lab.ui.sizes import Sizes
from lab.ui.theme import Theme


@dataclass(frozen=True, slots=True)
class Look:
    """Colours, sizes and words of one window; reduced_motion: things jump to where they end."""

    theme: Theme
    sizes: Sizes
    words: Words
    reduced_motion: bool = False
