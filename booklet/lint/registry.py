"""The rules there are: found by looking into booklet/lint/rules/, one module a rule."""

from __future__ import annotations

import pkgutil
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from importlib import import_module
from inspect import cleandoc

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


@dataclass(frozen=True)
class Rule:
    """One rule, as its module states it."""

    id: str
    severity: Severity
    needs: str                                     # one of NEEDS
    check: Callable[[Subject], Iterator[Finding]]
    text: str                                      # the module's docstring


@lru_cache(maxsize=None)
def rules() -> Mapping[str, Rule]:
    """Every rule by its id, in the order of the ids."""
    names = sorted(module.name for module in pkgutil.iter_modules(package.__path__))
    found = (_rule(name) for name in names)
    return {rule.id: rule for rule in found}


def _rule(name: str) -> Rule:
    module = import_module(f"{package.__name__}.{name}")
    return Rule(module.ID, module.SEVERITY, module.NEEDS, module.check, cleandoc(module.__doc__ or ""))
