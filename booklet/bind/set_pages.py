"""Pages as they were set: what only the finished PDF shows of type, margins, pictures and fonts."""

from __future__ import annotations

import ctypes
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import NamedTuple

from ..findings import Finding, Mark, Severity
from .fonts import signs
from .geometry import Sheet

NEARLY_EMPTY_PAGE = "nearly-empty-page"
FLOOR = 0.75          # of the running type: smaller type is no type of this edition
NEARLY_EMPTY = 0.125  # of the height of the type area
AT_EDGE = 1.0         # mm by which text may stand out of the type area
LEAST_DPI = 299.0     # 300, less what the typesetter's rounding takes
MM = 72 / 25.4        # points
_OURS = "Booklet-"    # how the names of our fonts begin, after the six letters of a subset


@dataclass(frozen=True)
class Runs:
    """The texts of a page as they are drawn, run by run, which tells in a tenth of the time whether its characters have to be looked at."""

    size: float          # of the smallest type, in points; infinite on a page without text
    ours: bool           # whether all fonts are
    left: float          # where the outermost end
    bottom: float
    right: float
    top: float
    low: float           # the lowest end above the lower margin
    plain: bool          # whether text stands in no group of its own, and there is no picture of dots


class Sign(NamedTuple):
    """One character on a page: what it is, its height of type in points, its font, and where it ends in points."""

    text: str
    size: float
    font: str
    left: float
    bottom: float
    right: float
    top: float


class Fault(NamedTuple):
    """Something wrong with one page: the message is `before`, the name of the page, and `after`."""

    page: int      # from 1
    severity: int
    rule: str
    before: str
    after: str
    hint: str = ""


class Seen(NamedTuple):
    """What the pages of a PDF show, as plain values."""

    pages: int
    faults: list[Fault]
    small: list[tuple[float, int]]       # sizes of type that are too small, and the first page of each
    strange: list[tuple[str, int]]       # characters in none of our fonts, and the first page of each


def looked_at(content: bytes, sheet: Sheet, lacking: bool = True) -> Seen:
    """Look at every page of a PDF. `lacking`: whether a character may be in no font at all, for which texts have to be read."""
    import pypdfium2

    document = pypdfium2.PdfDocument(content)
    try:
        small: dict[float, int] = {}
        strange: dict[str, int] = {}
        faults: list[Fault] = []
        for number, page in enumerate(document, 1):
            runs = _runs(page, sheet)
            signs = [] if _in_order(runs, page, sheet) else list(_signs(page))
            for sign in signs:
                if sign.size < _least(sheet):
                    small.setdefault(round(sign.size, 1), number)
                if _OURS not in sign.font:
                    strange.setdefault(sign.text, number)
            for text in _boxes(page) if lacking else ():
                strange.setdefault(text, number)
            faults += _past_margin(page, number, signs, sheet)
            if not runs.plain:
                faults += _coarse(page, number)
            if not runs.plain or runs.top - runs.low < 2 * NEARLY_EMPTY * sheet.depth * MM:
                faults += _empty(page, number, sheet)
        return Seen(len(document), faults, sorted(small.items()), list(strange.items()))
    finally:
        document.close()


def together(parts: Iterable[Seen]) -> Seen:
    """What is seen of several PDFs whose pages follow each other."""
    pages, faults, small, strange = 0, [], {}, {}
    for part in parts:
        faults += [fault._replace(page=fault.page + pages) for fault in part.faults]
        for kept, found in ((small, part.small), (strange, part.strange)):
            for what, page in found:
                kept.setdefault(what, page + pages)
        pages += part.pages
    return Seen(pages, faults, sorted(small.items()), list(strange.items()))


def set_findings(seen: Seen, sheet: Sheet, mark: Mark, source: str, what: str) -> Iterator[Finding]:
    """What is wrong with the pages of a PDF.

    `mark` is where the findings are placed, `what` names the PDF ("the single"), and `source` is the text of the file at the
    mark, in which a character that no font has is looked for.
    """
    empty = [fault.page for fault in seen.faults if fault.rule == NEARLY_EMPTY_PAGE]
    if empty:
        yield Finding(mark, Severity.NOTE, NEARLY_EMPTY_PAGE, f"{_pages(empty)} of {what} {'is' if len(empty) == 1 else 'are'} nearly empty")
    for fault in seen.faults:
        if fault.rule == NEARLY_EMPTY_PAGE:
            continue
        yield Finding(mark, Severity(fault.severity), fault.rule, f"{fault.before}page {fault.page} of {what}{fault.after}", fault.hint)
    for size, page in seen.small:
        yield Finding(mark, Severity.WARNING, "type-too-small", f"page {page} of {what} has type of {size:g} points; {sheet.type * FLOOR:.1f} is the least of this edition")
    for text, page in seen.strange:
        yield Finding(_first(source, text, mark), Severity.WARNING, "character-not-in-fonts",
                      f"{text} (U+{ord(text):04X}) on page {page} of {what} is in none of the fonts of the page", "write it otherwise")


def _pages(numbers: list[int]) -> str:
    """"page 3", or "pages 3, 9 and 12"."""
    *most, last = map(str, numbers)
    return f"pages {', '.join(most)} and {last}" if most else f"page {last}"


def _least(sheet: Sheet) -> float:
    """The smallest type that is no finding, in points."""
    return sheet.type * FLOOR - 0.05


def _limits(page, sheet: Sheet) -> tuple[float, float, float, float]:
    """Where text may reach: left, bottom, right and top, in points."""
    left, bottom, right, top = page.get_trimbox()
    side, edge = (min(sheet.inside, sheet.outside) - AT_EDGE) * MM, sheet.top / 3 * MM
    return left + side, bottom + edge, right - side, top - edge


def _in_order(runs: Runs, page, sheet: Sheet) -> bool:
    """Whether no character of these runs can be too small, of a strange font, or past a margin."""
    left, bottom, right, top = _limits(page, sheet)
    return runs.plain and runs.ours and runs.size >= _least(sheet) and runs.left >= left and runs.bottom >= bottom and runs.right <= right and runs.top <= top


def _runs(page, sheet: Sheet) -> Runs:
    from pypdfium2 import raw

    left = bottom = size = low = float("inf")
    right = top = -size
    plain, margin, fonts = True, page.get_trimbox()[1] + sheet.bottom * MM, {}
    box, points, matrix = [ctypes.c_float() for _ in range(4)], ctypes.c_float(), raw.FS_MATRIX()
    for index in range(raw.FPDFPage_CountObjects(page.raw)):
        run = raw.FPDFPage_GetObject(page.raw, index)
        kind = raw.FPDFPageObj_GetType(run)
        if kind == raw.FPDF_PAGEOBJ_PATH:
            continue
        plain = plain and kind not in (raw.FPDF_PAGEOBJ_FORM, raw.FPDF_PAGEOBJ_IMAGE)
        if kind != raw.FPDF_PAGEOBJ_TEXT or not raw.FPDFPageObj_GetBounds(run, *box):
            continue
        raw.FPDFPageObj_GetMatrix(run, matrix)
        raw.FPDFTextObj_GetFontSize(run, points)
        size = min(size, points.value * (matrix.c ** 2 + matrix.d ** 2) ** 0.5)
        font = raw.FPDFTextObj_GetFont(run)
        fonts.setdefault(ctypes.cast(font, ctypes.c_void_p).value, font)
        begin, foot, end, head = (one.value for one in box)
        left, bottom, right, top = min(left, begin), min(bottom, foot), max(right, end), max(top, head)
        low = min(low, foot) if foot >= margin else low
    ours = all(_is_ours(raw, font) for font in fonts.values())
    return Runs(size, ours, left, bottom, right, top, low, plain)


def _is_ours(raw, font) -> bool:
    ask = getattr(raw, "FPDFFont_GetBaseFontName", None) or raw.FPDFFont_GetFontName
    name = ctypes.create_string_buffer(200)
    ask(font, name, len(name))
    return _OURS.encode() in name.value


def _signs(page) -> Iterator[Sign]:
    """Every character of a page that is printed."""
    from pypdfium2 import raw

    text = page.get_textpage()
    matrix, name, flags = raw.FS_MATRIX(), ctypes.create_string_buffer(200), ctypes.c_int()
    for index in range(text.count_chars()):
        char = chr(raw.FPDFText_GetUnicode(text.raw, index))
        if char.isspace() or not char.isprintable() or raw.FPDFText_IsGenerated(text.raw, index) == 1:
            continue
        raw.FPDFText_GetMatrix(text.raw, index, matrix)
        raw.FPDFText_GetFontInfo(text.raw, index, name, len(name), flags)
        size = raw.FPDFText_GetFontSize(text.raw, index) * (matrix.c ** 2 + matrix.d ** 2) ** 0.5
        yield Sign(char, size, name.value.decode("utf-8", "replace"), *text.get_charbox(index))


def _boxes(page) -> list[str]:
    """Characters of a page that none of our fonts has. Where no font of this computer has them either, an empty box of ours is printed."""
    return sorted(sign for sign in set(page.get_textpage().get_text_range()) - signs() if sign.isprintable())


def _past_margin(page, number: int, signs: list[Sign], sheet: Sheet) -> Iterator[Fault]:
    least, lowest, most, highest = _limits(page, sheet)
    out = [sign for sign in signs if sign.left < least or sign.right > most or sign.bottom < lowest or sign.top > highest]
    if out:
        left, bottom, right, top = page.get_trimbox()
        cut = any(sign.left < left or sign.right > right or sign.bottom < bottom or sign.top > top for sign in out)
        yield Fault(number, Severity.ERROR if cut else Severity.WARNING, "text-past-margin", "text on ",
                    f" runs {'off the page' if cut else 'into the margin'}, at {''.join(sign.text for sign in out[:20])}", "break or shorten it")


def _coarse(page, number: int) -> Iterator[Fault]:
    from pypdfium2 import raw

    for picture in page.get_objects(filter=[raw.FPDF_PAGEOBJ_IMAGE], max_depth=5):
        said = picture.get_metadata()
        dots = min(said.horizontal_dpi, said.vertical_dpi)
        if 0 < dots < LEAST_DPI:
            yield Fault(number, Severity.WARNING, "picture-too-coarse", f"a picture of {said.width} x {said.height} pixels on ", f" is printed at {dots:.0f} dots an inch; 300 are needed")


def _empty(page, number: int, sheet: Sheet) -> Iterator[Fault]:
    """A page whose type area has a little at its head and nothing more; one with nothing at all is left blank on purpose."""
    scale = 0.25
    picture = page.render(scale=scale, grayscale=True).to_pil().convert("L")
    beyond = (picture.height - (sheet.top + sheet.depth + sheet.bottom) * MM * scale) / 2
    area = (0, round(beyond), picture.width, round(picture.height - beyond - sheet.bottom * MM * scale))
    inked = picture.crop(area).point(lambda light: 255 if light < 250 else 0).getbbox()
    if inked and inked[3] - inked[1] < NEARLY_EMPTY * sheet.depth * MM * scale:
        yield Fault(number, Severity.NOTE, NEARLY_EMPTY_PAGE, "", "")


def _first(source: str, text: str, mark: Mark) -> Mark:
    """Where a character stands first in the file; the given place where it does not stand there as it is."""
    for number, line in enumerate(source.splitlines(), 1):
        if text in line:
            return Mark(mark.file, number, line.index(text) + 1)
    return mark
