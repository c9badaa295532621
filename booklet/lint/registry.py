"""The rules there are: found by looking into booklet/lint/rules/, one module a rule."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache
from importlib import import_module
from types import ModuleType

from msgspec import Struct

from ..findings import Finding, Severity
from . import rules as package
from .subject import Subject

NEEDS = {
    "pattern": "a pattern file that could be read",
    "piece": "its chart and fringe read as rows and strands of known beads",
    "path": "the piece can be worked from end to end",
    "book": "a book file",
    "prose": "a pattern, or a book with its pages",
}

# What these find cannot be printed at all, so no pattern may allow it and no book may call it a smaller thing.
FIRM = frozenset({"ragged-set", "row-cannot-be-worked", "strand-count", "strand-without-end-bead", "unknown-bead-key", "unknown-placeholder",
                  "missing-pattern", "missing-page", "missing-photo", "listed-twice", "words-do-not-replay"})


class Rule(Struct, frozen=True):
    """One rule, as its module states it."""

    id: str
    severity: Severity
    needs: str                                     # one of NEEDS
    check: Callable[[Subject], Iterator[Finding]]
    module: ModuleType

    @property
    def text(self) -> str:
        """The module's docstring."""
        from inspect import cleandoc

        return cleandoc(self.module.__doc__ or "")


@lru_cache(maxsize=None)
def rules() -> Mapping[str, Rule]:
    """Every rule by its id, in the order of the ids."""
    folder = os.path.dirname(package.__file__)
    names = sorted(name.removesuffix(".py") for name in os.listdir(folder) if name.endswith(".py") and name != "__init__.py")
    return {rule.id: rule for rule in map(_rule, names)}


def _rule(name: str) -> Rule:
    module = import_module(f"{package.__name__}.{name}")
    return Rule(module.ID, module.SEVERITY, module.NEEDS, module.check, module)
