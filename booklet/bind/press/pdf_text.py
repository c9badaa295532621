"""Names and texts as PDF writes them (ISO 32000-1, 7.3.4 and 7.3.5)."""

from __future__ import annotations

import re


def text_of(text: str) -> bytes:
    """A text string: plain letters in parentheses, all else as UTF-16 in hexadecimal digits."""
    if text.isascii() and text.isprintable():
        return b"(" + re.sub(rb"([\\()])", rb"\\\1", text.encode()) + b")"
    return b"<" + b"feff" + text.encode("utf-16-be").hex().encode() + b">"


def name_of(name: str) -> bytes:
    """A name object."""
    return b"/" + b"".join(bytes([char]) if 33 <= char <= 126 and char not in b"#%()<>[]{}/" else b"#%02x" % char for char in name.encode())
