"""Labels step aside."""

from lab.scenes.labels import LabelBoard, label_box
from lab.ui.geometry import Rect
from lab.ui.list_canvas import ListCanvas

FRAME = Rect(0, 0, 400, 200)
SIZE = 15.0


def board() -> tuple[ListCanvas, LabelBoard]:
    canvas = ListCanvas((400, 200))
    return canvas, LabelBoard(canvas, FRAME)


def test_the_first_spot_is_taken_where_nothing_is_in_the_way():
    canvas, labels = board()
    box = labels.place("pivot", [((100, 50), "left top"), ((10, 10), "left top")], size=SIZE, color="#000000")
    assert box is not None
    assert (box.x, box.y) == (100, 50)
    assert canvas.text_lines() == ["pivot"]


def test_a_label_goes_on_to_the_next_spot_where_the_first_is_covered():
    _, labels = board()
    labels.keep_clear([Rect(90, 40, 60, 40)])
    box = labels.place("pivot", [((100, 50), "left top"), ((200, 50), "left top")], size=SIZE, color="#000000")
    assert box is not None
    assert box.x == 200


def test_two_labels_never_share_a_place():
    canvas, labels = board()
    spot = [((100, 50), "left top")]
    assert labels.place("one", spot, size=SIZE, color="#000000") is not None
    assert labels.place("two", spot, size=SIZE, color="#000000") is None
    assert canvas.text_lines() == ["one"]


def test_a_label_never_leaves_the_picture():
    _, labels = board()
    assert labels.place("a long label", [((390, 50), "left top")], size=SIZE, color="#000000") is None


def test_a_shorter_way_to_say_it_is_used_where_the_longer_one_has_no_room():
    canvas, labels = board()
    spot = [((340, 50), "left top")]
    assert labels.place_one_of(("balances at 44.4 cm", "44.4"), spot, sizes=(SIZE,), color="#000000") is not None
    assert canvas.text_lines() == ["44.4"]


def test_the_box_of_a_label_is_the_one_that_the_canvas_draws():
    canvas = ListCanvas((400, 200))
    for anchor in ("left top", "center middle", "right baseline", "center bottom"):
        drawn = canvas.text("44.4 cm", (200, 100), size=SIZE, color="#000000", anchor=anchor)
        told = label_box(canvas, "44.4 cm", ((200, 100), anchor), size=SIZE)
        # The canvas puts texts on whole pixels.
        assert all(abs(a - b) <= 1.0 for a, b in zip(drawn, told, strict=True))
