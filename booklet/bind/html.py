"""From patterns to HTML: the sections that print and screen share, and what stands around them."""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import datetime, timezone
from functools import partial
from pathlib import Path

from jinja2 import Environment
from markupsafe import Markup, escape

from ..source.pattern import Pattern
from .context import Shown
from .edition import Edition
from .geometry import Room, print_room, sheet
from .pictures import step_box
from .press.parts import folio
from .replayed import check_words
from .row_gap import row_gap
from .templates import OwnTexts, environment, fill, own_texts

_NUMBER = re.compile(r"\b([Rr]ows?|[Ss]trands?|[Rr]eihen?|[Ss]trangs?|[Ss]tränge[n]?) (?=\d)")
_EMPHASIS = re.compile(r" <(em|strong)>")
_TOGETHER = re.compile(r"\([^)]*\)|\d+ × \[\S+|(?:start|end|Anfang|Ende) (?:in|out|innen|außen)\b")
PRINT, WEB = "print", "web"


@dataclass(frozen=True)
class Medium:
    """Where a page will be read, and how much room pictures have there."""

    name: str
    room: Room


class Setter:
    """Fills templates for one medium."""

    def __init__(self, templates: Path | OwnTexts, medium: Medium, **shared) -> None:
        """`templates`: the folder of a workspace, or the templates that it has itself."""
        self.engine: Environment = environment(own_texts(templates) if isinstance(templates, Path) else templates)
        self.engine.filters |= {"whole": kept_whole, "for_lines": for_lines}
        self.engine.globals |= {"tick": _tick_printed, "room": medium.room, "step_box": partial(step_box, times=medium.room.steps), "folio": folio, "stacked": False, **shared}

    def fill(self, name: str, **values) -> Markup:
        return Markup(fill(self.engine, name, **values))

    def section(self, pattern: Pattern, shown: Shown) -> Markup:
        """A pattern's section. Its words are read back from it and must rebuild the chart."""
        html = self.fill("parts/pattern.html.jinja", p=shown)
        check_words(pattern, html)
        return html


def paper_setter(templates: Path | OwnTexts, on: Edition, **shared) -> Setter:
    """A setter for the pages of an edition."""
    return Setter(templates, Medium(PRINT, print_room(on)), edition=on, stacked=on.large or on.screen, row_gap=partial(_row_gap, on), **shared)


def _row_gap(on: Edition, rows: Iterable[str], turned: bool = False, changes: int = 0) -> float:
    return row_gap(sheet(on), map(kept_whole, rows), turned, changes, large=on.large)


def kept_whole(text: str) -> str:
    """Words with the spaces that no line may break at made fixed: inside a set, before a bracket, in "end in"."""
    return _TOGETHER.sub(lambda match: match[0].replace(" ", "\u00a0"), text)


def for_lines(html: Markup) -> Markup:
    """Prose ready to be broken into lines: none ends between "row" and its number.

    The space before an emphasised word goes into it: where a text fits its line but for its last space, the typesetter breaks it after its first word.
    """
    return Markup(_EMPHASIS.sub(r"<\1> ", _NUMBER.sub("\\1\u00a0", html)))


def _tick_printed(part: str, name: int | str, second: bool = False) -> Markup:
    return Markup('<span class="tick">☐ </span>')


def moment(environ: Callable = os.environ.get) -> str:
    """The time of SOURCE_DATE_EPOCH as ISO 8601 in UTC; empty without it, because a clock would change the bytes."""
    epoch = environ("SOURCE_DATE_EPOCH") or ""
    return datetime.fromtimestamp(int(epoch), timezone.utc).strftime("%Y-%m-%dT%H:%M:%SZ") if epoch.isdigit() else ""


def dates(environ: Callable = os.environ.get) -> Markup:
    """Date metadata, where there is a time."""
    when = moment(environ)
    return Markup("").join(Markup('<meta name="dcterms.{}" content="{}">').format(name, escape(when)) for name in ("created", "modified") if when)
