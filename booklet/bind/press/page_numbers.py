"""The numbers of all pages: a few of each page type are laid out, and the others written from them.

Figures of one width stand in the same places whatever the number is. So for each type of page the typesetter lays out samples: ten
figures of each kind, all pairs of figures, and one number of each length. Where these show that numbers differ in nothing but their
figures, the others have them exchanged; where not (figures of several widths, kerning, roman numerals), every number is laid out.
"""

from __future__ import annotations

import re
import zlib
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from itertools import zip_longest
from typing import NamedTuple

from .capture import LEVEL
from .folios import are_decimal
from .fragment import Face, Fragment, unpacked
from .orders import FoliosOrder, NumberedPage, Setting
from .workshop import Workshop

SHEET = 24    # page numbers that are laid out at a time
FEW = 30      # pages of a type whose numbers are all laid out, because samples would cost as much
FIGURES = "0123456789"
RUN = 10      # figures of a sample
RUNS = [*(figure * RUN for figure in FIGURES[1:]), "1" + "0" * (RUN - 1)]
# Every figure beside every other: the words of one and two rising figures in order, which is a de Bruijn sequence.
PAIRS = "1" + "".join(sorted([*FIGURES, *(one + other for one in FIGURES for other in FIGURES if one < other)])) + "0"
_CODES = re.compile(rb"<((?:[0-9a-f]{4})+)>")

PageType = tuple[str, str, bool]   # side, name, blank


class Numbers(NamedTuple):
    """What draws the number of each page, compressed and in the order of pages, and the fonts that it takes."""

    streams: Iterator[bytes]
    faces: list[Mapping[str, Face]]


class Copied(NamedTuple):
    """How to write the number of any page of a type: the code of each figure, how many codes stand before them, and a number of each length as it was laid out."""

    codes: Mapping[str, bytes]
    before: int
    lengths: Mapping[int, bytes]

    def number(self, number: int) -> bytes:
        said = str(number)
        laid_out = self.lengths[len(said)]
        if not laid_out:
            return b""
        texts, codes = _apart(laid_out)
        codes[self.before:self.before + len(said)] = [self.codes[figure] for figure in said]
        return b"".join(part for pair in zip(texts, [*codes, b""]) for part in pair)


async def page_numbers(setting: Setting, types: Sequence[PageType], workshop: Workshop) -> Numbers:
    """The numbers of pages of these types, from 1."""
    pages, numbers = list(enumerate(types, 1)), defaultdict(list)
    for number, kind in pages[1:]:   # the first may have a rule of its own
        numbers[kind].append(number)
    total, faces = len(types) if "counter(pages" in setting.style else 0, []
    copied: dict[PageType, Copied | None] = {kind: None for kind, own in numbers.items() if len(own) > FEW and are_decimal(setting.style)}
    samples = [(number, kind) for kind in copied for number in _samples(numbers[kind])]
    laid_out = await _laid_out(setting, total, [*samples, *(page for page in pages if page[0] == 1 or page[1] not in copied)], workshop, faces)
    for kind in copied:
        copied[kind] = learned({str(number): laid_out[number, kind] for number in _samples(numbers[kind])})
    unlike = [(number, kind) for kind, how in copied.items() if how is None for number in numbers[kind]]
    laid_out |= await _laid_out(setting, total, unlike, workshop, faces)

    def stream(number: int, kind: PageType) -> bytes:
        drawn = laid_out[number, kind] if (number, kind) in laid_out else copied[kind].number(number)
        return zlib.compress(drawn, LEVEL) if drawn else b""

    return Numbers((stream(*page) for page in pages), faces)


def _samples(numbers: Sequence[int]) -> list[int]:
    """What is laid out to learn how such numbers are written: runs, pairs, and a number of each length."""
    return [*map(int, RUNS), int(PAIRS), *{len(str(number)): number for number in numbers}.values()]


def learned(laid_out: Mapping[str, bytes]) -> Copied | None:
    """How numbers are written, from the samples; None where they differ in more than their figures."""
    lengths = {len(number): content for number, content in laid_out.items()}
    if not any(laid_out.values()):
        return Copied({}, 0, lengths)
    apart = {number: _apart(content) for number, content in laid_out.items()}
    texts, first = apart[RUNS[0]]
    before = next((at for at, codes in enumerate(zip(*(apart[number][1] for number in RUNS))) if len(set(codes)) > 1), len(first))
    if len(first) < before + RUN or any(apart[number][0] != texts for number in RUNS):   # no number, or another place or gap for another figure
        return None
    figures = {number[-1]: apart[number][1][before + RUN - 1] for number in RUNS}
    for number, (between, codes) in apart.items():
        gaps = [texts[before + 1], *texts[before + 2:before + 3] * len(number)][:len(number) - 1]   # spaced figures have another gap behind the first
        if codes != [*first[:before], *(figures[figure] for figure in number), *first[before + RUN:]] or between[before + 1:before + len(number)] != gaps:
            return None
    return Copied(figures, before, lengths)


def _apart(content: bytes) -> tuple[list[bytes], list[bytes]]:
    """What is painted, taken apart into the codes of glyphs and what stands before, between and behind them."""
    places = [at for run in _CODES.finditer(content) for at in range(run.start(1), run.end(1), 4)]
    texts = [content[start:end] for start, end in zip([0, *(at + 4 for at in places)], [*places, len(content)])]
    return texts, [content[at:at + 4] for at in places]


async def _laid_out(setting: Setting, total: int, pages: Sequence[tuple[int, PageType]], workshop: Workshop, faces: list) -> dict[tuple[int, PageType], bytes]:
    """What draws these numbers on pages of these types, each set by the typesetter."""
    made = sorted({NumberedPage(number, *kind) for number, kind in pages})
    # Pages lie left and right by turns; what one side lacks is filled with a page 0.
    sides = [[page for page in made if page.side == side] for side in ("left", "right")]
    turns = [(left or right._replace(number=0, side="left"), right or left._replace(number=0, side="right")) for left, right in zip_longest(*sides)]
    rows = [page for turn in turns for page in turn]
    orders = [FoliosOrder(setting, total, tuple(rows[at:at + SHEET])) for at in range(0, len(rows), SHEET)]
    found: dict[tuple[int, PageType], bytes] = {}
    for order, content in zip(orders, await workshop.results(orders)):
        sheet = unpacked(content)
        faces.append(sheet.faces)
        found |= {(page.number, page[1:]): _content(sheet, painted) for page, painted in zip(order.pages, sheet.pages)}
    return found


def _content(sheet: Fragment, page: Mapping) -> bytes:
    """What draws the number of a page."""
    match = re.search(rb"/Contents \xffo(\d+);", sheet.objects[page["object"]])
    content = sheet.streams[int(match[1])]
    return zlib.decompress(content) if content else b""
