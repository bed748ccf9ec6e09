"""What the strip does with a part that is picked, at every bench: its second half, its name, copies, ties."""

from __future__ import annotations

from dataclasses import dataclass, field

from lab.screens.benches.naming import Naming
from lab.screens.benches.strip_keys import COPY, MIRROR, MORE, NAME, TIE, TIE_CANCEL, UNTIE
from lab.simulation import Command
from lab.simulation.part_commands import Copy, Rename, Tie, Untie


@dataclass(slots=True)
class PartStrip:
    """What is half done with the part that is picked.

    more: whether the second half of what can be done to it is shown.  tying: whether the next part that is pressed is
    what it is to be tied to.  naming: its name, as it is typed.
    """

    more: bool = False
    tying: bool = False
    naming: Naming = field(default_factory=Naming)

    def let_go(self, *, more: bool = False) -> None:
        """Something else is picked, or nothing: no name is half typed and no tie looked for.  more: what then shows."""
        self.more, self.tying, self.naming.draft = more, False, None

    def pressed(self, key: str, part: int | None) -> tuple[Command, ...] | None:
        """The commands of a press.  part: the id of what is picked.  None where it is no button of the strip."""
        if key not in (MORE, NAME, COPY, MIRROR, TIE, UNTIE, TIE_CANCEL):
            return None
        name = self.naming.taken()
        if key == MORE:
            self.more = not self.more
        elif key in (TIE, TIE_CANCEL):
            self.tying = key == TIE and part is not None
        elif part is None:
            return ()
        elif key == NAME:
            return () if name is None else (Rename(part, name),)
        elif key == UNTIE:
            return (Untie(part),)
        else:
            return (Copy(part, mirrored=key == MIRROR),)
        return ()

    def tied(self, part: int | None, to: int | None) -> tuple[Command, ...] | None:
        """The commands of a press on another part; None where no tie is looked for.

        part: the id of what is picked.  to: of what was pressed, None where that is no part.
        """
        if not self.tying:
            return None
        if part is None or to is None or part == to:
            return ()
        self.tying = False
        return (Tie(part, to),)
