"""Pages of every trim, measured in a PDF that was set, against published sizes.

"ISO 216"; "Trim sizes and margins", "What is trim size" (inches); "safety margin", "Bleed and Trim in Book Printing" (bleed);
"PDF/X-1a checklist" (boxes lie within one another). An inch is 25.4 mm, and a point 1/72 of it.
"""

import asyncio

import pikepdf
import pytest

from booklet.bind.book import style
from booklet.bind.edition import Edition
from booklet.bind.finish import finished
from booklet.bind.pdf import typeset
from booklet.source.measures import PAGE_SIZES
from tests.bind.copies import TINY

INCHES = {"Letter": (8.5, 11), "half letter": (5.5, 8.5), "6x9": (6, 9), "8.5x8.5": (8.5, 8.5)}
MILLIMETRES = {"A4": (210, 297), "A5": (148, 210)}
TRIMS = {name: (width * 72, height * 72) for name, (width, height) in INCHES.items()} | \
        {name: (width * 72 / 25.4, height * 72 / 25.4) for name, (width, height) in MILLIMETRES.items()}


def boxes(on):
    """Width and height of media, bleed and trim box of a page that was set, points."""
    html = f'<!DOCTYPE html><html lang="en"><head><title>A page</title><style>{style(TINY, on)}</style></head><body class="book"><section class="page"><h1>A page</h1></section></body></html>'

    async def joined():
        return await (await typeset(html, TINY, {}, {}, on)).joined()

    made = finished(asyncio.run(joined()), on)
    with pikepdf.open(made.file) as pdf:
        found = [[float(side) for side in pdf.pages[0][f"/{name}"]] for name in ("MediaBox", "BleedBox", "TrimBox")]
    for outer, inner in zip(found, found[1:]):
        assert outer[0] <= inner[0] + 1e-3 and outer[1] <= inner[1] + 1e-3 and inner[2] <= outer[2] + 1e-3 and inner[3] <= outer[3] + 1e-3
    return [(right - left, top - bottom) for left, bottom, right, top in found]


@pytest.mark.parametrize(("name", "bleed", "sheet"), [
    ("A5", 3.0, (154 * 72 / 25.4, 216 * 72 / 25.4)),
    ("6x9", 3.0, ((152.4 + 6) * 72 / 25.4, (228.6 + 6) * 72 / 25.4)),    # published as 158 x 235 mm for 152 x 229
    ("half letter", 3.175, (5.75 * 72, 8.75 * 72)),                      # an eighth of an inch on four sides
    ("Letter", 0.0, (612, 792)), ("A4", 0.0, (595.276, 841.890)), ("8.5x8.5", 0.0, (612, 612))])
def test_a_page_has_its_published_size_and_bleed(name, bleed, sheet):
    width, height = PAGE_SIZES[name]
    media, bled, trim = boxes(Edition(width=width, height=height, bleed=bleed))
    assert trim == pytest.approx(TRIMS[name], abs=0.05)
    assert bled == pytest.approx(sheet, abs=0.05) and media == pytest.approx(bled, abs=0.05)


def test_crop_marks_take_room_outside_the_bleed():
    media, bled, trim = boxes(Edition(bleed=3.0, marks=True))
    assert media[0] > bled[0] > trim[0] and media[1] > bled[1] > trim[1]
