"""How long lint takes: against yamllint on the same files, and to start.

    python -m tests.bench.lint_speed

200 patterns are linted in one process, once by each, file by file as both do it; all rules run, and nothing is read twice. Both are measured in
processor time, and ours looks for garbage as seldom as the command does. Starting is
measured with compiled modules, which a first run leaves behind, and is the least of several runs: `booklet lint FILE` against a process that only
imports the two libraries which every such program needs.
"""

from __future__ import annotations

import gc
import os
import subprocess
import sys
import tempfile
from pathlib import Path
from time import perf_counter, process_time

from yamllint import linter
from yamllint.config import YamlLintConfig

from booklet.cli import GARBAGE_AFTER
from booklet.lint.run import checked
from booklet.source.workspace import load

ROOT = Path(__file__).parents[2]
FILES, RUNS = 200, 15
STARTS = {"import yaml, click": ["-c", "import yaml, click"],
          "booklet lint FILE": ["-c", "from booklet.cli import main; main()", "lint", "patterns/cloud-shadow.yaml"]}


def main() -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as folder:
        files = _written(Path(folder))
        ours, theirs = [], []
        for _ in range(3):   # in turns, so that a busy machine slows both
            ours.append(_time(lambda: _ours(Path(folder), files), process_time))
            theirs.append(_time(lambda: _yamllint(files), process_time))
        one, other = min(ours) / FILES, min(theirs) / FILES
        print(f"{FILES} patterns in one process: booklet {one * 1000:.2f} ms a file, yamllint {other * 1000:.2f} ms a file, ratio {one / other:.2f}")
        _starts(Path(folder))


def _written(folder: Path) -> list[Path]:
    """The patterns of the demo book under other names, over and over."""
    patterns = [path for path in sorted((ROOT / "patterns").glob("*.yaml")) if path.name != "book.yaml"]
    target = folder / "patterns"
    target.mkdir()
    (target / "book.yaml").write_text((ROOT / "patterns" / "book.yaml").read_text("utf-8"), "utf-8")
    files = []
    for number in range(FILES):
        source = patterns[number % len(patterns)]
        files.append(target / f"{source.stem}-{number}.yaml")
        files[-1].write_text(source.read_text("utf-8"), "utf-8")
    return files


def _yamllint(files: list[Path]) -> None:
    rules = YamlLintConfig("extends: default")
    for file in files:
        list(linter.run(file.read_text("utf-8"), rules, str(file)))


def _ours(folder: Path, files: list[Path]) -> None:
    usual = gc.get_threshold()
    gc.set_threshold(GARBAGE_AFTER)
    try:
        checked(load(folder, files), with_book=False)
    finally:
        gc.set_threshold(*usual)


def _time(work, clock=perf_counter) -> float:
    start = clock()
    work()
    return clock() - start


def _starts(folder: Path) -> None:
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    environment = {**kept, "PYTHONPYCACHEPREFIX": str(folder / "compiled")}
    taken = {name: [] for name in STARTS}
    for _ in range(RUNS):
        for name, command in STARTS.items():
            taken[name].append(_time(lambda: subprocess.run([sys.executable, *command], cwd=ROOT, env=environment, check=True, capture_output=True)))
    least = {name: min(times) for name, times in taken.items()}
    for name, time in least.items():
        print(f"{name}: {time * 1000:.0f} ms")
    base, ours = least.values()
    print(f"start: {ours / base:.2f} times the imports")


if __name__ == "__main__":
    main()
