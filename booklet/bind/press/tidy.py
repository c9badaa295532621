"""Memory that a worker has no more use for."""

from __future__ import annotations

import ctypes
import gc
from contextlib import suppress


def tidy() -> None:
    """Collect the garbage, and give its memory back; where the C library knows no way to do so, it stays for what comes next."""
    gc.collect()
    with suppress(AttributeError, OSError, TypeError):
        ctypes.CDLL(None).malloc_trim(0)
