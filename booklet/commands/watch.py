"""booklet watch: pages that follow while one writes."""

from __future__ import annotations

import signal
import threading
import traceback
from functools import partial
from pathlib import Path

import click

from .reading import checked_folder
from .terminal import progress, remark, show_findings, tell

PORT = 8642

HELP = """Build the web pages, serve them on this computer, and keep them up to date while you write.

On every save of a pattern, of book.yaml, of a page, photo or template, what has changed is built again, and a browser that shows one of the changed pages loads it again and
keeps its place. What is wrong stands over the page, with file and line; a broken file leaves the pages as they were.
The address is printed. Only this computer can reach it. Stop with ctrl-C.

\b
Examples:
  booklet watch                on the usual port, or the next one that is free
  booklet watch --port 9000    on this port
  booklet watch --port 0       on any port that is free

Exit code: 0 stopped, 2 wrong use, or a folder that cannot be read or a port that is taken.
"""


@click.command(help=HELP)
@click.option("--port", type=click.IntRange(0, 65535), default=PORT, show_default=True, help="Where to serve; 0 for any port that is free.")
@click.pass_context
def watch(context: click.Context, port: int) -> None:
    folder: Path = checked_folder(context.obj)
    is_wish = context.get_parameter_source("port") is not click.core.ParameterSource.DEFAULT
    with progress("loading"):
        from ..live.following import following
        from ..live.rebuild import Rebuilder
        from ..live.server import HERE, served
        from ..live.site import Site, read_site
        from ..live.sources import changes

    with Rebuilder(folder) as builder:   # before the server has its port and its threads
        site = Site(read_site(folder / "build" / "html"))
        server = served(site, partial(following, folder), port, is_wish)
        signal.signal(signal.SIGTERM, signal.default_int_handler)
        threading.Thread(target=server.serve_forever, daemon=True).start()
        click.echo(f"http://{HERE}:{server.server_port}/")
        remark("Stop with ctrl-C.")
        try:
            _follow(folder, site, builder, changes(folder))
        except KeyboardInterrupt:
            tell("stopped")
        finally:
            site.close()
            server.shutdown()
            server.server_close()


def _follow(folder: Path, site, builder, news) -> None:
    """Build now, and after every change."""
    while True:
        with progress("building") as now:
            report, files = _built(builder, now)
        site.publish(report, files)
        show_findings(report.findings, folder, err=True)
        tell(report.head or f"built: {', '.join(builder.made) or 'nothing has changed in the patterns'}")
        next(news)


def _built(builder, now):
    """A build. A fault of ours must not end the work: the terminal shows it, and the next save tries again."""
    from ..live.rebuild import Built
    from ..live.site import Report

    try:
        return builder.build(now)
    except Exception:
        traceback.print_exc()
        return Built(Report("booklet itself has failed; the terminal shows where.", (), True), None)
