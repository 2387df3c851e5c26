"""The page of a sheet in Jupyter: stock controls, and one widget that joins them.

The widget's front end has the sheet's program in it and needs no Python: here arrives only what
has settled, so that a notebook can go on with it. The widget publishes a plain page beside itself,
for where no kernel is: a served page, or a notebook turned into HTML.
"""

import contextlib
import math
from typing import TYPE_CHECKING, Any

import anywidget
import ipywidgets
import traitlets

from yarnsheets.page import choices, html
from yarnsheets.page.compiler import program
from yarnsheets.page.inputs import Asked, Blank, Draw, Input, Pick, Words
from yarnsheets.page.rows import Rows

if TYPE_CHECKING:
    from yarnsheets.page.sheet import Sheet


class SheetView(anywidget.AnyWidget):
    """A sheet as a page.

    `values` holds the inputs in the sheet's own units and `choice` the units shown, both ways:
    set by the page when the reader's hand rests, or by Python.
    """

    _css = html.style()

    description = traitlets.Dict().tag(sync=True)
    values = traitlets.Dict().tag(sync=True)
    choice = traitlets.Dict().tag(sync=True)
    controls = traitlets.Dict().tag(sync=True, **ipywidgets.widget_serialization)

    def __init__(self, sheet: "Sheet") -> None:
        self.sheet = sheet
        super().__init__(
            description=sheet.describe(),
            values=html.values(sheet),
            choice=html.choice(sheet),
            controls=_controls(sheet),
            _esm=f"const yarnsheet_program = {program(type(sheet))};\n{html.built('jupyter.js')}",
        )
        self.on_msg(self._send_charts)
        self.observe(self._take, names=["values", "choice"])
        sheet.observe(self._give, names=[*sheet.inputs(), "measure", "grist_unit"])

    def _repr_mimebundle_(self, **kwargs: Any) -> Any:
        """Publish the widget, and the same page without one."""
        data, *metadata = _both(super()._repr_mimebundle_(**kwargs))
        return (data | {"text/html": html.page(self.sheet)}, *metadata)

    def _take(self, _change: object) -> None:
        # A page can send anything: what the sheet refuses leaves it as it was, and goes back.
        with (
            contextlib.suppress(traitlets.TraitError, KeyError, TypeError, ValueError),
            self.sheet.hold_trait_notifications(),
        ):
            for name in self.sheet.inputs():
                setattr(self.sheet, name, self.values[name])
            for name, chosen in self.choice.items():
                if name in html.choice(self.sheet):
                    setattr(self.sheet, name, chosen)
        self._give()

    def _give(self, _change: object = None) -> None:
        with self.hold_sync():
            self.values = html.values(self.sheet)
            self.choice = html.choice(self.sheet)

    def _send_charts(self, _widget: object, content: Any, _buffers: object) -> None:
        # A served page has the chart library as a file; elsewhere in Jupyter the page asks here.
        if content == {"send": "charts"}:
            self.send({"sent": "charts"}, [html.built("charts.js").encode()])


def _both(bundle: Any) -> tuple[Any, ...]:
    """Give data and metadata apart: a widget may publish either both or the data alone."""
    return bundle if isinstance(bundle, tuple) else (bundle,)


def _controls(sheet: "Sheet") -> dict[str, dict[str, Any]]:
    inputs = {name: _control(asked, getattr(sheet, name)) for name, asked in sheet.inputs().items()}
    units = {
        "measure": ipywidgets.Dropdown(options=[m.name for m in choices.MEASURES]),
        "grist_unit": ipywidgets.Dropdown(options=[(g.name, g.unit) for g in choices.GRIST_UNITS]),
    }
    return {"inputs": inputs, "units": units}


def _control(asked: Asked, value: Any) -> dict[str, ipywidgets.Widget]:
    if isinstance(asked, Blank | Draw | Words):
        return {"box": ipywidgets.Text(continuous_update=False)}
    if isinstance(asked, Input):
        return {"slider": _slider(asked, value), "box": ipywidgets.Text(continuous_update=False)}
    if isinstance(asked, Pick):
        options = [(words, kept) for kept, words in asked.options.items()]
        return {"pick": ipywidgets.Dropdown(options=options, value=value)}
    if isinstance(asked, Rows):
        return {}  # the page's own: Jupyter has no table to type into
    # readings, and pairs of them
    return {"lines": ipywidgets.Textarea(continuous_update=False, rows=6)}


def _slider(asked: Input, value: float) -> ipywidgets.Widget:
    # Not continuous: the page reads every move itself, the kernel hears the last one.
    options = {"readout": False, "continuous_update": False}
    if asked.step is None:
        low, high = math.log10(asked.low), math.log10(asked.high)
        step = (high - low) / 2000
        return ipywidgets.FloatLogSlider(value, min=low, max=high, step=step, **options)
    return ipywidgets.FloatSlider(value, min=asked.low, max=asked.high, step=asked.step, **options)
