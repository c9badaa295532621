"""Neutral colours become greys where they set a colour, and nowhere else. Operators: ISO 32000-1, table 74."""

import pytest

from booklet.bind.press.inks import in_black


@pytest.mark.parametrize(("painted", "printed"), [
    (b"0 0 0 rg", b"0 g"), (b"0.2 0.2 0.2 RG 0.5 w", b"0.2 G 0.5 w"), (b"q\n0.501 0.502 0.5 rg\n0 0 0 RG\nQ", b"q\n0.502 g\n0 G\nQ"),
    (b"0.3 0.2 0.1 rg\n", b"0.3 0.2 0.1 rg\n"), (b"0.5 0.5 0.51 RG", b"0.5 0.5 0.51 RG"),
    (b"(0 0 0 rg) Tj", b"(0 0 0 rg) Tj"), (b"1 1 1 rgb", b"1 1 1 rgb"), (b"1 1 1 rg 0 0 0 rg", b"1 g 0 0 0 rg"), (b"", b"")])
def test_a_neutral_colour_at_the_beginning_of_a_line_is_a_grey(painted, printed):
    assert in_black(painted) == printed
