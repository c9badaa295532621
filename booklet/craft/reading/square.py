"""Rows of square stitch, read back from their printed lines. The work is turned after each row."""

from __future__ import annotations

from collections.abc import Sequence
from types import ModuleType

from .plain_grid import read_rows as read_grid
from .told import ReadRow


def read_rows(lines: Sequence[str], grammar: ModuleType) -> tuple[ReadRow, ...]:
    """Work the lines in their order."""
    return read_grid(lines, grammar, turned=True)
