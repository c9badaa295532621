"""The fonts have the glyphs, figures and licence that pages count on, and WeasyPrint embeds just them."""

import asyncio
import io
from itertools import chain
from pathlib import Path

import pytest
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont
from pypdf import PdfReader
from weasyprint import HTML

from booklet.bind import fonts
from booklet.bind.fonts import SANS, SERIF
from booklet.bind.web import faces as web
from booklet.bind.web.orders import cut_faces
from booklet.errors import UnreadableInput

EVERYWHERE = "ABCXYZabcxyz0123456789×½°–—′″‘’“”…·•éüçñøœßÅ€£%+−=()/"
ARROWS = "→←↑↓☐☑▲△▼✓"


def faces(family):
    return [face for face in fonts.faces() if face.family == family]


@pytest.fixture(scope="module")
def opened():
    """The font of every face, read."""
    with_fonts = {face: TTFont(face.path) for face in fonts.faces()}
    yield with_fonts
    for font in with_fonts.values():
        font.close()


def lacks(font, text):
    return "".join(sign for sign in text if ord(sign) not in font.getBestCmap())


@pytest.mark.parametrize("family", [SERIF, SANS])
def test_each_family_has_three_weights_upright_and_italic(family):
    assert [(face.weight, face.italic) for face in faces(family)] == [
        (400, False), (400, True), (600, False), (600, True), (700, False), (700, True)]


def test_each_file_is_the_face_that_it_is_taken_for(opened):
    """Weight and slant as the OpenType specification has them: OS/2.usWeightClass, head.macStyle bit 1."""
    for face, font in opened.items():
        assert font["OS/2"].usWeightClass == face.weight
        assert bool(font["head"].macStyle & 2) == face.italic


def test_every_face_has_the_signs_of_every_page(opened):
    assert {face.path.name: lacks(font, EVERYWHERE) for face, font in opened.items()} == {
        face.path.name: "" for face in opened}


def test_only_the_italics_of_the_serif_lack_arrows_and_boxes(opened):
    for face, font in opened.items():
        assert lacks(font, ARROWS) == (ARROWS if face.family == SERIF and face.italic else "")


def test_no_face_has_these_signs(opened):
    for font in opened.values():
        assert lacks(font, "○●□✂") == "○●□✂"


def test_figures_are_tabular_as_they_stand(opened):
    """All ten figures of a face are equally wide (hmtx table), so columns of numbers line up."""
    for font in opened.values():
        assert len({font["hmtx"][font.getBestCmap()[ord(figure)]][0] for figure in "0123456789"}) == 1


def test_figures_are_lining_as_they_stand(opened):
    """No figure goes below the line or stays at the height of an x; old-style 3, 4, 5, 7, 9 would."""
    for font in opened.values():
        glyphs = font.getGlyphSet()
        for figure in "0123456789":
            pen = BoundsPen(glyphs)
            glyphs[font.getBestCmap()[ord(figure)]].draw(pen)
            _, low, _, high = pen.bounds
            assert low > -0.05 * font["OS/2"].sCapHeight
            assert high > 0.9 * font["OS/2"].sCapHeight


def test_the_serif_has_tabular_figures_as_a_feature(opened):
    for face, font in opened.items():
        features = {record.FeatureTag for record in font["GSUB"].table.FeatureList.FeatureRecord}
        assert ("tnum" in features) == (face.family == SERIF)


def test_the_licence_is_the_open_font_licence(opened):
    """SIL Open Font License 1.1, by its title line; embedding is unrestricted (OS/2.fsType 0)."""
    for path in fonts.licences().values():
        text = path.read_text(encoding="utf-8")
        assert "SIL OPEN FONT LICENSE Version 1.1 - 26 February 2007" in text
        assert "with Reserved Font Name" in text
    for font in opened.values():
        assert "SIL Open Font License" in font["name"].getDebugName(13)
        assert font["OS/2"].fsType == 0


def test_the_packages_themselves_give_our_licence_as_theirs():
    from importlib.metadata import metadata

    for name in ("font-source-serif-pro", "font-source-sans-pro"):
        assert metadata(name)["License"] == "SIL OFL 1.1"


def test_fonts_for_the_web_are_small_and_bear_only_our_name():
    """The licence reserves the name of the original for unchanged fonts (SIL Open Font License 1.1, clause 3)."""
    files = asyncio.run(cut_faces(["Ünder"]))
    assert len(files) == len(web.USED) and sum(map(len, files.values())) < 70_000
    for name, content in files.items():
        font = TTFont(io.BytesIO(content))
        entries = {record.nameID: str(record) for record in font["name"].names}
        assert {entries[number] for number in (1, 3, 4, 6)} == {name.removesuffix(".woff2")} and font["CFF "].cff.fontNames == [entries[6]]
        assert "SIL Open Font License" in entries[13] and "Adobe" in entries[0] and lacks(font, "Ünder0×½°–′") == ""
        font.close()


def test_the_style_sheet_for_the_web_names_every_font_file():
    named = [part.split('"')[0] for part in web.css_linked("type").split('url("')[1:]]
    assert sorted(named) == sorted(f"type/{name}" for name in asyncio.run(cut_faces(["Ünder"])))


def test_each_licence_has_a_name_of_its_own():
    """Both packages call it LICENSE.txt; side by side neither may replace the other."""
    assert sorted(fonts.licences()) == ["SourceSansPro-LICENSE.txt", "SourceSerifPro-LICENSE.txt"]


def test_the_pdf_embeds_each_face_and_nothing_of_the_system():
    lines = "".join(f"<p style='{face.css}'>3W, 2B</p>" for face in fonts.faces())
    pdf = HTML(string=f"<style>{fonts.css_for_pdf()}</style>{lines}").write_pdf()
    used = PdfReader(io.BytesIO(pdf)).pages[0]["/Resources"]["/Font"].values()
    within = list(chain.from_iterable(font.get_object()["/DescendantFonts"] for font in used))
    described = [font.get_object()["/FontDescriptor"] for font in within]
    names = [str(descriptor["/FontName"]).split("+")[1] for descriptor in described]
    assert len(names) == len(fonts.faces())
    assert all(name.startswith(("Booklet-Serif", "Booklet-Sans")) for name in names), names
    assert all("/FontFile3" in descriptor for descriptor in described)


def test_error_font_package_is_missing(monkeypatch):
    monkeypatch.setattr(fonts, "find_spec", lambda name: None)
    fonts.faces.cache_clear()
    with pytest.raises(UnreadableInput) as error:
        fonts.faces()
    assert (error.value.message, error.value.hint) == (
        "the font package font-source-serif-pro is not installed", "install booklet again with pip")


def test_error_font_file_is_missing(monkeypatch, tmp_path):
    monkeypatch.setattr(fonts, "_folder", lambda package: Path(tmp_path))
    fonts.faces.cache_clear()
    with pytest.raises(UnreadableInput, match="^the font file SourceSerifPro-Regular.otf is missing$"):
        fonts.faces()
