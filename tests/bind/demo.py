"""Editions of the demo book, built in this process, and what is read back from the finished PDF of each."""

import asyncio
import gc
import io
from pathlib import Path
from types import SimpleNamespace

import numpy
import pikepdf
import pypdfium2
import pytest
from msgspec.structs import replace

from booklet.bind import book
from booklet.bind.edition import edition
from booklet.bind.volume import volume
from booklet.craft.replay import differences
from booklet.source.workspace import load
from tests.bind.tagged import read, types

ROOT = Path(__file__).parents[2]
MM = 25.4 / 72
CHANGE = "Change the thread here."


def built(name, every=1):
    """An edition of the demo book: its patterns as it words them, its PDF, its tags, its type, and the findings about its pages.

    `every`: 3 takes each third pattern, for editions that differ from others in little but what every page of them shows.
    """
    workspace, said = load(ROOT), []
    assert not [finding for finding in workspace.findings if finding.is_error]
    workspace = replace(workspace, patterns=dict(list(workspace.patterns.items())[::every]))
    gc.freeze()   # what is there already is no garbage of the typesetter
    on = edition(workspace.book, name)
    ((_, file),) = asyncio.run(volume(workspace, on, "demo", lambda on: book.bound(workspace, on, report=said.extend))).items()
    content = file.read()
    return SimpleNamespace(patterns=book.workable(workspace, workspace.patterns.values(), on.hand), content=content, tags=read(content), types=types(content),
                           findings=[finding.one_line() for finding in said if finding.rule != "chart-too-large-for-page"])


def check_size(made, width, height):
    """Every page is trimmed to this size, mm."""
    with pikepdf.open(io.BytesIO(made.content)) as pdf:
        sizes = {tuple(round(float(side) * MM, 1) for side in (page.TrimBox[2] - page.TrimBox[0], page.TrimBox[3] - page.TrimBox[1])) for page in pdf.pages}
    assert sizes == {(width, height)}


def check_type(made, least, most_used):
    """No type is smaller than `least` points, most is `most_used`, and all fonts are in the file."""
    assert all(one.is_embedded and one.face.startswith("Booklet-") for one in made.types)
    assert min(one.size for one in made.types) >= least
    used = {}
    for one, times in made.types.items():
        used[one.size] = used.get(one.size, 0) + times
    assert max(used, key=used.get) == pytest.approx(most_used, abs=0.3)


def check_words(made):
    """The words of every row and strand, read from the tags of the PDF, rebuild the charts."""
    lines = _lines(made.tags)
    for pattern in made.patterns:
        for piece, which in ((pattern.piece, ""), (pattern.second, "Second piece: ")):
            if piece:
                rows, strands = (_of(lines, pattern.title, which, part) for part in ("body in words", "fringe in words"))
                assert len(rows) >= len(piece.rows) - 1 and differences(piece, rows, strands) == ()


def check_pages(made):
    """Nothing that only set pages show is wrong: empty pages, small type, text in the margin, coarse pictures, a line on another one."""
    assert "\n".join(made.findings) == ""
    _check_lines(made)


def _check_lines(made):
    """No line of text lies on another one."""
    for number, page in enumerate(pypdfium2.PdfDocument(io.BytesIO(made.content)), 1):
        text = page.get_textpage()
        left, bottom, right, top = numpy.array([text.get_rect(index) for index in range(text.count_rects())] or [[0] * 4]).T
        across = numpy.minimum(right, right[:, None]) - numpy.maximum(left, left[:, None])
        down = numpy.minimum(top, top[:, None]) - numpy.maximum(bottom, bottom[:, None])
        high = top - bottom
        struck = (across > 1) & (down > 0.4 * numpy.minimum(high, high[:, None])) & ~numpy.eye(len(high), dtype=bool)
        assert not struck.any(), (number, [text.get_text_bounded(*text.get_rect(int(index))) for index in numpy.flatnonzero(struck.any(axis=0))])


def _of(lines, title, which, part):
    return lines.get((title, f"{which}{part}" if which else part.capitalize()), [])


def _lines(tags):
    """Items with a box to tick, by pattern and heading."""
    found, title, part = {}, "", ""
    for element in tags.all("H1", "H2", "LI"):
        if element.tag == "H1":
            title = element.text
        elif element.tag == "H2":
            part = element.text
        elif element.text.startswith("☐"):
            words = element.text.removeprefix("☐").removesuffix(CHANGE)
            found.setdefault((title, part), []).append(" ".join(words.split()))
    return found
