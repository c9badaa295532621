"""Prose of the designer: Markdown with placeholders, to HTML that can do no harm."""

from __future__ import annotations

import re
from collections.abc import Mapping

import markdown
import nh3
from markupsafe import Markup

from ..craft.language import pgettext
from .passages import Passage
from .placeholders import filled

TAGS = {"p", "br", "hr", "em", "strong", "ul", "ol", "li", "dl", "dt", "dd", "blockquote", "h1", "h2", "h3", "h4", "h5", "h6", "a", "code",
        "sub", "sup", "table", "thead", "tbody", "tr", "th", "td"}


def prose(text: str, values: Mapping[str, str], top: int = 1) -> Markup:
    """Markdown to clean HTML. `top` is the level of a heading written with one #. A passage in a language of its own says so."""
    html = _html(text, values, top)
    return Markup('<div lang="{}">{}</div>').format(text.lang, html) if isinstance(text, Passage) and text else html


def _html(text: str, values: Mapping[str, str], top: int) -> Markup:
    made = markdown.markdown(filled(text, values), output_format="html",
                             extensions=["sane_lists", "tables", "smarty", "toc"],
                             extension_configs={"toc": {"baselevel": top, "marker": ""}, "smarty": {"substitutions": {} if isinstance(text, Passage) else _quotes()}})
    clean = nh3.clean(made, tags=TAGS, attributes={"a": {"href"}, "ol": {"start"}}, link_rel=None,
                      url_schemes={"http", "https", "mailto"})
    return Markup(re.sub(r' href="(?!https?:|mailto:)[^"]*"', "", clean))


def _quotes() -> dict[str, str]:
    """The quotation marks of the language."""
    return {"left-double-quote": pgettext("quotation mark", "&ldquo;"), "right-double-quote": pgettext("quotation mark", "&rdquo;"),
            "left-single-quote": pgettext("quotation mark", "&lsquo;"), "right-single-quote": pgettext("quotation mark", "&rsquo;")}
