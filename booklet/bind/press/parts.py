"""A finished HTML document, cut into its parts: the children of its body, each of which begins a page."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256
from html import unescape
from types import MappingProxyType
from typing import NamedTuple
from urllib.parse import quote

from ...errors import UnreadableInput
from .addresses import LINK, named_in
from .metadata import About

_TAG = re.compile(r"<(/?)([a-zA-Z][a-zA-Z0-9]*)((?:[^>\"']|\"[^\"]*\"|'[^']*')*)>")
_VOID = frozenset("area base br col embed hr img input link meta source track wbr".split())
_COMMENT = re.compile(r"<!--.*?-->", re.DOTALL)
_STYLE = re.compile(r"<style[^>]*>(.*?)</style>", re.DOTALL)
_CLASS = re.compile(r'\bclass="([^"]*)"')
_OWN_ID = re.compile(r'\bid="([^"]*)"')
_INNER = re.compile(r'href="#([^"]*)"')   # begins with plain signs, which are found fast
FOLIO, FOLIO_END = "\ue000", "\ue001"     # private characters, which no text of a book may hold
_HELD = re.compile(r'<div data-held="([^"]*)"></div>')
CUT = "<!--cut-->"   # here another part begins, in what a worker makes
_FOLIO = re.compile(f"{FOLIO}([^{FOLIO_END}]*){FOLIO_END}")


class Known(NamedTuple):
    """What a part is known by."""

    id: str                   # of its element; empty if it has none
    opening: str              # the tag by which a style sheet knows it, without what is its own alone
    folios: tuple[str, ...]   # ids of the places whose page numbers it prints
    files: tuple[str, ...]    # that it asks for
    links: tuple[str, ...]    # ids of the places that its inner links lead to
    length: int
    digest: str               # of its HTML


@dataclass(frozen=True)
class Part:
    """One part. Its HTML is asked for when it is needed, and not held by the part."""

    load: Callable[[], str]
    known: Known

    @property
    def html(self) -> str:
        return self.load()

    def printed(self, titles: Mapping[str, str], numbers: Mapping[str, int]) -> str:
        """Its HTML with its inner links as links of the book, which say where they lead, and with page numbers.

        Raises UnreadableInput for the number of a place that is not in the book.
        """
        def link(match: re.Match) -> str:
            if not match.string[match.start() - 1].isspace():   # the end of another attribute's name
                return match[0]
            name = unescape(match[1])
            return f'href="{LINK}{quote(name)}?{quote(titles.get(name, name))}"'

        return _FOLIO.sub(lambda match: str(numbers[match[1]]), _INNER.sub(link, self.html))


def known(html: str) -> Known:
    """What a part with this HTML is known by."""
    tag = _TAG.match(html)
    own, said = _OWN_ID.search(tag[3]), _CLASS.search(tag[3])
    return Known(unescape(own[1]) if own else "", f"<{tag[2]}{f' {said[0]}' if said else ''}>", _each(_FOLIO.findall(html)), _each(named_in(html)),
                 _each(unescape(name) for name in _INNER.findall(html)), len(html), sha256(html.encode()).hexdigest())


def known_of(said: Sequence) -> Known:
    """The same from plain values, such as those of JSON."""
    return Known(*(tuple(one) if isinstance(one, list) else one for one in said))


def _each(names: Iterable[str]) -> tuple[str, ...]:
    return tuple(sorted(set(names)))


def written(html: str) -> Part:
    """A part with this HTML."""
    return Part(lambda: html, known(html))


def held(name: str) -> str:
    """What stands in a document for one or more parts that are held elsewhere under this name."""
    return f'<div data-held="{name}"></div>'


def folio(name: str) -> str:
    """What stands in a page for the number of the page where the element with this id begins."""
    return f"{FOLIO}{name}{FOLIO_END}"


@dataclass(frozen=True)
class Document:
    """A document in parts."""

    about: About
    style: str
    body: str     # its opening tag
    parts: tuple[Part, ...]


def cut(html: str, elsewhere: Mapping[str, Sequence[Part]] = MappingProxyType({})) -> Document:
    """The parts of a document. `elsewhere` has those that it only names; see `held`. Raises UnreadableInput where text stands between them."""
    html = _COMMENT.sub("", html)
    opening = next(match for match in _TAG.finditer(html) if match[2] == "body" and not match[1])
    head, inner = html[:opening.start()], html[opening.end():html.rindex("</body>")]
    return Document(_about(head), "".join(_STYLE.findall(head)), opening[0], tuple(part for text in _children(inner) for part in _parts(text, elsewhere)))


def _parts(text: str, elsewhere: Mapping[str, Sequence[Part]]) -> Sequence[Part]:
    named = _HELD.fullmatch(text)
    return elsewhere[named[1]] if named else [written(text)]


def _children(inner: str) -> Iterator[str]:
    depth, start = 0, 0
    for match in _TAG.finditer(inner):
        alone = match[2].lower() in _VOID or match[3].endswith("/")
        if alone and depth:
            continue
        if not depth:
            if inner[start:match.start()].strip():
                raise UnreadableInput(f"the page template has text outside its sections: {' '.join(inner[start:match.start()].split())[:60]}",
                                      "put it into an element that begins a page")
            start = match.start()
        depth += 0 if alone else -1 if match[1] else 1
        if not depth:
            yield inner[start:match.end()]
            start = match.end()


def _about(head: str) -> About:
    def said(pattern: str) -> str:
        match = re.search(pattern, head, re.DOTALL)
        return " ".join(unescape(match[1]).split()) if match else ""

    named = {name: said(rf'<meta name="{re.escape(name)}" content="([^"]*)"') for name in ("author", "description", "generator", "dcterms.created", "dcterms.modified")}
    return About(said(r"<title>(.*?)</title>"), named["author"], named["description"], said(r'<html[^>]*\blang="([^"]*)"'), named["generator"],
                 named["dcterms.created"], named["dcterms.modified"])
