"""From the fields of a pattern file and the defaults of the book to a Pattern."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from functools import lru_cache

from msgspec.structs import replace

from ..craft.beads import Bead
from ..craft.piece import Hanger, Piece, Row, Stitch
from ..craft.places import places_of
from ..craft.plan import ThreadPlan
from ..craft.size import CHARM
from ..craft.stitches import stitch_named, worked_rows
from ..findings import Finding, Mark
from .book import Book, fields_of, given
from .chart import DrawnBead, DrawnChart, read_chart
from .fringe import End, Entries, hung, mirrored, read_end, read_fringe_chart, read_strands
from .languages import check_language
from .measures import millimetres
from .nodes import compose
from .pattern import Pattern, WrittenHanger
from .reader import FieldPath, Reader
from .runs import read_beads
from .schema import PATTERN, BeadEntry, Body, ChangedBead, Fringe, HangerEntry, Item, PatternFile
from .threads import check_threads, shipped_needles
from .wording import did_you_mean, quoted
from .written_strand import WrittenStrand

_TEXTS = ("title", "summary", "version", "notes")


def read_pattern(text: str, file: str, slug: str, book: Book) -> tuple[Pattern | None, list[Finding]]:
    """Read the text of a pattern file; None with findings where it holds no fields at all."""
    document = compose(text, file)
    reader = Reader(document)
    root = fields_of(document, reader)
    if root is None:
        return None, reader.findings
    written = PATTERN.read(root, reader, ())
    return _Resolver(written, reader, book, reader.mark(root)).resolve(slug, file), reader.findings


class _Resolver:
    """Resolves one file. What cannot be read is None or left out, and has its finding."""

    def __init__(self, written: PatternFile, reader: Reader, book: Book, start: Mark) -> None:
        self.written, self.reader, self.book, self.start = written, reader, book, start
        self.keys = frozenset(written.beads or ())

    def resolve(self, slug: str, file: str) -> Pattern:
        """The pattern."""
        written, book = self.written, self.book
        body = written.body or Body()
        legend = self._legend()
        chart = self._chart(body)
        base = self._base_index(body, chart)
        stitch, hand = body.stitch or "brick", written.hand or book.defaults.hand or "right"
        rows = None if base is None or chart.broken else _rows(stitch, chart, base, hand)
        fringe = written.fringe or Fringe()
        entries = self._strands(written.fringe, rows)
        strands = None if entries is None else hung(entries)
        hangers = self._hangers()
        items = self._items(strands or ())
        whole = None not in (strands, hangers, fringe.hang)
        colourways, translations = self._colourways(legend), given(written.translations)
        check_language(written.language, self.reader, ("language",))
        if translations and not book.broken:
            from .translations import check_translations   # loaded here, because most patterns have none

            check_translations(translations, self.keys, written.colourways or {}, (item.item for item in items),
                               (link.label for link in written.links or () if link), self.reader)
        return Pattern(
            slug, file, **{name: getattr(written, name) or "" for name in _TEXTS},
            level=self._inherited("level"), makes=self._inherited("makes") or "single", mirror=written.mirror or False, front=written.front or False, hand=hand,
            legend=legend, drop=body.drop or 1, base=body.base or "bottom", chart=chart, hang=fringe.hang or "base", fringe_places=len(entries or ()),
            written_strands=strands or (), hangers=hangers or (), findings_list=items,
            thread=self._thread(), photo=written.photo if written.photo and written.photo.file and written.photo.alt else None,
            links=tuple(link for link in written.links or () if link and link.label and link.url),
            steps={name: step for name, step in (written.steps or {}).items() if step}, colourways=colourways, language=written.language or book.language, translations=translations,
            counted=given(written.counted), allowed=given(written.lint and written.lint.allow),
            pack_grams={key: entry.pack if entry and entry.pack else book.pack for key, entry in (written.beads or {}).items()},
            spare_percent=book.spare_percent, least_spare=book.least_spare,
            piece=_piece(stitch, legend, body.drop, hand, rows, fringe.hang, strands, hangers, items) if whole and rows else None,
            marks=self._marks(chart, body, strands))

    def _inherited(self, name: str) -> str:
        """A field that the pattern or the book must give."""
        value = getattr(self.written, name) or getattr(self.book.defaults, name)
        if not value and (name,) not in self.reader.marks and not self.book.broken:
            self.reader.find_at(self.start, "missing-field", f"{name} is missing")
        return value or ""

    def _legend(self) -> dict[str, Bead]:
        beads = {key: self._bead(key, entry) for key, entry in (self.written.beads or {}).items()}
        return {key: bead for key, bead in beads.items() if bead}

    def _bead(self, key: str, entry: BeadEntry | None) -> Bead | None:
        if not entry or not entry.kind:
            return None
        kind = self._kind(entry.kind, ("beads", key, "kind"))
        if not kind or not (entry.name and entry.colour and entry.finish):
            return None
        return Bead(key, entry.name, entry.colour, entry.finish, kind)

    def _kind(self, name: str, path: FieldPath):
        kind = self.book.kinds.get(name)
        if kind is None and not self.book.broken and not self.reader.full:
            self.reader.find_at(self.reader.marks[path], "unknown-kind", f"the bead kind {quoted(name)} is not known",
                                did_you_mean(name, self.book.kinds))
        return kind

    def _colourways(self, legend: Mapping[str, Bead]) -> dict[str, dict[str, Bead]]:
        ways = {}
        for way, beads in (self.written.colourways or {}).items():
            changed = {key: self._changed(key, entry, legend.get(key), ("colourways", way, key)) for key, entry in (beads or {}).items()}
            ways[way] = {key: bead for key, bead in changed.items() if bead}
        return ways

    def _changed(self, key: str, entry: ChangedBead | None, bead: Bead | None, path: FieldPath) -> Bead | None:
        if key not in self.keys:
            self.reader.find_at(self.reader.marks[path], "unknown-bead-key", f"the bead key {key} is not in the legend",
                                "a colourway changes beads of the legend")
        kind = self._kind(entry.kind, path + ("kind",)) if entry and entry.kind else bead.kind if bead else None
        if not (bead and kind and entry and entry.name and entry.colour):
            return None
        return Bead(key, entry.name, entry.colour, entry.finish or bead.finish, kind)

    def _thread(self) -> ThreadPlan:
        """Part by part: the pattern's own, else the book's, else the usual."""
        if not self.book.broken:
            check_threads(self.written.thread, self.book.threads, self.reader, ("thread",))
        plan = ThreadPlan(kinds=self.book.threads, needles=shipped_needles())
        for said in (self.book.defaults.thread, self.written.thread):
            if said:
                plan = replace(plan, body=said.body and said.body.kind or plan.body,
                               fringe=said.fringe and said.fringe.kind or plan.fringe, length=said.length or plan.length)
        return plan

    def _hangers(self) -> tuple[WrittenHanger, ...] | None:
        """The hangers as written; whether their fields fit their kinds is for rules to say."""
        entries = self.written.hanger if ("hanger",) in self.reader.marks else self.book.defaults.hanger or ()
        if entries is None:
            return None
        hangers = [self._hanger(entry, ("hanger",) if ("hanger", 1) not in self.reader.marks else ("hanger", number))
                   for number, entry in enumerate(entries, 1)]
        return None if None in hangers else tuple(hangers)

    def _hanger(self, entry: HangerEntry | None, path: FieldPath) -> WrittenHanger | None:
        if entry is None or entry.kind is None:
            return None
        beads, found = read_beads(entry.beads, self.keys) if entry.beads else ((), [])
        self.reader.add(found)
        said = {name: getattr(entry, name) for name in ("at", "span", "size", "passes") if getattr(entry, name) is not None}
        return None if beads is None else WrittenHanger(Hanger(entry.kind, _keys(beads), **said), beads, path)

    def _chart(self, body: Body) -> DrawnChart:
        if None in (body.chart, body.drop, body.stitch):
            return DrawnChart(broken=True)
        stitch = stitch_named(body.stitch)
        if body.drop not in stitch.DROPS:
            self.reader.find_at(self.reader.marks["body", "drop"], "unknown-choice",
                                f"body.drop is {body.drop}, but {stitch.NAME} has one bead a stitch", "leave drop out")
            return DrawnChart(broken=True)
        if stitch.LYING:
            from .lying import read_lying_chart   # loaded here, because most bodies stand

            chart, found = read_lying_chart(body.chart, body.drop)
        else:
            chart, found = read_chart(body.chart, body.drop)
        self.reader.add(found)
        return chart

    def _base_index(self, body: Body, chart: DrawnChart) -> int | None:
        """Index of the base row in the chart's rows, top row first."""
        if not chart.rows or body.base is None:
            return None
        index = chart.base_index(body.base)
        if index is None and not chart.broken:
            self.reader.find_at(self.reader.marks["body", "base"], "no-such-row",
                                f"body.base is row {body.base} from the bottom, but the chart has {len(chart.rows)} rows")
        return index

    def _items(self, strands: tuple[WrittenStrand, ...]) -> tuple[Item, ...]:
        """Findings; of one whose number is not written there are as many as the strands take, and one at least."""
        taken = Counter(charm.name for strand in strands for charm in strand.charms)
        own = self.written.findings is not None
        read = self.written.findings if own else self.book.defaults.findings
        items = []
        for number, item in enumerate(read or (), 1):
            wrong = own and ("findings", number, "each") in self.reader.marks
            if item and item.item and (item.each or not wrong):
                items.append(Item(item.item, item.size, item.each or max(1, taken[item.item])))
        return tuple(items)

    def _strands(self, fringe: Fringe | None, rows: tuple[Row, ...] | None) -> Entries | None:
        if fringe is None:
            return None if ("fringe",) in self.reader.marks else ()
        end, found = read_end(fringe.end, self.keys)
        self.reader.add(found)
        if fringe.strands and fringe.chart:
            self.reader.find_at(fringe.chart.whole, "needless-field", "the fringe is given twice, by strands and by a chart", "keep one of them")
            return None
        if fringe.chart:
            strands, found = read_fringe_chart(fringe.chart, end or End())
        elif fringe.strands:
            strands, found = read_strands([entry for entry in fringe.strands if entry], end or End(), self.keys)
        else:
            return self._no_strands()
        self.reader.add(found)
        if strands is None or end is None or fringe.mirror is None or None in (fringe.strands or ()):
            return None
        if not fringe.mirror:
            return strands
        strands, found = mirrored(strands, len(places_of(rows, fringe.hang)) if rows and fringe.hang else None)
        self.reader.add(found)
        return None if found else strands

    def _no_strands(self) -> None:
        if not any(("fringe", name) in self.reader.marks for name in ("strands", "chart")):
            self.reader.find_at(self.reader.marks["fringe",], "missing-field", "fringe.strands is missing",
                                "list the strands, or draw them as chart:, or delete fringe:")
        elif self.written.fringe.strands == ():
            self.reader.find_at(self.reader.marks["fringe", "strands"], "empty-value", "fringe.strands is empty", "list the strands, or delete fringe:")
        return None

    def _marks(self, chart: DrawnChart, body: Body, strands: tuple[WrittenStrand, ...] | None) -> dict[tuple, Mark]:
        """Places of fields, and of rows and strands by their numbers."""
        marks = dict(self.reader.marks)
        if body.base is not None:
            marks |= {("row", number): row.mark for number, row in zip(chart.numbers(body.base), chart.rows)}
        return marks | {("strand", strand.place): strand.mark for strand in strands or ()}


def _rows(stitch: str, chart: DrawnChart, base: int, hand: str) -> tuple[Row, ...] | None:
    """The rows of a chart; None where a set is ragged."""
    if any(len({tuple(bead.at for bead in line) for line in row.lines}) > 1 for row in chart.rows):
        return None
    order = 1 if stitch_named(stitch).LYING else -1   # a set that stands is drawn from the top and worked from below
    drawn = [[_stitch(beads[0].at, _keys(beads[::order])) for beads in zip(*row.lines)] for row in reversed(chart.rows)]
    return worked_rows(stitch, drawn, len(drawn) - 1 - base, hand)


def _piece(stitch: str, legend: Mapping[str, Bead], drop: int, hand: str, rows: tuple[Row, ...], hang: str, strands: tuple[WrittenStrand, ...],
           hangers: tuple[WrittenHanger, ...], items: tuple[Item, ...]) -> Piece | None:
    """The piece; None where a bead is not in the legend."""
    keys = {key for row in rows for each in row.stitches for key in each.beads}
    keys |= {bead.key for strand in strands for bead in strand.every}
    keys |= {bead.key for hanger in hangers for bead in hanger.beads}
    if not keys <= set(legend):
        return None
    carrying = tuple(written.hanger for written in hangers if written.hanger.kind != "none")
    return Piece(legend, drop, hand, rows, tuple(strand.made for strand in strands), carrying, stitch, hang,
                 {item.item: millimetres(item.size) or CHARM for item in items})


@lru_cache(maxsize=1 << 16)
def _stitch(at: int, keys: tuple[str, ...]) -> Stitch:
    """One stitch for all equal ones: a book of a thousand patterns has half a million, of a hundred or two kinds."""
    return Stitch(at, keys)


def _keys(beads: tuple[DrawnBead, ...]) -> tuple[str, ...]:
    return tuple(bead.key for bead in beads)
