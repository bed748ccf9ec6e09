"""Plays a tilt on a channel of the mixer, where that has been opened: one piece sounds, the next one waits."""

import pygame
import pygame.mixer

from lab.ui.pygame_tilt_waves import Sounded, piece_of, ring_out

CHANNELS = 1
"""Of the mixer's, the first ones, for nothing but this."""

HUSH_MS = 120


class TiltTone:
    """What is heard of a tilt.  The mixer must be open and its first CHANNELS channels be left to this.

    wanting: whether there is more to be played, so that a call must follow within a piece.
    """

    def __init__(self) -> None:
        self.wanting = False
        self._sounded = Sounded()
        self._rung = False

    def follow(self, angle_rad: float | None, *, resting: bool) -> None:
        """Sound as the tilt is now, None for silence; once it rests, ring out, once.  To be called every frame.

        Raises pygame.error.
        """
        channel = pygame.mixer.Channel(0)
        if self._rung and not resting:
            # A ring is one long piece: what comes after it does not wait for its end.
            channel.fadeout(HUSH_MS)
            self._rung = False
        self.wanting = bool(self._sounded.loudness) if angle_rad is None else not self._rung
        if not self.wanting or channel.get_queue() is not None:
            return
        if angle_rad is None or not resting:
            samples, self._sounded = piece_of(self._sounded, angle_rad)
        else:
            samples, self._sounded = ring_out(self._sounded, angle_rad)
            self._rung = True
        channel.queue(pygame.mixer.Sound(buffer=samples.tobytes()))
        self.wanting = bool(self._sounded.loudness)
