"""Rows of loom work, read back from their printed lines. The thread comes back after each row, so all run the same way."""

from __future__ import annotations

from collections.abc import Sequence
from types import ModuleType

from .plain_grid import read_rows as read_grid
from .told import ReadRow


def read_rows(lines: Sequence[str], grammar: ModuleType) -> tuple[ReadRow, ...]:
    """Work the lines in their order."""
    return read_grid(lines, grammar, turned=False)
