"""Small sounds: short, never too loud, and never in the way where there is nothing to play them on."""

import numpy as np
import pygame
import pytest

from lab.ui.pygame_sound import LOUDNESS, RATE_HZ, Speaker, samples

NAMES = tuple(LOUDNESS)


@pytest.mark.parametrize("name", NAMES)
def test_a_sound_is_short_begins_and_ends_in_silence_and_is_as_loud_as_meant(name):
    wave = samples(name).astype(float)
    assert 0.1 < len(wave) / RATE_HZ < 0.8
    # The last sample may be one rounding step of 16 bits from silence; 1 % of full scale does not click.
    assert abs(wave[0]) < 328
    assert abs(wave[-1]) < 328
    assert np.max(np.abs(wave)) == pytest.approx(LOUDNESS[name] * 32767, abs=1)


def test_brass_rings_higher_than_wood():
    def middle_hz(name):
        wave = samples(name).astype(float)
        power = np.abs(np.fft.rfft(wave)) ** 2
        hertz = np.fft.rfftfreq(len(wave), 1 / RATE_HZ)
        return float(np.sum(power * hertz) / np.sum(power))

    # The lowest of brass is 2093 Hz, the highest of wood 523 Hz.
    assert middle_hz("clink") > 2000
    assert middle_hz("knock") < 600


@pytest.mark.parametrize("name", NAMES)
def test_a_sound_is_the_same_every_time(name):
    assert np.array_equal(samples(name), samples(name))


def test_nothing_is_opened_before_something_is_to_be_heard():
    speaker = Speaker()
    assert pygame.mixer.get_init() is None
    speaker.close()


def test_sounds_are_played_on_a_device_and_the_device_is_given_back():
    speaker = Speaker()
    for name in NAMES:
        speaker.play(name)
    assert speaker.trouble == ""
    assert pygame.mixer.get_init() is not None
    assert pygame.mixer.get_busy()
    speaker.close()
    assert pygame.mixer.get_init() is None


def test_switched_off_it_never_asks_for_the_device():
    speaker = Speaker(enabled=False)
    speaker.play("clink")
    assert pygame.mixer.get_init() is None


def test_without_a_device_it_is_silent_and_says_so_once(monkeypatch):
    monkeypatch.setenv("SDL_AUDIODRIVER", "no-such-driver")
    speaker = Speaker()
    speaker.play("clink")
    speaker.play("knock")
    news = speaker.news()
    assert news is not None
    assert news["why"]
    assert speaker.news() is None
