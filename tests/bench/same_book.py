"""The same book for another engine: our HTML as source text of the PyPI package typst, with the same pictures as SVG files.

Every text, picture, link, heading and page break goes over; sizes of type, page and pictures are ours, and the look is close to ours without the last
hairline. Page numbers of the contents are asked of that engine, as ours are of ours.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from html import unescape
from pathlib import Path
from xml.etree.ElementTree import Element

import tinyhtml5

from booklet.bind.drawings import PICTURE
from booklet.bind.fonts import faces
from booklet.bind.geometry import Sheet
from booklet.bind.press.parts import FOLIO, FOLIO_END

INLINE = {"b": "strong", "strong": "strong", "em": "emph", "i": "hint", "small": "hint"}
NEW_PAGE = {"materials", "chart", "words", "page", "imprint", "contents", "back"}
_TITLE = re.compile(r"<title>(.*?)</title>", re.DOTALL)
_WIDTH = re.compile(r'\bwidth="([0-9.]+mm)"')
_FOLIO = re.compile(f"{FOLIO}([^{FOLIO_END}]*){FOLIO_END}")
HEAD = """\
#set document(title: {title})
#set page(width: {width}mm, height: {height}mm, margin: (top: {top}mm, bottom: {bottom}mm, inside: {inside}mm, outside: {outside}mm))
#set text(font: "Source Serif Pro", size: {type}pt, lang: "en", hyphenate: false, fallback: false, top-edge: .8em, bottom-edge: -.2em)
#set par(leading: .45em, spacing: .9em)
#let sans(size, body) = text(font: "Source Sans Pro", size: size, body)
#let hint(body) = text(fill: rgb("#5c6066"), body)
#let mark = state("mark", "")
#set page(footer: context {{ let shown = (counter(page).display(), mark.get())
  sans(7.6pt, if calc.even(here().page()) [#shown.at(0) #h(1fr) #shown.at(1)] else [#shown.at(1) #h(1fr) #shown.at(0)]) }})
#show heading.where(level: 1): it => text(size: 2.1em, weight: 400, it.body)
#show heading.where(level: 2): it => block(above: 1.5em, below: .6em, sans(1.02em, strong(it.body)))
#show heading.where(level: 3): it => block(above: .9em, below: .3em, sans(1em, strong(it.body)))
#let folio(name) = context counter(page).at(name).first()
#let hair = .4pt + rgb("#c9c6bf")
#let row(five, body) = block(spacing: .85em, stroke: if five {{ (bottom: .5pt) }}, inset: (bottom: if five {{ .3em }} else {{ 0em }}), par(hanging-indent: 1.5em, body))
#let lined(left, name, body) = block(spacing: .25em, stroke: (top: hair), inset: (top: .25em), width: 100%, sans(.94em, grid(columns: (left, 1fr), name, body)))
#let stepped(picture, body) = grid(columns: (1fr, 46mm), body, align(right, picture))
"""


def write_source(html: str, sheet: Sheet, folder: Path) -> Path:
    """Write main.typ and its pictures into a folder, and give the path of the first."""
    folder.mkdir(parents=True, exist_ok=True)
    pictures: list[str] = []

    def taken(match: re.Match) -> str:
        pictures.append(match[0])
        return f'<img src="{len(pictures) - 1}">'

    body = tinyhtml5.parse(PICTURE.sub(taken, html), namespace_html_elements=False).find("body")
    for number, picture in enumerate(pictures):
        (folder / f"{number}.svg").write_text(picture, "utf-8")
    source = HEAD.format(title=_said(_TITLE.search(html)[1]), **vars(sheet)) + "".join(_Writer(pictures).inside(body))
    (folder / "main.typ").write_text(re.sub(r"\n{3,}", "\n\n", source), "utf-8")
    return folder / "main.typ"


def font_folders() -> list[str]:
    """Where our fonts are."""
    return sorted({str(face.path.parent) for face in faces()})


def _said(text: str) -> str:
    """Text as a string of the language."""
    return '"' + unescape(text).replace("\\", "\\\\").replace('"', '\\"') + '"'


class _Writer:
    """Turns elements into source text."""

    def __init__(self, pictures: list[str]) -> None:
        self.pictures = pictures

    def inside(self, element: Element) -> Iterator[str]:
        """What an element holds: texts, and its children one after the other."""
        yield self.text(element.text)
        for child in element:
            yield self.one(child)
            yield self.text(child.tail)

    def held(self, element: Element) -> str:
        return "".join(self.inside(element)).strip()

    def text(self, text: str | None) -> str:
        folded, made = re.sub(r"[ \n\t]+", " ", text or ""), []
        if not folded.strip():
            return " " if folded else ""
        for at, part in enumerate(_FOLIO.split(folded)):
            made.append(f"#folio(<{part}>)" if at % 2 else f"#{_said(part)}" if part else "")
        return "".join(made)

    def one(self, element: Element) -> str:
        name, kinds = element.tag, set(element.get("class", "").split())
        method = getattr(self, f"_{name}", None)
        if method:
            made = method(element, kinds)
        elif name in INLINE:
            return f"#{INLINE[name]}[{self.held(element)}]"
        else:
            made = "\n\n" + "".join(self.inside(element)) + "\n\n"
        label = f"#metadata(none)<{element.get('id')}>\n" if element.get("id") else ""
        paged = "cover" in kinds or "back" in kinds
        before = "" if paged else '#pagebreak(to: "even", weak: true)\n' if "pattern" in kinds or "chart" in kinds else "#pagebreak(weak: true)\n" if kinds & NEW_PAGE else ""
        made = f"{before}{label}{made}"
        return f"\n\n#page(footer: none)[{made}]\n\n" if paged else made

    def _span(self, element: Element, kinds: set[str]) -> str:
        inner = "".join(self.inside(element))
        return f"#sans(.86em)[#hint[{inner}]]" if kinds & {"small", "kind"} else inner

    def _br(self, element: Element, kinds: set[str]) -> str:
        return "#linebreak()"

    def _a(self, element: Element, kinds: set[str]) -> str:
        to = element.get("href")
        return f"#link({f'<{to[1:]}>' if to.startswith('#') else _said(to)})[{self.held(element)}]"

    def _img(self, element: Element, kinds: set[str]) -> str:
        number = int(element.get("src"))
        svg = self.pictures[number]
        return f'#box(image("{number}.svg", width: {_WIDTH.search(svg)[1]}, alt: {_said(_TITLE.search(svg)[1])}))'

    def _h1(self, element: Element, kinds: set[str]) -> str:
        said = element.get("data-mark") or "".join(element.itertext())
        return f"\n\n#mark.update({_said(said)})\n#heading(level: 1)[{self.held(element)}]\n\n"

    def _h2(self, element: Element, kinds: set[str]) -> str:
        return f"\n\n#heading(level: 2)[{self.held(element)}]\n\n"

    def _h3(self, element: Element, kinds: set[str]) -> str:
        return f"\n\n#heading(level: 3)[{self.held(element)}]\n\n"

    def _p(self, element: Element, kinds: set[str]) -> str:
        inner = self.held(element)
        return f"\n\n#sans(.86em)[#hint[{inner}]]\n\n" if "small" in kinds else f"\n\n{inner}\n\n"

    def _figure(self, element: Element, kinds: set[str]) -> str:
        return f"\n\n#align(center)[{self.held(element)}]\n\n"

    def _div(self, element: Element, kinds: set[str]) -> str:
        if kinds & {"view", "line", "step-picture"}:
            return self._figure(element, kinds)
        if [child.tag for child in element] == ["dt", "dd"]:
            return f"\n#lined(31%)[{self.held(element[0])}][{self.held(element[1])}]\n"
        return f"\n\n{self.held(element)}\n\n"

    def _ul(self, element: Element, kinds: set[str]) -> str:
        items = list(element)
        if "rows" in kinds:
            return "\n".join(["", *(f"#row({'true' if item.get('class') else 'false'})[{self.held(item)}]" for item in items), "\n"])
        if "listed" in kinds:
            return "\n".join(["", *(f"#lined(26%)[{self.held(item[0])}][{self.held(item[1])}]" for item in items), "\n"])
        if kinds & {"key", "gallery"}:
            return f"\n\n#grid(columns: (1fr, 1fr, 1fr), row-gutter: .5em, {', '.join(f'[{self._gathered(item)}]' for item in items)})\n\n"
        if "entries" in kinds:
            return "\n".join(["", *(f"#lined(90%)[{self.one(item[0])}][#align(right)[{self.one(item[1])}]]" for item in items), "\n"])
        return f"\n\n#list({', '.join(f'[{self.held(item)}]' for item in items)})\n\n"

    def _gathered(self, item: Element) -> str:
        return "#linebreak()".join(filter(None, [self.one(child) + self.text(child.tail) if child.tag in ("a", "b") else self.held(child) for child in item]))

    def _ol(self, element: Element, kinds: set[str]) -> str:
        made = []
        for item in element:
            picture = next((child for child in item if "step-picture" in child.get("class", "").split()), None)
            if picture is not None:
                item.remove(picture)
            inner = self.held(item)
            made.append(f"\n\n#stepped[{self.held(picture)}][{inner}]\n\n" if picture is not None else f"\n\n{inner}\n\n")
        return "".join(made)

    def _table(self, element: Element, kinds: set[str]) -> str:
        rows = [list(row) for row in element.iter("tr")]
        columns = "7mm, 7mm, 1fr, 11mm, 11mm, 11mm, 11mm, 10mm" if len(rows[0]) == 8 else ", ".join(["1fr"] * len(rows[0]))
        cells = [", ".join(f"[{self.held(cell)}]" for cell in row) for row in rows]
        return f"\n\n#sans(.94em)[#table(columns: ({columns}), stroke: (bottom: hair), inset: .28em, table.header(repeat: false, {cells[0]}), {', '.join(cells[1:])})]\n\n"
