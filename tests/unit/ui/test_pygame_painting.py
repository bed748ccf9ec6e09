"""What pygame paints: few pixels, chosen where they tell something; and that repainting equals painting."""

import math
import random

import pygame
import pytest

from lab.ui import ListCanvas, Rect
from lab.ui.metrics import text_width
from lab.ui.pygame_cache import SurfaceCache
from lab.ui.pygame_canvas import PygameCanvas
from lab.ui.pygame_offscreen import picture_of, save_picture
from lab.ui.pygame_text import MOST_FONTS, TextPainter

PAPER, INK, RED, BLUE = "#F5F1E8", "#1E2A35", "#C81E1E", "#1E3CC8"


def painted(draw, size=(120, 120)):
    canvas = ListCanvas(size)
    canvas.box(Rect(0, 0, *size), fill=PAPER)
    draw(canvas)
    return picture_of(canvas.ops, size)


def near(color, text, slack=6):
    want = pygame.Color(text)
    return all(abs(a - b) <= slack for a, b in zip(color[:3], want[:3], strict=True))


def test_a_box_has_sharp_edges_on_whole_pixels():
    surface = painted(lambda c: c.box(Rect(10, 10, 40, 40), fill=RED))
    assert near(surface.get_at((10, 10)), RED)
    assert near(surface.get_at((49, 49)), RED)
    assert near(surface.get_at((9, 10)), PAPER)
    assert near(surface.get_at((50, 49)), PAPER)


@pytest.mark.parametrize("size", [(60, 60), (300, 200)])
def test_a_round_box_has_its_outline_inside_and_its_corner_free(size):
    surface = painted(
        lambda c: c.box(Rect(10, 10, *size), fill=RED, outline=INK, width=2, radius=8), (size[0] + 20, size[1] + 20)
    )
    middle = 10 + size[0] // 2
    assert near(surface.get_at((10, 10)), PAPER)
    assert near(surface.get_at((middle, 10)), INK)
    assert near(surface.get_at((middle, 11)), INK)
    assert near(surface.get_at((middle, 13)), RED)
    assert near(surface.get_at((middle, 9)), PAPER)
    assert near(surface.get_at((10 + size[0] - 1, 10 + size[1] // 2)), INK)
    assert near(surface.get_at((middle, 10 + size[1] - 1)), INK)


def test_edges_are_smooth_and_take_no_dark_fringe():
    surface = painted(lambda c: c.circle((60, 60), 40, fill="#FFFFFF"))
    # A white disc on light paper: a pixel darker than paper would be a fringe from unmultiplied colours.
    darkest = min(surface.get_at((x, y))[2] for x in range(120) for y in range(120))
    assert darkest >= pygame.Color(PAPER)[2] - 2


def test_a_slanted_line_has_half_tones():
    surface = painted(lambda c: c.line([(10, 20), (110, 60)], INK, width=2))
    tones = {surface.get_at((x, y))[0] for x in range(120) for y in range(120)}
    assert len(tones) > 6


def test_a_turned_body_stands_where_its_geometry_says():
    def body(c):
        c.box(Rect(0, 0, 80, 10), fill=RED)
        c.box(Rect(70, 0, 10, 10), fill=BLUE)

    for angle in (0.0, math.radians(15), math.radians(-40), math.pi / 2):
        surface = painted(
            lambda c, angle=angle: c.turned("b", (80, 10), body, at=(80, 90), grip=(0, 5), angle_rad=angle), (180, 180)
        )
        x, y = 80 + 75 * math.cos(angle), 90 - 75 * math.sin(angle)
        assert near(surface.get_at((round(x), round(y))), BLUE, 12)
        x, y = 80 + 30 * math.cos(angle), 90 - 30 * math.sin(angle)
        assert near(surface.get_at((round(x), round(y))), RED, 12)


def test_hatching_covers_part_of_its_rectangle_and_nothing_else():
    surface = painted(lambda c: c.hatch(Rect(20, 20, 80, 80), INK, rising=True))
    inked = [(x, y) for x in range(120) for y in range(120) if not near(surface.get_at((x, y)), PAPER, 30)]
    assert 0.1 * 6400 < len(inked) < 0.6 * 6400
    assert all(20 <= x < 100 and 20 <= y < 100 for x, y in inked)


def test_rising_and_falling_hatches_differ():
    def tone(*, rising):
        surface = painted(lambda c: c.hatch(Rect(20, 20, 80, 80), INK, rising=rising))
        return pygame.image.tobytes(surface, "RGB")

    assert tone(rising=True) != tone(rising=False)


def test_text_lies_within_its_line_box_and_its_clip():
    boxes = []
    surface = painted(lambda c: boxes.append(c.text("Hag", (20, 20), size=30, color=INK)))
    inked = [(x, y) for x in range(120) for y in range(120) if not near(surface.get_at((x, y)), PAPER, 60)]
    assert inked
    assert all(boxes[0].contains(point) for point in inked)


def test_a_clip_holds_for_shapes_and_text():
    def draw(c):
        with c.clipped(Rect(0, 0, 60, 120)):
            c.box(Rect(40, 40, 60, 20), fill=RED)
            c.text("wide text", (40, 70), size=20, color=INK)

    surface = painted(draw)
    assert all(near(surface.get_at((x, y)), PAPER) for x in range(60, 120) for y in range(120))


def random_ops(chance, canvas):
    canvas.box(Rect(0, 0, 200, 150), fill=PAPER)
    for number in range(14):
        x, y, kind = chance.randrange(180), chance.randrange(130), chance.randrange(7)
        if kind == 0:
            canvas.box(Rect(x, y, 40, 30), fill=RED, outline=INK, width=1.5, radius=chance.choice([0, 6]))
        elif kind == 1:
            canvas.line([(x, y), (200 - x, 150 - y)], INK, width=2, dash=chance.choice([(), (6, 3)]))
        elif kind == 2:
            canvas.circle((x, y), 11.5, fill=BLUE, outline=INK, width=2)
        elif kind == 3:
            canvas.text(f"part {number}", (x, y), size=15, color=INK, bold=bool(number % 2))
        elif kind == 4:
            canvas.polygon([(x, y), (x + 30.5, y + 4), (x + 9, y + 22)], fill=RED, outline=INK, width=1.5)
        elif kind == 5:
            canvas.hatch(Rect(x, y, 30, 25), BLUE, rising=bool(number % 2))
        else:
            canvas.arc((x, y), 20, 0.3, 2.0, INK, width=3)


def test_repainting_what_changed_gives_the_same_picture_as_painting_all():
    chance = random.Random(7)
    kept = PygameCanvas((200, 150))
    for _ in range(25):
        state = chance.getstate()
        kept.clear()
        random_ops(chance, kept)
        rects = kept.paint()
        assert rects
        chance.setstate(state)
        fresh = ListCanvas((200, 150))
        random_ops(chance, fresh)
        whole = picture_of(fresh.ops, (200, 150))
        assert pygame.image.tobytes(kept.surface, "RGB") == pygame.image.tobytes(whole, "RGB")


def test_an_unchanged_frame_paints_nothing():
    canvas = PygameCanvas((200, 150))
    for expected in (1, 0):
        canvas.clear()
        random_ops(random.Random(1), canvas)
        assert len(canvas.paint()) == expected
    canvas.forget()
    assert canvas.paint() == [Rect(0, 0, 200, 150)]


def test_kept_surfaces_stay_within_their_room():
    cache = SurfaceCache(4 * 100 * 100 * 3)
    for number in range(20):
        cache.get(number, lambda: pygame.Surface((100, 100), pygame.SRCALPHA, 32))
    assert len(cache) == 3
    assert cache.used_bytes <= 4 * 100 * 100 * 3
    kept = cache.get(19, lambda: pytest.fail("the latest one was dropped"))
    assert kept.get_size() == (100, 100)


def test_fonts_and_lines_of_text_stay_within_their_room():
    texts = TextPainter()
    for size in range(10, 60):
        texts.line(f"{size} g", size=size, bold=False, color=INK)
    assert len(texts._fonts) <= MOST_FONTS


def test_where_the_font_is_missing_another_is_drawn_as_wide_as_measured(tmp_path):
    texts = TextPainter(fonts=tmp_path)
    assert [file.name for file in texts.missing] == ["Andika-Regular.ttf", "Andika-Bold.ttf"]
    line, _ = texts.line("balances at 44.4 cm", size=20, bold=False, color=INK)
    assert line.get_width() == text_width("balances at 44.4 cm", size=20)


def test_a_picture_is_saved_and_a_bad_place_is_an_os_error(tmp_path):
    canvas = ListCanvas((40, 30))
    canvas.box(Rect(0, 0, 40, 30), fill=RED)
    save_picture(canvas.ops, (40, 30), tmp_path / "a.png")
    assert pygame.image.load(str(tmp_path / "a.png")).get_size() == (40, 30)
    with pytest.raises(OSError, match=r"a\.png"):
        save_picture(canvas.ops, (40, 30), tmp_path / "none" / "a.png")
