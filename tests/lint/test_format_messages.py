"""Rules about one format in the whole book: the whole message of each, at its place."""

from tests.lint.books import completed, found

FILE = "patterns/morning-cloud.yaml"
ROWS = [("B B", "W B W"), ("W B", "W B B"), ("W W", "W B B"), ("W B", "W W B"), ("B B", "W W W")]


def book(*slugs):
    return f"title: Weather for Wearing\norder: [morning-cloud, {', '.join(slugs)}]\n"


def others(**fields):
    """Patterns of the book, each with a chart of its own."""
    return {f"{slug}.yaml": completed(f"{text}body:\n  chart: |\n    2 |  {upper}\n    1 | {lower}\n")
            for (slug, text), (upper, lower) in zip(fields.items(), ROWS[1:])}


def test_error_odd_capitals(tmp_path):
    named = others(a="title: Cloud Shadow\n", b="title: A Star over the Hill\n", c="title: Slant rain\n", d="title: Thunderhead\n")
    assert found(tmp_path, "", book("a", "b", "c", "d"), **named) == [
        "patterns/c.yaml:1:8: note: the title Slant rain has one capital at the start, but most have a capital for each main word [odd-capitals]"]
    assert found(tmp_path, "title: FIRST SNOW\n", book("a", "b"), **dict(list(named.items())[:2])) == [
        "patterns/book.yaml:2:8: warning: the order leaves out c, so it comes last in the book [not-in-book-order]",
        "patterns/book.yaml:2:8: warning: the order leaves out d, so it comes last in the book [not-in-book-order]",
        "patterns/c.yaml:1:8: note: the title Slant rain has one capital at the start, but most have a capital for each main word [odd-capitals]",
        f"{FILE}:1:8: note: the title FIRST SNOW has capitals only, but most have a capital for each main word [odd-capitals]"]


def test_error_odd_capitals_of_a_bead(tmp_path):
    beads = "beads:\n  W: {name: Chalk white, colour: '#f4f1ea', finish: matte, kind: cylinder 11/0}\n  B: {name: storm blue, colour: '#3d5a80', finish: lustre, kind: cylinder 11/0}\n"
    assert found(tmp_path, "", book("a"), **others(a="title: Slant Rain\n" + beads)) == [
        "patterns/a.yaml:7:13: note: the bead name Chalk white has one capital at the start, but most have small letters [odd-capitals]"]


def test_error_fields_out_of_order(tmp_path):
    named = others(a="title: Slant Rain\n", b="title: Heat Haze\n")
    assert found(tmp_path, "counted: {base: 3}\nnotes: It rains.\n", book("a", "b"), **named) == [
        f"{FILE}:14:8: note: notes stands after counted, but in most patterns of the book before it "
        "(booklet lint --fix puts the fields in order) [fields-out-of-order]"]


def test_an_order_that_is_not_usual_is_no_fault(tmp_path):
    odd = "counted: {base: 3}\nnotes: It rains.\n"
    assert found(tmp_path, odd, book("a", "b"), **others(a="title: Slant Rain\n" + odd, b="title: Heat Haze\n")) == []
    assert found(tmp_path, odd) == []


def test_error_missing_fact(tmp_path):
    fact = "counted: {base: 3}\n"
    named = others(a="title: Slant Rain\n" + fact, b="title: Heat Haze\n" + fact, c="title: First Snow\n" + fact)
    assert found(tmp_path, "", book("a", "b", "c"), **named) == [
        f"{FILE}:1:8: note: morning-cloud has no counted, but 3 of 4 patterns have a count made by hand [missing-fact]"]


def test_what_the_book_gives_is_not_missing(tmp_path):
    fact = "findings:\n  - {item: ear wire, each: 1}\n"
    named = others(a="title: Slant Rain\n" + fact, b="title: Heat Haze\n" + fact, c="title: First Snow\n" + fact)
    defaults = "defaults:\n  findings:\n    - {item: ear wire, each: 1}\n"
    assert found(tmp_path, "", book("a", "b", "c") + defaults, **named) == []
    assert [line.rpartition(" ")[2] for line in found(tmp_path, "", book("a", "b", "c"), **named)] == ["[missing-fact]"]


def test_error_summary_and_version(tmp_path):
    assert found(tmp_path, 'summary: too short\nversion: "2"\n') == [
        f"{FILE}:2:10: note: the summary has 9 characters; 40 to 160 are a good length [odd-summary-length]",
        f"{FILE}:2:10: note: the summary does not end with a full stop [summary-without-full-stop]",
        f'{FILE}:3:10: note: the version 2 is not two numbers with a point (write "2.0") [odd-version]']
    assert found(tmp_path, f'summary: {"A cloud, " * 18}ends here.\nversion: "1.0.3"\n') == [
        f"{FILE}:2:10: note: the summary has 172 characters; 40 to 160 are a good length [odd-summary-length]",
        f"{FILE}:3:10: note: the version 1.0.3 is not two numbers with a point [odd-version]"]
    (line,) = found(tmp_path, 'version: "v2"\n')
    assert line.endswith("[bad-version]")


def test_error_odd_unit(tmp_path):
    text = """\
findings:
  - {item: 5 gr of clay, size: 4mm}
notes: Cut 1,5 m or 12" or 3cm and 3ins. 1.4 m is fine, 15/0 as well, and 1,002 beads.
thread: {body: {kind: cord 6lb}}
"""
    odd = [("14:12", "5 gr", "5 g"), ("14:32", "4mm", "4 mm"), ("15:12", "1,5 m", "1.5 m"), ("15:21", '12"', "12 in"), ("15:28", "3cm", "3 cm"),
           ("15:36", "3ins", "3 in"), ("16:23", "6lb", "6 lb")]
    assert found(tmp_path, text, "title: B\norder: [morning-cloud]\nthreads: {cord 6lb: {diameter: 0.2 mm}}\n") == [f"{FILE}:{place}: note: {written!r} is not how units are written (write {right}) [odd-unit]"
                                     for place, written, right in odd]


def test_error_duplicate_title_and_same_chart(tmp_path):
    same = completed("title: Morning  cloud\nbeads:\n  X: {name: white, colour: '#f4f1ea', finish: matte, kind: cylinder 11/0}\n"
                     "  Y: {name: blue, colour: '#3d5a80', finish: matte, kind: cylinder 11/0}\nbody:\n  chart: |\n     |   Y Y\n     |  X Y X\n")
    assert found(tmp_path, "", book("a"), **{"a.yaml": same}) == [
        "patterns/a.yaml:1:8: warning: morning-cloud has the title Morning cloud already [duplicate-title]",
        "patterns/a.yaml:10:10: warning: morning-cloud has the same chart and fringe (other colours for one chart are a colourway) [same-chart]"]
