"""Charts on the printed page: rasterised with a general-purpose PDF library, every bead shows its colour at its place.

The place of the picture is read from the PDF's own tags (the /BBox of its Figure), the place of a bead from the drawing.
"""

import re

import pikepdf
import pypdfium2
import pytest

from booklet.bind.edition import edition
from booklet.bind.geometry import print_room
from booklet.bind.context import chart_scales, shown
from booklet.draw.fringe import fringe_plan
from booklet.draw.grid import body_grid

PIXELS = 8   # a CSS pixel, 1/96 in, is so many of the raster


@pytest.fixture(scope="module")
def figures(tiny):
    """(page number, left, top) of every figure by its text, in CSS pixels from the top left of the trimmed page."""
    with pikepdf.open(tiny.pdf) as pdf:
        pages = {page.objgen: number for number, page in enumerate(pdf.pages)}
        return [(str(item.Alt), pages[item.Pg.objgen], *(float(value) for value in item.A.BBox)) for item in pdf.objects
                if isinstance(item, pikepdf.Dictionary) and item.get("/S") == "/Figure"]


@pytest.fixture(scope="module")
def views(tiny):
    room = print_room(edition(tiny.workspace.book))
    return {slug: shown(pattern, room, 1.0) for slug, pattern in tiny.workspace.patterns.items()}


def raster(tiny, number):
    """The trimmed page as an image; the bleed is cut off."""
    document = pypdfium2.PdfDocument(tiny.pdf)
    try:
        page = document[number]
        image = page.render(scale=PIXELS * 96 / 72).to_pil().convert("RGB")
    finally:
        document.close()
    bleed = round(tiny.workspace.book.page.bleed / 25.4 * 96 * PIXELS)
    return image.crop((bleed, bleed, image.width - bleed, image.height - bleed))


def place_of(figures, svg):
    """Page, and the function from the drawing's mm to pixels of the raster."""
    said = re.search("<title>(.*?)</title>", svg)[1]
    (_, number, left, top, right, bottom), = [figure for figure in figures if figure[0] == said.replace("&amp;", "&")]
    x, y, width, _ = map(float, re.search('viewBox="([^"]+)"', svg)[1].split())
    scale = (right - left) / width
    return number, lambda at_x, at_y: (round((left + (at_x - x) * scale) * PIXELS), round((top + (at_y - y) * scale) * PIXELS))


def shades(image, middle, half):
    """The colours on a small ring round the middle of a bead, where no letter is."""
    return {image.getpixel((middle[0] + dx, middle[1] + dy)) for dx in (-half[0], half[0]) for dy in (-half[1], 0, half[1])}


def near(shade, colour):
    return all(abs(channel - int(colour[i:i + 2], 16)) <= 6 for channel, i in zip(shade, (1, 3, 5)))


@pytest.mark.parametrize("slug", ["morning-cloud", "evening-star"])
def test_every_bead_of_the_body_chart_has_its_colour(tiny, figures, views, slug):
    piece = tiny.workspace.patterns[slug].piece
    number, place = place_of(figures, views[slug].chart.svg)
    image = raster(tiny, number)
    bead = chart_scales(piece, print_room(edition(tiny.workspace.book)))[0]
    grid = body_grid(piece, bead)
    seen = 0
    for row in piece.rows:
        for index, stitch in enumerate(row.stitches):
            for level, key in enumerate(stitch.beads):
                x, y = grid.spot(row, index, level)
                kind = piece.legend[key].kind
                half = [size * grid.scale * 0.36 * 96 / 25.4 * PIXELS for size in (kind.diameter, kind.length)]
                colours = shades(image, place(x, y), [round(half[0]), round(half[1] / 2)])
                assert any(near(colour, piece.legend[key].colour) for colour in colours), (row.number, index, level, key, colours)
                seen += 1
    assert seen == sum(len(stitch.beads) for row in piece.rows for stitch in row.stitches)


def test_every_bead_of_the_fringe_chart_has_its_colour(tiny, figures, views):
    piece = tiny.workspace.patterns["morning-cloud"].piece
    number, place = place_of(figures, views["morning-cloud"].fringe.svg)
    image = raster(tiny, number)
    plan = fringe_plan(piece, chart_scales(piece, print_room(edition(tiny.workspace.book)))[1])
    seen = 0
    for strand in piece.strands:
        for bead in plan.strands[strand.number].beads:
            kind = piece.legend[bead.key].kind
            half = [size * plan.scale * 0.34 * 96 / 25.4 * PIXELS for size in (kind.diameter, kind.length)]
            colours = shades(image, place(plan.x(strand.number - 1) + bead.x, plan.start + bead.y), [round(half[0]), round(half[1] / 2)])
            assert any(near(colour, piece.legend[bead.key].colour) for colour in colours), (strand.number, bead, colours)
            seen += 1
    assert seen == sum(len(strand.all) for strand in piece.strands)


def test_no_chart_leaves_its_page(tiny, figures):
    page = tiny.workspace.book.page
    charts = [figure for figure in figures if "chart" in figure[0].lower()]
    assert len(charts) == 3
    for _, _, left, top, right, bottom in charts:
        assert 0 < left < right < page.width / 25.4 * 96
        assert 0 < top < bottom < page.height / 25.4 * 96
