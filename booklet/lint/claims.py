"""Which sentences state a fact of the whole pattern with a number, and whether it is true.

Most numbers in a pattern's prose state none: "the first three rows", "pass round two neighbouring stitches", "one bead too
many". So a number counts as a claim only where its sentence ties it to something that is computed ("the base row has 13
stitches", "all 13 strands", "41 mm long"), or where it is so near such a number that it can hardly mean anything else.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from msgspec import Struct

from .facts import Fact, Facts
from .figures import NUMBER, Quantity, may_name, quantities, value_of

NEAR = 2          # a count this near to a computed one, and not it, is taken for it
FEW = 5           # smaller counts are rarely those of a whole pattern
SURE = 8          # counts from here on are taken for one that is near wherever they stand
MANY_BEADS = 30   # fewer beads are a strand, a handful, a pick-up


class Contradiction(Struct, frozen=True):
    """A number in a sentence that is not what is computed."""

    start: int
    end: int
    said: str               # "14 strands"
    fact: Fact
    certain: bool = True    # False where the sentence only seems to mean this


class _Place(Struct, frozen=True):
    """A quantity in its sentence, in small letters."""

    quantity: Quantity
    sentence: str

    @property
    def before(self) -> str:
        return re.sub(r"\s+", " ", self.sentence[:self.quantity.start])

    @property
    def after(self) -> str:
        return re.sub(r"\s+", " ", self.sentence[self.quantity.end:])

    def has(self, pattern: str) -> bool:
        return re.search(rf"\b(?:{pattern})\b", self.sentence) is not None

    def follows(self, pattern: str) -> bool:
        """Whether the words right before the number end so."""
        return re.search(rf"\b(?:{pattern})\s*$", self.before) is not None

    def precedes(self, pattern: str) -> bool:
        """Whether the words right after the unit begin so."""
        return re.match(rf"[\s,]*(?:{pattern})(?!\w)", self.after) is not None


# Words that make a number mean a part of something, or a change by so much.
_PART_BEFORE = ("first|last|next|previous|following|every|each|another|other|others|remaining|middle|outer|outermost|inner|top|bottom|upper|lower|these|"
                "those|any|by|than|over|skip|few|about|around|nearly|almost|roughly|some|least|most|only|just|after|before|under|above|below|"
                "between|through|round|work|back|up|out|in|side|per|neighbouring|either|both|plus|and|or|leave|leaving|keep|hold|count")
_PART_AFTER = (r"at a time|more|too|longer|shorter|wider|narrower|later|earlier|before|after|above|below|apart|further|fewer|less|in from|away|"
               r"on (?:each|either|both|one|the)|to (?:each|either|both|one|the)|from the(?! (?:base|body))|together|back|down|up|side by side|out(?! in)|deep|that|which|"
               r"beside|between|under|nearest|over|of(?! (?:the|this) (?:fringe|body|piece|pattern|base|earring|pair))|"
               r"with|without|where|when|as|until|and|or")
_CHANGE = (r"more|less|fewer|too|of(?! (?:the|this))|longer|shorter|wider|narrower|lower|higher|thick|at (?:a time|each|every|the (?:ends?|edges?|sides?|top|bottom|tip)|its ends?)|on|later|further|apart|away|from the|in from|that|which|"
           r"below|above|under|over|between|in(?! (?:the|this|its|row|all|total)\b)|left over")
_SOME = "each side|either side|both sides|one side|half|halves|between|groups?|corners?"
_APPROXIMATE = "about|around|nearly|almost|roughly|some|over|under|just|least|most|approximately|circa|ca"
_ALL = r"all|all the|all of the|all of its|its|the whole"
_IN_ALL = r"in all|altogether|in total|all told"
_HAS = "has|have|having|with|of|is|are|uses|takes|needs|contains|on|hang|hangs|makes|total|totals"


def contradictions(sentence: str, facts: Facts) -> Iterator[Contradiction]:
    """Every number of a sentence that contradicts the pattern."""
    folded = re.sub(r"\s", " ", sentence.lower())
    for quantity in quantities(folded):
        found = _JUDGES[quantity.unit](_Place(quantity, folded), facts)
        if found is not None:
            fact, certain = found
            said = " ".join(sentence[quantity.start:quantity.end].split())
            yield Contradiction(quantity.start, quantity.end, said, fact, certain)


Verdict = tuple[Fact, bool] | None


def _is_part(place: _Place) -> bool:
    """Whether the sentence speaks of some of the things, not of all there are."""
    words = place.quantity.between
    return bool(words and words[-1] not in ("base", "fringe", "body", "ladder")) or place.follows(_PART_BEFORE) or place.precedes(_PART_AFTER)


def _is_whole(place: _Place, owner: str) -> bool:
    """Whether the sentence surely means all there are: "all 13 strands", "13 strands in all", "the fringe has 13 strands"."""
    owned = re.search(rf"\b(?:{owner})\b[^,]*?\b(?:{_HAS})\s+$", place.before) is not None
    return place.follows(_ALL) or place.precedes(_IN_ALL) or owned or place.precedes(rf"in the (?:{owner})")


def _count(place: _Place, fact: Fact, others: frozenset[float], owner: str) -> Verdict:
    """Judge a count that should be `fact`; `others` are counts that it may rightly be instead."""
    value = place.quantity.value
    if value == fact.value or value in others:
        return None
    if _is_whole(place, owner) and not place.precedes(r"of(?! (?:the|this))|below|above|more"):
        return fact, True
    if _is_part(place) or place.has(_SOME) or abs(value - fact.value) > NEAR:
        return None
    definite = place.follows("the") or place.follows(_HAS)
    return (fact, definite) if fact.value >= (FEW if definite else SURE) else None


def _rows(place: _Place, facts: Facts) -> Verdict:
    upper, lower = len(facts.piece.upper), len(facts.piece.lower)
    others = {float(upper)} if place.has("above|upper|up|top|brick stitch") else set()
    others |= {float(lower)} if place.has("below|lower|under|down") else set()
    if place.has("drawn|fringe|strands?|table|list"):
        return None
    return _count(place, facts.rows, frozenset(others), "body|piece|earring|chart|pattern|triangle|diamond")


def _strands(place: _Place, facts: Facts) -> Verdict:
    if place.precedes("of (?:the )?(?:thread|nylon|beads|cord)") or place.has("thread strands?|double|doubled"):
        return None
    return _count(place, facts.strands, frozenset(), "fringe|piece|earring|pattern")


_ROW, _STRAND = rf"\brow\s+({NUMBER})\b", rf"\bstrand\s+({NUMBER})\b"
_TIES = (("base row|base|row 1|ladder", "base"), ("top row|last row of the body", "top"), ("widest row|widest", "widest"),
         ("narrowest row|narrowest", "narrowest"))


def _stitches(place: _Place, facts: Facts) -> Verdict:
    value = place.quantity.value
    if place.quantity.between[-1:] == ("base",):
        return None if value == facts.base.value or _is_part(place) and not place.follows(_ALL) else (facts.base, True)
    if place.quantity.between:
        return None
    tied = _tied_row(place, facts)
    if tied is not None:
        return None if tied.value == value or not _states(place) else (tied, True)
    if place.has("rows?|wide|across") or _is_part(place):
        return None
    verdict = _count(place, facts.base, frozenset({float(max(facts.widths.values())), facts.top.value}), "body|piece|triangle|diamond|earring")
    return verdict and (verdict[0], False)


_ENDS = r"$|[,.;:)!?]|and|or|wide|long|across|at (?:its|the) base|in (?:row|the|this|its|all|total)|base|up to|to"


def _states(place: _Place) -> bool:
    """Whether a number of stitches is said to be what a row has, not what is done with some of them."""
    if place.precedes(_CHANGE) or place.follows("(?:start|begin|end|open|close)s? with"):
        return False
    if re.search(r"\b(?:row|ladder|base|row [0-9]+) (?:of|with|has|is|holds|takes) $", place.before):
        return True
    if place.follows("the|all|all the"):
        return re.match(r"\s*(?:of|in) (?:the |this |its )?(?:\w+ )?row\b", place.after) is not None
    return (place.follows(f"{_HAS}|from|to|a|an|row") or place.before.rstrip().endswith((",", ":", "("))) and re.match(
        rf"\s*(?:{_ENDS})(?!\w)", place.after) is not None


def _tied_row(place: _Place, facts: Facts) -> Fact | None:
    """The row that a number of stitches is said to belong to: the one named nearest to the number in its sentence."""
    named = []
    for match in re.finditer(_ROW, place.sentence) if may_name(place.sentence, "row") else ():
        number = int(value_of(match[1]))
        if number in facts.widths:
            fact = facts.base if number == 1 else Fact(facts.widths[number], f"row {number} has {facts.widths[number]}")
            named.append((_distance(place, match), fact))
    widths = facts.widths.values()
    widest = facts.base if max(widths) == facts.base.value else Fact(max(widths), f"the widest row has {max(widths)}")
    computed = {"base": facts.base, "top": facts.top, "widest": widest,
                "narrowest": Fact(min(widths), f"the narrowest row has {min(widths)}")}
    for words, name in _TIES:
        if any(word in place.sentence for word in words.split("|")):
            named += [(_distance(place, match), computed[name]) for match in re.finditer(rf"\b(?:{words})\b", place.sentence)]
    if place.has(r"rows\s+[0-9]|each row|every row(?! is)|either row"):
        return None
    return min(named, key=lambda entry: entry[0])[1] if named else None


def _distance(place: _Place, match: re.Match) -> int:
    quantity = place.quantity
    return quantity.start - match.end() if match.end() <= quantity.start else match.start() - quantity.end


def _sets(place: _Place, facts: Facts) -> Verdict:
    """Where a stitch is one bead, the word "sets" means something else."""
    return _stitches(place, facts) if facts.piece.drop > 1 else None


def _beads(place: _Place, facts: Facts) -> Verdict:
    between, value = place.quantity.between, place.quantity.value
    if between:
        return _end_beads(place, facts) if between[-1] in ("end", "turn") else _of_colour(place, facts, " ".join(between))
    if place.precedes(_CHANGE) and not place.precedes("in the loop|of the loop|high|in (?:a|each|every|one|either) (?:piece|earring|pendant)"):
        return None
    for judge in (_beads_of_strand, _beads_of_stitch, _beads_of_loop):
        verdict = judge(place, facts)
        if verdict is not _NOT_MEANT:
            return verdict
    if value in facts.known_counts or value < MANY_BEADS or place.follows(_APPROXIMATE) or place.precedes("more|too|left"):
        return None
    fact = facts.all_beads if place.precedes(f"{_IN_ALL}|for (?:the|a|both) pair") and facts.pattern.pieces > 1 else facts.beads
    whole = place.precedes(f"{_IN_ALL}|a piece|an earring|each|per|for") or place.follows(f"{_ALL}|uses|takes|needs|has|have|of")
    near = min((fact, facts.beads, facts.all_beads), key=lambda fact: abs(fact.value - value))
    if abs(near.value - value) <= max(NEAR, near.value / 50):
        return near, True
    return (fact, True) if whole else None


_NOT_MEANT = (Fact(0, ""), False)   # the sentence is about something else


def _beads_of_strand(place: _Place, facts: Facts) -> Verdict:
    value, strands = place.quantity.value, {strand.number: strand for strand in facts.piece.strands}
    named = [int(value_of(match[1])) for match in (re.finditer(_STRAND, place.sentence) if may_name(place.sentence, "strand") else ())]
    if len(named) == 1 and named[0] in strands and place.follows(_HAS):
        strand = strands[named[0]]
        right = {len(strand.all), len(strand.beads)}
        return None if value in right else (Fact(len(strand.all), f"strand {strand.number} has {len(strand.all)}"), True)
    if strands and (re.search(r"\b(?:each|every) strand (?:has|is|of|takes|with) $", place.before)
                    or place.precedes("(?:in|on|to|for) (?:each|every|a) strand|a strand")):
        lengths = {len(strand.all) for strand in strands.values()} | {len(strand.beads) for strand in strands.values()}
        said = f"strands have {min(lengths)} to {max(lengths)}" if len(lengths) > 2 else f"each strand has {max(lengths)}"
        return None if value in lengths else (Fact(max(lengths), said), True)
    for word, pick in (("longest", max), ("shortest", min)):
        if strands and re.search(rf"\b{word}(?: strand)?[^,]*?\b(?:{_HAS})\s+$", place.before):
            found = pick(strands.values(), key=lambda strand: len(strand.all))
            right = {len(found.all), len(found.beads)}
            return None if value in right else (Fact(len(found.all), f"the {word}, strand {found.number}, has {len(found.all)}"), True)
    return _NOT_MEANT


def _beads_of_stitch(place: _Place, facts: Facts) -> Verdict:
    in_stitch = place.precedes("(?:in|to) (?:a|each|every) (?:stitch|set)|(?:a|per) (?:stitch|set)|high")
    has_stitch = re.search(r"\b(?:each|every|a) (?:stitch|set) (?:has|is|of|holds|takes) $|\b(?:stitches|sets) of $", place.before)
    if not (in_stitch or has_stitch):
        return _NOT_MEANT
    return None if place.quantity.value == facts.drop.value else (facts.drop, True)


def _beads_of_loop(place: _Place, facts: Facts) -> Verdict:
    if not re.search(rf"\bloop\b[^,]*?\b(?:{_HAS})\s+$", place.before) and not place.precedes("(?:in|of|for) the loop"):
        return _NOT_MEANT
    counts = [len(hanger.beads) for hanger in facts.piece.hangers if hanger.beads]
    count = counts[0] if counts else 0
    fact = Fact(count, f"the loop has {count}" if count else "the hanger is no loop of beads")
    return None if place.quantity.value in (counts or [0]) else (fact, True)


def _end_beads(place: _Place, facts: Facts) -> Verdict:
    lengths = sorted({len(strand.end) for strand in facts.piece.strands})
    if not lengths or place.quantity.value in lengths or place.follows(r"of the|one of the|first|last of the"):
        return None
    counts = " or ".join(map(str, lengths))
    return Fact(lengths[-1], f"the strands have {counts}"), True


def _of_colour(place: _Place, facts: Facts, name: str) -> Verdict:
    """A count of one colour is a claim only where the sentence is about what is needed."""
    line = facts.line(name)
    if line is None or not place.has("need|needs|needed|uses?|takes?|buy|count out|in all|altogether|in total|a piece|contains?|has|have"):
        return None
    if place.quantity.value in (line.piece, line.total, line.to_buy) or place.quantity.value < FEW or place.has("pick up|strand|row|skip"):
        return None
    return Fact(line.piece, f"a piece has {line.piece}", f"beads.{line.key}.piece"), True


def _agrees(quantity: Quantity, value: float, right: float) -> bool:
    """Whether a measured number is a rounding of the right one: to its own figures, or to fives and tens."""
    step = 10.0 ** -quantity.decimals
    if not quantity.decimals and quantity.value >= 20 and quantity.value % 5 == 0:
        step = 5.0
    return abs(value - right) <= step / 2 * (1 + 1e-9)


_NOT_SIZE = ("tail|tails|weave|weaving|leave|leaving|needles?|guards?|rings?|wires?|hooks?|bugles?|knots?|cut|trim|holes?|thick|away|apart|margin|"
             "drops? of|pliers|tape|mat|hoop|bead stopper|anchor|head pin|pins?|stretch")
_THREAD = "thread|nylon|braid|braided|working length|length of|lengths of|needleful"


def _length(place: _Place, facts: Facts) -> Verdict:
    quantity = place.quantity
    if quantity.between or place.follows(_APPROXIMATE) or place.follows("by|than|every|each") or place.precedes(f"{_CHANGE.replace('of(?! (?:the|this))|', '')}"):
        return None
    if place.has(_THREAD):
        return _thread(place, facts)
    if place.has(_NOT_SIZE) or quantity.unit in ("m", "yard", "foot"):
        return None
    fact, right = _size_meant(place, facts)
    if not right or any(_agrees(quantity, quantity.value, mm * quantity.value / quantity.mm) for mm in right):
        return None
    is_whole = place.has("piece|pieces|earrings?|body|pendant|finished|overall")
    return (fact, False) if is_whole or any(0.7 <= quantity.mm / mm <= 1.4 for mm in right) else None


def _size_meant(place: _Place, facts: Facts) -> tuple[Fact, tuple[float, ...]]:
    """The size that a length in the sentence means, and all that it may rightly be."""
    measured, strands = facts.size, facts.strand_sizes
    fact = {name: Fact(getattr(measured, name), f"{said} {getattr(measured, name):.1f} mm", f"size.{name}") for name, said in (
        ("width", "the width is"), ("body", "the body is"), ("fringe", "the longest strand is"), ("length", "the length is"))}
    if place.precedes("wide|across|broad|in width") or place.has("width"):
        return fact["width"], (measured.width,)
    if not place.precedes("long|high|tall|in length|in height|from") and not place.has("hangs?|measures?|length|height|overall|drop"):
        return fact["length"], ()
    if place.has("strands?|fringe"):
        return fact["fringe"], (measured.fringe, *strands)
    if place.has("body"):
        return fact["body"], (measured.body,)
    if place.has("piece|pieces|earrings?|pendants?|overall"):
        return fact["length"], (measured.length,)
    return fact["length"], (measured.length, measured.body, measured.fringe, *strands)


def _thread(place: _Place, facts: Facts) -> Verdict:
    """A length of thread: the working length, or what a part of the work takes. Tails and the like are no claim."""
    quantity, plan = place.quantity, facts.pattern.thread
    if quantity.mm < 400 or place.has("tail|tails|weave|weaving|double|doubled|spare|extra|left|remains?|spools?|reels?|bobbins?|rolls?|cards?|packs?"):
        return None
    right = (plan.length,) if place.has("working length") else (plan.length, *facts.threads)
    if any(_agrees(quantity, quantity.value, mm * quantity.value / quantity.mm) for mm in right):
        return None
    return Fact(plan.length, f"the working length is {plan.length / 1000:.2f} m", "thread.length" if quantity.unit == "m" else ""), False


def _grams(place: _Place, facts: Facts) -> Verdict:
    quantity, mass, pieces = place.quantity, facts.mass, facts.pattern.pieces
    if place.follows(_APPROXIMATE) or not place.has("weighs?|weight|heavy|light|mass|a piece|each|the pair"):
        return None
    if place.has("packs?|packets?|bags?|tubes?|buy|over|under|up to|than|silver|gold|wire"):
        return None
    right = (mass, mass * pieces)
    if any(_agrees(quantity, quantity.value, grams) or abs(quantity.value - grams) <= grams * 0.06 for grams in right):
        return None
    return Fact(mass, f"the beads of a piece weigh {mass:.2g} g", "mass.piece"), False


_JUDGES: dict[str, Callable[[_Place, Facts], Verdict]] = {
    "row": _rows, "strand": _strands, "stitch": _stitches, "set": _sets, "bead": _beads, "gram": _grams,
    **dict.fromkeys(("mm", "cm", "m", "inch", "yard", "foot"), _length)}
