"""Results replace earlier ones whole or not at all."""

import pytest

from booklet.bind.files import write_file, write_folder
from booklet.errors import UnwritableOutput


def everything(folder):
    return sorted(path.relative_to(folder).as_posix() for path in folder.rglob("*"))


def test_a_file_is_replaced_and_nothing_is_left_beside_it(tmp_path):
    for content in (b"one", b"two"):
        write_file(tmp_path / "build" / "a.pdf", content)
    assert (tmp_path / "build" / "a.pdf").read_bytes() == b"two"
    assert everything(tmp_path / "build") == ["a.pdf"]


def test_a_folder_is_replaced_whole(tmp_path):
    write_folder(tmp_path / "html", {"old.html": b"old", "a.html": b"1"})
    write_folder(tmp_path / "html", {"a.html": b"2", "fonts/x.otf": b"3"})
    assert everything(tmp_path) == ["html", "html/a.html", "html/fonts", "html/fonts/x.otf"]
    assert (tmp_path / "html" / "a.html").read_bytes() == b"2"


def test_error_a_folder_that_cannot_be_made_leaves_the_earlier_one(tmp_path):
    write_folder(tmp_path / "html", {"a.html": b"1"})
    with pytest.raises(UnwritableOutput, match="html cannot be written"):
        write_folder(tmp_path / "html", {"a.html": b"2", "a.html/b": b"3"})
    assert (tmp_path / "html" / "a.html").read_bytes() == b"1"
    assert everything(tmp_path) == ["html", "html/a.html"]


def test_error_a_file_in_the_place_of_a_folder(tmp_path):
    (tmp_path / "build").write_bytes(b"in the way")
    with pytest.raises(UnwritableOutput, match="a.pdf cannot be written"):
        write_file(tmp_path / "build" / "a.pdf", b"x")
