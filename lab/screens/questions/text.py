"""The text side of a question: predict, watch, explain."""

from __future__ import annotations

from lab.lesson import Explanation
from lab.lesson.forms import Choice
from lab.mechanics import MomentRow
from lab.screens.questions.answering import answer_widgets, said, why_not
from lab.screens.questions.caution import caution_in_text
from lab.screens.questions.contrast import contrast_in_text, contrast_strip
from lab.screens.questions.layout import TextSheet, text_width_px
from lab.screens.questions.scope import AGAIN, GO_ON, HINT, LOCK, NEXT, SKIP, SURE, Scope
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.headers import Steps
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.table import Table, TableColumn, TableRow
from lab.ui.widgets.widget import Widget

SHEET = "text"
LOW_PX = 680.0
"""A window lower than this shows no title above the given text, so that the answer stays in sight."""


def text_sheet(scope: Scope) -> TextSheet:
    """The text of the phase that the run is in."""
    if scope.run.phase == "predict":
        return predict_sheet(scope)
    return watch_sheet(scope) if scope.run.phase == "watch" else explain_sheet(scope)


def _steps(scope: Scope, at: int) -> Steps:
    names = (scope.say("Predict"), scope.say("Let go"), scope.say("Explain"))
    steps = Steps("steps", names, at)
    look = scope.look
    room = (look.sizes.width if look.sizes.portrait else text_width_px(look)) - 2 * look.sizes.margin
    if steps.natural_width(look) <= room:
        return steps
    # Where all three names have no room on one line, the present one is named.
    return Steps("steps", tuple(name if number == at else "" for number, name in enumerate(names)), at)


def _sheet(scope: Scope) -> str:
    """A key of its own for every step of every question, so that each begins at its top."""
    run = scope.run
    return f"{SHEET}-{run.index}-{run.round}-{run.phase}"


# --- predict -------------------------------------------------------------------------------------------------


def predict_sheet(scope: Scope) -> TextSheet:
    """What is given, what is asked, how sure, and the one action."""
    asked = scope.asked
    given = Column(
        (
            *_body_title(scope),
            Label("given", scope.text(asked.text)),
            *_prompt(scope),
        ),
        gap=4,
    )
    sure = ChoiceRow(
        SURE,
        scope.say("How sure are you?"),
        (("guess", scope.say("guess")), ("fairly", scope.say("fairly")), ("certain", scope.say("certain"))),
        scope.run.sure,
    )
    return TextSheet(
        _sheet(scope),
        (_steps(scope, 0), given, *answer_widgets(scope), sure, *_hints(scope), *caution_in_text(scope)),
        _predict_foot(scope),
    )


def _prompt(scope: Scope) -> tuple[Widget, ...]:
    """What to do, unless it is said above the answer's options or in the header already."""
    prompt = scope.text(scope.asked.prompt)
    said_already = isinstance(scope.asked.form, Choice) or prompt == scope.text(scope.asked.title)
    return () if said_already else (Label("prompt", prompt),)


def _body_title(scope: Scope) -> tuple[Widget, ...]:
    """What is asked about, where the window is high enough for a title that the text says again."""
    sizes = scope.look.sizes
    if sizes.height < LOW_PX * sizes.unit * sizes.text_scale:
        return ()
    return (Label("body-title", scope.look.words.content(scope.asked.build.title), style="title"),)


def _hints(scope: Scope) -> tuple[Widget, ...]:
    shown = scope.run.hints_shown
    left = len(scope.asked.hints) - len(shown)
    text = scope.say("Another hint") if shown else scope.say("A hint")
    buttons = (Button(HINT, text, enabled=left > 0), Button(SKIP, scope.say("Skip"), kind="quiet"))
    told = tuple(
        Panel(
            f"hint-{number}",
            children=(Label(f"hint-{number}.text", scope.text(hint)),),
            fill="wash",
            pad=12,
            round=True,
        )
        for number, hint in enumerate(shown, start=1)
    )
    return (*told, Row(buttons))


def _predict_foot(scope: Scope) -> tuple[Widget, ...]:
    run = scope.run
    lock = Button(LOCK, scope.say("Lock it in"), kind="main", enabled=run.can_lock_in)
    if run.can_lock_in:
        return (lock,)
    return (Label("why-not", why_not(scope), style="small", color="soft", align="center"), lock)


# --- watch ---------------------------------------------------------------------------------------------------


def watch_sheet(scope: Scope) -> TextSheet:
    """What was said, while it moves; nobody gets on before it has come to rest."""
    bench = scope.model.bench
    settled = bench is not None and not bench.moving
    sure = {"guess": scope.say("a guess"), "fairly": scope.say("fairly sure"), "certain": scope.say("certain")}
    value = scope.run.value
    you_said = scope.say(
        "You said: {answer} ({sure}).",
        answer="" if value is None else said(scope, value),
        sure=sure[scope.run.sure or "guess"],
    )
    watch = Column(
        (Label("watch", scope.say("Watch what it does."), style="title"), Label("you-said", you_said)), gap=4
    )
    text = scope.say("Go on") if settled else scope.say("Let go…")
    lines: tuple[Widget, ...] = (_steps(scope, 1), watch, *caution_in_text(scope))
    return TextSheet(_sheet(scope), lines, (Button(GO_ON, text, kind="main", enabled=settled),))


# --- explain -------------------------------------------------------------------------------------------------


def explain_sheet(scope: Scope) -> TextSheet:
    """What happened, what the answer is the answer to, and the sum that decides."""
    told = scope.told
    if told is None:
        return TextSheet(_sheet(scope), (_steps(scope, 2),), ())
    happened = Column((Label("headline", scope.text(told.headline), style="title"), *_happened(scope, told)), gap=4)
    # Where no idea fits the answer, the reason itself is told.
    text = Label("idea.text", scope.text(told.idea or told.why))
    idea = Panel("idea", children=(text,), fill="held_fill", pad=14, round=True)
    again = scope.say("Try another") if scope.asked.varied else scope.say("Try again")
    last = scope.asked.index + 1 == scope.asked.count
    onward = scope.say("Finish") if last else scope.say("Next")
    foot = Row((Button(AGAIN, again), Button(NEXT, onward, kind="main")))
    sums = Column((*_working(scope, told), *_from_where(scope, told)), gap=4)
    strip = contrast_strip(scope) if contrast_in_text(scope) else None
    changed = () if strip is None else (strip,)
    lines = (_steps(scope, 2), happened, idea, sums, *changed, *caution_in_text(scope))
    return TextSheet(_sheet(scope), lines, (foot,))


def _happened(scope: Scope, told: Explanation) -> tuple[Widget, ...]:
    """What was seen, unless the headline says no less: it does where no part gives the end its name."""
    if scope.asked.kind == "side" and "part" not in told.happened.values:
        return ()
    return (Label("happened", scope.text(told.happened)),)


def _working(scope: Scope, told: Explanation) -> tuple[Widget, ...]:
    """The sum that decides: a little one of its own, or the moment table with its last line."""
    if told.working:
        *lines, last = (_at_school(scope.text(line)) for line in told.working)
        shown = [Label(f"working-{number}", line, style="small") for number, line in enumerate(lines, start=1)]
        return (*shown, Label("quotient", last, style="figure"))
    return (moment_table(scope, told), Label("quotient", _at_school(scope.text(told.quotient)), style="figure"))


def _at_school(line: str) -> str:
    """A lesson's sums are written for a terminal, too; here there is the sign that is used at school."""
    return line.replace(" / ", " ÷ ")


def _from_where(scope: Scope, told: Explanation) -> tuple[Widget, ...]:
    """What arms are measured from that turn about a pivot: the picture's rule has another zero."""
    if told.arms_from != "pivot":
        return ()
    if scope.finger is not None:
        text = scope.say("Arms are measured from the finger: to the left they are below 0.")
    else:
        text = scope.say("Arms are measured from the pin: to the left they are below 0.")
    return (Label("from-where", text, style="small", color="soft"),)


def moment_table(scope: Scope, told: Explanation) -> Table:
    """The moment sum, the row that decides on the marker's colour."""
    units, readings = scope.units, scope.readings
    columns = (
        TableColumn(scope.say("part"), "start"),
        TableColumn(scope.say("weight {unit}", unit=units.weight_word)),
        TableColumn(scope.say("arm {unit}", unit=units.length_word)),
        TableColumn(scope.say("moment")),
    )
    # Parts of the changed picture may weigh otherwise: the table is always about the learner's own.
    rows = [_row(scope, row, picked=row.name == told.deciding) for row in told.sum.rows]
    total = (scope.say("sum"), readings.weight(told.sum.mass_kg), "", readings.moment(told.sum.moment_kg_m[0]))
    return Table("moments", columns, (*rows, TableRow("sum", total, "sum")), name=scope.say("Moment table"))


def _row(scope: Scope, row: MomentRow, *, picked: bool) -> TableRow:
    readings = scope.readings
    cells = (
        scope.look.words.content(row.name),
        readings.weight(row.mass_kg),
        readings.length(row.arm_m[0]),
        readings.moment(row.moment_kg_m[0]),
    )
    return TableRow(f"row-{row.name}", cells, picked=picked)
