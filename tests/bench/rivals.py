"""The same book for other engines, made ready and looked at. A step of build_speed, which runs it as a process of its own.

    python -m tests.bench.rivals WORKSPACE SLUG FOLDER

The workspace has been built, and the pattern SLUG bound alone. FOLDER gets book.html and single.html (ours, with our page numbers and fonts written into
it) for a browser, and typst/ for the typst engine. All three books are then made once, and what they say and show is compared.
"""

from __future__ import annotations

import asyncio
import re
import sys
from pathlib import Path

import pikepdf

from booklet.bind.book import Gathered, book_html, gathered
from booklet.bind.context import finished
from booklet.bind.edition import edition
from booklet.bind.fonts import css_for_pdf
from booklet.bind.geometry import print_room, sheet
from booklet.bind.pdf import working_in
from booklet.bind.press.parts import FOLIO, FOLIO_END
from booklet.bind.press.cache import KEPT
from booklet.bind.press.workshop import Workshop
from booklet.bind.sections import common_scale
from booklet.bind.single import single_html
from booklet.source.workspace import load
from tests.bench.equal import differences, said
from tests.bench.made_by import chromium, quietly, typst
from tests.bench.same_book import write_source
from tests.bench.undashed import undashed


def main() -> None:
    """Write the sources, make the books, and print how they differ."""
    root, slug, folder = Path(sys.argv[1]), sys.argv[2], Path(sys.argv[3])
    workspace = load(root)
    on = edition(workspace.book)
    with working_in(Workshop(root / KEPT)):   # what the builds have drawn is taken from there
        whole = asyncio.run(gathered(workspace, on))
        html = _with_pictures(book_html(workspace, whole, on), whole, asyncio.run(common_scale([pattern.piece for pattern in whole.patterns], print_room(on).small)))
        single = asyncio.run(single_html(workspace, slug, on))
    (ours,) = (root / "build").glob("*.pdf")
    write_source(html, sheet(on), folder / "typst")
    (folder / "book.html").write_text(_for_browser(html, ours), "utf-8")
    (folder / "single.html").write_text(_for_browser(single, root / "build" / "single" / f"{slug}.pdf"), "utf-8")
    for command in (chromium(folder, "book"), chromium(folder, "single"), typst(folder)):
        quietly(command)
    _compare({"booklet": ours, "chromium": folder / "book.pdf", "typst": folder / "typst.pdf"}, sheet(on), html.count(FOLIO))


def _with_pictures(html: str, book: Gathered, scale: float) -> str:
    """The book with the pictures of its contents, whose drawings only our own engine reads, as SVG."""
    for pattern, section in zip(book.patterns, book.sections):
        html = html.replace(section.small.svg, finished(pattern.piece, scale).svg, 1)
    return html


def _for_browser(html: str, ours: Path) -> str:
    """The page with the numbers of our pages, which a browser cannot ask for, with our fonts, and with pictures as a browser likes them."""
    with pikepdf.open(ours) as pdf:
        pages = {page.objgen: number for number, page in enumerate(pdf.pages, 1)}
        numbers = {str(name): pages[place[0].objgen] for name, place in pikepdf.NameTree(pdf.Root.Names.Dests).items()}
    numbered = re.sub(f"{FOLIO}([^{FOLIO_END}]*){FOLIO_END}", lambda match: str(numbers[match[1]]), html)
    return undashed(numbered).replace("<style>", f"<style>{css_for_pdf()}thead {{ display: table-row-group }}", 1)   # a head is not repeated where a table is broken


def _compare(files: dict[str, Path], page, folios: int) -> None:
    told = {name: said(file, page) for name, file in files.items()}
    first, *others = told
    for name, one in told.items():
        print(f"{name:<9} {one.pages:>5} pages, {sum(one.words.values()) + sum(one.numbers.values())} words, {sum(one.pictures.values())} pictures, {files[name].stat().st_size / 1e6:.2f} MB")
    for name in others:
        found = differences(told[first], told[name], folios)
        print(f"{name} says and shows the same as {first}" + (", except: " + "; ".join(found) if found else f"; only numbers of pages differ, of which there are {folios}"))


if __name__ == "__main__":
    main()
