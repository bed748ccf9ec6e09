"""A tilt as two tones for the mixer: one stays, the other falls with the left end and rises with the right.

Near level the two are so close that they beat, slower and slower, and level itself is silent.  What is heard comes in
pieces, each of which goes on where the one before it ended: in phase, in pitch, in loudness.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

RATE_HZ = 44_100

STEADY_HZ = 330.0
"""The tone that stays: the e over middle c, where small loudspeakers and old ears still are at their best."""

STEEPEST_RAD = math.radians(20.0)
"""Where most stops are. The pitch goes an octave from one end to the other: half of it up or down, since two tones
a whole octave apart would melt into one."""

PIECE = 2048
"""Samples of a piece, 46 ms: three frames, so that one that is late is not heard; longer, and the ear lags the eye."""

RING_S, RING_FADES_S = 1.0, 0.25
"""What has come to rest rings on so long, and fades to 1/e in the second time."""

STEADY_SHARE, TURNING_SHARE = 0.05, 0.07
"""Of full scale: under everything else that is heard."""

# Small loudspeakers give a plain low tone hardly at all; some of its octave lets it be heard there.
_OCTAVE_SHARE = 0.2
_FULL = 32767

Wave = NDArray[np.float64]
Samples = NDArray[np.int16]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sounded:
    """How the last piece ended.

    steady, turning: how much of a turn each tone had made, 0 … 1.  hertz: the second tone's pitch.
    loudness: 0 … 1, nought where it is silent.
    """

    steady: float = 0.0
    turning: float = 0.0
    hertz: float = STEADY_HZ
    loudness: float = 0.0


def pitch_hz(angle_rad: float) -> float:
    """The pitch of the second tone.  angle_rad: the tilt, anticlockwise positive, so that the left end is down."""
    steep = max(-1.0, min(1.0, angle_rad / STEEPEST_RAD))
    return float(STEADY_HZ * 2.0 ** (-steep / 2.0))


def piece_of(before: Sounded, angle_rad: float | None) -> tuple[Samples, Sounded]:
    """What comes next, mono, 16 bit: it glides to the tilt as it is now, or to silence where that is None."""
    along = np.arange(1, PIECE + 1, dtype=np.float64) / PIECE
    if angle_rad is None:
        hertz, loudness = before.hertz, 0.0
    else:
        hertz, loudness = pitch_hz(angle_rad), 1.0
    # Out of silence nothing glides: it begins where it is.
    first_hz = before.hertz if before.loudness else hertz
    return _sounded(
        before, first_hz + (hertz - first_hz) * along, before.loudness + (loudness - before.loudness) * along
    )


def ring_out(before: Sounded, angle_rad: float) -> tuple[Samples, Sounded]:
    """How it dies away once it rests at a tilt; comes up first where it was silent."""
    hertz = pitch_hz(angle_rad)
    t = np.arange(1, int(RING_S * RATE_HZ) // PIECE * PIECE + 1, dtype=np.float64) / RATE_HZ
    along = np.minimum(1.0, t * RATE_HZ / PIECE)
    first_hz = before.hertz if before.loudness else hertz
    fading = np.exp(-t / RING_FADES_S) * (1.0 - t / t[-1])
    return _sounded(
        before, first_hz + (hertz - first_hz) * along, (before.loudness + (1.0 - before.loudness) * along) * fading
    )


def _sounded(before: Sounded, hertz: Wave, loudness: Wave) -> tuple[Samples, Sounded]:
    steady = before.steady + np.arange(1, len(hertz) + 1, dtype=np.float64) * (STEADY_HZ / RATE_HZ)
    turning = before.turning + np.cumsum(hertz) / RATE_HZ
    wave = loudness * (STEADY_SHARE * _tone(steady) + TURNING_SHARE * _tone(turning))
    after = Sounded(
        steady=float(steady[-1] % 1.0),
        turning=float(turning[-1] % 1.0),
        hertz=float(hertz[-1]),
        loudness=float(loudness[-1]),
    )
    return np.asarray(np.round(wave * _FULL), dtype=np.int16), after


def _tone(turns: Wave) -> Wave:
    angle = 2.0 * math.pi * turns
    return np.asarray((np.sin(angle) + _OCTAVE_SHARE * np.sin(2.0 * angle)) / (1.0 + _OCTAVE_SHARE), dtype=np.float64)
