"""Photos: alternative text, files that are no pictures, and pixels against the printed size."""

import re
from pathlib import Path

import pytest

from booklet.bind.edition import Edition
from booklet.bind.geometry import sheet
from booklet.lint.photos import HIGHEST, printed_width
from booklet.source.book import Page
from tests.lint.books import BOOK, completed, found, write_book, write_photo

FILE = "patterns/morning-cloud.yaml"
PHOTO = "photo: {file: photos/cloud.jpg, alt: Two white earrings on slate.}\n"


@pytest.mark.parametrize("alt", ["IMG_2041.jpg", "DSC-0031 edited", "photo", "Morning cloud."])
def test_error_useless_alt_text(tmp_path, alt):
    write_photo(tmp_path, "photos/cloud.jpg", 2000, 1500)
    assert found(tmp_path, f"photo: {{file: photos/cloud.jpg, alt: {alt}}}\n") == [
        f"{FILE}:13:38: warning: the alternative text '{alt}' does not say what the photo shows "
        "(say what is seen: two white earrings with a blue fringe, on slate) [useless-alt-text]"]


def test_error_missing_alt_text(tmp_path):
    write_photo(tmp_path, "photos/cloud.jpg", 2000, 1500)
    (line,) = found(tmp_path, "photo: {file: photos/cloud.jpg}\n")
    assert line.startswith(f"{FILE}:13:") and "error: photo.alt is missing" in line


@pytest.mark.parametrize("content", [b"any", b"", b"\xff\xd8\xff\xe0 cut off", b"GIF89a\x01\x00\x01\x00\x00\x00\x00;"])
def test_error_unreadable_photo(tmp_path, content):
    write_photo(tmp_path, "photos/cloud.jpg", 10, 10)
    (tmp_path / "patterns/photos/cloud.jpg").write_bytes(content)
    assert found(tmp_path, PHOTO) == [
        f"{FILE}:13:15: error: patterns/photos/cloud.jpg is not a picture that can be read (save it as JPEG, PNG or WebP) [unreadable-photo]"]


def test_error_photo_too_coarse(tmp_path):
    write_photo(tmp_path, "photos/cloud.jpg", 600, 400)
    assert found(tmp_path, PHOTO) == [
        f"{FILE}:13:15: warning: the photo has 600 x 400 pixels and is printed 93 mm wide, at 164 dots an inch; 300 are needed "
        "(take one that is 1098 pixels wide or more) [photo-too-coarse]"]


def test_a_photo_of_the_hint_is_fine_enough(tmp_path):
    write_photo(tmp_path, "photos/cloud.jpg", 1098, 732)
    assert found(tmp_path, PHOTO) == []


def test_a_photo_taken_upright_is_measured_as_it_is_shown(tmp_path):
    from PIL import Image

    turned = Image.Exif()
    turned[0x0112] = 6
    write_photo(tmp_path, "photos/cloud.jpg", 600, 400, exif=turned)
    (line,) = found(tmp_path, PHOTO)
    assert "the photo has 400 x 600 pixels and is printed 41 mm wide, at 246 dots an inch" in line


def test_a_larger_page_needs_more_pixels(tmp_path):
    write_photo(tmp_path, "photos/cloud.jpg", 1400, 400)
    assert found(tmp_path, PHOTO) == []
    (line,) = found(tmp_path, PHOTO, BOOK + "page: {size: A4}\n")
    assert "printed 168 mm wide, at 211 dots an inch" in line


@pytest.mark.parametrize("page", [Page(), Page(210, 297), Page(152, 229, 3, 8)])
def test_photos_are_as_large_as_the_page_lets_them(page):
    style = (Path(__file__).parents[2] / "templates" / "print.css").read_text("utf-8")
    height = re.search(r"\.photo img \{ max-width: 100%; max-height: ([0-9.]+)mm; \}", style)
    assert float(height[1]) == HIGHEST
    assert printed_width((90_000, 10_000), page) == pytest.approx(sheet(Edition(width=page.width, height=page.height, gutter=page.gutter)).measure)


def test_a_link_out_of_the_workspace_is_not_opened(tmp_path):
    outside = tmp_path / "outside.jpg"
    outside.write_bytes(b"secret")
    root = write_book(tmp_path / "book", {"morning-cloud.yaml": completed(PHOTO)})
    (root / "patterns" / "photos").mkdir()
    (root / "patterns" / "photos" / "cloud.jpg").symlink_to(outside)
    lines = found(root, PHOTO)
    assert lines and all("[outside-workspace]" in line for line in lines)
