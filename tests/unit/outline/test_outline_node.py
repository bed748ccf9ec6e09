"""The outline: one tree that can be walked, searched and read out."""

from lab.outline import Node, find, spoken_line, spoken_lines, walk

SCREEN = Node(
    "screen",
    "screen",
    "",
    children=(
        Node("title", "heading", "Hanging bar"),
        Node("go", "button", "Let go", actions=("press",)),
        Node("at", "slider", "Pivot", value="40.0 cm", state=frozenset({"focused"})),
        Node(
            "table",
            "table",
            "Moments",
            children=(
                Node(
                    "bar",
                    "row",
                    "",
                    children=(Node("bar.0", "cell", "bar"), Node("bar.1", "cell", "weight g 150")),
                ),
            ),
        ),
    ),
)


def test_walking_goes_in_reading_order():
    assert [node.key for node in walk(SCREEN)] == [
        "screen",
        "title",
        "go",
        "at",
        "table",
        "bar",
        "bar.0",
        "bar.1",
    ]


def test_a_node_is_found_by_its_key_at_any_depth():
    assert find(SCREEN, "bar.1").name == "weight g 150"
    assert find(SCREEN, "nowhere") is None


def test_a_control_is_read_out_with_value_role_and_state():
    assert spoken_line(find(SCREEN, "at")) == "Pivot, 40.0 cm, slider, focused"


def test_a_table_row_is_one_spoken_line_and_empty_nodes_are_silent():
    assert spoken_lines(SCREEN) == [
        "Hanging bar, heading",
        "Let go, button",
        "Pivot, 40.0 cm, slider, focused",
        "Moments, table",
        "bar, weight g 150",
    ]


def test_roles_and_states_are_said_in_the_listeners_language():
    assert spoken_line(find(SCREEN, "go"), lambda word: word.upper()) == "Let go, BUTTON"
