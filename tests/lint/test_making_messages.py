"""Rules about making and wearing: mass, length of strands and thread, materials. The whole message of each, at its place."""

from tests.lint.books import found

FILE = "patterns/morning-cloud.yaml"
LARGE = """\
beads:
  W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: round 6/0}
  B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: round 6/0}
"""
LIGHTEN = "(take smaller beads, fewer strands or shorter ones) [heavy-piece]"
SHORTEN = "(keep strands under 120 mm) [strand-tangles]"


def fringe(*strands):
    base = len(strands)
    rows = " ".join("B" * (base - 1)), " ".join("W" * base)
    return f"body:\n  chart: |\n    2 |  {rows[0]}\n    1 | {rows[1]}\nfringe: {{end: 1B, strands: [{', '.join(strands)}]}}\n"


def test_error_heavy_piece(tmp_path):
    assert found(tmp_path, "makes: pair\n" + LARGE + fringe(*["36W"] * 3)) == [
        f"{FILE}:5:8: note: the beads of one piece weigh 7.7 g, ear wire not counted; ears bear 5 to 10 g {LIGHTEN}"]
    assert found(tmp_path, "makes: pair\n" + LARGE + fringe(*["36W"] * 5)) == [
        f"{FILE}:5:8: warning: the beads of one piece weigh 12.9 g, ear wire not counted; ears bear 5 to 10 g {LIGHTEN}"]


def test_a_single_piece_is_an_earring_if_it_has_an_ear_wire(tmp_path):
    pendant = LARGE + fringe(*["36W"] * 3)
    assert found(tmp_path, pendant + "findings:\n  - {item: bail for a pendant, each: 1}\n") == []
    (line,) = found(tmp_path, pendant + "findings:\n  - {item: lever-back ear wire, each: 1}\n")
    assert line.endswith(LIGHTEN)


def test_error_strand_tangles(tmp_path):
    assert found(tmp_path, fringe("40W", "100W", "95W")) == [
        f"{FILE}:13:34: warning: strand 2 is 131 mm long and will tangle; 2 strands are longer than 120 mm {SHORTEN}"]
    assert found(tmp_path, fringe("40W", "100W", "40W")) == [f"{FILE}:13:34: warning: strand 2 is 131 mm long and will tangle {SHORTEN}"]


def test_error_thread_too_long(tmp_path):
    book = "title: A Book\norder: [morning-cloud]\ndefaults:\n  thread: {body: {kind: nylon D}, length: 3 m}\n"
    comfort = "tangles and frays (up to 2 m is comfortable) [thread-too-long]"
    assert found(tmp_path, "thread: {length: 2.5 m}\n", book) == [
        f"patterns/book.yaml:4:43: warning: a working length of 3.00 m {comfort}",
        f"{FILE}:13:18: warning: a working length of 2.50 m {comfort}"]


def test_error_material_without_kind(tmp_path):
    thread = "thread:\n  body: {kind: nylon A}\n"
    assert found(tmp_path, thread) == []
    assert found(tmp_path, thread + fringe("4W", "4W", "4W")) == [
        f"{FILE}:14:3: warning: the thread of the fringe is not given, so nylon B is printed (write thread.fringe) [material-without-kind]"]


def test_thread_that_is_inherited_is_given(tmp_path):
    book = "title: A Book\norder: [morning-cloud]\ndefaults:\n  thread: {body: {kind: nylon B}, fringe: {kind: nylon A}}\n"
    assert found(tmp_path, "thread: {length: 1.2 m}\n" + fringe("4W", "4W", "4W"), book) == []


def test_error_hang_not_in_this_stitch(tmp_path):
    body = "body:\n  stitch: square\n  chart: |\n    2 | W B W\n    1 | W B W\n"
    assert found(tmp_path, body + "fringe: {hang: bridges, end: 1B, strands: [4W, 4W]}\n") == [
        f"{FILE}:14:16: error: a fringe of square stitch cannot hang from thread bridges (leave hang out: the strands hang from row 1) "
        "[hang-not-in-this-stitch]"]
    assert found(tmp_path, body + "fringe: {hang: lowest, end: 1B, strands: [4W, ~, {loop: 9W, to: next}]}\n") != []
    assert found(tmp_path, body + "fringe: {hang: lowest, end: 1B, strands: [4W, {loop: 9W}, ~]}\n") == []


def test_error_hanger_not_in_findings(tmp_path):
    wire = "findings:\n  - {item: ear wire, each: 1}\n"
    assert found(tmp_path, "hanger: {kind: ring}\n" + wire) == [
        f"{FILE}:13:9: warning: the hanger is a closed ring, but the findings list none (add closed ring under findings:) [hanger-not-in-findings]"]
    assert found(tmp_path, "hanger: {kind: ring, size: 4 mm}\n" + wire + "  - {item: closed ring, size: 6 mm, each: 1}\n") == [
        f"{FILE}:13:28: warning: the ring of the hanger is 4 mm across, but the findings list closed ring, 6 mm [hanger-not-in-findings]"]
    assert found(tmp_path, "hanger: {kind: ring, size: 4 mm}\n" + wire + "  - {item: jump ring, size: 6 mm, each: 1}\n  - {item: closed ring, size: 4 mm, each: 1}\n") == []
