"""Worksheets that turn a handspinner's measurements into yards of yarn and fibre to buy.

Each layer imports only those before it: `formulas`, `units` and `sources`, `charts`,
`sheets`, `serve`. Nothing is imported here, so the arithmetic loads without the widgets.
"""

__version__ = "0.1.0"
