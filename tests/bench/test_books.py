"""Invented books for measurements are books like others: without a finding, each pattern with 14 steps and about 770 beads."""

import pytest

from booklet.craft.piece import Piece
from booklet.lint.run import lint
from booklet.source.workspace import load
from tests.bench.books import BEADS, ROWS, edited, pattern, write_book


@pytest.fixture(scope="module")
def book(tmp_path_factory):
    folder = tmp_path_factory.mktemp("book")
    return load(folder) if write_book(folder, 3) else None


def test_no_rule_finds_anything(book):
    assert [finding.one_line() for finding in (*book.findings, *lint(book))] == []


def test_patterns_are_of_the_size_that_measurements_name(book):
    pieces = [one.piece for one in book.patterns.values()]
    assert all(isinstance(piece, Piece) and len(piece.rows) == ROWS and piece.strands for piece in pieces)
    assert [one.counted["beads"] in BEADS for one in book.patterns.values()] == [True] * 3


def test_one_seed_gives_one_book_and_another_seed_another():
    assert pattern(7) == pattern(7)
    assert len({pattern(7, seed)[1] for seed in range(5)}) == 5
    assert len({pattern(number)[0] for number in (*range(50), *range(1190, 1240))}) == 100


def test_an_edit_changes_the_notes_and_nothing_else():
    text = pattern(0)[1]
    changed = edited(text, 4).splitlines()
    assert [line for line in changed if line not in text.splitlines()] == ["  Proof reading 4: nothing was found."]
    assert edited(text, 4) != edited(text, 5)
