"""Numbers that are written from samples are those that the typesetter lays out."""

import asyncio
import zlib

import pytest

from booklet.bind.press import page_numbers as numbers
from booklet.bind.press.orders import Setting
from booklet.bind.press.workshop import HereAndNow, Workshop

PAGE = "@page { size: 60mm 40mm; margin: 8mm; @bottom-left { width: 30mm; font: 8pt 'Booklet Sans'; content: %s } %s } @page bare { @bottom-left { content: none } }"
TYPES = [("right" if at % 2 == 0 else "left", "bare" if at == 2 else "", at == 3) for at in range(50)]


class Counting(Workshop):
    """A workshop that counts the pages that are laid out."""

    pages = 0

    async def results(self, orders):
        orders = list(orders)
        self.pages += sum(len(order.pages) for order in orders)
        return await super().results(orders)


def made(style, few=10):
    """What draws each number, the glyphs that it takes, and how many pages were laid out."""
    shop = Counting(start=HereAndNow)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(numbers, "FEW", few)
        found = asyncio.run(numbers.page_numbers(Setting(style), TYPES, shop))
    glyphs = {glyph: text for faces in found.faces for face in faces.values() for glyph, text in face.glyphs.items()}
    return [stream and zlib.decompress(stream) for stream in found.streams], glyphs, shop.pages


@pytest.mark.parametrize("content, more", [
    ("counter(page)", ""), ("counter(page)", "@bottom-left { text-align: right; letter-spacing: .3mm }"), ('"2026 - page " counter(page) " of " counter(pages)', "overflow-wrap: anywhere"),
    ("counter(page)", "} @page :first { @bottom-left { content: none }")])
def test_numbers_are_written_as_they_are_laid_out(content, more):
    style = PAGE % (content, more)
    (ours, glyphs, few), (theirs, all_glyphs, every) = made(style), made(style, few=len(TYPES))
    assert ours == theirs and len(set(ours)) >= len(TYPES) - 1
    assert ours[2] == b"" and (ours[0] == b"") == (":first" in more)
    assert glyphs == all_glyphs and set("0123456789") <= set(glyphs.values())
    assert few < 36 < len(TYPES) <= every


@pytest.mark.parametrize("content, more", [
    ("counter(page, upper-roman)", ""), ("counter(page)", "@bottom-left { font-feature-settings: 'pnum' }"),
    ('counter(page) "." counter(page)', ""), ("counter(pages)", "")])
def test_other_numbers_are_all_laid_out(content, more):
    style = PAGE % (content, more)
    (ours, _, few), (theirs, _, every) = made(style), made(style, few=len(TYPES))
    assert ours == theirs and few >= every


def samples(change=lambda number, content: content):
    """Samples as painted: each figure with the code of its character."""
    drawn = {number: b"1 0 0 -1 5 5 Tm\n[" + b"0".join(b"<%04x>" % ord(figure) for figure in number) + b"] TJ" for number in (*numbers.RUNS, numbers.PAIRS, "7", "23")}
    return {number: change(number, content) for number, content in drawn.items()}


def test_numbers_have_their_figures_exchanged():
    how = numbers.learned(samples())
    assert how.number(42) == b"1 0 0 -1 5 5 Tm\n[<0034>0<0032>] TJ" and how.number(5) == b"1 0 0 -1 5 5 Tm\n[<0035>] TJ"
    assert numbers.learned(dict.fromkeys(samples(), b"")).number(12) == b""


@pytest.mark.parametrize("change", [
    lambda number, content: content.replace(b"5 5 Tm", b"5.2 5 Tm") if number == numbers.RUNS[3] else content,   # 4 is wider
    lambda number, content: content.replace(b"<0037>0<0034>", b"<0037>-20<0034>") if number == numbers.PAIRS else content,   # 7 and 4 move together
    lambda number, content: content.replace(b"<0031><0031>", b"<0131>").replace(b"<0031>0<0031>", b"<0131>"),   # 11 is one sign
    lambda number, content: content.replace(b"<0032>", b"<0132>") if number == "23" else content,   # another 2 at the head
    lambda number, content: b"[<0039>] TJ",   # no number at all
    lambda number, content: b"" if number == "7" else content])
def test_error_of_copying_is_seen_in_the_samples(change):
    assert numbers.learned(samples(change)) is None


def test_every_figure_stands_beside_every_other():
    assert {numbers.PAIRS[at:at + 2] for at in range(len(numbers.PAIRS) - 1)} == {one + other for one in numbers.FIGURES for other in numbers.FIGURES}
