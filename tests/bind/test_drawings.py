"""Drawings are painted from ready operators; the pages must look as if the typesetter had read the SVG itself."""

import asyncio

import pypdfium2
import pytest

from booklet.bind.drawings import Drawing, beside, read, set_aside
from booklet.bind.edition import edition
from booklet.bind.pdf import make_pdf
from booklet.bind.press import typeset
from booklet.bind.single import single_html
from booklet.draw.finished import finished_svg

LEAST_SEEN = 3   # of 255: rounding to thousandths moves edges by less than a hundredth of a dot


def rasters(content):
    return [page.render(scale=1).to_numpy().astype(int) for page in pypdfium2.PdfDocument(content)]


def test_pages_with_drawings_look_like_pages_with_svg(tiny, monkeypatch):
    html = asyncio.run(single_html(tiny.workspace, "morning-cloud", edition(tiny.workspace.book)))
    drawn = rasters(tiny.single.read_bytes())
    monkeypatch.setattr(typeset, "set_aside", lambda text, files: (text, {}))
    plain = rasters(make_pdf(html, tiny.root, {}, {}))
    assert len(drawn) == len(plain)
    assert max(abs(one - other).max() for one, other in zip(drawn, plain)) <= LEAST_SEEN


def test_every_picture_of_a_single_is_set_aside(tiny):
    html, drawings = set_aside(asyncio.run(single_html(tiny.workspace, "morning-cloud", edition(tiny.workspace.book))))
    assert len(drawings) > 4
    assert "<path" not in html
    assert html.count("<title>") == 1 + html.count("data-drawing=")


def test_a_drawing_beside_a_page_is_painted_as_one_in_it(tiny):
    pieces = [pattern.piece for pattern in tiny.workspace.patterns.values()]
    drawn = [finished_svg(piece, scale=0.4) for piece in pieces]
    small, names, contents = zip(*map(beside, drawn))
    assert len(set(names)) == len(pieces) > 1 and not any("<path" in one for one in small)

    def page(pictures):
        return f'<html lang="en"><head><title>x</title></head><body><p>{"".join(pictures)}</p></body></html>'

    one, other = (make_pdf(page(pictures), tiny.root, dict(zip(names, contents)), {}) for pictures in (drawn, small))
    assert one == other


def svg(body, attributes='width="25.4mm" height="25.4mm" viewBox="0 0 10 10"'):
    return read(attributes, f"<title>x</title>{body}")


def test_operators_of_a_small_picture():
    assert svg('<path d="M1 2h3v-1.5l1 1z" fill="#ff0000" stroke="none" />') == Drawing(
        25.4 * 96 / 25.4, 25.4 * 96 / 25.4, (0, 0, 10, 10), b"4 M\n1 0 0 rg\n1 2 m\n4 2 l\n4 0.5 l\n5 1.5 l\nh\nf")
    assert svg('<path d="M1 2h3" fill="none" stroke="#000" stroke-width="0.5" stroke-dasharray="1 0.2"/>').operators == (
        b"4 M\n0 0 0 RG 0.5 w [1 0.2] 0 d 0 J 0 j\n1 2 m\n4 2 l\nS")


def test_a_gap_below_zero_is_a_whole_line_and_no_width_is_no_line():
    assert b"[] 0 d" in svg('<path d="M1 2h3" fill="none" stroke="#000" stroke-dasharray="1 -0.2"/>').operators
    assert svg('<path d="M1 2h3" fill="#000" stroke="#000" stroke-width="0"/>').operators.endswith(b"l\nf")


@pytest.mark.parametrize("body", ["<text>x</text>", '<path d="M1 2A1 1 0 0 1 3 4"/>', '<path d="M1 2 3 4"/>', '<path d="M1 2" opacity="0.5"/>',
                                  '<path d="M1 2" fill="red"/>', '<path d="M1 2" fill="#12345"/>'])
def test_what_goes_beyond_is_left_to_the_typesetter(body):
    assert svg(body) is None
    assert svg("", 'width="25.4mm" height="25.4mm"') is None
    text = f"<svg><title>x</title>{body}</svg>"
    assert set_aside(text) == (text, {})
