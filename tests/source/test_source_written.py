"""The place of every character of a text in its file, whatever way the text is written."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.source.texts import written


def place_of(yaml, sign, *path):
    text = written(yaml, *path)
    mark = text.mark(text.text.index(sign))
    return mark.line, mark.column


@pytest.mark.parametrize("yaml", [
    "a: 12W 2Q 1W\n",
    "a:   12W 2Q 1W   # remark\n",
    "a: '12W 2Q 1W'\n",
    'a: "12W 2Q 1W"\n',
    'a: "12W\\u00202Q 1W"\n',
    "a: '12''W 2Q'\n",
    "a: &x 12W 2Q\n",
    "a: |\n  12W\n  2Q 1W\n",
    "a: |-\n      12W\n      2Q\n\n",
    "a: |2\n    12W\n   2Q\n",
    "a: | # remark\n\n\n  12W 2Q\n",
    "a: >\n  12W\n  2Q 1W\n",
    "a: >-\n   12W\n\n     2Q\n   1W\n",
    "a:\n  12W\n  2Q\n",
    "a: '12W\n\n   2Q'\n",
    'a: "12W \\\n   2Q"\n',
    'a: "12\\x57 \\t2Q"\n',
    "a: |\r\n  12W\r\n  2Q\r\n",
    "a: ünï 2Q\n",
])
def test_place_of_a_character(yaml):
    lines = yaml.replace("\r\n", "\n").split("\n")
    row = next(number for number, line in enumerate(lines, 1) if "Q" in line)
    assert place_of(yaml, "Q", "a") == (row, lines[row - 1].index("Q") + 1)


def test_place_in_a_list_and_in_braces():
    assert place_of("a:\n  - {b: [x, 12W 2Q]}\n", "Q", "a", 0, "b", 1) == (2, 18)


def test_place_of_the_end():
    text = written("a: 12W\n", "a")
    assert (text.mark(3).column, text.mark(99).column, text.whole.width) == (7, 7, 3)


@pytest.mark.parametrize(("yaml", "kept"), [
    ("a: |\n  W W\n  B B\n", True), ("a: >\n  W W\n  B B\n", False), ("a: >\n  W W\n   B B\n  W W\n", True), ("a: W\n", True),
    ("a: W\n  B\n", False), ('a: "W\\nB"\n', True), ("a: 'W\n\n  B'\n", True)])
def test_whether_lines_are_kept(yaml, kept):
    assert written(yaml, "a").keeps_lines is kept


SIGNS = st.text("WB12()> ", min_size=1, max_size=12).filter(lambda text: text.strip())


@given(st.lists(SIGNS.map(str.strip), min_size=1, max_size=5), st.integers(1, 8), st.sampled_from(["|", "|-", "|+"]))
def test_block_texts_are_found_again(lines, indent, header):
    yaml = f"x: y\na: {header}\n" + "".join(" " * indent + line + "\n" for line in lines) + "z: 1\n"
    text, source = written(yaml, "a"), yaml.split("\n")
    for offset, sign in enumerate(text.text):
        if sign != "\n":
            mark = text.mark(offset)
            assert source[mark.line - 1][mark.column - 1] == sign


@given(st.lists(SIGNS.map(str.strip).filter(lambda text: text[0] in "WB12"), min_size=1, max_size=5), st.integers(1, 8),
       st.sampled_from(["", "'", '"', ">"]))
def test_folded_texts_are_found_again(lines, indent, style):
    start = ">\n" + " " * indent if style == ">" else style
    end = "" if style == ">" else style
    yaml = "a: " + start + ("\n" + " " * indent).join(lines) + end + "\nz: 1\n"
    text, source = written(yaml, "a"), yaml.split("\n")
    assert text.text.split() == " ".join(lines).split()
    for offset, sign in enumerate(text.text):
        if not sign.isspace():
            mark = text.mark(offset)
            assert source[mark.line - 1][mark.column - 1] == sign
