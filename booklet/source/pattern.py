"""One pattern file to a Pattern: everything it says, with what it inherits, its piece, and the place of every part."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from ..craft.beads import Bead
from ..craft.piece import Hanger, Piece, Stitch, Strand, piece_rows
from ..craft.thread import ThreadPlan
from ..findings import Finding, Mark, Severity
from .book import Book, checked_root, nearest_mark
from .chart import DrawnBead, DrawnChart, block_lines, read_chart, read_drawn_fringe
from .nodes import Node, compose
from .runs import ReadRuns, read_runs
from .schema import PATTERN
from .shapes import Reading
from .wording import did_you_mean, quoted


@dataclass(frozen=True)
class WrittenStrand:
    """A strand as written, runs expanded; mirrored strands share the marks of the one they mirror."""

    beads: tuple[DrawnBead, ...]
    end: tuple[DrawnBead, ...]
    mark: Mark


@dataclass(frozen=True)
class Item:
    """A finding in the trade's sense: ear wire, thread guard and the like."""

    item: str
    size: str = ""
    each: int = 1


@dataclass(frozen=True)
class Photo:
    file: str
    alt: str


@dataclass(frozen=True)
class Link:
    label: str
    url: str


@dataclass(frozen=True)
class StepText:
    """Markdown that replaces a standard step (`text`) or stands before or after it."""

    text: str = ""
    before: str = ""
    after: str = ""


@dataclass(frozen=True)
class Pattern:
    """A pattern, resolved."""

    slug: str
    file: str
    title: str = ""
    summary: str = ""
    version: str = ""
    level: str = ""
    makes: str = "single"
    mirror: bool = False
    hand: str = "right"
    legend: Mapping[str, Bead] = field(default_factory=dict)
    drop: int = 1
    base: str = "bottom"
    chart: DrawnChart = DrawnChart()
    written_strands: tuple[WrittenStrand, ...] = ()
    hanger_beads: tuple[DrawnBead, ...] = ()
    hanger: Hanger = Hanger()
    findings_list: tuple[Item, ...] = ()
    thread: ThreadPlan = ThreadPlan()
    photo: Photo | None = None
    links: tuple[Link, ...] = ()
    notes: str = ""
    steps: Mapping[str, StepText] = field(default_factory=dict)
    colourways: Mapping[str, Mapping[str, Bead]] = field(default_factory=dict)
    counted: Mapping[str, int] = field(default_factory=dict)
    pack_grams: Mapping[str, float] = field(default_factory=dict)
    spare_percent: float = 10.0
    least_spare: int = 0
    piece: Piece | None = None
    marks: Mapping[tuple, Mark] = field(default_factory=dict)

    @property
    def pieces(self) -> int:
        """Pieces that the pattern makes."""
        return 2 if self.makes == "pair" else 1

    def mark(self, *path) -> Mark:
        """The place of a field, row or strand, or of what it is part of."""
        return nearest_mark(self.marks, path, self.file)


def read_pattern(text: str, file: str, slug: str, book: Book) -> tuple[Pattern | None, list[Finding]]:
    """Read a pattern's text; None with findings where it is no mapping at all."""
    document = compose(text, file)
    reading = Reading(document, list(document.findings))
    root = checked_root(document, reading, "a pattern")
    if root is None:
        return None, reading.findings
    values = {**book.defaults, **{k: v for k, v in PATTERN.value(root, reading, ()).items() if v is not None}}
    # A field that the book gives does not have to stand in the pattern.
    reading.findings = [f for f in reading.findings if not (f.rule == "missing-field" and f.message.split()[0] in book.defaults)]
    return _Maker(values, reading, book).make(slug, file), reading.findings


class _Maker:
    """Turns the values of one file into a Pattern."""

    def __init__(self, values: Mapping[str, Any], reading: Reading, book: Book) -> None:
        self.values, self.reading, self.book = values, reading, book

    def make(self, slug: str, file: str) -> Pattern:
        values = self.values
        plain = {key: values[key] for key in ("title", "summary", "version", "level", "makes", "mirror", "hand", "notes") if values.get(key) is not None}
        body = values.get("body") or {}
        drop, base = body.get("drop") or 1, body.get("base") or "bottom"
        chart = self._chart(drop)
        legend, packs = self._legend()
        hanger_beads, hanger = self._hanger()
        pattern = Pattern(slug, file, **plain, legend=legend, drop=drop, base=base, chart=chart,
                          hanger_beads=hanger_beads, hanger=hanger, findings_list=self._items(), thread=self._thread(),
                          links=tuple(Link(**link) for link in values.get("links") or () if link and len(link) == 2 and all(link.values())),
                          photo=Photo(**values["photo"]) if values.get("photo") and len(values["photo"]) == 2 and all(values["photo"].values()) else None,
                          steps=self._steps(), colourways=self._colourways(legend),
                          counted={k: v for k, v in (values.get("counted") or {}).items() if v is not None},
                          pack_grams=packs, spare_percent=self.book.spare_percent, least_spare=self.book.least_spare)
        base_index = self._base_index(base, chart)
        across = len(chart.rows[len(chart.rows) - 1 - base_index].lines[0]) if chart.rows and base_index is not None else 0
        strands = self._strands(across)
        pattern = replace(pattern, written_strands=strands, piece=_piece(pattern, strands, base_index))
        return replace(pattern, marks=self._marks(pattern, base_index))

    def _mark_at(self, node: Node):
        """Places of the characters of a text that stands on one line; of any other text, the place of the text."""
        document, mark = self.reading.document, self.reading.mark(node)
        if node.style in ("|", ">"):
            lines = [(n, t) for n, t in block_lines(node, document) if t.strip()]
            if len(lines) == 1:
                number, text = lines[0]
                return lambda at: Mark(document.file, number, len(text) - len(text.lstrip()) + at + 1)
            return lambda at: mark
        if node.line != node.end_line:
            return lambda at: mark
        shift = 1 if node.style else 0
        return lambda at: Mark(document.file, node.line, node.column + shift + at)

    def _runs(self, path: tuple) -> ReadRuns | None:
        node = self.reading.nodes.get(path)
        if node is None or node.kind != "text" or not node.text.strip():
            return None
        read = read_runs(node.text, self._mark_at(node))
        self.reading.findings += read.findings
        return read

    def _chart(self, drop: int) -> DrawnChart:
        node = self.reading.nodes.get(("body", "chart"))
        if node is None or node.kind != "text":
            return DrawnChart()
        chart, findings = read_chart(node, self.reading.document, drop)
        self.reading.findings += findings
        return chart

    def _bead(self, key: str, fields: Mapping[str, Any], path: tuple, kind_of: Bead | None = None) -> Bead | None:
        if not fields or any(fields.get(name) is None for name in ("name", "colour", "finish")):
            return None
        kind = self.book.kinds.get(fields.get("kind") or "") or (kind_of.kind if kind_of and "kind" not in fields else None)
        if kind is None:
            if fields.get("kind"):
                self.reading.find(self.reading.nodes[(*path, "kind")], "unknown-kind", f"the bead kind {quoted(fields['kind'])} is not known",
                                  did_you_mean(fields["kind"], self.book.kinds))
            return None
        colour = fields["colour"].lower()
        colour = "#" + "".join(sign * 2 for sign in colour[1:]) if len(colour) == 4 else colour
        return Bead(key, fields["name"], colour, fields["finish"], kind)

    def _legend(self) -> tuple[dict[str, Bead], dict[str, float]]:
        legend, packs = {}, {}
        for key, fields in (self.values.get("beads") or {}).items():
            bead = self._bead(key, fields, ("beads", key))
            if bead:
                legend[key] = bead
            packs[key] = (fields or {}).get("pack") or self.book.pack
        return legend, packs

    def _colourways(self, legend: Mapping[str, Bead]) -> dict[str, dict[str, Bead]]:
        ways = {}
        for name, beads in (self.values.get("colourways") or {}).items():
            made = {key: self._bead(key, fields, ("colourways", name, key), legend.get(key)) for key, fields in (beads or {}).items()}
            ways[name] = {key: bead for key, bead in made.items() if bead}
        return ways

    def _hanger(self) -> tuple[tuple[DrawnBead, ...], Hanger]:
        fields = self.values.get("hanger") or {}
        read = self._runs(("hanger", "beads"))
        beads = tuple(DrawnBead(bead.key, bead.mark) for bead in read.beads) if read else ()
        if not read and fields.get("beads"):   # inherited from the book
            beads = tuple(DrawnBead(bead.key, self.book.mark("defaults", "hanger", "beads"))
                          for bead in read_runs(fields["beads"], lambda at: Mark(self.book.file)).beads)
        return beads, Hanger(fields.get("kind") or "none", tuple(bead.key for bead in beads))

    def _items(self) -> tuple[Item, ...]:
        return tuple(Item(**{k: v for k, v in item.items() if v is not None}) for item in self.values.get("findings") or () if item and item.get("item"))

    def _thread(self) -> ThreadPlan:
        fields, plan = self.values.get("thread") or {}, ThreadPlan()
        return ThreadPlan((fields.get("body") or {}).get("kind") or plan.body, (fields.get("fringe") or {}).get("kind") or plan.fringe,
                          fields.get("length") or plan.length)

    def _steps(self) -> dict[str, StepText]:
        return {name: StepText(text=step) if isinstance(step, str) else StepText(**{k: v or "" for k, v in step.items()})
                for name, step in (self.values.get("steps") or {}).items() if step}

    def _base_index(self, base: str, chart: DrawnChart) -> int | None:
        widths = [len(row.lines[0]) for row in reversed(chart.rows)]
        if not widths or base == "bottom":
            return 0 if widths else None
        if base == "widest":
            return widths.index(max(widths))
        if int(base) <= len(widths):
            return int(base) - 1
        self.reading.find(self.reading.nodes[("body", "base")], "wrong-value", f"body.base is row {base} from the bottom, but the chart has {len(widths)} rows")
        return None

    def _strands(self, across: int) -> tuple[WrittenStrand, ...]:
        fields = self.values.get("fringe") or {}
        default = self._runs(("fringe", "end"))
        if default and default.has_end:
            self.reading.find(self.reading.nodes[("fringe", "end")], "bad-run-text", "> may not stand in fringe.end", "write the end beads alone")
        end = tuple(DrawnBead(bead.key, bead.mark) for bead in default.beads) if default else ()
        if fields.get("strands") and fields.get("chart"):
            self.reading.find(self.reading.nodes[("fringe", "chart")], "wrong-value", "the fringe is given twice, by strands and by a chart", "keep one of them")
        made = []
        if fields.get("strands"):
            for n in range(1, len(fields["strands"]) + 1):
                read = self._runs(("fringe", "strands", n))
                if read:
                    own = tuple(DrawnBead(bead.key, bead.mark) for bead in read.end) if read.has_end else end
                    made.append(WrittenStrand(tuple(DrawnBead(bead.key, bead.mark) for bead in read.beads), own,
                                              self.reading.mark(self.reading.nodes[("fringe", "strands", n)])))
        elif fields.get("chart"):
            drawn, findings = read_drawn_fringe(self.reading.nodes[("fringe", "chart")], self.reading.document)
            self.reading.findings += findings
            made = [WrittenStrand(beads, end, beads[0].mark) for beads in drawn]
        if fields.get("mirror") and made:
            made += made[::-1] if 2 * len(made) == across else made[-2::-1] if len(made) > 1 else []
        return tuple(made)

    def _marks(self, pattern: Pattern, base_index: int | None) -> dict[tuple, Mark]:
        marks = dict(self.reading.marks)
        count = len(pattern.chart.rows)
        if base_index is not None:
            order = [*range(base_index, count), *range(base_index - 1, -1, -1)]
            for number, index in enumerate(order, 1):
                marks["row", number] = pattern.chart.rows[count - 1 - index].mark
        for n, strand in enumerate(pattern.written_strands, 1):
            marks["strand", n] = strand.mark
        return marks


def _piece(pattern: Pattern, strands: tuple[WrittenStrand, ...], base_index: int | None) -> Piece | None:
    """The piece; None where the chart or strands cannot be taken as rows and strands of known beads."""
    drawn = [row for row in reversed(pattern.chart.rows)]
    keys = {bead.key for row in drawn for line in row.lines for bead in line} | {bead.key for bead in pattern.hanger_beads}
    keys |= {bead.key for strand in strands for bead in (*strand.beads, *strand.end)}
    even = all(len({tuple(bead.at for bead in line) for line in row.lines}) == 1 for row in drawn)
    if base_index is None or not drawn or not even or not keys <= set(pattern.legend):
        return None
    rows = [[Stitch(bead.at, tuple(line[i].key for line in reversed(row.lines))) for i, bead in enumerate(row.lines[0])] for row in drawn]
    lines = tuple(Strand(n, tuple(b.key for b in strand.beads), tuple(b.key for b in strand.end)) for n, strand in enumerate(strands, 1))
    return Piece(pattern.legend, pattern.drop, pattern.hand, piece_rows(rows, base_index, pattern.hand), lines, pattern.hanger)


def pattern_error(file: str, rule: str, message: str, hint: str = "") -> Finding:
    """A finding about a pattern file as a whole."""
    return Finding(Mark(file), Severity.ERROR, rule, message, hint)
