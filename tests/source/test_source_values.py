"""Fields of a pattern file: what each may hold, and what is said where it holds something else."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.source.texts import SMALL, good, read, said, with_change

from booklet.source.measures import amount, length, page_size


@pytest.mark.parametrize(("text", "mm"), [
    ("1.4 m", 1400), ("1.1 m", 1100), ("4 mm", 4), ("4mm", 4), ("2.5 cm", 25), ("1 in", 25.4), ("18 in", 457.2), ("5 ft", 1524),
    ("1.4", None), ("m", None), ("1,4 m", None), ("-1 m", None), ("1e3 m", None), ("4 yd", None), ("1 m 2 cm", None), ("", None), ("٣ m", None)])
def test_lengths(text, mm):
    """An inch is 25.4 mm exactly."""
    assert length(text) == mm


@given(st.integers(1, 99_999))
def test_hundredths_of_an_inch(hundredths):
    assert length(f"{hundredths / 100} in") == pytest.approx(hundredths * 0.254)


def test_amounts():
    assert (amount("5 g", "g"), amount("7.5g", "g"), amount("10 %", "%"), amount("5 kg", "g"), amount("5", "g")) == (5, 7.5, 10, None, None)


@pytest.mark.parametrize(("text", "size"), [
    ("A4", (210, 297)), ("a5", (148, 210)), ("B5", (176, 250)), ("Letter", (215.9, 279.4)), ("half letter", (139.7, 215.9)),
    ("6x9", (152.4, 228.6)), ("148 x 210 mm", (148, 210)), ("148x210mm", (148, 210)), ("5.5 x 8.5 in", (139.7, 215.9)),
    ("14.8 × 21 cm", (148, 210)), ("A9", None), ("148 x 210", None), ("148 mm x 210 mm", None)])
def test_page_sizes(text, size):
    assert page_size(text) == (size and pytest.approx(size))


def test_text_is_text():
    pattern = good(with_change('version: "1.0"', "version: 010").replace("title: Cloud Shadow", "title: on"))
    assert (pattern.version, pattern.title) == ("010", "on")


def test_one_line_texts_fold_white_space():
    assert good(with_change("title: Cloud Shadow", "title:  >\n  Cloud\n  Shadow")).title == "Cloud Shadow"


def test_short_colours_are_written_out():
    assert [bead.colour for bead in good(SMALL).legend.values()] == ["#f4f1ea", "#3d5a80", "#bb88cc"]


CHANGES = [
    ("title: Cloud Shadow", "title: [a]", "1:8: error: title must be a text; found a list [wrong-type]"),
    ("title: Cloud Shadow", "title:", "1:7: error: title is empty (give it a value or delete it) [empty-value]"),
    ("title: Cloud Shadow", "title: ' '", "1:8: error: title is empty (give it a value or delete it) [empty-value]"),
    ("title: Cloud Shadow", "title: |\n  Cloud\n  Shadow", "1:8: error: title must be one line [wrong-type]"),
    ("title: Cloud Shadow", "title: " + "x" * 121, "1:8: error: title may have up to 120 characters; found 121 [too-large]"),
    ("title: Cloud Shadow", 'title: "a\\eb"', "1:8: error: title holds the invisible character U+001B (delete it) [strange-character]"),
    ("title: Cloud Shadow", "titel: Cloud Shadow", "1:1: error: the field 'titel' is not known (did you mean title?) [unknown-field]"),
    ("title: Cloud Shadow\n", "", "1:1: error: title is missing [missing-field]"),
    ("mirror: false", "mirror: false\nmirror: true", "7:1: error: 'mirror' stands twice; the first is on line 6 (keep one of them) [duplicate-key]"),
    ("mirror: false", "mirror: on", "6:9: error: mirror must be true or false; found 'on' [unknown-choice]"),
    ("mirror: false", "mirror: True", "6:9: error: mirror must be true or false; found 'True' (did you mean true?) [unknown-choice]"),
    ('version: "1.0"', "version: one", "3:10: error: version must be numbers with points, such as \"1.0\"; found 'one' [bad-version]"),
    ("level: beginner", "level: begginer",
     "4:8: error: level must be beginner, intermediate or advanced; found 'begginer' (did you mean beginner?) [unknown-choice]"),
    ("level: beginner\n", "", "1:1: error: level is missing [missing-field]"),
    ("makes: pair\n", "", "1:1: error: makes is missing [missing-field]"),
    ('"#f4f1ea"', "blue", "10:35: error: beads.W.colour must be like #3d5a80 or #f80; found 'blue' [bad-colour]"),
    ('"#f4f1ea"', "f4f1ea", "10:35: error: beads.W.colour must be like #3d5a80 or #f80; found 'f4f1ea' (did you mean \"#f4f1ea\"?) [bad-colour]"),
    ('"#f4f1ea"', '"#f4f1e"', "10:35: error: beads.W.colour must be like #3d5a80 or #f80; found '#f4f1e' [bad-colour]"),
    ("finish: matte, ", "finish: mat, ",
     "10:54: error: beads.W.finish must be matte, lustre, metallic, transparent or opaque; found 'mat' (did you mean matte?) [unknown-choice]"),
    (", finish: matte,    kind", ", kind", "10:6: error: beads.W.finish is missing [missing-field]"),
    ("drop 3.4", "drop 3.5", "12:67: error: the bead kind 'drop 3.5' is not known (did you mean drop 3.4?) [unknown-kind]"),
    ("  W: {", "  Wh: {", "10:3: error: a bead key is one letter or digit; found 'Wh' [bad-name]"),
    ("  W: {", "  é: {", "10:3: error: a bead key is one letter or digit; found 'é' [bad-name]"),
    ("pack: 10 g", "pack: 10", "12:83: error: beads.D.pack must be a number and a unit, such as 5 g; found '10' [bad-measure]"),
    ("stitch: brick", "stitch: peyot", "15:11: error: body.stitch must be brick, peyote, square or loom; found 'peyot' (did you mean peyote?) [unknown-choice]"),
    ("drop: 2", "drop: two", "16:9: error: body.drop must be a whole number; found 'two' [wrong-type]"),
    ("drop: 2", "drop: 9", "16:9: error: body.drop must be 1 to 4; found '9' [out-of-range]"),
    ("drop: 2", "drop: 02", "16:9: error: body.drop must be a whole number; found '02' [wrong-type]"),
    ("hanger: {kind: guard}", "hanger: {kind: rope}",
     "35:16: error: hanger.kind must be guard, ring, loop or none; found 'rope' [unknown-choice]"),
    ("hanger: {kind: guard}", "hanger: {kind: guard, span: 5}",
     "35:29: error: hanger.span must be a number and a unit, such as 3 mm; found '5' [bad-measure]"),
    ("hanger: {kind: guard}", "hanger: [{kind: ring, at: lift}]",
     "35:27: error: hanger.1.at must be left, middle or right; found 'lift' (did you mean left?) [unknown-choice]"),
    ("hanger: {kind: guard}", "hanger: [{kind: ring}, {kind: ring}, {kind: ring}, {kind: ring}]",
     "35:9: error: hanger may have up to 3 entries; found 4 [too-large]"),
    ("braided 6 lb", "braided 6lb", "40:18: error: the thread kind 'braided 6lb' is not known (did you mean braided 6 lb?) [unknown-thread]"),
    ("nylon D", "gut", "41:18: error: the thread kind 'gut' is not known (add it to threads: in book.yaml, with its diameter) [unknown-thread]"),
    ("hanger: {kind: guard}", "hanger: {kind: loop, beads: 7(W}",
     "35:29: error: this parenthesis is never closed [bad-run-text]"),
    ("size: 4 mm, each: 1", "size: 4 mm, each: 0", "37:44: error: findings.1.each must be 1 to 1,000; found '0' [out-of-range]"),
    ("{item: lever-back ear wire, each: 1}", "{each: 1}", "38:5: error: findings.2.item is missing [missing-field]"),
    ("{item: lever-back ear wire, each: 1}", "wire", "38:5: error: findings.2 must be a group of fields; found 'wire' [wrong-type]"),
    ("length: 1.4 m", "length: 1,4 m", "42:11: error: thread.length must be a number and a unit, such as 1.4 m; found '1,4 m' "
                                       "(write a point, not a comma, before decimals) [bad-measure]"),
    ("length: 1.4 m", "length: 14000000 m", "42:11: error: thread.length must be 400 to 10000 mm; found '14000000 m' [out-of-range]"),
    ("length: 1.4 m", "length: 140 m", "42:11: error: thread.length must be 400 to 10000 mm; found '140 m' [out-of-range]"),
    ("photos/cloud-shadow.jpg", "../secret.jpg",
     "43:15: error: photo.file must be a file in the workspace, such as photos/cloud-shadow.jpg; found '../secret.jpg' [outside-workspace]"),
    ("photos/cloud-shadow.jpg", "/etc/secret",
     "43:15: error: photo.file must be a file in the workspace, such as photos/cloud-shadow.jpg; found '/etc/secret' [outside-workspace]"),
    ("photos/cloud-shadow.jpg", "'C:\\secret'",
     "43:15: error: photo.file must be a file in the workspace, such as photos/cloud-shadow.jpg; found 'C:\\secret' [outside-workspace]"),
    ("https://example", "javascript:example",
     "45:41: error: links.1.url must be a web address that begins with https://; found 'javascript:example.org/row-start' [bad-link]"),
    ("steps: {}", "steps: {Ladder 1: x}", "48:9: error: the name of a step has small letters and hyphens; found 'Ladder 1' (did you mean ladder?) [bad-name]"),
    ("steps: {}", "steps: {ladder: {befor: x}}",
     "48:18: error: the field 'befor' is not known in steps.ladder (did you mean before?) [unknown-field]"),
    ("dusk: {B", "dusk: {Q", "50:10: error: the bead key Q is not in the legend (a colourway changes beads of the legend) [unknown-bead-key]"),
    ("counted: {base: 4", "counted: {bas: 4",
     "51:11: error: base, rows, strands and beads can be counted; found 'bas' (did you mean base?) [unknown-field]"),
    ("counted: {base: 4", "counted: {base: -4", "51:17: error: counted.base must be 0 to 1,000,000; found '-4' [out-of-range]"),
    ("counted: {base: 4", "counted: {<<: {a: b}, base: 4", "51:11: error: merge keys (<<) are not read (write the fields out) [merge-key]"),
    ("counted: {base: 4", "counted: {[a]: b, base: 4", "51:11: error: the name of a field must be a text; found a list [wrong-type]"),
]


@pytest.mark.parametrize(("old", "new", "line"), CHANGES)
def test_error_field(old, new, line):
    text = with_change(old, new)
    assert said(text) == [f"a.yaml:{line}"]
    assert read(text)[0] is not None


def test_error_a_bare_colour_in_a_block():
    text = with_change('  W: {name: chalk white,  colour: "#f4f1ea", finish: matte,    kind: cylinder 11/0}',
                       "  W:\n    name: white\n    colour: #f4f1ea\n    finish: matte\n    kind: cylinder 11/0")
    assert said(text) == ["a.yaml:12:12: error: beads.W.colour is empty (# begins a comment: put the value in quotes) [empty-value]"]


def test_error_everything_in_one_run():
    """Every fault of a file is found in one run, each at its place."""
    text = SMALL
    for old, new in (("level: beginner", "level: x"), ('"#f4f1ea"', "blue"), ("  W B B W", "  W ? B W"), ("12W 2B 1W\n    - 3", "12W,\n    - 3"),
                     ("14W", "14"), ("1.4 m", "1.4"), ("steps: {}", "stepps: {}"), ("base: 4", "base: four"), ("drop 3.4", "dropp 3.4")):
        text = with_change(old, new, text)
    assert sorted(line.split(":")[1] + " " + line.rsplit(" ", 1)[1] for line in said(text)) == [
        "10 [bad-colour]", "12 [unknown-kind]", "24 [bad-chart-text]", "30 [bad-run-text]", "32 [bad-run-text]", "4 [unknown-choice]",
        "42 [bad-measure]", "48 [unknown-field]", "51 [wrong-type]"]


def test_error_a_wrong_value_used_twice_by_an_alias_is_one_fault():
    text = with_change("length: 1.4 m", "length: 1.4 m\nold: &x {item: 5, size: [], each: 1}").replace(
        "  - {item: lever-back ear wire, each: 1}", "  - &y {item: wire, each: no}\n  - *y\n  - *y")
    assert said(text) == ["a.yaml:38:27: error: findings.2.each must be a whole number; found 'no' [wrong-type]",
                          "a.yaml:38:27: error: findings.3.each must be a whole number; found 'no' [wrong-type]",
                          "a.yaml:38:27: error: findings.4.each must be a whole number; found 'no' [wrong-type]",
                          "a.yaml:45:1: error: the field 'old' is not known [unknown-field]"]


def test_error_more_faults_than_anyone_reads():
    found = said("".join(f"field{n}: 1\n" for n in range(3000)))
    assert len(found) == 201 and found[-1] == "a.yaml:1:1: error: 200 faults of this file are listed; there may be more [too-many-faults]"


def test_aliases_may_be_used():
    pattern = good(with_change("  B: {name: storm blue,   colour: \"#3D5A80\", finish: lustre,   kind: cylinder 11/0}",
                               "  B: {name: storm blue, colour: \"#3D5A80\", finish: &f lustre, kind: &k cylinder 11/0}").replace(
                                   "finish: metallic, kind: drop 3.4", "finish: *f, kind: *k"))
    assert pattern.legend["D"].finish == "lustre" and pattern.legend["D"].kind.name == "cylinder 11/0"


@pytest.mark.parametrize(("data", "line"), [
    ("", "1:1: error: the file is empty (begin with title:) [empty-file]"),
    ("# nothing\n", "1:1: error: the file is empty (begin with title:) [empty-file]"),
    ("---\n...\n", "2:1: error: the file holds a text where fields are expected (begin with title:) [not-a-mapping]"),
    ("- a\n", "1:1: error: the file holds a list where fields are expected (begin with title:) [not-a-mapping]"),
    ("hello\n", "1:1: error: the file holds a text where fields are expected (begin with title:) [not-a-mapping]"),
    ("a: b\0c\n", "1:5: error: the invisible character U+0000 may not stand here (delete it) [strange-character]"),
    ("a: b\nc: \u2028d\n", "2:4: error: the invisible character U+2028 may not stand here (delete it) [strange-character]"),
    ("a: b\nc: \ud800\n", "2:4: error: the invisible character U+D800 may not stand here (delete it) [strange-character]"),
    ("title: Wörter\nü: caf\xe9".encode() + b"\n\xe9", "3:1: error: byte 0xe9 is not UTF-8 text (save the file as UTF-8) [not-utf-8]"),
    ("üü: caf".encode() + b"\xe9", "1:8: error: byte 0xe9 is not UTF-8 text (save the file as UTF-8) [not-utf-8]"),
    ("a: b".encode("utf-16"), "1:1: error: byte 0xff is not UTF-8 text (save the file as UTF-8) [not-utf-8]"),
    (b"a: " + b"x" * 1024 * 1024, "1:1: error: the file is larger than 1 MiB, the most that is read [too-large]"),
    ("a: " + "x" * 1024 * 1024, "1:1: error: the file is larger than 1 MiB, the most that is read [too-large]"),
])
def test_error_file(data, line):
    assert (read(data)[0], said(data)) == (None, [f"a.yaml:{line}"])


@pytest.mark.parametrize("data", ["\ufeff" + SMALL, ("\ufeff" + SMALL).encode(), SMALL.encode(), SMALL.replace("\n", "\r\n")])
def test_a_byte_order_mark_or_other_line_ends_change_nothing(data):
    assert good(data).piece == good(SMALL).piece and good(data).marks == good(SMALL).marks
