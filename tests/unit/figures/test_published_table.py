"""The table of published values: a line for each, and the same as JSON."""

from dataclasses import replace

from lab.figures.__main__ import as_json, as_line
from lab.figures.published.check_values import CheckValue, Number
from lab.figures.published.register import REGISTER
from lab.figures.published.table import published_row, published_rows

VALUE = CheckValue("X01", "S-99", "part", lambda: [Number(11.1914, 11.2, 0.05), Number(18.3, 18.6, 0.05, right=18.317)])


def test_a_line_has_ours_the_print_the_tolerance_and_the_mark():
    line = as_line(published_row(VALUE))
    said = "X01 part met ours 11.1914 / 18.3 printed 11.2 / 18.6 (wrong in print: 18.317) to within 0.05 / 0.05 S-99"
    assert " ".join(line.split()) == said


def test_what_we_worked_out_ourselves_is_not_called_printed():
    line = as_line(published_row(replace(VALUE, mark="ours")))
    assert "printed" not in line
    assert "worked out 11.2" in line


def test_one_number_that_is_missed_misses_the_row():
    row = published_row(replace(VALUE, numbers=lambda: [Number(11.19, 11.2, 0.05), Number(11.3, 11.2, 0.05)]))
    assert not row.met
    assert "missed" in as_line(row)


def test_json_keeps_every_number_and_what_is_right_where_print_is_wrong():
    values = as_json(published_row(VALUE))
    assert values == {
        "name": "X01",
        "mark": "part",
        "source": "S-99",
        "ours": [11.1914, 18.3],
        "printed": [11.2, 18.6],
        "right": [None, 18.317],
        "tolerance": [0.05, 0.05],
        "met": True,
    }


def test_there_is_a_row_for_each_value_in_the_order_of_their_ids():
    names = [row.name for row in published_rows()]
    assert names == sorted(value.id for value in REGISTER)
