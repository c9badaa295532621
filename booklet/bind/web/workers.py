"""The workers of web pages, who need no typesetter."""

from __future__ import annotations

import signal
import threading
from collections.abc import Iterator
from concurrent.futures import Executor
from contextlib import contextmanager

from ..press.workshop import pool, workers


def web_workers(most: int | None = None) -> Executor:
    """Processes of this computer, up to `most`. They are there at once: where threads are started meanwhile, they could not be forked any more.

    They do not hear ctrl-C: who has called them sends them home.
    """
    count = min(workers(), most or workers())
    made = pool(count)
    with _deaf():
        for _ in range(count):   # where they are not forked, each is started when there is something for it
            made.submit(int)
    return made


@contextmanager
def _deaf() -> Iterator[None]:
    """Processes that are started meanwhile do not hear ctrl-C."""
    if threading.current_thread() is not threading.main_thread():   # only there may it be said
        yield
        return
    before = signal.signal(signal.SIGINT, signal.SIG_IGN)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)
