"""Prose of the designer: Markdown with placeholders, to HTML that can do no harm."""

from __future__ import annotations

import re
from collections.abc import Mapping

import markdown
import nh3
from markupsafe import Markup

from .placeholders import filled

TAGS = {"p", "br", "hr", "em", "strong", "ul", "ol", "li", "dl", "dt", "dd", "blockquote", "h1", "h2", "h3", "h4", "h5", "h6", "a", "code",
        "sub", "sup", "table", "thead", "tbody", "tr", "th", "td"}


def prose(text: str, values: Mapping[str, str], top: int = 1) -> Markup:
    """Markdown to clean HTML. `top` is the level of a heading written with one #."""
    made = markdown.markdown(filled(text, values), output_format="html",
                             extensions=["sane_lists", "tables", "smarty", "toc"],
                             extension_configs={"toc": {"baselevel": top, "marker": ""}})
    clean = nh3.clean(made, tags=TAGS, attributes={"a": {"href"}, "ol": {"start"}}, link_rel=None,
                      url_schemes={"http", "https", "mailto"})
    return Markup(re.sub(r' href="(?!https?:|mailto:)[^"]*"', "", clean))
