"""Reading printed words back, written apart from the code that writes them and sharing nothing with it.

It knows only what a maker knows: how a stitch, a row start, a row end, a set and a strand are worked. There is one module
for each stitch, of the same name, whose `read_rows` reads the lines of rows.
"""

from __future__ import annotations

from importlib import import_module
from types import ModuleType


def reader_of(stitch: str) -> ModuleType:
    """The module that reads the words of a stitch."""
    return import_module(f".{stitch}", __name__)
