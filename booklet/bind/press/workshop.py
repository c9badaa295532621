"""Where orders are filled: from the cache, or by workers, which are processes of this computer or of a cluster.

An executor is anything that has `submit` and returns futures of the standard library: none of the callers knows which one it is.
"""

from __future__ import annotations

import asyncio
import gc
import os
import threading
from collections.abc import Callable, Iterable, Sequence
from concurrent.futures import BrokenExecutor, CancelledError, Executor, Future, ProcessPoolExecutor
from functools import partial
from itertools import count
from multiprocessing import get_all_start_methods, get_context, parent_process
from multiprocessing.connection import wait
from pathlib import Path
from typing import Any, NamedTuple, TypeVar

from ...errors import BookletError, UnreadableInput
from .cache import Cache
from .orders import key_of, ready
from .tidy import give_back, tidy

Read = TypeVar("Read")
PATIENCE = "10s"   # to wait for a scheduler
AT_ONCE = 32     # orders that are held at a time where each holds much: more than there are workers, and few enough for the memory
MOST_GARBAGE = 500_000   # objects, a hundred megabytes: what ten patterns leave behind
TIDY = 32        # orders that a worker fills between two collections, which take 25 ms
A_TURN = 0.02    # s in which a worker that loads the typesetter lets others take an order
RETRIES = 2      # times that an order is handed out again after its worker has died
_filled, _read = count(1), count(1)


class Later(NamedTuple):
    """An order that holds much, and is made when there is room for it."""

    make: Callable[[], Any]
    labour: int = 0      # how much work it is, to compare it with others


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
    return ProcessPoolExecutor(count, mp_context=get_context("fork" if forks else "spawn"), initializer=_begin)


def _begin() -> None:
    """What a new process of a pool does. It ends when the one that began it is gone, even if that was killed and could send nobody home."""
    def wait_for_end() -> None:
        wait([parent_process().sentinel])
        os._exit(1)

    threading.Thread(target=wait_for_end, daemon=True).start()
    _loading.append(None)


_loading: list[threading.Thread | None] = []   # in a process of a pool: None until it begins to load the typesetter, then who does so


def load_typesetter() -> None:
    """Let this process load the typesetter while there is something else to do."""
    from .typeset import warm

    _loading.clear()
    warm()


def _leaves_it() -> bool:
    """Whether this process leaves an order to be set to one that may have the typesetter already, because it has to load it first."""
    if not _loading:
        return False
    if _loading[0] is None:
        from .typeset import warm

        _loading[0] = threading.Thread(target=warm, daemon=True)
        _loading[0].start()
    _loading[0].join(A_TURN)
    if _loading[0].is_alive():
        return True
    _loading.clear()
    return False


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


def fill(order: Any) -> bytes | None:
    """What a worker runs; None if another one shall do it. Garbage waits until there is enough of it, which saves a sixth of the time, and not for ever: a pattern leaves few objects, but half a megabyte of texts."""
    if getattr(order, "typesets", False) and _leaves_it():
        return None
    collects = gc.isenabled()
    gc.disable()
    try:
        return order.fill()
    finally:
        if gc.get_count()[0] > MOST_GARBAGE or next(_filled) % TIDY == 0:
            tidy()
        if collects:
            gc.enable()


class Workshop:
    """Takes orders. Used as a context, it sends its workers home at the end."""

    def __init__(self, folder: Path | None = None, start: Callable[[], Executor] | None = None, fresh: bool = False, typesets: bool = True) -> None:
        """A place that keeps results in `folder`, uses those that are there unless `fresh`, and whose workers load the typesetter if it `typesets`."""
        self.cache = Cache(folder, fresh=fresh) if folder else None
        self._start = start or (lambda: pool(workers()))
        self._executor: Executor | None = None
        self._typesets = typesets
        self._asked: dict[str, Future] = {}   # that are being filled; without a cache, also those that were

    def __enter__(self) -> Workshop:
        return self

    def __exit__(self, *error: object) -> None:
        if self._executor:
            self._executor.shutdown(wait=not any(error), cancel_futures=True)
        if self.cache:
            self.cache.trim()

    def hire(self) -> None:
        """Start the workers, and let them import the typesetter while there is something else to do."""
        if self._executor is None:
            self._executor = self._start()
            if self._typesets and isinstance(self._executor, ProcessPoolExecutor):
                for _ in range(self._executor._max_workers - 1):   # one is left free for what is drawn before anything is set
                    self._executor.submit(load_typesetter)

    async def results(self, orders: Iterable[Any]) -> list[bytes]:
        """The results of orders, in their order. Raises what the first of them that cannot be filled raises.

        The largest are begun first, so that nobody has to wait for a large one at the end.
        """
        keyed = [(key_of(order), order) for order in orders]
        for key, order in sorted(keyed, key=lambda pair: -getattr(pair[1], "labour", 0)):
            self._ask(key, order)
        found = await asyncio.gather(*(self._result(*pair) for pair in keyed), return_exceptions=True)
        for one in found:
            if isinstance(one, BaseException):
                raise one
        return found

    async def each(self, orders: Sequence[Later], read: Callable[[bytes], Read]) -> list[tuple[str, Read]]:
        """The keys of orders, and what `read` makes of their results, in their order; only a few of both are held at a time. Raises as `results` does."""
        room = asyncio.Semaphore(AT_ONCE)

        async def one(later: Later) -> tuple[str, Read]:
            async with room:
                order = later.make()
                key = key_of(order)
                found = read(await self._result(key, order))
            if next(_read) % TIDY == 0:   # results come in by a thread, whose memory nothing else uses
                give_back()
            return key, found

        ranked = sorted(range(len(orders)), key=lambda at: -orders[at].labour)
        found = dict(zip(ranked, await asyncio.gather(*(one(orders[at]) for at in ranked), return_exceptions=True)))
        for at in range(len(orders)):
            if isinstance(found[at], BaseException):
                raise found[at]
        return [found[at] for at in range(len(orders))]

    def take(self, key: str, later: Later) -> bytes:
        """The result of an order that was filled before; it is filled again if another build has removed it meanwhile."""
        kept = self.cache.get(key) if self.cache else None
        if kept is None:
            asked = self._asked.get(key)
            kept = asked.result() if asked and asked.done() else ready(later.make()).fill()
        return kept

    async def result(self, order: Any) -> bytes:
        """The result of one order."""
        return await self._result(key_of(order), order)

    async def _result(self, key: str, order: Any) -> bytes:
        for _ in range(RETRIES + 1):
            future = self._ask(key, order)
            try:
                made = await asyncio.wrap_future(future)
            except BrokenExecutor:   # a worker was killed, and took the pool with it
                self._replace(key, future)
                continue
            if self.cache:
                self._asked.pop(key, None)   # whoever asks again finds it there
            return made
        raise BookletError("the processes that set the pages keep being stopped by the computer; there may be too little memory")

    def _ask(self, key: str, order: Any) -> Future:
        """The result of an order, now or later. Equal orders are filled once."""
        if key not in self._asked:
            self._asked[key] = self._new(key, order)
        return self._asked[key]

    def _new(self, key: str, order: Any) -> Future:
        kept = self.cache.get(key) if self.cache else None
        future: Future = Future()
        future.set_running_or_notify_cancel()   # who no longer waits for it takes it from nobody else
        if kept is not None:
            future.set_result(kept)
        else:
            self._hand_out(key, ready(order), future)
        return future

    def _hand_out(self, key: str, order: Any, future: Future) -> None:
        self.hire()
        self._submit(key, order, future)

    def _submit(self, key: str, order: Any, future: Future) -> None:
        try:
            self._executor.submit(fill, order).add_done_callback(partial(self._given, key, order, future))
        except (BrokenExecutor, RuntimeError) as error:   # a worker was killed, or all were sent home
            future.set_exception(error if isinstance(error, BrokenExecutor) else CancelledError())

    def _given(self, key: str, order: Any, future: Future, given: Future) -> None:
        if given.cancelled():
            future.set_exception(CancelledError())
        elif given.exception():
            future.set_exception(given.exception())
        elif given.result() is None:
            self._submit(key, order, future)
        else:
            if self.cache:
                self.cache.put(key, given.result())
            future.set_result(given.result())

    def _replace(self, key: str, lost: Future) -> None:
        """New workers in the place of those that were stopped, and nothing that waits for those."""
        if self._asked.get(key) is lost:
            del self._asked[key]
        if self._executor and getattr(self._executor, "_broken", False):
            self._executor.shutdown(wait=False)
            self._executor = None
