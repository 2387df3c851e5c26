"""The page of a sheet in Jupyter and Voila: stock controls, and one widget that joins them.

The widget's front end, sheet.js, reads the sheet's description, puts the controls in their
places and moves charts and sentences in the browser. Here arrives only what has settled.
"""

import contextlib
import math
from pathlib import Path
from typing import TYPE_CHECKING, Any

import anywidget
import ipywidgets
import traitlets

from yarnsheets.sheets import choices
from yarnsheets.sheets.inputs import Asked, Input, Pick, Words

if TYPE_CHECKING:
    from yarnsheets.sheets.sheet import Sheet

_HERE = Path(__file__).parent
_CHARTS = _HERE.parent / "serve/share/voila/templates/yarnsheets/static/charts.js"


class SheetView(anywidget.AnyWidget):
    """A sheet as a page.

    `values` holds the inputs in the sheet's own units and `choice` the units shown, both ways:
    set by the page when the reader's hand rests, or by Python. `found` is what Python alone
    could work out, and for which values.
    """

    _esm = (_HERE / "keep.js").read_text("utf-8") + (_HERE / "sheet.js").read_text("utf-8")
    _css = _HERE / "sheet.css"

    description = traitlets.Dict().tag(sync=True)
    values = traitlets.Dict().tag(sync=True)
    choice = traitlets.Dict().tag(sync=True)
    found = traitlets.Dict().tag(sync=True)
    controls = traitlets.Dict().tag(sync=True, **ipywidgets.widget_serialization)

    def __init__(self, sheet: "Sheet") -> None:
        self.sheet = sheet
        super().__init__(
            description=sheet.describe(),
            values=self._sheet_values(),
            choice=self._sheet_choice(),
            found=self._sheet_found(),
            controls=_controls(sheet),
        )
        self.on_msg(self._send_charts)
        self.observe(self._take, names=["values", "choice"])
        sheet.observe(self._give, names=[*sheet.inputs(), "measure", "grist_unit"])

    def _sheet_values(self) -> dict[str, Any]:
        return {name: getattr(self.sheet, name) for name in self.sheet.inputs()}

    def _sheet_choice(self) -> dict[str, str]:
        return {"measure": self.sheet.measure, "gristUnit": self.sheet.grist_unit}

    def _sheet_found(self) -> dict[str, Any]:
        return self.sheet.found() | {"for": self._sheet_values()}

    def _take(self, _change: object) -> None:
        # A page can send anything: what the sheet refuses leaves it as it was, and goes back.
        with (
            contextlib.suppress(traitlets.TraitError, KeyError, TypeError, ValueError),
            self.sheet.hold_trait_notifications(),
        ):
            for name in self.sheet.inputs():
                setattr(self.sheet, name, self.values[name])
            self.sheet.measure = self.choice["measure"]
            self.sheet.grist_unit = self.choice["gristUnit"]
        self._give()

    def _give(self, _change: object = None) -> None:
        with self.hold_sync():
            self.values = self._sheet_values()
            self.choice = self._sheet_choice()
            self.found = self._sheet_found()

    def _send_charts(self, _widget: object, content: Any, _buffers: object) -> None:
        # Voila's page has the chart library as a file; elsewhere in Jupyter the page asks here.
        if content == {"send": "charts"}:
            self.send({"sent": "charts"}, [_CHARTS.read_bytes()])


def _controls(sheet: "Sheet") -> dict[str, dict[str, Any]]:
    inputs = {name: _control(asked, getattr(sheet, name)) for name, asked in sheet.inputs().items()}
    units = {
        "measure": ipywidgets.Dropdown(options=[m.name for m in choices.MEASURES]),
        "gristUnit": ipywidgets.Dropdown(options=[(g.name, g.unit) for g in choices.GRIST_UNITS]),
    }
    return {"inputs": inputs, "units": units}


def _control(asked: Asked, value: Any) -> dict[str, ipywidgets.Widget]:
    if isinstance(asked, Input):
        return {"slider": _slider(asked, value), "box": ipywidgets.Text(continuous_update=False)}
    if isinstance(asked, Pick):
        options = [(words, kept) for kept, words in asked.options.items()]
        return {"pick": ipywidgets.Dropdown(options=options, value=value)}
    if isinstance(asked, Words):
        return {"box": ipywidgets.Text(continuous_update=False)}
    return {"lines": ipywidgets.Textarea(continuous_update=False, rows=6)}


def _slider(asked: Input, value: float) -> ipywidgets.Widget:
    # Not continuous: the page reads every move itself, the kernel hears the last one.
    options = {"readout": False, "continuous_update": False}
    if asked.step is None:
        low, high = math.log10(asked.low), math.log10(asked.high)
        step = (high - low) / 2000
        return ipywidgets.FloatLogSlider(value, min=low, max=high, step=step, **options)
    return ipywidgets.FloatSlider(value, min=asked.low, max=asked.high, step=asked.step, **options)
