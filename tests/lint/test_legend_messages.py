"""Rules about names, keys and colours of beads: the whole message of each, at its place."""

from tests.lint.books import BOOK, completed, found

FILE = "patterns/morning-cloud.yaml"
WHITE = ("W", "chalk white", "#f4f1ea")
LIGHTER = "(make one of them lighter or darker)"


def legend(*beads, kind="cylinder 11/0"):
    lines = (f'  {key}: {{name: {name}, colour: "{colour}", finish: matte, kind: {kind}}}\n' for key, name, colour in beads)
    return f"beads:\n{''.join(lines)}"


def said(root, text, rule, book=None, **others):
    """Findings of one rule; texts of these tests have other faults by nature."""
    return [line.removesuffix(f" [{rule}]") for line in found(root, text, book, **others) if line.endswith(f"[{rule}]")]


def test_error_name_used_twice(tmp_path):
    text = legend(WHITE, ("B", "storm blue", "#3d5a80")) + (
        "colourways:\n  dusk: {B: {name: Chalk  White, colour: '#f0e0d0'}}\n  dawn: {W: {name: storm blue, colour: '#3d5a90'}}\n"
        "  noon: {W: {name: storm blue, colour: '#3d5a90'}, B: {name: sky, colour: '#88aadd'}}\n")
    assert said(tmp_path, text, "name-used-twice") == [
        f"{FILE}:14:20: warning: in the colourway dusk, B has the name of W, chalk white",
        f"{FILE}:15:20: warning: in the colourway dawn, B has the name of W, storm blue"]
    assert said(tmp_path, legend(WHITE, ("B", "Chalk white", "#3d5a80")), "name-used-twice") == [
        f"{FILE}:8:13: warning: B has the name of W, chalk white"]


def test_error_keys_look_alike(tmp_path):
    text = legend(("O", "a", "#fff"), ("0", "b", "#000"), ("I", "c", "#00f"), ("l", "d", "#0f0"), ("1", "e", "#f00"), ("w", "f", "#ff0"), ("W", "g", "#0ff"))
    assert said(tmp_path, text, "keys-look-alike") == [
        f"{FILE}:8:3: warning: the keys capital O and figure 0 look alike in print (take another letter for b)",
        f"{FILE}:10:3: warning: the keys capital I and small l look alike in print (take another letter for d)",
        f"{FILE}:11:3: warning: the keys capital I and figure 1 look alike in print (take another letter for e)",
        f"{FILE}:13:3: warning: the keys small w and capital W look alike in print (take another letter for g)"]


def test_error_name_for_another_colour(tmp_path):
    text = legend(WHITE, ("B", "storm blue", "#a03a2c")) + "colourways:\n  dusk: {W: {name: soot black, colour: '#eeeeee'}}\n"
    assert said(tmp_path, text, "name-for-another-colour") == [
        f"{FILE}:8:33: warning: B is called storm blue, but #a03a2c is no blue",
        f"{FILE}:14:40: warning: W is called soot black, but #eeeeee is no black"]


def test_error_name_means_two_colours(tmp_path):
    other = completed("title: Evening Star\n" + legend(("W", "coral", "#ff9988"), ("B", "sky", "#3355aa")) + "body:\n  chart: |\n    2 |  W W\n    1 | W B B\n")
    text = legend(WHITE, ("B", "coral", "#d44e3a")) + (
        "colourways:\n  dusk: {B: {name: coral, colour: '#e88a70'}}\n  dawn: {B: {name: coral, colour: '#d4503a'}}\n")
    assert said(tmp_path, text, "name-means-two-colours", BOOK.replace("]", ", evening-star]"), **{"evening-star.yaml": other}) == [
        "patterns/evening-star.yaml:7:28: note: coral is #ff9988 here, but #d44e3a in morning-cloud",
        f"{FILE}:14:35: note: coral is #e88a70 here, but #d44e3a in the legend"]


def test_error_colours_too_close(tmp_path):
    assert found(tmp_path, legend(WHITE, ("B", "cream", "#f1ece2"))) == [
        f"{FILE}:8:28: warning: W (chalk white) and B (cream) touch in 4 places and differ by 1.8, too little to see "
        "(let them differ by 5 or more, or take another kind of bead for one) [colours-too-close]"]


def test_beads_of_two_kinds_are_told_apart_by_size(tmp_path):
    text = legend(WHITE) + legend(("B", "cream", "#f1ece2"), kind="round 15/0").removeprefix("beads:\n")
    assert found(tmp_path, text) == []


def test_beads_that_never_touch_may_look_alike(tmp_path):
    text = legend(WHITE, ("B", "storm blue", "#3d5a80"), ("C", "cream", "#f1ece2"))
    chart = "body:\n  chart: |\n    4 |    C C\n    3 |   B B B\n    2 |  B B B B\n    1 | W B W B W\n"
    assert found(tmp_path, text + chart) == []


def test_error_colours_alike_to_some_eyes_and_in_grey(tmp_path):
    text = legend(("W", "leaf green", "#8a9a3c"), ("B", "burnt orange", "#cf8243")) + (
        "colourways:\n  dusk: {B: {name: moss green, colour: '#6f9a5c'}, W: {name: heather, colour: '#9a86b4'}}\n")
    assert found(tmp_path, text) == [
        f"{FILE}:8:35: note: W (leaf green) and B (burnt orange) touch in 4 places and look alike to red-blind or green-blind eyes, "
        f"and the same grey in black and white {LIGHTER} [colours-alike-to-some-eyes]",
        f"{FILE}:14:40: note: W (heather) and B (moss green) touch in 4 places in the colourway dusk and become the same grey in black and white "
        f"{LIGHTER} [colours-alike-in-grey]"]


def test_error_colourway_like_legend(tmp_path):
    text = ("colourways:\n  dusk: {B: {name: evening blue, colour: '#3d5a80'}}\n  dawn: {B: {name: plum, colour: '#5e3a5b'}}\n"
            "  noon: {B: {name: dark plum, colour: '#5e3a5b'}}\n")
    assert found(tmp_path, text) == [
        f"{FILE}:14:3: warning: the colourway dusk has the same colours as the legend [colourway-like-legend]",
        f"{FILE}:16:3: warning: the colourway noon has the same colours as the colourway dawn [colourway-like-legend]"]


def test_error_bead_listed_twice(tmp_path):
    text = legend(WHITE, ("B", "storm blue", "#3d5a80"), ("D", "evening blue", "#3D5A80"), ("E", "night blue", "#3d5a81"))
    assert said(tmp_path, text, "bead-listed-twice") == [
        f"{FILE}:9:35: warning: D (evening blue) is the same bead as B (storm blue): cylinder 11/0, #3d5a80, matte"]
    other_kind = text + legend(("F", "far blue", "#3d5a80"), kind="round 15/0").removeprefix("beads:\n")
    assert len(said(tmp_path, other_kind, "bead-listed-twice")) == 1
