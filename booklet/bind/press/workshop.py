"""Where orders are filled: from the cache, or by workers, which are processes of this computer or of a cluster.

An executor is anything that has `submit` and returns futures of the standard library: none of the callers knows which one it is.
"""

from __future__ import annotations

import os
import threading
from collections.abc import Callable, Iterable
from concurrent.futures import BrokenExecutor, Executor, Future, ProcessPoolExecutor
from multiprocessing import get_all_start_methods, get_context
from pathlib import Path
from typing import Any

from ...errors import BookletError, UnreadableInput
from .cache import Cache
from .orders import key_of

PATIENCE = "10s"   # to wait for a scheduler
RETRIES = 2      # times that an order is handed out again after its worker has died


class HereAndNow(Executor):
    """Fills orders in this process, one after the other."""

    def submit(self, function: Callable, /, *arguments: Any, **named: Any) -> Future:
        future: Future = Future()
        try:
            future.set_result(function(*arguments, **named))
        except BaseException as error:
            future.set_exception(error)
        return future


def workers() -> int:
    """How many orders can be filled at a time on this computer."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def pool(count: int) -> Executor:
    """Processes of this computer. They are forked where that is safe: not from a process with several threads."""
    if count == 1:
        return HereAndNow()
    forks = "fork" in get_all_start_methods() and threading.active_count() == 1
    return ProcessPoolExecutor(count, mp_context=get_context("fork" if forks else "spawn"))


def cluster(address: str) -> Executor:
    """The workers of a Dask scheduler. Raises UnreadableInput where there is none, or Dask is not installed."""
    try:
        from distributed import Client
    except ImportError:
        raise UnreadableInput("a cluster needs the package dask.distributed", "install booklet[cluster]") from None
    try:
        client = Client(address, timeout=PATIENCE, set_as_default=False)
    except (OSError, ValueError) as error:
        raise UnreadableInput(f"no scheduler answers at {address}: {error}", "start one with: dask scheduler") from None
    executor = client.get_executor(pure=False, retries=RETRIES)
    shut = executor.shutdown

    def shutdown(wait: bool = True, cancel_futures: bool = False) -> None:
        shut(wait=wait)
        client.close()

    executor.shutdown = shutdown   # the client of the executor is ours alone
    return executor


def fill(order: Any) -> bytes:
    """What a worker runs."""
    return order.fill()


class Workshop:
    """Takes orders. Used as a context, it sends its workers home at the end."""

    def __init__(self, folder: Path | None = None, start: Callable[[], Executor] | None = None, fresh: bool = False) -> None:
        self.cache = Cache(folder, fresh=fresh) if folder else None
        self._start = start or (lambda: pool(workers()))
        self._executor: Executor | None = None
        self._asked: dict[str, Future] = {}
        self.filled: list[Any] = []     # orders that no cache had

    def __enter__(self) -> Workshop:
        return self

    def __exit__(self, *error: object) -> None:
        if self._executor:
            self._executor.shutdown(wait=not any(error), cancel_futures=True)
        if self.cache:
            self.cache.trim()

    def hire(self) -> None:
        """Start the workers, and let them import the typesetter while there is something else to do."""
        from .typeset import warm

        if self._executor is None:
            self._executor = self._start()
            if isinstance(self._executor, ProcessPoolExecutor):
                for _ in range(self._executor._max_workers):
                    self._executor.submit(warm)

    def ask(self, order: Any) -> Future:
        """The result of an order, now or later. Equal orders are filled once."""
        key = key_of(order)
        if key not in self._asked:
            self._asked[key] = self._new(key, order)
        return self._asked[key]

    def _new(self, key: str, order: Any) -> Future:
        kept = self.cache.get(key) if self.cache else None
        future: Future = Future()
        if kept is not None:
            future.set_result(kept)
            return future
        self.filled.append(order)
        self._hand_out(key, order, future)
        return future

    def _hand_out(self, key: str, order: Any, future: Future) -> None:
        self.hire()

        def done(given: Future) -> None:
            if given.cancelled():
                future.cancel()
            elif given.exception():
                future.set_exception(given.exception())
            else:
                if self.cache:
                    self.cache.put(key, given.result())
                future.set_result(given.result())

        self._executor.submit(fill, order).add_done_callback(done)

    def results(self, orders: Iterable[Any]) -> list[bytes]:
        """The results of orders, in their order. Raises what the first of them that cannot be filled raises."""
        orders = list(orders)
        return [self._result(order, future) for order, future in [(order, self.ask(order)) for order in orders]]

    def result(self, order: Any) -> bytes:
        """The result of one order."""
        return self._result(order, self.ask(order))

    def _result(self, order: Any, future: Future) -> bytes:
        for _ in range(RETRIES):
            try:
                return future.result()
            except BrokenExecutor:   # a worker was killed, and took the pool with it
                self._replace()
                future = self.ask(order)
        try:
            return future.result()
        except BrokenExecutor:
            raise BookletError("the processes that set the pages keep being stopped by the computer; there may be too little memory") from None

    def _replace(self) -> None:
        """New workers in the place of those that were stopped, and nothing that waits for those."""
        self._asked = {key: future for key, future in self._asked.items() if future.done() and not future.cancelled() and not future.exception()}
        if self._executor and getattr(self._executor, "_broken", False):
            self._executor.shutdown(wait=False)
            self._executor = None
