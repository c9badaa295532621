"""Numbers with a unit in prose: "13 stitches", "twenty-one rows", "a dozen strands", "1.4 m"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from msgspec import Struct

_ONES = "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
_TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split()
VALUES = {word: value for value, word in enumerate(_ONES, 1)} | {word: 10 * value for value, word in enumerate(_TENS, 2)}
VALUES |= {"hundred": 100, "dozen": 12}

_WORD = rf"(?:{'|'.join(_TENS)})(?:[-\s](?:{'|'.join(_ONES[:9])}))?|(?:(?:a|one)\s+)?(?:hundred|dozen)|{'|'.join(sorted(_ONES, key=len, reverse=True))}"
NUMBER = rf"[0-9]{{1,3}}(?:,[0-9]{{3}})+|[0-9]+(?:\.[0-9]+)?|{_WORD}"

# What is counted or measured, by the words for it.
UNITS = {"stitch": "stitch(?:es)?", "set": "sets?", "row": "rows?", "strand": "strands?", "bead": "beads?", "gram": "grams?|g",
         "m": "metres?|meters?|m", "cm": "centimetres?|centimeters?|cm", "mm": "millimetres?|millimeters?|mm",
         "inch": r"inch(?:es)?|in(?=\s*(?:[,.;:)]|$|wide|long|high|tall|across|of\b|each\b))", "yard": "yards?|yd", "foot": "feet|foot|ft"}
IN_MM = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "inch": 25.4, "foot": 304.8, "yard": 914.4}   # exact
_UNIT = "|".join(f"(?P<{name}>{words})" for name, words in UNITS.items())

_NUMBER_WORDS = frozenset(VALUES)
_UNIT_WORDS = frozenset("stitch stitches set sets row rows strand strands bead beads gram grams g metre metres meter meters m centimetre centimetres "
                        "centimeter centimeters cm millimetre millimetres millimeter millimeters mm inch inches in yard yards yd feet foot ft".split())
_WORKED, _COMPARED = frozenset("stitch stitches set sets bead beads".split()), frozenset("shorter longer wider narrower".split())
_BREAKS = frozenset("of and or to in on at by for from with the a an as is are was were than that which if so but then up down it its "
                    "each every per into out over under through round times time has have".split())
_PARTING = _BREAKS | _NUMBER_WORDS
_RANGE_BEFORE, _RANGE_AFTER = ("to", "or", "and", "-", "–", "—"), ("to ", "or ", "-", "–")


class Quantity(Struct, frozen=True):
    """A number with its unit, and where it stands in its sentence."""

    value: float
    decimals: int              # figures after the point
    unit: str                  # one of UNITS
    between: tuple[str, ...]   # words between the number and the unit, in small letters
    start: int                 # of the number
    end: int                   # after the unit
    number: str                # as written

    @property
    def mm(self) -> float:
        """A length in millimetres."""
        return self.value * IN_MM[self.unit]


@lru_cache(maxsize=None)
def _quantity() -> re.Pattern[str]:
    """Made when a text first needs it. Up to two words may stand between a number and its unit ("60 chalk white beads")."""
    return re.compile(rf"(?<![\w.,/#-])(?P<number>{NUMBER})(?P<gap>[\s-]*?(?:(?<![0-9])\s|(?<=[0-9])[\s-]|(?<=[0-9])(?=[a-z]))[\s-]*)"
                      rf"(?P<between>(?:[a-z][a-z-]*\s+){{0,2}}?)(?:{_UNIT})(?![\w/])")


def _counted(sentence: str) -> Iterator[re.Match]:
    """Every number that no word parts from its unit: in "one of two rows" the two."""
    match = _quantity().search(sentence)
    while match:
        parted = not _PARTING.isdisjoint(word.partition("-")[0] for word in match["between"].split())
        if not parted:
            yield match
        match = _quantity().search(sentence, match.end("number") if parted else match.end())


def may_count(text: str) -> bool:
    """Whether a text may hold a number with a unit: a quick look, which most texts do not pass. "One stitch shorter" counts nothing."""
    written = text.lower().replace("-", " ").split()
    words = [*map(_bare, written), "", ""]
    for index, after in enumerate([*written[1:], ""]):
        word = words[index]
        if after in _WORKED and words[index + 2] in _COMPARED:
            continue
        if word[:1].isdigit() and not word.isdigit() or (word.isdigit() or word in _NUMBER_WORDS) and _UNIT_WORDS.intersection(words[index + 1:index + 4]):
            return True
    return False


def may_name(text: str, *kinds: str) -> bool:
    """Whether a number may follow one of these words in a text, as in "row 3" and "strand twelve": a quick look again."""
    words = _words(text)
    return any(word in kinds and (after[:1].isdigit() or after in _NUMBER_WORDS) for word, after in zip(words, words[1:]))


def _words(text: str) -> list[str]:
    return list(map(_bare, text.lower().replace("-", " ").split()))


def _bare(word: str) -> str:
    return word.strip(".,;:!?()*_")


def quantities(sentence: str) -> Iterator[Quantity]:
    """Every number with a unit in a sentence in small letters. Ranges and choices ("2 or 3 rows", "10 to 12 mm") are none."""
    for match in _counted(sentence):
        between = tuple(match["between"].split())
        if not _is_range(sentence, match):
            unit = next(name for name in UNITS if match[name])
            number = match["number"]
            yield Quantity(value_of(number), len(number.partition(".")[2]), unit, between, match.start(), match.end(), number)


def _is_range(sentence: str, match: re.Match) -> bool:
    before, after = sentence[:match.start()].rstrip(), sentence[match.end():]
    begun, goes_on = before.endswith(_RANGE_BEFORE), after.lstrip().startswith(_RANGE_AFTER)
    return bool(begun and re.search(rf"(?:\b(?:{NUMBER})\s*(?:to|or|and|-|–|—)|[–—])$", before)
                or goes_on and re.match(rf"\s*(?:to|or|-|–)\s*(?:{NUMBER})\b", after))


def value_of(number: str) -> float:
    """The value of a number in figures or in words."""
    if number[0].isdigit():
        return float(number.replace(",", ""))
    parts = [part for part in re.split(r"[-\s]+", number.lower()) if part != "a"]
    values = [VALUES[part] for part in parts]
    return float(values[-1] if values[-1] in (100, 12) else sum(values))
