"""What `booklet build` says of the pages that it has made."""

from booklet.commands.build import faults_on
from booklet.findings import Finding, Mark, Severity
from booklet.source.workspace import load
from tests.lint.books import PATTERN, write_book

HEART = Finding(Mark("patterns/book.yaml"), Severity.WARNING, "character-not-in-fonts", "a heart is in none of the fonts of the page")
PARTED = Finding(Mark("patterns/book.yaml"), Severity.NOTE, "chart-too-large-for-page", "the body chart goes on over several pages")


def test_faults_of_pages_are_told_and_notes_are_not(tmp_path):
    write_book(tmp_path, {"a.yaml": PATTERN})
    assert faults_on([PARTED, HEART, HEART], load(tmp_path)) == [HEART]


def test_a_book_weighs_them(tmp_path):
    write_book(tmp_path, {"a.yaml": PATTERN, "book.yaml": "title: B\nlint: {severity: {character-not-in-fonts: off, chart-too-large-for-page: error}}\n"})
    assert faults_on([PARTED, HEART], load(tmp_path)) == [PARTED._replace(severity=Severity.ERROR)]
