"""Small sounds, made by arithmetic: brass that is hung, wood that begins to swing and at its stop, a pencil.

And the tones of a tilt, for whoever wants to hear them.

The mixer is opened alone, and only when something is to be heard: a lab that is silent never asks for the sound
device.  Where there is none, it is silent and says so once.
"""

from collections.abc import Mapping
from typing import Literal

import numpy as np
import pygame
import pygame.mixer
from numpy.typing import NDArray

from lab.ui.pygame_tilt_tone import CHANNELS, TiltTone
from lab.ui.pygame_tilt_waves import RATE_HZ

SoundName = Literal["clink", "creak", "knock", "scratch"]

Wave = NDArray[np.float64]

LOUDNESS: Mapping[SoundName, float] = {"clink": 0.35, "creak": 0.14, "knock": 0.35, "scratch": 0.35}
"""Of full scale, at the loudest sample: heard across a table, not across a classroom."""

BUFFER = 512
"""Samples: 12 ms.  More, and the clink comes after the eye has seen it; less, and slow machines crackle."""

# A struck bar rings at frequencies that are no whole multiples of each other; the upper ones die away first.
# (hertz, share, seconds to 1/e)
_BRASS = ((2093.0, 1.0, 0.14), (3520.0, 0.55, 0.09), (5587.0, 0.35, 0.05), (8372.0, 0.2, 0.03))
_WOOD = ((196.0, 1.0, 0.035), (311.0, 0.6, 0.025), (523.0, 0.25, 0.012))
# A wooden ring that sticks and slips, faster and faster: each slip knocks once at these.
_GRAIN = ((410.0, 1.0, 0.006), (735.0, 0.7, 0.005), (1180.0, 0.35, 0.003))
_SLIPS_HZ = (34.0, 62.0)
_CREAK_S = 0.32
_ATTACK_S = 0.002
_OTHERS = 8
"""Channels for all sounds but a tilt, as many as the mixer has of itself."""
_PENCIL_S = 0.24
_NOISE_SEED = 1887


def samples(name: SoundName) -> NDArray[np.int16]:
    """One sound, mono, 16 bit at RATE_HZ.  The same every time."""
    wave = {"clink": _clink, "creak": _creak, "knock": _knock, "scratch": _scratch}[name]()
    loudest = float(np.max(np.abs(wave)))
    return np.asarray(np.round(wave / loudest * LOUDNESS[name] * 32767), dtype=np.int16)


def _times(length_s: float) -> Wave:
    return np.arange(int(length_s * RATE_HZ), dtype=np.float64) / RATE_HZ


def _struck(partials: tuple[tuple[float, float, float], ...], length_s: float) -> Wave:
    t = _times(length_s)
    wave: Wave = np.zeros_like(t)
    for hertz, share, fade_s in partials:
        wave += share * np.sin(2 * np.pi * hertz * t) * np.exp(-t / fade_s)
    # A sound that begins or ends on a step clicks.
    wave *= np.minimum(1.0, t / _ATTACK_S) * np.minimum(1.0, (t[-1] - t) / _ATTACK_S)
    return wave


def _clink() -> Wave:
    return _struck(_BRASS, 0.6)


def _creak() -> Wave:
    """Slips that come ever faster, swelling and dying away together."""
    t = _times(_CREAK_S)
    first_hz, last_hz = _SLIPS_HZ
    slipped = np.floor(first_hz * t + (last_hz - first_hz) * t**2 / (2 * _CREAK_S))
    slips: Wave = np.diff(slipped, prepend=0.0)
    wave: Wave = np.convolve(slips, _struck(_GRAIN, 0.04))[: len(t)]
    wave *= np.sin(np.pi * t / t[-1]) ** 2
    return wave


def _knock() -> Wave:
    return _struck(_WOOD, 0.2)


def _scratch() -> Wave:
    """Noise without its low part, in two strokes."""
    t = _times(_PENCIL_S)
    noise = np.random.default_rng(_NOISE_SEED).standard_normal(len(t) + 1)
    wave: Wave = np.diff(noise)
    wave *= np.sin(2 * np.pi * t / _PENCIL_S) ** 2
    return wave


class Speaker:
    """Plays sounds where there is something to play them on.

    enabled: whether anybody wants to hear them.  trouble: the system's own words once the device has failed, else "".
    """

    def __init__(self, *, enabled: bool = True) -> None:
        self.enabled = enabled
        self.trouble = ""
        self._told = False
        self._opened = False
        self._sounds: dict[SoundName, pygame.mixer.Sound] = {}
        self._tone = TiltTone()

    def play(self, name: SoundName) -> None:
        """Play a sound; silent where it is switched off or where there is no device. Never raises for want of one."""
        if not self.enabled or self.trouble:
            return
        try:
            self._sound(name).play()
        except pygame.error as error:
            self._give_up(str(error))

    def lean(self, angle_rad: float | None, *, resting: bool = False) -> None:
        """Let a tilt be heard as it is now; what rests rings out.  Never raises for want of a device.

        angle_rad: anticlockwise positive; None for silence.  To be called every frame, and again while `wanting`.
        """
        if not self.enabled or self.trouble or (angle_rad is None and not self._opened):
            return
        try:
            self._open()
            self._tone.follow(angle_rad, resting=resting)
        except pygame.error as error:
            self._give_up(str(error))

    @property
    def wanting(self) -> bool:
        """Whether a tilt is not told to its end yet, so that `lean` must be called in the next frame."""
        return self._tone.wanting

    def news(self) -> Mapping[str, str] | None:
        """Once, after the device has failed: its own words as "why".  None before, and ever after."""
        if not self.trouble or self._told:
            return None
        self._told = True
        return {"why": self.trouble}

    def close(self) -> None:
        """Give the device back."""
        if self._opened:
            pygame.mixer.quit()
        self._opened = False
        self._sounds.clear()
        self._tone = TiltTone()

    def _sound(self, name: SoundName) -> pygame.mixer.Sound:
        self._open()
        if name not in self._sounds:
            self._sounds[name] = pygame.mixer.Sound(buffer=samples(name).tobytes())
        return self._sounds[name]

    def _open(self) -> None:
        if self._opened:
            return
        # The mixer alone: pygame.init() would open everything that there is.
        pygame.mixer.init(RATE_HZ, -16, 1, BUFFER, allowedchanges=0)
        self._opened = True
        pygame.mixer.set_num_channels(CHANNELS + _OTHERS)
        pygame.mixer.set_reserved(CHANNELS)

    def _give_up(self, why: str) -> None:
        self.trouble = why or "the sound device does not answer"
        self.close()
