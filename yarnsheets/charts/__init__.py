"""Altair charts over named parameters: the browser moves them, no chart is ever replaced."""

import sys
from importlib import import_module

# Altair checks charts by jsonschema, which builds a grammar of internet addresses as it loads,
# if that is installed: most of a page's waiting time, for a check that no chart asks for.
_GRAMMAR = "rfc3987_syntax"
if _GRAMMAR not in sys.modules:
    sys.modules[_GRAMMAR] = None  # type: ignore[assignment] # this is how an import is refused
    import_module("altair")
    del sys.modules[_GRAMMAR]
