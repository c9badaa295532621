"""Copies of the mini books, because a build writes into the workspace."""

import shutil
from pathlib import Path

TINY = Path(__file__).parent.parent / "books" / "tiny"


def copy_of(source: Path, target: Path) -> Path:
    """A workspace of its own."""
    shutil.copytree(source, target)
    return target
