"""From the fields of a pattern file and the defaults of the book to a Pattern."""

from __future__ import annotations

from collections.abc import Mapping

from ..craft.beads import Bead
from ..craft.piece import Hanger, Piece, Stitch, Strand
from ..craft.plan import ThreadPlan
from ..craft.stitches import STITCHES, worked_rows
from ..findings import Finding, Mark
from .book import Book, fields_of
from .chart import DrawnBead, DrawnChart, read_chart
from .lying import read_lying_chart
from .fringe import Strands, mirrored, read_fringe_chart, read_strands
from .nodes import compose
from .pattern import Pattern
from .reader import FieldPath, Reader
from .runs import read_beads
from .schema import PATTERN, BeadEntry, Body, ChangedBead, Fringe, HangerEntry, PatternFile
from .wording import did_you_mean, quoted

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
        strands = self._strands(written.fringe, chart, base)
        hanger_beads, hanger = self._hanger()
        hand = written.hand or book.defaults.hand or "right"
        whole = None not in (base, strands, hanger) and not chart.broken
        return Pattern(
            slug, file, **{name: getattr(written, name) or "" for name in _TEXTS},
            level=self._inherited("level"), makes=self._inherited("makes") or "single", mirror=written.mirror or False, hand=hand,
            legend=legend, drop=body.drop or 1, base=body.base or "bottom", chart=chart, written_strands=strands or (),
            hanger_beads=hanger_beads, hanger=hanger or Hanger(),
            findings_list=tuple(item for item in written.findings or book.defaults.findings or () if item and item.item and item.each),
            thread=self._thread(), photo=written.photo if written.photo and written.photo.file and written.photo.alt else None,
            links=tuple(link for link in written.links or () if link and link.label and link.url),
            steps={name: step for name, step in (written.steps or {}).items() if step}, colourways=self._colourways(legend),
            counted={name: count for name, count in (written.counted or {}).items() if count is not None},
            pack_grams={key: entry.pack if entry and entry.pack else book.pack for key, entry in (written.beads or {}).items()},
            spare_percent=book.spare_percent, least_spare=book.least_spare,
            piece=_piece(body.stitch or "brick", legend, body.drop, hand, chart, base, strands, hanger) if whole else None,
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
        plan = ThreadPlan()
        for given in (self.book.defaults.thread, self.written.thread):
            if given:
                plan = ThreadPlan(given.body and given.body.kind or plan.body, given.fringe and given.fringe.kind or plan.fringe,
                                  given.length or plan.length)
        return plan

    def _hanger(self) -> tuple[tuple[DrawnBead, ...], Hanger | None]:
        """Beads with their places, and the hanger as written; whether the two fit is for rules to say."""
        entry = self.written.hanger or self.book.defaults.hanger or HangerEntry("none")
        if ("hanger",) in self.reader.marks and not self.written.hanger or entry.kind is None:
            return (), None
        beads, found = read_beads(entry.beads, self.keys) if entry.beads else ((), [])
        self.reader.add(found)
        return beads or (), None if beads is None else Hanger(entry.kind, _keys(beads))

    def _chart(self, body: Body) -> DrawnChart:
        if None in (body.chart, body.drop, body.stitch):
            return DrawnChart(broken=True)
        stitch = STITCHES[body.stitch]
        if body.drop not in stitch.DROPS:
            self.reader.find_at(self.reader.marks["body", "drop"], "unknown-choice",
                                f"body.drop is {body.drop}, but {stitch.NAME} has one bead a stitch", "leave drop out")
            return DrawnChart(broken=True)
        chart, found = (read_lying_chart if stitch.LYING else read_chart)(body.chart, body.drop)
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

    def _strands(self, fringe: Fringe | None, chart: DrawnChart, base: int | None) -> Strands | None:
        if fringe is None:
            return None if ("fringe",) in self.reader.marks else ()
        end, found = read_beads(fringe.end, self.keys) if fringe.end else ((), [])
        self.reader.add(found)
        if fringe.strands and fringe.chart:
            self.reader.find_at(fringe.chart.whole, "needless-field", "the fringe is given twice, by strands and by a chart", "keep one of them")
            return None
        if fringe.chart:
            strands, found = read_fringe_chart(fringe.chart, end or ())
        elif fringe.strands:
            strands, found = read_strands([text for text in fringe.strands if text], end or (), self.keys)
        else:
            return self._no_strands()
        self.reader.add(found)
        if strands is None or end is None or fringe.mirror is None or None in (fringe.strands or ()):
            return None
        stitches = None if base is None else len(chart.rows[base].lines[0])
        return mirrored(strands, stitches) if fringe.mirror else strands

    def _no_strands(self) -> Strands | None:
        if not any(("fringe", name) in self.reader.marks for name in ("strands", "chart")):
            self.reader.find_at(self.reader.marks["fringe",], "missing-field", "fringe.strands is missing",
                                "list the strands, or draw them as chart:, or delete fringe:")
        elif self.written.fringe.strands == ():
            self.reader.find_at(self.reader.marks["fringe", "strands"], "empty-value", "fringe.strands is empty", "list the strands, or delete fringe:")
        return None

    def _marks(self, chart: DrawnChart, body: Body, strands: Strands | None) -> dict[tuple, Mark]:
        """Places of fields, and of rows and strands by their numbers."""
        marks = dict(self.reader.marks)
        if body.base is not None:
            marks |= {("row", number): row.mark for number, row in zip(chart.numbers(body.base), chart.rows)}
        return marks | {("strand", number): strand.mark for number, strand in enumerate(strands or (), 1)}


def _piece(stitch: str, legend: Mapping[str, Bead], drop: int, hand: str, chart: DrawnChart, base: int, strands: Strands, hanger: Hanger) -> Piece | None:
    """The piece; None where a set is ragged or a bead is not in the legend."""
    beads = [bead for row in chart.rows for line in row.lines for bead in line]
    beads += [bead for strand in strands for bead in strand.beads + strand.end]
    if not {bead.key for bead in beads} | set(hanger.beads) <= set(legend):
        return None
    if any(len({tuple(bead.at for bead in line) for line in row.lines}) > 1 for row in chart.rows):
        return None
    order = 1 if STITCHES[stitch].LYING else -1   # a set that stands is drawn from the top and worked from below
    drawn = [[Stitch(beads[0].at, _keys(beads[::order])) for beads in zip(*row.lines)] for row in reversed(chart.rows)]
    return Piece(legend, drop, hand, worked_rows(stitch, drawn, len(drawn) - 1 - base, hand),
                 tuple(Strand(number, _keys(strand.beads), _keys(strand.end)) for number, strand in enumerate(strands, 1)), hanger, stitch)


def _keys(beads: tuple[DrawnBead, ...]) -> tuple[str, ...]:
    return tuple(bead.key for bead in beads)
