"""Two pages on a side of a sheet, ordered so that a folded and stapled pile of sheets reads as a book (saddle stitch).

Common knowledge of the trade, held against published tables in the tests: pages are padded to a multiple of four, the
two pages of a side add up to one more than their number, and odd pages lie at the right.
"""

from __future__ import annotations


from .finish import saved
from .press.inks import POINT
from .press.scratch import Scratch

Side = tuple[int, int]   # page numbers at the left and at the right, from 1


def sides(pages: int) -> list[Side]:
    """The sides of the sheets in printing order, front and back by turns; numbers over `pages` stand for blank ones."""
    total = -(-pages // 4) * 4
    order = []
    for sheet in range(total // 4):
        low, high = 2 * sheet + 1, total - 2 * sheet
        order += [(high, low), (low + 1, high - 1)]
    return order


def imposed(made: Scratch, width: float, height: float) -> Scratch:
    """The pages of a PDF, each `width` x `height` mm, two on a side. Print on both sides, turned at the short edge.

    The sheets are for a printer, so links, bookmarks and tags are left out; a file to read on a screen is another edition.
    """
    import pikepdf

    wide, high = width * POINT, height * POINT
    with pikepdf.open(made.file) as source, pikepdf.new() as sheets:
        for left, right in sides(len(source.pages)):
            sheets.add_blank_page(page_size=(2 * wide, high))
            side = sheets.pages[-1]
            for number, x in ((left, 0.0), (right, wide)):
                if number <= len(source.pages):
                    _place(sheets, side, source.pages[number - 1], x)
            side.TrimBox = side.BleedBox = side.CropBox = side.MediaBox
        for key in ("/Title", "/Author", "/Subject", "/Creator", "/Producer"):
            if key in source.docinfo:
                sheets.docinfo[key] = str(source.docinfo[key])
        if "/Lang" in source.Root:
            sheets.Root.Lang = str(source.Root.Lang)
        sheets.Root.ViewerPreferences = pikepdf.Dictionary(Duplex=pikepdf.Name.DuplexFlipShortEdge, DisplayDocTitle=True)
        return saved(sheets)


def _place(sheets, side, page, x: float) -> None:
    """Put the trimmed page at its own size, its lower left corner at (x, 0)."""
    import pikepdf

    left, bottom, right, top = (float(value) for value in page.TrimBox)
    form = sheets.copy_foreign(page.as_form_xobject())
    form.BBox = pikepdf.Array([left, bottom, right, top])
    name = side.add_resource(form, pikepdf.Name.XObject)
    side.contents_add(f"q 1 0 0 1 {x - left:.4f} {-bottom:.4f} cm {name} Do Q".encode())
