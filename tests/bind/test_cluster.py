"""The same parts set by two workers of a real Dask cluster over TCP, one of which is stopped in the middle."""

import os
import socket
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

from booklet.bind.press.binding import Copy, bind
from booklet.bind.press.orders import Setting
from booklet.bind.press.parts import cut
from booklet.bind.press.versions import faces_digest
from booklet.bind.press.workshop import HereAndNow, Workshop, cluster
from booklet.errors import UnreadableInput

ROOT = Path(__file__).parents[2]


def free_port():
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return one.getsockname()[1]


@pytest.fixture
def dask(tmp_path):
    """The address of a scheduler, and its two workers."""
    port, environment = free_port(), {**os.environ, "PYTHONPATH": str(ROOT)}
    address, running = f"tcp://127.0.0.1:{port}", []

    def start(*command):
        running.append(subprocess.Popen([sys.executable, "-m", *command], cwd=tmp_path, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL))

    start("distributed.cli.dask_scheduler", "--host", "127.0.0.1", "--port", str(port), "--no-dashboard")
    for _ in range(2):
        start("distributed.cli.dask_worker", address, "--nthreads", "1", "--no-nanny", "--no-dashboard")
    try:
        yield address, running[1:]
    finally:
        for process in running:
            process.kill()
            process.wait()


@pytest.mark.filterwarnings("ignore")   # of the libraries of the cluster
def test_a_cluster_makes_the_same_book_though_a_worker_is_lost(dask):
    address, workers = dask
    parts = "".join(f'<section id="s{at}">{"<p>Pick up two beads.</p>" * 150}</section>' for at in range(8))
    document = cut(f'<html lang="en"><head><title>x</title></head><body>{parts}</body></html>')
    copy = Copy(document, {}, {}, Setting(document.style, "en", document.body, faces=faces_digest()))
    with Workshop(start=HereAndNow) as here:
        wanted = bind(copy, here)
    for _ in range(100):
        try:
            socket.create_connection(("127.0.0.1", int(address.rpartition(":")[2])), 1).close()
            break
        except OSError:
            time.sleep(0.2)
    with Workshop(start=lambda: cluster(address)) as there:
        threading.Timer(1.5, workers[0].kill).start()
        assert bind(copy, there) == wanted
    assert workers[0].wait(30) == -9


@pytest.mark.filterwarnings("ignore")
def test_error_no_scheduler_answers(monkeypatch):
    monkeypatch.setattr("booklet.bind.press.workshop.PATIENCE", "1s")
    with pytest.raises(UnreadableInput, match=r"^no scheduler answers at tcp://127\.0\.0\.1:"):
        cluster(f"tcp://127.0.0.1:{free_port()}")
