"""A process that has the typesetter loaded and builds a book again at each line that it is told. A part of build_speed.

    python -m tests.bench.in_process WORKSPACE

For each line of standard input it reads, checks and builds the book, and answers with the seconds that took.
"""

from __future__ import annotations

import gc
import sys
from pathlib import Path
from time import perf_counter

from booklet.bind.book import build
from booklet.bind.pdf import working_in
from booklet.bind.press.cache import KEPT
from booklet.bind.press.workshop import Workshop, HereAndNow
from booklet.commands.reading import whole


def main() -> None:
    """Build once, then at each line."""
    root = Path(sys.argv[1])
    _built(root)
    gc.freeze()
    for _ in iter(sys.stdin.readline, ""):
        start = perf_counter()
        _built(root)
        print(perf_counter() - start, flush=True)


_known: dict = {}


def _built(root: Path) -> None:
    with working_in(Workshop(root / KEPT, HereAndNow)) as shop:
        build(whole(root, shop.cache, _known), ("pdf",))


if __name__ == "__main__":
    main()
