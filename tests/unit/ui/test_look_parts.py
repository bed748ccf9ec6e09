"""Colours hold their contrast; sizes hold their floors."""

import dataclasses

import pytest

from lab.ui import THEMES, Sizes
from lab.ui.contrast import GRAPHICS_RATIO, TEXT_RATIO, contrast

GROUNDS = ("paper", "panel")
TEXTS = ("ink", "soft", "anticlockwise", "clockwise", "settled")
GRAPHICS = ("ink", "edge", "focus", "anticlockwise", "clockwise", "settled", "brass_edge", "wood_edge", "steel_edge")
TINTS = ("wash", "held_fill", "anticlockwise_fill", "clockwise_fill", "settled_fill")


@pytest.mark.parametrize("name", THEMES)
def test_text_stands_out_from_every_ground_it_is_set_on(name):
    theme = THEMES[name]
    pairs = [(text, ground) for text in TEXTS for ground in GROUNDS]
    pairs += [("ink", tint) for tint in TINTS] + [("on_dark", "ink"), ("on_dark", "soft")]
    pairs += [("on_material", material) for material in ("brass", "wood", "steel", "held")]
    faint = [(a, b) for a, b in pairs if contrast(theme.color(a), theme.color(b)) < TEXT_RATIO]
    assert faint == []


@pytest.mark.parametrize("name", THEMES)
def test_outlines_and_the_focus_ring_stand_out_from_the_grounds(name):
    theme = THEMES[name]
    pairs = [(shape, ground) for shape in GRAPHICS for ground in GROUNDS]
    assert [(a, b) for a, b in pairs if contrast(theme.color(a), theme.color(b)) < GRAPHICS_RATIO] == []


def test_high_contrast_keeps_seven_to_one_for_text():
    theme = THEMES["contrast"]
    for text in TEXTS:
        assert contrast(theme.color(text), theme.panel) >= 7.0


def test_contrast_is_counted_as_wcag_counts_it():
    # The bounds; two pairs worked out by hand from the formula, to two decimals.
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21.0)
    assert contrast("#1E2A35", "#F5F1E8") == pytest.approx(12.96, abs=0.005)
    assert contrast("#0072B2", "#EAE3D3") == pytest.approx(4.06, abs=0.005)


def test_an_unknown_colour_is_refused_and_a_plain_one_passes():
    assert THEMES["paper"].color("#123456") == "#123456"
    with pytest.raises(KeyError, match="mauve"):
        THEMES["paper"].color("mauve")


def test_every_theme_has_every_colour_as_six_figures():
    for theme in THEMES.values():
        colors = [getattr(theme, f.name) for f in dataclasses.fields(theme) if f.name != "name"]
        assert all(len(color) == 7 and int(color[1:], 16) >= 0 for color in colors)


def test_a_small_window_does_not_shrink_targets_and_a_large_one_grows_them():
    assert Sizes(1024, 600).target == 48
    assert Sizes(3840, 2160).target == 144
    assert Sizes(1080, 1920).unit == 1.5


def test_on_a_touch_screen_ten_millimetres_are_the_floor():
    # A 10.1-inch panel of 1280 x 800 has 5.88 px/mm and shows 48 px as 8.2 mm.
    assert Sizes(1280, 800, px_per_mm=5.88, touch=True).target == pytest.approx(58.8)
    assert Sizes(1280, 800, px_per_mm=5.88).target == 48
    assert Sizes(1280, 800, px_per_mm=5.88, touch=True, kiosk=True).main_target == pytest.approx(117.6)


def test_text_grows_with_its_scale_and_targets_do_not():
    assert Sizes(1280, 720, 2.0).text("body") == 36
    assert Sizes(1280, 720, 2.0).target == 48


@pytest.mark.parametrize(("name", "value"), [("width", 0), ("text_scale", -1), ("px_per_mm", 0.0)])
def test_sizes_that_cannot_be_are_refused(name, value):
    given = {"width": 1280, "height": 720, name: value}
    with pytest.raises(ValueError, match=name):
        Sizes(**given)
