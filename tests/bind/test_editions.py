"""Editions of the tiny book, measured in the finished PDF files.

Boxes: "Page.Box enum" (ISO 32000-1, 14.11.2). PDF/X: "PDF/X-1a checklist". Large print, the left hand and screens are tested with the demo book.
"""

import asyncio

import numpy
import pikepdf
import pypdf
import pypdfium2
import pytest

from booklet.bind import book
from booklet.bind.edition import edition, editions
from booklet.bind.files import write_file
from booklet.bind.geometry import gutter_for, sheet
from booklet.bind.pdf import working_in
from booklet.bind.press.workshop import HereAndNow, Workshop
from booklet.errors import WrongUse
from booklet.source.workspace import load
from tests.bind.copies import TINY, copy_of

MM = 25.4 / 72
EDITIONS = """
isbn: 978-3-16-148410-0
editions:
  press:   {size: 6x9, bleed: 3 mm, marks: true, gutter: by pages, paper: 0.2 mm, output: PDF/X-4, profile: press.icc}
  archive: {grey: true, output: PDF/A-2, bleed: 0 mm, start: right}
  sheets:  {sheets: two-up}
"""


def press_profile():
    """The head of an ICC profile of a press (ISO 15076-1, 7.2); enough to be told from other files."""
    head = bytearray(132)
    head[12:16], head[16:20], head[36:40] = b"prtr", b"CMYK", b"acsp"
    return bytes(head)


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """Every edition of the tiny book as a PDF, by name."""
    root = copy_of(TINY, tmp_path_factory.mktemp("editions") / "tiny")
    file = root / "patterns" / "book.yaml"
    file.write_text(file.read_text("utf-8") + EDITIONS, "utf-8")
    (root / "patterns" / "press.icc").write_bytes(press_profile())
    workspace = load(root)
    assert not workspace.findings
    with working_in(Workshop(start=HereAndNow)):   # what editions have in common is set once
        files = {path.stem.removeprefix("a-small-sky-"): path for name in workspace.book.editions for path in book.build(workspace, ("pdf",), name=name)}
        files["inside"] = root / "inside.pdf"
        write_file(files["inside"], asyncio.run(book.bound(workspace, edition(workspace.book, "sheets"))))
    return workspace, files


def boxes(path):
    with pikepdf.open(path) as pdf:
        return [{name: [float(value) for value in page[f"/{name}"]] for name in ("MediaBox", "BleedBox", "TrimBox")} for page in pdf.pages]


def size(box):
    return (box[2] - box[0]) * MM, (box[3] - box[1]) * MM


def test_press_pages_have_trim_bleed_and_room_for_marks(made):
    """152.4 x 228.6 mm and 3 mm on each side: "Bleed and Trim in Book Printing" gives 158 x 235 for 152 x 229."""
    for page in boxes(made[1]["press"]):
        assert size(page["TrimBox"]) == pytest.approx((152.4, 228.6), abs=0.01)
        assert size(page["BleedBox"]) == pytest.approx((158.4, 234.6), abs=0.01)
        assert size(page["MediaBox"]) == pytest.approx((172.4, 248.6), abs=0.01)


def test_crop_marks_stand_outside_the_bleed_and_point_at_the_corners(made):
    page = pypdfium2.PdfDocument(made[1]["press"])[0]
    image = numpy.asarray(page.render(scale=4, grayscale=True).to_pil())
    dark = image < 100
    inch = 72 * 4
    edge = round(10 / 25.4 * inch)    # of the trimmed page, from the left and top of the sheet
    reach = round(3 / 25.4 * inch)    # of the bleed
    assert dark[edge - 3:edge + 3, :edge - reach - 4].any() and dark[:edge - reach - 4, edge - 3:edge + 3].any()
    assert not dark[edge - reach + 6:edge - 6, edge + 20:-edge - 20].any()


def test_pdf_x_4_says_so_and_keeps_its_rules(made):
    with pikepdf.open(made[1]["press"]) as pdf:
        assert pdf.pdf_version == "1.6" and pdf.docinfo["/Trapped"] == "/False" and "/ModDate" in pdf.docinfo
        (intent,) = pdf.Root.OutputIntents
        assert intent.S == "/GTS_PDFX" and intent.DestOutputProfile.read_bytes() == press_profile() and int(intent.DestOutputProfile.N) == 4
        assert b"<pdfxid:GTS_PDFXVersion>PDF/X-4<" in pdf.Root.Metadata.read_bytes()
        for page in pdf.pages:
            assert "/Annots" not in page and page.Resources.ColorSpace.DefaultRGB[0] == "/ICCBased"


def test_text_of_print_editions_is_in_one_black_ink(made):
    with pikepdf.open(made[1]["press"]) as pdf:
        inks = [tuple(map(float, operands)) for page in pdf.pages for operands, operator in pikepdf.parse_content_stream(page) if str(operator) == "rg"]
        assert inks and all(max(ink) - min(ink) > 0.004 for ink in inks)


def test_pdf_a_2_says_so_and_has_its_profile(made):
    with pikepdf.open(made[1]["archive"]) as pdf:
        metadata = pdf.Root.Metadata.read_bytes()
        assert b"<pdfaid:part>2<" in metadata and b"<pdfuaid:part>1<" in metadata and b"PDF/UA identification" in metadata
        assert pdf.Root.OutputIntents[0].S == "/GTS_PDFA1"
        assert all(note.F == 4 for page in pdf.pages for note in page.get("/Annots", []))


def test_a_grey_edition_has_no_colour_at_all(made):
    with pikepdf.open(made[1]["archive"]) as pdf:
        used = {str(operator) for page in pdf.pages for _, operator in pikepdf.parse_content_stream(page)}
    assert "g" in used and not used & {"rg", "RG", "k", "K"}
    for page in pypdfium2.PdfDocument(made[1]["archive"]):
        pixels = numpy.asarray(page.render(scale=0.6).to_pil().convert("RGB")).astype(int)
        assert (pixels.max(axis=2) - pixels.min(axis=2)).max() <= 2


def test_sheets_hold_two_pages_a_side_with_the_last_beside_the_first(made):
    """"imposition" (a glossary): the two pages of a side add up to one more than their number. Read from the words on the sheets."""
    pages, sheets = ([" ".join(page.extract_text().split()) for page in pypdf.PdfReader(made[1][name]).pages] for name in ("inside", "sheets"))
    total = 4 * -(-len(pages) // 4)
    pages += [""] * (total - len(pages))
    assert len(sheets) == total // 2
    for number, side in enumerate(sheets):
        right = number + 1 if number % 2 == 0 else total - number
        for one in (right, total + 1 - right):
            assert pages[one - 1][:60] in side
    assert float(pypdf.PdfReader(made[1]["sheets"]).pages[0].mediabox.width) * MM == pytest.approx(296, abs=0.01)


def test_the_cover_is_back_spine_and_front(made):
    pages = len(boxes(made[1]["press"]))
    (cover,) = boxes(made[1]["press-cover"])
    spine = -(-pages // 2) * 0.2
    assert size(cover["TrimBox"]) == pytest.approx((2 * 152.4 + spine, 228.6), abs=0.02)
    assert "978-3-16-148410-0" in pypdf.PdfReader(made[1]["press-cover"]).pages[0].extract_text()


LEFT = "0001101 0011001 0010011 0111101 0100011 0110001 0101111 0111011 0110111 0001011".split()   # ISO/IEC 15420, from memory
PARITY = "LLLLLL LLGLGG LLGGLG LLGGGL LGLLGG LGGLLG LGGGLL LGLGLG LGLGGL LGGLGL".split()              # as above: how the six digits after the first are written


def test_the_bars_on_the_cover_read_as_the_isbn(made):
    """The bars are read from a raster of the file, as a till reads them."""
    scale, inch = 8, 72
    image = numpy.asarray(pypdfium2.PdfDocument(made[1]["press-cover"])[0].render(scale=scale, grayscale=True).to_pil())
    dot = scale * inch / 25.4    # in a millimetre
    bleed = 3
    row = image[image.shape[0] - round((bleed + 12 + 8) * dot)]
    right = round((bleed + 152.4 - 12) * dot)
    bars = numpy.flatnonzero(row[right - round(39 * dot):right] < 90)
    box = row[right - round(39 * dot):right][bars[0]:bars[-1] + 1]
    code = "".join("1" if box[round((module + 0.5) * len(box) / 95)] < 90 else "0" for module in range(95))
    assert code[:3] == code[-3:] == "101" and code[45:50] == "01010"
    left = [code[at:at + 7] for at in range(3, 45, 7)]
    kinds = "".join("L" if part in LEFT else "G" for part in left)
    mirrored = [part.translate(str.maketrans("01", "10"))[::-1] for part in LEFT]
    digits = [LEFT.index(part) if part in LEFT else mirrored.index(part) for part in left]
    digits += [LEFT.index(code[at:at + 7].translate(str.maketrans("01", "10"))) for at in range(50, 92, 7)]
    assert "".join(map(str, (PARITY.index(kinds), *digits))) == "9783161484100"


def test_error_an_edition_that_is_not_named(made):
    with pytest.raises(WrongUse, match="there is no edition 'arch'"):
        edition(made[0].book, "arch")
    assert [on.name for on in editions(made[0].book, "all")] == ["", "press", "archive", "sheets"]


@pytest.mark.parametrize(("pages", "inside"), [(40, 15.316), (150, 15.316), (600, 19.1)])
def test_the_inside_margin_grows_with_the_pages(made, pages, inside):
    on = edition(made[0].book, "press")
    outside = sheet(on).outside
    assert outside + gutter_for(pages, on) == pytest.approx(max(outside + 4, inside), abs=0.001)
