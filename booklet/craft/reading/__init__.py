"""Reading printed words back, written apart from the code that writes them and sharing nothing with it.

It knows only what a maker knows: how a stitch, a row start, a row end, a set and a strand are worked. There is one module
for each stitch, of the same name, whose `read_rows` reads the lines of rows, and one for the grammar of each language.
"""

from __future__ import annotations

from importlib import import_module
from types import ModuleType

GRAMMARS = {"en": "english", "de": "german"}   # modules by language


def grammar_of(language: str) -> ModuleType:
    """The grammar of a language, or of a tag such as "de-AT"."""
    return import_module(f".{GRAMMARS[language.split('-')[0].lower()]}", __name__)


def reader_of(stitch: str) -> ModuleType:
    """The module that reads the words of a stitch."""
    return import_module(f".{stitch}", __name__)
