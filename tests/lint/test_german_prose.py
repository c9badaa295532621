"""Rules that read English words leave prose in other languages alone."""

import pytest
from tests.lint.books import BOOK, completed, write_book

from booklet.lint.run import lint
from booklet.source.workspace import load

PROSE = """\
title: Morgenwolke
summary: Zwölf Reihen, row 99, for beginners, auf Seite 12 und 300 beads in all.
notes: Mit der rechten Hand, 9 rows, row 40, 3Q, page 7, an arm span of thread.
"""


def found(root, language, book="", more=""):
    files = {"book.yaml": BOOK + f"language: {language}\n{book}", "morning-cloud.yaml": completed(PROSE) + more}
    return {finding.rule for finding in lint(load(write_book(root, files)))}


def test_german_prose_is_not_read_as_english(tmp_path):
    assert {"number-contradicts-pattern", "unknown-row-in-prose", "level-contradicted-in-prose", "page-named-in-prose"} <= found(tmp_path / "en", "en")
    assert found(tmp_path / "de", "de", "subtitle: Twelve patterns\n") <= {"missing-fact"}
    assert found(tmp_path / "own", "en", more="language: de\n") <= {"missing-fact"}


@pytest.mark.parametrize("field", ["notes: 'Es sind {{ base.stiches }}.'", "steps: {ladder: '{{ base.stiches }}'}"])
def test_error_unknown_placeholder_in_a_translation(tmp_path, field):
    assert "unknown-placeholder" in found(tmp_path, "en", more=f"translations:\n  de:\n    {field}\n")
