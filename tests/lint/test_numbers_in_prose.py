"""Numbers in prose: which sentences state a fact of the pattern, and which only sound like it."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from booklet.craft.steps import steps
from booklet.craft.thread import thread_use
from booklet.lint.claims import FEW, contradictions
from booklet.lint.facts import Facts
from booklet.lint.figures import VALUES, may_count, quantities
from booklet.lint.passages import Passage
from booklet.lint.subject import Subject
from booklet.source.pattern import Pattern
from booklet.source.workspace import load
from tests.craft.pieces import workable
from tests.lint.books import completed, write_book

ROWS = "".join(f"    {11 - up:>2} | {' ' * (10 - up)}{' '.join('B' if up > 5 else 'W' for _ in range(3 + up))}\n" for up in range(11))
STRANDS = "".join(f"    - {20 + min(i, 12 - i)}W 4B\n" for i in range(13))
PIECE = f"""\
makes: pair
beads:
  W: {{name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}}
  B: {{name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}}
  D: {{name: silver drop, colour: "#b8bcc4", finish: metallic, kind: drop 3.4}}
body:
  chart: |
{ROWS}fringe:
  end: 1D
  strands:
{STRANDS}hanger: {{kind: loop, beads: 7W}}
"""   # 13 stitches in the base row, 11 rows up to 3 stitches, 13 strands of 25 to 31 beads, 88 + 361 + 7 = 456 beads


@pytest.fixture(scope="module")
def facts(tmp_path_factory):
    root = write_book(tmp_path_factory.mktemp("numbers"), {"cloud.yaml": completed(PIECE)})
    workspace = load(root)
    assert not workspace.findings
    return Facts(Subject(workspace, workspace.patterns["cloud"]))


TRUE = [
    "The base row has 13 stitches, and the body has eleven rows.",
    "The body is a plain triangle on 13 stitches.",
    "All 13 strands hang free; thirteen strands in all.",
    "Row 6 has 8 stitches and row 7 has 7 stitches.",
    "The top row has three stitches.",
    "There are 456 beads in a piece and 912 beads in all.",
    "Each strand ends in 1 end bead.",
    "Strand 1 has 25 beads and strand 7 has 31 beads, or 30 beads without the end.",
    "The loop has 7 beads.",
    "From 13 stitches in the base row it narrows to 3 stitches in row 11.",
    "The 10 rows above the base row are brick stitch.",
    "A piece is 21 mm wide and weighs 2.8 g.",
    "Take a working length of 1.4 m of thread, 55 inches of thread.",
    "You need 107 storm blue beads for a piece.",
]
HARMLESS = [
    "Pass round two neighbouring stitches twice, or pass round twice.",
    "Anchor it in two neighbouring sets.",
    "The sides stand upright for a few rows; the first three rows grow, the next 4 rows shrink, and the last 2 rows are blue.",
    "One bead too many in a strand, and the stripe has a step in it.",
    "Two stitches are soon taken back.",
    "Every row is one stitch shorter than the row before.",
    "Check every 5 rows, and count ten stitches at a time.",
    "Work five rows, then rest. Two rows of blue follow, and the three rows that follow them are white.",
    "Pick up 3 beads, skip the last 2 beads and pass back up.",
    "Hang two strands, then two more strands; the middle three strands are the longest.",
    "Leave a tail of 15 cm and weave in 10 cm.",
    "Use a 4 mm thread guard and a 6 mm bugle.",
    "String about 450 beads before you stop, 12 beads at a time.",
    "Wait for 2 or 3 rows, or 10 to 12 strands.",
    "Take two strands of thread.",
    "Work on the 6 stitches nearest the edge, and the 4 stitches beside them.",
    "Set the first two beads side by side.",
    "It holds 12 beads of the first colour and 20 beads of the second.",
    "A pack of 5 g is enough. The ear wire weighs 1 g of silver.",
    "On day 13 strands of cloud came in.",
    "Cut a card 60 mm long to wind the thread on.",
    "Use needles of size 12 in the fringe.",
    "The six arms have two sides each.",
    "The edge goes in by half a stitch; after 6 rows turn the chart.",
    "Each row has one stitch less.",
    "Row 6 starts with 2 stitches, and two stitches share the last bridge.",
    "In row 4 skip one bridge; 3 stitches later the cloud begins.",
    "Divide the strands into 12 sets; each side has six strands. The left half has 5 rows.",
    "The cloud has 5 rows and is 5 mm wide; it has 6 stitches at its foot.",
    "In row 5 the 3 stitches over the bridge are white. In row 4, 3 stitches are blue.",
    "Row 4 has 3 stitches of blue, row 5 has 3 stitches in blue and row 6 has three white stitches.",
    "Row 4 has one stitch less than row 3, and row 3 gains 2 stitches.",
    "Each strand has two beads more than the one before. The longest strand has 2 beads at its end.",
    "The loop has two beads on each side. Strand 3 has 5 beads of blue.",
    "The outer strands hang 30 mm below the body, 3 mm apart, 10 mm longer than the others.",
    "The thread comes on a spool of 50 m. Take 2 m of thread and use it double.",
    "When six strands hang, turn it; let the six strands hang free and all at once count 10 rows.",
    "The next row has 12 stitches; rows of 10 stitches follow.",
]
FALSE = [
    ("The base row has 14 stitches.", "14 stitches", "the base row has 13", "base.stitches"),
    ("every row is one stitch shorter than the row before, from 12 stitches in the base row up to the hanger", "12 stitches", "the base row has 13", "base.stitches"),
    ("The base row is the widest row, with fourteen stitches.", "fourteen stitches", "the base row has 13", "base.stitches"),
    ("The body is a plain triangle on 12 stitches.", "12 stitches", "the base row has 13", "base.stitches"),
    ("Start with a ladder of 14 stitches.", "14 stitches", "the base row has 13", "base.stitches"),
    ("The 14 base stitches carry the fringe.", "14 base stitches", "the base row has 13", "base.stitches"),
    ("Begin with a 12-stitch base.", "12-stitch", "the base row has 13", "base.stitches"),
    ("Row 6 has 9 stitches.", "9 stitches", "row 6 has 8", ""),
    ("The top row has four stitches.", "four stitches", "the top row, row 11, has 3", ""),
    ("The base row of 14 stitches is worked in ladder stitch.", "14 stitches", "the base row has 13", "base.stitches"),
    ("It grows from the base row, 14 stitches, to the top.", "14 stitches", "the base row has 13", "base.stitches"),
    ("The 14 stitches of the base row come first.", "14 stitches", "the base row has 13", "base.stitches"),
    ("The body has 12 rows.", "12 rows", "the body has 11", "rows"),
    ("Work twelve rows in all.", "twelve rows", "the body has 11", "rows"),
    ("When all 10 rows are done, turn the work.", "10 rows", "the body has 11", "rows"),
    ("the longest of the 14 strands hangs near the middle", "14 strands", "the fringe has 13", "strands"),
    ("The fringe has a dozen strands.", "a dozen strands", "the fringe has 13", "strands"),
    ("All fifteen strands hang free.", "fifteen strands", "the fringe has 13", "strands"),
    ("A piece takes 457 beads.", "457 beads", "a piece has 456", "beads.piece"),
    ("There are 913 beads in all.", "913 beads", "both pieces have 912", "beads.total"),
    ("Strand 3 has 28 beads.", "28 beads", "strand 3 has 27", ""),
    ("Each strand has 40 beads.", "40 beads", "strands have 24 to 31", ""),
    ("The longest strand has 32 beads.", "32 beads", "the longest, strand 7, has 31", ""),
    ("Skip the 3 end beads.", "3 end beads", "the strands have 1", ""),
    ("The loop has eight beads.", "eight beads", "the loop has 7", ""),
    ("Pick up sets of 2 beads.", "2 beads", "a stitch has 1", "drop"),
    ("You need 108 storm blue beads for a piece.", "108 storm blue beads", "a piece has 107", "beads.B.piece"),
    ("The piece is 25 mm wide.", "25 mm", "the width is 20.8 mm", "size.width"),
    ("The piece hangs 90 mm long.", "90 mm", "the length is 56.7 mm", "size.length"),
    ("Take a working length of 2 m of thread.", "2 m", "the working length is 1.40 m", "thread.length"),
    ("Each earring weighs 4 grams.", "4 grams", "the beads of a piece weigh 2.8 g", "mass.piece"),
]


@pytest.mark.parametrize("text", TRUE)
def test_what_is_true_is_no_finding(text, facts):
    assert list(quantities(text.lower())) and may_count(text), "there is a number to judge"
    assert list(contradictions(text, facts)) == []


@pytest.mark.parametrize("text", HARMLESS)
def test_what_states_no_fact_of_the_whole_is_no_finding(text, facts):
    assert list(contradictions(text, facts)) == []


@pytest.mark.parametrize(("text", "said", "fact", "placeholder"), FALSE)
def test_error_what_contradicts_the_pattern(text, said, fact, placeholder, facts):
    assert may_count(text)
    assert [(wrong.said, wrong.fact.said, wrong.fact.placeholder) for wrong in contradictions(text, facts)] == [(said, fact, placeholder)]


@pytest.fixture(scope="module")
def empty(tmp_path_factory):
    return load(write_book(tmp_path_factory.mktemp("empty"), {"a.md": ""}))


def facts_of(piece, workspace):
    pattern = Pattern("cloud", "patterns/cloud.yaml", makes="pair", legend=piece.legend, piece=piece)
    return Facts(Subject(workspace, pattern))


def found_in(text, facts):
    return [wrong for passage in [Passage("the notes", text, text, ("notes",), facts.subject)]
            for _, sentence in passage.sentences() for wrong in contradictions(sentence, facts)]


@given(workable())
def test_the_steps_that_booklet_writes_contradict_nothing(empty, piece):
    facts = facts_of(piece, empty)
    plan = facts.pattern.thread
    for step in steps(piece, plan, thread_use(piece, plan)):
        assert found_in(step.text, facts) == []


SAID = {
    "base": ["The base row has {} stitches.", "It starts on a ladder of {} stitches", "a plain triangle on {} stitches"],
    "rows": ["The body has {} rows.", "All {} rows are worked back and forth.", "There are {} rows in all."],
    "strands": ["The fringe has {} strands.", "All {} strands hang free.", "the longest of the {} strands"],
}


@given(workable(), st.sampled_from([(name, said) for name, texts in SAID.items() for said in texts]), st.sampled_from([-2, -1, 1, 2]), st.booleans())
def test_error_a_count_off_by_one_or_two_is_found(empty, piece, case, off, in_words):
    facts, (name, said) = facts_of(piece, empty), case
    fact = getattr(facts, name)
    assume(fact.value >= FEW)
    words = {value: word for word, value in VALUES.items()}
    write = (lambda count: words[count]) if in_words else str
    assert found_in(said.format(write(fact.value)), facts) == []
    other = fact.value + off
    assume("triangle" not in said or other not in (max(facts.widths.values()), facts.top.value))   # may be meant
    (wrong,) = found_in(said.format(write(other)), facts)
    assert wrong.fact == fact
