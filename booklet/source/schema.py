"""The format of a pattern file and of the book file, as forms that say what each field holds.

Everything else about the format is read from here: the reading, the JSON Schemas for editors, the format page.
"""

from __future__ import annotations

from collections.abc import Mapping

from ..craft.beads import FINISHES, SHAPES
from ..craft.piece import GUARD_SPAN, HANGER_PASSES, RING_SIZE
from ..craft.places import HANGS
from ..craft.stitches import STITCHES
from ..craft.techniques import LEVELS, TECHNIQUES
from .records import Form, Many, Named, OneOrMany, OrText, Record, entry
from .strand_value import StrandEntry, StrandValue
from .values import (LANGUAGE, LINK, SLUG, VERSION, BaseRow, BookNumber, Choice, Colour, FileName, Flag, Number, OrWord, PageSize, Shaped,
                     Source, Text, Whole, grams, mm, percent, points)
from .written import Written

KEY = "[A-Za-z0-9]"
LEVEL = Choice(LEVELS)
HAND = Choice(("right", "left"))
MAKES = Choice(("pair", "single"))
COUNTED = ("base", "rows", "strands", "beads")
SEVERITIES = ("error", "warning", "note", "off")
MARKDOWN = Text(20_000, lines=True)
CHART = ("the drawing, top row first: a bar, then spaces and bead keys, neighbours of a row two characters apart. "
         "brick: each row one character to the side of the row under it; a set stands upright, one line for each of its beads. "
         "peyote: the same drawing, a column of stitches to each character, a line to each row; a set lies along its line, its beads without a space "
         "between them and as many spaces to the next set. "
         "square and loom: beads straight above one another")


class BeadEntry(Form):
    """One bead of the legend."""

    name: str | None = entry(Text(60), "what the colour is called", required=True)
    colour: str | None = entry(Colour(), 'its colour on screen and in print, in quotes: "#3d5a80"', required=True)
    finish: str | None = entry(Choice(FINISHES), "how its surface looks", required=True)
    kind: str | None = entry(Text(60), "shape and size, such as cylinder 11/0", required=True)
    pack: float | None = entry(grams("5 g"), "how much one pack of it holds")


class ChangedBead(Form):
    """One bead of a colourway: what differs from the legend."""

    name: str | None = entry(Text(60), "what the colour is called", required=True)
    colour: str | None = entry(Colour(), "its colour", required=True)
    finish: str | None = entry(Choice(FINISHES), "how its surface looks; that of the legend if left out")
    kind: str | None = entry(Text(60), "shape and size; that of the legend if left out")


class Body(Form):
    """The woven part."""

    stitch: str | None = entry(Choice(STITCHES), "the stitch it is worked in: brick, peyote, square or loom", "brick")
    drop: int | None = entry(Whole(1, 4), "beads in a stitch; 1 in square stitch and loom work", 1)
    base: str | int | None = entry(BaseRow(), "which row of the chart is row 1: bottom, widest, or counted from the bottom; all but brick stitch begin at the bottom", "bottom")
    chart: Written | None = entry(Source(), CHART, required=True)


class Fringe(Form):
    """The strands under the body."""

    hang: str | None = entry(Choice(HANGS), "where it hangs: under row 1, under the lowest row, along the lower edge, or on the thread "
                             "bridges under the lowest row", "base")
    end: Written | None = entry(Source(), "end beads of every strand; a strand's own, after >, win")
    mirror: bool | None = entry(Flag(), "the strands are written to the middle one and mirrored", False)
    strands: tuple[StrandEntry | None, ...] | None = entry(
        Many(StrandValue(), 400), "left to right as it hangs, one for each place, such as 3(2W 1B) 4W > 1D; ~ leaves a place empty")
    chart: Written | None = entry(Source(), "or drawn: one column per strand, blank where a strand has ended")


class HangerEntry(Form):
    """What carries the piece."""

    kind: str | None = entry(Choice(("guard", "ring", "loop", "none")), "a thread guard, a closed ring, a loop of beads, or nothing", required=True)
    beads: Written | None = entry(Source(), "the beads of a loop, such as 7W")
    at: str | None = entry(Choice(("left", "middle", "right")), "where on the top row it sits", "middle")
    span: float | None = entry(mm("3 mm", 0.5, 100), f"of a guard, from leg to leg; {GUARD_SPAN:g} mm if left out")
    size: float | None = entry(mm("4 mm", 1, 50), f"of a ring, across; {RING_SIZE:g} mm if left out")
    passes: int | None = entry(Whole(1, 12), "of the thread through it", HANGER_PASSES)


class Item(Form):
    """A finding in the trade's sense: an ear wire, a thread guard and the like."""

    item: str = entry(Text(80), "what it is", "", required=True)
    size: str = entry(Text(40), "its size, as a shop gives it", "")
    each: int = entry(Whole(1, 1000), "how many a piece takes; where strands take some of them and nothing is written, as many as these")


class ThreadName(Form):
    """One thread."""

    kind: str | None = entry(Text(60), "the thread, such as nylon D", required=True)


class ThreadEntry(Form):
    """Which thread a maker works with."""

    body: ThreadName | None = entry(Record(ThreadName), "thread of the body")
    fringe: ThreadName | None = entry(Record(ThreadName), "thread of the fringe")
    length: float | None = entry(mm("1.4 m", 400, 10_000), "a comfortable working length")


class Photo(Form):
    """A photograph of the finished piece."""

    file: str = entry(FileName("photos/cloud-shadow.jpg"), "the file, from the folder patterns/ on", "", required=True)
    alt: str = entry(Text(500), "what it shows, for those who cannot see it", "", required=True)


class Link(Form):
    """A web address, printed as text and as a QR code."""

    label: str = entry(Text(120), "what stands there", "", required=True)
    url: str = entry(LINK, "its address", "", required=True)


class StepText(Form):
    """Markdown of the author's for a standard step: instead of it, before it, or after it."""

    text: str = entry(MARKDOWN, "Markdown that replaces the step's text", "")
    before: str = entry(MARKDOWN, "Markdown before the step's text", "")
    after: str = entry(MARKDOWN, "Markdown after the step's text", "")


def _step_ids() -> tuple[str, ...]:
    """The standard steps; asked for late, because hardly any reading of a pattern needs to know them."""
    from ..craft.steps import STEP_IDS

    return STEP_IDS


_HANGERS = OneOrMany(Record(HangerEntry), 3)
_KEYED = {"shape": KEY, "words": "a bead key is one letter or digit"}
_RULES = {"shape": "[a-z]+(-[a-z]+)*", "words": "the name of a rule has small letters and hyphens"}
_STEPS = Named(OrText(Record(StepText), "text", MARKDOWN), "[a-z]+(-[a-z]+)*", "the name of a step has small letters and hyphens", _step_ids)
_WAYS = Named(Named(Record(ChangedBead), **_KEYED), r"\S(.{0,38}\S)?", "the name of a colourway is a short text", most=20)


_ITEM = {"shape": r"[^\s,;\[\]]([^,;\[\]]*[^\s,;\[\]])?", "words": "a finding is named without commas, semicolons and brackets"}
_LANGUAGES = {"shape": LANGUAGE.pattern, "words": "a language is named by a tag such as de"}


class WayWords(Form):
    """A colourway in another language."""

    name: str | None = entry(Text(40), "what the colourway is called")
    beads: Mapping[str, str | None] | None = entry(Named(Text(60), **_KEYED, most=62), "what its colours are called, by bead key")


class PatternWords(Form):
    """The texts of a pattern in another language. What is left out is printed as it stands, and marked as being in its own language."""

    title: str | None = entry(Text(120), "name of the pattern")
    summary: str | None = entry(Text(500), "one sentence for the contents page and for a shop listing")
    beads: Mapping[str, str | None] | None = entry(Named(Text(60), **_KEYED, most=62), "what the colours are called, by bead key")
    findings: Mapping[str, str | None] | None = entry(Named(Text(80), **_ITEM), "what the findings are called, by their item")
    photo: str | None = entry(Text(500), "what the photograph shows")
    links: Mapping[str, str | None] | None = entry(Named(Text(120), r"\S(.{0,118}\S)?", "a link is named by its label"), "what stands at the links, by their label")
    notes: str | None = entry(MARKDOWN, "Markdown; {{ base.stitches }} and friends are filled in")
    steps: Mapping[str, StepText | None] | None = entry(_STEPS, "Markdown that replaces or adds to a standard step")
    colourways: Mapping[str, WayWords | None] | None = entry(
        Named(Record(WayWords), r"\S(.{0,38}\S)?", "the name of a colourway is a short text", most=20), "the colourways, by name")


class BookWords(Form):
    """The texts of the book in another language."""

    title: str | None = entry(Text(200), "title of the book")
    subtitle: str | None = entry(Text(300), "what stands under the title")
    edition: str | None = entry(Text(100), "such as First edition")
    findings: Mapping[str, str | None] | None = entry(Named(Text(80), **_ITEM), "what findings are called, by their item, where a pattern does not say")
    copyright: str | None = entry(MARKDOWN, "who holds the rights")
    licence: str | None = entry(MARKDOWN, "what a buyer may do, in plain words")


class PatternLint(Form):
    """What lint is told about one pattern."""

    allow: Mapping[str, str | None] | None = entry(Named(Text(300), **_RULES), "rules that do not hold here, each with the reason")


class BookLint(Form):
    """What lint is told about a whole book."""

    severity: Mapping[str, str | None] | None = entry(
        Named(Choice(SEVERITIES), **_RULES), "how much the findings of a rule matter; off: they are not shown")


class PatternFile(Form):
    """patterns/SLUG.yaml as written."""

    title: str | None = entry(Text(120), "name of the pattern", required=True)
    summary: str | None = entry(Text(500), "one sentence for the contents page and for a shop listing", required=True)
    version: str | None = entry(VERSION, "rises whenever the printed pattern changes", required=True)
    level: str | None = entry(LEVEL, "how much a maker must know already; the book may give it")
    makes: str | None = entry(MAKES, "what comes of it; the book may give it")
    mirror: bool | None = entry(Flag(), "the second piece of the pair is the first turned over", False)
    front: bool | None = entry(Flag(), "the piece has a front, so it cannot be turned over: words of the mirrored piece are printed too", False)
    hand: str | None = entry(HAND, "right, if nothing says otherwise: row 1 runs left to right; left: right to left")
    beads: Mapping[str, BeadEntry | None] | None = entry(Named(Record(BeadEntry), **_KEYED, most=62), "the legend, in the order in which it prints", required=True)
    body: Body | None = entry(Record(Body), "the woven part", required=True)
    fringe: Fringe | None = entry(Record(Fringe), "the strands under it")
    hanger: tuple[HangerEntry | None, ...] | None = entry(_HANGERS, "what carries the piece; a list where there are several")
    findings: tuple[Item | None, ...] | None = entry(Many(Record(Item), 50), "ear wires and other findings, counted for one piece")
    thread: ThreadEntry | None = entry(Record(ThreadEntry), "thread of body and fringe")
    photo: Photo | None = entry(Record(Photo), "a photograph of the finished piece")
    links: tuple[Link | None, ...] | None = entry(Many(Record(Link), 20), "printed as text and as a QR code")
    notes: str | None = entry(MARKDOWN, "Markdown; {{ base.stitches }} and friends are filled in")
    steps: Mapping[str, StepText | None] | None = entry(_STEPS, "Markdown that replaces or adds to a standard step")
    colourways: Mapping[str, Mapping[str, ChangedBead | None] | None] | None = entry(_WAYS, "the same chart in other bead colours")
    counted: Mapping[str, int | None] | None = entry(
        Named(Whole(), "", "base, rows, strands and beads can be counted", lambda: COUNTED), "what the author counted by hand, to compare")
    language: str | None = entry(LANGUAGE, "of the texts; that of the book if left out")
    translations: Mapping[str, PatternWords | None] | None = entry(Named(Record(PatternWords), **_LANGUAGES), "the texts in other languages, by language")
    lint: PatternLint | None = entry(Record(PatternLint), "what lint is told about this pattern")


class PageEntry(Form):
    """The page of the printed book."""

    size: tuple[float, float] | None = entry(PageSize(), "trim size: a name, or width x height")
    bleed: float | None = entry(mm("3 mm", 0, 30), "how far pictures run over the trimmed edge")
    gutter: float | None = entry(mm("4 mm", 0, 30), "what the inside margin gains")


BY_PAGES = "by pages"


class EditionEntry(Form):
    """One edition: how the printed book of this name differs from the page that the book file gives."""

    size: tuple[float, float] | None = entry(PageSize(), "trim size: a name, or width x height")
    bleed: float | None = entry(mm("3 mm", 0, 30), "how far pictures run over the trimmed edge")
    gutter: float | str | None = entry(OrWord(mm("4 mm", 0, 30), BY_PAGES), "what the inside margin gains; by pages: as much as so many pages need")
    marks: bool | None = entry(Flag(), "crop marks outside the trimmed page", False)
    start: str | None = entry(Choice(("left", "right", "any")), "the side on which patterns start", "left")
    type: float | None = entry(points("9.6 pt", 7, 36), "size of the text")
    leading: float | None = entry(Number(3), "from line to line, in sizes of the text")
    large: bool | None = entry(Flag(), "large print: 18 pt without serifs, and charts to match over as many pages as they take", False)
    grey: bool | None = entry(Flag(), "without colour", False)
    hand: str | None = entry(HAND, "the hand for which every pattern is written")
    screen: bool | None = entry(Flag(), "for a phone: narrow pages, one side, links", False)
    sheets: str | None = entry(Choice(("none", "two-up")), "two-up: two pages on a side, to fold and staple", "none")
    paper: float | None = entry(mm("0.1 mm", 0.02, 2), "thickness of a sheet of the inside; a cover of its own is then made")
    output: str | None = entry(Choice(("PDF/UA-1", "PDF/A-2", "PDF/X-4")), "the standard that the file keeps to", "PDF/UA-1")
    language: str | None = entry(LANGUAGE, "the language in which it is printed; that of the book if left out")
    profile: str | None = entry(FileName("profiles/press.icc"), "colour profile of the press, from the folder patterns/ on; PDF/X-4 needs it")


class Defaults(Form):
    """What patterns inherit where they say nothing."""

    level: str | None = entry(LEVEL, "how much a maker must know already")
    makes: str | None = entry(MAKES, "what comes of a pattern")
    hand: str | None = entry(HAND, "right: row 1 runs left to right; left: right to left")
    hanger: tuple[HangerEntry | None, ...] | None = entry(_HANGERS, "what carries the piece; a list where there are several")
    findings: tuple[Item | None, ...] | None = entry(Many(Record(Item), 50), "ear wires and other findings, counted for one piece")
    thread: ThreadEntry | None = entry(Record(ThreadEntry), "thread of body and fringe")


class KindEntry(Form):
    """A bead kind of the book's own; one of a known name changes only what it says."""

    shape: str | None = entry(Choice(SHAPES), "its shape")
    diameter: float | None = entry(mm("1.6 mm", 0.3, 50), "across the hole's axis")
    length: float | None = entry(mm("1.3 mm", 0.3, 50), "along the hole's axis")
    hole: float | None = entry(mm("0.8 mm", 0.1, 50), "diameter of the hole")
    per_gram: float | None = entry(Number(5000), "beads in a gram, if published")
    density: float | None = entry(Number(25), "g/cm3, where no count is published; glass has 2.5")
    source: str | None = entry(Text(300), "where the figures come from")


class ThreadKindEntry(Form):
    """A thread kind of the book's own; one of a known name changes only what it says."""

    diameter: float | None = entry(mm("0.2 mm", 0.02, 3), "as its maker states or as measured; a strength in pounds does not tell it")
    material: str | None = entry(Text(60), "what it is made of")
    spool: float | None = entry(mm("45 m", 1000, 10_000_000), "how much thread is on one spool")
    source: str | None = entry(Text(300), "where the figures come from")


class NeedleEntry(Form):
    """A size of beading needle."""

    diameter: float | None = entry(mm("0.38 mm", 0.1, 3), "its thickness", required=True)
    thread: float | None = entry(mm("0.21 mm", 0.02, 3), "the thickest thread that it is usually sold for", required=True)
    eye: float | None = entry(mm("0.3 mm", 0.02, 3), "the thickest thread that can be forced through its eye", required=True)
    source: str | None = entry(Text(300), "where the figures come from")


class Spare(Form):
    """What to buy over what is needed."""

    percent: float | None = entry(percent("10 %"), "of each colour")
    least: int | None = entry(Whole(0, 1000), "beads of each colour at least", 0)


_ASKED = Many(Choice(tuple(TECHNIQUES)), len(TECHNIQUES))


class LevelsEntry(Form):
    """At which level the book places a technique, where that is not the usual one."""

    beginner: tuple[str | None, ...] | None = entry(_ASKED, "techniques that suit a beginner")
    intermediate: tuple[str | None, ...] | None = entry(_ASKED, "techniques for those who have made a few pieces")
    advanced: tuple[str | None, ...] | None = entry(_ASKED, "techniques for experienced makers")


_PAGES = Many(Shaped(r"[a-z0-9]+(-[a-z0-9]+)*(\.md)?", "bad-name", "the name of a page in patterns/pages", 80), 50)
THREADS = Named(Record(ThreadKindEntry), r"\S(.{0,58}\S)?", "the name of a thread kind is a short text")
NEEDLES = Named(Record(NeedleEntry), "[0-9]{1,2}", "the size of a needle is a number")
KINDS = Named(Record(KindEntry), r"\S(.{0,58}\S)?", "the name of a bead kind is a short text")


EDITIONS = Named(Record(EditionEntry), "(?!all$)[a-z0-9]+(-[a-z0-9]+)*", "the name of an edition has small letters, digits and single hyphens, and is not all", most=50)


class BookFile(Form):
    """patterns/book.yaml as written."""

    title: str | None = entry(Text(200), "title of the book", required=True)
    subtitle: str | None = entry(Text(300), "what stands under the title")
    author: str | None = entry(Text(200), "who designed the patterns")
    publisher: str | None = entry(Text(200), "who publishes them")
    year: int | None = entry(Whole(1000, 9999), "of this edition")
    edition: str | None = entry(Text(100), "such as First edition")
    language: str | None = entry(LANGUAGE, "of the texts, and in which it is printed", "en")
    copyright: str | None = entry(MARKDOWN, "who holds the rights")
    licence: str | None = entry(MARKDOWN, "what a buyer may do, in plain words")
    contact: str | None = entry(Text(200), "where errors are reported")
    order: tuple[str | None, ...] | None = entry(Many(SLUG, 5000), "names of the pattern files, without .yaml")
    front: tuple[str | None, ...] | None = entry(_PAGES, "Markdown files in patterns/pages/ before the patterns")
    back: tuple[str | None, ...] | None = entry(_PAGES, "Markdown files in patterns/pages/ after them")
    page: PageEntry | None = entry(Record(PageEntry), "the printed page")
    editions: Mapping[str, EditionEntry | None] | None = entry(EDITIONS, "other ways in which the book is bound, by name")
    isbn: str | None = entry(BookNumber(), "of the printed book; its barcode stands on the cover")
    spare: Spare | None = entry(OrText(Record(Spare), "percent", percent("10 %")), "what to buy over what is needed")
    pack: float | None = entry(grams("5 g"), "what a pack of beads holds")
    levels: LevelsEntry | None = entry(Record(LevelsEntry), "which techniques are for whom, where the book differs from the usual")
    defaults: Defaults | None = entry(Record(Defaults), "what patterns inherit")
    kinds: Mapping[str, KindEntry | None] | None = entry(KINDS, "bead kinds of the book's own")
    translations: Mapping[str, BookWords | None] | None = entry(Named(Record(BookWords), **_LANGUAGES), "the texts in other languages, by language")
    lint: BookLint | None = entry(Record(BookLint), "what lint is told about the book")
    threads: Mapping[str, ThreadKindEntry | None] | None = entry(THREADS, "thread kinds of the book's own")


PATTERN, BOOK = Record(PatternFile), Record(BookFile)
