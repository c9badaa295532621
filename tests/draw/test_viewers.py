"""The same picture in different viewers, and the same bytes in every run."""

import io
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import numpy
import pypdfium2
import pytest
from PIL import Image
from scipy.ndimage import maximum_filter, minimum_filter
from tests.draw.builders import diamond, triangle, v_fringe

from booklet.craft.piece import Hanger
from booklet.draw.chart import chart_svg
from booklet.draw.finished import finished_svg
from booklet.draw.fringe import fringe_svg
from booklet.draw.legend import swatch_svg
from booklet.draw.png import png_bytes, write_png

PIECE = triangle(9, strands=v_fringe(9), hanger=Hanger("guard"))
PICTURES = {"chart": chart_svg(PIECE, bead=4), "grey": chart_svg(diamond(5, 2), bead=4, grey=True),
            "fringe": fringe_svg(PIECE, bead=4), "finished": finished_svg(PIECE, scale=2.5),
            "swatch": swatch_svg(PIECE.legend["B"], width=20, lettered=True)}
DOTS = 384    # an inch, four to a CSS pixel
BROWSER = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
SHEET = "<meta charset=utf-8><style>@page{size:%smm %smm;margin:0}body{margin:0}svg{display:block}</style>"


def ours(svg):
    return Image.open(io.BytesIO(png_bytes(svg, dpi=DOTS))).convert("RGB")


def first_page(pdf):
    document = pypdfium2.PdfDocument(pdf)
    try:
        return document[0].render(scale=DOTS / 72).to_pil().convert("RGB")
    finally:
        document.close()


def differing(one, other):
    """The share of pixels whose colour is clearly outside what the other picture shows at that place and right next to it.

    Edges are softened differently by every renderer, so a pixel may have any shade between those of its neighbours.
    """
    width, height = min(one.width, other.width), min(one.height, other.height)
    a, b = (numpy.asarray(image.crop((0, 0, width, height))).astype(int) for image in (one, other))
    astray = numpy.zeros((height, width), bool)
    for shown, against in ((a, b), (b, a)):   # both ways: what is missing from either picture counts
        low, high = minimum_filter(against, size=(3, 3, 1)), maximum_filter(against, size=(3, 3, 1))
        astray |= ((shown < low - 60) | (shown > high + 60)).any(axis=2)
    return float(astray.mean())


def test_the_comparison_sees_a_missing_letter():
    with_letter, without = (ours(swatch_svg(PIECE.legend["B"], width=20, lettered=lettered)) for lettered in (True, False))
    assert differing(with_letter, without) > 0.02


@pytest.mark.parametrize("name", PICTURES)
def test_print_engine_and_renderer_agree(name):
    from weasyprint import HTML

    svg = PICTURES[name]
    width, height = re.search(r'width="([\d.]+)mm"', svg)[1], re.search(r'height="([\d.]+)mm"', svg)[1]
    page = first_page(HTML(string=SHEET % (width, height) + svg).write_pdf())
    assert abs(page.width - ours(svg).width) <= 2
    assert differing(page, ours(svg)) < 0.001


@pytest.mark.parametrize("name", ["chart", "finished"])
@pytest.mark.skipif(BROWSER is None, reason="no browser on this machine; the build does not need one")
def test_browser_and_renderer_agree(name, tmp_path):
    svg = PICTURES[name]
    width, height = re.search(r'width="([\d.]+)mm"', svg)[1], re.search(r'height="([\d.]+)mm"', svg)[1]
    (tmp_path / "page.html").write_text(SHEET % (width, height) + svg, encoding="utf-8")
    subprocess.run([BROWSER, "--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={tmp_path / 'profile'}",
                    "--force-device-scale-factor=4", "--window-size=700,700", f"--screenshot={tmp_path / 'shot.png'}",
                    (tmp_path / "page.html").as_uri()], check=True, capture_output=True, timeout=120)
    assert differing(Image.open(tmp_path / "shot.png").convert("RGB"), ours(svg)) < 0.001


def test_no_text_is_left_in_the_page():
    from weasyprint import HTML

    document = pypdfium2.PdfDocument(HTML(string=f"<p>Before</p>{PICTURES['chart']}<p>After</p>").write_pdf())
    try:
        page = document[0].get_textpage()
        assert page.get_text_range().split() == ["Before", "After"]
        page.close()
    finally:
        document.close()


def test_pictures_use_only_what_every_viewer_draws_alike():
    for svg in PICTURES.values():
        assert set(re.findall(r"<(\w+)", svg)) == {"svg", "title", "path"}
        assert "opacity" not in svg and "url(" not in svg and "<style" not in svg


def test_every_run_writes_the_same_bytes():
    code = ("from tests.draw.test_viewers import PICTURES; import hashlib;"
            "print(hashlib.sha256(''.join(PICTURES.values()).encode()).hexdigest())")
    root = Path(__file__).parents[2]
    runs = {subprocess.run([sys.executable, "-c", code], cwd=root, check=True, capture_output=True, text=True,
                           env={**os.environ, "PYTHONHASHSEED": seed}).stdout for seed in ("1", "2")}
    assert len(runs) == 1


def test_png_has_the_printed_size(tmp_path):
    svg = PICTURES["swatch"]
    write_png(svg, tmp_path / "swatch.png", dpi=254)
    image = Image.open(tmp_path / "swatch.png")
    assert image.size[0] == 200
    assert image.convert("RGBA").getpixel((0, 0)) == (255, 255, 255, 255)
    clear = Image.open(io.BytesIO(png_bytes(svg, background=None)))
    assert clear.convert("RGBA").getpixel((0, 0))[3] == 0
