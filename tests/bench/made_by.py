"""Commands that make a PDF, each in a process of its own, and what they take. Imports nothing, so that no memory of ours is counted as theirs."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from time import perf_counter
from typing import NamedTuple

ROOT = Path(__file__).parents[2]
_TYPST = "import sys, typst; typst.compile(sys.argv[1], output=sys.argv[2], font_paths=sys.argv[3:], ignore_system_fonts=True, pdf_standards=['ua-1'])"


class Taken(NamedTuple):
    """Seconds by the clock, and the most memory that any one process of the command had, in MB."""

    seconds: float
    memory: float


def booklet(workspace: Path, *arguments: str) -> list[str]:
    """Our own command on a workspace."""
    return [sys.executable, "-c", "from booklet.cli import main; main()", "-C", str(workspace), *arguments]


def chromium(folder: Path, name: str) -> list[str]:
    """A headless browser printing NAME.html to NAME.pdf."""
    return ["chromium", "--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={folder / 'browser'}", "--no-pdf-header-footer",
            f"--print-to-pdf={folder / name}.pdf", (folder / f"{name}.html").as_uri()]


def typst(folder: Path) -> list[str]:
    """The typst engine compiling typst/main.typ to typst.pdf, tagged, for PDF/UA-1 like ours."""
    fonts = subprocess.run([sys.executable, "-c", "from tests.bench.same_book import font_folders; print(*font_folders(), sep='\\n')"],
                           cwd=ROOT, check=True, capture_output=True, text=True).stdout.split("\n")[:-1]
    return [sys.executable, "-c", _TYPST, str(folder / "typst" / "main.typ"), str(folder / "typst.pdf"), *fonts]


def quietly(command: list[str]) -> Taken:
    """Run a command to its end. Raises RuntimeError, with what it said, where it fails."""
    start = perf_counter()
    process = subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
    told = process.stdout.read()
    _, status, usage = os.wait4(process.pid, 0)
    process.returncode, seconds = os.waitstatus_to_exitcode(status), perf_counter() - start
    process.stdout.close()
    if process.returncode:
        raise RuntimeError(f"{command[0]} failed: {told.decode('utf-8', 'replace')[-2000:]}")
    return Taken(seconds, usage.ru_maxrss / (1e6 if sys.platform == "darwin" else 1e3))
