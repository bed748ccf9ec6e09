"""A tilt that is heard: its pitch, its pieces that join, and what the mixer is asked for."""

import math

import numpy as np
import pygame
import pytest

from lab.ui import pygame_tilt_tone
from lab.ui.pygame_sound import Speaker
from lab.ui.pygame_tilt_tone import TiltTone
from lab.ui.pygame_tilt_waves import (
    PIECE,
    RATE_HZ,
    STEADY_HZ,
    STEADY_SHARE,
    TURNING_SHARE,
    Sounded,
    piece_of,
    pitch_hz,
    ring_out,
)

FULL = 32767
SMOOTH = FULL * (STEADY_SHARE + TURNING_SHARE) * (2 * math.pi * STEADY_HZ * math.sqrt(2) / RATE_HZ) ** 2 * 1.6
"""How much the slope of both tones can change from sample to sample: ω² of the higher, and the octave on each adds
at most 0.2 · 4 over 1.2 to 1 over 1.2.  A click is hundreds of times that."""


class Channel:
    """A channel of a mixer that plays one piece and keeps one waiting; time passes by `played`."""

    def __init__(self) -> None:
        self.heard: list[np.ndarray] = []
        self.waiting: object = None
        self.sounding: object = None
        self.faded = 0

    def get_queue(self) -> object:
        return self.waiting

    def queue(self, sound: np.ndarray) -> None:
        self.heard.append(sound)
        if self.sounding is None:
            self.sounding = sound
        else:
            self.waiting = sound

    def played(self) -> None:
        self.sounding, self.waiting = self.waiting, None

    def fadeout(self, ms: int) -> None:
        self.faded += 1


@pytest.fixture
def channel(monkeypatch: pytest.MonkeyPatch) -> Channel:
    made = Channel()
    monkeypatch.setattr(pygame_tilt_tone.pygame.mixer, "Channel", lambda number: made)
    monkeypatch.setattr(
        pygame_tilt_tone.pygame.mixer, "Sound", lambda *, buffer: np.frombuffer(buffer, dtype=np.int16).astype(float)
    )
    return made


def deg(angle: float) -> float:
    return math.radians(angle)


def test_the_pitch_falls_with_the_left_end_and_rises_with_the_right_an_octave_in_all():
    assert pitch_hz(0.0) == STEADY_HZ
    assert pitch_hz(deg(10)) < STEADY_HZ < pitch_hz(deg(-10))
    # Half an octave is a ratio of √2; a quarter, at half the tilt, its root. 1e-12: round-off.
    assert pitch_hz(deg(20)) == pytest.approx(STEADY_HZ / math.sqrt(2), rel=1e-12)
    assert pitch_hz(deg(-20)) == pytest.approx(STEADY_HZ * math.sqrt(2), rel=1e-12)
    assert pitch_hz(deg(-10)) == pytest.approx(STEADY_HZ * 2**0.25, rel=1e-12)
    assert pitch_hz(deg(90)) == pitch_hz(deg(20))


def test_two_tones_are_heard_one_steady_and_one_of_the_tilt():
    sounded, pieces = Sounded(), []
    for _ in range(44):
        samples, sounded = piece_of(sounded, deg(15))
        pieces.append(samples)
    wave = np.concatenate(pieces[2:]).astype(float)
    power = np.abs(np.fft.rfft(wave * np.hanning(len(wave)))) ** 2
    hertz = np.fft.rfftfreq(len(wave), 1 / RATE_HZ)
    at_steady, at_tilt = (int(np.argmin(np.abs(hertz - tone))) for tone in (STEADY_HZ, pitch_hz(deg(15))))
    low, high = sorted((at_steady, at_tilt))
    middle = (low + high) // 2
    found = [hertz[np.argmax(power[:middle])], hertz[middle + np.argmax(power[middle : 2 * high - middle])]]
    # 42 pieces are 1.95 s: bins of half a hertz.
    assert found == pytest.approx(sorted((STEADY_HZ, pitch_hz(deg(15)))), abs=0.6)
    assert np.max(np.abs(wave)) <= FULL * (STEADY_SHARE + TURNING_SHARE) + 1


def test_pieces_come_out_of_silence_join_and_end_in_silence_without_a_click():
    sounded, pieces = Sounded(), []
    swings = [deg(18 * math.cos(number / 3)) for number in range(30)]
    for angle in (*swings, None, *swings[:5]):
        samples, sounded = piece_of(sounded, angle)
        pieces.append(samples)
    samples, sounded = ring_out(sounded, swings[4])
    wave = np.concatenate([*pieces, samples]).astype(float)
    assert wave[0] == 0
    assert wave[-1] == 0
    assert sounded.loudness == 0.0
    assert pieces[30][-1] == 0, "silence at level"
    # Two steps of rounding besides.
    assert np.max(np.abs(np.diff(wave, 2))) < SMOOTH + 2


def test_what_rests_without_having_moved_rings_up_softly_and_dies_away():
    samples, _ = ring_out(Sounded(), deg(-20))
    wave = samples.astype(float)
    assert wave[0] == 0
    assert wave[-1] == 0
    assert np.max(np.abs(wave[-PIECE:])) < 0.01 * np.max(np.abs(wave))
    assert np.max(np.abs(np.diff(wave, 2))) < SMOOTH + 2


def test_one_piece_plays_and_one_waits_however_often_it_is_called(channel: Channel):
    tone = TiltTone()
    for _ in range(20):
        tone.follow(deg(5), resting=False)
    assert len(channel.heard) == 2
    assert tone.wanting
    channel.played()
    tone.follow(deg(5), resting=False)
    assert len(channel.heard) == 3


def test_at_level_it_falls_silent_and_asks_for_no_more(channel: Channel):
    tone = TiltTone()
    tone.follow(None, resting=False)
    assert channel.heard == []
    tone.follow(deg(5), resting=False)
    for _ in range(10):
        tone.follow(None, resting=False)
    assert len(channel.heard) == 2
    assert channel.heard[-1][-1] == 0
    assert not tone.wanting


def test_once_it_rests_it_rings_out_once_and_when_it_is_held_it_is_hushed(channel: Channel):
    tone = TiltTone()
    tone.follow(deg(5), resting=False)
    tone.follow(deg(5), resting=False)
    tone.follow(deg(6), resting=True)
    assert tone.wanting, "both places are taken: the ring is still to come"
    channel.played()
    for _ in range(10):
        tone.follow(deg(6), resting=True)
        channel.played()
    assert len(channel.heard) == 3
    assert len(channel.heard[-1]) > 10 * PIECE
    assert not tone.wanting
    tone.follow(None, resting=False)
    tone.follow(None, resting=False)
    assert channel.faded == 1
    assert len(channel.heard) == 3


def test_the_device_is_not_asked_for_before_something_is_tilted():
    speaker = Speaker()
    speaker.lean(None)
    assert pygame.mixer.get_init() is None
    assert not speaker.wanting
    speaker.lean(0.1)
    assert pygame.mixer.get_init() is not None
    assert speaker.wanting
    assert pygame.mixer.Channel(0).get_busy()
    for _ in range(8):
        speaker.play("knock")
    assert speaker.trouble == ""
    speaker.close()
    assert pygame.mixer.get_init() is None
    assert not speaker.wanting


def test_without_a_device_a_tilt_is_silent_and_that_is_said_once(monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setenv("SDL_AUDIODRIVER", "no-such-driver")
    speaker = Speaker()
    speaker.lean(0.1)
    speaker.lean(0.2, resting=True)
    assert speaker.news() is not None
    assert speaker.news() is None
    assert not speaker.wanting
