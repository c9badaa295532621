"""How long a build takes, against other engines that make the same book, and how it grows.

    python -m tests.bench.build_speed                            20 patterns, medians of five runs
    python -m tests.bench.build_speed --patterns 100 --runs 3
    python -m tests.bench.build_speed --growth 20,100,1000       time for each pattern, and memory

Needs `pip install booklet[bench]` and the program chromium. Every engine makes a PDF with tags in a process of its own, all by turns in the same run, so that
a busy machine slows all alike; what counts are ratios. Compiled modules and the browser's profile are there from a run before.

- The browser prints our own HTML, with our page numbers and fonts written into it (rivals.py), and without dashed lines, which would cost it six times as long (undashed.py).
- The typst engine compiles an equal book, written from that HTML (same_book.py): same fonts, sizes, page, page breaks, links, headings and SVG pictures.
- Equal means: inside the margins, all words of the three PDFs are the same words, as often; the numbers are, too, but for page numbers, because each engine
  breaks pages its own way; and the pictures in the tags have the same text alternatives, as often (equal.py). The run prints what differs.

"edited" changes a few words in the notes of one pattern. "in a process" is what `booklet watch` would do: the typesetter is loaded, and the book was built before.
"""

from __future__ import annotations

import argparse
import os
import platform
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from statistics import median
from time import perf_counter

from tests.bench.books import edited, write_book
from tests.bench.made_by import ROOT, Taken, booklet, chromium, quietly, typst

IMPORTS = [sys.executable, "-c", "import click, yaml"]
# What is measured, what it is held against, and the most that the ratio should be (for 20 patterns, and for 100).
AIMS = (("cold", "chromium", 1.0, 1.5), ("edited", "chromium", 0.4, 0.4), ("edited, in a process", "typst", 0.7, 0.7), ("nothing changed", "import click, yaml", 2.0, 2.0),
        ("single, cold", "chromium, single", 1.0, 1.0))


def main() -> None:
    """Measure and print."""
    asked = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    asked.add_argument("--patterns", type=int, default=20)
    asked.add_argument("--runs", type=int, default=5)
    asked.add_argument("--growth", default="", help="numbers of patterns, with commas between")
    asked.add_argument("--folder", type=Path, help="where to leave the books; a temporary folder without it")
    options = asked.parse_args()
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    print(f"{platform.machine()}, {len(os.sched_getaffinity(0))} cores, Python {platform.python_version()}, load {os.getloadavg()[0]:.1f}", flush=True)
    with tempfile.TemporaryDirectory() as temporary:
        folder = (options.folder or Path(temporary)).resolve()
        os.environ["PYTHONPYCACHEPREFIX"] = str(folder / "compiled")
        if options.growth:
            _growth(folder, [int(number) for number in options.growth.split(",")], options.runs)
        else:
            _table(folder, options.patterns, options.runs)


def _table(folder: Path, patterns: int, runs: int) -> None:
    root = folder / "book"
    shutil.rmtree(root, ignore_errors=True)
    slug = write_book(root, patterns)[patterns // 2]
    file = root / "patterns" / f"{slug}.yaml"
    text = file.read_text("utf-8")
    quietly(booklet(root, "single", slug))
    quietly(booklet(root, "build", "--format", "pdf"))
    print(subprocess.run([sys.executable, "-m", "tests.bench.rivals", str(root), slug, str(folder)], cwd=ROOT, check=True, capture_output=True, text=True).stdout, flush=True)
    compile_typst = typst(folder)
    waiting = subprocess.Popen([sys.executable, "-m", "tests.bench.in_process", str(root)], cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
    times = iter(range(1, 1_000_000))
    _in_process(waiting)

    def again(work: Callable[[], Taken]) -> Taken:
        file.write_text(edited(text, next(times)), "utf-8")
        return work()

    book = booklet(root, "build", "--format", "pdf")
    measured: dict[str, Callable[[], Taken]] = {
        "cold": lambda: _cold(root, book), "chromium": lambda: quietly(chromium(folder, "book")), "typst": lambda: quietly(compile_typst),
        "edited": lambda: again(lambda: quietly(book)), "nothing changed": lambda: quietly(book), "import click, yaml": lambda: quietly(IMPORTS),
        "edited, in a process": lambda: again(lambda: _in_process(waiting)),
        "single, cold": lambda: _cold(root, booklet(root, "single", slug)), "chromium, single": lambda: quietly(chromium(folder, "single"))}
    taken: dict[str, list[Taken]] = {name: [] for name in measured}
    for _ in range(runs):
        for name, work in measured.items():
            taken[name].append(work())
    waiting.stdin.close()
    waiting.wait()
    _print(taken, patterns)
    quietly(book)
    engine = "weasyprint" in subprocess.run([book[0], "-X", "importtime", *book[1:]], cwd=ROOT, check=True, capture_output=True, text=True).stderr
    print(f"nothing changed: the typesetter is {'' if engine else 'not '}imported")
    sizes = {name: path.stat().st_size for name, path in (("booklet", next((root / "build").glob("*.pdf"))), ("chromium", folder / "book.pdf"), ("typst", folder / "typst.pdf"))}
    print("size: " + ", ".join(f"{name} {size / 1e6:.2f} MB" for name, size in sizes.items()) + f"; ratio to chromium {sizes['booklet'] / sizes['chromium']:.2f}, aim 0.5")


def _cold(root: Path, command: list[str]) -> Taken:
    shutil.rmtree(root / "build", ignore_errors=True)
    return quietly(command)


def _in_process(waiting: subprocess.Popen) -> Taken:
    waiting.stdin.write("\n")
    waiting.stdin.flush()
    return Taken(float(waiting.stdout.readline()), 0)


def _print(taken: dict[str, list[Taken]], patterns: int) -> None:
    middle = {name: median(one.seconds for one in runs) for name, runs in taken.items()}
    print(f"{patterns} patterns, medians of {len(taken['cold'])}, seconds (from - to)")
    for name, runs in taken.items():
        print(f"  {name:<22}{middle[name]:>8.2f}   ({min(one.seconds for one in runs):.2f} - {max(one.seconds for one in runs):.2f})")
    print("ratios" + " " * 43 + "   aim")
    for name, other, few, many in AIMS:
        print(f"  {name:<22} / {other:<20}{middle[name] / middle[other]:>6.2f}{few if patterns < 100 else many:>6.1f}")


def _growth(folder: Path, sizes: list[int], runs: int) -> None:
    print(f"{'patterns':>9}{'seconds':>10}{'a pattern':>11}{'largest process, MB':>21}{'file, MB':>10}{'one edited':>12}{'nothing':>9}")
    first: tuple[float, float] | None = None
    for patterns in sizes:
        root = folder / f"book-{patterns}"
        shutil.rmtree(root, ignore_errors=True)
        slug = write_book(root, patterns)[patterns // 2]
        command = booklet(root, "build", "--format", "pdf")
        cold = [_cold(root, command) for _ in range(max(1, min(runs, 200 // patterns)))]
        each, memory = median(one.seconds for one in cold) / patterns, max(one.memory for one in cold)
        file = root / "patterns" / f"{slug}.yaml"
        file.write_text(edited(file.read_text("utf-8"), 1), "utf-8")
        again, nothing = quietly(command).seconds, quietly(command).seconds
        size = next((root / "build").glob("*.pdf")).stat().st_size / 1e6
        first = first or (each, memory)
        print(f"{patterns:>9}{each * patterns:>10.2f}{each:>8.3f} s {memory:>20.0f}{size:>10.2f}{again:>12.2f}{nothing:>9.2f}   time {each / first[0]:.2f}, memory {memory / first[1]:.2f} times the first", flush=True)
        shutil.rmtree(root)


if __name__ == "__main__":
    start = perf_counter()
    main()
    print(f"measured in {perf_counter() - start:.0f} s")
