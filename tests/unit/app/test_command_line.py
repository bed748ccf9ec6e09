import pytest

from lab.app.command_line import MODULES, parse


@pytest.mark.parametrize("word", ["-inf", "inf", "nan", "1e400", "1,2", "-x", "ten"])
@pytest.mark.parametrize("joined", [True, False])
def test_what_is_no_place_is_refused_by_flag_and_value_with_a_cure(
    word: str, joined: bool, capsys: pytest.CaptureFixture[str]
):
    with pytest.raises(SystemExit):
        parse(["sum", "oar.toml", *([f"--from={word}"] if joined else ["--from", word])])
    said = capsys.readouterr().err
    assert f"--from: {word!r} is no " in said
    assert "one number such as 10, or three such as -10,0,0 would do" in said


@pytest.mark.parametrize("words", [["--from=-10,0,0"], ["--from", "-10,0,0"]])
def test_a_place_that_starts_with_a_minus_is_taken_either_way(words: list[str]):
    assert parse(["sum", "oar.toml", *words]).reference == (-10.0, 0.0, 0.0)


@pytest.mark.parametrize(("word", "place"), [("10", (10.0, 0.0, 0.0)), ("-.5", (-0.5, 0.0, 0.0)), ("1,2,3", (1, 2, 3))])
def test_a_place_is_one_number_or_three(word: str, place: tuple[float, ...]):
    assert parse(["sum", "--from", word, "oar.toml"]).reference == place


@pytest.mark.parametrize("word", ["", "1,2", "x", "nan", "inf", "1,2,3,4", "1e999"])
def test_what_is_no_place_is_wrong_usage(word: str, capsys: pytest.CaptureFixture[str]):
    with pytest.raises(SystemExit) as ended:
        parse(["sum", "oar.toml", "--from", word])
    assert ended.value.code == 2
    assert "Traceback" not in capsys.readouterr().err


def test_no_command_opens_the_lab():
    assert parse([]).command is None


def test_every_command_has_a_module():
    for words in (["open", "x"], ["lesson"], ["sum", "x"], ["check", "x"], ["snap", "--list"], ["record", "export"]):
        assert parse(words).command in MODULES


@pytest.mark.parametrize(
    "words",
    [
        ["sing"], ["sum"], ["check"], ["open"], ["record"], ["record", "erase"], ["record", "erase", "X", "--all"],
        ["lesson", "--seed", "-1"], ["lesson", "--seed", "x"], ["snap", "x", "--size", "wide"],
        ["snap", "x", "--size", "5x5"], ["snap", "x", "--scale", "9"], ["snap", "x", "--theme", "loud"],
        ["sum", "x", "--units", "stone-furlong"], ["--loud"], ["sum", "x", "--js"],
    ],
)  # fmt: skip
def test_wrong_usage_ends_with_two_and_one_line_that_names_a_way_out(
    words: list[str], capsys: pytest.CaptureFixture[str]
):
    with pytest.raises(SystemExit) as ended:
        parse(words)
    said = capsys.readouterr()
    assert ended.value.code == 2
    assert said.out == ""
    assert said.err.count("\n") == 1
    assert "--help" in said.err


@pytest.mark.parametrize("words", [["--debug", "sum", "x"], ["sum", "x", "--debug"], ["sum", "--debug", "x"]])
def test_debug_may_stand_before_the_command_or_after_it(words: list[str]):
    assert parse(words).debug


def test_a_picture_has_a_size_a_theme_a_scale_and_a_language():
    args = parse(["snap", "start", "-o", "x.png", "--size", "1024x600", "--scale", "1.5", "--theme", "print"])
    assert (args.size, args.scale, args.theme, args.lang) == ((1024, 600), 1.5, "print", "en")
