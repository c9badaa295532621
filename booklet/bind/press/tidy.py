"""Memory that a process has no more use for."""

from __future__ import annotations

import ctypes
import gc
from contextlib import suppress


def tidy() -> None:
    """Collect the garbage, and give its memory back."""
    gc.collect()
    give_back()


def give_back() -> None:
    """Give freed memory back to the system; where the C library knows no way to do so, it stays for what comes next."""
    with suppress(AttributeError, OSError, TypeError):
        ctypes.CDLL(None).malloc_trim(0)
