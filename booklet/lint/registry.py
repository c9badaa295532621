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
    "prose": "a pattern, or a book with its pages",
    "photo": "a pattern with a photo",
    "release": "a pattern, and a record of what was published",
    "book": "a book file",
    "extras": "a pattern, or a book, with something that few have",
}
SELDOM = ("book", "extras", "photo", "release")   # each with a folder of its own, whose rules are loaded only where they can run

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
def rules_in(folder: str) -> tuple[Rule, ...]:
    """The rules of a folder, one of SELDOM, or "" for those that stand in none."""
    return tuple(_rule(folder, name) for name in _modules(folder))


@lru_cache(maxsize=None)
def rules() -> Mapping[str, Rule]:
    """Every rule by its id, in the order of the ids."""
    return {rule.id: rule for rule in sorted((rule for folder in ("", *SELDOM) for rule in rules_in(folder)), key=lambda rule: rule.id)}


def names() -> list[str]:
    """The id of every rule, without loading any."""
    return sorted(name.replace("_", "-") for folder in ("", *SELDOM) for name in _modules(folder))


def _modules(folder: str) -> list[str]:
    found = os.listdir(os.path.join(os.path.dirname(package.__file__), folder))
    return sorted(name.removesuffix(".py") for name in found if name.endswith(".py") and name != "__init__.py")


def _rule(folder: str, name: str) -> Rule:
    module = import_module(".".join(filter(None, (package.__name__, folder, name))))
    return Rule(module.ID, module.SEVERITY, module.NEEDS, module.check, module)
