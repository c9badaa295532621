"""Options of commands that set pages: what is kept from before, and who does the work."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import click

from ..bind.press.cache import KEPT


def shop_options(command: Callable) -> Callable:
    """--fresh and --cluster, for a command that opens a workshop with them."""
    command = click.option("--cluster", metavar="ADDRESS", default="", help="Set pages on the workers of a Dask scheduler, such as tcp://10.0.0.5:8786.")(command)
    return click.option("--fresh", is_flag=True, help="Use nothing that an earlier build has kept.")(command)


@contextmanager
def workshop(folder: Path, fresh: bool, cluster: str, typesets: bool = True) -> Iterator[None]:
    """Pages that are made meanwhile come from what earlier builds have kept, or from several workers; those of the web alone need no worker who typesets."""
    from ..bind.pdf import working_in
    from ..bind.press import workshop as places
    from ..bind.web.workers import web_workers

    start = (lambda: places.cluster(cluster)) if cluster else None if typesets else web_workers
    with working_in(places.Workshop(folder / KEPT, start, fresh, typesets)) as shop:
        shop.hire()   # while files are read, the workers get ready; and once there are threads, they could not be forked
        yield
