"""Random fringes of all kinds at all places, for the tests of the craft."""

from hypothesis import strategies as st
from msgspec.structs import replace
from tests.craft.pieces import KEYS, stepped, workable

from booklet.craft.beads import Bead, BeadKind
from booklet.craft.places import HANGS, places
from booklet.craft.strand import LOOP, STRAIGHT, TWIST, Charm, Strand, Twig

NAMES = st.sampled_from(["ring", "star charm", "end 3W", "twig"])
BEADS = st.lists(KEYS, min_size=1, max_size=12).map(tuple)
SIZES = (BeadKind("round 15/0", "round", 1.5, 1.1, 0.7), BeadKind("drop 3.4", "drop", 3.4, 3.4, 0.9), BeadKind("bugle 6 mm", "bugle", 1.9, 6.0, 0.8))


@st.composite
def charms(draw, beads):
    return tuple(Charm(at, draw(NAMES)) for at in sorted(draw(st.lists(st.integers(0, len(beads)), max_size=2))))


@st.composite
def twigs(draw, at):
    beads, end = draw(st.lists(KEYS, max_size=5).map(tuple)), draw(BEADS)
    return Twig(at, beads, end, draw(charms(beads)), draw(charms(end)))


@st.composite
def straight(draw, number):
    beads, end = draw(st.lists(KEYS, max_size=20).map(tuple)), draw(BEADS)
    hung = [draw(st.one_of(twigs(at), NAMES.map(lambda name, at=at: Charm(at, name))))
            for at in sorted(draw(st.lists(st.integers(0, len(beads)), max_size=4)))]
    return Strand(number, beads, end, STRAIGHT, hung=tuple(hung), turned=draw(charms(end)))


@st.composite
def strands(draw, number, last):
    ways = [to for to in (-2, -1, 1, 2) if 1 <= number + to <= last]
    kind = draw(st.sampled_from([STRAIGHT, TWIST, *([LOOP] if ways else [])]))
    beads = draw(BEADS)
    if kind == LOOP:
        return Strand(number, beads, (), LOOP, draw(st.sampled_from(ways)), hung=draw(charms(beads)))
    if kind == TWIST:
        end = draw(st.lists(KEYS, max_size=3).map(tuple))
        return Strand(number, beads, end, TWIST, second=draw(BEADS), turned=draw(charms(end)) if end else ())
    return draw(straight(number))


@st.composite
def fringed(draw, bodies=None):
    """A legal piece with strands of any kind at some of its places, in beads of any size."""
    made = replace(draw(bodies or workable(fringe=False) | stepped()), hang=draw(st.sampled_from(HANGS)))
    legend = dict(made.legend)
    for key in draw(st.sets(KEYS)):
        legend[key] = Bead(key, legend[key].name, legend[key].colour, "matte", draw(st.sampled_from(SIZES)))
    last = len(places(made))
    taken = draw(st.sets(st.integers(1, last), min_size=1)) if last else set()
    return replace(made, legend=legend, strands=tuple(draw(strands(number, last)) for number in sorted(taken)),
                   charms={"ring": 4.0, "star charm": 9.0})
