"""The widgets: frozen values that a desk lays out, draws and answers for."""

from typing import TYPE_CHECKING

from lab.late_names import late_names

if TYPE_CHECKING:
    from lab.ui.widgets.arrange import Column, Row, Sized, Spacer, Steady
    from lab.ui.widgets.button import Button
    from lab.ui.widgets.choice import ChoiceRow, option_key
    from lab.ui.widgets.dialog import Dialog, Toast
    from lab.ui.widgets.headers import Progress, Steps, header
    from lab.ui.widgets.keypad import KEYPAD_DONE, Keypad, keypad_dialog, press_keypad
    from lab.ui.widgets.label import Label
    from lab.ui.widgets.number_field import NumberField
    from lab.ui.widgets.panel import Panel
    from lab.ui.widgets.picture import Handle, Picture
    from lab.ui.widgets.scroll import Scroll
    from lab.ui.widgets.slider import Slider
    from lab.ui.widgets.table import Table, TableColumn, TableRow
    from lab.ui.widgets.tray import Tray, TrayItem
    from lab.ui.widgets.widget import Mood, Plain, Spot, Widget
else:
    _MODULES = {
        "arrange": "Column Row Sized Spacer Steady",
        "button": "Button",
        "choice": "ChoiceRow option_key",
        "dialog": "Dialog Toast",
        "headers": "Progress Steps header",
        "keypad": "KEYPAD_DONE Keypad keypad_dialog press_keypad",
        "label": "Label",
        "number_field": "NumberField",
        "panel": "Panel",
        "picture": "Handle Picture",
        "scroll": "Scroll",
        "slider": "Slider",
        "table": "Table TableColumn TableRow",
        "tray": "Tray TrayItem",
        "widget": "Mood Plain Spot Widget",
    }
    __getattr__ = late_names(__name__, _MODULES)

__all__ = [
    "KEYPAD_DONE",
    "Button",
    "ChoiceRow",
    "Column",
    "Dialog",
    "Handle",
    "Keypad",
    "Label",
    "Mood",
    "NumberField",
    "Panel",
    "Picture",
    "Plain",
    "Progress",
    "Row",
    "Scroll",
    "Sized",
    "Slider",
    "Spacer",
    "Spot",
    "Steady",
    "Steps",
    "Table",
    "TableColumn",
    "TableRow",
    "Toast",
    "Tray",
    "TrayItem",
    "Widget",
    "header",
    "keypad_dialog",
    "option_key",
    "press_keypad",
]
